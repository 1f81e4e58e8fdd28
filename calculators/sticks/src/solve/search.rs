//! Branch and price: blends of patterns give bounds, dives give plans, splits close what is between: on the number of
//! sticks of a kind, and where all those are whole, on the number of sticks of a kind that hold given pieces.

use std::rc::Rc;

use super::best_patterns::{Knapsack, Stopped};
use super::bounding::stand_in_amount;
use super::columns::Pool;
use super::greedy::Choice;
use super::master::Master;
use super::problem::{Case, Held, Limit, Problem};
use super::repair::Repair;
use super::splitting::Split;
use super::totals::Totals;
use crate::certificate::{Branch, Leaf};

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
}

#[derive(Clone)]
struct Node {
    case: Case,
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
        let case = Case { kinds: self.problem.kinds.clone(), held: Vec::new() };
        let mut open = vec![Node { case, from: start, bound: self.bound, leaf, place: 0, depth: 0 }];
        while let Some(at) = (0..open.len()).min_by_key(|&at| (open[at].bound, !open[at].depth, !open[at].place)) {
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
        self.bound = self.below;
        true
    }

    /// Solves one node and puts its parts on the heap. False when it could be neither closed nor split.
    fn explore(&mut self, node: Node, open: &mut Vec<Node>, patience: &mut Patience) -> bool {
        let case = node.case;
        let mut master = (*node.from).clone();
        self.set_case(&mut master, &case);
        if master.repair(&self.pool) == Repair::Stuck {
            let mut problem = self.problem.clone();
            problem.kinds.clone_from(&case.kinds);
            master = Master::new(&problem, &mut self.pool);
            self.set_case(&mut master, &case);
            master.fill_up(&mut self.pool);
        }
        let Ok(mut solved) = self.solve(&mut master, &case, &node.leaf, patience) else { return false };
        // The stand-in still carries something: a heavier penalty shows whether it must.
        let mut heavier = 0;
        while solved.bound < self.below && heavier < 4 && stand_in_amount(&master, &self.pool) > 1e-6 {
            heavier += 1;
            master.raise_stand_in(master.stand_in_weight() * 8.0, &self.pool);
            match self.solve(&mut master, &case, &node.leaf, patience) {
                Ok(again) if again.bound >= solved.bound => solved = again,
                Ok(_) => {}
                Err(Stopped) => return false,
            }
        }
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
        let alone = case.kinds.len() == 2;
        let effort: &[(usize, u32)] = match node.depth {
            0 if alone => &[(0, 12), (2, 8), (4, 8), (6, 8), (8, 8), (10, 8), (1, 5)],
            0 => &[(0, 25), (2, 10), (4, 10), (1, 5)],
            _ => &[(0, 0)],
        };
        self.dive_from(&master, &case, (bound, &leaf), effort, patience);
        self.totals.list(&self.problem.kinds, if node.depth == 0 { bound } else { i64::MAX }, self.below);
        bound = self.totals.raised(&case.kinds, bound, self.below).max(bound);
        if bound >= self.below {
            return true;
        }
        if patience.stopped {
            return false;
        }
        let mut split = self.split_on_kinds(&master, &case);
        if split.is_none() {
            // With one kind all blends of a case weigh the same: a plan is found by looking, not by splitting.
            if alone && case.held.is_empty() {
                let effort: Vec<(usize, u32)> = (0..12).map(|turn| (turn, 60)).collect();
                self.dive_from(&master, &case, (bound, &leaf), &effort, patience);
                if self.below <= bound {
                    return true;
                }
            }
            split = self.split_on_pieces(&master);
        }
        let Some(Split { kind, holds, at_most }) = split else { return false };
        let master = Rc::new(master);
        let (fewer, more) = (self.tree.len(), self.tree.len() + 1);
        self.tree.push(Branch::Open);
        self.tree.push(Branch::Open);
        let told = holds.iter().map(|&(size, count)| (usize::from(size), u32::from(count))).collect();
        self.tree[node.place] = Branch::Split { stick: kind - 1, holds: told, at_most, fewer, more };
        for (place, limit) in [(fewer, Limit::Most(at_most)), (more, Limit::Least(at_most + 1))] {
            let mut case = case.clone();
            match limit {
                _ if !holds.is_empty() => case.held.push(Held { kind, holds: holds.clone(), limit }),
                Limit::Most(most) => case.kinds[kind].most = most,
                Limit::Least(least) => case.kinds[kind].least = least,
            }
            // The leaf so far holds for both parts: what is new in them bears no charge yet.
            let mut leaf = leaf.clone();
            leaf.held.resize(case.held.len(), 0);
            open.push(Node { case, from: Rc::clone(&master), bound, leaf, place, depth: node.depth + 1 });
        }
        true
    }

    /// Brings a blend's bounds to those of a case.
    fn set_case(&mut self, master: &mut Master, case: &Case) {
        for (index, kind) in case.kinds.iter().enumerate().skip(1) {
            if kind.most < u32::MAX {
                master.set_most(index, kind.most, &self.pool);
            }
            if kind.least > 0 {
                master.set_least(index, kind.least, &mut self.pool);
            }
        }
        if !case.held.is_empty() {
            master.set_held(&case.held, &mut self.pool);
        }
    }
}
