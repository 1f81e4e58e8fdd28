//! What a layout takes besides boards: quantities, a shopping list, hours, the programme with its waits, cost and price.
//!
//! Every figure comes from the function that also answers the question in its own chapter. Rates, losses and waits that nobody gave are
//! the book's defaults and are named as such in the list of what was assumed.

mod dates;
mod hours;
mod house;
mod prices;
mod purchases;
mod working;

use dates::programme;
use hours::labour;
use house::House;
use prices::priced;
use purchases::{boards, paint_estimates, paint_lines, painted, primer_line, sundries};
pub use working::working;

use super::plan::Layout;
use super::shop::Shop;
use crate::catalogue::{Figure, Output, Words};
use crate::price::job_cost::Cost;
use crate::quantity::{Amount, Money, Units, kind};

/// Everything a layout takes besides its boards.
#[derive(Clone, Debug, Default, PartialEq, Output)]
pub struct Job {
    /// Surface to coat, faces and edges and base.
    pub paint_area: Amount<kind::Area>,
    /// For one coat, from the tin; none without a data sheet.
    pub paint_per_coat: Option<Amount<kind::Paint>>,
    /// What the gauge should read.
    pub wet_film: Option<Amount<kind::Film>>,
    /// What to buy.
    pub shopping: Vec<Purchase>,
    /// Hours of one pair of hands, task by task.
    pub labour: Vec<TaskHours>,
    /// Hours of one pair of hands, all tasks.
    pub hours: Amount<kind::Hours>,
    /// When each task starts and ends; empty without a data sheet.
    pub programme: Vec<ProgrammeLine>,
    /// When the last task ends.
    pub done: Option<String>,
    /// What it costs; none without rates, and none while a piece has no stick.
    pub cost: Option<Cost>,
    /// What is charged before tax; none without rates, and none while a piece has no stick.
    pub price: Option<Money>,
    /// Pieces that no stick gives: while there are any, the plan is not complete and no price stands.
    pub without_stick: Vec<String>,
    /// Lines of the shopping list that the price leaves out, because nobody gave their price.
    pub without_price: Vec<String>,
    /// Defaults that were used, and what was left out.
    pub assumed: Vec<Words>,
}

/// One line of the shopping list.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Purchase {
    /// What.
    pub what: String,
    /// How many or how much, rounded up.
    pub buy: Figure,
    /// What one of it is.
    pub unit: Words,
    /// For all of it, where a price is known.
    pub cost: Option<Money>,
}

/// Hours of one task.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct TaskHours {
    /// What is done.
    pub task: String,
    /// By one pair of hands.
    pub hours: Amount<kind::Hours>,
}

/// One task on the calendar.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct ProgrammeLine {
    /// What is done.
    pub task: String,
    /// Day and clock.
    pub starts: String,
    /// Day and clock.
    pub ends: String,
    /// Minutes from midnight of the first day.
    pub start_minute: i64,
    /// Minutes from midnight of the first day.
    pub end_minute: i64,
    /// Minutes on the clock that follow before the next task can start.
    pub wait_minutes: i64,
    /// Whether its window closes before anybody is there.
    pub late: bool,
}

/// Works out what a layout takes. Figures that would need a value nobody gave are left out and named.
pub fn job(layout: &Layout, shop: &Shop, units: Units) -> Job {
    let house = House::of(shop, units);
    let totals = &layout.totals;
    let mut assumed: Vec<Words> = house.amounts.taken.told().chain(house.rates.taken.told()).collect();
    let paint_area = Amount::<kind::Area>::of(totals.field.get() + totals.edges.get() + totals.base_face.get());
    let reserve = house.amounts.paint_reserve;
    let paint = shop.coating.as_ref().map(|coating| painted(coating, paint_area, reserve));
    let mut shopping = boards(layout);
    shopping.extend(sundries(layout, &house.amounts, shop.rates.as_ref()));
    shopping.extend(shop.primer.as_ref().map(|primer| primer_line(primer, paint_area, reserve)));
    if let (Some(coating), Some(paint)) = (&shop.coating, &paint) {
        assumed.extend(paint_estimates(coating));
        shopping.extend(paint_lines(coating, paint, &mut assumed));
    } else {
        assumed.push(Words::new("no data sheet of a coating was given: paint, waits and programme are left out"));
    }
    let labour = labour(layout, &house.rates, paint_area, shop);
    let programme =
        shop.coating.as_ref().map_or_else(Vec::new, |coating| programme(&labour, coating, shop, &mut assumed));
    let done = programme.iter().max_by_key(|line| line.end_minute).map(|line| line.ends.clone());
    let labour: Vec<TaskHours> = labour.into_iter().map(|(_, task)| task).collect();
    let hours: f64 = labour.iter().map(|task| task.hours.get()).sum();
    let priced = shop.rates.as_ref().and_then(|rates| priced(rates, hours, &shopping, &mut assumed));
    if shop.rates.is_none() {
        assumed.push(Words::new("no rates were given: cost and price are left out"));
    }
    let without_stick: Vec<String> = layout.sticks.iter().flat_map(|plan| plan.without.iter().cloned()).collect();
    if !without_stick.is_empty() {
        assumed.push(
            Words::new("INCOMPLETE: there is no stick for {}, so cost and price are left out")
                .with(without_stick.join(", ")),
        );
    }
    let without_price = if shop.rates.is_some() { unpriced(&shopping, shop) } else { Vec::new() };
    if !without_price.is_empty() {
        assumed.push(Words::new("the price leaves out {}: nobody gave what they cost").with(without_price.join(", ")));
    }
    let (cost, price) = priced.filter(|_| without_stick.is_empty()).unzip();
    Job {
        paint_area,
        paint_per_coat: paint.as_ref().map(|paint| paint.per_coat),
        wet_film: paint.as_ref().map(|paint| paint.wet_film),
        shopping,
        labour,
        hours: Amount::of(hours),
        programme,
        done,
        cost,
        price,
        without_stick,
        without_price,
        assumed,
    }
}

/// What is bought without a price: sticks, cartridges and paint. Nails, pins, filler and tape are the sundries'.
fn unpriced(shopping: &[Purchase], shop: &Shop) -> Vec<String> {
    let tins = shop.coating.as_ref().is_some_and(|coating| !coating.tins.is_empty());
    let sticks_cost = shopping.iter().any(|line| line.what == "sticks" && line.cost.is_some());
    let mut names: Vec<String> = shopping
        .iter()
        .filter(|line| match line.what.as_str() {
            "sticks" => !sticks_cost,
            "adhesive" | "caulk" | "primer" => line.cost.is_none(),
            "paint" => !tins,
            _ => false,
        })
        .map(|line| line.what.clone())
        .collect();
    names.dedup();
    names
}

#[cfg(test)]
mod tests;
