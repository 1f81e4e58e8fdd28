//! A plan at once, without proof: stick by stick, the kind that is cheapest for the length it fills.

use super::columns::Pattern;
use super::problem::{Kind, Problem, STAND_IN};

/// Sticks chosen so far: kind, pieces, how many alike.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Choice {
    pub(super) sticks: Vec<(usize, Pattern, u32)>,
    pub(super) weight: i64,
}

impl Choice {
    /// Adds sticks of one pattern.
    pub(super) fn push(&mut self, kind: usize, weight: i64, pattern: Pattern, times: u32) {
        self.weight = self.weight.saturating_add(weight.saturating_mul(i64::from(times)));
        self.sticks.push((kind, pattern, times));
    }
}

/// The pieces that go on one stick when the longest that still fits is always taken next.
pub(super) fn filled(problem: &Problem, need: &[u32], capacity: f64) -> (Pattern, f64) {
    let mut pattern = Pattern::new();
    let mut left = capacity;
    for (size, &length) in problem.sizes.iter().enumerate() {
        if need[size] > 0 && length <= left {
            let count = ((left / length) as u32).min(need[size]).min(60_000);
            pattern.push((size as u16, count as u16));
            left -= f64::from(count) * length;
        }
    }
    (pattern, capacity - left)
}

/// Completes a choice stick by stick. None when the kinds run out, or when a kind that must be used finds no piece,
/// or when the weight is not below `below`.
pub(super) fn completed(problem: &Problem, start: &Choice, need: &[u32], used: &[u32], below: i64) -> Option<Choice> {
    let mut choice = start.clone();
    let mut need = need.to_vec();
    let mut used = used.to_vec();
    let mut fills: Vec<Option<(Pattern, f64)>> = vec![None; problem.kinds.len()];
    loop {
        let left: f64 = need.iter().zip(&problem.sizes).map(|(&count, size)| f64::from(count) * size).sum();
        let owed = (1..problem.kinds.len()).find(|&kind| used[kind] < problem.kinds[kind].least);
        if left == 0.0 {
            return if owed.is_none() && choice.weight < below { Some(choice) } else { None };
        }
        if choice.weight >= below {
            return None;
        }
        let mut best: Option<(usize, f64)> = None;
        let mut last: Option<usize> = None;
        for kind in 1..problem.kinds.len() {
            let Kind { capacity, weight, most, .. } = problem.kinds[kind];
            if used[kind] >= most || owed.is_some_and(|owed| owed != kind) {
                continue;
            }
            // A fill stays good while all of its pieces are still needed and none that was out of stock came back.
            let stale = fills[kind].as_ref().is_none_or(|(pattern, _)| {
                pattern.iter().any(|&(size, count)| need[usize::from(size)] < u32::from(count))
            });
            if stale {
                fills[kind] = Some(filled(problem, &need, capacity));
            }
            let Some((_, length)) = &fills[kind] else { continue };
            if *length == 0.0 {
                continue;
            }
            if *length >= left && last.is_none_or(|last| weight < problem.kinds[last].weight) {
                last = Some(kind);
            }
            let rate = weight as f64 / length;
            if best.is_none_or(|(_, least)| rate < least) {
                best = Some((kind, rate));
            }
        }
        let (best, _) = best?;
        let kind = match last {
            Some(last) if problem.kinds[last].weight <= problem.kinds[best].weight => last,
            _ => best,
        };
        let (pattern, _) = fills[kind].clone()?;
        let alike = pattern.iter().map(|&(size, count)| need[usize::from(size)] / u32::from(count)).min().unwrap_or(1);
        let owed_now = problem.kinds[kind].least.saturating_sub(used[kind]);
        let times =
            alike.min(problem.kinds[kind].most - used[kind]).min(if owed_now > 0 { owed_now } else { u32::MAX });
        for &(size, count) in &pattern {
            need[usize::from(size)] -= u32::from(count) * times;
        }
        used[kind] += times;
        choice.push(kind, problem.kinds[kind].weight, pattern, times);
        debug_assert_ne!(kind, STAND_IN);
    }
}
