//! How far a board or rail moves between the driest and the dampest month, and the gap to leave for it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::json;

use super::moisture;
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Note, Source, Standing, Step, Words};
use crate::quantity::{Length, Physical, Units, Within, kind};

/// What moves.
#[derive(Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
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
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Input {
    /// Solid wood lengthways is taken not to move.
    #[schemars(title = "What moves")]
    what: Moving,
    /// Width, length or thickness, as it moves.
    #[schemars(title = "Size")]
    size: Within<1_000, 30_000_000>,
    /// Driest in service.
    #[schemars(title = "Moisture, driest", extend("x-usual" = ["5 %", "12 %"]))]
    driest: Physical<kind::Percent, 1_000, 30_000>,
    /// Dampest in service.
    #[schemars(title = "Moisture, dampest", extend("x-usual" = ["5 %", "14 %"]))]
    dampest: Physical<kind::Percent, 1_000, 30_000>,
    /// For solid wood: change for each point of moisture; flat-sawn is about twice quarter-sawn.
    #[schemars(title = "Coefficient of the species")]
    coefficient: Option<Physical<kind::Number, 0, 10>>,
}

/// What is answered.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Output {
    /// From driest to dampest.
    #[schemars(title = "Moves by")]
    change: Length,
    /// Half of it at each end, up to the next 1/32 in or half millimetre.
    #[schemars(title = "Gap at each end")]
    gap: Length,
    /// The same with the product standard's upper bound, for fibreboard in plane.
    #[schemars(title = "At most, by the product standard")]
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
        search: &["shrink", "swell", "expansion", "gap", "season", "MDF"],
        headline: &["/change", "/gap"],
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
            return Err(vec![Fault::new("/dampest", Words::new("{}").with(input.dampest), why, "12 %")]);
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
        let gap = change.exact().half().up_to(Length::from_nm(500_000));
        let bound = (input.what == Moving::FibreboardInPlane)
            .then(|| Length::nearest_mm(size.in_mm() * moisture::MDF_BOUND.value));
        let working = vec![
            Step::new("change from driest to dampest")
                .by("s * c * (M - m)")
                .given("s", "size", input.size)
                .given("c", "change for each point of moisture", coefficient)
                .given("M", "moisture, dampest", input.dampest)
                .given("m", "moisture, driest", input.driest)
                .gives("d", "moves by", change),
            Step::new("gap at each end")
                .given("d", "moves by", change)
                .gives("g", "gap", gap)
                .because("half at each end, up to the next half millimetre"),
        ];
        let mut notes = Vec::new();
        if input.what == Moving::SolidAcross && (input.driest.get() < 6.0 || input.dampest.get() > 14.0) {
            notes.push(Note::check(
                "The coefficient holds from 6 to 14 % moisture; outside it the figure is a guide only.",
            ));
        }
        notes.push(Note::remark("An upper figure: paint slows it. Pin one end, let the other go, glue scarfs, and never butt tight in the dry month."));
        Ok(Answer { result: Output { change, gap, bound }, working, notes })
    }
}
