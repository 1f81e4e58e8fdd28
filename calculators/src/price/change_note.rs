//! A change to the agreed job: what it adds or saves, in money and days, before anybody starts on it.

use serde_json::json;

use super::job_cost::{Share, cost_of};
use super::margin::{MarginShare, price_at_margin};
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Count, Money, Physical, Units, kind};

pub(crate) struct ChangeNote;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// What is changed, in the client's words.
    #[field("Change", size(1..=120))]
    change: String,
    /// More, or less with a minus.
    #[field("Hours")]
    hours: Physical<kind::Hours, -1_000_000, 1_000_000>,
    /// As in the agreed price.
    #[field("Cost of an hour")]
    rate: Money,
    /// More, or less with a minus; an electrician's bill belongs here.
    #[field("Materials")]
    materials: Money,
    /// As in the agreed price.
    #[field("Contingency")]
    contingency: Share,
    /// As in the agreed price.
    #[field("Overhead")]
    overhead: Share,
    /// As in the agreed price.
    #[field("Margin")]
    margin: MarginShare,
    /// Pairs of hands.
    #[field("Crew")]
    crew: Count<1, 12>,
    /// Working hours of a day.
    #[field("Hours in a day")]
    day: Physical<kind::Hours, 4_000, 12_000>,
    /// Days that somebody else needs, such as an electrician's visit; empty means none.
    #[field("Days for others", default)]
    others: Option<Physical<kind::Days, 0, 60_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// To be signed before work on it starts; less with a minus.
    #[field("Price of the change, before tax")]
    price: Money,
    /// To the shop.
    #[field("Cost of the change")]
    cost: Money,
    /// Of the crew, up to the next quarter, and of others; drying is not counted.
    #[field("Days")]
    days: Amount<kind::Days>,
}

impl Calculator for ChangeNote {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "change-note",
        title: "Change note",
        question: "They want something else: what does that add?",
        step: 5,
        search: &["variation", "change", "extra", "another window"],
        headline: &["/price", "/days"],
        list: None,
        cautions: &[],
        sources: &[Source::new(
            PRACTICE,
            "a change is priced like the job and signed before it is begun",
            Standing::CommonPractice,
        )],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "change": "switch moved by the electrician", "hours": "0.4 h", "rate": "48.00", "materials": "95.00", "contingency": "8 %", "overhead": "15 %", "margin": "20 %", "crew": 2, "day": "8 h", "others": "1 d" }),
            expects: vec![
                ("/result/cost/text", json!("140.47")),
                ("/result/price/text", json!("175.59")),
                ("/result/days/text", json!("1.25 d")),
            ],
            checked_against: "by hand: 19.20 + 95 = 114.20; 9.14 + 17.13; 140.47 / 0.8 = 175.59; a quarter of a day and the electrician's one",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        if input.rate < Money::ZERO {
            return Err(vec![Fault::new("/rate", Words::of(input.rate), "a cost is not below zero", "48.00")]);
        }
        let too_large =
            || vec![Fault::new("/materials", Words::of(input.materials), "too large to work with", "95.00")];
        let cost =
            cost_of(input.hours.get(), input.rate, input.materials, input.contingency.get(), input.overhead.get())
                .ok_or_else(too_large)?;
        let price = price_at_margin(cost.total, input.margin).ok_or_else(too_large)?;
        let own = input.hours.get() / f64::from(input.crew.get()) / input.day.get();
        let others = input.others.map_or(0.0, Physical::get);
        let days = libm::ceil(own * 4.0 - 1e-9) / 4.0 + others;
        let working = vec![
            Step::new("cost of the change")
                .by("L + M + C + O")
                .given("L", "labour", cost.labour)
                .given("M", "materials", cost.materials)
                .given("C", "contingency", cost.contingency)
                .given("O", "overhead", cost.overhead)
                .gives("T", "cost of the change", cost.total),
            Step::new("price of the change")
                .by("T / (1 - m / 100)")
                .given("T", "cost of the change", cost.total)
                .given("m", "margin", input.margin)
                .gives("P", "price of the change", price),
            Step::new("days")
                .by("ceil(4 * h / c / d) / 4 + o")
                .given("h", "hours", input.hours)
                .given("c", "crew", input.crew.get())
                .given("d", "hours in a day", input.day)
                .given("o", "days for others", Amount::<kind::Days>::of(others))
                .gives("D", "days", Amount::<kind::Days>::of(days)),
        ];
        let words = Words::new("Nothing of «{}» is begun before it is signed, with its price and its days.")
            .with(input.change.clone());
        let notes = vec![Note::hold(words)];
        Ok(Answer { result: Output { price, cost: cost.total, days: Amount::of(days) }, working, notes })
    }
}
