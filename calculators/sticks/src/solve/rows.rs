//! The rows of a blend as a case sets them: bounds on stick kinds, on sticks that hold given pieces, and needs.

use super::columns::Pool;
use super::master::{Basic, Master, NO_ROW, PIVOT, Row, SHUT, counts_in};
use super::problem::{Case, Held, Limit, STAND_IN};

impl Master {
    /// At most so many sticks of a kind from now on.
    pub(super) fn set_most(&mut self, kind: usize, most: u32, pool: &Pool) {
        if most == u32::MAX {
            return;
        }
        if self.most_row[kind] == NO_ROW {
            self.most_row[kind] = self.add_row(Row::Most(kind), pool);
        }
        let row = self.most_row[kind];
        self.bounds[row] = f64::from(most);
        self.place_amounts();
    }

    /// At least so many sticks of a kind from now on. The empty stick joins the pool, so that this can always be met.
    pub(super) fn set_least(&mut self, kind: usize, least: u32, pool: &mut Pool) {
        if self.least_row[kind] == NO_ROW {
            if least == 0 {
                return;
            }
            pool.add(kind, &[]);
            self.least_row[kind] = self.add_row(Row::Least(kind), pool);
        }
        let row = self.least_row[kind];
        self.bounds[row] = f64::from(least);
        self.place_amounts();
    }

    /// The counts of sticks that hold given pieces, each with its limit from now on. Those that have a row already come
    /// first, in the same order. An empty stand-in counts for every least number, so that it can always be met.
    pub(super) fn set_held(&mut self, held: &[Held], pool: &mut Pool) {
        for (at, held) in held.iter().enumerate() {
            if at == self.held.len() {
                if matches!(held.limit, Limit::Least(_)) {
                    pool.add(STAND_IN, &[]);
                }
                self.held.push((held.clone(), NO_ROW));
                self.held[at].1 = self.add_row(Row::Held(at), pool);
            }
            let (known, row) = &mut self.held[at];
            known.limit = held.limit;
            let (Limit::Most(limit) | Limit::Least(limit)) = held.limit;
            self.bounds[*row] = f64::from(limit);
        }
        self.place_amounts();
    }

    /// Lets a fresh blend meet the least numbers of its rows, with empty sticks and an empty stand-in.
    pub(super) fn fill_up(&mut self, pool: &mut Pool) {
        loop {
            let short = (0..self.rows.len()).filter(|&row| self.amounts[row] < 0.0);
            let Some(row) = short.min_by(|&a, &b| self.amounts[a].total_cmp(&self.amounts[b])) else { return };
            let kind = match self.rows[row] {
                Row::Least(kind) => kind,
                Row::Held(_) => STAND_IN,
                Row::Size | Row::Most(_) => return,
            };
            let column = pool.add(kind, &[]);
            let reduced = self.kind_bases()[kind] - self.along(column, pool, &self.duals);
            let entering = Basic::Column(column as u32);
            self.set_direction(entering, pool);
            if self.direction[row].abs() < PIVOT {
                return;
            }
            self.pivot(row, entering, reduced, pool);
        }
    }

    /// Other needs per size, and what the rest of the case allows, for bounds that already have a row.
    pub(super) fn set_needs(&mut self, need: &[u32], rest: &Case) {
        for (bound, &need) in self.bounds.iter_mut().zip(need) {
            *bound = f64::from(need);
        }
        for (kind, allowed) in rest.kinds.iter().enumerate() {
            if self.most_row[kind] != NO_ROW {
                self.bounds[self.most_row[kind]] = f64::from(allowed.most);
            }
            if self.least_row[kind] != NO_ROW {
                self.bounds[self.least_row[kind]] = f64::from(allowed.least);
            }
        }
        for ((_, row), held) in self.held.iter().zip(&rest.held) {
            let (Limit::Most(limit) | Limit::Least(limit)) = held.limit;
            self.bounds[*row] = f64::from(limit);
        }
        let sizes = need.len();
        let (bounds, duals) = (&self.bounds, &mut self.duals);
        self.live.retain(|&row| {
            let lives = row as usize >= sizes || bounds[row as usize] > 0.0;
            if !lives {
                duals[row as usize] = SHUT;
            }
            lives
        });
        self.place_amounts();
    }

    fn add_row(&mut self, row: Row, pool: &Pool) -> usize {
        let old = self.rows.len();
        let new = old + 1;
        self.rows.push(row);
        let sign = -self.slack_sign(old);
        let counted: Vec<bool> = self
            .basis
            .iter()
            .map(|basic| match *basic {
                Basic::Column(column) => {
                    let kind = pool.kind(column as usize);
                    match row {
                        Row::Size => false,
                        Row::Most(of) | Row::Least(of) => kind == of,
                        Row::Held(at) => counts_in(&self.held[at].0, kind, pool.pattern(column as usize)),
                    }
                }
                Basic::Slack(_) => false,
            })
            .collect();
        let mut inverse = vec![0.0; new * new];
        for column in 0..old {
            let from = &self.inverse[column * old..(column + 1) * old];
            inverse[column * new..column * new + old].copy_from_slice(from);
            let mut through = 0.0;
            for (&counted, entry) in counted.iter().zip(from) {
                if counted {
                    through += entry;
                }
            }
            inverse[column * new + old] = sign * through;
        }
        inverse[old * new + old] = -sign;
        self.inverse = inverse;
        self.live.push(old as u32);
        self.bounds.push(0.0);
        self.duals.push(0.0);
        self.amounts.push(0.0);
        self.direction.push(0.0);
        self.basis.push(Basic::Slack(old as u32));
        old
    }
}
