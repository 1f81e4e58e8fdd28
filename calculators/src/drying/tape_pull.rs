//! The window in which masking tape is pulled: after the film has set at its edge, before it bridges hard.

use serde_json::json;

use crate::catalogue::works::THIS_BOOK;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// Share of the touch-dry time after which the window opens, and of the recoat time at which it closes.
pub const SHARES: (f64, f64) = (0.5, 0.5);

/// Minutes after midnight as a clock shows them, with the day where it is a later one: `15:30`, `day 2, 06:15`.
pub fn clock(minutes: i64) -> String {
    let (day, minute) = (minutes.div_euclid(1_440), minutes.rem_euclid(1_440));
    let time = format!("{:02}:{:02}", minute / 60, minute % 60);
    if day == 0 { time } else { format!("day {}, {time}", day + 1) }
}

/// Reads a time of day, `HH:MM`, as minutes after midnight.
pub fn minutes_of_day(text: &str) -> Option<i64> {
    let (hours, minutes) = text.trim().split_once(':')?;
    let figures = |part: &str| part.len() <= 2 && !part.is_empty() && part.chars().all(|sign| sign.is_ascii_digit());
    let (hours, minutes): (i64, i64) =
        (figures(hours).then(|| hours.parse().ok())??, figures(minutes).then(|| minutes.parse().ok())??);
    (hours < 24 && minutes < 60).then_some(hours * 60 + minutes)
}

/// A window in minutes after midnight, rounded inward to quarter hours; it may be empty.
pub fn window(coat_end: i64, touch_hours: f64, recoat_hours: f64) -> (i64, i64) {
    let at = |hours: f64| coat_end as f64 + hours * 60.0;
    let open = libm::ceil(at(SHARES.0 * touch_hours) / 15.0 - 1e-9) as i64 * 15;
    let close = libm::floor(at(SHARES.1 * recoat_hours) / 15.0 + 1e-9) as i64 * 15;
    (open, close)
}

pub(crate) struct TapePull;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// When the last coat was finished, as the clock shows it.
    #[field("Coat finished at", size(..=5))]
    coat_end: String,
    /// Touch-dry in this air: from the recoat calculation, not straight from the sheet.
    #[field("Touch-dry after")]
    touch: Physical<kind::Hours, 50, 72_000>,
    /// Recoat in this air: from the recoat calculation.
    #[field("Recoat after")]
    recoat: Physical<kind::Hours, 100, 400_000>,
    /// When somebody is on site again, and until when.
    #[field("Work starts", size(..=5))]
    day_start: String,
    /// The end of the working day.
    #[field("Work ends", size(..=5))]
    day_end: String,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// From then on the edge holds.
    #[field("Pull from")]
    open: String,
    /// After that the film bridges: cut before pulling.
    #[field("Pull until")]
    close: String,
    /// Minutes of the window that lie in working hours.
    #[field("Of that in working hours")]
    attended: Amount<kind::Minutes>,
}

impl Calculator for TapePull {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "tape-pull",
        title: "Window for pulling tape",
        question: "Do I pull the tape now or tonight?",
        step: 16,
        search: &[
            "masking tape",
            "pull",
            "remove",
            "edge",
            "window",
            "tape ripped",
            "tape tore",
            "ripped paint",
            "remove tape",
        ],
        headline: &["/open", "/close"],
        list: None,
        cautions: &[],
        sources: &[Source::new(THIS_BOOK, "from half of touch-dry to half of recoat", Standing::HouseDefault)],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "coat_end": "10:30", "touch": "2.6 h", "recoat": "10.2 h", "day_start": "08:00", "day_end": "16:30" }),
            expects: vec![("/result/open", json!("12:00")), ("/result/close", json!("15:30"))],
            checked_against: "by hand: 10:30 + 1 h 18 = 11:48, up to 12:00; 10:30 + 5 h 06 = 15:36, down to 15:30",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let mut faults = Vec::new();
        let mut time = |pointer: &str, text: &String| {
            minutes_of_day(text).unwrap_or_else(|| {
                faults.push(Fault::new(
                    pointer,
                    format!("«{text}»"),
                    "a time of day is hours and minutes from 00:00 to 23:59",
                    "10:30",
                ));
                0
            })
        };
        let end = time("/coat_end", &input.coat_end);
        let (starts, ends) = (time("/day_start", &input.day_start), time("/day_end", &input.day_end));
        if faults.is_empty() && starts >= ends {
            faults.push(Fault::new(
                "/day_end",
                format!("«{}»", input.day_end),
                "the working day must end after it starts",
                "16:30",
            ));
        }
        if input.touch.get() > input.recoat.get() {
            let why = Words::new("touch-dry comes before recoat, {} here").with(input.recoat);
            faults.push(Fault::new("/touch", Words::of(input.touch), why, Words::of(input.recoat)));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let (open, close) = window(end, input.touch.get(), input.recoat.get());
        let attended: i64 =
            (0..20).map(|day| (close.min(ends + day * 1_440) - open.max(starts + day * 1_440)).max(0)).sum();
        let working = vec![
            Step::new("opens after the coat")
                .by("0.5 * t")
                .given("t", "touch-dry", input.touch)
                .gives("o", "opens after", Amount::<kind::Hours>::of(SHARES.0 * input.touch.get()))
                .because("then up to the next quarter of an hour"),
            Step::new("closes after the coat")
                .by("0.5 * r")
                .given("r", "recoat", input.recoat)
                .gives("c", "closes after", Amount::<kind::Hours>::of(SHARES.1 * input.recoat.get()))
                .because("then down to the quarter of an hour before"),
        ];
        let mut notes = Vec::new();
        if close <= open {
            notes.push(Note::check(
                "The window is shorter than a quarter of an hour: pull as soon as the edge stands by itself.",
            ));
        } else if attended == 0 {
            notes.push(Note::hold(
                "The whole window lies outside working hours: stay, coat earlier, or plan to cut the edge and score.",
            ));
        }
        notes.push(Note::remark(
            "Past the window: wait until hard, cut the film along the edge, then pull back on itself at 45°.",
        ));
        Ok(Answer {
            result: Output { open: clock(open), close: clock(close), attended: Amount::of(attended as f64) },
            working,
            notes,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clocks_are_read_strictly() {
        assert_eq!(minutes_of_day("07:45"), Some(465));
        for text in ["24:00", "7", "07:60", "a:b", "-1:00", "1:2:3", "٣:٠٠"] {
            assert_eq!(minutes_of_day(text), None, "{text}");
        }
        assert_eq!(clock(24 * 60 + 75), "day 2, 01:15");
    }
}
