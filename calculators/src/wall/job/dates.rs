//! The tasks on the calendar, with the waits between them.
//!
//! A wait is the shop's own where it gave one, else the book's estimate; what a data sheet says is never undercut. Filler, caulk and
//! paint give their water to the air, so their waits are stretched for it by the model of [`recoat::air_factor`]. Waits run day and
//! night, hands work in working hours, and a coat is laid on in one piece or not at all.

use super::hours::Kind;
use super::{ProgrammeLine, TaskHours};
use crate::catalogue::Words;
use crate::drying::{recoat, tape_pull};
use crate::programme::calendar::{Calendar, clock_text, moment};
use crate::programme::network::Tie;
use crate::programme::schedule::{Job as Task, lay};
use crate::quantity::{Amount, kind};
use crate::wall::shop::{Coating, Shop, Wait};

/// Hours that adhesive grabs, filler dries and caulk skins before the next task, where neither shop nor sheet says. Estimates of
/// this book; filler and caulk in the air of a data sheet, 23 °C and 50 %.
const ESTIMATES: (f64, f64, f64) = (16.0, 3.0, 2.0);

fn hours(hours: f64) -> Amount<kind::Hours> {
    Amount::of(hours)
}

/// The wait that governs, in hours: the sheet's or the shop's own, whichever is longer, else an estimate of the book.
///
/// `stretch` is for what dries by giving its water to the air: the sheet's time and the book's estimate are stretched, the shop's
/// own is what it has seen and stays. Adhesive grabs by other ways too and has a stretch of 1.
fn governing(name: &'static str, wait: Wait, usual: f64, stretch: f64, assumed: &mut Vec<Words>) -> f64 {
    let (own, sheet) = (wait.own.map(|own| own.get()), wait.sheet.map(|sheet| sheet.get()));
    let (governs, told) = match (own, sheet) {
        (None, None) => (usual, Words::new("wait for {}: {}, an estimate of this book")),
        (Some(own), None) => (own, Words::new("wait for {}: {}, the shop’s own estimate; no data sheet was given")),
        (None, Some(sheet)) => (sheet, Words::new("wait for {}: {}, as on its data sheet")),
        (Some(own), Some(sheet)) if own < sheet => {
            let told =
                Words::new("wait for {}: {} as on its data sheet, which is longer than the shop’s own {} and governs");
            assumed.push(told.with(name).with(hours(sheet)).with(hours(own)));
            return sheet;
        }
        (Some(own), Some(sheet)) => {
            let told = Words::new("wait for {}: {}, the shop’s own estimate; its data sheet’s {} is not longer");
            assumed.push(told.with(name).with(hours(own)).with(hours(sheet)));
            return own;
        }
    };
    if own.is_some() || stretch <= 1.0 {
        assumed.push(told.with(name).with(hours(governs)));
        return governs;
    }
    let stretched = recoat::up_to_quarter(governs * stretch);
    let told = match sheet {
        None => {
            Words::new("wait for {}: {}; {} is an estimate of this book, stretched {} times for the air of the room")
        }
        Some(_) => Words::new("wait for {}: {}; {} as on its data sheet, stretched {} times for the air of the room"),
    };
    assumed.push(told.with(name).with(hours(stretched)).with(hours(governs)).with(Amount::<kind::Number>::of(stretch)));
    stretched
}

/// The time of a film: the shop's own, else the sheet's stretched for the air; never less than the sheet's.
fn film_time(name: &'static str, own: Option<f64>, sheet: f64, stretch: f64, assumed: &mut Vec<Words>) -> f64 {
    let Some(own) = own else { return recoat::up_to_quarter(sheet * stretch) };
    let told = if own < sheet {
        Words::new("{}: {} as on the data sheet, which is longer than the shop’s own {} and governs")
            .with(name)
            .with(hours(sheet))
            .with(hours(own))
    } else {
        Words::new("{}: {}, the shop’s own estimate; the data sheet says {}")
            .with(name)
            .with(hours(own))
            .with(hours(sheet))
    };
    assumed.push(told);
    recoat::up_to_quarter(own.max(sheet))
}

/// Waits of the films, in hours on the clock.
struct Films {
    primer: f64,
    recoat: f64,
    pull_from: f64,
    pull_until: f64,
}

fn films(coating: &Coating, shop: &Shop, stretch: f64, assumed: &mut Vec<Words>) -> Films {
    let waits = &shop.waits;
    let own = |wait: Option<crate::wall::shop::WaitHours>| wait.map(|wait| wait.get());
    let (touch_own, recoat_own, primer_own) = (own(waits.touch), own(waits.recoat), own(waits.primer));
    let primer_modelled = shop.primer.is_some() && primer_own.is_none();
    if touch_own.is_none() || recoat_own.is_none() || primer_modelled {
        assumed.push(
            Words::new(
                "drying stretched {} times for the air of the room, an estimate of this book; never shorter than the sheet",
            )
            .with(stretch),
        );
    }
    let touch = film_time("touch-dry", touch_own, coating.touch.get(), stretch, assumed);
    let recoat = film_time("recoat", recoat_own, coating.recoat.get(), stretch, assumed);
    let primer = shop
        .primer
        .as_ref()
        .map_or(0.0, |primer| film_time("primer to coat", primer_own, primer.recoat.get(), stretch, assumed));
    let (from, until) = (waits.pull_from, waits.pull_until);
    let share = |own: Option<f64>, usual: f64| own.map_or(usual, |percent| percent / 100.0);
    let pull_from = share(from.map(|share| share.get()), tape_pull::SHARES.0) * touch;
    let pull_until = share(until.map(|share| share.get()), tape_pull::SHARES.1) * recoat;
    let whose = match (from, until) {
        (None, None) => "an estimate of this book",
        (Some(_), Some(_)) => "the shop’s own estimate",
        _ => "one of the shop’s own, one of this book’s estimates",
    };
    assumed.push(
        Words::new("tape is pulled from {} to {} after the last coat, {}")
            .with(hours(pull_from))
            .with(hours(pull_until))
            .with(whose),
    );
    Films { primer, recoat, pull_from, pull_until }
}

/// Why no coat can go on, if none can.
fn no_programme(coating: &Coating, shop: &Shop, stretch: f64) -> Option<Words> {
    let air = shop.air?;
    let least = coating
        .least_temperature
        .get()
        .max(shop.primer.as_ref().map_or(f64::MIN, |primer| primer.least_temperature.get()));
    if air.temperature.get() < least {
        let least = Amount::<kind::Temperature>::of(least);
        let told = Words::new("{} is below the least on the sheet, {}: no coat goes on in this air");
        return Some(told.with(air.temperature).with(least));
    }
    stretch.is_infinite().then(|| Words::new("nothing dries in saturated air: no programme"))
}

/// A coat too long for the day, if one is.
fn too_long(labour: &[(Kind, TaskHours)], crew: u32, calendar: &Calendar) -> Option<Words> {
    let (_, task) = labour.iter().find(|(kind, task)| {
        kind.in_one_piece() && minutes(task.hours.get() / f64::from(crew)) > calendar.day_length()
    })?;
    Some(
        Words::new("{} takes {} with {} pairs of hands and is not split, but the working day has {}: no programme; take more hands, a longer day, or a natural break in the wall")
            .with(task.task.clone())
            .with(hours(task.hours.get() / f64::from(crew)))
            .with(crew)
            .with(hours(calendar.day_length() as f64 / 60.0)),
    )
}

fn minutes(hours: f64) -> i64 {
    // A hair of slack, so that a sum of rates that is a whole minute stays one.
    libm::ceil(hours * 60.0 - 1e-6) as i64
}

/// The tasks one after the other, with the waits between them, in working hours.
pub(super) fn programme(
    labour: &[(Kind, TaskHours)],
    coating: &Coating,
    shop: &Shop,
    assumed: &mut Vec<Words>,
) -> Vec<ProgrammeLine> {
    let stretch = shop.air.map_or(1.0, |air| recoat::air_factor(air.temperature.get(), air.relative_humidity.get()));
    let crew = shop.days.hands();
    let Some(calendar) = shop.days.calendar() else { return Vec::new() };
    if let Some(why) = no_programme(coating, shop, stretch).or_else(|| too_long(labour, crew, &calendar)) {
        assumed.push(why);
        return Vec::new();
    }
    let whose = if shop.days == crate::wall::shop::WorkingDays::default() { "this book’s" } else { "the shop’s" };
    assumed.push(
        Words::new("working days from {} to {}, {} in a week, {} pairs of hands: {}")
            .with(clock_text(calendar.starts))
            .with(clock_text(calendar.ends))
            .with(calendar.days_a_week)
            .with(crew)
            .with(whose),
    );
    let films = films(coating, shop, stretch, assumed);
    let adhesive = governing("adhesive", shop.waits.adhesive, ESTIMATES.0, 1.0, assumed);
    let filler = governing("filler", shop.waits.filler, ESTIMATES.1, stretch, assumed);
    let caulk = governing("caulk", shop.waits.caulk, ESTIMATES.2, stretch, assumed);
    // Waits after each task, on the clock. A film is rubbed down once it can be coated, and then coated.
    let more_coats = |index: usize| labour.iter().skip(index + 1).any(|(kind, _)| *kind == Kind::Coat);
    let waits: Vec<i64> = labour
        .iter()
        .enumerate()
        .map(|(index, (kind, _))| match kind {
            Kind::Fix => minutes(adhesive),
            Kind::Fill => minutes(filler),
            Kind::Caulk => minutes(caulk),
            Kind::Prime => minutes(films.primer),
            Kind::Coat if more_coats(index) => minutes(films.recoat),
            Kind::Coat => minutes(films.pull_from),
            Kind::PullTape => (minutes(films.recoat) - minutes(films.pull_from)).max(0),
            Kind::SetOut | Kind::Sand | Kind::Denib | Kind::Mask | Kind::HandOver => 0,
        })
        .collect();
    let tasks: Vec<Task> = labour
        .iter()
        .enumerate()
        .map(|(index, (kind, task))| Task {
            minutes: minutes(task.hours.get() / f64::from(crew)),
            crew: 0,
            in_one_piece: kind.in_one_piece(),
            window: (*kind == Kind::PullTape && index > 0).then(|| (index - 1, minutes(films.pull_until))),
        })
        .collect();
    let ties: Vec<Vec<Tie>> = (0..tasks.len())
        .map(|index| if index == 0 { Vec::new() } else { vec![Tie { after: index - 1, wait: waits[index - 1] }] })
        .collect();
    let order: Vec<usize> = (0..tasks.len()).collect();
    let slots = lay(&tasks, &ties, &order, &calendar);
    labour
        .iter()
        .zip(&slots)
        .zip(&waits)
        .map(|(((_, task), slot), wait)| ProgrammeLine {
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
