//! The totals that some choice of sticks can have, so that a bound may be raised to the next of them.
//!
//! Kinds of one weight are counted together. The choices whose total lies between the bound and the best plan are
//! listed once, when they are few enough to list; else a bound is raised to the next multiple of the weights' common
//! measure.

use super::problem::Kind;

/// Steps of listing after which the list is given up.
const MOST_STEPS: u32 = 400_000;
/// The longest list kept.
const MOST_CHOICES: usize = 20_000;

/// Attainable totals of one problem.
#[derive(Clone, Debug)]
pub(super) struct Totals {
    /// Distinct weights, heaviest first.
    weights: Vec<i64>,
    /// Group of each kind; none for the stand-in.
    group: Vec<usize>,
    measure: i64,
    listed: Option<Listed>,
}

#[derive(Clone, Debug)]
struct Listed {
    from: i64,
    /// Total, and count per group, totals rising.
    choices: Vec<(i64, Vec<u32>)>,
}

impl Totals {
    /// The groups of a problem's kinds; nothing is listed yet.
    pub(super) fn new(kinds: &[Kind]) -> Self {
        let mut weights: Vec<i64> = kinds.iter().skip(1).map(|kind| kind.weight).collect();
        weights.sort_unstable_by(|a, b| b.cmp(a));
        weights.dedup();
        let group = kinds
            .iter()
            .map(|kind| weights.iter().position(|&weight| weight == kind.weight).unwrap_or(usize::MAX))
            .collect();
        let measure = weights.iter().fold(0, |measure, &weight| num_integer::gcd(measure, weight)).max(1);
        Self { weights, group, measure, listed: None }
    }

    /// How many sticks of each group the kinds allow.
    fn ranges(&self, kinds: &[Kind]) -> Vec<(u32, u32)> {
        let mut ranges = vec![(0_u32, 0_u32); self.weights.len()];
        for (index, kind) in kinds.iter().enumerate().skip(1) {
            let (least, most) = &mut ranges[self.group[index]];
            *least = least.saturating_add(kind.least);
            *most = most.saturating_add(kind.most);
        }
        ranges
    }

    /// Lists the choices with `from <= total < below`, if there are few enough.
    pub(super) fn list(&mut self, kinds: &[Kind], from: i64, below: i64) {
        if let Some(listed) = &mut self.listed
            && listed.from <= from
        {
            listed.choices.retain(|&(total, _)| total < below);
            return;
        }
        let ranges = self.ranges(kinds);
        // The most that the groups from here on can add.
        let mut rest = vec![0_i64; self.weights.len() + 1];
        for at in (0..self.weights.len()).rev() {
            rest[at] = rest[at + 1].saturating_add(self.weights[at].saturating_mul(i64::from(ranges[at].1)));
        }
        let mut listing = Listing {
            weights: &self.weights,
            ranges: &ranges,
            rest: &rest,
            from,
            below,
            steps: 0,
            choices: Vec::new(),
        };
        let mut counts = vec![0; self.weights.len()];
        self.listed = listing.go(0, 0, &mut counts).then(|| {
            let mut choices = listing.choices;
            choices.sort_unstable();
            Listed { from, choices }
        });
    }

    /// The least attainable total not below `bound` within the kinds' ranges; `below` when there is none under it.
    pub(super) fn raised(&self, kinds: &[Kind], bound: i64, below: i64) -> i64 {
        if bound >= below {
            return below;
        }
        let measured = match bound.rem_euclid(self.measure) {
            0 => bound,
            over => bound.saturating_add(self.measure - over),
        };
        match &self.listed {
            Some(listed) if listed.from <= measured => {
                let ranges = self.ranges(kinds);
                listed
                    .choices
                    .iter()
                    .find(|(total, counts)| {
                        *total >= measured
                            && counts
                                .iter()
                                .zip(&ranges)
                                .zip(&self.weights)
                                .all(|((count, (least, most)), &weight)| weight == 0 || (least..=most).contains(&count))
                    })
                    .map_or(below, |&(total, _)| total.min(below))
            }
            _ => measured.min(below),
        }
    }
}

struct Listing<'a> {
    weights: &'a [i64],
    ranges: &'a [(u32, u32)],
    rest: &'a [i64],
    from: i64,
    below: i64,
    steps: u32,
    choices: Vec<(i64, Vec<u32>)>,
}

impl Listing<'_> {
    fn go(&mut self, at: usize, total: i64, counts: &mut Vec<u32>) -> bool {
        self.steps += 1;
        if self.steps > MOST_STEPS || self.choices.len() > MOST_CHOICES {
            return false;
        }
        if at == self.weights.len() {
            if total >= self.from {
                self.choices.push((total, counts.clone()));
            }
            return true;
        }
        let (weight, (least, most)) = (self.weights[at], self.ranges[at]);
        let room = self.below - 1 - total;
        let most = if weight == 0 { least } else { most.min((room / weight).clamp(0, i64::from(u32::MAX)) as u32) };
        // What the groups after this one cannot bring must come from this one.
        let missing = self.from.saturating_sub(total).saturating_sub(self.rest[at + 1]);
        let least = if weight > 0 && missing > 0 {
            least.max(((missing + weight - 1) / weight).min(i64::from(u32::MAX)) as u32)
        } else {
            least
        };
        for count in least..=most {
            counts[at] = count;
            if !self.go(at + 1, total + weight * i64::from(count), counts) {
                return false;
            }
        }
        true
    }
}
