//! Plates in the way of boards: how little has to move.
//!
//! One board is moved just clear of the plate, and the change is shared out evenly over the bays between it and the next board
//! that does not move. Nothing moves farther than the leeway, and no two neighbouring bays differ by more than the leeway; what
//! cannot be cleared so is left as it is and told, never shifted in silence.

use std::collections::{BTreeMap, BTreeSet};

use crate::quantity::{Exact, Length};

/// Boards of one width shared out over a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FilledRun {
    /// Where the run starts.
    pub left: Exact,
    /// Where it ends.
    pub right: Exact,
    /// Width of a board.
    pub board: Length,
    /// How many boards.
    pub boards: usize,
}

/// What may move, and how far.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Most shift of one board.
    pub shift: Length,
    /// Most difference between two neighbouring bays.
    pub change: Exact,
    /// Shifts are rounded up to this step.
    pub step: Length,
}

/// Where the boards of a run stand after plates were cleared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cleared {
    /// Left edge of each board.
    pub lefts: Vec<Exact>,
    /// Plates that could not be cleared within the limits, by their index.
    pub left_over: Vec<usize>,
}

/// The way to clear one plate from one board, whatever it takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Need {
    /// How far the board has to move; right is positive.
    pub shift: Exact,
    /// The widest difference of neighbouring bays that follows.
    pub change: Exact,
    /// The bays that follow on the left and on the right of the board.
    pub bays: (Exact, Exact),
}

impl FilledRun {
    /// The bay before anything moves.
    pub fn bay(&self) -> Exact {
        let boards = i64::try_from(self.boards).unwrap_or(i64::MAX - 1);
        (self.right - self.left - self.board.exact() * boards).over(boards + 1).unwrap_or(Exact::ZERO)
    }

    /// The left edges before anything moves.
    pub fn lefts(&self) -> Vec<Exact> {
        self.lefts_with(&BTreeMap::new())
    }

    /// The left edges when some boards are held at a place and the others share the bays between them.
    fn lefts_with(&self, held: &BTreeMap<usize, Exact>) -> Vec<Exact> {
        let mut lefts = Vec::with_capacity(self.boards);
        let mut from = self.left;
        for (at, left) in held.iter().map(|(at, left)| (*at, *left)).chain([(self.boards, self.right)]) {
            let between = i64::try_from(at - lefts.len()).unwrap_or(0);
            let bay = (left - from - self.board.exact() * between).over(between + 1).unwrap_or(Exact::ZERO);
            for k in 0..between {
                lefts.push(from + bay * (k + 1) + self.board.exact() * k);
            }
            if at < self.boards {
                lefts.push(left);
                from = left + self.board;
            }
        }
        lefts
    }

    /// The bays between boards at these places.
    pub fn bays(&self, lefts: &[Exact]) -> Vec<Exact> {
        let starts = [self.left].into_iter().chain(lefts.iter().map(|left| *left + self.board));
        let ends = lefts.iter().copied().chain([self.right]);
        starts.zip(ends).map(|(start, end)| end - start).collect()
    }

    fn worst_change(&self, lefts: &[Exact]) -> Exact {
        self.bays(lefts).windows(2).map(|pair| (pair[1] - pair[0]).size()).max().unwrap_or(Exact::ZERO)
    }

    /// Boards clear of every taken stretch, as far as the limits allow. A taken stretch is a plate with its clearance.
    pub fn cleared(&self, taken: &[(Exact, Exact)], limits: Limits) -> Cleared {
        let origin = self.lefts();
        let mut held = BTreeMap::new();
        let mut given_up = BTreeSet::new();
        for _ in 0..4 * taken.len() {
            let lefts = self.lefts_with(&held);
            let Some((board, plate)) = self.first_clash(&lefts, taken, &given_up) else { break };
            let ways = [true, false].into_iter().filter_map(|to_left| {
                let left = self.moved(origin[board], taken[plate], to_left, limits.step);
                let mut trial = held.clone();
                trial.insert(board, left);
                let lefts = self.lefts_with(&trial);
                let in_limits = lefts.iter().zip(&origin).all(|(new, old)| (*new - *old).size() <= limits.shift)
                    && self.worst_change(&lefts) <= limits.change
                    && self.bays(&lefts).iter().all(|bay| bay.is_positive());
                // A board that was moved is clear of everything, of what was given up too: else it stays in the even layout.
                let clear = trial
                    .values()
                    .all(|left| !taken.iter().any(|stretch| overlap((*left, *left + self.board), *stretch)));
                (in_limits && clear).then(|| ((left - origin[board]).size(), trial))
            });
            match ways.min_by_key(|(shift, _)| *shift) {
                Some((_, trial)) => held = trial,
                None => {
                    given_up.insert(plate);
                }
            }
        }
        let lefts = self.lefts_with(&held);
        let left_over = (0..taken.len())
            .filter(|plate| lefts.iter().any(|left| overlap((*left, *left + self.board), taken[*plate])))
            .collect();
        Cleared { lefts, left_over }
    }

    /// What it would take to clear one stretch from one board, by the shorter way.
    pub fn need(&self, board: usize, stretch: (Exact, Exact), step: Length) -> Option<Need> {
        let origin = *self.lefts().get(board)?;
        [true, false]
            .into_iter()
            .filter_map(|to_left| {
                let left = self.moved(origin, stretch, to_left, step);
                let lefts = self.lefts_with(&BTreeMap::from([(board, left)]));
                let bays = self.bays(&lefts);
                bays.iter().all(|bay| bay.is_positive()).then(|| Need {
                    shift: left - origin,
                    change: self.worst_change(&lefts),
                    bays: (bays[board], bays[board + 1]),
                })
            })
            .min_by_key(|need| need.shift.size())
    }

    /// The place of a board just clear of a stretch; the shift is rounded up, away from the plate.
    fn moved(&self, origin: Exact, stretch: (Exact, Exact), to_left: bool, step: Length) -> Exact {
        if to_left {
            origin - (origin + self.board - stretch.0).up_to(step)
        } else {
            origin + (stretch.1 - origin).up_to(step)
        }
    }

    fn first_clash(&self, lefts: &[Exact], taken: &[(Exact, Exact)], but: &BTreeSet<usize>) -> Option<(usize, usize)> {
        taken.iter().enumerate().filter(|(plate, _)| !but.contains(plate)).find_map(|(plate, stretch)| {
            let from = lefts.partition_point(|left| *left + self.board <= stretch.0);
            let board = (from..lefts.len()).next().filter(|board| lefts[*board] < stretch.1)?;
            Some((board, plate))
        })
    }
}

fn overlap(one: (Exact, Exact), other: (Exact, Exact)) -> bool {
    one.0 < other.1 && other.0 < one.1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Tape, print};
    use proptest::prelude::*;

    fn in8(eighths: i64) -> Exact {
        Length::sixty_fourths(eighths * 8).exact()
    }

    /// A run from 174-5/8 to 216-3/4 with two boards of 2-1/2.
    fn run() -> FilledRun {
        FilledRun { left: in8(1397), right: in8(1734), board: Length::sixty_fourths(160), boards: 2 }
    }

    fn limits(bay: Exact) -> Limits {
        let change = bay.times(5, 100).expect("not zero").max(in8(4));
        Limits { shift: Length::sixty_fourths(24), change, step: Tape::Sixteenth.step() }
    }

    /// A plate with half an inch of clearance on both sides.
    fn plate(left: i64, right: i64) -> (Exact, Exact) {
        (in8(left - 4), in8(right + 4))
    }

    fn shown(lengths: &[Exact]) -> Vec<String> {
        lengths.iter().map(|length| print::inches(*length, 64)).collect()
    }

    #[test]
    fn a_switch_a_little_close_moves_two_boards_and_spreads_the_change() {
        // Common practice arithmetic, worked by hand: plate 204-1/2 to 207-1/4 beside a board ending at 204-3/8.
        let cleared = run().cleared(&[plate(1636, 1658)], limits(run().bay()));
        assert!(cleared.left_over.is_empty());
        assert_eq!(shown(&cleared.lefts), ["186 13/16 in", "201 1/2 in"]);
        assert_eq!(shown(&run().bays(&cleared.lefts)), ["12 3/16 in", "12 3/16 in", "12 3/4 in"]);
    }

    #[test]
    fn the_same_in_millimetres() {
        let mm = |mm: i64| Length::mm(mm).exact();
        let run = FilledRun { left: mm(4436), right: mm(5505), board: Length::mm(64), boards: 2 };
        let limits =
            Limits { shift: Length::mm(10), change: run.bay().times(5, 100).expect("not zero"), step: Length::mm(1) };
        let cleared = run.cleared(&[(mm(5194 - 12), mm(5264 + 12))], limits);
        let marks: Vec<_> = cleared.lefts.iter().map(|left| left.nearest(Length::mm(1))).collect();
        assert_eq!(marks, [Length::mm(4745), Length::mm(5117)]);
    }

    #[test]
    fn a_switch_on_a_board_edge_is_out_of_reach_and_says_what_it_would_take() {
        // Common practice arithmetic, worked by hand: plate 203 to 205-3/4, centred on the board's edge.
        let stretch = plate(1624, 1646);
        let cleared = run().cleared(&[stretch], limits(run().bay()));
        assert_eq!(cleared.left_over, [0]);
        assert_eq!(cleared.lefts, run().lefts());
        let need = run().need(1, stretch, Tape::Sixteenth.step()).expect("there is a way");
        assert_eq!(shown(&[need.shift, need.bays.0, need.bays.1]), ["-1 7/8 in", "11 7/16 in", "14 1/4 in"]);
        assert!((need.change.ratio_to(run().bay()) - 0.23).abs() < 0.005);
    }

    proptest! {
        #[test]
        fn what_is_cleared_is_clear_and_within_the_leeway(
            boards in 0_usize..12,
            length in 300_i64..3_000,
            plates in prop::collection::vec((0_i64..3_000, 1_i64..60), 0..5),
        ) {
            let run = FilledRun { left: Exact::ZERO, right: in8(length), board: Length::sixty_fourths(160), boards };
            prop_assume!(run.bay().is_positive());
            let taken: Vec<_> = plates.into_iter().map(|(left, width)| plate(left, left + width)).collect();
            let limits = limits(run.bay());
            let cleared = run.cleared(&taken, limits);
            prop_assert_eq!(cleared.lefts.len(), boards);
            for (new, old) in cleared.lefts.iter().zip(run.lefts()) {
                prop_assert!((*new - old).size() <= limits.shift);
            }
            let total = run.bays(&cleared.lefts).into_iter().fold(run.board.exact() * boards as i64, |sum, bay| sum + bay);
            prop_assert_eq!(total, run.right - run.left);
            for (n, stretch) in taken.iter().enumerate() {
                let hit = cleared.lefts.iter().any(|left| overlap((*left, *left + run.board), *stretch));
                prop_assert_eq!(hit, cleared.left_over.contains(&n));
            }
        }
    }
}
