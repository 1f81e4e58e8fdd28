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

/// The ways chosen, and what is cut with them.
#[derive(Clone, Debug)]
pub struct Joined {
    /// For each member the place of its way in its list.
    pub chosen: Vec<usize>,
    /// The plan of all pieces with it; its leftover is not looked into.
    pub plan: Plan,
    /// Every choice was planned, and none can cost less, or as much with fewer sticks.
    pub settled: bool,
}

/// The way chosen for each member, and the plan for all pieces with it.
///
/// Shape: an instance without the long members, and their ways; a member without a way is left out. `allowed` says which
/// choices are sound together; the first of every member is taken for sound. Every choice is planned when there are few; else
/// all members take one way together, then each in turn its best while the others stay.
/// # Errors
/// `InstanceFault` when a number is out of range.
pub fn with_long_members(
    instance: &Instance,
    members: &[Ways],
    allowed: &dyn Fn(&[usize]) -> bool,
    effort: Effort,
    keep_going: &mut dyn FnMut() -> bool,
) -> Result<Joined, InstanceFault> {
    let plan = planned(instance, members, &vec![0; members.len()], effort, keep_going)?;
    let mut best = Joined { settled: plan.status == Status::ProvedLeast, chosen: Vec::new(), plan };
    let ways: Vec<usize> = members.iter().map(Vec::len).collect();
    let (chosen, all) = best_choice(&ways, MOST_CHOICES, |choice| {
        let mut verdict = Verdict::Stays;
        if allowed(choice) {
            let plan = planned(instance, members, choice, effort, keep_going)?;
            best.settled &= matches!(plan.status, Status::ProvedLeast | Status::Impossible(_));
            if saves(&plan, &best.plan) {
                best.plan = plan;
                verdict = Verdict::Better;
            }
        }
        Ok(if keep_going() { verdict } else { Verdict::Stop })
    })?;
    best.settled &= all;
    best.chosen = chosen;
    Ok(best)
}

/// What a trial of a choice says.
pub(crate) enum Verdict {
    /// It is better than the best so far.
    Better,
    /// It is not.
    Stays,
    /// It is not, and no other is to be tried.
    Stop,
}

/// The best choice of a way for each member, each given by how many ways it has, and whether every choice was tried.
///
/// The first way of every member is the best so far. Every choice is tried when there are no more than `most`; else all
/// members take one way together, then each in turn its best while the others stay.
/// # Errors
/// What a trial fails with.
pub(crate) fn best_choice<E>(
    ways: &[usize],
    most: usize,
    mut trial: impl FnMut(&[usize]) -> Result<Verdict, E>,
) -> Result<(Vec<usize>, bool), E> {
    let mut best = vec![0; ways.len()];
    let choices = ways.iter().try_fold(1_usize, |count, &ways| count.checked_mul(ways.max(1)));
    let mut goes_on = |choice: Vec<usize>, best: &mut Vec<usize>| {
        let verdict = trial(&choice)?;
        if matches!(verdict, Verdict::Better) {
            *best = choice;
        }
        Ok(!matches!(verdict, Verdict::Stop))
    };
    if choices.is_some_and(|count| count <= most) {
        let mut choice = best.clone();
        while advanced(&mut choice, ways) {
            if !goes_on(choice.clone(), &mut best)? {
                return Ok((best, false));
            }
        }
        return Ok((best, true));
    }
    // One member alone may save nothing where several alike do.
    for way in 1..ways.iter().copied().max().unwrap_or(0) {
        let together = ways.iter().map(|&ways| if way < ways { way } else { 0 }).collect();
        if !goes_on(together, &mut best)? {
            return Ok((best, false));
        }
    }
    for (member, &ways) in ways.iter().enumerate() {
        for way in 0..ways {
            let mut choice = best.clone();
            choice[member] = way;
            if !goes_on(choice, &mut best)? {
                return Ok((best, false));
            }
        }
    }
    Ok((best, false))
}

/// The next choice, counting through all; false after the last.
fn advanced(chosen: &mut [usize], ways: &[usize]) -> bool {
    for (way, &ways) in chosen.iter_mut().zip(ways) {
        *way += 1;
        if *way < ways {
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
        let Joined { chosen, plan, .. } =
            with_long_members(&asked, &[ways], &|_| true, Effort::USUAL, &mut || true).unwrap();
        assert_eq!((chosen, plan.stick_count), (vec![1], 2));
    }

    #[test]
    fn a_choice_that_is_not_sound_is_not_taken() {
        let asked = Instance { pieces: vec![Piece { length: 40, count: 1 }], kerf: 0, sticks: stick(100) };
        let ways = vec![vec![75, 75], vec![90, 60], vec![60, 90]];
        let sound = |choice: &[usize]| choice != [1];
        let joined = with_long_members(&asked, &[ways], &sound, Effort::USUAL, &mut || true).unwrap();
        assert_eq!((joined.chosen, joined.plan.stick_count, joined.settled), (vec![2], 2, true));
    }

    #[test]
    fn the_balanced_joint_stays_when_nothing_is_saved() {
        let asked = Instance { pieces: vec![], kerf: 0, sticks: stick(100) };
        let ways = vec![vec![75, 75], vec![90, 60]];
        let Joined { chosen, plan, .. } =
            with_long_members(&asked, &[ways], &|_| true, Effort::USUAL, &mut || true).unwrap();
        assert_eq!((chosen, plan.stick_count), (vec![0], 2));
    }

    #[test]
    fn many_members_alike_change_together() {
        let asked = Instance { pieces: vec![Piece { length: 40, count: 4 }], kerf: 0, sticks: stick(100) };
        let members = vec![vec![vec![75, 75], vec![90, 60], vec![60, 90]]; 4];
        let Joined { chosen, plan, .. } =
            with_long_members(&asked, &members, &|_| true, Effort::USUAL, &mut || true).unwrap();
        assert!(chosen.iter().all(|&way| way > 0));
        assert_eq!(plan.stick_count, 8);
    }
}
