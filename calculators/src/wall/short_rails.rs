//! Short rails between boards that run through, each as long as its own bay, as a question of its own.

use serde_json::json;

use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Exact, Length, Reading, Run, Tape, Units, Within};

pub(crate) struct ShortRails;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Each bay as measured at the height of the rail, boards fixed, from left to right.
    #[field("Bays at this height", size(1..=200))]
    bays: Vec<Bay>,
    /// Taken off each rail, both ends together, so that it goes in without force.
    #[field("Clearance")]
    clearance: Within<0, 10_000>,
    /// The finest mark used; the saw stop has half of it.
    #[field("Tape", default)]
    tape: Tape,
}

/// One bay.
#[derive(Clone, Copy, Input)]
pub(crate) struct Bay {
    /// From board to board.
    #[field("Bay")]
    width: Within<20_000, 3_000_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// The shortest rail.
    #[field("Shortest")]
    shortest: Reading,
    /// The longest rail.
    #[field("Longest")]
    longest: Reading,
    /// All rails together, without kerfs.
    #[field("Together")]
    together: Run,
    /// In the order of the bays.
    #[field("Rails")]
    rails: Vec<Rail>,
}

/// One rail.
#[derive(Output)]
pub(crate) struct Rail {
    /// From the left.
    #[field("Bay")]
    bay: usize,
    /// Rounded down: it must go in.
    #[field("Length")]
    length: Reading,
}

impl Calculator for ShortRails {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "short-rails",
        title: "Short rails between boards",
        question: "How long is each rail between boards that run through?",
        step: 9,
        search: &["rail between boards", "short rail", "infill rail", "between stiles", "dado rail"],
        headline: &["/shortest", "/longest", "/together"],
        list: Some("/rails"),
        cautions: &["saw-blade"],
        sources: &[Source::new(PRACTICE, "each rail to its own bay, rounded down", Standing::CommonPractice)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "bays": [{ "width": "12 7/8 in" }, { "width": "12 15/16 in" }, { "width": "12 13/16 in" }], "clearance": "1/64 in", "tape": "1/16 in" }),
                expects: vec![
                    ("/result/shortest/tape", json!("12 25/32 in")),
                    ("/result/longest/tape", json!("12 29/32 in")),
                ],
                checked_against: "by hand: 12 13/16 less 1/64 is 12 51/64, down to 12 25/32; 12 15/16 less 1/64, down to 12 29/32",
            },
            Units::Metric => Example {
                input: json!({ "bays": [{ "width": "327 mm" }, { "width": "328.5 mm" }, { "width": "325.5 mm" }], "clearance": "0.4 mm", "tape": "1 mm" }),
                expects: vec![("/result/shortest/tape", json!("325 mm")), ("/result/longest/tape", json!("328 mm"))],
                checked_against: "by hand: 325.5 less 0.4, down to 325; 328.5 less 0.4, down to 328",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let clearance = input.clearance.get();
        let tape = super::defaults::saw_tape(input.tape);
        let lengths: Vec<Exact> = input.bays.iter().map(|bay| (bay.width.get() - clearance).exact()).collect();
        let shortest = lengths.iter().min().copied().unwrap_or(Exact::ZERO);
        let longest = lengths.iter().max().copied().unwrap_or(Exact::ZERO);
        let together = lengths.iter().fold(Exact::ZERO, |sum, length| sum + *length);
        let working = input.bays.iter().zip(&lengths).take(12).enumerate().map(|(n, (bay, length))| {
            Step::new(Words::new("rail {}").with(n + 1))
                .by("g - c")
                .given("g", "bay", bay.width)
                .given("c", "clearance", input.clearance)
                .gives("l", "length before rounding down", *length)
        });
        let mut notes = Vec::new();
        if longest - shortest >= tape.step().exact() {
            notes.push(Note::check(
                Words::new("The bays differ by {} at this height: number each rail, and cut none to the mean.")
                    .with(longest - shortest),
            ));
        }
        let rails = lengths.iter().enumerate().map(|(n, length)| Rail { bay: n + 1, length: tape.short(*length) });
        let result = Output {
            shortest: tape.short(shortest),
            longest: tape.short(longest),
            together: Run::of(together.up_to(Length::from_nm(1))),
            rails: rails.collect(),
        };
        Ok(Answer { result, working: working.collect(), notes })
    }
}
