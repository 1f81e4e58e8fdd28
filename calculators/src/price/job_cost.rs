//! What the job costs the shop: labour, material, and what is added for the unforeseen and for the shop itself.

use serde_json::json;

use crate::catalogue::works::THIS_BOOK;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Money, Physical, Units, kind};

/// A share in percent, counted to a thousandth of a percent.
pub type Share = Physical<kind::Percent, 0, 100_000>;

/// Money times a number of hours, counted to the ten-thousandth of an hour, half away from zero.
pub fn money_for_hours(rate: Money, hours: f64) -> Option<Money> {
    rate.share(libm::round(hours * 10_000.0) as i64, 10_000)
}

/// A share in percent of an amount, half away from zero.
pub fn share_of(amount: Money, percent: f64) -> Option<Money> {
    amount.share(libm::round(percent * 1_000.0) as i64, 100_000)
}

/// The lines of a cost.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Output)]
pub struct Cost {
    /// All together.
    #[field("Cost")]
    pub total: Money,
    /// Hours times their rate.
    #[field("Labour")]
    pub labour: Money,
    /// As bought.
    #[field("Materials")]
    pub materials: Money,
    /// For what nobody foresaw, as a share of labour and materials.
    #[field("Contingency")]
    pub contingency: Money,
    /// Van, tools, office, as a share of labour and materials.
    #[field("Overhead")]
    pub overhead: Money,
}

/// Cost from hours, materials and the two shares; `None` when a sum leaves the range of money.
pub fn cost_of(hours: f64, rate: Money, materials: Money, contingency: f64, overhead: f64) -> Option<Cost> {
    let labour = money_for_hours(rate, hours)?;
    let direct = labour.plus(materials)?;
    let (contingency, overhead) = (share_of(direct, contingency)?, share_of(direct, overhead)?);
    Some(Cost { total: direct.plus(contingency)?.plus(overhead)?, labour, materials, contingency, overhead })
}

/// How the lines of a cost were got.
pub fn working(
    cost: &Cost,
    hours: Amount<kind::Hours>,
    rate: Money,
    contingency: Amount<kind::Percent>,
    overhead: Amount<kind::Percent>,
) -> Vec<Step> {
    let share = |what: &'static str, letter: &'static str, percent, symbol: &'static str, sum| {
        Step::new(what)
            .by(format!("(L + M) * {letter} / 100"))
            .given("L", "labour", cost.labour)
            .given("M", "materials", cost.materials)
            .given(letter, what, percent)
            .gives(symbol, what, sum)
    };
    vec![
        Step::new("labour")
            .by("round(h * 10000) / 10000 * r")
            .given("h", "hours", hours)
            .given("r", "cost of an hour", rate)
            .gives("L", "labour", cost.labour)
            .because(
                "hours count to the ten-thousandth; each line is rounded to the smallest coin, half away from zero",
            ),
        share("contingency", "c", contingency, "C", cost.contingency),
        share("overhead", "o", overhead, "O", cost.overhead),
        Step::new("cost")
            .by("L + M + C + O")
            .given("L", "labour", cost.labour)
            .given("M", "materials", cost.materials)
            .given("C", "contingency", cost.contingency)
            .given("O", "overhead", cost.overhead)
            .gives("T", "cost", cost.total),
    ]
}

pub(crate) struct JobCost;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// From the labour calculation.
    #[field("Hours")]
    hours: Physical<kind::Hours, 0, 100_000_000>,
    /// What an hour costs the shop, holidays and insurance in it.
    #[field("Cost of an hour")]
    rate: Money,
    /// Boards, paint, sundries, hire, electrician.
    #[field("Materials")]
    materials: Money,
    /// Of labour and materials.
    #[field("Contingency", usual = ["3 %", "15 %"])]
    contingency: Share,
    /// Of labour and materials.
    #[field("Overhead", usual = ["5 %", "30 %"])]
    overhead: Share,
}

impl Calculator for JobCost {
    type Input = Input;
    type Output = Cost;
    const CARD: Card = Card {
        id: "job-cost",
        title: "Cost of the job",
        question: "What does it cost me?",
        step: 5,
        search: &["cost", "overhead", "contingency", "materials", "job", "price", "rate"],
        headline: &["/total", "/labour", "/materials"],
        list: None,
        cautions: &[],
        sources: &[Source::new(
            THIS_BOOK,
            "contingency 8 %, overhead 15 % of labour and materials",
            Standing::HouseDefault,
        )],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "hours": "63 h", "rate": "48.00", "materials": "940.00", "contingency": "8 %", "overhead": "15 %" }),
            expects: vec![("/result/total/text", json!("4875.72")), ("/result/contingency/text", json!("317.12"))],
            checked_against: "by hand: 3024 + 940 = 3964; 317.12; 594.60; together 4875.72",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Cost>, Vec<Fault>> {
        let mut faults = Vec::new();
        for (pointer, amount) in [("/rate", input.rate), ("/materials", input.materials)] {
            if amount < Money::ZERO {
                faults.push(Fault::new(pointer, Words::of(amount), "a cost is not below zero", "48.00"));
            }
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let cost =
            cost_of(input.hours.get(), input.rate, input.materials, input.contingency.get(), input.overhead.get());
        let Some(cost) = cost else {
            return Err(vec![Fault::new(
                "/rate",
                Words::of(input.rate),
                "the cost would be too large to work with",
                "48.00",
            )]);
        };
        let working =
            working(&cost, input.hours.amount(), input.rate, input.contingency.amount(), input.overhead.amount());
        Ok(Answer {
            result: cost,
            working,
            notes: vec![Note::remark("A cost, not a price: the margin comes on top of it.")],
        })
    }
}
