//! A first stick plan: longest piece first into the stick where it leaves least, once per stick length, cheapest kept.
//!
//! Sound, not always the least; the bound beside it says how many sticks no plan can do without. Sections are kept apart: a
//! board is not cut from a rail's stock unless both have the same width and thickness.

use super::defaults::Settled;
use super::plan::{Piece, SawnPiece, SawnStick, StickPlan};
use super::scheme::{CutFor, Stick, Stock};
use crate::quantity::{Length, Money};

/// One stick being filled.
struct Open {
    kind: usize,
    left: Length,
    pieces: Vec<usize>,
}

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
    let kinds: Vec<&Stick> = stock
        .sticks
        .iter()
        .filter(|stick| match stick.cut_for {
            CutFor::Any => true,
            CutFor::Boards => !rail,
            CutFor::Rails => rail,
        })
        .collect();
    let usable = |kind: usize| kinds.get(kind).map_or(Length::ZERO, |stick| stick.length.get() - settled.end_trim * 2);
    let longest = (0..kinds.len()).map(usable).max().unwrap_or(Length::ZERO);
    let (fitting, without): (Vec<&Piece>, Vec<&Piece>) = pieces.into_iter().partition(|piece| piece.length <= longest);
    let best = (0..kinds.len())
        .filter_map(|preferred| filled(&fitting, &kinds, preferred, &usable, settled.kerf))
        .min_by_key(|open| (price(open, &kinds), open.len()));
    let (open, short) = match best {
        Some(open) => (open, Vec::new()),
        None => (Vec::new(), fitting.clone()),
    };
    let pitch = longest + settled.kerf;
    let demand: Length = fitting.iter().map(|piece| piece.length + settled.kerf).sum();
    let at_least = usize::try_from((demand + pitch - Length::from_nm(1)).whole_parts(pitch)).unwrap_or(0);
    let unlimited = kinds.len() == 1 && kinds.iter().all(|stick| stick.available.is_none());
    StickPlan {
        width,
        thickness,
        proved: unlimited && open.len() == at_least && short.is_empty(),
        cost: Money::from_minor(price(&open, &kinds)),
        at_least,
        without: without.iter().chain(&short).map(|piece| piece.label.clone()).collect(),
        sticks: open.iter().map(|stick| sawn(stick, &fitting, &kinds, settled)).collect(),
    }
}

/// Longest first into the tightest open stick; new sticks of the preferred kind where they can be had and fit.
fn filled(
    pieces: &[&Piece],
    kinds: &[&Stick],
    preferred: usize,
    usable: &dyn Fn(usize) -> Length,
    kerf: Length,
) -> Option<Vec<Open>> {
    let mut left: Vec<Option<u32>> = kinds.iter().map(|stick| stick.available.map(|count| count.get())).collect();
    let mut open: Vec<Open> = Vec::new();
    for (n, piece) in pieces.iter().enumerate() {
        // Between two pieces stands one kerf: the first piece of a stick needs none.
        let tightest = open.iter_mut().filter(|stick| piece.length + kerf <= stick.left).min_by_key(|stick| stick.left);
        if let Some(stick) = tightest {
            stick.left = stick.left - piece.length - kerf;
            stick.pieces.push(n);
            continue;
        }
        let fits = |kind: &usize| piece.length <= usable(*kind) && left[*kind] != Some(0);
        let kind =
            Some(preferred).filter(fits).or_else(|| (0..kinds.len()).filter(fits).min_by_key(|kind| usable(*kind)))?;
        left[kind] = left[kind].map(|count| count - 1);
        open.push(Open { kind, left: usable(kind) - piece.length, pieces: vec![n] });
    }
    // A stick that is not full may do with a cheaper kind.
    for stick in &mut open {
        let used = usable(stick.kind) - stick.left;
        let price = |kind: usize| kinds[kind].price.map_or(0, Money::minor);
        let cheaper = (0..kinds.len())
            .filter(|kind| used <= usable(*kind) && left[*kind] != Some(0) && price(*kind) < price(stick.kind))
            .min_by_key(|kind| (price(*kind), usable(*kind)));
        if let Some(kind) = cheaper {
            left[stick.kind] = left[stick.kind].map(|count| count + 1);
            left[kind] = left[kind].map(|count| count - 1);
            stick.left = usable(kind) - used;
            stick.kind = kind;
        }
    }
    Some(open)
}

fn price(open: &[Open], kinds: &[&Stick]) -> i64 {
    open.iter().map(|stick| kinds[stick.kind].price.map_or(0, Money::minor)).fold(0, i64::saturating_add)
}

fn sawn(stick: &Open, pieces: &[&Piece], kinds: &[&Stick], settled: &Settled) -> SawnStick {
    let offcut = (stick.left - settled.kerf).max(Length::ZERO);
    SawnStick {
        stick: kinds[stick.kind].length.get(),
        pieces: stick
            .pieces
            .iter()
            .map(|n| SawnPiece { label: pieces[*n].label.clone(), length: pieces[*n].length })
            .collect(),
        offcut,
        keep: settled.keep_offcut <= offcut,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wall::scheme::Scheme;
    use serde_json::json;

    fn settled(stock: &Stock) -> Settled {
        let scheme: Scheme = serde_json::from_value(json!({
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
        let stock: Stock = serde_json::from_value(json!({
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
    fn a_piece_longer_than_every_stick_is_named() {
        let stock: Stock = serde_json::from_value(json!({ "sticks": [{ "length": "8 ft" }] })).expect("a stock");
        let plans = stick_plans(&[piece(1, 900, true)], &stock, &settled(&stock));
        assert_eq!(plans[0].without, ["1"]);
        assert!(plans[0].sticks.is_empty());
    }
}
