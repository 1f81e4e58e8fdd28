//! The blend of known patterns with the least weight: a revised simplex with an explicit inverse.
//!
//! Rows: one per size (at least the need), then one per bound on a stick kind or on the sticks of a kind that hold given
//! pieces, added when it is first needed. Floats only guide the search; what is claimed is settled in whole numbers
//! elsewhere. The rows stand in `rows`, the steps in `simplex`; after a bound has moved, `repair` mends the blend.

use super::columns::Pool;
use super::problem::{Held, Limit, Problem, STAND_IN};

/// What a row stands for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Row {
    /// At least the need of a size.
    Size,
    /// At most so many sticks of a kind.
    Most(usize),
    /// At least so many sticks of a kind.
    Least(usize),
    /// A count of sticks that hold given pieces: its place among those of the case.
    Held(usize),
}

/// A basic column: a pattern of the pool, or the slack of a row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Basic {
    Column(u32),
    Slack(u32),
}

pub(super) const NO_ROW: usize = usize::MAX;
pub(super) const PIVOT: f64 = 1e-7;
pub(super) const NOTHING: f64 = 1e-9;
/// Value of a size that is cut in full: no pattern that holds it comes into question.
pub(super) const SHUT: f64 = -1e18;
/// Patterns kept in view for each row.
const VIEWED: usize = 3;

/// The blend in hand: basis, its inverse, amounts and duals.
#[derive(Clone, Debug)]
pub(super) struct Master {
    pub(super) rows: Vec<Row>,
    pub(super) bounds: Vec<f64>,
    pub(super) most_row: Vec<usize>,
    pub(super) least_row: Vec<usize>,
    /// Counts of sticks that hold given pieces, each with its row.
    pub(super) held: Vec<(Held, usize)>,
    pub(super) weights: Vec<f64>,
    pub(super) inverse: Vec<f64>,
    pub(super) basis: Vec<Basic>,
    pub(super) amounts: Vec<f64>,
    pub(super) duals: Vec<f64>,
    pub(super) tolerance: f64,
    /// Rows that still matter: a size that a dive has cut in full takes no further part.
    pub(super) live: Vec<u32>,
    pub(super) pivots: u32,
    pub(super) direction: Vec<f64>,
}

impl Master {
    /// A first blend: each size alone on the kind that serves it at the least weight; limited kinds wait outside.
    pub(super) fn new(problem: &Problem, pool: &mut Pool) -> Self {
        let sizes = problem.sizes.len();
        let mut rows = vec![Row::Size; sizes];
        let mut bounds: Vec<f64> = problem.need.iter().map(|&need| f64::from(need)).collect();
        let kinds = problem.kinds.len();
        let (mut most_row, least_row) = (vec![NO_ROW; kinds], vec![NO_ROW; kinds]);
        for (index, kind) in problem.kinds.iter().enumerate() {
            if kind.most < u32::MAX {
                most_row[index] = rows.len();
                rows.push(Row::Most(index));
                bounds.push(f64::from(kind.most));
            }
        }
        let weights: Vec<f64> = problem.kinds.iter().map(|kind| kind.weight as f64).collect();
        let count = rows.len();
        let mut inverse = vec![0.0; count * count];
        let mut basis = Vec::with_capacity(count);
        let mut duals = vec![0.0; count];
        for size in 0..sizes {
            let fits =
                |capacity: f64| ((capacity / problem.sizes[size]).floor() as u32).min(problem.need[size]).min(60_000);
            for kind in (1..kinds).filter(|&kind| problem.kinds[kind].most < u32::MAX) {
                let copies = fits(problem.kinds[kind].capacity);
                if copies > 0 {
                    pool.add(kind, &[(size as u16, copies as u16)]);
                }
            }
            let copies = fits(problem.kinds[STAND_IN].capacity);
            let stand_in = pool.add(STAND_IN, &[(size as u16, copies as u16)]);
            let mut best = (stand_in, copies, weights[STAND_IN]);
            for kind in (1..kinds).filter(|&kind| problem.kinds[kind].most == u32::MAX) {
                let copies = fits(problem.kinds[kind].capacity);
                if copies == 0 {
                    continue;
                }
                let column = pool.add(kind, &[(size as u16, copies as u16)]);
                if weights[kind] * f64::from(best.1) < best.2 * f64::from(copies) {
                    best = (column, copies, weights[kind]);
                }
            }
            inverse[size * count + size] = 1.0 / f64::from(best.1);
            duals[size] = best.2 / f64::from(best.1);
            basis.push(Basic::Column(best.0 as u32));
        }
        for row in sizes..count {
            inverse[row * count + row] = 1.0;
            basis.push(Basic::Slack(row as u32));
        }
        let tolerance = 1e-9 * problem.kinds.iter().skip(1).map(|kind| kind.weight as f64).fold(1.0, f64::max);
        let mut master = Self {
            rows,
            bounds,
            most_row,
            least_row,
            held: Vec::new(),
            weights,
            inverse,
            basis,
            amounts: vec![0.0; count],
            duals,
            tolerance,
            live: (0..count as u32).collect(),
            pivots: 0,
            direction: vec![0.0; count],
        };
        master.place_amounts();
        for kind in 1..kinds {
            if problem.kinds[kind].least > 0 {
                master.set_least(kind, problem.kinds[kind].least, pool);
            }
        }
        master
    }

    /// Values per size, as the blend sees them.
    pub(super) fn values(&self, sizes: usize) -> &[f64] {
        &self.duals[..sizes]
    }

    /// What using one more stick of a kind is charged (positive) or rewarded (negative) for the bounds on it.
    pub(super) fn charge(&self, kind: usize) -> f64 {
        let mut charge = 0.0;
        if self.most_row[kind] != NO_ROW {
            charge -= self.duals[self.most_row[kind]];
        }
        if self.least_row[kind] != NO_ROW {
            charge -= self.duals[self.least_row[kind]];
        }
        charge
    }

    /// What a stick that counts among those that hold given pieces is charged (positive) or rewarded (negative).
    pub(super) fn held_charge(&self, at: usize) -> f64 {
        let Some((held, row)) = self.held.get(at) else { return 0.0 };
        match held.limit {
            Limit::Most(_) => (-self.duals[*row]).max(0.0),
            Limit::Least(_) => (-self.duals[*row]).min(0.0),
        }
    }

    /// Weight of the blend.
    pub(super) fn weight(&self) -> f64 {
        self.duals.iter().zip(&self.bounds).map(|(dual, bound)| dual * bound).sum()
    }

    /// The patterns of the blend with their amounts, those above nothing.
    pub(super) fn blend(&self) -> impl Iterator<Item = (usize, f64)> + '_ {
        self.basis.iter().zip(&self.amounts).filter_map(|(basic, &amount)| match basic {
            Basic::Column(column) if amount > NOTHING => Some((*column as usize, amount)),
            _ => None,
        })
    }

    /// Whether a pattern would lighten the blend.
    pub(super) fn would_improve(&self, kind: usize, pattern: &[(u16, u16)]) -> bool {
        let worth: f64 = pattern.iter().map(|&(size, count)| self.duals[usize::from(size)] * f64::from(count)).sum();
        let worth = worth + self.through_held(kind, pattern, &self.duals);
        self.weights[kind] + self.charge(kind) - worth < -self.tolerance
    }

    /// A kind of its own, put in later, with its weight.
    pub(super) fn add_kind(&mut self, weight: i64) {
        self.most_row.push(NO_ROW);
        self.least_row.push(NO_ROW);
        self.weights.push(weight as f64);
    }

    /// Brings into view the patterns that this blend comes nearest to using.
    pub(super) fn focus(&self, pool: &mut Pool) {
        let bases = self.kind_bases();
        pool.view(VIEWED * self.rows.len() + 60, |pool, column| {
            bases[pool.kind(column)] - self.along(column, pool, &self.duals)
        });
    }

    /// The stand-in's weight.
    pub(super) fn stand_in_weight(&self) -> f64 {
        self.weights[STAND_IN]
    }

    /// A heavier penalty on the stand-in.
    pub(super) fn raise_stand_in(&mut self, weight: f64, pool: &Pool) {
        self.weights[STAND_IN] = weight;
        self.place_duals(pool);
    }

    pub(super) fn place_amounts(&mut self) {
        let count = self.rows.len();
        self.amounts.iter_mut().for_each(|amount| *amount = 0.0);
        for (column, &bound) in self.bounds.iter().enumerate() {
            if bound != 0.0 {
                let entries = &self.inverse[column * count..(column + 1) * count];
                for (amount, entry) in self.amounts.iter_mut().zip(entries) {
                    *amount += bound * entry;
                }
            }
        }
    }

    pub(super) fn place_duals(&mut self, pool: &Pool) {
        let count = self.rows.len();
        let weights: Vec<f64> = self
            .basis
            .iter()
            .map(|basic| match basic {
                Basic::Column(column) => self.weights[pool.kind(*column as usize)],
                Basic::Slack(_) => 0.0,
            })
            .collect();
        for column in self.live.iter().map(|&row| row as usize) {
            let entries = &self.inverse[column * count..(column + 1) * count];
            self.duals[column] = entries.iter().zip(&weights).map(|(entry, weight)| entry * weight).sum();
        }
    }

    /// Entries of a column: (row, entry) in turn.
    pub(super) fn each_entry(&self, basic: Basic, pool: &Pool, mut visit: impl FnMut(usize, f64)) {
        match basic {
            Basic::Slack(row) => visit(row as usize, self.slack_sign(row as usize)),
            Basic::Column(column) => {
                for &(size, count) in pool.pattern(column as usize) {
                    visit(usize::from(size), f64::from(count));
                }
                let kind = pool.kind(column as usize);
                for row in [self.most_row[kind], self.least_row[kind]] {
                    if row != NO_ROW {
                        visit(row, 1.0);
                    }
                }
                for (held, row) in &self.held {
                    if counts_in(held, kind, pool.pattern(column as usize)) {
                        visit(*row, 1.0);
                    }
                }
            }
        }
    }

    pub(super) fn slack_sign(&self, row: usize) -> f64 {
        let at_most = match self.rows[row] {
            Row::Most(_) => true,
            Row::Size | Row::Least(_) => false,
            Row::Held(at) => matches!(self.held[at].0.limit, Limit::Most(_)),
        };
        if at_most { 1.0 } else { -1.0 }
    }

    /// What the rows of pieces held add up to for a pattern, at one number per row.
    fn through_held(&self, kind: usize, pattern: &[(u16, u16)], numbers: &[f64]) -> f64 {
        self.held.iter().filter(|(held, _)| counts_in(held, kind, pattern)).map(|(_, row)| numbers[*row]).sum()
    }

    /// What the pieces of a pattern and the rows of pieces held add up to, at one number per row.
    pub(super) fn along(&self, column: usize, pool: &Pool, numbers: &[f64]) -> f64 {
        let worth = pool.worth(column, numbers);
        if self.held.is_empty() {
            return worth;
        }
        worth + self.through_held(pool.kind(column), pool.pattern(column), numbers)
    }

    pub(super) fn set_direction(&mut self, entering: Basic, pool: &Pool) {
        let count = self.rows.len();
        let mut direction = std::mem::take(&mut self.direction);
        direction.iter_mut().for_each(|entry| *entry = 0.0);
        self.each_entry(entering, pool, |row, entry| {
            let column = &self.inverse[row * count..(row + 1) * count];
            for (sum, part) in direction.iter_mut().zip(column) {
                *sum += entry * part;
            }
        });
        self.direction = direction;
    }

    /// Reduced weight per kind before the pieces' values are taken off.
    pub(super) fn kind_bases(&self) -> Vec<f64> {
        (0..self.weights.len()).map(|kind| self.weights[kind] + self.charge(kind)).collect()
    }
}

/// Whether a column counts in a row of pieces held. An empty stand-in does where it helps.
pub(super) fn counts_in(held: &Held, kind: usize, pattern: &[(u16, u16)]) -> bool {
    held.counts(kind, pattern) || kind == STAND_IN && pattern.is_empty() && matches!(held.limit, Limit::Least(_))
}
