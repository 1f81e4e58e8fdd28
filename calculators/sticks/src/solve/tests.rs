//! The search against a slow, obvious solver on small questions, and the edges of the kerf rule by hand.

use proptest::prelude::*;

use super::{Effort, plan};
use crate::certificate_check::check;
use crate::instance::{Instance, Piece, Stick};
use crate::plan::{Reason, Status};

/// Tries every way: each piece in turn goes on a stick already begun or on a new one of any kind. Gives price, sticks
/// and the longest leftover of the best.
fn every_way(instance: &Instance) -> Option<(i64, usize, i64)> {
    struct Begun {
        kind: usize,
        lengths: i64,
        pieces: i64,
    }
    fn go(instance: &Instance, left: &[i64], begun: &mut Vec<Begun>, best: &mut Option<(i64, usize, i64)>) {
        let Some((&piece, rest)) = left.split_first() else {
            let price = begun.iter().map(|stick| instance.sticks[stick.kind].price).sum();
            let leftover = begun
                .iter()
                .map(|stick| {
                    let slack = instance.sticks[stick.kind].length - stick.lengths - instance.kerf * (stick.pieces - 1);
                    (slack - instance.kerf).max(0)
                })
                .max()
                .unwrap_or(0);
            let this = (price, begun.len(), leftover);
            if best.is_none_or(|best| (this.0, this.1, -this.2) < (best.0, best.1, -best.2)) {
                *best = Some(this);
            }
            return;
        };
        for at in 0..begun.len() {
            let fits = begun[at].lengths + piece + instance.kerf * begun[at].pieces;
            if fits <= instance.sticks[begun[at].kind].length {
                begun[at].lengths += piece;
                begun[at].pieces += 1;
                go(instance, rest, begun, best);
                begun[at].lengths -= piece;
                begun[at].pieces -= 1;
            }
        }
        for (kind, stick) in instance.sticks.iter().enumerate() {
            let used = begun.iter().filter(|begun| begun.kind == kind).count();
            if piece <= stick.length && stick.available.is_none_or(|available| used < available as usize) {
                begun.push(Begun { kind, lengths: piece, pieces: 1 });
                go(instance, rest, begun, best);
                begun.pop();
            }
        }
    }
    let pieces: Vec<i64> =
        instance.pieces.iter().flat_map(|piece| std::iter::repeat_n(piece.length, piece.count as usize)).collect();
    let mut best = None;
    go(instance, &pieces, &mut Vec::new(), &mut best);
    best
}

fn small_instance() -> impl Strategy<Value = Instance> {
    let piece = (3_i64..40, 1_u32..=2).prop_map(|(length, count)| Piece { length, count });
    let stick = (10_i64..60, 0_i64..12, prop_oneof![Just(None), (0_u32..3).prop_map(Some)])
        .prop_map(|(length, price, available)| Stick { length, price, available });
    (prop::collection::vec(piece, 0..5), 0_i64..4, prop::collection::vec(stick, 0..4))
        .prop_map(|(pieces, kerf, sticks)| Instance { pieces, kerf, sticks })
        .prop_filter("few enough to try every way", |instance| instance.piece_count() <= 7)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn no_way_of_cutting_beats_the_plan(instance in small_instance()) {
        let plan = plan(&instance, Effort::USUAL, &mut || true).unwrap();
        match (every_way(&instance), plan.status) {
            (Some(best), Status::ProvedLeast) => {
                prop_assert_eq!(best, (plan.cost, plan.stick_count as usize, plan.longest_leftover));
                prop_assert!(plan.leftover_proved);
            }
            (None, Status::Impossible(_)) => {}
            (best, status) => prop_assert!(false, "{:?} against {:?}", best, status),
        }
        if let Some(certificate) = &plan.certificate {
            prop_assert_eq!(check(&instance, &plan, certificate), Ok(()));
        }
    }

    #[test]
    fn sticks_that_are_short_are_counted(instance in small_instance()) {
        let plan = plan(&instance, Effort::USUAL, &mut || true).unwrap();
        if let Status::Impossible(Reason::TooFewSticks { short, length }) = plan.status {
            let mut more = instance.clone();
            more.sticks.push(Stick { length, price: 0, available: Some(short - 1) });
            prop_assert_eq!(every_way(&more), None);
            more.sticks.push(Stick { length, price: 0, available: Some(1) });
            prop_assert!(every_way(&more).is_some());
        }
    }

    #[test]
    fn no_numbers_panic(
        pieces in prop::collection::vec((any::<i64>(), 0_u32..2_000), 0..6),
        kerf in prop_oneof![0_i64..1_000, any::<i64>()],
        sticks in prop::collection::vec((any::<i64>(), any::<i64>(), any::<Option<u32>>()), 0..4),
        shift in 0_u32..60,
    ) {
        let instance = Instance {
            pieces: pieces.into_iter().map(|(length, count)| Piece { length: length >> shift, count }).collect(),
            kerf: kerf >> shift.min(20),
            sticks: sticks.into_iter().map(|(length, price, available)| Stick { length: length >> shift, price: price >> shift, available }).collect(),
        };
        let mut asked = 0;
        let answer = plan(&instance, Effort { cases: 20, leftover_cases: 5 }, &mut || { asked += 1; asked < 300 });
        if let Ok(plan) = answer && let Some(certificate) = &plan.certificate {
            prop_assert_eq!(check(&instance, &plan, certificate), Ok(()));
        }
    }
}

fn one_stick(lengths: &[i64]) -> (u32, i64) {
    let asked = Instance {
        pieces: lengths.iter().map(|&length| Piece { length, count: 1 }).collect(),
        kerf: 8,
        sticks: vec![Stick { length: 6_144, price: 900, available: None }],
    };
    let plan = plan(&asked, Effort::USUAL, &mut || true).unwrap();
    (plan.stick_count, plan.longest_leftover)
}

// By hand, in sixty-fourths of an inch: 2043 + 2042 + 2043 and two kerfs of 8 are 6144, an 8 ft stick.
#[test]
fn a_last_piece_may_end_flush() {
    assert_eq!(one_stick(&[2_043, 2_042, 2_043]), (1, 0));
}

#[test]
fn a_sliver_thinner_than_the_saw_is_dust() {
    assert_eq!(one_stick(&[2_043, 2_042, 2_042]), (1, 0));
}

#[test]
fn a_leftover_has_lost_one_kerf() {
    assert_eq!(one_stick(&[2_042, 2_043]), (1, 2_043));
}
