//! Where a joint will open in a year: movement against what the caulk in it can stretch.

use serde_json::json;

use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Length, Physical, Units, Within, kind};

/// A joint and what happens to it.
#[derive(Input)]
pub(crate) struct Joint {
    /// As you would say it: scarf over the door, left corner.
    #[field("Joint", size(1..=40))]
    name: String,
    /// From the movement calculation, what opens at this joint.
    #[field("Opens by")]
    opens: Within<0, 25_000>,
    /// Of the caulk across the joint.
    #[field("Width of the caulk")]
    bead: Within<500, 25_000>,
}

pub(crate) struct CrackForecast;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Movement on its sheet: 12.5 % and 25 % are usual classes.
    #[field("Caulk can stretch")]
    capacity: Physical<kind::Percent, 1_000, 100_000>,
    /// Each joint that could open.
    #[field("Joints", size(1..=40))]
    joints: Vec<Joint>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Joints that open further than their caulk stretches.
    #[field("Joints that will open")]
    opening: usize,
    /// The worst first.
    #[field("Joints, the worst first")]
    joints: Vec<Row>,
}

/// One joint.
#[derive(Output)]
pub(crate) struct Row {
    /// Its name.
    #[field("Joint")]
    joint: String,
    /// Stretch over its width.
    #[field("Stretch")]
    stretch: Amount<kind::Percent>,
    /// What it can take.
    #[field("Takes")]
    takes: Length,
    /// In words.
    #[field("Outlook")]
    outlook: &'static str,
}

impl Calculator for CrackForecast {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "joint-outlook",
        title: "Which joints will open",
        question: "Where will it crack after a heating season?",
        step: 17,
        search: &["crack", "joint", "caulk", "one year", "movement"],
        headline: &["/opening"],
        list: Some("/joints"),
        cautions: &[],
        sources: &[Source::new(
            PRACTICE,
            "movement over width against the class on the caulk's sheet",
            Standing::CommonPractice,
        )],
    };

    fn example(units: Units) -> Example {
        let (a, b, c) =
            if units == Units::Metric { ("2 mm", "0.5 mm", "3 mm") } else { ("5/64 in", "1/64 in", "1/8 in") };
        Example {
            input: json!({ "capacity": "25 %", "joints": [{ "name": "right end of the top rail", "opens": a, "bead": c }, { "name": "board 4, left edge", "opens": b, "bead": c }] }),
            expects: vec![
                ("/result/opening", json!(1)),
                ("/result/joints/0/joint", json!("right end of the top rail")),
            ],
            checked_against: "by hand: 2/3 is 67 %, 0.5/3 is 17 %, against 25 % (5/8 and 1/8 in inches)",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let capacity = input.capacity.get();
        let mut rows: Vec<(f64, Row)> = Vec::new();
        let mut working = Vec::new();
        for joint in &input.joints {
            let stretch = 100.0 * joint.opens.get().in_mm() / joint.bead.get().in_mm();
            working.push(
                Step::new(joint.name.clone())
                    .by("100 * o / b")
                    .given("o", "opens by", joint.opens)
                    .given("b", "width of the caulk", joint.bead)
                    .gives("s", "stretch", Amount::<kind::Percent>::of(stretch)),
            );
            let outlook = if stretch > capacity {
                "will open"
            } else if stretch > capacity / 2.0 {
                "look at it"
            } else {
                "holds by these figures"
            };
            let takes = Length::nearest_mm(joint.bead.get().in_mm() * capacity / 100.0);
            rows.push((stretch, Row { joint: joint.name.clone(), stretch: Amount::of(stretch), takes, outlook }));
        }
        rows.sort_by(|a, b| b.0.total_cmp(&a.0));
        let opening = rows.iter().filter(|(stretch, _)| *stretch > capacity).count();
        let notes = if opening > 0 {
            vec![Note::check(Words::new("{} will open: let one end move, make the bead wider, or refill in mid-season with a flexible caulk.").with(opening))]
        } else {
            Vec::new()
        };
        Ok(Answer {
            result: Output { opening, joints: rows.into_iter().map(|(_, row)| row).collect() },
            working,
            notes,
        })
    }
}
