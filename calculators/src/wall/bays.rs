//! Equal bays: one run, boards of one width, and the gap that is left between them.
//!
//! Three ways in which a run can end decide how many bays share what the boards leave: a board at both ends, a bay at both
//! ends, or one of each. Everything else about spacing follows from this one division, which keeps its remainder.

use crate::catalogue::Input;
use crate::quantity::{Exact, Length};

/// How a run ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
pub enum RunEnds {
    /// A board stands at both ends.
    BoardBoth,
    /// A bay lies at both ends.
    BayBoth,
    /// A board stands at one end, a bay lies at the other.
    BoardAndBay,
}

impl RunEnds {
    /// How many bays so many boards make.
    pub const fn bays(self, boards: i64) -> i64 {
        match self {
            Self::BoardBoth => boards - 1,
            Self::BayBoth => boards + 1,
            Self::BoardAndBay => boards,
        }
    }
}

/// The clear bay when `boards` boards of one width share a run; `None` where no positive bay is left.
///
/// Formula: (run − boards × board) / bays, exact.
/// # Source
/// Plane geometry.
/// # Examples
/// ```
/// use calculators::quantity::{Length, Tape};
/// use calculators::wall::bays::{RunEnds, clear_bay};
/// let bay = clear_bay(Length::mm(3660).exact(), Length::mm(64), 9, RunEnds::BoardBoth).unwrap();
/// assert_eq!(bay, Length::um(385_500).exact());
/// ```
pub fn clear_bay(run: Exact, board: Length, boards: i64, ends: RunEnds) -> Option<Exact> {
    let bays = ends.bays(boards);
    if boards < 0 || bays < 1 {
        return None;
    }
    let bay = (run - board.exact() * boards).over(bays)?;
    bay.is_positive().then_some(bay)
}

/// The left edge of each board from the start of the run, exact.
pub fn left_edges(run: Exact, board: Length, boards: i64, ends: RunEnds) -> Vec<Exact> {
    let Some(bay) = clear_bay(run, board, boards, ends) else { return Vec::new() };
    let first = if ends == RunEnds::BayBoth { bay } else { Exact::ZERO };
    (0..boards).map(|k| first + (bay + board) * k).collect()
}

/// The number of boards whose bay comes nearest to a wish, and its neighbours: best first, at most `most` of them.
///
/// Ties go to fewer boards. Numbers that leave no bay are left out.
pub fn nearest_counts(run: Exact, board: Length, target: Length, ends: RunEnds, most: usize) -> Vec<(i64, Exact)> {
    let pitch = (target + board).nm().max(1);
    let guess = run.nearest(Length::from_nm(1)).nm() / pitch;
    let least = if ends == RunEnds::BoardBoth { 2 } else { 1 };
    let reach = i64::try_from(most).unwrap_or(1).max(1);
    let mut counts: Vec<_> = ((guess - reach).max(least)..=(guess + reach + 1).max(least))
        .filter_map(|boards| clear_bay(run, board, boards, ends).map(|bay| (boards, bay)))
        .collect();
    counts.sort_by_key(|(boards, bay)| ((*bay - target).size(), *boards));
    counts.truncate(most);
    counts
}

/// The fewest boards with which no bay is wider than `widest`; `None` when even a single bay's worth cannot be had.
pub fn fewest_boards(run: Exact, board: Length, widest: Length, ends: RunEnds) -> Option<i64> {
    if !widest.is_positive() || !run.is_positive() {
        return None;
    }
    let pitch = (widest + board).exact();
    // (run ∓ widest) / pitch, rounded up: from n × board + bays × widest ≥ run.
    let share = match ends {
        RunEnds::BoardBoth => run + widest,
        RunEnds::BayBoth => run - widest,
        RunEnds::BoardAndBay => run,
    };
    let least = if ends == RunEnds::BoardBoth { 2 } else { 1 };
    let (top, bottom) = (share.nm().checked_mul(pitch.parts())?, share.parts().checked_mul(pitch.nm())?);
    i64::try_from(num_integer::div_ceil(top, bottom)).ok().map(|boards| boards.max(least))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{SIXTY_FOURTH, Tape, print};

    /// Sixty-fourths of an inch.
    fn in64(whole: i64, top: i64, bottom: i64) -> Length {
        Length::sixty_fourths(whole * 64 + top * 64 / bottom)
    }

    #[test]
    fn bays_of_handbook_runs() {
        // Plane identities, (L − n·w)/(n ± 1), multiplied out with another program to nine decimals.
        use RunEnds::{BayBoth, BoardBoth};
        for (run, board, boards, ends, inches) in [
            (in64(144, 0, 1), in64(3, 1, 2), 9, BayBoth, 11.25),
            (in64(144, 0, 1), in64(3, 1, 2), 9, BoardBoth, 14.0625),
            (in64(137, 3, 8), in64(2, 1, 2), 7, BayBoth, 14.984_375),
            (in64(137, 3, 8), in64(2, 1, 2), 7, BoardBoth, 19.979_166_666_666_668),
            (in64(96, 0, 1), in64(5, 1, 2), 5, BayBoth, 11.416_666_666_666_666),
            (in64(211, 13, 16), in64(3, 1, 2), 12, BayBoth, 13.0625),
            (in64(60, 1, 4), in64(1, 1, 2), 4, BayBoth, 10.85),
            (in64(31, 7, 8), in64(0, 3, 4), 2, BayBoth, 10.125),
        ] {
            let bay = clear_bay(run.exact(), board, boards, ends).expect("a bay is left");
            assert!((bay.in_mm() / 25.4 - inches).abs() < 1e-9, "{run}, {boards}: {bay:?}");
        }
        for (run, board, boards, mm) in
            [(3658, 89, 9, 285.7), (2750, 64, 6, 338.0), (1804, 70, 4, 304.8), (2995, 90, 7, 295.625)]
        {
            let bay = clear_bay(Length::mm(run).exact(), Length::mm(board), boards, BayBoth).expect("a bay is left");
            assert!((bay.in_mm() - mm).abs() < 1e-9, "{run}: {bay:?}");
        }
    }

    #[test]
    fn left_edges_are_read_each_for_itself() {
        // The same identities, x = i·g + (i − 1)·w, to the nearest sixteenth.
        for (run, board, boards, i, mark) in [
            (in64(144, 0, 1), in64(3, 1, 2), 9, 1, "11 1/4 in"),
            (in64(144, 0, 1), in64(3, 1, 2), 9, 5, "70 1/4 in"),
            (in64(137, 3, 8), in64(2, 1, 2), 7, 1, "15 in"),
            (in64(137, 3, 8), in64(2, 1, 2), 7, 4, "67 7/16 in"),
            (in64(211, 13, 16), in64(3, 1, 2), 12, 6, "95 7/8 in"),
            (in64(211, 13, 16), in64(3, 1, 2), 12, 12, "195 1/4 in"),
        ] {
            let left = left_edges(run.exact(), board, boards, RunEnds::BayBoth)[i - 1];
            assert_eq!(print::inches(Tape::Sixteenth.mark(left).shown().exact(), 16), mark);
        }
    }

    #[test]
    fn fewest_boards_under_a_widest_bay() {
        use RunEnds::{BayBoth, BoardBoth};
        for (run, board, widest, ends, boards) in [
            (in64(144, 0, 1), in64(3, 1, 2), 12, BayBoth, 9),
            (in64(144, 0, 1), in64(3, 1, 2), 12, BoardBoth, 11),
            (in64(211, 13, 16), in64(3, 1, 2), 14, BayBoth, 12),
            (in64(96, 0, 1), in64(2, 1, 2), 8, BayBoth, 9),
            (in64(43, 1, 2), in64(3, 1, 2), 20, BayBoth, 1),
        ] {
            assert_eq!(fewest_boards(run.exact(), board, Length::inches(widest), ends), Some(boards), "{run}");
        }
    }

    #[test]
    fn counts_on_both_sides_of_the_wish() {
        // Common practice arithmetic, worked by hand: 144-3/8 with boards of 2-1/2.
        let run = in64(144, 3, 8).exact();
        let board = in64(2, 1, 2);
        let bay = |boards, ends| clear_bay(run, board, boards, ends).expect("a bay is left").nearest(SIXTY_FOURTH);
        assert_eq!(bay(9, RunEnds::BoardBoth), in64(15, 15, 64));
        assert_eq!(bay(10, RunEnds::BoardBoth), in64(13, 17, 64));
        assert_eq!(nearest_counts(run, board, Length::inches(13), RunEnds::BoardBoth, 3)[0].0, 10);
        assert!(clear_bay(run, board, 58, RunEnds::BoardBoth).is_none());
        assert!(clear_bay(run, board, 1, RunEnds::BoardBoth).is_none());
    }
}
