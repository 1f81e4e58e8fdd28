//! The bound of one case: the best blend of patterns, and the whole numbers that prove it.

use super::super::certificate::{Branch, Leaf};
use super::best_patterns::{Asked, Stopped};
use super::columns::Pool;
use super::master::Master;
use super::problem::{Kind, STAND_IN};
use super::search::{Patience, Search};

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
        let kinds = kinds.clone();
        let leaf = self.leaf(&values, &kinds, &asked);
        let bound = leaf.bound(&self.problem.need, kinds.iter().skip(1).map(|kind| (kind.least, kind.most)));
        self.bound = self.totals.raised(&kinds, bound, self.below);
        self.tree = vec![Branch::Leaf(leaf)];
    }

    /// The best blend for the whole need under these bounds, with a bound on the total.
    pub(super) fn solve(
        &mut self,
        master: &mut Master,
        kinds: &[Kind],
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
            let mut values = self.whole_values(master);
            let mut asked = self.asked(master, kinds, shortest, |kind| kinds[kind].most > 0);
            let smoothed = !plain && centre.is_some();
            if let Some(centre) = centre.as_ref().filter(|_| smoothed) {
                self.draw_towards(centre, &mut values, &mut asked, kinds);
            }
            let mut found = self.knapsack.best(
                &self.problem.sizes,
                &values,
                &self.problem.need,
                &mut asked,
                patience.keep_going,
            )?;
            let leaf = self.leaf(&values, kinds, &asked);
            let total = leaf.bound(&self.problem.need, kinds.iter().skip(1).map(|kind| (kind.least, kind.most)));
            let bound = self.totals.raised(kinds, total, self.below);
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
            let near = self.totals.raised(kinds, ceil_near(weight), self.below);
            if near <= best.bound && stand_in_amount(master, &self.pool) < 1e-6 {
                best.settled = true;
                return Ok(best);
            }
            found.reverse();
            let mut per_kind = vec![0; kinds.len()];
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

    /// Draws values and thresholds towards those of the best bound so far: the blend's own values swing widely before
    /// they settle.
    pub(super) fn draw_towards(&self, centre: &Leaf, values: &mut [f64], asked: &mut [Asked], kinds: &[Kind]) {
        let drawn = |towards: f64, from: f64| DRAW * towards + (1.0 - DRAW) * from;
        for (value, &towards) in values.iter_mut().zip(&centre.values) {
            *value = drawn(towards as f64, *value).floor();
        }
        for asked in asked.iter_mut().filter(|asked| asked.kind != STAND_IN) {
            let charge = centre.charges.get(asked.kind - 1).copied().unwrap_or(0);
            let towards = (kinds[asked.kind].weight as f64 * self.scale + charge as f64).max(0.0);
            asked.threshold = drawn(towards, asked.threshold).ceil();
        }
    }

    /// The blend's values as whole numbers at the scale, a little below, so that rounding cannot lift a pattern over
    /// its threshold.
    pub(super) fn whole_values(&self, master: &Master) -> Vec<f64> {
        let leeway = 16.0;
        master
            .values(self.problem.sizes.len())
            .iter()
            .map(|value| (value * self.scale - leeway).floor().max(0.0))
            .collect()
    }

    pub(super) fn asked(
        &self,
        master: &Master,
        kinds: &[Kind],
        shortest: f64,
        wanted: impl Fn(usize) -> bool,
    ) -> Vec<Asked> {
        let mut asked: Vec<Asked> = (0..kinds.len())
            .filter(|&kind| kinds[kind].capacity >= shortest && wanted(kind))
            .map(|kind| {
                let weight = if kind == STAND_IN { master.stand_in_weight() } else { kinds[kind].weight as f64 };
                let threshold = (weight * self.scale + (master.charge(kind) * self.scale).ceil()).max(0.0);
                Asked { kind, capacity: kinds[kind].capacity, threshold }
            })
            .collect();
        asked.sort_by(|a, b| a.capacity.total_cmp(&b.capacity).then(a.kind.cmp(&b.kind)));
        asked
    }

    /// Values and charges that hold for every pattern, from values and the most that a pattern of each kind is worth.
    pub(super) fn leaf(&self, values: &[f64], kinds: &[Kind], asked: &[Asked]) -> Leaf {
        let scale = self.scale as i64;
        let scaled = |kind: usize| i128::from(kinds[kind].weight) * i128::from(scale);
        let mut tops = vec![0_i128; kinds.len()];
        for asked in asked {
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
        let values = values.iter().map(|&value| (value as i128 * to / from) as i64).collect();
        let charges = (1..kinds.len())
            .map(|kind| {
                let charge = tops[kind] * to / from - scaled(kind);
                let unused = charge < 0 && kinds[kind].least == 0;
                if unused { 0 } else { charge as i64 }
            })
            .collect();
        Leaf { scale, values, charges }
    }
}

pub(super) fn stand_in_amount(master: &Master, pool: &Pool) -> f64 {
    master.blend().filter(|&(column, _)| pool.kind(column) == STAND_IN).map(|(_, amount)| amount).sum()
}

/// The least whole total a blend of this weight allows, floats taken with a grain of salt.
pub(super) fn ceil_near(weight: f64) -> i64 {
    (weight - 1e-9 * weight.abs() - 1e-6).ceil() as i64
}
