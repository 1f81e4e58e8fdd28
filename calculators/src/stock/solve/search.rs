//! Branch and price: blends of patterns give bounds, dives give plans, splits on stick counts close what is between.

use std::rc::Rc;

use super::super::certificate::{Branch, Leaf};
use super::best_patterns::{Knapsack, Stopped};
use super::bounding::stand_in_amount;
use super::columns::Pool;
use super::dive::Dive;
use super::greedy::Choice;
use super::master::Master;
use super::packing::Packing;
use super::problem::{Kind, Problem};
use super::repair::Repair;
use super::totals::Totals;

/// What one more round of dives through the cases left over counts for, in cases.
const ROUND_NODES: u32 = 4_000;

/// What may still be asked of the search: a say in stopping, from the caller, and counted work.
pub(super) struct Patience<'a> {
    /// False when the answer is wanted now.
    pub(super) keep_going: &'a mut dyn FnMut() -> bool,
    /// Nodes of the tree that may be solved.
    pub(super) nodes: u32,
    pub(super) stopped: bool,
}

impl Patience<'_> {
    pub(super) fn goes_on(&mut self) -> bool {
        if !self.stopped && !(self.keep_going)() {
            self.stopped = true;
        }
        !self.stopped
    }
}

/// The search on one problem.
#[derive(Clone)]
pub(super) struct Search {
    pub(super) problem: Problem,
    pub(super) pool: Pool,
    pub(super) knapsack: Knapsack,
    pub(super) totals: Totals,
    /// Values are whole numbers at this scale: a power of two.
    pub(super) scale: f64,
    /// Plans must weigh less than this.
    pub(super) below: i64,
    pub(super) best: Option<Choice>,
    /// A plan that weighs no more than this will do.
    pub(super) enough: i64,
    pub(super) tree: Vec<Branch>,
    /// The least total not excluded.
    pub(super) bound: i64,
    /// The first blend, before any split.
    pub(super) root: Option<Rc<Master>>,
    /// Cases that can be split no further and have no plan yet.
    hard: Vec<Node>,
}

#[derive(Clone)]
struct Node {
    kinds: Vec<Kind>,
    from: Rc<Master>,
    /// Bound of the case it was split from, and the leaf that gives it.
    bound: i64,
    leaf: Leaf,
    place: usize,
    depth: u32,
}

impl Search {
    /// A search that looks for plans lighter than `below`.
    pub(super) fn new(problem: Problem, pool: Pool, below: i64) -> Self {
        let heaviest = problem.kinds.iter().skip(1).map(|kind| kind.weight).max().unwrap_or(1).max(1);
        let exponent = (40 - (64 - heaviest.leading_zeros() as i32)).max(0);
        let totals = Totals::new(&problem.kinds);
        Self {
            problem,
            pool,
            knapsack: Knapsack::default(),
            totals,
            scale: f64::from(2_u32).powi(exponent),
            below,
            best: None,
            enough: i64::MIN,
            tree: Vec::new(),
            bound: 0,
            root: None,
            hard: Vec::new(),
        }
    }

    /// Takes a plan if it is lighter than all before.
    pub(super) fn offer(&mut self, choice: Choice) {
        if choice.weight < self.below {
            self.below = choice.weight;
            self.best = Some(choice);
        }
    }

    /// Runs until the bound meets the best plan, or patience ends. True when it has been proved.
    ///
    /// A plan of weight `enough` or less ends the search as well.
    pub(super) fn run(&mut self, start: Option<Rc<Master>>, patience: &mut Patience) -> bool {
        let start = match start {
            Some(start) => start,
            None => {
                let master = Master::new(&self.problem, &mut self.pool);
                // The plan at once is a good beginning for the blend.
                for (kind, pattern, _) in self.best.iter().flat_map(|best| &best.sticks) {
                    self.pool.add(*kind, pattern);
                }
                Rc::new(master)
            }
        };
        // A bound from before comes with its leaf.
        let leaf = match self.tree.first() {
            Some(Branch::Leaf(leaf)) => leaf.clone(),
            _ => Leaf::default(),
        };
        self.tree.clear();
        self.tree.push(Branch::Open);
        let mut open =
            vec![Node { kinds: self.problem.kinds.clone(), from: start, bound: self.bound, leaf, place: 0, depth: 0 }];
        while let Some(at) = (0..open.len()).min_by_key(|&at| (open[at].bound, u32::MAX - open[at].depth)) {
            let node = open.swap_remove(at);
            self.bound = node.bound.min(self.below);
            if node.bound >= self.below {
                self.tree[node.place] = Branch::Leaf(node.leaf);
                continue;
            }
            if self.below <= self.enough {
                return true;
            }
            if patience.nodes == 0 || !patience.goes_on() {
                return false;
            }
            patience.nodes -= 1;
            let bound = node.bound;
            if !self.explore(node, &mut open, patience) {
                self.bound = bound.min(open.iter().map(|node| node.bound).min().unwrap_or(i64::MAX));
                return false;
            }
        }
        self.take_on_hard(patience)
    }

    /// Dives deeper in the cases left over, from the lowest bound up, for as long as counted work is left. True when no case is left
    /// that could hold a better plan.
    fn take_on_hard(&mut self, patience: &mut Patience) -> bool {
        let mut hard = std::mem::take(&mut self.hard);
        let mut round = 0;
        while !hard.is_empty() {
            for node in &hard {
                self.bound = node.bound.min(self.below);
                // Another turn is another way down; later rounds begin where the earlier ones have not been.
                let (first, retries) = if round == 0 { (0, 400) } else { (12 * (round - 1), 2_000) };
                let effort: Vec<(usize, u32)> = (first..first + 12).map(|turn| (turn, retries)).collect();
                self.dive_from(&node.from, &node.kinds, (node.bound, &node.leaf), &effort, patience);
            }
            hard.retain(|node| node.bound < self.below);
            hard.sort_by_key(|node| node.bound);
            round += 1;
            if round >= 2 && (patience.nodes < ROUND_NODES || patience.stopped) {
                break;
            }
            patience.nodes = patience.nodes.saturating_sub(ROUND_NODES);
        }
        self.bound = hard.iter().map(|node| node.bound).min().unwrap_or(self.below);
        hard.is_empty()
    }

    /// Solves one node and puts its parts on the heap. False when it could be neither closed nor split.
    fn explore(&mut self, node: Node, open: &mut Vec<Node>, patience: &mut Patience) -> bool {
        let mut master = (*node.from).clone();
        let kinds = node.kinds;
        for (index, kind) in kinds.iter().enumerate().skip(1) {
            if kind.most < u32::MAX {
                master.set_most(index, kind.most, &self.pool);
            }
            if kind.least > 0 {
                master.set_least(index, kind.least, &mut self.pool);
            }
        }
        if master.repair(&self.pool) == Repair::Stuck {
            let mut problem = self.problem.clone();
            problem.kinds.clone_from(&kinds);
            master = Master::new(&problem, &mut self.pool);
            if master.repair(&self.pool) == Repair::Stuck {
                return false;
            }
        }
        let Ok(mut solved) = self.solve(&mut master, &kinds, &node.leaf, patience) else { return false };
        // The stand-in still carries something: a heavier penalty shows whether it must.
        let mut heavier = 0;
        while solved.bound < self.below && heavier < 4 && stand_in_amount(&master, &self.pool) > 1e-6 {
            heavier += 1;
            master.raise_stand_in(master.stand_in_weight() * 8.0, &self.pool);
            match self.solve(&mut master, &kinds, &node.leaf, patience) {
                Ok(again) if again.bound >= solved.bound => solved = again,
                Ok(_) => {}
                Err(Stopped) => return false,
            }
        }
        let settled = solved.settled;
        let (mut bound, leaf) =
            if solved.bound >= node.bound { (solved.bound, solved.leaf) } else { (node.bound, node.leaf) };
        self.tree[node.place] = Branch::Leaf(leaf.clone());
        if node.depth == 0 {
            self.bound = bound.min(self.below);
            self.root = Some(Rc::new(master.clone()));
        }
        if bound >= self.below {
            return true;
        }
        master.focus(&mut self.pool);
        // With one kind there is nothing to split on: the dives alone must find the plan.
        let alone = kinds.len() == 2;
        let effort: &[(usize, u32)] = match node.depth {
            0 if alone => &[(0, 12), (2, 8), (4, 8), (6, 8), (8, 8), (10, 8), (1, 5)],
            0 => &[(0, 25), (2, 10), (4, 10), (1, 5)],
            _ => &[(0, 0)],
        };
        self.dive_from(&master, &kinds, (bound, &leaf), effort, patience);
        self.totals.list(&self.problem.kinds, if node.depth == 0 { bound } else { i64::MAX }, self.below);
        bound = self.totals.raised(&kinds, bound, self.below).max(bound);
        if bound >= self.below {
            return true;
        }
        if patience.stopped {
            return false;
        }
        let split = if settled { self.split_at(&master, &kinds) } else { None };
        let Some((kind, at_most)) = split else {
            let whole = Dive {
                master: master.clone(),
                need: self.problem.need.clone(),
                used: vec![0; kinds.len()],
                choice: Choice::default(),
                turns: Vec::new(),
                next: 0,
            };
            if self.pack_rest(&whole, &kinds, 200_000) == Packing::None {
                self.tree[node.place] = Branch::Searched;
                return true;
            }
            let effort: Vec<(usize, u32)> = (0..12).map(|turn| (turn, 60)).collect();
            self.dive_from(&master, &kinds, (bound, &leaf), &effort, patience);
            if self.below > bound && !patience.stopped {
                self.hard.push(Node {
                    kinds,
                    from: Rc::new(master),
                    bound,
                    leaf,
                    place: node.place,
                    depth: node.depth,
                });
            }
            return !patience.stopped;
        };
        let master = Rc::new(master);
        let (fewer, more) = (self.tree.len(), self.tree.len() + 1);
        self.tree.push(Branch::Open);
        self.tree.push(Branch::Open);
        self.tree[node.place] = Branch::Split { stick: kind - 1, at_most, fewer, more };
        for (place, is_more) in [(fewer, false), (more, true)] {
            let mut kinds = kinds.clone();
            if is_more {
                kinds[kind].least = at_most + 1;
            } else {
                kinds[kind].most = at_most;
            }
            open.push(Node {
                kinds,
                from: Rc::clone(&master),
                bound,
                leaf: leaf.clone(),
                place,
                depth: node.depth + 1,
            });
        }
        true
    }

    /// The kind to split on, and the most of it on one side.
    fn split_at(&self, master: &Master, kinds: &[Kind]) -> Option<(usize, u32)> {
        let mut counts = vec![0.0; kinds.len()];
        for (column, amount) in master.blend() {
            counts[self.pool.kind(column)] += amount;
        }
        let mut best: Option<(f64, usize, u32)> = None;
        for kind in 1..kinds.len() {
            let part = counts[kind] - counts[kind].floor();
            let off = part.min(1.0 - part);
            if off > 1e-5 && kinds[kind].least < kinds[kind].most {
                let score = off;
                if best.is_none_or(|(most, ..)| score > most) {
                    best = Some((score, kind, counts[kind].floor() as u32));
                }
            }
        }
        if let Some((_, kind, at_most)) = best {
            return Some((kind, at_most));
        }
        // All counts are whole: pin down one that is not pinned yet.
        (1..kinds.len()).filter(|&kind| kinds[kind].least < kinds[kind].most).find_map(|kind| {
            let count = counts[kind].round() as u32;
            let Kind { least, most, .. } = kinds[kind];
            if self.problem.kinds[kind].capacity < self.problem.sizes.last().copied().unwrap_or(0.0) {
                return None;
            }
            if count > least {
                Some((kind, count - 1))
            } else if count < most {
                Some((kind, count))
            } else {
                None
            }
        })
    }
}
