//! The sticks of a wall: the cheapest plan for each section, with its proof, from the stick solver.
//!
//! Sections are kept apart: a board is not cut from a rail's stock unless both have the same width and thickness.

use std::collections::BTreeMap;

use super::defaults::Settled;
use super::plan::{Piece, SawnPiece, SawnStick, StickPlan};
use super::scheme::{CutFor, Stick, Stock};
use crate::quantity::{Length, Money};
use crate::stock::{
    self,
    instance::Instance,
    on_hand::{self, Held, Laid, Usable},
    plan::Status,
    solve::{self, Effort},
};

/// Work spent on one section's plan: a sheet that is drawn anew at each change must not wait for the last proof.
const EFFORT: Effort = Effort { cases: 400, leftover_cases: 20 };

/// The sticks of every section that the pieces are cut from.
pub fn stick_plans(pieces: &[Piece], stock: &Stock, settled: &Settled) -> Vec<StickPlan> {
    if stock.sticks.is_empty() {
        return Vec::new();
    }
    let mut sections: Vec<(Length, Length, bool)> = Vec::new();
    for piece in pieces {
        let section = (piece.width, piece.thickness, piece.rail);
        if !sections.contains(&section) {
            sections.push(section);
        }
    }
    sections.into_iter().map(|section| section_plan(section, pieces, stock, settled)).collect()
}

fn section_plan(
    (width, thickness, rail): (Length, Length, bool),
    all: &[Piece],
    stock: &Stock,
    settled: &Settled,
) -> StickPlan {
    let mut pieces: Vec<&Piece> =
        all.iter().filter(|piece| (piece.width, piece.thickness, piece.rail) == (width, thickness, rail)).collect();
    pieces.sort_by_key(|piece| std::cmp::Reverse(piece.length));
    let kinds = kinds(stock, rail);
    let held: Vec<Held> = kinds.iter().map(|stick| held(stick)).collect();
    let usable = on_hand::usable(&held, settled.end_trim, settled.kerf);
    let longest = usable.iter().map(|part| part.length).max().unwrap_or(Length::ZERO);
    let (fitting, without): (Vec<&Piece>, Vec<&Piece>) = pieces.into_iter().partition(|piece| piece.length <= longest);
    let pitch = longest + settled.kerf;
    let demand: Length = fitting.iter().map(|piece| piece.length + settled.kerf).sum();
    let by_length = usize::try_from((demand + pitch - Length::from_nm(1)).whole_parts(pitch)).unwrap_or(0);
    let solved = solve::plan(&asked(&fitting, &held, &usable, settled.kerf), EFFORT, &mut || true).ok();
    let solved = solved.filter(|plan| matches!(plan.status, Status::ProvedLeast | Status::BestFound { .. }));
    let proved = solved.as_ref().is_some_and(|plan| plan.status == Status::ProvedLeast) || fitting.is_empty();
    let short: &[&Piece] = if solved.is_some() { &[] } else { &fitting };
    let sticks = solved.as_ref().map_or_else(Vec::new, |plan| {
        let laid = on_hand::laid(&plan.sticks, &held, &usable);
        sawn(&laid, &fitting, &kinds, &usable, settled)
    });
    StickPlan {
        width,
        thickness,
        proved: proved && short.is_empty(),
        cost: Money::from_minor(solved.as_ref().map_or(0, |plan| plan.cost)),
        at_least: if proved { sticks.len() } else { by_length },
        without: without.iter().chain(short).map(|piece| piece.label.clone()).collect(),
        sticks,
    }
}

/// A stick as it lies in the rack or the shop.
fn held(stick: &Stick) -> Held {
    Held::told(
        stick.length.get(),
        stick.price.unwrap_or_default(),
        stick.available.map(|count| count.get()),
        &stick.bad,
    )
}

/// What rails, or boards, may be cut from.
fn kinds(stock: &Stock, rail: bool) -> Vec<&Stick> {
    let fits = |stick: &&Stick| match stick.cut_for {
        CutFor::Any => true,
        CutFor::Boards => !rail,
        CutFor::Rails => rail,
    };
    stock.sticks.iter().filter(fits).collect()
}

/// The longest clear part of any stick for rails, or for boards; none where there is no such stick.
pub fn longest_for(stock: &Stock, settled: &Settled, rails: bool) -> Option<Length> {
    let held: Vec<Held> = kinds(stock, rails).into_iter().map(held).collect();
    on_hand::usable(&held, settled.end_trim, settled.kerf).iter().map(|part| part.length).max()
}

/// The section as a question for the solver: lengths in nanometres, ends trimmed off and bad stretches cut out.
fn asked(pieces: &[&Piece], held: &[Held], usable: &[Usable], kerf: Length) -> Instance {
    let mut counts: BTreeMap<i64, u32> = BTreeMap::new();
    for piece in pieces {
        *counts.entry(piece.length.nm()).or_default() += 1;
    }
    Instance {
        pieces: counts.into_iter().map(|(length, count)| stock::instance::Piece { length, count }).collect(),
        kerf: kerf.nm(),
        sticks: on_hand::offered(held, usable),
    }
}

/// The solver's plan with the wall's own labels on its pieces, in the order of the cut list for equal lengths.
fn sawn(laid: &[Laid], pieces: &[&Piece], kinds: &[&Stick], usable: &[Usable], settled: &Settled) -> Vec<SawnStick> {
    let mut labels: BTreeMap<i64, Vec<&str>> = BTreeMap::new();
    for piece in pieces.iter().rev() {
        labels.entry(piece.length.nm()).or_default().push(&piece.label);
    }
    let mut sticks = Vec::new();
    for Laid { part, cut } in laid {
        let place = usable.get(*part);
        let stick = place.and_then(|place| kinds.get(place.held));
        let bad = stick.map(|stick| stick.bad.clone()).unwrap_or_default();
        let offcut = Length::from_nm(cut.leftover);
        for _ in 0..cut.times {
            let each = cut.pieces.iter().flat_map(|piece| std::iter::repeat_n(piece.length, piece.count as usize));
            let pieces = each
                .map(|length| SawnPiece {
                    label: labels.get_mut(&length).and_then(Vec::pop).unwrap_or_default().to_owned(),
                    length: Length::from_nm(length),
                })
                .collect();
            sticks.push(SawnStick {
                stick: stick.map_or(Length::from_nm(cut.length), |stick| stick.length.get()),
                from: place.filter(|_| !bad.is_empty()).map(|place| place.from),
                bad: bad.clone(),
                pieces,
                offcut,
                keep: settled.keep_offcut <= offcut,
            });
        }
    }
    sticks
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::scheme::Scheme;
    use serde_json::json;

    fn settled(stock: &Stock) -> Settled {
        let scheme: Scheme = crate::catalogue::read_as(json!({
            "board_width": "2 1/2 in", "board_thickness": "3/4 in", "target_bay": "13 in",
            "rails": { "width": "3 1/2 in", "top": "62 in" }
        }))
        .expect("a scheme");
        Settled::of(&scheme, stock)
    }

    fn piece(n: usize, eighths: i64, rail: bool) -> Piece {
        let width = Length::sixty_fourths(if rail { 224 } else { 160 });
        let length = Length::sixty_fourths(eighths * 8);
        Piece { label: format!("{n}"), width, thickness: Length::sixty_fourths(48), length, rail }
    }

    #[test]
    fn pieces_kerfs_and_trims_add_up_on_every_stick() {
        let stock: Stock = crate::catalogue::read_as(json!({
            "sticks": [{ "length": "12 ft", "price": "18.00" }, { "length": "8 ft", "price": "11.00", "available": 2 }]
        }))
        .expect("a stock");
        let lengths = [378, 378, 378, 378, 378, 268, 268, 268, 268, 488, 488, 488];
        let pieces: Vec<_> = lengths.iter().enumerate().map(|(n, eighths)| piece(n, *eighths, false)).collect();
        let settled = settled(&stock);
        let plans = stick_plans(&pieces, &stock, &settled);
        assert_eq!(plans.len(), 1);
        let mut cut: Vec<String> = Vec::new();
        for stick in &plans[0].sticks {
            let kerfs = i64::try_from(stick.pieces.len()).expect("few") - 1;
            let used: Length = stick.pieces.iter().map(|piece| piece.length).sum::<Length>() + settled.kerf * kerfs;
            assert!(used + settled.end_trim * 2 <= stick.stick);
            cut.extend(stick.pieces.iter().map(|piece| piece.label.clone()));
        }
        cut.sort();
        cut.dedup();
        assert_eq!(cut.len(), 12);
        assert!(plans[0].at_least <= plans[0].sticks.len());
    }

    #[test]
    fn a_marked_stick_from_the_rack_is_cut_on_both_sides_of_its_knot() {
        // By hand: 8 ft with 1/2 in off each end and a knot from 40 in to 44 in leaves 39 1/2 in and 51 1/2 in: a 38 in and a 50 in
        // piece come out of it, and nothing is bought.
        let stock: Stock = crate::catalogue::read_as(json!({
            "sticks": [
                { "length": "8 ft", "price": "0.00", "bad": [{ "from": "40 in", "to": "44 in" }] },
                { "length": "12 ft", "price": "18.00" },
            ]
        }))
        .expect("a stock");
        let plans = stick_plans(&[piece(1, 304, false), piece(2, 400, false)], &stock, &settled(&stock));
        assert_eq!((plans[0].cost, plans[0].proved), (Money::ZERO, true));
        let from: Vec<_> = plans[0].sticks.iter().map(|stick| (stick.pieces[0].label.as_str(), stick.from)).collect();
        assert!(
            from.contains(&("1", Some(Length::um(12_700)))) && from.contains(&("2", Some(Length::inches(44)))),
            "{from:?}"
        );
    }

    #[test]
    fn a_piece_longer_than_every_stick_is_named() {
        let stock: Stock = crate::catalogue::read_as(json!({ "sticks": [{ "length": "8 ft" }] })).expect("a stock");
        let plans = stick_plans(&[piece(1, 900, true)], &stock, &settled(&stock));
        assert_eq!(plans[0].without, ["1"]);
        assert!(plans[0].sticks.is_empty());
    }
}
