//! Price from cost and margin: what is charged, and the markup that this margin means.
//!
//! Margin is a share of the price, markup a share of the cost; taking one for the other loses money on every job.

use serde_json::json;

use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Money, Physical, Units, kind};

/// Margin as a share of the price, in percent: 0 to 80.
pub type MarginShare = Physical<kind::Percent, 0, 80_000>;

/// The price that leaves `margin` percent of itself over the cost, rounded half up to the minor unit; `None` on overflow.
///
/// Range: margin 0 to 80 %. Formula: cost / (1 - margin). The margin counts to a thousandth of a percent.
/// # Source
/// Common practice, no source.
pub fn price_at_margin(cost: Money, margin: MarginShare) -> Option<Money> {
    let thousandths = libm::round(margin.get() * 1_000.0) as i64;
    cost.share(100_000, 100_000 - thousandths)
}

/// How a price was got from a cost and a margin.
pub fn price_step(cost: Money, margin: MarginShare, price: Money) -> Step {
    Step::new("price")
        .by("C / (1 - m / 100)")
        .given("C", "cost", cost)
        .given("m", "margin", margin)
        .gives("P", "price before tax", price)
        .because("rounded half up to the smallest coin")
}

pub(crate) struct Margin;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// All that the job costs the shop: labour, material, contingency, overhead.
    #[field("Cost")]
    cost: Money,
    /// Share of the price that is to be left over.
    #[field("Margin", usual = ["10 %", "40 %"])]
    margin: MarginShare,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// What is charged before tax.
    #[field("Price before tax")]
    price: Money,
    /// What must be added to the cost, as a share of the cost.
    #[field("Markup on cost")]
    markup: Amount<kind::Percent>,
    /// What a markup of the same figure would charge.
    #[field("Price at a markup of the same figure")]
    price_at_markup: Money,
}

impl Calculator for Margin {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "price-at-margin",
        title: "Price from cost and margin",
        question: "What do I charge so that my share of the price is left over?",
        step: 5,
        search: &[
            "markup",
            "margin",
            "profit",
            "charge",
            "quote",
            "price",
            "what to charge",
            "job",
            "rate",
            "bid",
            "how much to charge",
        ],
        headline: &["/price", "/markup"],
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
            input: json!({ "cost": "4875.72", "margin": "20 %" }),
            expects: vec![("/result/price/text", json!("6094.65")), ("/result/price_at_markup/text", json!("5850.86"))],
            checked_against: "long division by hand: 4875.72 / 0.80 and 4875.72 * 1.20",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (cost, margin) = (input.cost, input.margin);
        let too_much =
            || vec![Fault::new("/cost", Words::of(cost), "the price would be too large to work with", "4875.72")];
        if cost.minor() < 0 {
            let why = "a cost is not below zero";
            return Err(vec![Fault::new("/cost", Words::of(cost), why, "4875.72")]);
        }
        let price = price_at_margin(cost, margin).ok_or_else(too_much)?;
        let same_markup =
            cost.share(100_000 + libm::round(margin.get() * 1_000.0) as i64, 100_000).ok_or_else(too_much)?;
        let markup = Amount::<kind::Percent>::of(100.0 * margin.get() / (100.0 - margin.get()));
        let working = vec![
            price_step(cost, margin, price),
            Step::new("markup that this margin means").by("100 * m / (100 - m)").given("m", "margin", margin).gives(
                "u",
                "markup on cost",
                markup,
            ),
        ];
        let short = price.less(same_markup).unwrap_or(Money::ZERO);
        let notes = if short > Money::ZERO {
            vec![Note::remark(
                Words::new("Charging {} as a markup instead would be {} short.").with(margin).with(short),
            )]
        } else {
            Vec::new()
        };
        Ok(Answer { result: Output { price, markup, price_at_markup: same_markup }, working, notes })
    }
}
