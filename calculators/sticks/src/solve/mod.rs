//! The search for the cheapest plan, then for the longest leftover: see `search` for how the parts work together.

mod best_patterns;
mod bounding;
mod columns;
mod dive;
mod greedy;
mod longest_leftover;
mod master;
mod packing;
mod problem;
mod repair;
mod rows;
mod search;
mod simplex;
mod splitting;
mod totals;

use super::certificate::{Branch, Certificate, Claim, Leaf};
use super::instance::{Instance, InstanceFault, Piece, Stick};
use super::plan::{CutStick, Plan, Reason, Status, leftover_of};
use columns::Pool;
use greedy::Choice;
use problem::{Kind, Origin, Problem};
use search::{Patience, Search};

/// How much work the search may do before it settles for the best plan found. Counted, so that the same question gets
/// the same answer on every machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Effort {
    /// Cases that may be looked at for the least price.
    pub cases: u32,
    /// Cases that may be looked at for each length tried for the longest leftover.
    pub leftover_cases: u32,
}

impl Effort {
    /// Enough for a house: every instance of this size we know is proved within it.
    pub const USUAL: Self = Self { cases: 20_000, leftover_cases: 2_000 };
}

/// More different lengths than this are planned without a blend: its memory grows with the square.
const MOST_LENGTHS: usize = 1_200;

/// The cheapest plan, with the fewest sticks at that price, then the longest leftover.
///
/// `keep_going` is asked again and again; when it says false, the best plan so far comes back with its bound.
/// # Errors
/// `InstanceFault` when a number of the instance is out of range.
/// # Source
/// Column generation after "A linear programming approach to the cutting-stock problem", Operations Research 9 (1961);
/// bounds after "A note on bounding a class of linear programming problems", Operations Research 38 (1990).
/// # Examples
/// ```
/// use sticks::instance::{Instance, Piece, Stick};
/// use sticks::plan::Status;
/// use sticks::solve::{Effort, plan};
/// let asked = Instance {
///     pieces: vec![Piece { length: 61, count: 3 }, Piece { length: 47, count: 5 }, Piece { length: 33, count: 4 }],
///     kerf: 0,
///     sticks: vec![Stick { length: 144, price: 20, available: None }],
/// };
/// let plan = plan(&asked, Effort::USUAL, &mut || true).unwrap();
/// assert_eq!((plan.cost, plan.stick_count, plan.status), (80, 4, Status::ProvedLeast));
/// ```
pub fn plan(instance: &Instance, effort: Effort, keep_going: &mut dyn FnMut() -> bool) -> Result<Plan, InstanceFault> {
    Ok(cheapest(instance, effort, keep_going)?.with_longest_leftover(effort, keep_going))
}

/// A plan of least price and fewest sticks, from which the search for the longest leftover can go on.
#[derive(Clone)]
pub struct Draft {
    plan: Plan,
    state: Option<(Box<Search>, Origin)>,
}

/// The cheapest plan, with the fewest sticks at that price; its leftover is not looked into yet.
///
/// # Errors
/// `InstanceFault` when a number of the instance is out of range.
pub fn cheapest(
    instance: &Instance,
    effort: Effort,
    keep_going: &mut dyn FnMut() -> bool,
) -> Result<Draft, InstanceFault> {
    instance.checked()?;
    let (problem, origin) = problem::from_instance(instance);
    if let Some(reason) = too_long(&origin) {
        return Ok(Draft { plan: without_sticks(Status::Impossible(reason), None), state: None });
    }
    if origin.pieces == 0 {
        return Ok(Draft { plan: nothing_to_cut(&origin, instance.kerf), state: None });
    }
    let mut patience = Patience { keep_going, nodes: effort.cases, stopped: false };
    let none_used = vec![0; problem.kinds.len()];
    let mut first = greedy::completed(&problem, &Choice::default(), &problem.need, &none_used, i64::MAX);
    if first.is_none() {
        match enough_sticks(&problem, &origin, instance, &mut patience) {
            Enough::Plan(choice) => first = Some(choice),
            Enough::Not(plan) => return Ok(Draft { plan, state: None }),
        }
    }
    let mut search = Search::new(problem, Pool::default(), i64::MAX);
    if let Some(first) = first {
        search.offer(first);
    }
    search.bound_by_length();
    let small = search.problem.sizes.len() <= MOST_LENGTHS;
    let proved = search.bound >= search.below || small && search.run(None, &mut patience);
    let pieces = origin.pieces as i64;
    let Some(best) = search.best.clone() else {
        return Ok(Draft { plan: without_sticks(Status::NoneFound, None), state: None });
    };
    let mut plan = plan_of(&best, &origin, instance.kerf);
    if proved {
        plan.status = Status::ProvedLeast;
        plan.certificate = Some(certificate(&search, &origin, instance.kerf, Claim::LeastWeight(best.weight)));
    } else {
        // A weight holds at most one unit per piece besides its price.
        let bound = num_integer::div_ceil(search.bound.saturating_sub(pieces).max(0), pieces + 1).min(plan.cost);
        plan.status = Status::BestFound { bound, could_save: plan.cost - bound };
    }
    Ok(Draft { plan, state: Some((Box::new(search), origin)) })
}

impl Draft {
    /// The plan as it stands.
    pub fn plan(&self) -> &Plan {
        &self.plan
    }

    /// Goes on to the longest leftover, when the price is proved; else the plan comes back as it stands.
    pub fn with_longest_leftover(self, effort: Effort, keep_going: &mut dyn FnMut() -> bool) -> Plan {
        let Self { mut plan, state } = self;
        let Some((search, origin)) = state else { return plan };
        let (Status::ProvedLeast, Some(best)) = (plan.status, &search.best) else { return plan };
        let mut patience = Patience { keep_going, nodes: 0, stopped: false };
        let longest = longest_leftover::longest_leftover(&search, &origin, best, effort.leftover_cases, &mut patience);
        if let Some(choice) = &longest.choice {
            let kerf = plan.certificate.as_ref().map_or(0, |certificate| certificate.kerf);
            let better = plan_of(choice, &origin, kerf);
            plan.sticks = better.sticks;
            plan.longest_leftover = better.longest_leftover;
        }
        plan.leftover_proved = longest.proved;
        if let Some(certificate) = &mut plan.certificate {
            certificate.leftovers = longest.proofs;
        }
        plan
    }
}

fn too_long(origin: &Origin) -> Option<Reason> {
    let piece = *origin.lengths.first()?;
    let on_hand = origin.sticks.iter().filter(|(_, _, available)| *available != Some(0));
    let longest_stick = on_hand.map(|&(length, ..)| length).max();
    longest_stick.is_none_or(|longest| longest < piece).then_some(Reason::PieceTooLong { piece, longest_stick })
}

fn without_sticks(status: Status, certificate: Option<Certificate>) -> Plan {
    Plan {
        status,
        sticks: Vec::new(),
        cost: 0,
        stick_count: 0,
        longest_leftover: 0,
        leftover_proved: false,
        certificate,
    }
}

/// No piece, no stick: the proof is a sum of nothing.
fn nothing_to_cut(origin: &Origin, kerf: i64) -> Plan {
    let sticks: Vec<Stick> =
        origin.sticks.iter().map(|&(length, price, available)| Stick { length, price, available }).collect();
    let leaf = Leaf { scale: 1, values: Vec::new(), charges: vec![0; sticks.len()], held: Vec::new() };
    let certificate = Certificate {
        pieces: Vec::new(),
        kerf,
        sticks,
        claim: Claim::LeastWeight(0),
        cases: vec![Branch::Leaf(leaf)],
        leftovers: Vec::new(),
    };
    Plan { leftover_proved: true, ..without_sticks(Status::ProvedLeast, Some(certificate)) }
}

enum Enough {
    Plan(Choice),
    Not(Plan),
}

/// Whether the sticks suffice at all: how many more of the longest it takes at least.
fn enough_sticks(problem: &Problem, origin: &Origin, instance: &Instance, patience: &mut Patience) -> Enough {
    let mut counted = problem.clone();
    for kind in &mut counted.kinds[1..] {
        kind.weight = 0;
    }
    let longest = origin
        .sticks
        .iter()
        .filter(|(_, _, available)| *available != Some(0))
        .map(|&(length, ..)| length)
        .max()
        .unwrap_or(0);
    let capacity = ((longest + instance.kerf) / origin.unit) as f64;
    let more = counted.kinds.len();
    counted.kinds.push(Kind { capacity, weight: 1, least: 0, most: u32::MAX });
    let none_used = vec![0; counted.kinds.len()];
    let first = greedy::completed(&counted, &Choice::default(), &counted.need, &none_used, i64::MAX);
    let mut search = Search::new(counted, Pool::default(), i64::MAX);
    if let Some(first) = first {
        search.offer(first);
    }
    let proved = search.problem.sizes.len() <= MOST_LENGTHS && search.run(None, patience);
    match &search.best {
        Some(best) if best.weight == 0 => {
            let weight = best
                .sticks
                .iter()
                .map(|(kind, _, times)| problem.kinds[*kind].weight.saturating_mul(i64::from(*times)));
            let weight = weight.fold(0, i64::saturating_add);
            Enough::Plan(Choice {
                sticks: best.sticks.iter().filter(|(kind, ..)| *kind != more).cloned().collect(),
                weight,
            })
        }
        Some(best) if proved => {
            let short = best.weight as u32;
            let mut certificate = certificate(&search, origin, instance.kerf, Claim::Short(short));
            certificate.sticks.push(Stick { length: longest, price: 0, available: None });
            Enough::Not(without_sticks(
                Status::Impossible(Reason::TooFewSticks { short, length: longest }),
                Some(certificate),
            ))
        }
        _ => Enough::Not(without_sticks(Status::NoneFound, None)),
    }
}

fn certificate(search: &Search, origin: &Origin, kerf: i64, claim: Claim) -> Certificate {
    let pieces =
        origin.lengths.iter().zip(&search.problem.need).map(|(&length, &count)| Piece { length, count }).collect();
    let sticks = origin.sticks.iter().map(|&(length, price, available)| Stick { length, price, available }).collect();
    Certificate { pieces, kerf, sticks, claim, cases: search.tree.clone(), leftovers: Vec::new() }
}

fn plan_of(choice: &Choice, origin: &Origin, kerf: i64) -> Plan {
    let mut alike: std::collections::BTreeMap<(usize, Vec<(u16, u16)>), u32> = std::collections::BTreeMap::new();
    for (kind, pattern, times) in &choice.sticks {
        *alike.entry((*kind, pattern.clone())).or_insert(0) += times;
    }
    let sticks: Vec<CutStick> = alike
        .into_iter()
        .rev()
        .map(|((kind, pattern), times)| {
            let (length, price, _) = origin.sticks[kind - 1];
            let pieces: Vec<Piece> = pattern
                .iter()
                .map(|&(size, count)| Piece { length: origin.lengths[usize::from(size)], count: u32::from(count) })
                .collect();
            let sizes = pieces.iter().map(|piece| (piece.length + kerf) * i64::from(piece.count)).sum();
            CutStick { length, price, times, pieces, leftover: leftover_of(length, sizes) }
        })
        .collect();
    Plan {
        status: Status::NoneFound,
        cost: sticks
            .iter()
            .map(|stick| stick.price.saturating_mul(i64::from(stick.times)))
            .fold(0, i64::saturating_add),
        stick_count: sticks.iter().map(|stick| stick.times).sum(),
        longest_leftover: sticks.iter().map(|stick| stick.leftover).max().unwrap_or(0),
        sticks,
        leftover_proved: false,
        certificate: None,
    }
}

#[cfg(test)]
mod tests;
