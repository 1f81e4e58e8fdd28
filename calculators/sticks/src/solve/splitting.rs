//! Where an open case is split in two: on the sticks of one kind, or on those of them that hold given pieces.
//!
//! Splits on patterns through pieces they hold at least so many of: "On Dantzig-Wolfe decomposition in integer
//! programming and ways to perform branching in a branch-and-price algorithm", Operations Research 48 (2000); cited from
//! memory.

use super::columns::Pattern;
use super::master::Master;
use super::problem::{Case, Kind, STAND_IN, holds};
use super::search::Search;

/// What counts as no whole number.
const PARTED: f64 = 1e-5;

/// One half has at most so many sticks of the kind that hold these pieces, the other at least one more.
pub(super) struct Split {
    pub(super) kind: usize,
    /// Empty: all sticks of the kind.
    pub(super) holds: Pattern,
    pub(super) at_most: u32,
}

/// How far a number is from a whole one.
fn off(amount: f64) -> f64 {
    (amount - amount.round()).abs()
}

impl Search {
    /// A split on the sticks of one kind: where the blend has no whole number of them, else where their number is not
    /// settled yet.
    pub(super) fn split_on_kinds(&self, master: &Master, case: &Case) -> Option<Split> {
        let kinds = &case.kinds;
        let mut counts = vec![0.0; kinds.len()];
        for (column, amount) in master.blend() {
            counts[self.pool.kind(column)] += amount;
        }
        let mut best: Option<(f64, usize, u32)> = None;
        for kind in 1..kinds.len() {
            let part = counts[kind] - counts[kind].floor();
            let off = part.min(1.0 - part);
            if off > 1e-5 && kinds[kind].least < kinds[kind].most {
                let score = off;
                if best.is_none_or(|(most, ..)| score > most) {
                    best = Some((score, kind, counts[kind].floor() as u32));
                }
            }
        }
        if let Some((_, kind, at_most)) = best {
            return Some(Split { kind, holds: Pattern::new(), at_most });
        }
        // All counts are whole: pin down one that is not pinned yet.
        (1..kinds.len()).filter(|&kind| kinds[kind].least < kinds[kind].most).find_map(|kind| {
            let count = counts[kind].round() as u32;
            let Kind { least, most, .. } = kinds[kind];
            if self.problem.kinds[kind].capacity < self.problem.sizes.last().copied().unwrap_or(0.0) {
                return None;
            }
            let at_most = if count > least { Some(count - 1) } else { (count < most).then_some(count) };
            at_most.map(|at_most| Split { kind, holds: Pattern::new(), at_most })
        })
    }

    /// A split on pieces, where every number of sticks is whole: a kind and as few pieces as will do, such that the blend
    /// has no whole number of sticks of that kind with at least these.
    pub(super) fn split_on_pieces(&self, master: &Master) -> Option<Split> {
        let blend: Vec<Share> = master
            .blend()
            .map(|(column, amount)| (self.pool.kind(column), self.pool.pattern(column), amount))
            .filter(|&(kind, ..)| kind != STAND_IN)
            .collect();
        let mut known: Vec<(usize, Pattern)> = blend.iter().map(|&(kind, ..)| (kind, Pattern::new())).collect();
        while !known.is_empty() {
            known = with_one_more(&known, &blend);
            let mut best: Option<(f64, Split)> = None;
            for (kind, wanted) in &known {
                let counted = blend.iter().filter(|(of, pattern, _)| of == kind && holds(pattern, wanted));
                let amount: f64 = counted.map(|&(.., amount)| amount).sum();
                // Long pieces say most about the rest of the stick.
                let score = off(amount) * self.problem.length_of(wanted);
                if off(amount) > PARTED && best.as_ref().is_none_or(|&(most, _)| score > most) {
                    let split = Split { kind: *kind, holds: wanted.clone(), at_most: amount.floor() as u32 };
                    best = Some((score, split));
                }
            }
            if let Some((_, split)) = best {
                return Some(split);
            }
        }
        None
    }
}

/// A kind, a pattern of it, and how much of it the blend has.
type Share<'a> = (usize, &'a [(u16, u16)], f64);

/// Every set of pieces with one size more, of a higher index, that some pattern holds which the blend has in part.
fn with_one_more(sets: &[(usize, Pattern)], blend: &[Share]) -> Vec<(usize, Pattern)> {
    let mut longer = std::collections::BTreeSet::new();
    for (kind, set) in sets {
        let last = set.last().map(|&(size, _)| size);
        for &(of, pattern, amount) in blend {
            if of != *kind || off(amount) <= PARTED || !holds(pattern, set) {
                continue;
            }
            for &(size, count) in pattern.iter().filter(|&&(size, _)| last.is_none_or(|last| size > last)) {
                for least in 1..=count {
                    longer.insert((of, set.iter().copied().chain([(size, least)]).collect()));
                }
            }
        }
    }
    longer.into_iter().collect()
}
