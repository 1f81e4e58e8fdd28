//! The scarf on a stud as a question of its own.

use serde_json::json;

use super::survey::{Along, Thickness, WallLength};
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::fixing::studs;
use crate::quantity::{Amount, Length, Physical, Reading, Tape, Units, Within, kind};
use crate::stock::scarf::{LongRail, lap};

pub(crate) struct ScarfJoint;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// The whole rail.
    #[field("Rail")]
    rail: WallLength,
    /// What one stick gives after its ends are trimmed.
    #[field("Usable stick")]
    usable: Within<300_000, 12_000_000>,
    /// One proved stud centre, from the rail's left end.
    #[field("One stud at")]
    first: Along,
    /// From centre to centre.
    #[field("Stud spacing", usual = ["12 in", "24 in"])]
    spacing: Within<200_000, 915_000>,
    /// Of the rail.
    #[field("Thickness")]
    thickness: Thickness,
    /// Between the cut and the face; 90 is a butt joint.
    #[field("Scarf angle")]
    angle: Physical<kind::Angle, 5_000, 90_000>,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// The stud of the first joint, or the end of the rail where no joint is needed.
    #[field("Join at")]
    at: Length,
    /// How far the pieces lap.
    #[field("Lap")]
    lap: Length,
    /// To their long points.
    #[field("Pieces")]
    pieces: Vec<Reading>,
    /// The studs of all joints.
    #[field("Joints")]
    joints: Vec<Length>,
    /// Every stud on which one joint would do.
    #[field("Studs that would do")]
    possible: Vec<Length>,
}

impl Calculator for ScarfJoint {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "scarf-joint",
        title: "Scarf on a stud",
        question: "The wall is longer than the stick: where do I join?",
        step: 9,
        search: &["scarf", "joint", "stud", "splice", "long rail", "stick"],
        headline: &["/at", "/lap"],
        list: Some("/pieces"),
        cautions: &["saw-blade"],
        sources: &[
            Source::new(GEOMETRY, "lap of a slanting cut", Standing::Derived),
            Source::new(PRACTICE, "joints on studs, balanced, staggered between rails", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "rail": "267 1/2 in", "usable": "191 in", "first": "16 in", "spacing": "16 in", "thickness": "3/4 in", "angle": 45, "tape": "1/16 in" }),
                expects: vec![
                    ("/result/at/tape", json!("128 in")),
                    ("/result/pieces/0/tape", json!("128 3/8 in")),
                    ("/result/pieces/1/tape", json!("139 7/8 in")),
                    ("/result/possible/0/tape", json!("80 in")),
                    ("/result/possible/6/tape", json!("176 in")),
                ],
                checked_against: "common practice arithmetic, worked by hand: 128 + 3/8 and 139 1/2 + 3/8",
            },
            Units::Metric => Example {
                input: json!({ "rail": "6800 mm", "usable": "4776 mm", "first": "400 mm", "spacing": "400 mm", "thickness": "18 mm", "angle": 45, "tape": "1 mm" }),
                expects: vec![("/result/at/tape", json!("3200 mm")), ("/result/pieces/0/tape", json!("3209 mm"))],
                checked_against: "by hand: 3200 leaves 3600, 3600 leaves 3200; 3200 + 18 / 2",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let rail = input.rail.get();
        let lap = lap(input.thickness.get(), input.angle.get());
        let centres = studs::centres(input.first.get(), input.spacing.get(), rail);
        let long = LongRail { from: Length::ZERO, to: rail, usable: input.usable.get(), lap, studs: &centres };
        let Some(joints) = long.joints() else {
            let why = Words::new(
                "no stud divides a rail of {} into pieces that sticks of {} give; use longer sticks, or fix blocking",
            )
            .with(rail)
            .with(input.usable);
            let instead = Words::of(rail);
            return Err(vec![Fault::new("/usable", Words::of(input.usable), why, instead)]);
        };
        let lengths = long.pieces(&joints);
        let at = joints.first().copied().unwrap_or(rail);
        let working = vec![
            Step::new("lap of the scarf")
                .by(if lap == Length::ZERO { "0 * t" } else { "t / tan(a)" })
                .given("t", "thickness", input.thickness)
                .given("a", "scarf angle", Amount::<kind::Angle>::of(input.angle.get()))
                .gives("s", "lap", lap),
            Step::new("first piece, to its long point")
                .by("x + s * k / 2")
                .given("x", "stud of the first joint", at)
                .given("s", "lap", lap)
                .given("k", "joints on this piece", joints.len().min(1))
                .gives("L", "first piece", lengths.first().copied().unwrap_or(rail)),
        ];
        let mut notes = Vec::new();
        if joints.is_empty() {
            notes.push(Note::remark("One stick is long enough: no joint."));
        } else {
            notes.push(Note::remark("Glue the scarf and nail through both pieces into the stud. Keep joints off plates and 12 in (300 mm) from openings, and on different studs from rail to rail."));
        }
        let result = Output {
            at,
            lap,
            pieces: lengths.iter().map(|length| input.tape.mark(length.exact())).collect(),
            joints,
            possible: long.single_joints(),
        };
        Ok(Answer { result, working, notes })
    }
}
