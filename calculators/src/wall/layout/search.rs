//! The layout search: how many boards go into each run, so that all bays of a wall look alike and look like the wish.
//!
//! Runs lie between fixed boards (corners, opening edges, nosings) and are independent of each other: only their counts are
//! chosen. What a choice costs is the spread (widest bay less narrowest) plus the distance of the mean bay from the wish, in
//! lengths, one to one. Without the second term the evenest wall always has too many boards, because narrow bays differ less.
//!
//! Not a search over all products of counts, which grows with the power of the runs: for a given total of boards the mean is
//! already settled, and within a window of bay widths each run's counts form an unbroken row, so the totals that fit a window
//! do as well. One sweep over the sorted bay widths finds the least spread of every total, exactly.

use std::collections::BTreeMap;

use crate::quantity::{Exact, Length};

/// What is asked of the search.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ask {
    /// The clear length of each run between its fixed boards or ends.
    pub runs: Vec<Exact>,
    /// Width of a board.
    pub board: Length,
    /// The bay that is wished for; none where a number of boards is.
    pub target: Option<Exact>,
    /// Whether the boards of each run are counted in the totals; the others take the fewest boards that keep the spread.
    pub counted: Vec<bool>,
    /// Narrowest bay where a run allows it.
    pub bay_min: Exact,
    /// Widest bay where a run allows it.
    pub bay_max: Exact,
}

/// The evenest choice with one total of boards.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Boards in each run.
    pub counts: Vec<usize>,
    /// The bay of each run.
    pub bays: Vec<Exact>,
    /// Boards in all counted runs together.
    pub total: usize,
    /// Widest bay less narrowest.
    pub spread: Exact,
    /// All clear width shared out over all bays.
    pub mean: Exact,
}

impl Choice {
    /// Distance of the mean bay from a wish; nothing where none was given.
    pub fn off(&self, target: Option<Exact>) -> Exact {
        target.map_or(Exact::ZERO, |target| (self.mean - target).size())
    }

    /// Spread and distance from the wish, one to one.
    pub fn cost(&self, target: Option<Exact>) -> Exact {
        self.spread + self.off(target)
    }
}

/// One way to fill one run.
#[derive(Clone, Copy)]
struct Fill {
    run: usize,
    boards: usize,
    bay: Exact,
}

/// The evenest choice for every total of boards that can be had, fewest boards first.
///
/// Runs that cannot meet the limits take the count that comes nearest to them. Empty when there are no runs.
pub fn evenest_by_total(ask: &Ask) -> Vec<Choice> {
    let fills: Vec<Vec<Fill>> = (0..ask.runs.len()).map(|run| fills(ask, run)).collect();
    if fills.is_empty() || fills.iter().any(Vec::is_empty) {
        return Vec::new();
    }
    let windows = least_windows(&fills, &ask.counted);
    windows.into_iter().filter_map(|(total, (low, high))| choose(&fills, ask, total, low, high)).collect()
}

/// The choices worth placing: those with the best lower bound of their score, at most `most` of them, the evenest of all among them.
///
/// With a wished number of boards that number is the first of them, and the others are its nearest neighbours; empty where it cannot be
/// had. The second value is the totals that can be had, least and most.
pub fn candidates(ask: &Ask, wished: Option<usize>, most: usize) -> (Vec<Choice>, Option<(usize, usize)>) {
    let fills: Vec<Vec<Fill>> = (0..ask.runs.len()).map(|run| fills(ask, run)).collect();
    if fills.is_empty() || fills.iter().any(Vec::is_empty) {
        return (Vec::new(), None);
    }
    let windows = least_windows(&fills, &ask.counted);
    let reach = windows.keys().next().copied().zip(windows.keys().next_back().copied());
    let all = ask.runs.iter().fold(Exact::ZERO, |sum, run| sum + *run);
    let runs = i64::try_from(ask.runs.len()).unwrap_or(i64::MAX);
    let bound = |total: usize, (low, high): (Exact, Exact)| {
        let boards = i64::try_from(total).unwrap_or(i64::MAX);
        let mean = (all - ask.board.exact() * boards).over(boards + runs).unwrap_or(Exact::ZERO);
        high - low + ask.target.map_or(Exact::ZERO, |target| (mean - target).size())
    };
    let mut totals: Vec<(usize, (Exact, Exact))> = windows.into_iter().collect();
    let spread = |window: &(Exact, Exact)| window.1 - window.0;
    match wished {
        Some(wished) => {
            totals.sort_by_key(|(total, window)| (total.abs_diff(wished), spread(window), *total));
            if totals.first().is_none_or(|(total, _)| *total != wished) {
                return (Vec::new(), reach);
            }
        }
        None => {
            totals.sort_by_key(|(total, window)| (bound(*total, *window), *total));
            let evenest = (0..totals.len()).min_by_key(|at| (spread(&totals[*at].1), *at));
            if let Some(at) = evenest.filter(|at| *at > 1) {
                let even = totals.remove(at);
                totals.insert(1, even);
            }
        }
    }
    totals.truncate(most);
    let found = totals.into_iter().filter_map(|(total, (low, high))| choose(&fills, ask, total, low, high));
    (found.collect(), reach)
}

/// The choices to offer: the nearest to the wish, then the evenest of all if it is another, then the next best.
///
/// All have different totals. Deterministic: equal costs go to fewer boards.
pub fn offered(mut choices: Vec<Choice>, target: Option<Exact>, most: usize) -> Vec<Choice> {
    choices.sort_by_key(|choice| (choice.cost(target), choice.total));
    let evenest = choices.iter().enumerate().min_by_key(|(at, choice)| (choice.spread, *at)).map(|(at, _)| at);
    if let Some(at) = evenest.filter(|at| *at > 1) {
        let even = choices.remove(at);
        choices.insert(1, even);
    }
    choices.truncate(most);
    choices
}

/// All counts of one run within the limits, or the one nearest to them; bays grow narrower from first to last.
fn fills(ask: &Ask, run: usize) -> Vec<Fill> {
    let length = ask.runs[run];
    let fill = |boards: usize| {
        let count = i64::try_from(boards).ok()?;
        let bay = (length - ask.board.exact() * count).over(count + 1)?;
        bay.is_positive().then_some(Fill { run, boards, bay })
    };
    let (mut within, mut nearest): (Vec<Fill>, Option<(Exact, Fill)>) = (Vec::new(), None);
    for boards in 0.. {
        let Some(fill) = fill(boards) else { break };
        if ask.bay_min <= fill.bay && fill.bay <= ask.bay_max {
            within.push(fill);
        }
        let off = (ask.bay_min - fill.bay).max(fill.bay - ask.bay_max);
        if nearest.is_none_or(|(least, _)| off < least) {
            nearest = Some((off, fill));
        }
        if fill.bay < ask.bay_min {
            break;
        }
    }
    if within.is_empty() { nearest.into_iter().map(|(_, fill)| fill).collect() } else { within }
}

/// For each total, the narrowest window of bay widths in which it can be had.
fn least_windows(fills: &[Vec<Fill>], counted: &[bool]) -> BTreeMap<usize, (Exact, Exact)> {
    let mut sorted: Vec<Fill> = fills.iter().flatten().copied().collect();
    sorted.sort_by_key(|fill| (fill.bay, fill.run));
    let mut best: BTreeMap<usize, (Exact, Exact)> = BTreeMap::new();
    for (start, lowest) in sorted.iter().enumerate() {
        if start > 0 && sorted[start - 1].bay == lowest.bay {
            continue;
        }
        // Fewest and most boards per run within the window so far.
        let mut reach: Vec<Option<(usize, usize)>> = vec![None; fills.len()];
        let mut missing = fills.len();
        let (mut fewest, mut most) = (0, 0);
        let mut known: Option<(usize, usize)> = None;
        for fill in &sorted[start..] {
            let counts = |boards: usize| if counted[fill.run] { boards } else { 0 };
            match &mut reach[fill.run] {
                slot @ None => {
                    *slot = Some((fill.boards, fill.boards));
                    missing -= 1;
                    fewest += counts(fill.boards);
                    most += counts(fill.boards);
                }
                // Wider bays come later, so the count can only go down.
                Some((few, _)) => {
                    fewest -= counts(*few - fill.boards);
                    *few = fill.boards;
                }
            }
            if missing > 0 {
                continue;
            }
            let fresh = match known {
                None => fewest..=most,
                Some((from, _)) if fewest < from => fewest..=from - 1,
                Some(_) => continue,
            };
            for total in fresh {
                let spread = fill.bay - lowest.bay;
                if best.get(&total).is_none_or(|(low, high)| spread < *high - *low) {
                    best.insert(total, (lowest.bay, fill.bay));
                }
            }
            known = Some((fewest, most));
        }
    }
    best
}

/// Counts with one total inside a window: the widest bays are divided first, so no run stands out.
fn choose(fills: &[Vec<Fill>], ask: &Ask, total: usize, low: Exact, high: Exact) -> Option<Choice> {
    let inside: Vec<Vec<Fill>> = fills
        .iter()
        .map(|run| run.iter().copied().filter(|fill| low <= fill.bay && fill.bay <= high).collect())
        .collect();
    let mut at = vec![0_usize; inside.len()];
    let boards = |at: &[usize]| -> Option<usize> {
        let runs = inside.iter().zip(at).zip(&ask.counted);
        runs.map(|((run, index), counted)| run.get(*index).map(|fill| if *counted { fill.boards } else { 0 })).sum()
    };
    while boards(&at)? < total {
        let next = (0..inside.len())
            .filter(|run| ask.counted[*run] && at[*run] + 1 < inside[*run].len())
            .max_by_key(|run| (inside[*run][at[*run]].bay, std::cmp::Reverse(*run)))?;
        at[next] += 1;
    }
    let picked: Vec<Fill> = inside.iter().zip(&at).filter_map(|(run, index)| run.get(*index).copied()).collect();
    let bays: Vec<Exact> = picked.iter().map(|fill| fill.bay).collect();
    let clear = picked.iter().fold(Exact::ZERO, |sum, fill| {
        sum + ask.runs[fill.run] - ask.board.exact() * i64::try_from(fill.boards).unwrap_or(0)
    });
    let count: i64 = picked.iter().map(|fill| i64::try_from(fill.boards + 1).unwrap_or(1)).sum();
    Some(Choice {
        counts: picked.iter().map(|fill| fill.boards).collect(),
        total,
        spread: *bays.iter().max()? - *bays.iter().min()?,
        mean: clear.over(count)?,
        bays,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::print;
    use proptest::prelude::*;

    fn in8(eighths: i64) -> Exact {
        Length::sixty_fourths(eighths * 8).exact()
    }

    /// Two unequal windows: runs 29, 42-1/2, 30-3/8, 59-1/2, 42-1/8, boards 2-1/2, bay 13. Common practice arithmetic, by hand.
    fn two_windows() -> Ask {
        Ask {
            runs: vec![in8(232), in8(340), in8(243), in8(476), in8(337)],
            board: Length::sixty_fourths(160),
            target: Some(Length::inches(13).exact()),
            counted: vec![true; 5],
            bay_min: Length::inches(7).exact(),
            bay_max: Length::inches(22).exact(),
        }
    }

    #[test]
    fn unequal_windows_match_the_wish_first_and_the_evenest_second() {
        let ask = two_windows();
        let offers = offered(evenest_by_total(&ask), ask.target, 3);
        assert_eq!(offers[0].counts, [1, 2, 1, 3, 2]);
        let bays: Vec<_> = offers[0].bays.iter().map(|bay| print::inches(*bay, 64)).collect();
        assert_eq!(bays, ["13 1/4 in", "12 1/2 in", "13 15/16 in", "13 in", "12 3/8 in"]);
        assert_eq!(print::inches(offers[0].spread, 64), "1 9/16 in");
        // The least spread of all has six more boards at eight inches: offered, never first.
        assert_eq!(offers[1].counts, [2, 3, 2, 5, 3]);
        assert!((offers[1].spread.in_mm() / 25.4 - 0.917).abs() < 0.0005);
        assert_eq!(offers.len(), 3);
    }

    #[test]
    fn unequal_windows_in_millimetres() {
        // Common practice arithmetic, worked by hand with boards of 64: another board, other numbers.
        let mm = |mm: i64| Length::mm(mm).exact();
        let ask = Ask {
            runs: vec![mm(737), mm(1079), mm(771), mm(1511), mm(1069)],
            board: Length::mm(64),
            target: Some(mm(330)),
            counted: vec![true; 5],
            bay_min: mm(180),
            bay_max: mm(560),
        };
        let offers = offered(evenest_by_total(&ask), ask.target, 3);
        assert_eq!(offers[0].counts, [1, 2, 1, 3, 2]);
        assert!((offers[0].spread.in_mm() - 39.8).abs() < 0.05);
    }

    #[test]
    fn a_run_too_short_for_the_limits_takes_what_comes_nearest() {
        let ask = Ask { runs: vec![Length::inches(4).exact()], counted: vec![true], ..two_windows() };
        assert_eq!(evenest_by_total(&ask)[0].counts, [0]);
        assert!(evenest_by_total(&Ask { runs: Vec::new(), ..ask }).is_empty());
    }

    /// Every product of counts, one by one: slow and obvious.
    fn least_spread_by_hand(ask: &Ask) -> BTreeMap<usize, Exact> {
        let fills: Vec<Vec<Fill>> = (0..ask.runs.len()).map(|run| super::fills(ask, run)).collect();
        let mut vectors = vec![Vec::new()];
        for run in &fills {
            vectors = vectors
                .into_iter()
                .flat_map(|start: Vec<Fill>| run.iter().map(move |fill| [start.clone(), vec![*fill]].concat()))
                .collect();
        }
        let mut best = BTreeMap::new();
        for vector in vectors {
            let bays = vector.iter().map(|fill| fill.bay);
            let spread = bays.clone().max().expect("runs") - bays.min().expect("runs");
            let total = vector.iter().map(|fill| fill.boards).sum::<usize>();
            let slot = best.entry(total).or_insert(spread);
            *slot = spread.min(*slot);
        }
        best
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]
        #[test]
        fn the_sweep_finds_what_trying_everything_finds(eighths in prop::collection::vec(20_i64..700, 1..5)) {
            let ask = Ask { counted: vec![true; eighths.len()], runs: eighths.into_iter().map(in8).collect(), ..two_windows() };
            let ours: BTreeMap<_, _> =
                evenest_by_total(&ask).into_iter().map(|choice| (choice.total, choice.spread)).collect();
            prop_assert_eq!(ours, least_spread_by_hand(&ask));
        }
    }
}
