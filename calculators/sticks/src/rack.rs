//! Offcuts worth keeping go back into the rack, and from there into the next plan.

use std::collections::BTreeMap;

use super::instance::Stick;
use super::plan::Plan;

/// The leftovers of a plan from the shop's keep-length up, as sticks already paid for, longest first.
///
/// # Source
/// Common practice, no source: a shop keeps what is longer than its shortest usual piece.
pub fn back_to_rack(plan: &Plan, keep_from: i64) -> Vec<Stick> {
    let mut kept: BTreeMap<i64, u32> = BTreeMap::new();
    for stick in plan.sticks.iter().filter(|stick| stick.leftover > 0 && stick.leftover >= keep_from) {
        let count = kept.entry(stick.leftover).or_insert(0);
        *count = count.saturating_add(stick.times);
    }
    kept.into_iter().rev().map(|(length, count)| Stick { length, price: 0, available: Some(count) }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::instance::{Instance, Piece};
    use crate::solve::{Effort, plan};

    #[test]
    fn what_is_long_enough_is_cut_from_next_time() {
        // By hand: 70 from 100 with a kerf of 2 leaves 28; the next 28 comes out of it, flush, for nothing.
        let bought = Stick { length: 100, price: 9, available: None };
        let first = Instance { pieces: vec![Piece { length: 70, count: 1 }], kerf: 2, sticks: vec![bought] };
        let rack = back_to_rack(&plan(&first, Effort::USUAL, &mut || true).unwrap(), 20);
        assert_eq!(rack, [Stick { length: 28, price: 0, available: Some(1) }]);
        let next = Instance {
            pieces: vec![Piece { length: 28, count: 1 }],
            kerf: 2,
            sticks: rack.into_iter().chain([bought]).collect(),
        };
        assert_eq!(plan(&next, Effort::USUAL, &mut || true).unwrap().cost, 0);
    }

    #[test]
    fn short_ends_are_waste() {
        let asked = Instance {
            pieces: vec![Piece { length: 95, count: 1 }],
            kerf: 2,
            sticks: vec![Stick { length: 100, price: 9, available: None }],
        };
        assert!(back_to_rack(&plan(&asked, Effort::USUAL, &mut || true).unwrap(), 20).is_empty());
    }
}
