//! A second look at a plan and its proof, slow and plain, with nothing taken from the search.
//!
//! The question it answers: is this plan what was asked for, and does the certificate show that nothing is cheaper?
//! Every number is a whole one. The cases of the proof are gone through in `cases`.

use std::collections::BTreeMap;

use thiserror::Error;

use super::certificate::{Certificate, Claim};
use super::instance::{Instance, Piece, Stick};
use super::plan::{Plan, Reason, Status};
use cases::{Kind, Question, check_cases};

mod cases;

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
    /// A leftover proof is missing for a stick kind.
    #[error("no proof that stick kind {0} can leave no more")]
    LeftoverMissing(usize),
    /// The check itself takes more room or steps than it allows itself.
    #[error("case {0} is too large to check")]
    TooLarge(usize),
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
