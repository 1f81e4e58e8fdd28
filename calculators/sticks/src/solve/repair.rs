//! Mending a blend after a bound has moved: the dual simplex.

use super::columns::Pool;
use super::master::{Basic, Master, NO_ROW, PIVOT, SHUT};

/// How a repair by the dual simplex ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Repair {
    /// The blend meets all rows again.
    Done,
    /// No blend of the known patterns was found that does.
    Stuck,
}

impl Master {
    /// Brings the blend back inside its rows after a bound has moved.
    pub(super) fn repair(&mut self, pool: &Pool) -> Repair {
        let count = self.rows.len();
        let mut along_row = vec![-SHUT; count];
        for _ in 0..20 * count + 500 {
            let mut least = -1e-8;
            let mut leaving = None;
            for (row, &amount) in self.amounts.iter().enumerate() {
                if amount < least {
                    (least, leaving) = (amount, Some(row));
                }
            }
            let Some(leaving) = leaving else { return Repair::Done };
            for column in self.live.iter().map(|&row| row as usize) {
                along_row[column] = self.inverse[column * count + leaving];
            }
            let bases = self.kind_bases();
            let along_kind: Vec<f64> = (0..self.weights.len())
                .map(|kind| {
                    [self.most_row[kind], self.least_row[kind]]
                        .into_iter()
                        .filter(|&row| row != NO_ROW)
                        .map(|row| along_row[row])
                        .sum()
                })
                .collect();
            let mut best = (f64::INFINITY, 0.0);
            let mut entering = None;
            let mut consider = |along: f64, reduced: f64, basic: Basic| {
                if along < -PIVOT {
                    let ratio = reduced.max(0.0) / -along;
                    if ratio < best.0 - 1e-12 || (ratio <= best.0 + 1e-12 && along < best.1) {
                        best = (ratio, along);
                        entering = Some((basic, reduced));
                    }
                }
            };
            for row in self.live.iter().map(|&row| row as usize) {
                let along = along_row[row];
                let sign = self.slack_sign(row);
                consider(sign * along, -sign * self.duals[row], Basic::Slack(row as u32));
            }
            for &column in pool.in_view() {
                let column = column as usize;
                let kind = pool.kind(column);
                let along = along_kind[kind] + self.along(column, pool, &along_row);
                if along < -PIVOT {
                    consider(along, bases[kind] - self.along(column, pool, &self.duals), Basic::Column(column as u32));
                }
            }
            let Some((entering, reduced)) = entering else { return Repair::Stuck };
            self.set_direction(entering, pool);
            if self.direction[leaving].abs() < PIVOT / 10.0 {
                return Repair::Stuck;
            }
            self.pivot(leaving, entering, reduced, pool);
        }
        Repair::Stuck
    }
}
