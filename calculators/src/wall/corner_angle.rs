//! A corner's angle from a tape, as a question of its own.

use serde_json::json;

use super::squareness::{corner_from_tape, diagonal};
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Length, Units, Within, kind};

pub(crate) struct CornerAngle;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// From the corner along one wall.
    #[field("First leg", usual = ["12 in", "48 in"])]
    leg: Within<100_000, 3_000_000>,
    /// From the corner along the other wall.
    #[field("Second leg", usual = ["12 in", "48 in"])]
    other_leg: Within<100_000, 3_000_000>,
    /// From the end of one leg to the end of the other.
    #[field("Across")]
    across: Within<10_000, 6_000_000>,
    /// How well the tape can be read there.
    #[field("Read to within")]
    reading: Within<100, 6_400>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Between the two walls.
    #[field("Corner")]
    angle: Amount<kind::Angle>,
    /// What the reading of the tape leaves open, either way.
    #[field("Give or take")]
    give_or_take: Amount<kind::Angle>,
    /// What the tape would show across if the corner were square.
    #[field("Square would be")]
    square: Length,
}

impl Calculator for CornerAngle {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "corner-angle",
        title: "Corner from a tape",
        question: "How far out of square is this corner?",
        step: 3,
        search: &["square", "corner", "angle", "3-4-5", "out of square"],
        headline: &["/angle", "/give_or_take", "/square"],
        list: None,
        cautions: &[],
        sources: &[
            Source::new(GEOMETRY, "three sides of a triangle", Standing::Derived),
            Source::new(PRACTICE, "legs of 12 to 48 in", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "leg": "24 in", "other_leg": "24 in", "across": "33 1/2 in", "reading": "1/16 in" }),
                expects: vec![
                    ("/result/angle/text", json!("88.52°")),
                    ("/result/give_or_take/text", json!("0.21°")),
                    ("/result/square/tape", json!("33 15/16 in")),
                ],
                checked_against: "by hand: acos((2 x 24² - 33.5²) / (2 x 24²)); 1/16 in of diagonal is 0.21°",
            },
            Units::Metric => Example {
                input: json!({ "leg": "600 mm", "other_leg": "600 mm", "across": "837.3 mm", "reading": "1.5 mm" }),
                expects: vec![("/result/angle/text", json!("88.49°")), ("/result/square/text", json!("848.5 mm"))],
                checked_against: "by hand: acos((2 x 600² - 837.3²) / (2 x 600²)); 600 x √2",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (leg, other, across, reading) =
            (input.leg.get(), input.other_leg.get(), input.across.get(), input.reading.get());
        let square = diagonal(leg, other);
        let Some(inner) = corner_from_tape(leg, other, across) else {
            let why = Words::new("legs of {} and {} never stand so far apart; across must lie between {} and {}")
                .with(leg)
                .with(other)
                .with((leg - other).size())
                .with(leg + other);
            return Err(vec![Fault::new("/across", Words::of(across), why, Words::of(square))]);
        };
        let wider = corner_from_tape(leg, other, across + reading);
        let narrower = corner_from_tape(leg, other, across - reading);
        let spread = wider.map_or(0.0, |wider| wider - inner).max(narrower.map_or(0.0, |narrower| inner - narrower));
        let angle = |degrees: f64| Amount::<kind::Angle>::of(degrees);
        let working = vec![
            Step::new("angle between the legs")
                .by("acos((a ^ 2 + b ^ 2 - c ^ 2) / (2 * a * b))")
                .given("a", "first leg", leg)
                .given("b", "second leg", other)
                .given("c", "across", across)
                .gives("A", "corner", angle(inner)),
            Step::new("across a square corner")
                .by("sqrt(a ^ 2 + b ^ 2)")
                .given("a", "first leg", leg)
                .given("b", "second leg", other)
                .gives("s", "square would be", square),
        ];
        let mut notes = Vec::new();
        if (inner - 90.0).abs() <= spread {
            notes.push(Note::remark("Within what the tape can tell, this corner is square."));
        }
        if spread > 0.3 {
            notes.push(Note::check(
                "Longer legs tell more: measure out to 48 in (1200 mm) where the walls are straight.",
            ));
        }
        notes.push(Note::remark(
            "An outside corner: hold two sticks along the walls, past the corner, and measure between them.",
        ));
        Ok(Answer { result: Output { angle: angle(inner), give_or_take: angle(spread), square }, working, notes })
    }
}
