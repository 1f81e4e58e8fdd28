//! The steps of the revised simplex: improve, pivot, and mend what rounding has worn.

use super::columns::Pool;
use super::master::{Basic, Master, NOTHING, PIVOT};

impl Master {
    /// Improves the blend until no known pattern helps. False when it stalled.
    pub(super) fn improve(&mut self, pool: &Pool) -> bool {
        let limit = 40 * self.rows.len() + 2_000;
        for _ in 0..limit {
            let mut least = -self.tolerance;
            let mut entering = None;
            for row in self.live.iter().map(|&row| row as usize) {
                let reduced = -self.slack_sign(row) * self.duals[row];
                if reduced < least {
                    (least, entering) = (reduced, Some(Basic::Slack(row as u32)));
                }
            }
            let bases = self.kind_bases();
            for &column in pool.in_view() {
                let column = column as usize;
                let reduced = bases[pool.kind(column)] - self.along(column, pool, &self.duals);
                if reduced < least {
                    (least, entering) = (reduced, Some(Basic::Column(column as u32)));
                }
            }
            let Some(entering) = entering else { return true };
            self.set_direction(entering, pool);
            let mut step = f64::INFINITY;
            for (&amount, &along) in self.amounts.iter().zip(&self.direction) {
                if along > PIVOT {
                    step = step.min((amount.max(0.0) + NOTHING) / along);
                }
            }
            let mut leaving = None;
            let mut largest = 0.0;
            for (row, (&amount, &along)) in self.amounts.iter().zip(&self.direction).enumerate() {
                if along > PIVOT && along > largest && amount.max(0.0) / along <= step {
                    (largest, leaving) = (along, Some(row));
                }
            }
            let Some(leaving) = leaving else { return false };
            self.pivot(leaving, entering, least, pool);
        }
        false
    }

    pub(super) fn pivot(&mut self, leaving: usize, entering: Basic, reduced: f64, pool: &Pool) {
        let count = self.rows.len();
        let along = self.direction[leaving];
        let step = self.amounts[leaving] / along;
        for (amount, part) in self.amounts.iter_mut().zip(&self.direction) {
            *amount -= step * part;
        }
        self.amounts[leaving] = step;
        let parts: Vec<(u32, f64)> = self
            .direction
            .iter()
            .enumerate()
            .filter(|(_, part)| part.abs() > 1e-14)
            .map(|(row, &part)| (row as u32, part))
            .collect();
        let sparse = parts.len() * 3 < count;
        for column in self.live.iter().map(|&row| row as usize) {
            let entries = &mut self.inverse[column * count..(column + 1) * count];
            let factor = entries[leaving] / along;
            if factor != 0.0 {
                self.duals[column] += reduced * factor;
                if sparse {
                    for &(row, part) in &parts {
                        entries[row as usize] -= factor * part;
                    }
                } else {
                    for (entry, part) in entries.iter_mut().zip(&self.direction) {
                        *entry -= factor * part;
                    }
                }
                entries[leaving] = factor;
            }
        }
        self.basis[leaving] = entering;
        self.pivots += 1;
        if self.pivots.is_multiple_of(64) {
            self.refresh(pool);
        }
    }

    /// Recomputes what drifts, and the inverse itself when it has drifted.
    pub(super) fn refresh(&mut self, pool: &Pool) {
        self.place_amounts();
        let mut residual = self.bounds.clone();
        for (at, &basic) in self.basis.iter().enumerate() {
            let amount = self.amounts[at];
            self.each_entry(basic, pool, |row, entry| residual[row] -= entry * amount);
        }
        if residual.iter().any(|gap| gap.abs() > 1e-8) {
            self.invert(pool);
            self.place_amounts();
        }
        self.place_duals(pool);
    }

    /// The inverse from nothing, by elimination with row exchange.
    fn invert(&mut self, pool: &Pool) {
        let count = self.rows.len();
        let mut matrix = vec![0.0; count * count];
        for (at, &basic) in self.basis.iter().enumerate() {
            self.each_entry(basic, pool, |row, entry| matrix[row * count + at] += entry);
        }
        let mut inverse = vec![0.0; count * count];
        for at in 0..count {
            inverse[at * count + at] = 1.0;
        }
        for at in 0..count {
            let mut pivot_row = at;
            for row in at + 1..count {
                if matrix[row * count + at].abs() > matrix[pivot_row * count + at].abs() {
                    pivot_row = row;
                }
            }
            let pivot = matrix[pivot_row * count + at];
            if pivot.abs() < 1e-12 {
                return; // a basis that cannot be inverted: keep what we have
            }
            if pivot_row != at {
                for column in 0..count {
                    matrix.swap(at * count + column, pivot_row * count + column);
                    inverse.swap(at * count + column, pivot_row * count + column);
                }
            }
            for column in 0..count {
                matrix[at * count + column] /= pivot;
                inverse[at * count + column] /= pivot;
            }
            for row in (0..count).filter(|&row| row != at) {
                let factor = matrix[row * count + at];
                if factor != 0.0 {
                    for column in 0..count {
                        matrix[row * count + column] -= factor * matrix[at * count + column];
                        inverse[row * count + column] -= factor * inverse[at * count + column];
                    }
                }
            }
        }
        for row in 0..count {
            for column in 0..count {
                self.inverse[column * count + row] = inverse[row * count + column];
            }
        }
    }
}
