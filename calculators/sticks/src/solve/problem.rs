//! The instance made ready for the search: equal lengths merged, kerf folded into sizes, goals folded into weights.

use std::collections::BTreeMap;

use super::columns::Pattern;
use crate::instance::{Instance, weight_of};

/// A cutting question in sizes: a piece is its length and one kerf, a stick its length and one kerf.
///
/// Sizes are whole numbers kept as floats: they stay below 2^52, so sums and comparisons are exact.
#[derive(Clone, Debug)]
pub(super) struct Problem {
    /// Piece sizes, longest first.
    pub(super) sizes: Vec<f64>,
    /// How many of each size.
    pub(super) need: Vec<u32>,
    /// Stick kinds. The first is a stand-in that is never bought: it keeps every question answerable in the middle
    /// of the search, at a penalty.
    pub(super) kinds: Vec<Kind>,
}

impl Problem {
    /// The sizes of a pattern's pieces together.
    pub(super) fn length_of(&self, pattern: &[(u16, u16)]) -> f64 {
        pattern.iter().map(|&(size, count)| self.sizes[usize::from(size)] * f64::from(count)).sum()
    }
}

/// Sticks of one capacity and weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Kind {
    /// Length and one kerf, in the sizes' unit.
    pub(super) capacity: f64,
    /// What one of them adds to the total.
    pub(super) weight: i64,
    /// How many must be used at least.
    pub(super) least: u32,
    /// How many may be used at most; `u32::MAX` for no limit.
    pub(super) most: u32,
}

/// How many sticks of one kind hold at least these pieces, as a case of the search settles it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Held {
    pub(super) kind: usize,
    /// (size index, at least so many), size indices rising.
    pub(super) holds: Pattern,
    pub(super) limit: Limit,
}

/// One side of a count.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Limit {
    Most(u32),
    Least(u32),
}

impl Held {
    /// Whether a stick of this kind, cut so, counts.
    pub(super) fn counts(&self, kind: usize, pattern: &[(u16, u16)]) -> bool {
        kind == self.kind && holds(pattern, &self.holds)
    }

    /// Least and most of them.
    pub(super) fn range(&self) -> (u32, u32) {
        match self.limit {
            Limit::Most(most) => (0, most),
            Limit::Least(least) => (least, u32::MAX),
        }
    }
}

/// Whether a pattern holds at least all of `wanted`; both by size index, rising.
pub(super) fn holds(pattern: &[(u16, u16)], wanted: &[(u16, u16)]) -> bool {
    wanted.iter().all(|&(size, least)| pattern.iter().any(|&(held, count)| held == size && count >= least))
}

/// What one case of the search allows: sticks of each kind, and among them sticks that hold given pieces.
#[derive(Clone, Debug)]
pub(super) struct Case {
    pub(super) kinds: Vec<Kind>,
    pub(super) held: Vec<Held>,
}

impl Case {
    /// What is left of a case after sticks have been used, and sticks that count for each of `held`.
    pub(super) fn rest(&self, used: &[u32], met: &[u32]) -> Self {
        let left = |count: u32, used: u32| if count == u32::MAX { count } else { count.saturating_sub(used) };
        let kinds = self.kinds.iter().zip(used).map(|(kind, &used)| Kind {
            least: left(kind.least, used),
            most: left(kind.most, used),
            ..*kind
        });
        let held = self.held.iter().zip(met).map(|(held, &met)| Held {
            limit: match held.limit {
                Limit::Most(most) => Limit::Most(most.saturating_sub(met)),
                Limit::Least(least) => Limit::Least(least.saturating_sub(met)),
            },
            ..held.clone()
        });
        Self { kinds: kinds.collect(), held: held.collect() }
    }

    /// Least and most of each kind and of each count of sticks that hold pieces: the order of a leaf's charges.
    pub(super) fn ranges(&self) -> (impl Iterator<Item = (u32, u32)> + '_, impl Iterator<Item = (u32, u32)> + '_) {
        (self.kinds.iter().skip(1).map(|kind| (kind.least, kind.most)), self.held.iter().map(Held::range))
    }
}

/// Index of the stand-in kind.
pub(super) const STAND_IN: usize = 0;

/// The instance's own lengths and stick kinds behind the problem's indices.
#[derive(Clone, Debug)]
pub(super) struct Origin {
    /// Piece length by size index.
    pub(super) lengths: Vec<i64>,
    /// (length, price, available) by kind index less one.
    pub(super) sticks: Vec<(i64, i64, Option<u32>)>,
    /// Pieces in all.
    pub(super) pieces: u64,
    /// Sizes are (length + kerf) / unit.
    pub(super) unit: i64,
}

/// Equal sticks as one kind, longest last: length, price, and how many there are. More than one a piece never matters.
pub(super) fn merged_sticks(instance: &Instance) -> Vec<(i64, i64, Option<u32>)> {
    let mut merged: BTreeMap<(i64, i64), Option<u32>> = BTreeMap::new();
    for stick in &instance.sticks {
        let held = merged.entry((stick.length, stick.price)).or_insert(Some(0));
        *held = match (*held, stick.available) {
            (Some(some), Some(more)) => Some(some.saturating_add(more)),
            _ => None,
        };
    }
    let pieces = u32::try_from(instance.piece_count()).unwrap_or(u32::MAX);
    merged
        .into_iter()
        .map(|((length, price), available)| (length, price, available.map(|some| some.min(pieces))))
        .collect()
}

/// The problem of least weight for an instance, and what its indices mean.
///
/// The instance has been checked; weights that do not fit have been refused there.
pub(super) fn from_instance(instance: &Instance) -> (Problem, Origin) {
    let mut merged: BTreeMap<i64, u32> = BTreeMap::new();
    for piece in instance.pieces.iter().filter(|piece| piece.count > 0) {
        *merged.entry(piece.length).or_insert(0) += piece.count;
    }
    let lengths: Vec<i64> = merged.keys().rev().copied().collect();
    let need: Vec<u32> = merged.values().rev().copied().collect();
    let pieces: u64 = need.iter().map(|&count| u64::from(count)).sum();
    let unit = lengths.iter().fold(0, |unit, length| num_integer::gcd(unit, length + instance.kerf)).max(1);
    let sticks = merged_sticks(instance);
    let mut kinds: Vec<Kind> = sticks
        .iter()
        .map(|&(length, price, available)| Kind {
            capacity: ((length + instance.kerf) / unit) as f64,
            weight: weight_of(price, pieces).unwrap_or(i64::MAX),
            least: 0,
            most: available.unwrap_or(u32::MAX),
        })
        .collect();
    let dearest = kinds.iter().map(|kind| kind.weight).max().unwrap_or(1);
    let longest = kinds.iter().map(|kind| kind.capacity).fold(0.0, f64::max);
    kinds.insert(STAND_IN, Kind { capacity: longest, weight: dearest.saturating_mul(16), least: 0, most: u32::MAX });
    let sizes = lengths.iter().map(|length| ((length + instance.kerf) / unit) as f64).collect();
    (Problem { sizes, need, kinds }, Origin { lengths, sticks, pieces, unit })
}
