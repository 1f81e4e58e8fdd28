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

/// The plan with each joined piece taken apart again. Sets whose joined piece the plan does not hold stay out.
pub fn parted(plan: &Plan, sets: &[Vec<Piece>], kerf: i64) -> Plan {
    let mut parted = plan.clone();
    for set in sets {
        let Some(length) = joined(set, kerf) else { continue };
        let holds = |stick: &CutStick| {
            stick.times > 0 && stick.pieces.iter().any(|piece| piece.length == length && piece.count > 0)
        };
        let Some(at) = parted.sticks.iter().position(holds) else { continue };
        let mut one = parted.sticks[at].clone();
        one.times = 1;
        parted.sticks[at].times -= 1;
        for piece in &mut one.pieces {
            if piece.length == length {
                piece.count -= 1;
                break;
            }
        }
        one.pieces.retain(|piece| piece.count > 0);
        for piece in set.iter().filter(|piece| piece.count > 0) {
            match one.pieces.iter_mut().find(|held| held.length == piece.length) {
                Some(held) => held.count += piece.count,
                None => one.pieces.push(*piece),
            }
        }
        one.pieces.sort_by_key(|piece| std::cmp::Reverse(piece.length));
        parted.sticks.push(one);
        parted.sticks.retain(|stick| stick.times > 0);
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
        let plan = parted(&plan(&together, Effort::USUAL, &mut || true).unwrap(), std::slice::from_ref(&set), 0);
        assert_eq!(plan.cost, 23);
        assert!(plan.sticks.iter().any(|stick| stick.length == 12 && stick.pieces == set));
        let cut: u32 =
            plan.sticks.iter().flat_map(|stick| stick.pieces.iter().map(|piece| piece.count * stick.times)).sum();
        assert_eq!(cut, 4);
    }

    #[test]
    fn sums_that_do_not_fit_are_refused() {
        assert_eq!(joined(&[Piece { length: i64::MAX, count: 2 }], 1), None);
        assert_eq!(joined(&[], 1), None);
    }
}
