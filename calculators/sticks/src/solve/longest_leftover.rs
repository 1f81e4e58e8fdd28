//! Among the cheapest plans with the fewest sticks, the one with the longest leftover.
//!
//! One stick of a kind is made shorter and forced into the plan. Whether a plan of the least weight still exists falls
//! one way only as the stick gets shorter, so halving finds the shortest, kind by kind.

use std::rc::Rc;

use super::greedy::Choice;
use super::problem::{Kind, Origin, Problem};
use super::search::{Patience, Search};
use crate::certificate::{Branch, Leftover};

/// What came of it.
pub(super) struct Longest {
    /// A plan with the longest leftover found, if it is not the one given.
    pub(super) choice: Option<Choice>,
    pub(super) proofs: Vec<Leftover>,
    pub(super) proved: bool,
}

enum Trial {
    Plan(Choice),
    None(Vec<Branch>),
    Unknown,
}

/// The longest leftover of a choice, in the instance's unit.
pub(super) fn longest_of(choice: &Choice, problem: &Problem, origin: &Origin) -> i64 {
    choice
        .sticks
        .iter()
        .map(|(kind, pattern, _)| origin.sticks[kind - 1].0 - fill_of(pattern, problem, origin))
        .max()
        .unwrap_or(0)
        .max(0)
}

fn fill_of(pattern: &[(u16, u16)], problem: &Problem, origin: &Origin) -> i64 {
    problem.length_of(pattern) as i64 * origin.unit
}

/// Seeks the longest leftover among plans that weigh what `best` weighs.
pub(super) fn longest_leftover(
    search: &Search,
    origin: &Origin,
    best: &Choice,
    nodes: u32,
    patience: &mut Patience,
) -> Longest {
    let problem = &search.problem;
    let shortest = problem.sizes.last().map_or(0, |&size| size as i64);
    let mut longest = longest_of(best, problem, origin);
    let mut found = Longest { choice: None, proofs: Vec::new(), proved: true };
    for kind in (1..problem.kinds.len()).rev() {
        let (length, _, _) = origin.sticks[kind - 1];
        if problem.kinds[kind].most == 0 {
            continue;
        }
        let fill_for = |leftover: i64| (length - leftover).div_euclid(origin.unit);
        // Sizes up to `open` may still do better; below `tried` nothing does.
        let mut open = fill_for(longest + 1);
        let mut tried = shortest;
        let mut proof: Option<(i64, Vec<Branch>)> = None;
        let mut surely = true;
        let mut first = true;
        while tried <= open {
            let fill = if first { open } else { tried + (open - tried) / 2 };
            first = false;
            match trial(search, kind, fill as f64, best.weight, nodes, patience) {
                Trial::Plan(choice) => {
                    longest = longest.max(longest_of(&choice, problem, origin));
                    found.choice = Some(choice);
                    open = fill_for(longest + 1).min(fill - 1);
                }
                Trial::None(cases) => {
                    proof = Some((fill, cases));
                    surely = true;
                    tried = fill + 1;
                }
                Trial::Unknown => {
                    surely = false;
                    tried = fill + 1;
                }
            }
            if patience.stopped {
                found.proved = false;
                return found;
            }
        }
        match proof {
            Some((fill, cases)) => {
                // Rounding down to the sizes' measure lost nothing: no sum of sizes lies between.
                found.proofs.push(Leftover { stick: kind - 1, fill: (fill + 1) * origin.unit - 1, cases });
                found.proved &= surely;
            }
            None => found.proved &= surely,
        }
    }
    found
}

/// Whether a plan of the given weight exists with one stick of a kind filled to no more than `fill`.
fn trial(search: &Search, kind: usize, fill: f64, weight: i64, nodes: u32, patience: &mut Patience) -> Trial {
    let mut problem = search.problem.clone();
    let Kind { weight: one, most, .. } = problem.kinds[kind];
    if most < u32::MAX {
        problem.kinds[kind].most = most.saturating_sub(1);
    }
    let special = problem.kinds.len();
    problem.kinds.push(Kind { capacity: fill, weight: one, least: 1, most: 1 });
    let mut pool = search.pool.clone();
    let fits: Vec<Vec<(u16, u16)>> = (0..pool.len())
        .filter(|&column| pool.kind(column) != 0 && pool.worth(column, &problem.sizes) <= fill)
        .map(|column| pool.pattern(column).to_vec())
        .collect();
    for pattern in fits {
        pool.add(special, &pattern);
    }
    let start = search.root.as_ref().map(|root| {
        let mut master = (**root).clone();
        master.add_kind(one);
        Rc::new(master)
    });
    let mut again = Search::new(problem, pool, weight + 1);
    again.enough = weight;
    let mut allowed = Patience { keep_going: patience.keep_going, nodes, stopped: false };
    let settled = again.run(start, &mut allowed);
    patience.stopped |= allowed.stopped;
    match again.best {
        Some(mut choice) => {
            for stick in &mut choice.sticks {
                if stick.0 == special {
                    stick.0 = kind;
                }
            }
            Trial::Plan(choice)
        }
        None if settled => Trial::None(again.tree),
        None => Trial::Unknown,
    }
}
