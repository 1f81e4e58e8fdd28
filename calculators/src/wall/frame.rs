//! The frame of a layout: boards that cannot move, and the runs between them.
//!
//! A board stands at every closed end, tight against every opening, and at the first and last nosing of a stair. Where two of
//! them would overlap on a narrow pier, one wider board takes their place.

use super::boarding::Boarding;
use super::corners::{CornerBoard, corner_board};
use super::defaults::SHORTEST_BOARD;
use super::measured::Measured;
use super::plan::Standing;
use super::scheme::{Scheme, Treatment};
use super::survey::{EndKind, OpeningKind, Survey};
use crate::quantity::{Exact, Length};

/// A stretch of wall where boards cannot stand at full height.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stopper {
    /// Left edge, clearance included.
    pub left: Exact,
    /// Right edge, clearance included.
    pub right: Exact,
    /// Lowest edge; none where it stands on the floor.
    pub bottom: Option<Exact>,
    /// Highest edge.
    pub top: Exact,
    /// What it is.
    pub source: StopperSource,
    /// Whether boards stand below it.
    pub under: bool,
    /// Whether boards stand above it.
    pub over: bool,
}

/// What a stopper is, with its index in the survey.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StopperSource {
    /// An opening.
    Opening(usize),
    /// A part to be kept clear that is too wide for a bay.
    KeepClear(usize),
}

/// A board that cannot move.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FixedBoard {
    /// Left edge that can be seen.
    pub left: Exact,
    /// Right edge that can be seen.
    pub right: Exact,
    /// Left edge of the board itself.
    pub board_left: Exact,
    /// Right edge of the board itself.
    pub board_right: Exact,
    /// Why it stands there.
    pub why: Standing,
}

/// A run between fixed boards or ends.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenRun {
    /// Where it starts.
    pub left: Exact,
    /// Where it ends.
    pub right: Exact,
    /// The stopper below or above which it lies.
    pub stopper: Option<usize>,
}

/// Fixed boards and runs, each from left to right.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Frame {
    /// What interrupts the boarding.
    pub stoppers: Vec<Stopper>,
    /// Boards that cannot move.
    pub fixed: Vec<FixedBoard>,
    /// What is left between them.
    pub runs: Vec<OpenRun>,
}

/// The frame of a scheme on a measured wall. `widest_bay` decides which parts to be kept clear are framed by boards.
pub fn frame(survey: &Survey, scheme: &Scheme, wall: &Measured, boarding: &Boarding, widest_bay: Exact) -> Frame {
    let stoppers = stoppers(survey, scheme, boarding, widest_bay);
    let mut frame = Frame { stoppers, ..Frame::default() };
    let board = scheme.board_width.get().exact();
    let at_edges = scheme.treatment == Treatment::BoardsAtEdges;

    let left_end = corner_board(&survey.left, scheme);
    let right_end = corner_board(&survey.right, scheme);
    let mut from = Exact::ZERO;
    let mut left_board = left_end.map(|corner| at_left_end(corner, survey.left.kind));
    let edges: Vec<(Exact, Exact)> = frame.stoppers.iter().map(|stopper| (stopper.left, stopper.right)).collect();
    for (left, right) in edges {
        let right_board = at_edges.then(|| tight(left - board, left, Standing::Opening));
        pier(&mut frame, from, left, left_board.take(), right_board, scheme, wall);
        left_board = at_edges.then(|| tight(right, right + board, Standing::Opening));
        from = right;
    }
    let end = wall.length.exact();
    let right_board = right_end.map(|corner| at_right_end(corner, survey.right.kind, end));
    pier(&mut frame, from, end, left_board, right_board, scheme, wall);
    below_and_above(&mut frame, scheme);
    frame.fixed.sort_by_key(|fixed| (fixed.board_left, fixed.board_right));
    frame.runs.sort_by_key(|run| (run.left, run.right));
    frame
}

fn stoppers(survey: &Survey, scheme: &Scheme, boarding: &Boarding, widest_bay: Exact) -> Vec<Stopper> {
    let least = SHORTEST_BOARD.in_units(scheme.tape.units()) + scheme.rails.width.get();
    let mut found = Vec::new();
    let openings = survey.openings.iter().enumerate().map(|(n, opening)| {
        let out =
            opening.clearance.filter(|_| opening.kind == OpeningKind::Fireplace).map_or(Length::ZERO, Length::from);
        let bottom = opening.bottom.map(|bottom| (bottom.get() - out).exact());
        (
            StopperSource::Opening(n),
            [opening.left.get() - out, opening.right.get() + out].map(Length::exact),
            bottom,
            (opening.top.get() + out).exact(),
        )
    });
    let zones = survey.keep_clear.iter().enumerate().filter_map(|(n, zone)| {
        let out = zone.clearance.map_or(Length::ZERO, Length::from);
        let [left, right] = [zone.left.get() - out, zone.right.get() + out].map(Length::exact);
        // A narrow one finds room within a bay; a wide one is framed like an opening.
        let wide = widest_bay < (right - left) * 2;
        wide.then(|| {
            let (bottom, top) = ((zone.bottom.get() - out).exact(), (zone.top.get() + out).exact());
            (StopperSource::KeepClear(n), [left, right], Some(bottom), top)
        })
    });
    for (source, [left, right], bottom, top) in openings.chain(zones) {
        let foot = boarding.foot.range(left, right);
        let (head, highest) = (boarding.head.range(left, right).0, boarding.top.range(left, right).1);
        if top <= foot.0 || bottom.is_some_and(|bottom| highest <= bottom) {
            continue;
        }
        let under = bottom.is_some_and(|bottom| foot.1 + least < bottom);
        let over = top + least < head;
        found.push(Stopper { left, right, bottom, top, source, under, over });
    }
    found.sort_by_key(|stopper| (stopper.left, stopper.right));
    merged(found)
}

/// Stoppers whose clearances run into each other become one.
fn merged(sorted: Vec<Stopper>) -> Vec<Stopper> {
    let mut apart: Vec<Stopper> = Vec::with_capacity(sorted.len());
    for stopper in sorted {
        match apart.last_mut() {
            Some(last) if stopper.left < last.right => {
                last.right = last.right.max(stopper.right);
                last.bottom = last.bottom.zip(stopper.bottom).map(|(one, other)| one.min(other));
                last.top = last.top.max(stopper.top);
                last.under &= stopper.under;
                last.over &= stopper.over;
            }
            _ => apart.push(stopper),
        }
    }
    apart
}

fn tight(left: Exact, right: Exact, why: Standing) -> FixedBoard {
    FixedBoard { left, right, board_left: left, board_right: right, why }
}

fn at_left_end(corner: CornerBoard, kind: EndKind) -> FixedBoard {
    let start = if kind == EndKind::InsideFirst { Exact::ZERO } else { corner.start };
    FixedBoard {
        left: corner.start,
        right: corner.start + corner.shows,
        board_left: start,
        board_right: corner.start + corner.shows,
        why: Standing::End,
    }
}

fn at_right_end(corner: CornerBoard, kind: EndKind, end: Exact) -> FixedBoard {
    let seen = at_left_end(corner, kind);
    FixedBoard {
        left: end - seen.right,
        right: end - seen.left,
        board_left: end - seen.board_right,
        board_right: end - seen.board_left,
        why: Standing::End,
    }
}

/// The boards and runs of one pier, from the end or opening on its left to the one on its right.
fn pier(
    frame: &mut Frame,
    from: Exact,
    to: Exact,
    left: Option<FixedBoard>,
    right: Option<FixedBoard>,
    scheme: &Scheme,
    wall: &Measured,
) {
    if to <= from {
        return;
    }
    let (start, stop) =
        (left.as_ref().map_or(from, |board| board.right), right.as_ref().map_or(to, |board| board.left));
    let crowded = match (&left, &right) {
        (Some(_), Some(_)) => stop <= start,
        (Some(_), None) | (None, Some(_)) => stop < start,
        (None, None) => false,
    };
    if crowded {
        let (seen_left, board_left) = left.as_ref().map_or((from, from), |board| (board.left, board.board_left));
        let (seen_right, board_right) = right.as_ref().map_or((to, to), |board| (board.right, board.board_right));
        if seen_right <= seen_left {
            // Boards on the other wall cover the whole of it.
            return;
        }
        frame.fixed.push(FixedBoard {
            left: seen_left,
            right: seen_right,
            board_left,
            board_right,
            why: Standing::Pier,
        });
        return;
    }
    frame.fixed.extend(left.into_iter().chain(right));
    let mut begin = start;
    for nosing in nosing_boards(scheme, wall) {
        if begin < nosing.left && nosing.right < stop {
            push_run(frame, begin, nosing.left);
            begin = nosing.right;
            frame.fixed.push(nosing);
        }
    }
    push_run(frame, begin, stop);
}

fn push_run(frame: &mut Frame, left: Exact, right: Exact) {
    if left < right {
        frame.runs.push(OpenRun { left, right, stopper: None });
    }
}

/// Boards at the first and the last nosing, inside the flight.
fn nosing_boards(scheme: &Scheme, wall: &Measured) -> Vec<FixedBoard> {
    let Some(flight) = &wall.flight else { return Vec::new() };
    let board = scheme.board_width.get();
    let (from, to) = wall.seen(flight.first, flight.last());
    if to - from < board * 2 {
        return Vec::new();
    }
    [(from, from + board), (to - board, to)]
        .map(|(left, right)| tight(left.exact(), right.exact(), Standing::Nosing))
        .to_vec()
}

/// Runs, and where bays run up to openings also boards, below and above what interrupts the boarding.
fn below_and_above(frame: &mut Frame, scheme: &Scheme) {
    let board = scheme.board_width.get().exact();
    for (n, stopper) in frame.stoppers.iter().enumerate().filter(|(_, stopper)| stopper.under || stopper.over) {
        let (mut left, mut right) = (stopper.left, stopper.right);
        if scheme.treatment == Treatment::BaysToEdges && board * 2 < right - left {
            frame.fixed.push(tight(left, left + board, Standing::Opening));
            frame.fixed.push(tight(right - board, right, Standing::Opening));
            (left, right) = (left + board, right - board);
        }
        if left < right {
            frame.runs.push(OpenRun { left, right, stopper: Some(n) });
        }
    }
}

#[cfg(test)]
mod tests;
