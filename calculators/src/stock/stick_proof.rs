//! The proof of a stick plan as tables: what each length counts as worth, or, where the proof goes by cases, what each
//! case shows.

use std::collections::BTreeMap;

use super::certificate::{Branch, Certificate, Leaf};
use crate::catalogue::{Output, Words};
use crate::quantity::{Length, Money};

/// Cases shown of a proof that has more: those that come nearest to a cheaper plan.
pub(super) const CASES_SHOWN: usize = 24;

/// What one length counts for in the proof.
#[derive(Output)]
pub(super) struct Worth {
    /// The length.
    #[field("Piece")]
    piece: Length,
    /// How many are needed.
    #[field("Needed")]
    count: u32,
    /// Its share of a stick's weight, in thousandths of the cheapest stick's.
    #[field("Worth")]
    worth: f64,
}

/// One case of the proof.
#[derive(Output)]
pub(super) struct CaseRow {
    /// The plans it is about.
    #[field("Plans with")]
    plans: Words,
    /// What the pieces are worth there, or the sticks that such a plan has at least. Sticks add up to no price from here
    /// to below the plan's.
    #[field("Cost at least")]
    at_least: Money,
}

/// The values of a proof without cases; those of a proof by cases stand in the certificate.
pub(super) fn worth(proof: &Certificate) -> Vec<Worth> {
    let [Branch::Leaf(leaf)] = proof.cases.as_slice() else { return Vec::new() };
    let cheapest = proof.sticks.iter().map(|stick| stick.price * pieces_and_one(proof) + 1).min().unwrap_or(1).max(1);
    let share = |value: i64| 1_000.0 * value as f64 / leaf.scale.max(1) as f64 / cheapest as f64;
    let rounded = |value: f64| libm::round(value * 10.0) / 10.0;
    let rows = proof.pieces.iter().zip(&leaf.values);
    rows.map(|(piece, value)| Worth {
        piece: Length::from_nm(piece.length),
        count: piece.count,
        worth: rounded(share(*value)),
    })
    .collect()
}

fn pieces_and_one(proof: &Certificate) -> i64 {
    proof.pieces.iter().map(|piece| i64::from(piece.count)).sum::<i64>() + 1
}

/// How many cases a proof has, and the rows of those that come nearest to a cheaper plan; none where it has but one.
pub(super) fn cases(proof: &Certificate) -> (usize, Vec<CaseRow>) {
    let mut leaves = Vec::new();
    let mut to_do = vec![(0, Ranges::default())];
    while let Some((at, ranges)) = to_do.pop() {
        match proof.cases.get(at) {
            Some(Branch::Split { stick, holds, at_most, fewer, more }) => {
                to_do.push((*more, ranges.with(*stick, holds, Side::Least(*at_most + 1))));
                to_do.push((*fewer, ranges.with(*stick, holds, Side::Most(*at_most))));
            }
            Some(Branch::Leaf(leaf)) => leaves.push((ranges.price(proof, leaf), ranges)),
            Some(Branch::Open) | None => {}
        }
    }
    if leaves.len() < 2 {
        return (leaves.len(), Vec::new());
    }
    leaves.sort_by_key(|(price, _)| *price);
    let rows = leaves.iter().take(CASES_SHOWN);
    let rows = rows.map(|(price, ranges)| CaseRow { plans: ranges.words(proof), at_least: Money::from_minor(*price) });
    (leaves.len(), rows.collect())
}

#[derive(Clone, Copy)]
enum Side {
    Most(u32),
    Least(u32),
}

/// Least and most numbers of sticks, as the splits above a case leave them.
#[derive(Clone, Default)]
struct Ranges {
    /// Of each kind that was split on.
    kinds: BTreeMap<usize, (u32, u32)>,
    /// Of sticks of a kind that hold given pieces, the first split first.
    held: Vec<Held>,
}

/// How many sticks of a kind hold given pieces.
#[derive(Clone)]
struct Held {
    stick: usize,
    holds: Vec<(usize, u32)>,
    range: (u32, u32),
}

impl Ranges {
    fn with(&self, stick: usize, holds: &[(usize, u32)], side: Side) -> Self {
        let mut ranges = self.clone();
        let mut fresh = (0, u32::MAX);
        let range = if holds.is_empty() { ranges.kinds.entry(stick).or_insert(fresh) } else { &mut fresh };
        match side {
            Side::Most(most) => range.1 = range.1.min(most),
            Side::Least(least) => range.0 = range.0.max(least),
        }
        if !holds.is_empty() {
            ranges.held.push(Held { stick, holds: holds.to_vec(), range: fresh });
        }
        ranges
    }

    /// What the leaf and the least numbers of sticks show of the price, in the least unit of money.
    fn price(&self, proof: &Certificate, leaf: &Leaf) -> i64 {
        let need: Vec<u32> = proof.pieces.iter().map(|piece| piece.count).collect();
        let kinds = proof.sticks.iter().enumerate().map(|(stick, offer)| {
            let (least, most) = self.kinds.get(&stick).copied().unwrap_or((0, u32::MAX));
            (least, most.min(offer.available.unwrap_or(u32::MAX)))
        });
        let weight = leaf.bound(&need, kinds, self.held.iter().map(|held| held.range));
        // A weight is price × (pieces + 1) and one for each stick, of which there are no more than pieces.
        let unit = pieces_and_one(proof);
        let shown = num_integer::div_ceil(weight.saturating_sub(unit - 1), unit);
        let used = self.kinds.iter().filter_map(|(stick, (least, _))| Some((proof.sticks.get(*stick)?.price, least)));
        shown.max(used.map(|(price, &least)| price.saturating_mul(i64::from(least))).sum())
    }

    fn words(&self, proof: &Certificate) -> Words {
        let all = self.kinds.iter().map(|(stick, range)| (stick, &[][..], range));
        let some = self.held.iter().map(|held| (&held.stick, held.holds.as_slice(), &held.range));
        let mut said = String::new();
        let mut lengths = Vec::new();
        for (stick, holds, (least, most)) in all.chain(some) {
            if !said.is_empty() {
                said.push_str("; ");
            }
            said.push_str(&match (least, most) {
                (0, 0) => "none".to_owned(),
                (0, most) => format!("{most} at most"),
                (least, &u32::MAX) => format!("{least} or more"),
                (least, most) if least == most => format!("{most}"),
                (least, most) => format!("{least} to {most}"),
            });
            said.push_str(" of {}");
            lengths.extend(proof.sticks.get(*stick).map(|stick| Length::from_nm(stick.length)));
            for (at, (piece, count)) in holds.iter().enumerate() {
                said.push_str(if at == 0 { " that give " } else { " and " });
                said.push_str(&format!("{count} or more × {{}}"));
                lengths.extend(proof.pieces.get(*piece).map(|piece| Length::from_nm(piece.length)));
            }
        }
        lengths.into_iter().fold(Words::new(said), Words::with)
    }
}
