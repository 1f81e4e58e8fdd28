//! Laser offsets: how far up or down from the red line, and how far the line itself may be out.

use serde_json::json;

use super::survey::{Along, Height};
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Exact, Length, Reading, Tape, Units, Within};

pub(crate) struct LaserOffsets;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Above the highest point of the floor.
    #[field("Datum")]
    datum: Within<200_000, 3_000_000>,
    /// Above that same point of the floor, not above the floor under each board.
    #[field("Heights", size(1..=24))]
    heights: Vec<Height>,
    /// From the laser to the farthest mark.
    #[field("Farthest mark")]
    distance: Along,
    /// How far the line may be out, from the laser's sheet.
    #[field("Laser out by")]
    out_by: Within<0, 25_000>,
    /// The distance for which the sheet says so.
    #[field("At a distance of")]
    out_at: Within<1_000_000, 100_000_000>,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// At the farthest mark.
    #[field("Line out by at most")]
    error: Exact,
    /// One for each height, in the order given.
    #[field("Offsets")]
    offsets: Vec<Offset>,
}

/// One height.
#[derive(Output)]
pub(crate) struct Offset {
    /// As given.
    #[field("Height")]
    height: Length,
    /// Up from the line; down is negative.
    #[field("From the line")]
    offset: Reading,
}

impl Calculator for LaserOffsets {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "laser-offsets",
        title: "Laser offsets",
        question: "How far up or down from the red line?",
        step: 8,
        search: &["laser", "datum", "level", "height", "line"],
        headline: &["/offsets/0/offset", "/error"],
        list: Some("/offsets"),
        cautions: &["laser-light"],
        sources: &[
            Source::new(GEOMETRY, "a height less the datum", Standing::Derived),
            Source::new(PRACTICE, "one datum for the whole room", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "datum": "40 in", "heights": ["58 1/2 in", "5 1/2 in"], "distance": "18'", "out_by": "1/8 in", "out_at": "30'", "tape": "1/16 in" }),
                expects: vec![
                    ("/result/offsets/0/offset/tape", json!("18 1/2 in")),
                    ("/result/offsets/1/offset/tape", json!("-34 1/2 in")),
                    ("/result/error/tape", json!("5/64 in")),
                ],
                checked_against: "by hand: 58 1/2 - 40, 5 1/2 - 40, 1/8 x 18 / 30 = 0.075",
            },
            Units::Metric => Example {
                input: json!({ "datum": "1016 mm", "heights": ["1485 mm", "140 mm"], "distance": "5.5 m", "out_by": "3 mm", "out_at": "10 m", "tape": "1 mm" }),
                expects: vec![
                    ("/result/offsets/0/offset/tape", json!("469 mm")),
                    ("/result/offsets/1/offset/tape", json!("-876 mm")),
                    ("/result/error/text", json!("1.7 mm")),
                ],
                checked_against: "by hand: 1485 - 1016, 140 - 1016, 3 x 5.5 / 10 = 1.65",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let datum = input.datum.get();
        let error =
            input.out_by.get().exact().times(input.distance.get().nm(), input.out_at.get().nm()).unwrap_or(Exact::ZERO);
        let mut working: Vec<Step> = input
            .heights
            .iter()
            .map(|height| {
                Step::new(Words::new("offset of {}").with(*height))
                    .by("h - d")
                    .given("h", "height", *height)
                    .given("d", "datum", datum)
                    .gives("o", "from the line", height.get() - datum)
            })
            .collect();
        working.push(
            Step::new("how far the line may be out")
                .by("e * x / y")
                .given("e", "laser out by", input.out_by)
                .given("x", "farthest mark", input.distance)
                .given("y", "at a distance of", input.out_at)
                .gives("E", "line out by at most", error),
        );
        let mut notes = vec![Note::remark(
            "The datum is one level line. A floor that falls shows as longer boards, not as a falling rail.",
        )];
        if input.tape.step().exact() <= error {
            notes.push(Note::check(Words::new(
                "The line may be out by more than a mark: set the laser up nearer, or turn it round and take the mean.",
            )));
        }
        let offset =
            |height: &Height| Offset { height: height.get(), offset: input.tape.mark((height.get() - datum).exact()) };
        let offsets = input.heights.iter().map(offset).collect();
        Ok(Answer { result: Output { error, offsets }, working, notes })
    }
}
