//! From a blend to a plan.

use std::collections::VecDeque;

use super::best_patterns::Stopped;
use super::bounding::ceil_near;
use super::columns::Pattern;
use super::greedy::{self, Choice};
use super::master::Master;
use super::packing;
use super::problem::{Case, Kind, STAND_IN};
use super::repair::Repair;
use super::search::{Patience, Search};
use crate::certificate::Leaf;

/// Bytes for the steps that a dive may take back.
const DIVE_ROOM: usize = 40_000_000;
/// A part of a pattern that counts as nearly the whole of it.
const NEARLY: f64 = 0.6;
/// The most patterns tried at one step of a dive.
const WIDEST: usize = 4;

/// Where a dive stands.
#[derive(Clone)]
pub(super) struct Dive {
    pub(super) master: Master,
    pub(super) need: Vec<u32>,
    pub(super) used: Vec<u32>,
    /// How many sticks count so far for each of the case's counts of pieces held.
    pub(super) met: Vec<u32>,
    pub(super) choice: Choice,
    /// Patterns to try next, and how many of them have been.
    pub(super) turns: Vec<usize>,
    pub(super) next: usize,
}

impl Dive {
    /// Nothing fixed yet.
    pub(super) fn new(start: &Master, need: &[u32], case: &Case) -> Self {
        Self {
            master: start.clone(),
            need: need.to_vec(),
            used: vec![0; case.kinds.len()],
            met: vec![0; case.held.len()],
            choice: Choice::default(),
            turns: Vec::new(),
            next: 0,
        }
    }

    /// Takes sticks of one pattern into the choice.
    fn take(&mut self, kind: usize, weight: i64, pattern: Pattern, times: u32, case: &Case) {
        for &(size, count) in &pattern {
            self.need[usize::from(size)] -= u32::from(count) * times;
        }
        self.used[kind] += times;
        for (met, held) in self.met.iter_mut().zip(&case.held) {
            if held.counts(kind, &pattern) {
                *met += times;
            }
        }
        self.choice.push(kind, weight, pattern, times);
    }
}

impl Search {
    /// Dives from a blend, several ways while that may pay.
    pub(super) fn dive_from(
        &mut self,
        master: &Master,
        case: &Case,
        (bound, near): (i64, &Leaf),
        effort: &[(usize, u32)],
        patience: &mut Patience,
    ) {
        for &(turn, retries) in effort {
            if self.below <= bound.max(self.enough) || !patience.goes_on() {
                return;
            }
            self.dive(master, case, (bound, near), (turn, retries), patience);
        }
    }

    /// From a blend to a plan: whole parts are fixed, then one pattern at a time; what is left is completed at once at
    /// every step. Where the blend of the rest shows that no better plan can follow, the last pattern is taken back and
    /// the next fullest tried, `retries` times in all.
    pub(super) fn dive(
        &mut self,
        start: &Master,
        case: &Case,
        (bound, near): (i64, &Leaf),
        (turn, mut retries): (usize, u32),
        patience: &mut Patience,
    ) {
        let rows = self.problem.sizes.len() + case.kinds.len() + case.held.len();
        let deepest = (DIVE_ROOM / (rows * rows * 8)).clamp(1, 400);
        let mut at = Dive::new(start, &self.problem.need, case);
        let mut taken_back: VecDeque<Dive> = VecDeque::new();
        let mut step = 0;
        let mut fresh = true;
        loop {
            if fresh {
                if turn.is_multiple_of(2) || self.turns(&at).is_empty() {
                    self.fix_whole(&mut at, case);
                }
                at.turns = self.turns(&at);
                at.next = if turn > 0 && step == (turn - 1) / 3 { (turn - 1) % 3 + 1 } else { 0 };
                at.next = at.next.min(at.turns.len().saturating_sub(1));
                step += 1;
            }
            let mut fixed = 0;
            let mut before = at.clone();
            while fixed == 0 && before.next < before.turns.len() {
                let column = before.turns[before.next];
                let times = if turn.is_multiple_of(2) {
                    1
                } else {
                    at.master.blend().find(|&(held, _)| held == column).map_or(1, |(_, amount)| amount.ceil() as u32)
                };
                fixed = self.fix(column, times, true, &mut at, case);
                before.next += 1;
            }
            // Others that are nearly whole go along.
            if fresh && turn.is_multiple_of(2) {
                let nearly: Vec<usize> = at
                    .master
                    .blend()
                    .filter(|&(column, amount)| amount.fract() >= NEARLY && self.pool.kind(column) != STAND_IN)
                    .map(|(column, _)| column)
                    .collect();
                for column in nearly {
                    if !before.turns[..before.next].contains(&column) {
                        self.fix(column, 1, false, &mut at, case);
                    }
                }
            }
            if fixed == 0 && !at.need.iter().all(|&need| need == 0) && !fresh {
                // Nothing more to try here: further back.
                let Some(last) = taken_back.pop_back() else { return };
                at = last;
                continue;
            }
            if let Some(plan) = greedy::completed(&self.problem, &at.choice, &at.need, &at.used, self.below) {
                self.offer(plan);
            }
            self.pack_rest(&at, &case.kinds, 60 * self.problem.sizes.len() as u32);
            if self.below <= bound.max(self.enough) || !patience.goes_on() {
                return;
            }
            let done = at.need.iter().all(|&need| need == 0);
            let hopeless =
                done || fixed == 0 && at.turns.is_empty() || !self.goes_deeper(&mut at, case, near, patience);
            if patience.stopped {
                return;
            }
            if hopeless {
                if retries == 0 {
                    return;
                }
                retries -= 1;
                at = before;
                fresh = false;
                if at.next >= at.turns.len().min(WIDEST) {
                    loop {
                        let Some(last) = taken_back.pop_back() else { return };
                        if last.next < last.turns.len().min(WIDEST) {
                            at = last;
                            break;
                        }
                    }
                }
            } else {
                taken_back.push_back(before);
                if taken_back.len() > deepest {
                    taken_back.pop_front();
                }
                fresh = true;
            }
        }
    }

    /// Where the number of sticks of every kind is settled and few are left, tries every way to cut the rest from them.
    fn pack_rest(&mut self, at: &Dive, kinds: &[Kind], steps: u32) {
        let shortest = self.problem.sizes.last().copied().unwrap_or(0.0);
        let left: Vec<(usize, u32)> = (1..kinds.len())
            .filter(|&kind| kinds[kind].most > at.used[kind] && kinds[kind].capacity >= shortest)
            .map(|kind| (kind, kinds[kind].most - at.used[kind]))
            .collect();
        let settled = left.iter().all(|&(kind, _)| kinds[kind].least == kinds[kind].most);
        let weight = left
            .iter()
            .map(|&(kind, count)| kinds[kind].weight.saturating_mul(i64::from(count)))
            .fold(at.choice.weight, i64::saturating_add);
        if !settled || weight >= self.below {
            return;
        }
        let sticks: Vec<(f64, u32)> = left.iter().map(|&(kind, count)| (kinds[kind].capacity, count)).collect();
        if let Some(placed) = packing::packed(&self.problem.sizes, &at.need, &sticks, steps) {
            let mut choice = at.choice.clone();
            for (stick, pattern) in placed {
                let kind = left[stick].0;
                choice.push(kind, kinds[kind].weight, pattern, 1);
            }
            self.offer(choice);
        }
    }

    /// Fixes the whole parts of a blend. One that is whole throughout is a plan, though it may cut more than is needed:
    /// its patterns are clipped.
    pub(super) fn fix_whole(&mut self, at: &mut Dive, case: &Case) {
        let blend: Vec<(usize, f64)> =
            at.master.blend().filter(|&(column, _)| self.pool.kind(column) != STAND_IN).collect();
        let whole_throughout = blend.iter().all(|(_, amount)| (amount - amount.round()).abs() < 1e-5);
        for (column, amount) in blend {
            let mut whole = (amount + 1e-5).floor() as u32;
            while whole > 0 {
                let fixed = self.fix(column, whole, whole_throughout, at, case);
                if fixed == 0 {
                    break;
                }
                whole -= fixed;
            }
        }
    }

    /// The patterns that a blend holds in part, in the order in which a dive tries them.
    pub(super) fn turns(&self, at: &Dive) -> Vec<usize> {
        let filled = |column: usize| self.pool.worth(column, &self.problem.sizes);
        let mut parts: Vec<(f64, f64, usize)> = at
            .master
            .blend()
            .filter(|&(column, amount)| {
                let part = (amount + 1e-5).fract();
                part > 2e-5 && self.pool.kind(column) != STAND_IN && !self.pool.pattern(column).is_empty()
            })
            .map(|(column, amount)| (amount.fract(), filled(column), column))
            .collect();
        parts.sort_by(|a, b| b.0.total_cmp(&a.0).then(b.1.total_cmp(&a.1)).then(a.2.cmp(&b.2)));
        parts.into_iter().map(|(.., column)| column).collect()
    }

    /// Blends the rest of a dive anew. False when no better plan can come of it.
    pub(super) fn goes_deeper(&mut self, at: &mut Dive, case: &Case, near: &Leaf, patience: &mut Patience) -> bool {
        if at.choice.weight >= self.below {
            return false;
        }
        let rest = case.rest(&at.used, &at.met);
        at.master.set_needs(&at.need, &rest);
        if at.master.repair(&self.pool) == Repair::Stuck {
            return false;
        }
        match self.enrich(at, &rest, near, patience) {
            Ok(true) => {}
            Ok(false) | Err(Stopped) => return false,
        }
        let least = at.choice.weight.saturating_add(ceil_near(at.master.weight()));
        self.totals.raised(&self.problem.kinds, least, self.below) < self.below
    }

    /// Fixes a pattern, clipped to what is still needed; what the clipping frees is filled up again. Gives how many.
    pub(super) fn fix(&mut self, column: usize, times: u32, clip: bool, at: &mut Dive, case: &Case) -> u32 {
        let kind = self.pool.kind(column);
        let Kind { capacity, weight, most, .. } = self.problem.kinds[kind];
        let times = times.min(most.saturating_sub(at.used[kind]));
        let whole = self
            .pool
            .pattern(column)
            .iter()
            .map(|&(size, count)| at.need[usize::from(size)] / u32::from(count))
            .min()
            .unwrap_or(0)
            .min(times);
        if whole > 0 {
            at.take(kind, weight, self.pool.pattern(column).to_vec(), whole, case);
            return whole;
        }
        if !clip || times == 0 {
            return 0;
        }
        let mut pattern: Vec<(u16, u16)> = self
            .pool
            .pattern(column)
            .iter()
            .map(|&(size, count)| (size, u32::from(count).min(at.need[usize::from(size)]) as u16))
            .filter(|&(_, count)| count > 0)
            .collect();
        let length = self.problem.length_of(&pattern);
        let mut left = at.need.clone();
        for &(size, count) in &pattern {
            left[usize::from(size)] -= u32::from(count);
        }
        let (more, _) = greedy::filled(&self.problem, &left, capacity - length);
        for &(size, count) in &more {
            match pattern.iter_mut().find(|(at, _)| *at == size) {
                Some((_, held)) => *held += count,
                None => pattern.push((size, count)),
            }
        }
        if pattern.is_empty() {
            return 0;
        }
        pattern.sort_unstable();
        at.take(kind, weight, pattern, 1, case);
        1
    }

    /// New patterns for what is left to cut in a dive, until the blend cannot be bettered or it no longer matters. False
    /// when no plan below the limit can come of it.
    pub(super) fn enrich(
        &mut self,
        at: &mut Dive,
        rest: &Case,
        near: &Leaf,
        patience: &mut Patience,
    ) -> Result<bool, Stopped> {
        let Dive { master, need, choice, .. } = at;
        let fixed = choice.weight;
        // Towards one kind's values it pays to draw; with several the blend's own lead to better plans.
        let own = near.values.len() != need.len() || rest.kinds.len() > 2;
        let mut plain = own;
        let shortest = self
            .problem
            .sizes
            .iter()
            .zip(need.iter())
            .rev()
            .find(|&(_, &need)| need > 0)
            .map_or(0.0, |(&size, _)| size);
        for _ in 0..40 {
            if !patience.goes_on() {
                return Err(Stopped);
            }
            if !master.improve(&self.pool) {
                return Ok(true);
            }
            let least = fixed.saturating_add(ceil_near(master.weight()));
            if least <= self.bound {
                return Ok(true); // good enough: no blend can do better than the bound
            }
            let mut prices = self.prices(master, rest, shortest);
            if !plain {
                self.draw_towards(near, &mut prices, rest);
            }
            let mut found =
                self.knapsack.best(&self.problem.sizes, &mut prices, need, &rest.held, patience.keep_going)?;
            let leaf = self.leaf(&prices, rest);
            let total = self.bound_of(&leaf, need, rest);
            let total = self.totals.raised(&self.problem.kinds, fixed.saturating_add(total), self.below);
            if total >= self.below {
                return Ok(false);
            }
            if !plain {
                found.retain(|found| master.would_improve(found.kind, &found.pattern));
                plain = found.is_empty();
                if plain {
                    continue;
                }
            } else if found.is_empty() {
                return Ok(true);
            }
            plain = own;
            found.reverse();
            let mut per_kind = vec![0; rest.kinds.len()];
            for found in found {
                per_kind[found.kind] += 1;
                if per_kind[found.kind] <= 2 {
                    self.pool.add(found.kind, &found.pattern);
                }
            }
        }
        Ok(true)
    }
}
