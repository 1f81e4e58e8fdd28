//! Members longer than any stick: where each is joined, chosen together with the stick plan.
//!
//! Each member comes with the ways in which it may be divided, the preferred one first (balanced pieces, joints on studs).
//! Another way is taken only when the plan then costs less, or as much with fewer sticks.

use super::instance::{Instance, InstanceFault, Piece};
use super::plan::{Plan, Status};
use super::solve::{Effort, cheapest};

/// The ways in which one member may be divided: lengths of its pieces to their long points, laps included.
pub type Ways = Vec<Vec<i64>>;

/// The most choices of ways that are planned; beyond it not every choice is.
const MOST_CHOICES: usize = 64;

/// The way chosen for each member, and the plan for all pieces with it.
///
/// Shape: an instance without the long members, and their ways; a member without a way is left out. Every choice is
/// planned when there are few; else all members take one way together, then each in turn its best while the others stay.
/// # Errors
/// `InstanceFault` when a number is out of range.
pub fn with_long_members(
    instance: &Instance,
    members: &[Ways],
    effort: Effort,
    keep_going: &mut dyn FnMut() -> bool,
) -> Result<(Vec<usize>, Plan), InstanceFault> {
    let mut chosen = vec![0; members.len()];
    let mut best = planned(instance, members, &chosen, effort, keep_going)?;
    let choices = members.iter().try_fold(1_usize, |count, ways| count.checked_mul(ways.len().max(1)));
    if choices.is_some_and(|count| count <= MOST_CHOICES) {
        let mut trial = chosen.clone();
        while advanced(&mut trial, members) && keep_going() {
            let plan = planned(instance, members, &trial, effort, keep_going)?;
            if saves(&plan, &best) {
                (best, chosen) = (plan, trial.clone());
            }
        }
    } else {
        // One member alone may save nothing where several alike do.
        for way in 1..members.iter().map(Vec::len).max().unwrap_or(0) {
            if !keep_going() {
                return Ok((chosen, best));
            }
            let trial: Vec<usize> = members.iter().map(|ways| if way < ways.len() { way } else { 0 }).collect();
            let plan = planned(instance, members, &trial, effort, keep_going)?;
            if saves(&plan, &best) {
                (best, chosen) = (plan, trial);
            }
        }
        for (member, ways) in members.iter().enumerate() {
            for way in 0..ways.len() {
                if !keep_going() {
                    return Ok((chosen, best));
                }
                let mut trial = chosen.clone();
                trial[member] = way;
                let plan = planned(instance, members, &trial, effort, keep_going)?;
                if saves(&plan, &best) {
                    (best, chosen) = (plan, trial);
                }
            }
        }
    }
    Ok((chosen, best))
}

/// The next choice, counting through all; false after the last.
fn advanced(chosen: &mut [usize], members: &[Ways]) -> bool {
    for (way, ways) in chosen.iter_mut().zip(members) {
        *way += 1;
        if *way < ways.len() {
            return true;
        }
        *way = 0;
    }
    false
}

fn planned(
    instance: &Instance,
    members: &[Ways],
    chosen: &[usize],
    effort: Effort,
    keep_going: &mut dyn FnMut() -> bool,
) -> Result<Plan, InstanceFault> {
    let mut asked = instance.clone();
    for (ways, &way) in members.iter().zip(chosen) {
        let pieces = ways.get(way).into_iter().flatten();
        asked.pieces.extend(pieces.map(|&length| Piece { length, count: 1 }));
    }
    Ok(cheapest(&asked, effort, keep_going)?.plan().clone())
}

fn saves(plan: &Plan, best: &Plan) -> bool {
    let found = |plan: &Plan| matches!(plan.status, Status::ProvedLeast | Status::BestFound { .. });
    found(plan) && (!found(best) || (plan.cost, plan.stick_count) < (best.cost, best.stick_count))
}

#[cfg(test)]
mod tests {
    use super::super::instance::Stick;
    use super::*;

    fn stick(length: i64) -> Vec<Stick> {
        vec![Stick { length, price: 10, available: None }]
    }

    #[test]
    fn another_stud_is_taken_when_it_saves_a_stick() {
        // By hand: 150 from sticks of 100. Halves of 75 and a 40 need three sticks; 90 + 60 leaves room for the 40.
        let asked = Instance { pieces: vec![Piece { length: 40, count: 1 }], kerf: 0, sticks: stick(100) };
        let ways = vec![vec![75, 75], vec![90, 60], vec![60, 90]];
        let (chosen, plan) = with_long_members(&asked, &[ways], Effort::USUAL, &mut || true).unwrap();
        assert_eq!((chosen, plan.stick_count), (vec![1], 2));
    }

    #[test]
    fn the_balanced_joint_stays_when_nothing_is_saved() {
        let asked = Instance { pieces: vec![], kerf: 0, sticks: stick(100) };
        let ways = vec![vec![75, 75], vec![90, 60]];
        let (chosen, plan) = with_long_members(&asked, &[ways], Effort::USUAL, &mut || true).unwrap();
        assert_eq!((chosen, plan.stick_count), (vec![0], 2));
    }

    #[test]
    fn many_members_alike_change_together() {
        let asked = Instance { pieces: vec![Piece { length: 40, count: 4 }], kerf: 0, sticks: stick(100) };
        let members = vec![vec![vec![75, 75], vec![90, 60], vec![60, 90]]; 4];
        let (chosen, plan) = with_long_members(&asked, &members, Effort::USUAL, &mut || true).unwrap();
        assert!(chosen.iter().all(|&way| way > 0));
        assert_eq!(plan.stick_count, 8);
    }
}
