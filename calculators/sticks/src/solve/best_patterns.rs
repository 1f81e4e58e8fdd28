//! The pattern worth most on each stick kind: one bounded knapsack for all kinds at once.
//!
//! Sizes are taken by falling worth per length. A list of part patterns, none longer and worth less than another,
//! grows copy by copy; a part pattern whose best continuation (filling what is left at the next size's worth per
//! length) beats no kind's threshold is dropped. The list depends on how many useful part patterns there are, not on
//! the magnitude of the lengths. All numbers are whole and below 2^52, so sums are exact; the continuation's bound is
//! rounded, and half a unit is left for that.
//!
//! A kind with charges for sticks that hold given pieces has a pass of its own: those pieces are taken first, in every
//! number, so that it is known which charges a part pattern bears before any is left out for another.

use super::columns::Pattern;
use super::problem::{Held, holds};

/// The stick kinds asked about, shortest first: index, capacity, and the worth that a pattern must beat.
#[derive(Clone, Copy, Debug)]
pub(super) struct Asked {
    pub(super) kind: usize,
    pub(super) capacity: f64,
    pub(super) threshold: f64,
}

/// What is asked for: a worth per size, thresholds per kind, and the charges for sticks that hold given pieces.
#[derive(Clone, Debug)]
pub(super) struct Prices {
    pub(super) values: Vec<f64>,
    pub(super) asked: Vec<Asked>,
    /// In the order of the case's counts.
    pub(super) held: Vec<f64>,
}

/// A pattern that beats its kind's threshold.
#[derive(Clone, Debug)]
pub(super) struct Found {
    pub(super) kind: usize,
    pub(super) pattern: Pattern,
}

/// The pass was stopped before it had seen every pattern.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stopped;

#[derive(Clone, Copy, Debug)]
struct Part {
    used: f64,
    worth: f64,
    trail: u32,
}

/// Part patterns kept beyond this number stop the pass: some 100 MB.
const MOST_PARTS: usize = 4_000_000;
const ROOT: u32 = u32::MAX;

/// Room for the pass, kept between passes.
#[derive(Clone, Debug, Default)]
pub(super) struct Knapsack {
    parts: Vec<Part>,
    fresh: Vec<Part>,
    merged: Vec<Part>,
    survivors: Vec<Part>,
    trail: Vec<(u32, u16)>,
    order: Vec<usize>,
    reach: Vec<f64>,
    floor: Vec<f64>,
}

impl Knapsack {
    /// For each kind the patterns that were best so far when they were met, the best one last; nothing for a kind
    /// whose threshold no pattern beats. The thresholds rise to the worth of the best. No pattern holds more of a size
    /// than `limit` says.
    ///
    /// # Errors
    /// `Stopped` when told to stop, or when the list outgrows its room.
    pub(super) fn best(
        &mut self,
        sizes: &[f64],
        prices: &mut Prices,
        limit: &[u32],
        held: &[Held],
        keep_going: &mut dyn FnMut() -> bool,
    ) -> Result<Vec<Found>, Stopped> {
        let Prices { values, asked, held: charges } = prices;
        if held.is_empty() {
            return self.pass(sizes, values, limit, asked, &[], keep_going);
        }
        let counted = |asked: &Asked| held.iter().any(|held| held.kind == asked.kind);
        asked.sort_by_key(counted);
        let first = asked.partition_point(|asked| !counted(asked));
        let (together, alone) = asked.split_at_mut(first);
        let mut found = self.pass(sizes, values, limit, together, &[], keep_going)?;
        for asked in alone {
            let own = held.iter().zip(charges.iter().copied()).filter(|(held, _)| held.kind == asked.kind);
            let charged: Vec<(&Held, f64)> = own.collect();
            found.extend(self.pass(sizes, values, limit, std::slice::from_mut(asked), &charged, keep_going)?);
        }
        Ok(found)
    }

    fn pass(
        &mut self,
        sizes: &[f64],
        values: &[f64],
        limit: &[u32],
        asked: &mut [Asked],
        charged: &[(&Held, f64)],
        keep_going: &mut dyn FnMut() -> bool,
    ) -> Result<Vec<Found>, Stopped> {
        let mut found: Vec<(usize, u32)> = Vec::new();
        let Some(longest) = asked.last().map(|kind| kind.capacity) else { return Ok(Vec::new()) };
        self.trail.clear();
        self.parts.clear();
        self.parts.push(Part { used: 0.0, worth: 0.0, trail: ROOT });
        let first = self.take_first(sizes, values, limit, longest, charged)?;
        for part in self.parts.iter().filter(|_| !charged.is_empty()) {
            if part.worth > asked[0].threshold {
                asked[0].threshold = part.worth;
                found.push((asked[0].kind, part.trail));
            }
        }
        self.order.clear();
        self.order.extend((0..sizes.len()).filter(|&size| {
            values[size] > 0.0 && limit[size] > 0 && sizes[size] <= longest && !first.contains(&(size as u16))
        }));
        self.order.sort_by(|&a, &b| (values[b] / sizes[b]).total_cmp(&(values[a] / sizes[a])).then(a.cmp(&b)));
        self.set_floor(asked);
        let order = std::mem::take(&mut self.order);
        for (at, &size) in order.iter().enumerate() {
            if at % 16 == 0 && !keep_going() {
                self.order = order;
                return Err(Stopped);
            }
            let (length, value) = (sizes[size], values[size]);
            let rate = value / length;
            self.set_reach(asked, rate);
            self.drop_hopeless(asked, rate);
            if self.parts.is_empty() {
                break;
            }
            self.fresh.clear();
            self.fresh.extend_from_slice(&self.parts);
            let copies = (longest / length).min(f64::from(limit[size])) as u32;
            for _ in 0..copies {
                self.add_copy(asked, size, length, value, rate, longest, &mut found);
                if self.fresh.is_empty() {
                    break;
                }
            }
            if self.trail.len() > MOST_PARTS {
                self.order = order;
                return Err(Stopped);
            }
        }
        self.order = order;
        Ok(found.into_iter().map(|(kind, trail)| Found { kind, pattern: self.pattern(trail) }).collect())
    }

    /// Begins with every number of the pieces that charges depend on, each part pattern with the charges it bears. Gives
    /// those pieces.
    fn take_first(
        &mut self,
        sizes: &[f64],
        values: &[f64],
        limit: &[u32],
        longest: f64,
        charged: &[(&Held, f64)],
    ) -> Result<Vec<u16>, Stopped> {
        let mut first: Vec<u16> =
            charged.iter().flat_map(|(held, _)| held.holds.iter().map(|&(size, _)| size)).collect();
        first.sort_unstable();
        first.dedup();
        if first.is_empty() {
            return Ok(first);
        }
        for &size in &first {
            let (length, value) = (sizes[usize::from(size)], values[usize::from(size)]);
            // Each part pattern grows by one copy at a time; those that have grown come behind and are not met again.
            let before = self.parts.len();
            for at in 0..before {
                let mut part = self.parts[at];
                for _ in 0..limit[usize::from(size)] {
                    part.used += length;
                    if part.used > longest {
                        break;
                    }
                    part.worth += value;
                    self.trail.push((part.trail, size));
                    part.trail = self.trail.len() as u32 - 1;
                    self.parts.push(part);
                }
            }
            if self.trail.len() > MOST_PARTS {
                return Err(Stopped);
            }
        }
        for at in 0..self.parts.len() {
            let pattern = self.pattern(self.parts[at].trail);
            for (held, charge) in charged {
                if holds(&pattern, &held.holds) {
                    self.parts[at].worth -= charge;
                }
            }
        }
        self.parts.sort_by(|a, b| a.used.total_cmp(&b.used).then(b.worth.total_cmp(&a.worth)));
        let mut best = f64::NEG_INFINITY;
        self.parts.retain(|part| {
            let keeps = part.worth > best;
            best = best.max(part.worth);
            keeps
        });
        Ok(first)
    }

    /// For each kind onward, the least worth that still has to be beaten.
    fn set_floor(&mut self, asked: &[Asked]) {
        self.floor.clear();
        self.floor.resize(asked.len(), f64::INFINITY);
        let mut least = f64::INFINITY;
        for (at, kind) in asked.iter().enumerate().rev() {
            least = least.min(kind.threshold);
            self.floor[at] = least;
        }
    }

    /// For each kind onward, the most that a filled stick would exceed its threshold by, at this worth per length.
    fn set_reach(&mut self, asked: &[Asked], rate: f64) {
        self.reach.clear();
        self.reach.resize(asked.len(), f64::NEG_INFINITY);
        let mut most = f64::NEG_INFINITY;
        for (at, kind) in asked.iter().enumerate().rev() {
            most = most.max(kind.capacity * rate - kind.threshold);
            self.reach[at] = most;
        }
    }

    fn drop_hopeless(&mut self, asked: &[Asked], rate: f64) {
        let mut first = 0;
        let reach = &self.reach;
        self.parts.retain(|part| {
            while asked[first].capacity < part.used {
                first += 1;
            }
            part.worth - part.used * rate + reach[first] > 0.5
        });
    }

    #[allow(clippy::too_many_arguments)]
    fn add_copy(
        &mut self,
        asked: &mut [Asked],
        size: usize,
        length: f64,
        value: f64,
        rate: f64,
        longest: f64,
        found: &mut Vec<(usize, u32)>,
    ) {
        self.merged.clear();
        self.survivors.clear();
        let mut first = 0;
        let mut old = 0;
        let mut best = f64::NEG_INFINITY;
        for at in 0..self.fresh.len() {
            let from = self.fresh[at];
            let used = from.used + length;
            if used > longest {
                break;
            }
            while old < self.parts.len() && self.parts[old].used <= used {
                let part = self.parts[old];
                if part.worth > best {
                    best = part.worth;
                    self.merged.push(part);
                }
                old += 1;
            }
            let worth = from.worth + value;
            if worth <= best {
                continue;
            }
            while asked[first].capacity < used {
                first += 1;
            }
            let beats = worth > self.floor[first];
            if !beats && worth - used * rate + self.reach[first] <= 0.5 {
                continue;
            }
            let trail = self.trail.len() as u32;
            self.trail.push((from.trail, size as u16));
            let part = Part { used, worth, trail };
            best = worth;
            // A part of the same length and less worth may stand just before: it goes.
            if self.merged.last().is_some_and(|last| last.used == used) {
                self.merged.pop();
            }
            self.merged.push(part);
            self.survivors.push(part);
            if beats {
                for kind in &mut asked[first..] {
                    if worth > kind.threshold {
                        kind.threshold = worth;
                        found.push((kind.kind, trail));
                    }
                }
                self.set_floor(asked);
                self.set_reach(asked, rate);
            }
        }
        while old < self.parts.len() {
            let part = self.parts[old];
            if part.worth > best {
                best = part.worth;
                self.merged.push(part);
            }
            old += 1;
        }
        std::mem::swap(&mut self.parts, &mut self.merged);
        std::mem::swap(&mut self.fresh, &mut self.survivors);
    }

    fn pattern(&self, mut trail: u32) -> Pattern {
        let mut pattern = Pattern::new();
        while trail != ROOT {
            let (before, size) = self.trail[trail as usize];
            match pattern.last_mut() {
                Some((last, count)) if *last == size => *count += 1,
                _ => pattern.push((size, 1)),
            }
            trail = before;
        }
        pattern.sort_unstable();
        pattern
    }
}
