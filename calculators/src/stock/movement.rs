//! How far a board or rail moves between the driest and the dampest month, and the gap to leave for it.

use serde_json::json;

use super::moisture;
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Physical, Reading, Tape, Units, Within, kind};

/// What moves.
#[derive(Clone, Copy, PartialEq, Eq, Input)]
pub(crate) enum Moving {
    /// Solid wood across its grain.
    SolidAcross,
    /// Fibreboard in its length or width.
    FibreboardInPlane,
    /// Fibreboard in its thickness.
    FibreboardThickness,
}

pub(crate) struct Movement;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Solid wood lengthways is taken not to move.
    #[field("What moves")]
    what: Moving,
    /// Width, length or thickness, as it moves.
    #[field("Size")]
    size: Within<1_000, 30_000_000>,
    /// Driest in service.
    #[field("Moisture, driest", usual = ["5 %", "12 %"])]
    driest: Physical<kind::Percent, 1_000, 30_000>,
    /// Dampest in service.
    #[field("Moisture, dampest", usual = ["5 %", "14 %"])]
    dampest: Physical<kind::Percent, 1_000, 30_000>,
    /// For solid wood: change for each point of moisture; flat-sawn is about twice quarter-sawn.
    #[field("Coefficient of the species")]
    coefficient: Option<Physical<kind::Number, 0, 10>>,
}

/// The tape a gap is told on: 1/32 in, or half millimetres.
const GAP: Tape = Tape::ThirtySecond;

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// From driest to dampest.
    #[field("Moves by")]
    change: Length,
    /// Both ends or edges free: half of it at each, up to the next 1/32 in or half millimetre.
    #[field("Gap at each end, both free")]
    gap: Reading,
    /// One end or edge pinned: all of it at the other, up to the next 1/32 in or half millimetre.
    #[field("Gap at the free end, one pinned")]
    gap_pinned: Reading,
    /// The product standard's upper bound for its own test, for fibreboard in plane; none where the change of moisture goes further.
    #[field("At most, by the product standard")]
    bound: Option<Length>,
}

impl Calculator for Movement {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "board-movement",
        title: "Movement with the seasons",
        question: "How far will it move, and what gap do I leave?",
        step: 6,
        search: &["shrink", "swell", "expansion", "gap", "season", "MDF", "swelling", "summer", "winter", "shrinking"],
        headline: &["/change", "/gap", "/gap_pinned"],
        list: None,
        cautions: &[],
        sources: &[
            moisture::WIDTH_SOURCE,
            moisture::MDF_IN_PLANE.source,
            moisture::MDF_BOUND.source,
            Source::new(
                PRACTICE,
                "1/16 in is left at each end of a long fibreboard rail, and scarfs are glued",
                Standing::CommonPractice,
            ),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "what": "solid-across", "size": "5 1/2 in", "driest": "6 %", "dampest": "10 %", "coefficient": 0.00369 }),
                expects: vec![("/result/change/tape", json!("5/64 in"))],
                checked_against: "Wood Handbook table 13-5, red oak tangential: 5.5 x 0.00369 x 4 = 0.0812 in",
            },
            Units::Metric => Example {
                input: json!({ "what": "fibreboard-in-plane", "size": "2440 mm", "driest": "6 %", "dampest": "9 %" }),
                expects: vec![("/result/change/tape", json!("3.7 mm")), ("/result/gap/tape", json!("2 mm"))],
                checked_against: "industry guidance by hand: 2440 x 0.0005 x 3 = 3.66 mm",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let points = input.dampest.get() - input.driest.get();
        if points < 0.0 {
            let why = Words::new("must not be drier than the driest, {}").with(input.driest);
            return Err(vec![Fault::new("/dampest", Words::of(input.dampest), why, "12 %")]);
        }
        let coefficient = match (input.what, input.coefficient) {
            (Moving::SolidAcross, None) => {
                let why = "solid wood needs its species' coefficient; the table names some";
                return Err(vec![Fault::new("/coefficient", "nothing", why, 0.00289)]);
            }
            (Moving::SolidAcross, Some(coefficient)) => coefficient.get(),
            (Moving::FibreboardInPlane, _) => moisture::MDF_IN_PLANE.value,
            (Moving::FibreboardThickness, _) => moisture::MDF_THICKNESS.value,
        };
        let size = input.size.get();
        let change = moisture::width_change(size, coefficient, points);
        let (gap, gap_pinned) = (GAP.long(change.exact().half()), GAP.long(change.exact()));
        // The bound of the standard's test is reached by so many points; beyond them it bounds nothing.
        let farthest = moisture::MDF_BOUND.value / moisture::MDF_IN_PLANE.value;
        let bound = (input.what == Moving::FibreboardInPlane && points <= farthest)
            .then(|| Length::nearest_mm(size.in_mm() * moisture::MDF_BOUND.value));
        let working = vec![
            Step::new("change from driest to dampest")
                .by("s * c * (M - m)")
                .given("s", "size", input.size)
                .given("c", "change for each point of moisture", coefficient)
                .given("M", "moisture, dampest", input.dampest)
                .given("m", "moisture, driest", input.driest)
                .gives("d", "moves by", change),
            Step::new("gap at each end, both free")
                .by("d / 2")
                .given("d", "moves by", change)
                .gives("g", "gap before rounding", change.exact().half())
                .because(
                    "then up to the next 1/32 in or half millimetre; with one end pinned the free one gets all of it",
                ),
        ];
        let mut notes = Vec::new();
        if input.what == Moving::SolidAcross && (input.driest.get() < 6.0 || input.dampest.get() > 14.0) {
            notes.push(Note::check(
                "The coefficient holds from 6 to 14 % moisture; outside it the figure is a guide only.",
            ));
        }
        if input.what == Moving::FibreboardInPlane && farthest < points {
            let words = Words::new(
                "{} points of moisture are more than the product standard's test covers, about {}: no bound is told.",
            );
            notes.push(Note::check(words.with(points).with(farthest)));
        }
        notes.push(Note::remark(if input.what == Moving::SolidAcross {
            "An upper figure: paint slows it. Each edge moves; where one is pinned, the other moves all of it. Never butt tight in the dry month."
        } else {
            "An upper figure: paint slows it. Pin the middle and leave a gap at both ends, or pin one end and leave all of it at the other. Glue scarfs. Never butt tight in the dry month."
        }));
        Ok(Answer { result: Output { change, gap, gap_pinned, bound }, working, notes })
    }
}
