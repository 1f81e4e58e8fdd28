//! Which tins: the cheapest that hold enough, all of one batch.

use serde_json::json;

use super::tin_choice::cheapest;
use crate::catalogue::works::{GEOMETRY, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Money, Physical, Units, kind};

/// A size of tin that the shop can buy.
#[derive(Clone, Copy, Debug, PartialEq, Input)]
pub struct Tin {
    /// What it holds.
    #[field("Holds")]
    pub holds: Physical<kind::Paint, 50, 250_000>,
    /// What it costs.
    #[field("Price")]
    pub price: Money,
}

pub(crate) struct Tins;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// All coats and the hose.
    #[field("Paint needed")]
    needed: Physical<kind::Paint, 1, 900_000>,
    /// On top, for touching up and for the tin left on site.
    #[field("Reserve", usual = ["0 %", "15 %"])]
    reserve: Physical<kind::Percent, 0, 100_000>,
    /// Sizes and prices.
    #[field("Tins on sale", size(1..=12))]
    tins: Vec<Tin>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// What they cost together.
    #[field("Cost")]
    cost: Money,
    /// Paint in them.
    #[field("Bought")]
    bought: Amount<kind::Paint>,
    /// Left over, reserve included.
    #[field("Left over")]
    left: Amount<kind::Paint>,
    /// Tins to buy.
    #[field("Tins")]
    tins: Vec<Line>,
}

/// One size.
#[derive(Output)]
pub(crate) struct Line {
    /// How many.
    #[field("Buy")]
    count: u32,
    /// The size.
    #[field("Holds")]
    holds: Amount<kind::Paint>,
    /// For all of them.
    #[field("Price")]
    price: Money,
}

impl Calculator for Tins {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "tins",
        title: "Tins to buy",
        question: "Which tins, so that all coats come from one batch?",
        step: 5,
        search: &["can", "tin", "bucket", "gallon", "litre", "buy paint"],
        headline: &["/cost", "/bought", "/left"],
        list: Some("/tins"),
        cautions: &[],
        sources: &[
            Source::new(GEOMETRY, "exact search over all choices of tins", Standing::Derived),
            Source::new(THIS_BOOK, "5 % reserve", Standing::HouseDefault),
        ],
    };
    const HEAVY: bool = true;

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "needed": "0.863 gal", "reserve": "5 %", "tins": [{ "holds": "1 qt", "price": "24.00" }, { "holds": "1 gal", "price": "62.00" }] }),
                expects: vec![("/result/cost/text", json!("62.00")), ("/result/tins/0/count", json!(1))],
                checked_against: "by hand: 0.906 gal is four quarts for 96 or one gallon for 62",
            },
            Units::Metric => Example {
                input: json!({ "needed": "3.265 L", "reserve": "5 %", "tins": [{ "holds": "1 L", "price": "24.00" }, { "holds": "2.5 L", "price": "46.00" }, { "holds": "5 L", "price": "84.00" }] }),
                expects: vec![("/result/cost/text", json!("70.00")), ("/result/bought/text", json!("3.5 L"))],
                checked_against: "by hand: 3.43 L is 2.5 + 1 for 70, 5 for 84, 4 x 1 for 96",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let mut faults = Vec::new();
        for (index, tin) in input.tins.iter().enumerate() {
            if tin.price.minor() < 0 {
                faults.push(Fault::new(
                    format!("/tins/{index}/price"),
                    Words::of(tin.price),
                    "a price is not below zero",
                    "24.00",
                ));
            }
        }
        let wanted = input.needed.get() * (1.0 + input.reserve.get() / 100.0);
        if faults.is_empty() && wanted > 1_000.0 {
            faults.push(Fault::new(
                "/needed",
                Words::of(input.needed),
                "more than 1000 L with its reserve: order by the drum",
                "3.5 L",
            ));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let Some(counts) = cheapest(Amount::of(wanted), &input.tins) else {
            return Err(vec![Fault::new("/tins", "these tins", "no choice of them holds the amount", "1 L")]);
        };
        let litres = Amount::<kind::Paint>::of;
        let lines: Vec<Line> = input
            .tins
            .iter()
            .zip(&counts)
            .filter(|(_, count)| **count > 0)
            .map(|(tin, count)| Line {
                count: *count,
                holds: tin.holds.amount(),
                price: tin.price.times(i64::from(*count)).unwrap_or(Money::MOST),
            })
            .collect();
        let cost = lines.iter().fold(Money::ZERO, |sum, line| sum.plus(line.price).unwrap_or(Money::MOST));
        let bought =
            litres(input.tins.iter().zip(&counts).map(|(tin, count)| tin.holds.get() * f64::from(*count)).sum());
        let working = vec![
            Step::new("paint with its reserve")
                .by("P * (1 + r / 100)")
                .given("P", "paint needed", input.needed)
                .given("r", "reserve", input.reserve)
                .gives("W", "with its reserve", litres(wanted)),
            Step::new("left over").by("B - P").given("B", "bought", bought).given("P", "paint needed", input.needed).gives("l", "left over", litres(bought.get() - input.needed.get()))
                .because("every choice of tins that holds enough was looked at; the cheapest was taken, then the one with least left"),
        ];
        let notes =
            vec![Note::remark("Buy all of it now, one batch number; pour the tins together before the first coat.")];
        Ok(Answer {
            result: Output { cost, bought, left: litres(bought.get() - input.needed.get()), tins: lines },
            working,
            notes,
        })
    }
}
