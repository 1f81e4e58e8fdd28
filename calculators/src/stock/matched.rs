//! Pieces that must match: cut one after another from one stick, so that colour and grain run on.
//!
//! A matched set goes into the stick plan as one piece as long as all of them and the cuts between. Whatever the plan
//! proves then holds for plans that keep the sets together; another plan may be cheaper that does not.

use super::instance::Piece;
use super::plan::{CutStick, Plan};

/// The set as one piece: its lengths and a kerf between each two. None for an empty set or a sum beyond 64 bits.
///
/// # Examples
/// ```
/// use calculators::stock::{instance::Piece, matched::joined};
/// let set = [Piece { length: 500, count: 2 }, Piece { length: 300, count: 1 }];
/// assert_eq!(joined(&set, 3), Some(1_306));
/// ```
pub fn joined(set: &[Piece], kerf: i64) -> Option<i64> {
    let mut sum = 0_i64;
    for piece in set.iter().filter(|piece| piece.count > 0) {
        let each = piece.length.checked_add(kerf)?;
        sum = sum.checked_add(each.checked_mul(i64::from(piece.count))?)?;
    }
    (sum > 0).then(|| sum.checked_sub(kerf))?
}

/// The sticks of a plan with each joined piece taken apart again, and the sets that each stick holds.
///
/// The pieces of a set stand one after another in the place of the joined one. A set that the plan does not hold stays out.
pub fn parted(plan: &Plan, sets: &[Vec<Piece>], kerf: i64) -> Vec<(CutStick, Vec<usize>)> {
    let mut parted: Vec<(CutStick, Vec<usize>)> = plan.sticks.iter().map(|stick| (stick.clone(), Vec::new())).collect();
    for (set, pieces) in sets.iter().enumerate() {
        let Some(length) = joined(pieces, kerf) else { continue };
        let in_stick =
            |stick: &CutStick| stick.pieces.iter().position(|piece| piece.length == length && piece.count > 0);
        let Some(at) = parted.iter().position(|(stick, _)| stick.times > 0 && in_stick(stick).is_some()) else {
            continue;
        };
        let (mut one, mut held) = parted[at].clone();
        one.times = 1;
        parted[at].0.times -= 1;
        if let Some(place) = in_stick(&one) {
            one.pieces[place].count -= 1;
            let after = if one.pieces[place].count == 0 { place + 1 } else { place };
            let apart = pieces.iter().filter(|piece| piece.count > 0).copied();
            one.pieces.splice(place..after, apart);
        }
        held.push(set);
        parted.push((one, held));
        parted.retain(|(stick, _)| stick.times > 0);
    }
    parted
}

#[cfg(test)]
mod tests {
    use super::super::instance::{Instance, Stick};
    use super::super::solve::{Effort, plan};
    use super::*;

    #[test]
    fn a_matched_set_comes_from_one_stick() {
        // By hand: apart, 6 + 4 and 6 + 4 fill two sticks of 10; kept together, the two sixes need a stick of 12.
        let set = vec![Piece { length: 6, count: 2 }];
        let sticks =
            vec![Stick { length: 10, price: 10, available: None }, Stick { length: 12, price: 13, available: None }];
        let apart = Instance {
            pieces: vec![Piece { length: 6, count: 2 }, Piece { length: 4, count: 2 }],
            kerf: 0,
            sticks: sticks.clone(),
        };
        assert_eq!(plan(&apart, Effort::USUAL, &mut || true).unwrap().cost, 20);
        let together = Instance {
            pieces: vec![Piece { length: joined(&set, 0).unwrap(), count: 1 }, Piece { length: 4, count: 2 }],
            kerf: 0,
            sticks,
        };
        let plan = plan(&together, Effort::USUAL, &mut || true).unwrap();
        assert_eq!(plan.cost, 23);
        let sticks = parted(&plan, std::slice::from_ref(&set), 0);
        assert!(sticks.iter().any(|(stick, sets)| stick.length == 12 && stick.pieces == set && *sets == [0]));
        let cut: u32 =
            sticks.iter().flat_map(|(stick, _)| stick.pieces.iter().map(|piece| piece.count * stick.times)).sum();
        assert_eq!(cut, 4);
    }

    #[test]
    fn two_sets_alike_are_each_taken_apart() {
        // By hand: two sets of 3 + 2 fill a stick of 10 between them.
        let set = vec![Piece { length: 3, count: 1 }, Piece { length: 2, count: 1 }];
        let asked = Instance {
            pieces: vec![Piece { length: 5, count: 2 }],
            kerf: 0,
            sticks: vec![Stick { length: 10, price: 10, available: None }],
        };
        let plan = plan(&asked, Effort::USUAL, &mut || true).unwrap();
        let sticks = parted(&plan, &[set.clone(), set.clone()], 0);
        assert_eq!(sticks.len(), 1);
        assert_eq!(sticks[0].1, [0, 1]);
        let lengths: Vec<i64> = sticks[0].0.pieces.iter().map(|piece| piece.length).collect();
        assert_eq!(lengths, [3, 2, 3, 2]);
    }

    #[test]
    fn sums_that_do_not_fit_are_refused() {
        assert_eq!(joined(&[Piece { length: i64::MAX, count: 2 }], 1), None);
        assert_eq!(joined(&[], 1), None);
    }
}
