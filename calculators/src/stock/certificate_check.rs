//! A second look at a plan and its proof, slow and plain, with nothing taken from the search.
//!
//! The question it answers: is this plan what was asked for, and does the certificate show that nothing is cheaper?
//! Every number is a whole one. The most that a stick can be worth is found by a table of all sums of sizes (a longer
//! sum that is worth no more is left out), without bounds or ordering by worth.

use std::collections::BTreeMap;

use thiserror::Error;

use super::certificate::{Branch, Certificate, Claim, Leaf};
use super::instance::{Instance, Piece, Stick};
use super::plan::{Plan, Reason, Status};

/// What is wrong with a plan or its proof.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum Doubt {
    /// The plan does not cut what was asked for.
    #[error("{cut} pieces of length {length} are cut where {asked} are asked for")]
    Pieces {
        /// The length.
        length: i64,
        /// How many the plan cuts.
        cut: u64,
        /// How many are wanted.
        asked: u64,
    },
    /// Pieces on one stick are longer than the stick.
    #[error("pieces and kerfs of {needed} do not fit a stick of {length}")]
    DoesNotFit {
        /// Lengths and kerfs between them.
        needed: i64,
        /// The stick.
        length: i64,
    },
    /// More sticks of one kind are used than there are.
    #[error("{used} sticks of length {length} are used where {available} are on hand")]
    TooMany {
        /// The stick.
        length: i64,
        /// How many the plan uses.
        used: u64,
        /// How many there are.
        available: u64,
    },
    /// A stick that was not offered.
    #[error("a stick of length {0} at this price was not offered")]
    UnknownStick(i64),
    /// A sum in the plan is wrong.
    #[error("the plan states a {what} of {stated}; it is {counted}")]
    Sum {
        /// Which sum.
        what: &'static str,
        /// As stated.
        stated: i64,
        /// As counted.
        counted: i64,
    },
    /// The certificate is about something else.
    #[error("the certificate is about other {0}")]
    OtherQuestion(&'static str),
    /// A case of the proof is missing or not well formed.
    #[error("case {0} of the proof is not well formed")]
    Case(usize),
    /// A set of pieces is worth more than its stick.
    #[error("in case {case} a set of pieces on stick kind {stick} is worth {worth}, above {threshold}")]
    Worth {
        /// The case.
        case: usize,
        /// The stick kind.
        stick: usize,
        /// The most that a set is worth.
        worth: i128,
        /// What it may be worth.
        threshold: i128,
    },
    /// A bound does not reach what is claimed.
    #[error("case {case} shows a total of at least {bound}; {claimed} is claimed")]
    Bound {
        /// The case.
        case: usize,
        /// Bound shown, raised to the next total that can be had.
        bound: i128,
        /// Total claimed.
        claimed: i128,
    },
    /// A case said to have been searched has a way of cutting after all.
    #[error("case {0} is said to have no way of cutting; there is one")]
    Searched(usize),
    /// A leftover proof is missing for a stick kind.
    #[error("no proof that stick kind {0} can leave no more")]
    LeftoverMissing(usize),
    /// The check itself takes more room or steps than it allows itself.
    #[error("case {0} is too large to check")]
    TooLarge(usize),
}

/// One stick kind in one case.
#[derive(Clone, Copy, Debug)]
struct Kind {
    capacity: i64,
    weight: i128,
    least: u32,
    most: Option<u32>,
}

struct Question {
    sizes: Vec<i64>,
    need: Vec<u32>,
    kinds: Vec<Kind>,
}

/// Checks a plan and its certificate against the instance.
///
/// # Errors
/// The first `Doubt` met.
pub fn check(instance: &Instance, plan: &Plan, certificate: &Certificate) -> Result<(), Doubt> {
    let pieces = merged_pieces(instance);
    let mut sticks = merged_sticks(instance);
    if certificate.pieces != pieces || certificate.kerf != instance.kerf {
        return Err(Doubt::OtherQuestion("pieces"));
    }
    let count: i128 = pieces.iter().map(|piece| i128::from(piece.count)).sum();
    let weight = |stick: &Stick| i128::from(stick.price) * (count + 1) + 1;
    let mut question = Question {
        sizes: pieces.iter().map(|piece| piece.length + instance.kerf).collect(),
        need: pieces.iter().map(|piece| piece.count).collect(),
        kinds: Vec::new(),
    };
    match (certificate.claim, plan.status) {
        (Claim::Short(short), Status::Impossible(Reason::TooFewSticks { short: stated, length })) => {
            let longest = sticks.iter().filter(|stick| stick.available != Some(0)).map(|stick| stick.length).max();
            sticks.push(Stick { length: longest.unwrap_or(0), price: 0, available: None });
            if certificate.sticks != sticks || longest != Some(length) || short != stated || short == 0 {
                return Err(Doubt::OtherQuestion("sticks"));
            }
            question.kinds = sticks.iter().map(|stick| kind(stick, instance.kerf, 0)).collect();
            if let Some(more) = question.kinds.last_mut() {
                more.weight = 1;
            }
            check_cases(&question, &certificate.cases, i128::from(short))
        }
        (Claim::LeastWeight(least), Status::ProvedLeast) => {
            check_cuts(instance, plan)?;
            if certificate.sticks != sticks {
                return Err(Doubt::OtherQuestion("sticks"));
            }
            let total = i128::from(plan.cost) * (count + 1) + i128::from(plan.stick_count);
            if total != i128::from(least) {
                return Err(Doubt::OtherQuestion("total"));
            }
            question.kinds = sticks.iter().map(|stick| kind(stick, instance.kerf, weight(stick))).collect();
            check_cases(&question, &certificate.cases, total)?;
            if plan.leftover_proved {
                check_leftovers(&question, &sticks, certificate, plan.longest_leftover, total)?;
            }
            Ok(())
        }
        _ => Err(Doubt::OtherQuestion("claim")),
    }
}

fn kind(stick: &Stick, kerf: i64, weight: i128) -> Kind {
    Kind { capacity: stick.length + kerf, weight, least: 0, most: stick.available }
}

fn merged_pieces(instance: &Instance) -> Vec<Piece> {
    let mut counts = BTreeMap::new();
    for piece in &instance.pieces {
        if piece.count > 0 {
            *counts.entry(piece.length).or_insert(0) += piece.count;
        }
    }
    counts.into_iter().rev().map(|(length, count)| Piece { length, count }).collect()
}

fn merged_sticks(instance: &Instance) -> Vec<Stick> {
    let mut merged: Vec<Stick> = Vec::new();
    for stick in &instance.sticks {
        match merged.iter_mut().find(|held| held.length == stick.length && held.price == stick.price) {
            Some(held) => {
                held.available = held.available.zip(stick.available).map(|(held, more)| held.saturating_add(more));
            }
            None => merged.push(*stick),
        }
    }
    // A stick in use holds a piece: more sticks than pieces never matter.
    let pieces: u64 = instance.pieces.iter().map(|piece| u64::from(piece.count)).sum();
    for stick in &mut merged {
        stick.available = stick.available.map(|some| some.min(u32::try_from(pieces).unwrap_or(u32::MAX)));
    }
    merged.sort_by_key(|stick| (stick.length, stick.price));
    merged
}

/// The plan cuts what was asked for from sticks that there are, and its sums are right.
fn check_cuts(instance: &Instance, plan: &Plan) -> Result<(), Doubt> {
    let mut cut: BTreeMap<i64, u64> = BTreeMap::new();
    let (mut cost, mut count, mut longest) = (0_i64, 0_i64, 0_i64);
    for stick in &plan.sticks {
        let pieces: i64 = stick.pieces.iter().map(|piece| i64::from(piece.count)).sum();
        let lengths: i64 = stick.pieces.iter().map(|piece| piece.length * i64::from(piece.count)).sum();
        let needed = lengths + instance.kerf * (pieces - 1);
        if pieces < 1 || needed > stick.length {
            return Err(Doubt::DoesNotFit { needed, length: stick.length });
        }
        let leftover = (stick.length - needed - instance.kerf).max(0);
        if leftover != stick.leftover {
            return Err(Doubt::Sum { what: "leftover", stated: stick.leftover, counted: leftover });
        }
        for piece in &stick.pieces {
            *cut.entry(piece.length).or_insert(0) += u64::from(piece.count) * u64::from(stick.times);
        }
        cost += stick.price * i64::from(stick.times);
        count += i64::from(stick.times);
        longest = longest.max(leftover);
    }
    for piece in merged_pieces(instance) {
        let cut = cut.remove(&piece.length).unwrap_or(0);
        if cut != u64::from(piece.count) {
            return Err(Doubt::Pieces { length: piece.length, cut, asked: u64::from(piece.count) });
        }
    }
    if let Some((length, cut)) = cut.into_iter().next() {
        return Err(Doubt::Pieces { length, cut, asked: 0 });
    }
    let offered = merged_sticks(instance);
    for stick in &plan.sticks {
        let alike = |length, price| length == stick.length && price == stick.price;
        let Some(offer) = offered.iter().find(|offer| alike(offer.length, offer.price)) else {
            return Err(Doubt::UnknownStick(stick.length));
        };
        let used = plan
            .sticks
            .iter()
            .filter(|other| alike(other.length, other.price))
            .map(|other| u64::from(other.times))
            .sum();
        match offer.available {
            Some(available) if used > u64::from(available) => {
                return Err(Doubt::TooMany { length: stick.length, used, available: u64::from(available) });
            }
            _ => {}
        }
    }
    for (what, stated, counted) in [
        ("price", plan.cost, cost),
        ("number of sticks", i64::from(plan.stick_count), count),
        ("longest leftover", plan.longest_leftover, longest),
    ] {
        if stated != counted {
            return Err(Doubt::Sum { what, stated, counted });
        }
    }
    Ok(())
}

fn check_leftovers(
    question: &Question,
    sticks: &[Stick],
    certificate: &Certificate,
    longest: i64,
    total: i128,
) -> Result<(), Doubt> {
    let Some(&shortest) = question.sizes.iter().min() else { return Ok(()) };
    for (index, stick) in sticks.iter().enumerate() {
        // More than the longest leftover remains when the sizes sum to at most this.
        let fill = stick.length - longest - 1;
        if fill < shortest || stick.available == Some(0) {
            continue;
        }
        let proof = certificate.leftovers.iter().find(|proof| proof.stick == index && proof.fill >= fill);
        let proof = proof.ok_or(Doubt::LeftoverMissing(index))?;
        let mut kinds = question.kinds.clone();
        kinds[index].most = kinds[index].most.map(|most| most - 1);
        kinds.push(Kind { capacity: proof.fill, weight: kinds[index].weight, least: 1, most: Some(1) });
        let again = Question { sizes: question.sizes.clone(), need: question.need.clone(), kinds };
        check_cases(&again, &proof.cases, total + 1)?;
    }
    Ok(())
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
fn check_cases(question: &Question, cases: &[Branch], claimed: i128) -> Result<(), Doubt> {
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
            Some(Branch::Searched) => check_searched(question, &kinds, at, claimed)?,
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

/// All ranges are settled, and no way of cutting the pieces from just these sticks exists.
fn check_searched(question: &Question, kinds: &[Kind], at: usize, claimed: i128) -> Result<(), Doubt> {
    let Some(&shortest) = question.sizes.iter().min() else { return Err(Doubt::Case(at)) };
    let mut sticks: Vec<i64> = Vec::new();
    for kind in kinds.iter().filter(|kind| kind.capacity >= shortest) {
        if kind.most != Some(kind.least) {
            return Err(Doubt::Case(at));
        }
        sticks.extend(std::iter::repeat_n(kind.capacity, kind.least as usize));
    }
    let total: i128 =
        kinds.iter().filter(|kind| kind.capacity >= shortest).map(|kind| kind.weight * i128::from(kind.least)).sum();
    if total >= claimed {
        return Ok(());
    }
    sticks.sort_unstable();
    let mut pieces: Vec<i64> = Vec::new();
    for (&size, &need) in question.sizes.iter().zip(&question.need) {
        pieces.extend(std::iter::repeat_n(size, need as usize));
    }
    pieces.sort_unstable_by(|a, b| b.cmp(a));
    let mut steps = 200_000_000_u64;
    match placeable(&pieces, &mut sticks, &mut steps, &mut std::collections::BTreeSet::new()) {
        Some(false) => Ok(()),
        Some(true) => Err(Doubt::Searched(at)),
        None => Err(Doubt::TooLarge(at)),
    }
}

/// Whether all pieces can be placed in the room left on the sticks: the first goes everywhere it fits, in turn.
fn placeable(
    pieces: &[i64],
    room: &mut Vec<i64>,
    steps: &mut u64,
    failed: &mut std::collections::BTreeSet<(usize, Vec<i64>)>,
) -> Option<bool> {
    *steps = steps.checked_sub(1)?;
    let Some((&piece, rest)) = pieces.split_first() else { return Some(true) };
    // Room too short for the shortest piece is lost; what is left must hold all of them.
    let shortest = *pieces.last().unwrap_or(&0);
    let useful: i128 = room.iter().filter(|&&room| room >= shortest).map(|&room| i128::from(room)).sum();
    if useful < pieces.iter().map(|&piece| i128::from(piece)).sum() {
        return Some(false);
    }
    let mut state: Vec<i64> = room.iter().copied().filter(|&room| room >= shortest).collect();
    state.sort_unstable();
    let key = (pieces.len(), state);
    if failed.contains(&key) {
        return Some(false);
    }
    for at in 0..room.len() {
        if room[at] < piece || room[..at].contains(&room[at]) {
            continue;
        }
        room[at] -= piece;
        let done = placeable(rest, room, steps, failed);
        room[at] += piece;
        match done {
            Some(false) => {}
            other => return other,
        }
    }
    if failed.len() < 1_000_000 {
        failed.insert(key);
    }
    Some(false)
}
