//! A cap or ledge on the top rail: its front along the rail, and at free ends a return mitred back to the wall.

use super::rail_runs::{RailEnd, RailRun};
use crate::quantity::{Amount, Exact, Length};
use crate::wall::geometry::Span;
use crate::wall::layout::Ground;
use crate::wall::plan::{CutKind, EndCut, Member, MemberKind, Point};
use crate::wall::scheme::{Cap, CapEnds};
use crate::wall::survey::EndKind;

const SQUARE: EndCut = EndCut { cut: CutKind::Square, saw: Amount::of(0.0) };
const MITRE: EndCut = EndCut { cut: CutKind::Mitre, saw: Amount::of(45.0) };

/// The pieces of the cap on every level stretch of the top rail. A return is seen from its end alone and has no width on the elevation.
///
/// At a free end the front overhangs by as much as the cap stands out over the rail and is mitred; the return's long point is the cap's
/// depth. Against a wall or a casing it ends square.
/// # Source
/// Plane geometry; returned ends are common practice, no source.
pub fn caps(ground: &Ground<'_>, runs: &[RailRun]) -> Vec<(Member, [bool; 2])> {
    let Some(cap) = ground.input.scheme.cap else { return Vec::new() };
    let mut found: Vec<(Member, [bool; 2])> = Vec::new();
    let top = |run: &&RailRun| {
        run.line.kind == MemberKind::TopRail && {
            let (low, high) = run.line.top.range(run.x);
            low == high
        }
    };
    for run in runs.iter().filter(top) {
        let overhang = (cap.depth.get() - run.line.section.thickness).max(Length::ZERO);
        let free = [0, 1].map(|end| is_free(ground, run, end) && cap.ends == CapEnds::Returned);
        let out = |free: bool| if free { overhang } else { Length::ZERO };
        let front = Span::new(run.x.from - out(free[0]), run.x.to + out(free[1]));
        let low = run.line.top.after(run.x.from);
        let heights = Span::new(low, low + cap.thickness.get());
        let cut = |free: bool| if free { MITRE } else { SQUARE };
        found.push((
            piece(ground, &cap, found.len() + 1, front, heights, front.size(), [cut(free[0]), cut(free[1])]),
            free.map(|free| !free && cap.ends != CapEnds::Square),
        ));
        for end in [0, 1].into_iter().filter(|end| free[*end]) {
            let at = if end == 0 { front.from } else { front.to };
            let depth = cap.depth.get().exact();
            let own = piece(ground, &cap, found.len() + 1, Span::new(at, at), heights, depth, [MITRE, SQUARE]);
            found.push((own, [false, true]));
        }
    }
    found
}

fn is_free(ground: &Ground<'_>, run: &RailRun, end: usize) -> bool {
    let survey = &ground.input.survey;
    let kind = if end == 0 { survey.left.kind } else { survey.right.kind };
    run.ends[end] == RailEnd::Wall && matches!(kind, EndKind::OpenBay | EndKind::OpenBoard)
}

fn piece(
    ground: &Ground<'_>,
    cap: &Cap,
    number: usize,
    x: Span,
    y: Span,
    length: Exact,
    [start, end]: [EndCut; 2],
) -> Member {
    let corner = |x: Exact, y: Exact| Point { x, y };
    Member {
        id: format!("{}-cap-{number}", ground.input.survey.name),
        kind: MemberKind::Cap,
        position: None,
        outline: vec![corner(x.from, y.from), corner(x.to, y.from), corner(x.to, y.to), corner(x.from, y.to)],
        width: cap.depth.get().exact(),
        thickness: cap.thickness.get(),
        length: ground.settled.saw_tape.mark(length),
        first_edge: length,
        second_edge: length,
        start,
        end,
        notches: Vec::new(),
        taper: None,
        edges: Default::default(),
        joints: Vec::new(),
        joint_places: Vec::new(),
        studs: Vec::new(),
    }
}
