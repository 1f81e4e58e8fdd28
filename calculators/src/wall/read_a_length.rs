//! Reading a length as a question of its own: what did he write down?

use serde_json::json;

use crate::catalogue::works::HANDBOOK_44;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step};
use crate::quantity::{Exact, Length, MILLIMETRE, Reading, Tape, Units};

pub(crate) struct ReadALength;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// As it stands on the sketch; a bare number is read in the units chosen for the page.
    #[field("Written down")]
    written: Length,
    /// The mark to which it is rounded on an inch tape.
    #[field("Inch tape", default = sixteenth)]
    inch_tape: InchTape,
    /// The mark to which it is rounded on a metric tape.
    #[field("Metric tape", default = millimetre)]
    metric_tape: MetricTape,
}

fn sixteenth() -> InchTape {
    InchTape::Sixteenth
}

fn millimetre() -> MetricTape {
    MetricTape::Millimetre
}

/// Marks of an inch tape.
#[derive(Clone, Copy, Input)]
pub(crate) enum InchTape {
    /// 1/8 in.
    #[field("1/8 in")]
    Eighth,
    /// 1/16 in.
    #[field("1/16 in")]
    Sixteenth,
    /// 1/32 in.
    #[field("1/32 in")]
    ThirtySecond,
    /// 1/64 in.
    #[field("1/64 in")]
    SixtyFourth,
}

/// Marks of a metric tape.
#[derive(Clone, Copy, Input)]
pub(crate) enum MetricTape {
    /// 1 mm.
    #[field("1 mm")]
    Millimetre,
    /// 0.5 mm.
    #[field("0.5 mm")]
    HalfMillimetre,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// The length itself, nothing rounded.
    #[field("Length")]
    length: Exact,
    /// The nearest mark of an inch tape.
    #[field("On an inch tape")]
    inches: Shown,
    /// The nearest mark of a metric tape.
    #[field("On a metric tape")]
    millimetres: Shown,
}

/// A length in words, and what rounding left over.
#[derive(Output)]
pub(crate) struct Shown {
    /// As it is called out.
    #[field("Mark")]
    mark: String,
    /// With feet, where there are any.
    #[field("In full")]
    full: String,
    /// The true length beyond the mark; short of it when negative.
    #[field("Left over")]
    left: Exact,
}

fn shown(reading: Reading) -> Shown {
    use crate::quantity::print;
    let mark = reading.shown().exact();
    let full = match reading.tape.units() {
        Units::Imperial => print::feet_inches(mark, 64),
        Units::Metric => print::millimetres(mark, print::TENTH_MM),
    };
    Shown { mark: print::plain(mark, reading.tape.units()), full, left: reading.left_over() }
}

impl Calculator for ReadALength {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "read-a-length",
        title: "Reading a length",
        question: "What did he write down?",
        step: 3,
        search: &["convert", "inches", "millimetres", "fraction", "feet", "tape"],
        headline: &["/inches/mark", "/millimetres/mark", "/length"],
        list: None,
        cautions: &[],
        sources: &[Source::new(HANDBOOK_44, "1 in = 25.4 mm exactly", Standing::Published)],
    };

    fn example(units: Units) -> Example {
        let (written, inch_tape) = match units {
            Units::Imperial => ("14' 5 3/8\"", "1/16 in"),
            Units::Metric => ("4403.725 mm", "1/32 in"),
        };
        Example {
            input: json!({ "written": written, "inch_tape": inch_tape, "metric_tape": "1 mm" }),
            expects: vec![
                ("/result/inches/mark", json!("173 3/8 in")),
                ("/result/inches/full", json!("14' 5 3/8\"")),
                ("/result/millimetres/mark", json!("4404 mm")),
            ],
            checked_against: "by hand: 14 x 12 + 5.375 = 173.375; times 25.4 = 4403.725",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let length = input.written;
        let inch = match input.inch_tape {
            InchTape::Eighth => Tape::Eighth,
            InchTape::Sixteenth => Tape::Sixteenth,
            InchTape::ThirtySecond => Tape::ThirtySecond,
            InchTape::SixtyFourth => Tape::SixtyFourth,
        };
        let metric = match input.metric_tape {
            MetricTape::Millimetre => Tape::Millimetre,
            MetricTape::HalfMillimetre => Tape::HalfMillimetre,
        };
        let count = length.exact().in_mm() / MILLIMETRE.in_mm();
        let inches = count / 25.4;
        let working = vec![
            Step::new("inches, as a decimal")
                .by("m / 25.4")
                .given("m", "millimetres", count)
                .gives("i", "inches", inches)
                .because("one inch is exactly 25.4 mm"),
        ];
        let mut notes = Vec::new();
        if length.is_negative() {
            notes.push(Note::check("A length below nothing: is it an offset to the left, or down?"));
        }
        let result = Output {
            length: length.exact(),
            inches: shown(inch.mark(length.exact())),
            millimetres: shown(metric.mark(length.exact())),
        };
        Ok(Answer { result, working, notes })
    }
}
