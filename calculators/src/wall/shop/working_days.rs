//! When and with how many a shop works.

use crate::catalogue::Input;
use crate::drying::tape_pull::minutes_of_day;
use crate::programme::calendar::{Calendar, Weekday};
use crate::quantity::Count;

/// A shop's working days. What is empty is the book's: two pairs of hands, Monday to Friday, 08:00 to 16:30, from a Monday on.
#[derive(Clone, Debug, Default, PartialEq, Input)]
#[field("Working days")]
pub struct WorkingDays {
    /// Pairs of hands; empty is two.
    #[field("Crew", default)]
    pub crew: Option<Count<1, 12>>,
    /// Of the first day; empty is a Monday.
    #[field("Starts on a", default)]
    pub weekday: Option<Weekday>,
    /// In a week, from Monday on; empty is five.
    #[field("Days worked in a week", default)]
    pub days_a_week: Option<Count<1, 7>>,
    /// As the clock shows it; empty is 08:00.
    #[field("Work starts", default, size(..=5))]
    pub day_start: Option<String>,
    /// As the clock shows it; empty is 16:30.
    #[field("Work ends", default, size(..=5))]
    pub day_end: Option<String>,
}

/// Working days of the book: 08:00 to 16:30, Monday to Friday, starting on a Monday. An estimate of this book.
pub(super) const USUAL: Calendar = Calendar { starts: 480, ends: 990, first_weekday: 0, days_a_week: 5 };
/// Pairs of hands of the book.
pub(super) const USUAL_CREW: u32 = 2;

impl WorkingDays {
    /// Pairs of hands.
    pub fn hands(&self) -> u32 {
        self.crew.map_or(USUAL_CREW, Count::get)
    }

    /// The calendar, empty fields filled; `None` where a clock cannot be read or the day ends before it starts.
    pub fn calendar(&self) -> Option<Calendar> {
        let clock = |text: &Option<String>, usual| text.as_deref().map_or(Some(usual), minutes_of_day);
        let (starts, ends) = (clock(&self.day_start, USUAL.starts)?, clock(&self.day_end, USUAL.ends)?);
        (starts < ends).then(|| Calendar {
            starts,
            ends,
            first_weekday: self.weekday.map_or(USUAL.first_weekday, |day| day as i64),
            days_a_week: self.days_a_week.map_or(USUAL.days_a_week, i64::from),
        })
    }
}
