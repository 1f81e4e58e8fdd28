//! Panel proportion: what a bay and a row look like together. Advice, never a pass or a fail.

use serde_json::json;

use super::scheme::BayWidth;
use super::survey::Height;
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Units, Within, kind};

pub(crate) struct PanelProportion;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Clear, between two boards.
    #[field("Bay")]
    bay: BayWidth,
    /// Clear, between base and rail.
    #[field("Row")]
    row: Within<50_000, 6_000_000>,
    /// Top of the boarding above the floor.
    #[field("Top of the boarding")]
    top: Height,
    /// Floor to ceiling.
    #[field("Ceiling")]
    ceiling: Within<1_500_000, 12_000_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Height to width.
    #[field("Height to width")]
    proportion: Amount<kind::Number>,
    /// The top of the boarding as a share of the room's height.
    #[field("Share of the room")]
    share: Amount<kind::Percent>,
    /// In plain words.
    #[field("It looks")]
    looks: &'static str,
}

/// The look of a panel by its height to width. Common practice, no source: advice only.
pub(crate) fn look(proportion: f64) -> &'static str {
    match proportion {
        p if p < 0.8 => "lying: it widens the wall",
        p if p < 1.25 => "near square: restless where it stands beside tall ones",
        p if p < 2.0 => "upright, a little stocky",
        p if p <= 4.0 => "tall and calm",
        _ => "very upright: it lifts the ceiling",
    }
}

impl Calculator for PanelProportion {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "panel-proportion",
        title: "Panel proportion",
        question: "Will it look right?",
        step: 4,
        search: &["proportion", "ratio", "design", "panel", "dado"],
        headline: &["/proportion", "/share", "/looks"],
        list: None,
        cautions: &[],
        sources: &[Source::new(
            PRACTICE,
            "looks of panels; a third, or 60 to 65 % of the height",
            Standing::CommonPractice,
        )],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "bay": "12.9 in", "row": "53 in", "top": "62 in", "ceiling": "96 in" }),
                expects: vec![("/result/proportion/text", json!("4.109")), ("/result/share/text", json!("64.58%"))],
                checked_against: "by hand: 53 / 12.9 and 62 / 96",
            },
            Units::Metric => Example {
                input: json!({ "bay": "327 mm", "row": "1348 mm", "top": "1575 mm", "ceiling": "2445 mm" }),
                expects: vec![("/result/proportion/text", json!("4.122")), ("/result/share/text", json!("64.42%"))],
                checked_against: "by hand: 1348 / 327 and 1575 / 2445",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        if input.ceiling.get() < input.top.get() || !input.top.get().is_positive() {
            let why = Words::new("the boarding ends above the floor and below the ceiling, {}").with(input.ceiling);
            return Err(vec![Fault::new("/top", Words::of(input.top), why, Words::of(input.ceiling))]);
        }
        let proportion = input.row.get().exact().ratio_to(input.bay.get().exact());
        let share = input.top.get().exact().ratio_to(input.ceiling.get().exact()) * 100.0;
        let working = vec![
            Step::new("height to width").by("h / w").given("h", "row", input.row).given("w", "bay", input.bay).gives(
                "p",
                "height to width",
                proportion,
            ),
            Step::new("share of the room")
                .by("100 * t / c")
                .given("t", "top of the boarding", input.top)
                .given("c", "ceiling", input.ceiling)
                .gives("s", "share of the room", Amount::<kind::Percent>::of(share)),
        ];
        let mut notes = vec![Note::remark("Advice, no rule: mock one bay up in tape on the wall, and stand back.")];
        if (share - 50.0).abs() < 2.5 {
            notes.push(Note::check(
                "A top rail at half the height cuts the room in two; a third, or 60 to 65 %, is more usual.",
            ));
        }
        let result = Output { proportion: Amount::of(proportion), share: Amount::of(share), looks: look(proportion) };
        Ok(Answer { result, working, notes })
    }
}
