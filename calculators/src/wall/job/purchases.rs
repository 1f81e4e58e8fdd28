//! What is bought: sticks, adhesive, caulk, nails, filler, tape, paint.

use super::Purchase;
use super::house::{Amounts, HOSE_L, TRANSFER};
use crate::catalogue::{Figure, Words};
use crate::coating::{film, tin_choice};
use crate::filling::{bead, caulk, filler};
use crate::fixing::adhesive;
use crate::masking::rolls;
use crate::quantity::{Amount, Exact, Length, Money, Run, kind};
use crate::wall::plan::{Layout, Totals};
use crate::wall::shop::{Coating, Primer, Rates};

pub(super) struct Painted {
    pub(super) per_coat: Amount<kind::Paint>,
    pub(super) wet_film: Amount<kind::Film>,
    total: Amount<kind::Paint>,
}

/// Paint for all coats, hose and reserve.
pub(super) fn painted(coating: &Coating, area: Amount<kind::Area>, reserve: f64) -> Painted {
    let wet_film = film::wet_film(coating.dry_film.amount(), coating.volume_solids.get() / 100.0, 0.0);
    let transfer = coating.transfer.map_or(TRANSFER, |share| share.get() / 100.0);
    let per_coat = film::litres_sprayed(area.get(), wet_film, transfer);
    let hose = coating.hose.map_or(HOSE_L, |hose| hose.get());
    let total = Amount::of((per_coat.get() * f64::from(coating.coats.get()) + hose) * (1.0 + reserve));
    Painted { per_coat, wet_film, total }
}

/// Primer for its one coat, hose and reserve.
pub(super) fn primer_line(primer: &Primer, area: Amount<kind::Area>, reserve: f64) -> Purchase {
    let wet_film = film::wet_film(primer.dry_film.amount(), primer.volume_solids.get() / 100.0, 0.0);
    let transfer = primer.transfer.map_or(TRANSFER, |share| share.get() / 100.0);
    let litres = film::litres_sprayed(area.get(), wet_film, transfer).get();
    Purchase {
        what: "primer".to_owned(),
        buy: Amount::<kind::Paint>::of((litres + HOSE_L) * (1.0 + reserve)).into(),
        unit: Words::new("for one coat of {} wet, with hose and reserve").with(wet_film),
        cost: None,
    }
}

/// The book's estimates for paint where its shop gave none.
pub(super) fn paint_estimates(coating: &Coating) -> Option<Words> {
    let transfer = coating.transfer.is_none().then(|| {
        ("share of the paint that reaches the work {}", Figure::from(Amount::<kind::Percent>::of(TRANSFER * 100.0)))
    });
    let hose =
        coating.hose.is_none().then(|| ("paint left in the hose {}", Figure::from(Amount::<kind::Paint>::of(HOSE_L))));
    let (names, figures): (Vec<_>, Vec<_>) = transfer.into_iter().chain(hose).unzip();
    let start = Words::new(format!("estimates of this book: {}", names.join(", ")));
    (!figures.is_empty()).then(|| figures.into_iter().fold(start, Words::with))
}

/// One line for each length of stick in each section.
pub(super) fn boards(layout: &Layout) -> Vec<Purchase> {
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

pub(super) fn sundries(layout: &Layout, house: &Amounts, rates: Option<&Rates>) -> Vec<Purchase> {
    let totals = &layout.totals;
    let glue = adhesive::adhesive_volume(up(totals.glued), house.bead, house.wave, house.adhesive_lost);
    let glue_cartridges = bead::cartridges_for(glue.get(), house.adhesive_cartridge);
    let section = caulk::caulk_section_mm2(house.leg, Length::ZERO, Length::ZERO);
    let caulk_cartridges =
        caulk::caulk_cartridges(up(totals.caulk), section, Amount::of(house.caulk_cartridge), house.caulk_lost);
    let heads = u32::try_from(layout.nails.heads).unwrap_or(u32::MAX);
    let tape = rolls::tape_needed(tape_edges(totals), house.tape_extra);
    let cost_of_each = |price: Option<Money>, count: u32| price.and_then(|price| price.times(i64::from(count)));
    let cartridges = |millilitres| Words::new("cartridges of {}").with(Amount::<kind::SmallVolume>::of(millilitres));
    let line = |what: &str, buy: Figure, unit: Words, cost| Purchase { what: what.to_owned(), buy, unit, cost };
    vec![
        line(
            "adhesive",
            glue_cartridges.into(),
            cartridges(house.adhesive_cartridge),
            cost_of_each(rates.and_then(|rates| rates.adhesive), glue_cartridges),
        ),
        line(
            "caulk",
            caulk_cartridges.into(),
            cartridges(house.caulk_cartridge),
            cost_of_each(rates.and_then(|rates| rates.caulk), caulk_cartridges),
        ),
        line("nails", (layout.nails.in_rails + layout.nails.in_boards).into(), nail_words(layout), None),
        line("pins", layout.nails.pins.into(), pin_words(layout), None),
        line(
            "filler",
            filler::filler_needed(heads, house.hole, 0.0, house.shrink).into(),
            Words::new("for {} heads").with(layout.nails.heads),
            None,
        ),
        line(
            "masking tape",
            rolls::rolls(tape, house.tape_roll).into(),
            Words::new("rolls of {}").with(Run::of(house.tape_roll)),
            None,
        ),
    ]
}

/// Behind the plasterboard hang cables and pipes: a pin off the studs goes no further.
fn pin_words(layout: &Layout) -> Words {
    match layout.nails.pin {
        Some(pin) => {
            Words::new("23 gauge, beside adhesive, no longer than {}: off the studs nothing goes past the plasterboard")
                .with(pin)
        }
        None => Words::new("23 gauge, beside adhesive, no longer than board and plasterboard together"),
    }
}

fn nail_words(layout: &Layout) -> Words {
    if layout.nails.in_rails == 0 {
        return Words::new("18 gauge, for boards into base and rails; no stud was found behind the rails");
    }
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

pub(super) fn paint_lines(coating: &Coating, paint: &Painted, assumed: &mut Vec<Words>) -> Vec<Purchase> {
    let needed = Purchase {
        what: "paint".to_owned(),
        buy: paint.total.into(),
        unit: Words::new("for {} coats, with hose and reserve").with(coating.coats.get()),
        cost: None,
    };
    let Some(counts) = tin_choice::cheapest(paint.total, &coating.tins) else {
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
