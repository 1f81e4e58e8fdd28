//! The bound of one case: the best blend of patterns, and the whole numbers that prove it.

use super::best_patterns::{Asked, Prices, Stopped};
use super::columns::Pool;
use super::master::Master;
use super::problem::{Case, Kind, STAND_IN};
use super::search::{Patience, Search};
use crate::certificate::{Branch, Leaf};

/// How far values are drawn towards the best so far.
const DRAW: f64 = 0.6;

/// How a node's blend ended.
pub(super) struct Solved {
    pub(super) bound: i64,
    pub(super) leaf: Leaf,
    /// The blend is the best there is, up to rounding.
    pub(super) settled: bool,
}

impl Search {
    /// A first bound from length alone: every piece is worth its length at one rate, the rate of the dearest sticks
    /// that it takes to have length enough.
    pub(super) fn bound_by_length(&mut self) {
        let kinds = &self.problem.kinds;
        let needed: f64 =
            self.problem.sizes.iter().zip(&self.problem.need).map(|(size, &count)| size * f64::from(count)).sum();
        let rate = |kind: usize| kinds[kind].weight as f64 / kinds[kind].capacity;
        let mut order: Vec<usize> =
            (1..kinds.len()).filter(|&kind| kinds[kind].most > 0 && kinds[kind].capacity > 0.0).collect();
        order.sort_by(|&a, &b| rate(a).total_cmp(&rate(b)));
        let mut held = 0.0;
        let Some(&dearest) = order.iter().find(|&&kind| {
            held += if kinds[kind].most == u32::MAX {
                f64::INFINITY
            } else {
                f64::from(kinds[kind].most) * kinds[kind].capacity
            };
            held >= needed
        }) else {
            return;
        };
        let unit = (rate(dearest) * self.scale).floor();
        let values: Vec<f64> = self.problem.sizes.iter().map(|size| size * unit).collect();
        if values.iter().any(|&value| value > 4e15) {
            return;
        }
        let shortest = self.problem.sizes.last().copied().unwrap_or(0.0);
        let asked: Vec<Asked> = (1..kinds.len())
            .filter(|&kind| kinds[kind].most > 0 && kinds[kind].capacity >= shortest)
            .map(|kind| Asked {
                kind,
                capacity: kinds[kind].capacity,
                threshold: (kinds[kind].capacity * unit).ceil() + 1.0,
            })
            .collect();
        if asked.iter().any(|asked| asked.threshold > 4e15) {
            return;
        }
        let case = Case { kinds: kinds.clone(), held: Vec::new() };
        let leaf = self.leaf(&Prices { values, asked, held: Vec::new() }, &case);
        let bound = self.bound_of(&leaf, &self.problem.need, &case);
        self.bound = self.totals.raised(&case.kinds, bound, self.below);
        self.tree = vec![Branch::Leaf(leaf)];
    }

    /// The best blend for the whole need under these bounds, with a bound on the total.
    pub(super) fn solve(
        &mut self,
        master: &mut Master,
        case: &Case,
        near: &Leaf,
        patience: &mut Patience,
    ) -> Result<Solved, Stopped> {
        let shortest = self.problem.sizes.last().copied().unwrap_or(0.0);
        let mut best = Solved { bound: i64::MIN, leaf: Leaf::default(), settled: false };
        let mut idle = 0;
        let mut centre = (near.values.len() == self.problem.sizes.len()).then(|| near.clone());
        let mut centre_total = i64::MIN;
        let mut plain = false;
        loop {
            if !patience.goes_on() {
                return if best.bound > i64::MIN { Ok(best) } else { Err(Stopped) };
            }
            let before = master.weight();
            let smooth = master.improve(&self.pool);
            let mut prices = self.prices(master, case, shortest);
            let smoothed = !plain && centre.is_some();
            if let Some(centre) = centre.as_ref().filter(|_| smoothed) {
                self.draw_towards(centre, &mut prices, case);
            }
            let mut found = self.knapsack.best(
                &self.problem.sizes,
                &mut prices,
                &self.problem.need,
                &case.held,
                patience.keep_going,
            )?;
            let leaf = self.leaf(&prices, case);
            let total = self.bound_of(&leaf, &self.problem.need, case);
            let bound = self.totals.raised(&case.kinds, total, self.below);
            if total > centre_total {
                (centre_total, centre) = (total, Some(leaf.clone()));
            }
            if bound > best.bound {
                best = Solved { bound, leaf, settled: false };
            }
            if best.bound >= self.below {
                return Ok(best);
            }
            if smoothed {
                found.retain(|found| master.would_improve(found.kind, &found.pattern));
                if found.is_empty() {
                    plain = true;
                    continue;
                }
            }
            plain = false;
            if found.is_empty() {
                best.settled = true;
                return Ok(best);
            }
            let weight = master.weight();
            let near = self.totals.raised(&case.kinds, ceil_near(weight), self.below);
            if near <= best.bound && stand_in_amount(master, &self.pool) < 1e-6 {
                best.settled = true;
                return Ok(best);
            }
            found.reverse();
            let mut per_kind = vec![0; case.kinds.len()];
            for found in found {
                per_kind[found.kind] += 1;
                if per_kind[found.kind] <= 2 {
                    self.pool.add(found.kind, &found.pattern);
                }
            }
            if before - weight <= 1e-9 * before.abs() || !smooth {
                idle += 1;
                if idle % 40 == 0 {
                    master.refresh(&self.pool);
                }
                if idle > 400 {
                    return Ok(best);
                }
            } else {
                idle = 0;
            }
        }
    }

    /// Draws values, thresholds and charges towards those of the best bound so far: the blend's own values swing widely
    /// before they settle.
    pub(super) fn draw_towards(&self, centre: &Leaf, prices: &mut Prices, case: &Case) {
        let drawn = |towards: f64, from: f64| DRAW * towards + (1.0 - DRAW) * from;
        for (value, &towards) in prices.values.iter_mut().zip(&centre.values) {
            *value = drawn(towards as f64, *value).floor();
        }
        for asked in prices.asked.iter_mut().filter(|asked| asked.kind != STAND_IN) {
            let charge = centre.charges.get(asked.kind - 1).copied().unwrap_or(0);
            let towards = (case.kinds[asked.kind].weight as f64 * self.scale + charge as f64).max(0.0);
            asked.threshold = drawn(towards, asked.threshold).ceil();
        }
        for (at, charge) in prices.held.iter_mut().enumerate() {
            *charge = drawn(centre.held.get(at).copied().unwrap_or(0) as f64, *charge).ceil();
        }
    }

    /// The blend's values as whole numbers at the scale, a little below, so that rounding cannot lift a pattern over
    /// its threshold; thresholds and charges for the sticks that a case allows.
    pub(super) fn prices(&self, master: &Master, case: &Case, shortest: f64) -> Prices {
        let leeway = 16.0;
        let values = master
            .values(self.problem.sizes.len())
            .iter()
            .map(|value| (value * self.scale - leeway).floor().max(0.0))
            .collect();
        let mut asked: Vec<Asked> = (0..case.kinds.len())
            .filter(|&kind| case.kinds[kind].capacity >= shortest && case.kinds[kind].most > 0)
            .map(|kind| {
                let Kind { weight, capacity, .. } = case.kinds[kind];
                let weight = if kind == STAND_IN { master.stand_in_weight() } else { weight as f64 };
                let threshold = (weight * self.scale + (master.charge(kind) * self.scale).ceil()).max(0.0);
                Asked { kind, capacity, threshold }
            })
            .collect();
        asked.sort_by(|a, b| a.capacity.total_cmp(&b.capacity).then(a.kind.cmp(&b.kind)));
        let held = (0..case.held.len()).map(|at| (master.held_charge(at) * self.scale).ceil()).collect();
        Prices { values, asked, held }
    }

    /// What a leaf proves of a case for this need.
    pub(super) fn bound_of(&self, leaf: &Leaf, need: &[u32], case: &Case) -> i64 {
        let (kinds, held) = case.ranges();
        leaf.bound(need, kinds, held)
    }

    /// Values and charges that hold for every pattern, from prices whose thresholds are the most that a pattern of each
    /// kind is worth.
    pub(super) fn leaf(&self, prices: &Prices, case: &Case) -> Leaf {
        let kinds = &case.kinds;
        let scale = self.scale as i64;
        let scaled = |kind: usize| i128::from(kinds[kind].weight) * i128::from(scale);
        let mut tops = vec![0_i128; kinds.len()];
        for asked in &prices.asked {
            tops[asked.kind] = asked.threshold as i128;
        }
        // Unlimited kinds carry no charge: where a pattern is worth too much, all values shrink alike.
        let mut shrink: Option<(i128, i128)> = None;
        for kind in (1..kinds.len()).filter(|&kind| kinds[kind].most == u32::MAX && tops[kind] > scaled(kind)) {
            if shrink.is_none_or(|(to, from)| scaled(kind) * from < to * tops[kind]) {
                shrink = Some((scaled(kind), tops[kind]));
            }
        }
        let (to, from) = shrink.unwrap_or((1, 1));
        let values = prices.values.iter().map(|&value| (value as i128 * to / from) as i64).collect();
        let charges = (1..kinds.len())
            .map(|kind| {
                let charge = tops[kind] * to / from - scaled(kind);
                let unused = charge < 0 && kinds[kind].least == 0;
                if unused { 0 } else { charge as i64 }
            })
            .collect();
        let held = prices.held.iter().map(|&charge| num_integer::div_ceil(charge as i128 * to, from) as i64).collect();
        Leaf { scale, values, charges, held }
    }
}

pub(super) fn stand_in_amount(master: &Master, pool: &Pool) -> f64 {
    master.blend().filter(|&(column, _)| pool.kind(column) == STAND_IN).map(|(_, amount)| amount).sum()
}

/// The least whole total a blend of this weight allows, floats taken with a grain of salt.
pub(super) fn ceil_near(weight: f64) -> i64 {
    (weight - 1e-9 * weight.abs() - 1e-6).ceil() as i64
}
