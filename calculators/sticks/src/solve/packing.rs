//! Whether given pieces fit on given sticks at all: every way is tried, within a count of steps.
//!
//! The longest piece left is placed next, with every filling around it that leaves no more waste than there is to
//! spare and no piece out that would still fit (such a piece could be moved in without harm). States that failed are
//! remembered.

use std::collections::HashSet;

use super::columns::Pattern;

/// A way to cut `need` from `sticks`, given as (capacity, how many): for each stick the index of its kind among those, and
/// its pieces. None when there is none, or when the steps run out first.
pub(super) fn packed(sizes: &[f64], need: &[u32], sticks: &[(f64, u32)], steps: u32) -> Option<Vec<(usize, Pattern)>> {
    let length: f64 = sizes.iter().zip(need).map(|(size, &count)| size * f64::from(count)).sum();
    let held: f64 = sticks.iter().map(|&(capacity, count)| capacity * f64::from(count)).sum();
    if length > held {
        return None;
    }
    let mut trial =
        Trial { sizes, need: need.to_vec(), left: sticks.to_vec(), steps, failed: HashSet::new(), placed: Vec::new() };
    trial.go(held - length)?.then_some(trial.placed)
}

struct Trial<'a> {
    sizes: &'a [f64],
    need: Vec<u32>,
    left: Vec<(f64, u32)>,
    steps: u32,
    failed: HashSet<Vec<u32>>,
    placed: Vec<(usize, Pattern)>,
}

impl Trial<'_> {
    /// None when the steps ran out.
    fn go(&mut self, spare: f64) -> Option<bool> {
        let Some(first) = self.need.iter().position(|&count| count > 0) else { return Some(true) };
        let state: Vec<u32> = self.need.iter().copied().chain(self.left.iter().map(|&(_, count)| count)).collect();
        if self.failed.contains(&state) {
            return Some(false);
        }
        let mut complete = true;
        for stick in 0..self.left.len() {
            let (capacity, count) = self.left[stick];
            if count == 0 || capacity < self.sizes[first] {
                continue;
            }
            self.left[stick].1 -= 1;
            self.need[first] -= 1;
            let mut pattern = vec![(first as u16, 1)];
            let done = self.fill(stick, first, capacity - self.sizes[first], spare, &mut pattern);
            self.need[first] += 1;
            self.left[stick].1 += 1;
            match done {
                Some(true) => return Some(true),
                Some(false) => {}
                None => complete = false,
            }
            if self.steps == 0 {
                return None;
            }
        }
        if !complete {
            return None;
        }
        if self.failed.len() < 200_000 {
            self.failed.insert(state);
        }
        Some(false)
    }

    /// Fills the room left on a stick in every way from the size `from` on.
    fn fill(&mut self, stick: usize, from: usize, room: f64, spare: f64, pattern: &mut Pattern) -> Option<bool> {
        self.steps = self.steps.checked_sub(1)?;
        let mut reachable = 0.0;
        for size in from..self.sizes.len() {
            if self.need[size] > 0 && self.sizes[size] <= room {
                reachable += self.sizes[size] * f64::from(self.need[size]);
                if reachable >= room {
                    break;
                }
            }
        }
        if room - reachable > spare {
            return Some(false);
        }
        for size in from..self.sizes.len() {
            if self.need[size] == 0 || self.sizes[size] > room {
                continue;
            }
            self.need[size] -= 1;
            match pattern.last_mut() {
                Some((last, count)) if usize::from(*last) == size => *count += 1,
                _ => pattern.push((size as u16, 1)),
            }
            let done = self.fill(stick, size, room - self.sizes[size], spare, pattern);
            match pattern.last_mut() {
                Some((_, count)) if *count > 1 => *count -= 1,
                _ => {
                    pattern.pop();
                }
            }
            self.need[size] += 1;
            match done {
                Some(false) => {}
                other => return other,
            }
        }
        let full =
            (0..self.sizes.len()).rev().find(|&size| self.need[size] > 0).is_none_or(|least| self.sizes[least] > room);
        if !full || room > spare {
            return Some(false);
        }
        self.placed.push((stick, pattern.clone()));
        let done = self.go(spare - room);
        if done != Some(true) {
            self.placed.pop();
        }
        done
    }
}
