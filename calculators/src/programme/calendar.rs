//! Working hours: minutes from midnight of the first day, days that are worked and days that are not.

use crate::catalogue::Input;

/// The day of the week on which the job starts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
pub enum Weekday {
    /// Monday.
    Monday,
    /// Tuesday.
    Tuesday,
    /// Wednesday.
    Wednesday,
    /// Thursday.
    Thursday,
    /// Friday.
    Friday,
    /// Saturday.
    Saturday,
    /// Sunday.
    Sunday,
}

/// A day's working hours and the days of the week that are worked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Calendar {
    /// Minutes after midnight when work starts.
    pub starts: i64,
    /// Minutes after midnight when work ends; after the start.
    pub ends: i64,
    /// Day of the week of the first day, 0 for Monday.
    pub first_weekday: i64,
    /// Days worked from Monday on: 5 leaves out Saturday and Sunday.
    pub days_a_week: i64,
}

const DAY: i64 = 24 * 60;

impl Calendar {
    /// Minutes worked in a day.
    pub const fn day_length(&self) -> i64 {
        self.ends - self.starts
    }

    const fn worked(&self, day: i64) -> bool {
        (self.first_weekday + day).rem_euclid(7) < self.days_a_week
    }

    /// The first moment at or after `at` at which work can start.
    pub fn open_at(&self, at: i64) -> i64 {
        let mut day = at.div_euclid(DAY);
        let mut moment = at;
        loop {
            let (opens, closes) = (day * DAY + self.starts, day * DAY + self.ends);
            if self.worked(day) && moment < closes {
                return moment.max(opens);
            }
            day += 1;
            moment = day * DAY;
        }
    }

    /// Start and finish of so many minutes of work begun at or after `at`; work in one piece waits for a day that holds it.
    ///
    /// In one piece it must not be longer than a day; longer work is split.
    pub fn work(&self, at: i64, minutes: i64, in_one_piece: bool) -> (i64, i64) {
        let mut start = self.open_at(at);
        if in_one_piece && minutes <= self.day_length() {
            let closes = start.div_euclid(DAY) * DAY + self.ends;
            if start + minutes > closes {
                start = self.open_at(closes);
            }
            return (start, start + minutes);
        }
        let (mut moment, mut left) = (start, minutes);
        loop {
            let closes = moment.div_euclid(DAY) * DAY + self.ends;
            if left <= closes - moment {
                return (start, moment + left);
            }
            left -= closes - moment;
            moment = self.open_at(closes);
        }
    }

    /// Working minutes between two moments.
    pub fn between(&self, from: i64, to: i64) -> i64 {
        let mut total = 0;
        let mut moment = from;
        while moment < to {
            let open = self.open_at(moment);
            if open >= to {
                break;
            }
            let closes = open.div_euclid(DAY) * DAY + self.ends;
            total += closes.min(to) - open;
            moment = closes;
        }
        total
    }
}

/// Minutes after midnight as a clock shows them: `08:30`.
pub fn clock_text(minutes: i64) -> String {
    format!("{:02}:{:02}", minutes.div_euclid(60), minutes.rem_euclid(60))
}

/// A moment as a day and a clock: `day 4, 08:30`.
pub fn moment(minutes: i64) -> String {
    let (day, minute) = (minutes.div_euclid(DAY), minutes.rem_euclid(DAY));
    format!("day {}, {}", day + 1, clock_text(minute))
}

#[cfg(test)]
mod tests {
    use super::*;

    const WEEK: Calendar = Calendar { starts: 480, ends: 990, first_weekday: 0, days_a_week: 5 };

    #[test]
    fn work_runs_over_the_night_and_the_weekend() {
        // Friday 15:30, two hours: one until 16:30, the other on Monday from 08:00.
        let friday = 4 * DAY + 930;
        assert_eq!(WEEK.work(friday, 120, false), (friday, 7 * DAY + 540));
        assert_eq!(WEEK.work(friday, 120, true), (7 * DAY + 480, 7 * DAY + 600));
        assert_eq!(WEEK.between(friday, 7 * DAY + 540), 120);
    }
}
