//! Closing checks as a question of its own.

use serde_json::json;

use super::closing::Closure;
use super::survey::{Along, WallLength};
use crate::catalogue::works::{PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Tape, Units, Within};

pub(crate) struct ClosingChecks;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// The first mark of the datum, read when the loop began.
    #[field("Datum, first reading")]
    loop_first: Within<0, 6_000_000>,
    /// The same mark, read again when the loop came round.
    #[field("Datum, read again")]
    loop_last: Within<0, 6_000_000>,
    /// Piers and openings, one after the other, from end to end.
    #[field("Parts", size(1..=40))]
    parts: Vec<Along>,
    /// Measured in one go.
    #[field("Whole wall")]
    whole: WallLength,
    /// The whole wall once more, by another person or another tape; empty where it was read once.
    #[field("Whole wall, read again", default)]
    again: Option<WallLength>,
    /// It says in which units the shop measures, and so how far readings may be apart.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Whether everything closes.
    #[field("Closes")]
    closes: bool,
    /// The check that is out by most of what it may be.
    #[field("Worst")]
    worst: &'static str,
    /// One line for each check.
    #[field("Checks")]
    checks: Vec<Check>,
}

/// One check.
#[derive(Output)]
pub(crate) struct Check {
    /// What is held against what.
    #[field("Check")]
    what: &'static str,
    /// How far it is out.
    #[field("Out by")]
    out: Length,
    /// How far it may be out.
    #[field("Limit")]
    limit: Length,
    /// Whether it closes.
    #[field("Closes")]
    closes: bool,
}

impl Calculator for ClosingChecks {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "closing-checks",
        title: "Closing checks",
        question: "Can I trust these numbers?",
        step: 3,
        search: &["loop", "sum", "check", "repeat", "survey", "datum"],
        headline: &["/closes", "/worst"],
        list: Some("/checks"),
        cautions: &["laser-light"],
        sources: &[
            Source::new(PRACTICE, "loops, sums and repeats", Standing::CommonPractice),
            Source::new(THIS_BOOK, "limits of 1/16 and 1/8 in, 1.5 and 3 mm", Standing::HouseDefault),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({
                    "loop_first": "40 in", "loop_last": "40 1/32 in",
                    "parts": ["34 3/4 in", "42 1/2 in", "35 3/8 in", "59 1/2 in", "44 5/8 in"], "whole": "216 3/4 in",
                    "again": "216 3/4 in", "tape": "1/16 in"
                }),
                expects: vec![("/result/closes", json!(true)), ("/result/checks/1/out/tape", json!("0 in"))],
                checked_against: "by hand: 34 3/4 + 42 1/2 + 35 3/8 + 59 1/2 + 44 5/8 = 216 3/4",
            },
            Units::Metric => Example {
                input: json!({
                    "loop_first": "1000 mm", "loop_last": "1002 mm",
                    "parts": ["883 mm", "1079 mm", "899 mm", "1511 mm", "1133 mm"], "whole": "5505 mm", "tape": "1 mm"
                }),
                expects: vec![("/result/closes", json!(false)), ("/result/worst", json!("datum loop"))],
                checked_against: "by hand: the parts sum to 5505; 2 mm is more than 1.5",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let units = input.tape.units();
        let parts: Vec<Length> = input.parts.iter().map(|part| part.get()).collect();
        let (first, last, whole) = (input.loop_first.get(), input.loop_last.get(), input.whole.get());
        let mut closures = vec![
            ("datum loop", Closure::repeat(first, last, units)),
            ("parts and whole", Closure::sum(&parts, whole, units)),
        ];
        if let Some(again) = input.again {
            closures.push(("whole wall read twice", Closure::repeat(whole, again.get(), units)));
        }
        let sum: Length = parts.iter().copied().sum();
        let working = vec![
            Step::new("datum loop")
                .by("abs(z - a)")
                .given("z", "read again", last)
                .given("a", "first reading", first)
                .gives("e", "out by", (last - first).size()),
            Step::new("parts and whole")
                .by("abs(S - L)")
                .given("S", Words::new("sum of {} parts").with(parts.len()).in_units(units), sum)
                .given("L", "whole wall", whole)
                .gives("e", "out by", (sum - whole).size()),
        ];
        let share = |closure: &Closure| closure.out.exact().ratio_to(closure.limit.exact());
        let worst = closures
            .iter()
            .max_by(|one, other| share(&one.1).total_cmp(&share(&other.1)))
            .map_or("none", |worst| worst.0);
        let closes = closures.iter().all(|(_, closure)| closure.closes());
        let mut notes = Vec::new();
        if !closes {
            notes.push(Note::hold(
                "Read again before the layout: a wall that does not close hides its error in the last bay.",
            ));
        }
        if input.again.is_none() {
            notes.push(Note::check("The wall was read once only: everything that follows rests on a single reading."));
        }
        let checks = closures
            .into_iter()
            .map(|(what, closure)| Check { what, out: closure.out, limit: closure.limit, closes: closure.closes() })
            .collect();
        Ok(Answer { result: Output { closes, worst, checks }, working, notes })
    }
}
