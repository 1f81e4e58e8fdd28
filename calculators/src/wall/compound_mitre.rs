//! Compound cuts as a question of its own.

use serde_json::json;

use super::saw::compound;
use super::survey::CornerAngle;
use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step};
use crate::quantity::{Amount, Physical, Units, kind};

pub(crate) struct CompoundMitre;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Between the back of the moulding and the wall.
    #[field("Spring angle from the wall", usual = ["35 deg", "55 deg"])]
    spring: Physical<kind::Angle, 0, 90_000>,
    /// Between the two walls, measured.
    #[field("Corner angle", usual = ["86 deg", "94 deg"])]
    corner: CornerAngle,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Table turned by, from a square cut.
    #[field("Mitre")]
    mitre: Amount<kind::Angle>,
    /// Blade tilted by.
    #[field("Bevel")]
    bevel: Amount<kind::Angle>,
}

impl Calculator for CompoundMitre {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "compound-mitre",
        title: "Compound mitre",
        question: "How do I cut a crown that lies flat on the saw?",
        step: 9,
        search: &["crown", "cornice", "spring", "bevel", "mitre", "miter", "crown moulding"],
        headline: &["/mitre", "/bevel"],
        list: None,
        cautions: &["saw-blade"],
        sources: &[Source::new(GEOMETRY, "a plane through a leaning moulding", Standing::Derived)],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "spring": 38, "corner": 90 }),
            expects: vec![("/result/mitre/text", json!("31.62°")), ("/result/bevel/text", json!("33.86°"))],
            checked_against: "published values for 38° and 90°: 31.619, 33.863, checked there by vectors",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (spring, corner) = (input.spring.get(), input.corner.get());
        let cut = compound(spring, corner);
        let angle = |degrees: f64| Amount::<kind::Angle>::of(degrees);
        let working = vec![
            Step::new("mitre")
                .by("atan(sin(s) / tan(A / 2))")
                .given("s", "spring angle from the wall", angle(spring))
                .given("A", "corner angle", angle(corner))
                .gives("m", "mitre", angle(cut.mitre)),
            Step::new("bevel")
                .by("asin(cos(s) * cos(A / 2))")
                .given("s", "spring angle from the wall", angle(spring))
                .given("A", "corner angle", angle(corner))
                .gives("b", "bevel", angle(cut.bevel)),
        ];
        let notes = vec![Note::remark(
            "38° and 52° are the same moulding turned over: say from which face the spring was measured.",
        )];
        Ok(Answer { result: Output { mitre: angle(cut.mitre), bevel: angle(cut.bevel) }, working, notes })
    }
}
