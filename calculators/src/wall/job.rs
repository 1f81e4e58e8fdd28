//! What a layout takes besides boards: quantities, a shopping list, hours, the programme with its waits, cost and price.
//!
//! Every figure comes from the function that also answers the question in its own chapter. Rates, losses and waits that nobody gave are
//! the book's defaults and are named as such in the list of what was assumed.

use schemars::JsonSchema;
use serde::Serialize;

use super::plan::{Layout, Totals};
use super::shop::{Coating, Rates, Shop};
use crate::catalogue::{Figure, Words};
use crate::coating::{film, tins};
use crate::drying::{recoat, tape_pull};
use crate::filling::{bead, caulk, filler};
use crate::fixing::adhesive;
use crate::masking::rolls;
use crate::price::job_cost::{Cost, cost_of};
use crate::price::margin::{MarginShare, price_at_margin};
use crate::programme::calendar::{Calendar, moment};
use crate::programme::network::Tie;
use crate::programme::schedule::{Job as Task, lay};
use crate::quantity::{Amount, Exact, Length, Money, Units, kind};

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

/// Losses, beads and waits that stand until a shop has its own. Defaults of this book.
struct House {
    bead: Length,
    leg: Length,
    cartridge: Amount<kind::SmallVolume>,
    tape_roll: Length,
    edge_sand_hours: f64,
    adhesive_wait: i64,
    filler_wait: i64,
    caulk_wait: i64,
}

const WAVE: f64 = 1.25;
const ADHESIVE_LOST: f64 = 0.10;
const CAULK_LOST: f64 = 0.25;
const HOLE_ML: f64 = 0.05;
const SHRINK: f64 = 0.10;
const TAPE_EXTRA: f64 = 10.0;
const TRANSFER: f64 = 0.55;
const HOSE_L: f64 = 0.475;
const RESERVE: f64 = 1.05;
/// Square metres a hand sprays in an hour, setting up and cleaning left aside.
const SPRAY_M2_H: f64 = 20.0;
/// Working hours of the default calendar: 08:00 to 16:30, Monday to Friday, starting on a Monday.
const CALENDAR: Calendar = Calendar { starts: 480, ends: 990, first_weekday: 0, days_a_week: 5 };

impl House {
    fn of(units: Units) -> Self {
        let (bead, leg, millilitres, tape_roll) = match units {
            Units::Imperial => (Length::um(6_350), Length::um(3_175), 298.692_648_6, Length::inches(180 * 12)),
            Units::Metric => (Length::mm(6), Length::mm(3), 300.0, Length::mm(55_000)),
        };
        Self {
            bead,
            leg,
            cartridge: Amount::of(millilitres),
            tape_roll,
            edge_sand_hours: 0.05,
            adhesive_wait: 16 * 60,
            filler_wait: 3 * 60,
            caulk_wait: 2 * 60,
        }
    }
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

struct Painted {
    per_coat: Amount<kind::Paint>,
    wet_film: Amount<kind::Film>,
    total: Amount<kind::Paint>,
}

fn painted(coating: &Coating, area: Amount<kind::Area>) -> Painted {
    let wet_film = film::wet_film(coating.dry_film.amount(), coating.volume_solids.get() / 100.0, 0.0);
    let transfer = coating.transfer.map_or(TRANSFER, |share| share.get() / 100.0);
    let per_coat = film::litres_sprayed(area.get(), wet_film, transfer);
    let hose = coating.hose.map_or(HOSE_L, |hose| hose.get());
    let total = Amount::of((per_coat.get() * f64::from(coating.coats.get()) + hose) * RESERVE);
    Painted { per_coat, wet_film, total }
}

/// One line for each length of stick in each section.
fn boards(layout: &Layout) -> Vec<Purchase> {
    let mut lines = Vec::new();
    for plan in &layout.sticks {
        let mut lengths: Vec<Length> = plan.sticks.iter().map(|stick| stick.stick).collect();
        lengths.sort_unstable();
        let mut kinds = lengths.clone();
        kinds.dedup();
        for (index, length) in kinds.iter().enumerate() {
            let count = lengths.iter().filter(|other| *other == length).count();
            lines.push(Purchase {
                what: "sticks".to_owned(),
                buy: count.into(),
                unit: Words::new("{}, {} by {}").with(*length).with(plan.width).with(plan.thickness),
                // The plan knows what its sticks cost together; the whole stands in its first line.
                cost: (index == 0 && plan.cost > Money::ZERO).then_some(plan.cost),
            });
        }
    }
    lines
}

fn up(exact: Exact) -> Length {
    exact.up_to(Length::from_nm(1))
}

fn sundries(layout: &Layout, house: &House, rates: Option<&Rates>) -> Vec<Purchase> {
    let totals = &layout.totals;
    let glue = adhesive::adhesive_volume(up(totals.board_length), house.bead, WAVE, ADHESIVE_LOST);
    let glue_cartridges = bead::cartridges_for(glue.get(), house.cartridge.get());
    let section = caulk::caulk_section_mm2(house.leg, Length::ZERO, Length::ZERO);
    let caulk_cartridges = caulk::caulk_cartridges(up(totals.caulk), section, house.cartridge, CAULK_LOST);
    let heads = u32::try_from(layout.nails.heads).unwrap_or(u32::MAX);
    let tape = rolls::tape_needed(tape_edges(totals), TAPE_EXTRA);
    let cost_of_each = |price: Option<Money>, count: u32| price.and_then(|price| price.times(i64::from(count)));
    let line = |what: &str, buy: Figure, unit: Words, cost| Purchase { what: what.to_owned(), buy, unit, cost };
    vec![
        line(
            "adhesive",
            glue_cartridges.into(),
            Words::new("cartridges of {}").with(house.cartridge),
            cost_of_each(rates.and_then(|rates| rates.adhesive), glue_cartridges),
        ),
        line(
            "caulk",
            caulk_cartridges.into(),
            Words::new("cartridges of {}").with(house.cartridge),
            cost_of_each(rates.and_then(|rates| rates.caulk), caulk_cartridges),
        ),
        line("nails", (layout.nails.in_rails + layout.nails.in_boards).into(), nail_words(layout), None),
        line("pins", layout.nails.pins.into(), Words::new("23 gauge, beside adhesive"), None),
        line(
            "filler",
            filler::filler_needed(heads, HOLE_ML, 0.0, SHRINK).into(),
            Words::new("for {} heads").with(layout.nails.heads),
            None,
        ),
        line(
            "masking tape",
            rolls::rolls(tape, house.tape_roll).into(),
            Words::new("rolls of {}").with(house.tape_roll),
            None,
        ),
    ]
}

fn nail_words(layout: &Layout) -> Words {
    match layout.nails.rail_nail {
        Some(nail) => Words::new("{} long, for rails into studs").with(nail),
        None => Words::new("from {} to less than {}, none sold in between")
            .with(layout.nails.rail_from)
            .with(layout.nails.rail_below),
    }
}

/// Edges that get tape: along the foot and the top of the field.
fn tape_edges(totals: &Totals) -> Length {
    up(totals.rail_length) * 2
}

fn paint_lines(coating: &Coating, paint: &Painted, assumed: &mut Vec<Words>) -> Vec<Purchase> {
    let needed = Purchase {
        what: "paint".to_owned(),
        buy: paint.total.into(),
        unit: Words::new("for {} coats, with hose and reserve").with(coating.coats.get()),
        cost: None,
    };
    let millilitres = libm::ceil(paint.total.get() * 1_000.0).min(f64::from(u32::MAX)) as u32;
    let Some(counts) = tins::cheapest(millilitres, &coating.tins) else {
        if coating.tins.is_empty() {
            assumed.push(Words::new("no tins were given: paint is named by volume"));
        }
        return vec![needed];
    };
    let chosen = coating.tins.iter().zip(counts).filter(|(_, count)| *count > 0);
    let mut lines = vec![needed];
    lines.extend(chosen.map(|(tin, count)| Purchase {
        what: "tins".to_owned(),
        buy: count.into(),
        unit: Words::new("{} each, one batch").with(tin.holds),
        cost: tin.price.times(i64::from(count)),
    }));
    lines
}

/// Hours of one pair of hands by the book's rates for each task, in the order of the work.
fn labour(layout: &Layout, house: &House, area: Amount<kind::Area>, coating: Option<&Coating>) -> Vec<TaskHours> {
    let totals = &layout.totals;
    let rate = |task: &str| {
        crate::price::labour::HOUSE_RATES.iter().find(|(name, _, _)| *name == task).map_or(0.0, |(_, _, hours)| *hours)
    };
    let boards = layout.members.iter().filter(|member| member.position.is_some()).count();
    let rails = layout.members.len() - boards;
    let task = |name: &str, hours: f64| TaskHours { task: name.to_owned(), hours: Amount::of(hours) };
    let fix = boards as f64 * rate("fix boards")
        + rails as f64 * rate("fix rails")
        + totals.angled_cuts as f64 * rate("cut mitres")
        + totals.plates.len() as f64 * rate("work round plates");
    let mut tasks = vec![
        task("set out", rate("set out") / 2.0),
        task("cut and fix", fix),
        task("fill", layout.nails.heads as f64 * rate("fill")),
        task("sand", 0.5 + boards as f64 * house.edge_sand_hours),
        task("caulk", totals.caulk.in_mm() / 1_000.0 * rate("caulk")),
        task("mask", 0.5 + totals.openings as f64 * rate("mask")),
    ];
    if let Some(coating) = coating {
        for coat in 1..=coating.coats.get() {
            tasks.push(task(&format!("coat {coat}"), 0.75 + area.get() / SPRAY_M2_H));
        }
        tasks.push(task("pull tape", 0.5));
        tasks.push(task("put right and hand over", 1.0));
    }
    tasks
}

/// The tasks one after the other, with the waits between them, in working hours.
fn programme(
    labour: &[TaskHours],
    coating: &Coating,
    shop: &Shop,
    house: &House,
    crew: f64,
    assumed: &mut Vec<Words>,
) -> Vec<ProgrammeLine> {
    let stretch = shop.air.map_or(1.0, |air| recoat::air_factor(air.temperature.get(), air.relative_humidity.get()));
    if let Some(air) = shop.air.filter(|air| air.temperature.get() < coating.least_temperature.get()) {
        assumed.push(
            Words::new("{} is below the least on the sheet, {}: no coat goes on in this air")
                .with(air.temperature)
                .with(coating.least_temperature),
        );
        return Vec::new();
    }
    if stretch.is_infinite() {
        assumed.push(Words::new("nothing dries in saturated air: no programme"));
        return Vec::new();
    }
    assumed.push(
        Words::new("drying stretched {} times for the air of the room; never shorter than the sheet").with(stretch),
    );
    let touch = recoat::up_to_quarter(coating.touch.get() * stretch);
    let wait = recoat::up_to_quarter(coating.recoat.get() * stretch);
    let minutes = |hours: f64| libm::ceil(hours * 60.0) as i64;
    // Waits after each task, on the clock.
    let waits: Vec<i64> = labour
        .iter()
        .enumerate()
        .map(|(index, task)| match task.task.as_str() {
            "cut and fix" => house.adhesive_wait,
            "fill" => house.filler_wait,
            "caulk" => house.caulk_wait,
            coat if coat.starts_with("coat ") => {
                let last = labour.get(index + 1).is_none_or(|next| !next.task.starts_with("coat "));
                if last { minutes(tape_pull::SHARES.0 * touch) } else { minutes(wait) }
            }
            "pull tape" => minutes(wait) - minutes(tape_pull::SHARES.0 * touch),
            _ => 0,
        })
        .collect();
    let tasks: Vec<Task> = labour
        .iter()
        .enumerate()
        .map(|(index, task)| Task {
            minutes: minutes(task.hours.get() / crew).min(CALENDAR.day_length() * 60),
            crew: 0,
            in_one_piece: task.task.starts_with("coat ") && minutes(task.hours.get() / crew) <= CALENDAR.day_length(),
            window: (task.task == "pull tape" && index > 0).then(|| (index - 1, minutes(tape_pull::SHARES.1 * wait))),
        })
        .collect();
    let ties: Vec<Vec<Tie>> = (0..tasks.len())
        .map(|index| if index == 0 { Vec::new() } else { vec![Tie { after: index - 1, wait: waits[index - 1] }] })
        .collect();
    let order: Vec<usize> = (0..tasks.len()).collect();
    let slots = lay(&tasks, &ties, &order, &CALENDAR);
    labour
        .iter()
        .zip(&slots)
        .zip(&waits)
        .map(|((task, slot), wait)| ProgrammeLine {
            task: task.task.clone(),
            starts: moment(slot.start),
            ends: moment(slot.finish),
            start_minute: slot.start,
            end_minute: slot.finish,
            wait_minutes: *wait,
            late: slot.late.is_some(),
        })
        .collect()
}

fn priced(rates: &Rates, hours: f64, shopping: &[Purchase], assumed: &mut Vec<Words>) -> Option<(Cost, Money)> {
    let bought = shopping.iter().filter_map(|line| line.cost).try_fold(Money::ZERO, Money::plus)?;
    let extra = rates.sundries.unwrap_or_default().plus(rates.others.unwrap_or_default())?;
    let percent = |share: Option<crate::price::job_cost::Share>, house: f64| share.map_or(house, |share| share.get());
    let cost = cost_of(
        hours,
        rates.hour,
        bought.plus(extra)?,
        percent(rates.contingency, 8.0),
        percent(rates.overhead, 15.0),
    )?;
    let margin = rates.margin.or_else(|| MarginShare::new(20.0))?;
    assumed.push(
        Words::new("contingency {}, overhead {}, margin {}")
            .with(Amount::<kind::Percent>::of(percent(rates.contingency, 8.0)))
            .with(Amount::<kind::Percent>::of(percent(rates.overhead, 15.0)))
            .with(margin),
    );
    Some((cost, price_at_margin(cost.total, margin)?))
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
