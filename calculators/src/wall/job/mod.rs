//! What a layout takes besides boards: quantities, a shopping list, hours, the programme with its waits, cost and price.
//!
//! Every figure comes from the function that also answers the question in its own chapter. Rates, losses and waits that nobody gave are
//! the book's defaults and are named as such in the list of what was assumed.

use schemars::JsonSchema;
use serde::Serialize;

mod dates;
mod hours;
mod house;
mod prices;
mod purchases;

use dates::programme;
use hours::labour;
use house::House;
use prices::priced;
use purchases::{boards, paint_lines, painted, sundries};

use super::plan::Layout;
use super::shop::Shop;
use crate::catalogue::{Figure, Words};
use crate::price::job_cost::Cost;
use crate::quantity::{Amount, Money, Units, kind};

/// Everything a layout takes besides its boards.
#[derive(Clone, Debug, Default, PartialEq, Serialize, JsonSchema)]
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
    /// What it costs; none without rates.
    pub cost: Option<Cost>,
    /// What is charged before tax; none without rates.
    pub price: Option<Money>,
    /// Defaults that were used, and what was left out.
    pub assumed: Vec<Words>,
}

/// One line of the shopping list.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
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
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct TaskHours {
    /// What is done.
    pub task: String,
    /// By one pair of hands.
    pub hours: Amount<kind::Hours>,
}

/// One task on the calendar.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
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
    let house = House::of(units);
    let totals = &layout.totals;
    let mut assumed = vec![
        Words::new("beads of {} adhesive and {} caulk, cartridges of {}")
            .with(house.bead)
            .with(house.leg)
            .with(house.cartridge),
        Words::new("hours by the book's rates, working days from 08:00 to 16:30"),
    ];
    let paint_area = Amount::<kind::Area>::of(totals.field.get() + totals.edges.get() + totals.base_face.get());
    let paint = shop.coating.as_ref().map(|coating| painted(coating, paint_area));
    let mut shopping = boards(layout);
    shopping.extend(sundries(layout, &house, shop.rates.as_ref()));
    if let (Some(coating), Some(paint)) = (&shop.coating, &paint) {
        shopping.extend(paint_lines(coating, paint, &mut assumed));
    } else {
        assumed.push(Words::new("no data sheet of a coating was given: paint, waits and programme are left out"));
    }
    let labour = labour(layout, &house, paint_area, shop.coating.as_ref());
    let hours: f64 = labour.iter().map(|task| task.hours.get()).sum();
    let (programme, done) = shop.coating.as_ref().map_or_else(
        || (Vec::new(), None),
        |coating| {
            let crew = shop.rates.as_ref().and_then(|rates| rates.crew).map_or(2, |crew| crew.get());
            let lines = programme(&labour, coating, shop, &house, f64::from(crew), &mut assumed);
            let done = lines.iter().max_by_key(|line| line.end_minute).map(|line| line.ends.clone());
            (lines, done)
        },
    );
    let priced = shop.rates.as_ref().and_then(|rates| priced(rates, hours, &shopping, &mut assumed));
    if shop.rates.is_none() {
        assumed.push(Words::new("no rates were given: cost and price are left out"));
    }
    let (cost, price) = priced.unzip();
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
        assumed,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::planning::plan;
    use crate::wall::practice_room::{Wall, input};
    use crate::wall::scheme::WallInput;

    fn jobs(wall: Wall, units: Units) -> Vec<Job> {
        let entry = crate::catalogue::entry("wall-plan").expect("it is declared");
        let input: WallInput =
            serde_json::from_value(entry.read(&input(wall, units), units).expect("valid")).expect("typed");
        let plan = plan(&input).expect("a plan");
        plan.layouts.into_iter().map(|layout| layout.job).collect()
    }

    #[test]
    fn the_plain_wall_takes_what_was_worked_out_by_hand() {
        // By hand from the survey (common practice arithmetic): 82.5 ft² with base; 1.39 L a coat at 100 µm and 55 %; adhesive for
        // 12 boards of 53 in is 2.4 cartridges.
        let job = &jobs(Wall::Plain, Units::Imperial)[0];
        let square_feet = job.paint_area.get() / (0.3048 * 0.3048);
        assert!((square_feet - 82.5).abs() < 0.6, "{square_feet} ft²");
        let litres = job.paint_per_coat.expect("a data sheet is given").get();
        assert!((litres - 1.394).abs() < 0.02, "{litres} L");
        let adhesive = job.shopping.iter().find(|line| line.what == "adhesive").expect("adhesive");
        assert_eq!(adhesive.buy, Figure::Count(3));
    }

    #[test]
    fn no_wait_is_shorter_than_the_sheet_and_coats_are_not_split() {
        for wall in Wall::ALL {
            for job in jobs(wall, Units::Metric) {
                let coats: Vec<_> = job.programme.iter().filter(|line| line.task.starts_with("coat ")).collect();
                assert_eq!(coats.len(), 2);
                assert!(coats[1].start_minute - coats[0].end_minute >= 4 * 60, "the sheet says four hours");
                for coat in coats {
                    assert_eq!(coat.start_minute.div_euclid(1_440), coat.end_minute.div_euclid(1_440), "in one day");
                }
                for pair in job.programme.windows(2) {
                    assert!(pair[1].start_minute >= pair[0].end_minute + pair[0].wait_minutes, "{pair:?}");
                }
            }
        }
    }

    #[test]
    fn cost_and_price_hang_together() {
        let job = &jobs(Wall::Windows, Units::Imperial)[0];
        let (cost, price) = (job.cost.expect("rates are given"), job.price.expect("rates are given"));
        let parts = [cost.labour, cost.materials, cost.contingency, cost.overhead];
        assert_eq!(parts.iter().map(|part| part.minor()).sum::<i64>(), cost.total.minor());
        // A margin of a fifth leaves the cost as four fifths of the price.
        assert!((price.minor() * 4 - cost.total.minor() * 5).abs() <= 4);
    }
}
