//! The margin that a markup really leaves.

use serde_json::json;

use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// Margin, in percent of the price, that a markup in percent of the cost leaves.
pub fn margin_of(markup: f64) -> f64 {
    100.0 * markup / (100.0 + markup)
}

pub(crate) struct MarginOfMarkup;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Added to the cost, as a share of the cost.
    #[field("Markup")]
    markup: Physical<kind::Percent, 0, 1_000_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Left over, as a share of the price.
    #[field("Margin")]
    margin: Amount<kind::Percent>,
}

impl Calculator for MarginOfMarkup {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "margin-of-markup",
        title: "Margin of a markup",
        question: "What share of the price does my markup leave?",
        step: 5,
        search: &["markup", "margin", "profit", "mark up", "marked up", "mark-up"],
        headline: &["/margin"],
        list: None,
        cautions: &[],
        sources: &[Source::new(
            PRACTICE,
            "margin is a share of the price, markup a share of the cost",
            Standing::CommonPractice,
        )],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "markup": "30 %" }),
            expects: vec![("/result/margin/text", json!("23.08%"))],
            checked_against: "by hand: 30 / 130 = 0.2308",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let margin = Amount::<kind::Percent>::of(margin_of(input.markup.get()));
        let working = vec![
            Step::new("margin")
                .by("100 * u / (100 + u)")
                .given("u", "markup", input.markup)
                .gives("m", "margin", margin),
        ];
        let notes = vec![Note::remark(
            Words::new("A markup of {} is never a margin of {}.").with(input.markup).with(input.markup),
        )];
        Ok(Answer { result: Output { margin }, working, notes })
    }
}
