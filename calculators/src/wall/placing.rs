//! Boards at their places: the counts of a layout on the frame, moved off plates as far as the leeway allows.

use super::clash::{FilledRun, Limits};
use super::defaults::Settled;
use super::frame::{Frame, StopperSource};
use super::plan::{Position, Standing};
use super::scheme::Scheme;
use super::survey::{Agreed, Survey};
use crate::quantity::{Exact, Length};

/// Something that a board must keep off, with its clearance on both sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Taken {
    /// What it is.
    pub what: TakenBy,
    /// Left edge of the thing itself.
    pub left: Exact,
    /// Right edge of the thing itself.
    pub right: Exact,
    /// Lowest edge.
    pub bottom: Exact,
    /// Highest edge.
    pub top: Exact,
    /// Clear wall that it needs on both sides.
    pub clearance: Length,
}

/// What takes a place on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TakenBy {
    /// A box, by its index in the survey.
    Box(usize),
    /// A narrow part to be kept clear, by its index in the survey.
    KeepClear(usize),
}

impl Taken {
    /// The stretch that no board may touch.
    pub fn stretch(&self) -> (Exact, Exact) {
        (self.left - self.clearance, self.right + self.clearance)
    }
}

/// One run with its boards, before and after plates were cleared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlacedRun {
    /// The run and its count.
    pub filled: FilledRun,
    /// The stopper below or above which it lies.
    pub stopper: Option<usize>,
    /// What takes places along it.
    pub taken: Vec<Taken>,
    /// Left edges in the end.
    pub lefts: Vec<Exact>,
    /// Indexes into `taken` of what could not be cleared.
    pub left_over: Vec<usize>,
}

/// All boards of a layout at their places.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placed {
    /// Every board, numbered from the left.
    pub positions: Vec<Position>,
    /// The runs, in the order of the frame.
    pub runs: Vec<PlacedRun>,
}

impl Placed {
    /// How many plates are left in the way of boards that could have moved.
    pub fn left_over(&self) -> usize {
        self.runs.iter().map(|run| run.left_over.len()).sum()
    }
}

/// Puts so many boards into each run of a frame.
pub fn place(frame: &Frame, counts: &[usize], survey: &Survey, scheme: &Scheme, settled: &Settled) -> Placed {
    let all = taken(survey, frame, settled);
    let board = scheme.board_width.get();
    let mut runs = Vec::with_capacity(frame.runs.len());
    for (run, boards) in frame.runs.iter().zip(counts) {
        let filled = FilledRun { left: run.left, right: run.right, board, boards: *boards };
        let stopper = run.stopper.and_then(|n| frame.stoppers.get(n));
        let along = |taken: &&Taken| {
            let (from, to) = taken.stretch();
            let beside = from < run.right && run.left < to;
            beside
                && stopper.is_none_or(|stopper| {
                    stopper.bottom.is_some_and(|bottom| stopper.under && taken.bottom < bottom)
                        || (stopper.over && stopper.top < taken.top)
                })
        };
        let taken: Vec<Taken> = all.iter().filter(along).copied().collect();
        let stretches: Vec<(Exact, Exact)> = taken.iter().map(Taken::stretch).collect();
        let limits = limits(&filled, settled);
        let cleared = filled.cleared(&stretches, limits);
        runs.push(PlacedRun {
            filled,
            stopper: run.stopper,
            taken,
            lefts: cleared.lefts,
            left_over: cleared.left_over,
        });
    }
    Placed { positions: positions(frame, &runs), runs }
}

/// The leeway of one run.
pub fn limits(run: &FilledRun, settled: &Settled) -> Limits {
    Limits { shift: settled.max_shift, change: settled.change_limit(run.bay()), step: settled.tape.step() }
}

/// Everything on the wall that boards must keep off, except boxes for which something else was agreed.
pub fn taken(survey: &Survey, frame: &Frame, settled: &Settled) -> Vec<Taken> {
    let boxes = survey.boxes.iter().enumerate().filter(|(_, plate)| plate.agreed.is_none()).map(|(n, plate)| Taken {
        what: TakenBy::Box(n),
        left: plate.left.get().exact(),
        right: plate.right.get().exact(),
        bottom: plate.bottom.get().exact(),
        top: plate.top.get().exact(),
        clearance: settled.clearance,
    });
    let narrow = survey
        .keep_clear
        .iter()
        .enumerate()
        .filter(|(n, _)| !frame.stoppers.iter().any(|stopper| stopper.source == StopperSource::KeepClear(*n)));
    let zones = narrow.map(|(n, zone)| {
        let out = zone.clearance.map_or(settled.clearance, Length::from);
        Taken {
            what: TakenBy::KeepClear(n),
            left: zone.left.get().exact(),
            right: zone.right.get().exact(),
            bottom: (zone.bottom.get() - out).exact(),
            top: (zone.top.get() + out).exact(),
            clearance: out,
        }
    });
    boxes.chain(zones).collect()
}

fn positions(frame: &Frame, runs: &[PlacedRun]) -> Vec<Position> {
    let fixed = frame.fixed.iter().map(|fixed| Position {
        number: 0,
        left: fixed.left,
        right: fixed.right,
        board_left: fixed.board_left,
        board_right: fixed.board_right,
        why: fixed.why,
        shifted: Exact::ZERO,
    });
    let field = runs.iter().flat_map(|run| {
        run.lefts.iter().zip(run.filled.lefts()).map(|(left, origin)| {
            let right = *left + run.filled.board;
            Position {
                number: 0,
                left: *left,
                right,
                board_left: *left,
                board_right: right,
                why: Standing::Field,
                shifted: *left - origin,
            }
        })
    });
    let mut positions: Vec<Position> = fixed.chain(field).collect();
    positions.sort_by_key(|position| (position.board_left, position.board_right));
    for (n, position) in positions.iter_mut().enumerate() {
        position.number = n + 1;
    }
    positions
}

/// Makes the board that meets a plate wide enough to carry it, for every box for which that was agreed.
pub fn widen(positions: &mut [Position], survey: &Survey, settled: &Settled) {
    let margin = super::defaults::CUT_CLEARANCE.in_units(settled.units());
    for plate in survey.boxes.iter().filter(|plate| plate.agreed == Some(Agreed::WideBoard)) {
        let (left, right) = (plate.left.get().exact(), plate.right.get().exact());
        let centre = (left + right).half();
        let carrying = super::notch::carrying_width(right - left, margin, settled.edge_radius);
        let nearest = positions
            .iter_mut()
            .filter(|position| position.why == Standing::Field)
            .min_by_key(|position| ((position.left + position.right).half() - centre).size());
        let Some(position) = nearest else { continue };
        let width = carrying.max(position.right - position.left);
        let moved = centre - width.half() - position.left;
        position.left = centre - width.half();
        position.right = centre + width.half();
        (position.board_left, position.board_right) = (position.left, position.right);
        position.shifted = position.shifted + moved;
    }
}
