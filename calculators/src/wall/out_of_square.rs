//! A rectangle and its two diagonals, as a question of its own.

use serde_json::json;

use super::squareness::{diagonal, skew};
use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Length, Units, Within, kind};

pub(crate) struct OutOfSquare;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Of two equal, opposite sides.
    #[field("Side")]
    side: Within<25_000, 30_000_000>,
    /// Of the other two.
    #[field("Other side")]
    other: Within<25_000, 30_000_000>,
    /// From corner to corner.
    #[field("Longer diagonal")]
    long: Within<25_000, 45_000_000>,
    /// From corner to corner.
    #[field("Shorter diagonal")]
    short: Within<25_000, 45_000_000>,
    /// As you stand before the wall or the frame; left empty, the answer cannot say which way it leans.
    #[field("The longer one runs", default)]
    runs: Option<Runs>,
}

/// Which way the longer diagonal runs.
#[derive(Clone, Copy, PartialEq, Eq, Input)]
pub(crate) enum Runs {
    /// From bottom left to top right.
    UpToTheRight,
    /// From bottom right to top left.
    UpToTheLeft,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// How far the corners are from 90°.
    #[field("Out of square by")]
    skew: Amount<kind::Angle>,
    /// What both diagonals of a true rectangle would be.
    #[field("Square would be")]
    square: Length,
    /// How far one end of the other side has to move to make it square.
    #[field("Move a corner by")]
    shift: Length,
    /// And which corners are sharp.
    #[field("It leans")]
    leans: Option<&'static str>,
}

impl Calculator for OutOfSquare {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "out-of-square",
        title: "Diagonals",
        question: "Are these four corners square?",
        step: 3,
        search: &["diagonal", "rectangle", "square", "frame", "skew"],
        headline: &["/skew", "/leans", "/shift"],
        list: None,
        cautions: &[],
        sources: &[Source::new(GEOMETRY, "diagonals of a parallelogram", Standing::Derived)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "side": "36 in", "other": "48 in", "long": "60 1/4 in", "short": "59 3/4 in", "runs": "up-to-the-right" }),
                expects: vec![("/result/square/tape", json!("60 in")), ("/result/skew/text", json!("0.5°"))],
                checked_against: "by hand: 3-4-5 times twelve; asin((60.25² - 59.75²) / (4 x 36 x 48)) = 0.497",
            },
            Units::Metric => Example {
                input: json!({ "side": "1220 mm", "other": "2440 mm", "long": "2737.5 mm", "short": "2718.5 mm", "runs": "up-to-the-right" }),
                expects: vec![("/result/square/text", json!("2728 mm")), ("/result/skew/text", json!("0.5°"))],
                checked_against: "published values for 2440 by 1220: diagonal 2728.003; 2737.509 and 2718.464 are 0.5° out",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (side, other, long, short) = (input.side.get(), input.other.get(), input.long.get(), input.short.get());
        let square = diagonal(side, other);
        let said = |length: Length| Words::of(length);
        let mut faults = Vec::new();
        if long < short {
            faults.push(Fault::new(
                "/long",
                said(long),
                Words::new("the longer diagonal is shorter than the other, {}").with(short),
                said(short),
            ));
        }
        for (pointer, length) in [("/long", long), ("/short", short)] {
            if side + other <= length || length <= (side - other).size() {
                let why = Words::new("sides of {} and {} never have such a diagonal").with(side).with(other);
                faults.push(Fault::new(pointer, said(length), why, said(square)));
            }
        }
        let found = skew(side, other, long, short).filter(|_| faults.is_empty());
        let Some(degrees) = found else {
            if faults.is_empty() {
                faults.push(Fault::new(
                    "/long",
                    said(long),
                    "these diagonals belong to no four-sided shape with these sides",
                    said(square),
                ));
            }
            return Err(faults);
        };
        let shift = Length::nearest_mm(other.in_mm() * libm::sin(degrees.to_radians()));
        let working = vec![
            Step::new("out of square")
                .by("asin((D ^ 2 - d ^ 2) / (4 * a * b))")
                .given("D", "longer diagonal", long)
                .given("d", "shorter diagonal", short)
                .given("a", "side", side)
                .given("b", "other side", other)
                .gives("e", "out of square by", Amount::<kind::Angle>::of(degrees)),
            Step::new("diagonal of a true rectangle")
                .by("sqrt(a ^ 2 + b ^ 2)")
                .given("a", "side", side)
                .given("b", "other side", other)
                .gives("s", "square would be", square),
        ];
        let mut notes = vec![Note::remark(
            "Equal diagonals prove a rectangle only where opposite sides are equal: measure all four.",
        )];
        // In a parallelogram both squared diagonals together are twice both squared sides.
        let sum = long.in_mm() * long.in_mm() + short.in_mm() * short.in_mm();
        let should = 2.0 * square.in_mm() * square.in_mm();
        if (sum - should).abs() > 0.004 * should {
            notes.push(Note::check(
                "These sides and diagonals do not belong together: opposite sides differ, or a reading is wrong.",
            ));
        }
        let leans = input.runs.filter(|_| degrees > 0.0).map(|runs| match runs {
            Runs::UpToTheRight => "to the right: push the top to the left; sharp at bottom left and top right",
            Runs::UpToTheLeft => "to the left: push the top to the right; sharp at bottom right and top left",
        });
        if leans.is_none() && degrees > 0.0 {
            notes.push(Note::remark(
                "The two corners at the ends of the longer diagonal are the sharp ones. Push them towards each other.",
            ));
        }
        Ok(Answer { result: Output { skew: Amount::of(degrees), square, shift, leans }, working, notes })
    }
}
