//! Price, tax and what is due when: stages that add up to the price to the smallest coin.

use serde_json::json;

use super::job_cost::share_of;
use crate::catalogue::works::THIS_BOOK;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Money, Physical, Units, kind};

/// Amounts of the stages of a total, in percent; the last is what is left, so that they add up exactly.
///
/// `None` when there is no stage or a sum leaves the range of money.
pub fn stages_of(total: Money, percents: &[f64]) -> Option<Vec<Money>> {
    let (_, before) = percents.split_last()?;
    let mut amounts = Vec::with_capacity(percents.len());
    let mut left = total;
    for percent in before {
        let amount = share_of(total, *percent)?;
        left = left.less(amount)?;
        amounts.push(amount);
    }
    amounts.push(left);
    let below = |money: &Money| *money < Money::ZERO;
    if amounts.iter().any(below) && !below(&total) { running_stages_of(total, percents) } else { Some(amounts) }
}

/// The same by the running total, each rounded once: for sums of a few coins, where rounding each stage would leave less than nothing.
fn running_stages_of(total: Money, percents: &[f64]) -> Option<Vec<Money>> {
    let (mut share, mut paid) = (0.0, Money::ZERO);
    let stage = |percent: &f64| {
        share += percent;
        let due = share_of(total, share.min(100.0))?;
        let amount = due.less(paid)?;
        paid = due;
        Some(amount)
    };
    percents.iter().map(stage).collect()
}

/// One stage.
#[derive(Input)]
pub(crate) struct Stage {
    /// When it is due, in words that both sides understand.
    #[field("Due", size(1..=60))]
    due: String,
    /// Of the sum with tax.
    #[field("Share")]
    share: Physical<kind::Percent, 0, 100_000>,
}

pub(crate) struct StagePayments;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Before tax.
    #[field("Price before tax")]
    price: Money,
    /// As the law where you work calls it, or none.
    #[field("Name of the tax", size(..=20))]
    tax_name: Option<String>,
    /// Of the price; an accountant knows which rate.
    #[field("Tax")]
    tax: Physical<kind::Percent, 0, 50_000>,
    /// As it stands on the invoice.
    #[field("Currency", size(1..=8))]
    currency: String,
    /// They must add up to exactly 100 %.
    #[field("Stages", size(1..=12))]
    stages: Vec<Stage>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// With tax.
    #[field("To pay in all")]
    total: Money,
    /// On the price.
    #[field("Tax")]
    tax: Money,
    /// As on the invoice.
    #[field("Currency")]
    currency: String,
    /// What is due when.
    #[field("Stages")]
    stages: Vec<Row>,
}

/// One stage.
#[derive(Output)]
pub(crate) struct Row {
    /// When.
    #[field("Due")]
    due: String,
    /// Of the sum.
    #[field("Share")]
    share: Amount<kind::Percent>,
    /// To the smallest coin.
    #[field("Amount")]
    amount: Money,
}

impl Calculator for StagePayments {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "stage-payments",
        title: "Tax and stage payments",
        question: "What is due when?",
        step: 5,
        search: &["invoice", "deposit", "tax", "VAT", "instalment", "final account", "how big a deposit"],
        headline: &["/total", "/tax"],
        list: Some("/stages"),
        cautions: &[],
        sources: &[Source::new(THIS_BOOK, "30, 40 and 30 %; the last stage is what is left", Standing::HouseDefault)],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "price": "6094.65", "tax": "0 %", "currency": "EUR", "stages": [{ "due": "with the order", "share": "30 %" }, { "due": "when the boards are up", "share": "40 %" }, { "due": "at handover", "share": "30 %" }] }),
            expects: vec![
                ("/result/stages/0/amount/text", json!("1828.40")),
                ("/result/stages/1/amount/text", json!("2437.86")),
                ("/result/stages/2/amount/text", json!("1828.39")),
            ],
            checked_against: "by hand: 1828.395 up, 2437.86, and 6094.65 less both",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let mut faults = Vec::new();
        if input.price < Money::ZERO {
            faults.push(Fault::new("/price", Words::of(input.price), "a price is not below zero", "6094.65"));
        }
        let thousandths: i64 = input.stages.iter().map(|stage| libm::round(stage.share.get() * 1_000.0) as i64).sum();
        if thousandths != 100_000 {
            let said = Words::new("{} in all").with(Amount::<kind::Percent>::of(thousandths as f64 / 1_000.0));
            faults.push(Fault::new("/stages", said, "the stages must add up to exactly 100 %", "30 %"));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let too_large = || vec![Fault::new("/price", Words::of(input.price), "too large to work with", "6094.65")];
        let tax = share_of(input.price, input.tax.get()).ok_or_else(too_large)?;
        let total = input.price.plus(tax).ok_or_else(too_large)?;
        let percents: Vec<f64> = input.stages.iter().map(|stage| stage.share.get()).collect();
        let amounts = stages_of(total, &percents).ok_or_else(too_large)?;
        let mut working = vec![
            Step::new("tax")
                .by("P * t / 100")
                .given("P", "price before tax", input.price)
                .given("t", "tax", input.tax)
                .gives("T", "tax", tax)
                .because("rounded to the smallest coin, half away from zero, once on the whole price"),
            Step::new("to pay in all")
                .by("P + T")
                .given("P", "price before tax", input.price)
                .given("T", "tax", tax)
                .gives("S", "to pay in all", total),
        ];
        let mut rows = Vec::new();
        let mut paid = Money::ZERO;
        for (index, (stage, amount)) in input.stages.iter().zip(&amounts).enumerate() {
            let step = Step::new(stage.due.clone());
            let by_itself = share_of(total, stage.share.get()) == Some(*amount);
            working.push(if index + 1 < amounts.len() && !by_itself {
                step.given("S", "to pay in all", total)
                    .given("q", "share", stage.share)
                    .gives("A", "amount", *amount)
                    .because("rounded on the running total, since the sum is a few coins")
            } else if index + 1 == amounts.len() {
                step.by("S - p")
                    .given("S", "to pay in all", total)
                    .given("p", "paid before", paid)
                    .gives("A", "amount", *amount)
                    .because("what is left, so that the stages add up to the coin")
            } else {
                step.by("S * q / 100")
                    .given("S", "to pay in all", total)
                    .given("q", "share", stage.share)
                    .gives("A", "amount", *amount)
            });
            paid = paid.plus(*amount).ok_or_else(too_large)?;
            rows.push(Row { due: stage.due.clone(), share: stage.share.amount(), amount: *amount });
        }
        let name = input.tax_name.clone().unwrap_or_else(|| "tax".to_owned());
        let notes = vec![Note::remark(format!(
            "Which {name} rate, and how large a deposit may be, is local law: ask an accountant."
        ))];
        Ok(Answer { result: Output { total, tax, currency: input.currency.clone(), stages: rows }, working, notes })
    }
}
