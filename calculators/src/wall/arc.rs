//! The radius of a bow or an arch from chord and rise, as a question of its own.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::json;

use super::squareness::arc_radius;
use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Note, Source, Standing, Step, Words};
use crate::quantity::{Length, Units, Within};

pub(crate) struct ArcRadius;

/// What is asked.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Input {
    /// Length of the straightedge, or width of the arch.
    #[schemars(title = "Chord")]
    chord: Within<25_000, 12_000_000>,
    /// The gap in its middle.
    #[schemars(title = "Rise")]
    rise: Within<100, 6_000_000>,
}

/// What is answered.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Output {
    /// Of the whole circle.
    #[schemars(title = "Radius")]
    radius: Length,
}

impl Calculator for ArcRadius {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "arc-radius",
        title: "Arc from a straightedge",
        question: "What radius is this bow or arch?",
        step: 3,
        search: &["arc", "arch", "bow", "radius", "sagitta", "curve"],
        headline: &["/radius"],
        list: None,
        cautions: &[],
        sources: &[Source::new(GEOMETRY, "chord and rise of a circle", Standing::Derived)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "chord": "48 in", "rise": "1/4 in" }),
                expects: vec![("/result/radius/tape", json!("1152 1/8 in"))],
                checked_against: "published value: 48² / (8 x 0.25) + 0.125 = 1152.125",
            },
            Units::Metric => Example {
                input: json!({ "chord": "1200 mm", "rise": "12 mm" }),
                expects: vec![("/result/radius/tape", json!("15006 mm"))],
                checked_against: "published value: 1200² / (8 x 12) + 6 = 15006",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (chord, rise) = (input.chord.get(), input.rise.get());
        let Some(radius) = arc_radius(chord, rise).filter(|_| rise <= chord) else {
            let why = Words::new("an arc rises at most as far as its chord is long, {}").with(chord);
            return Err(vec![Fault::new(
                "/rise",
                Words::new("{}").with(rise),
                why,
                Words::new("{}").with(chord.exact().half()),
            )]);
        };
        let working = vec![
            Step::new("radius")
                .by("c ^ 2 / (8 * s) + s / 2")
                .given("c", "chord", chord)
                .given("s", "rise", rise)
                .gives("R", "radius", radius),
        ];
        let mut notes = Vec::new();
        if radius < Length::mm(3_000) {
            notes.push(Note::check("A curve this tight is no bow: boards are kerfed, laminated or cut from the sheet. The wall plan is for straight walls."));
        }
        Ok(Answer { result: Output { radius }, working, notes })
    }
}
