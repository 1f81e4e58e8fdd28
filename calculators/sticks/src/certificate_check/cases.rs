//! The cases of a proof: each split covers what is above it, and each leaf reaches the total that is claimed.
//!
//! The most that a stick can be worth is found by a table of all sums of sizes (a longer sum that is worth no more is
//! left out), without bounds or ordering by worth.

use std::collections::BTreeMap;

use super::Doubt;
use crate::certificate::{Branch, Leaf};

/// One stick kind in one case.
#[derive(Clone, Copy, Debug)]
pub(super) struct Kind {
    pub(super) capacity: i64,
    pub(super) weight: i128,
    pub(super) least: u32,
    pub(super) most: Option<u32>,
}

/// The whole question: sizes (length and kerf) and how many of each, and the stick kinds.
pub(super) struct Question {
    pub(super) sizes: Vec<i64>,
    pub(super) need: Vec<u32>,
    pub(super) kinds: Vec<Kind>,
}

/// A split on pieces, as one case below it sees it: of the sticks of one kind, how many hold these pieces.
#[derive(Clone, Debug)]
struct Held {
    stick: usize,
    holds: Vec<(usize, u32)>,
    least: u32,
    most: Option<u32>,
}

/// Every plan of the question totals at least `claimed`.
pub(super) fn check_cases(question: &Question, cases: &[Branch], claimed: i128) -> Result<(), Doubt> {
    let mut to_do = vec![(0, question.kinds.clone(), Vec::<Held>::new())];
    while let Some((at, kinds, held)) = to_do.pop() {
        match cases.get(at) {
            Some(Branch::Split { stick, holds, at_most, fewer, more }) => {
                let (stick, at_most) = (*stick, *at_most);
                let known = holds.iter().all(|&(piece, least)| piece < question.sizes.len() && least > 0);
                if stick >= kinds.len() || !known || *fewer <= at || *more <= at {
                    return Err(Doubt::Case(at));
                }
                for (next, least, most) in [(*fewer, 0, Some(at_most)), (*more, at_most.saturating_add(1), None)] {
                    let (mut kinds, mut held) = (kinds.clone(), held.clone());
                    if holds.is_empty() {
                        let kind = &mut kinds[stick];
                        kind.least = kind.least.max(least);
                        kind.most = kind.most.into_iter().chain(most).min();
                    } else {
                        held.push(Held { stick, holds: holds.clone(), least, most });
                    }
                    // A case in which no number of sticks is left needs no proof.
                    if kinds.iter().all(|kind| kind.most.is_none_or(|most| kind.least <= most)) {
                        to_do.push((next, kinds, held));
                    }
                }
            }
            Some(Branch::Leaf(leaf)) => check_leaf(question, &kinds, &held, leaf, at, claimed)?,
            Some(Branch::Open) | None => return Err(Doubt::Case(at)),
        }
    }
    Ok(())
}

fn check_leaf(
    question: &Question,
    kinds: &[Kind],
    held: &[Held],
    leaf: &Leaf,
    at: usize,
    claimed: i128,
) -> Result<(), Doubt> {
    let well_formed = leaf.scale > 0
        && leaf.values.len() == question.sizes.len()
        && leaf.charges.len() == kinds.len()
        && leaf.held.len() == held.len()
        && leaf.values.iter().all(|&value| value >= 0);
    if !well_formed {
        return Err(Doubt::Case(at));
    }
    let scale = i128::from(leaf.scale);
    let usable = |kind: &Kind| kind.most != Some(0);
    let longest = kinds.iter().filter(|kind| usable(kind)).map(|kind| kind.capacity).max().unwrap_or(0);
    let all: Vec<usize> = (0..question.sizes.len()).collect();
    let table = worth_by_length(question, &leaf.values, &all, longest).ok_or(Doubt::TooLarge(at))?;
    let mut bound: i128 =
        leaf.values.iter().zip(&question.need).map(|(&value, &need)| i128::from(value) * i128::from(need)).sum();
    let mut charged = |charge: i64, least: u32, most: Option<u32>| -> Result<(), Doubt> {
        bound -= match charge {
            1.. => i128::from(charge) * i128::from(most.ok_or(Doubt::Case(at))?),
            _ => i128::from(charge) * i128::from(least),
        };
        Ok(())
    };
    for (stick, (kind, &charge)) in kinds.iter().zip(&leaf.charges).enumerate() {
        if !usable(kind) {
            continue;
        }
        charged(charge, kind.least, kind.most)?;
        let threshold = kind.weight * scale + i128::from(charge);
        let counted: Vec<(&Held, i64)> =
            held.iter().zip(leaf.held.iter().copied()).filter(|(held, _)| held.stick == stick).collect();
        let worth = if counted.is_empty() {
            most_worth(&table, kind.capacity)
        } else {
            worth_when_counted(question, &leaf.values, &counted, kind.capacity).ok_or(Doubt::TooLarge(at))?
        };
        if worth > threshold {
            return Err(Doubt::Worth { case: at, stick, worth, threshold });
        }
    }
    for (held, &charge) in held.iter().zip(&leaf.held) {
        charged(charge, held.least, held.most)?;
    }
    let bound = bound.div_euclid(scale) + i128::from(bound.rem_euclid(scale) > 0);
    if bound < claimed
        && let Some(total) = total_between(kinds, bound, claimed).ok_or(Doubt::TooLarge(at))?
    {
        return Err(Doubt::Bound { case: at, bound: total, claimed });
    }
    Ok(())
}

/// The most that a set of this total size is worth, from the table.
fn most_worth(table: &[(i64, i128)], capacity: i64) -> i128 {
    let fitting = table.partition_point(|&(length, _)| length <= capacity);
    table[..fitting].last().map_or(0, |&(_, worth)| worth)
}

/// The most that a set is worth, less the charges of the counts it falls under. The pieces that counts ask for are taken
/// in every number; the others fill what is left.
fn worth_when_counted(question: &Question, values: &[i64], counted: &[(&Held, i64)], capacity: i64) -> Option<i128> {
    let asked = |piece: usize| counted.iter().any(|(held, _)| held.holds.iter().any(|&(of, _)| of == piece));
    let (named, others): (Vec<usize>, Vec<usize>) = (0..question.sizes.len()).partition(|&piece| asked(piece));
    let table = worth_by_length(question, values, &others, capacity)?;
    let mut trial = Trial { question, values, counted, table: &table, taken: Vec::new(), steps: 1_000_000 };
    trial.most(&named, capacity, 0)
}

/// Sets of the named pieces, tried one after the other.
struct Trial<'a> {
    question: &'a Question,
    values: &'a [i64],
    counted: &'a [(&'a Held, i64)],
    table: &'a [(i64, i128)],
    taken: Vec<(usize, u32)>,
    steps: u32,
}

impl Trial<'_> {
    fn most(&mut self, named: &[usize], room: i64, worth: i128) -> Option<i128> {
        self.steps = self.steps.checked_sub(1)?;
        let Some((&piece, rest)) = named.split_first() else {
            let has =
                |&(piece, least): &(usize, u32)| self.taken.iter().any(|&(of, count)| of == piece && count >= least);
            let charges: i128 = self
                .counted
                .iter()
                .filter(|(held, _)| held.holds.iter().all(has))
                .map(|&(_, charge)| i128::from(charge))
                .sum();
            return Some(worth - charges + most_worth(self.table, room));
        };
        let (size, value) = (self.question.sizes[piece], i128::from(self.values[piece]));
        let mut most = i128::MIN;
        for count in 0..=self.question.need[piece] {
            let room = room - size * i64::from(count);
            if room < 0 {
                break;
            }
            self.taken.push((piece, count));
            most = most.max(self.most(rest, room, worth + value * i128::from(count))?);
            self.taken.pop();
        }
        Some(most)
    }
}

/// The most that some of the pieces are worth by total size, both rising.
fn worth_by_length(question: &Question, values: &[i64], pieces: &[usize], longest: i64) -> Option<Vec<(i64, i128)>> {
    let mut table: Vec<(i64, i128)> = vec![(0, 0)];
    for &piece in pieces {
        let (size, need, value) = (question.sizes[piece], question.need[piece], values[piece]);
        let mut last = table.clone();
        for _ in 0..need {
            let more: Vec<(i64, i128)> = last
                .iter()
                .map(|&(length, worth)| (length + size, worth + i128::from(value)))
                .filter(|&(length, _)| length <= longest)
                .collect();
            if more.is_empty() {
                break;
            }
            table.extend_from_slice(&more);
            table.sort_unstable_by(|a, b| a.0.cmp(&b.0).then(b.1.cmp(&a.1)));
            let mut most = -1;
            table.retain(|&(_, worth)| {
                let keeps = worth > most;
                most = most.max(worth);
                keeps
            });
            last = more;
            if table.len() > 2_000_000 {
                return None;
            }
        }
    }
    Some(table)
}

/// A total from `bound` up to below `claimed` that some numbers of sticks within the ranges have. None outside when
/// there are too many to go through.
fn total_between(kinds: &[Kind], bound: i128, claimed: i128) -> Option<Option<i128>> {
    // Sticks of one weight count together; how many there may be is a range again.
    let mut groups: BTreeMap<i128, (u64, Option<u64>)> = BTreeMap::new();
    for kind in kinds {
        let (least, most) = groups.entry(kind.weight).or_insert((0, Some(0)));
        *least += u64::from(kind.least);
        *most = most.zip(kind.most).map(|(sum, more)| sum + u64::from(more));
    }
    let groups: Vec<(i128, u64, Option<u64>)> = groups
        .into_iter()
        .rev()
        .filter(|&(weight, ..)| weight > 0)
        .map(|(weight, (least, most))| (weight, least, most))
        .collect();
    let mut steps = 50_000_000_u64;
    next_total(&groups, 0, bound, claimed, &mut steps)
}

fn next_total(
    groups: &[(i128, u64, Option<u64>)],
    total: i128,
    bound: i128,
    claimed: i128,
    steps: &mut u64,
) -> Option<Option<i128>> {
    *steps = steps.checked_sub(1)?;
    if total >= claimed {
        return Some(None);
    }
    let Some((&(weight, least, most), rest)) = groups.split_first() else {
        return Some((total >= bound).then_some(total));
    };
    let room = (claimed - 1 - total) / weight;
    let most = most.map_or(room, |most| room.min(i128::from(most)));
    // The last group must bring what is missing to the bound.
    let missing = if rest.is_empty() { (bound - total).max(0) } else { 0 };
    let least = i128::from(least).max(missing.div_euclid(weight) + i128::from(missing.rem_euclid(weight) > 0));
    let mut count = least;
    while count <= most {
        if let Some(found) = next_total(rest, total + weight * count, bound, claimed, steps)? {
            return Some(Some(found));
        }
        count += 1;
    }
    Some(None)
}
