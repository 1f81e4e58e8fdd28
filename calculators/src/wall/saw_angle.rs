//! The saw setting as a question of its own.

use serde_json::json;

use super::saw::{opening, setting};
use super::scheme::BoardWidth;
use super::survey::{CornerAngle, Thickness};
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Length, Units, kind};

/// A gap up to this wide is caulked; a wider one is cut again: 1/32 in. Common practice, no source.
const CAULKED: Length = Length::sixty_fourths(2);

pub(crate) struct SawAngle;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Between the two walls, measured; not what the saw shows.
    #[field("Corner angle", usual = ["86 deg", "94 deg"])]
    corner: CornerAngle,
    /// Of a piece that lies flat on the wall: it takes a bevel through its thickness.
    #[field("Thickness")]
    thickness: Thickness,
    /// Of a cap or shelf that lies level: it takes a mitre across its width.
    #[field("Width of a cap")]
    width: BoardWidth,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Both pieces, from a square cut.
    #[field("Saw setting")]
    setting: Amount<kind::Angle>,
    /// How far a rail flat on the wall would open, cut at 45°.
    #[field("A rail cut at 45° opens")]
    rail_opens: Length,
    /// How far a cap would open, cut at 45°.
    #[field("A cap cut at 45° opens")]
    cap_opens: Length,
}

impl Calculator for SawAngle {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "saw-angle",
        title: "Saw setting",
        question: "What do I set the saw to, mitre or bevel?",
        step: 9,
        search: &[
            "mitre",
            "miter",
            "bevel",
            "corner",
            "45",
            "angle",
            "not square",
            "out of square",
            "mitre angle",
            "saw setting",
        ],
        headline: &["/setting", "/rail_opens", "/cap_opens"],
        list: None,
        cautions: &["saw-blade"],
        sources: &[
            Source::new(GEOMETRY, "half of a corner", Standing::Derived),
            Source::new(PRACTICE, "up to 1/32 in (0.8 mm) is caulked", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        let expects = vec![("/result/setting/text", json!("45.75°"))];
        match units {
            Units::Imperial => Example {
                input: json!({ "corner": 88.5, "thickness": "3/4 in", "width": "3 1/2 in" }),
                expects: [
                    expects,
                    vec![("/result/rail_opens/tape", json!("1/32 in")), ("/result/cap_opens/tape", json!("1/8 in"))],
                ]
                .concat(),
                checked_against: "by hand: 90 - 88.5 / 2; 0.028 and 0.130 in on the cut face",
            },
            Units::Metric => Example {
                input: json!({ "corner": 88.5, "thickness": "18 mm", "width": "90 mm" }),
                expects: [
                    expects,
                    vec![("/result/rail_opens/tape", json!("0.7 mm")), ("/result/cap_opens/tape", json!("3.3 mm"))],
                ]
                .concat(),
                checked_against: "by hand: 90 - 88.5 / 2; 18 and 90 / cos 45 x 2 x 0.75 degrees in radians",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let corner = input.corner.get();
        let saw = setting(corner);
        let (rail_opens, cap_opens) =
            (opening(input.thickness.get(), 45.0, corner), opening(input.width.get(), 45.0, corner));
        let angle = |degrees: f64| Amount::<kind::Angle>::of(degrees);
        let gap = |what: &'static str, name: &'static str, depth: Length, opens: Length| {
            Step::new(what)
                .by("d / cos(45) * 2 * abs(s - 45) * pi / 180")
                .given("d", name, depth)
                .given("s", "saw setting", angle(saw))
                .gives("e", "opens", opens)
        };
        let working = vec![
            Step::new("saw setting, both pieces").by("90 - A / 2").given("A", "corner angle", angle(corner)).gives(
                "s",
                "saw setting",
                angle(saw),
            ),
            gap("a rail flat on the wall, cut at 45°", "thickness", input.thickness.get(), rail_opens),
            gap("a cap, cut at 45°", "width of a cap", input.width.get(), cap_opens),
        ];
        let mut notes = Vec::new();
        for (what, opens) in [("rail", rail_opens), ("cap", cap_opens)] {
            if CAULKED < opens {
                notes.push(Note::check(Words::new("At 45° a {} would open {}: set the saw.").with(what).with(opens)));
            }
        }
        notes.push(Note::remark(
            "Boards and rails flat on the wall take the setting as a bevel, caps and shelves as a mitre. Cut a short test pair first.",
        ));
        Ok(Answer { result: Output { setting: angle(saw), rail_opens, cap_opens }, working, notes })
    }
}
