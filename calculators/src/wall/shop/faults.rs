//! Rules between the fields of a shop.

use super::{Shop, WorkingDays};
use crate::catalogue::{Fault, Words};
use crate::drying::tape_pull::{SHARES, minutes_of_day};
use crate::programme::calendar::clock_text;

/// The rules between fields that a shop breaks, with pointers below `/shop`.
pub(in crate::wall) fn shop_faults(shop: &Shop, faults: &mut Vec<Fault>) {
    clock_faults(&shop.days, faults);
    let Some(coating) = &shop.coating else { return };
    if coating.touch.get() > coating.recoat.get() {
        let why = Words::new("touch-dry comes before recoat, {} on this sheet").with(coating.recoat);
        faults.push(Fault::new("/shop/coating/touch", Words::of(coating.touch), why, Words::of(coating.recoat)));
    }
    if let Some((touch, recoat)) = shop.waits.touch.zip(shop.waits.recoat)
        && touch.get() > recoat.get()
    {
        let why = Words::new("touch-dry comes before recoat, {} in this shop").with(recoat);
        faults.push(Fault::new("/shop/waits/touch", Words::of(touch), why, Words::of(recoat)));
    }
    let share = |given: Option<f64>, usual: f64| given.map_or(usual, |percent| percent / 100.0);
    let opens = share(shop.waits.pull_from.map(|share| share.get()), SHARES.0) * coating.touch.get();
    let closes = share(shop.waits.pull_until.map(|share| share.get()), SHARES.1) * coating.recoat.get();
    if opens > closes {
        let (pointer, said) = match (shop.waits.pull_from, shop.waits.pull_until) {
            (_, Some(until)) => ("/shop/waits/pull_until", Words::of(until)),
            (Some(from), None) => ("/shop/waits/pull_from", Words::of(from)),
            (None, None) => return,
        };
        let why = "the window for pulling tape would close before it opens; open it earlier or close it later";
        faults.push(Fault::new(pointer, said, why, "50 %"));
    }
}

fn clock_faults(days: &WorkingDays, faults: &mut Vec<Fault>) {
    let usual = super::working_days::USUAL;
    let before = faults.len();
    for (pointer, clock, instead) in
        [("/shop/days/day_start", &days.day_start, usual.starts), ("/shop/days/day_end", &days.day_end, usual.ends)]
    {
        if let Some(text) = clock.as_ref().filter(|text| minutes_of_day(text).is_none()) {
            let why = "a time of day is hours and minutes from 00:00 to 23:59";
            faults.push(Fault::new(pointer, Words::from(format!("«{text}»")), why, clock_text(instead)));
        }
    }
    if before == faults.len() && days.calendar().is_none() {
        // The clock that the book's own other end would put right, else the end of the day.
        let end = days.day_end.as_deref().map_or(Some(usual.ends), minutes_of_day).unwrap_or(0);
        let (pointer, clock, instead) = if usual.starts < end && days.day_start.is_some() {
            ("/shop/days/day_start", &days.day_start, "08:00")
        } else {
            ("/shop/days/day_end", &days.day_end, "23:59")
        };
        let clock = clock.as_deref().unwrap_or_default();
        let why = "the working day must end after it starts; empty is 08:00 to 16:30";
        faults.push(Fault::new(pointer, Words::from(format!("«{clock}»")), why, instead));
    }
}
