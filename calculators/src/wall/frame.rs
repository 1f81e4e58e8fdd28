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
mod tests {
    //! Common practice arithmetic, worked by hand, on a wall of 100 in with boards of 2 in, 1/2 in thick.

    use super::*;
    use crate::wall::plan::Layout;
    use crate::wall::planning::plan;
    use serde_json::{Value, json};

    fn layout(change: impl FnOnce(&mut Value)) -> Layout {
        let mut wall = json!({
            "survey": {
                "name": "W", "datum": "40 in", "lengths": [{ "height": "0 in", "length": "100 in" }],
                "base": { "height": "5 in", "thickness": "1/2 in" },
                "left": { "kind": "open-bay" }, "right": { "kind": "open-bay" }
            },
            "scheme": {
                "board_width": "2 in", "board_thickness": "1/2 in", "target_bay": "12 in",
                "rails": { "width": "3 in", "top": "60 in" }
            }
        });
        change(&mut wall);
        let plan = plan(&serde_json::from_value(wall).expect("a wall")).unwrap_or_else(|faults| panic!("{faults:#?}"));
        plan.layouts[0].clone()
    }

    fn inches(exact: Exact) -> f64 {
        exact.in_mm() / 25.4
    }

    #[test]
    fn every_kind_of_end_begins_its_run_where_it_should() {
        for (kind, run, rip, rail) in [
            ("inside-first", 2.5, 2.5, 0.0),
            ("inside-second", 2.5, 2.0, 0.5),
            ("outside-lapping", 2.0, 2.5, -0.5),
            ("outside-lapped", 2.0, 2.0, 0.0),
            ("outside-mitred", 2.0, 2.5, -0.5),
            ("casing-board", 2.0, 2.0, 0.0),
            ("open-board", 2.0, 2.0, 0.0),
            ("casing-bay", 0.0, 0.0, 0.0),
            ("open-bay", 0.0, 0.0, 0.0),
        ] {
            let layout = layout(|wall| wall["survey"]["left"] = json!({ "kind": kind, "angle": 90 }));
            let first = &layout.positions[0];
            let ripped = if run > 0.0 { inches(first.board_right - first.board_left) } else { 0.0 };
            let top = layout.members.iter().find(|member| member.position.is_none()).expect("a top rail");
            assert!((inches(layout.runs[0].left) - run).abs() < 1e-6, "{kind}: {}", inches(layout.runs[0].left));
            assert!((ripped - rip).abs() < 1e-6, "{kind}: {ripped}");
            assert!((inches(top.outline[0].x) - rail).abs() < 1e-6, "{kind}");
            // The other end is the same end seen in a mirror.
            let other = self::layout(|wall| wall["survey"]["right"] = json!({ "kind": kind, "angle": 90 }));
            let last = other.runs.last().expect("a run");
            assert!((100.0 - inches(last.right) - run).abs() < 1e-6, "{kind} at the right");
        }
    }

    #[test]
    fn equal_stock_shows_less_of_the_first_wall() {
        let layout = layout(|wall| {
            wall["survey"]["left"] = json!({ "kind": "inside-first" });
            wall["scheme"]["corner_boards"] = json!("equal-stock");
        });
        assert!((inches(layout.positions[0].left) - 0.5).abs() < 1e-9);
        assert!((inches(layout.positions[0].right) - 2.0).abs() < 1e-9);
    }

    #[test]
    fn a_heater_is_framed_and_its_clearance_kept() {
        let layout = layout(|wall| {
            wall["survey"]["keep_clear"] = json!([{
                "kind": "heater", "left": "40 in", "right": "64 in", "bottom": "6 in", "top": "26 in", "clearance": "2 in"
            }]);
        });
        let at = |x: f64| layout.positions.iter().any(|board| (inches(board.left) - x).abs() < 1e-6);
        assert!(at(36.0) && at(66.0), "{:#?}", layout.positions);
        // Boards above it stand on a rail that clears the label's two inches.
        let head = layout.members.iter().find(|member| member.id == "W-head-1").expect("a rail above it");
        assert!((inches(head.outline[0].y) - 28.0).abs() < 1e-6);
        assert!(layout.conflicts.iter().all(|conflict| conflict.members.is_empty()), "{:#?}", layout.conflicts);
    }

    #[test]
    fn a_clearance_that_nobody_read_stops_the_work() {
        use crate::wall::plan::{ConflictKind, Severity};
        let layout = layout(|wall| {
            wall["survey"]["keep_clear"] =
                json!([{ "kind": "vent", "left": "40 in", "right": "44 in", "bottom": "6 in", "top": "12 in" }]);
            wall["survey"]["openings"] =
                json!([{ "kind": "fireplace", "left": "60 in", "right": "90 in", "top": "36 in" }]);
        });
        let unread = layout.conflicts.iter().filter(|conflict| {
            conflict.what == ConflictKind::ClearanceUnknown && conflict.severity == Severity::Settle
        });
        assert_eq!(unread.count(), 2);
    }

    #[test]
    fn a_fireplace_keeps_boards_at_its_clearance() {
        let layout = layout(|wall| {
            wall["survey"]["openings"] = json!([{
                "kind": "fireplace", "left": "40 in", "right": "70 in", "top": "36 in", "clearance": "6 in"
            }]);
        });
        let tight: Vec<_> = layout.positions.iter().filter(|board| board.why == Standing::Opening).collect();
        assert!((inches(tight[0].right) - 34.0).abs() < 1e-6 && (inches(tight[1].left) - 76.0).abs() < 1e-6);
    }

    #[test]
    fn bays_to_the_casing_put_boards_inside_the_window() {
        let layout = layout(|wall| {
            wall["scheme"]["treatment"] = json!("bays-to-edges");
            wall["survey"]["openings"] = json!([{
                "kind": "window", "left": "30 in", "right": "70 in", "bottom": "30 in", "top": "80 in", "casing_projection": "1/2 in"
            }]);
        });
        let full = layout.members.iter().filter(|member| member.kind == crate::wall::plan::MemberKind::Board);
        assert!(full.clone().count() > 0);
        for board in full {
            let (left, right) = (inches(board.outline[0].x), inches(board.outline[1].x));
            assert!(right < 30.0 || left > 70.0, "{left} to {right}");
        }
        let under: Vec<_> = layout.positions.iter().filter(|board| board.why == Standing::Opening).collect();
        assert!((inches(under[0].left) - 30.0).abs() < 1e-6 && (inches(under[1].right) - 70.0).abs() < 1e-6);
    }

    #[test]
    fn a_loft_wall_follows_its_ceiling() {
        let layout = layout(|wall| {
            wall["survey"]["stations"] = json!([
                { "at": "0 in", "datum_to_floor": "40 in", "floor_to_ceiling": "45 in" },
                { "at": "100 in", "datum_to_floor": "40 in", "floor_to_ceiling": "95 in" }
            ]);
            wall["scheme"]["rails"] = json!({ "width": "3 in", "top_line": "ceiling-no-rail" });
        });
        for board in layout.members.iter().filter(|member| member.position.is_some()) {
            let left = inches(board.outline[0].x);
            // One in two, from 40 clear above the base.
            assert!((inches(board.first_edge) - (40.0 + left / 2.0)).abs() < 1e-6, "{}", board.id);
            assert!((inches(board.second_edge - board.first_edge) - 1.0).abs() < 1e-6);
            assert!((board.end.saw.get() - 26.565).abs() < 0.001);
        }
    }

    #[test]
    fn equal_rows_share_the_height() {
        let layout = layout(|wall| wall["scheme"]["rails"] = json!({ "width": "3 in", "top": "60 in", "rows": 2 }));
        let mids = layout.members.iter().filter(|member| member.kind == crate::wall::plan::MemberKind::MidRail);
        let mid: Vec<_> = mids.collect();
        // 60 - 5 - 2 × 3 = 49; the lower row ends at 5 + 24-1/2.
        assert_eq!(mid.len(), 1);
        assert!((inches(mid[0].outline[0].y) - 29.5).abs() < 1e-6);
        assert!(layout.bays.iter().all(|bay| (inches(bay.height) - 24.5).abs() < 1e-6));
    }

    #[test]
    fn long_rails_are_joined_on_different_studs() {
        let layout = layout(|wall| {
            wall["survey"]["lengths"] = json!([{ "height": "0 in", "length": "267 1/2 in" }]);
            wall["survey"]["studs"] = json!({ "first": "16 in", "spacing": "16 in" });
            wall["scheme"]["rails"]["rows"] = json!(2);
            wall["stock"] = json!({ "sticks": [{ "length": "16'" }], "end_trim": "1/2 in" });
        });
        let joints: Vec<_> = layout.members.iter().flat_map(|member| &member.joints).map(|joint| joint.stud).collect();
        assert_eq!(joints.len(), 2);
        assert_ne!(joints[0], joints[1]);
        assert!(joints.contains(&Length::inches(128)));
        assert!(layout.pieces.iter().filter(|piece| piece.rail).count() == 4);
    }
}
