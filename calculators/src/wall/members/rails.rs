//! Rails and new base as pieces of trim: straight from turn to turn, closed or open at their ends, joined on studs.

use super::joints::{JointWork, joints};
use super::rail_runs::{RailEnd, RailRun, RailRuns};
use crate::fixing::studs;
use crate::quantity::{Amount, Exact, Length, Reading};
use crate::wall::defaults::{SHORTEST_BOARD, SQUARE_KINK};
use crate::wall::geometry::{Rect, Span};
use crate::wall::layout::Ground;
use crate::wall::plan::{CutKind, EndCut, Member, MemberKind, Point};
use crate::wall::survey::EndKind;

/// A line steeper than this many degrees is cut to its slope.
const SLOPING: f64 = 0.5;

/// Every rail and new base of a wall; the second value says which of the two ends of each are closed: met by something that does not
/// yield. A piece beside a turn that would be shorter than the smallest is left out, and noted in `runs`.
pub fn rail_members(ground: &Ground<'_>, runs: &mut RailRuns, studs: &[Length]) -> Vec<(Member, [bool; 2])> {
    let least = SHORTEST_BOARD.in_units(ground.settled.units()).exact();
    let mut short = Vec::new();
    let mut found: Vec<(Member, [bool; 2])> = Vec::new();
    let mut joined: Vec<Length> = Vec::new();
    for run in &runs.runs {
        let tops = run.line.top.vertices(run.x);
        let bottoms = run.line.bottom.vertices(run.x);
        let mut corners = vec![(
            Point { x: run.x.from, y: run.line.bottom.after(run.x.from) },
            Point { x: run.x.from, y: run.line.top.after(run.x.from) },
        )];
        // The bottom edge turns beside the top edge; they go together in order.
        corners.extend(tops.iter().enumerate().map(|(n, top)| {
            let below = Point { x: top.x, y: run.line.bottom.at(top.x) };
            (if tops.len() == bottoms.len() { bottoms[n] } else { below }, *top)
        }));
        corners.push((
            Point { x: run.x.to, y: run.line.bottom.at(run.x.to) },
            Point { x: run.x.to, y: run.line.top.at(run.x.to) },
        ));
        for (n, pair) in corners.windows(2).enumerate() {
            let x = Span::new(pair[0].1.x, pair[1].1.x);
            if x.size() < least {
                short.push((run.line.kind, Rect::new(x, run.line.band(x))));
                continue;
            }
            let number = found.iter().filter(|(member, _)| member.kind == run.line.kind).count() + 1;
            let id = format!("{}-{}-{number}", ground.input.survey.name, word(run.line.kind));
            let ends = [
                if n == 0 { Some(run.ends[0]) } else { None },
                if n + 2 == corners.len() { Some(run.ends[1]) } else { None },
            ];
            found.push(piece(ground, id, run, pair, ends, studs, &mut joined));
        }
    }
    runs.short.extend(short);
    found
}

/// The word for a kind of rail on its label.
pub const fn word(kind: MemberKind) -> &'static str {
    match kind {
        MemberKind::TopRail => "top",
        MemberKind::MidRail => "mid",
        MemberKind::SillRail => "sill",
        MemberKind::HeadRail => "head",
        MemberKind::Base => "base",
        MemberKind::Cap => "cap",
        MemberKind::Moulding => "moulding",
        MemberKind::Board | MemberKind::UnderBoard | MemberKind::OverBoard => "board",
    }
}

fn piece(
    ground: &Ground<'_>,
    id: String,
    run: &RailRun,
    corners: &[(Point, Point)],
    ends: [Option<RailEnd>; 2],
    studs: &[Length],
    joined: &mut Vec<Length>,
) -> (Member, [bool; 2]) {
    let outline = vec![corners[0].0, corners[1].0, corners[1].1, corners[0].1];
    let top = Span::new(outline[3].x, outline[2].x);
    let degrees = run.line.top.degrees_before(top.middle());
    let (length, first_edge, second_edge) = lengths(&outline, degrees);
    let closed = ends.map(|end| end.is_some_and(|end| end != RailEnd::Wall));
    let closed = [closed[0] || wall_closes(ground, ends[0], 0), closed[1] || wall_closes(ground, ends[1], 1)];
    let low = outline[0].x.min(top.from);
    let high = outline[1].x.max(top.to);
    let mut member = Member {
        id,
        kind: run.line.kind,
        position: None,
        outline,
        width: run.line.section.width.exact(),
        thickness: run.line.section.thickness,
        length: cut_length(ground, length, closed, ends),
        first_edge,
        second_edge,
        start: end_cut(ground, run, top.from, degrees, ends[0], 0),
        end: end_cut(ground, run, top.to, degrees, ends[1], 1),
        notches: Vec::new(),
        taper: None,
        edges: Default::default(),
        joints: Vec::new(),
        joint_places: Vec::new(),
        studs: studs::between(low, high, studs),
    };
    let work = JointWork { input: ground.input, settled: ground.settled, degrees };
    (member.joints, member.joint_places) = joints(&member, &work, joined);
    (member, closed)
}

/// Whether the end of the wall closes a rail: another wall or a casing does, the air and an outside corner do not.
fn wall_closes(ground: &Ground<'_>, end: Option<RailEnd>, which: usize) -> bool {
    let survey = &ground.input.survey;
    let kind = if which == 0 { survey.left.kind } else { survey.right.kind };
    end == Some(RailEnd::Wall)
        && matches!(kind, EndKind::InsideFirst | EndKind::InsideSecond | EndKind::CasingBay | EndKind::CasingBoard)
}

/// What the saw is set to. Closed at both ends a rail is never over, less the room asked for at its ends; with a mitre round an outside
/// corner the long point goes to the nearest stop; with an end that yields the tape is near enough.
fn cut_length(ground: &Ground<'_>, length: Exact, closed: [bool; 2], ends: [Option<RailEnd>; 2]) -> Reading {
    let (tape, saw) = (ground.settled.tape, ground.settled.saw_tape);
    if closed == [true, true] {
        let gap = ground.input.scheme.rails.end_gap.map_or(Length::ZERO, Length::from);
        return saw.short(length - gap * 2);
    }
    if mitred(ground, ends) { saw.mark(length) } else { tape.mark(length) }
}

fn mitred(ground: &Ground<'_>, ends: [Option<RailEnd>; 2]) -> bool {
    let survey = &ground.input.survey;
    let at = |end: Option<RailEnd>, kind| end == Some(RailEnd::Wall) && kind == EndKind::OutsideMitred;
    at(ends[0], survey.left.kind) || at(ends[1], survey.right.kind)
}

/// Long point to long point, top edge, bottom edge.
pub(super) fn lengths(outline: &[Point], degrees: f64) -> (Exact, Exact, Exact) {
    let (top, bottom) = (outline[2].x - outline[3].x, outline[1].x - outline[0].x);
    let level = outline[2].x.max(outline[1].x) - outline[3].x.min(outline[0].x);
    if degrees == 0.0 {
        return (level, top, bottom);
    }
    let (sine, cosine) = (libm::sin(degrees.to_radians()), libm::cos(degrees.to_radians()));
    let along = |point: &Point| point.x.in_mm() * cosine + point.y.in_mm() * sine;
    let ends: Vec<f64> = outline.iter().map(along).collect();
    // Plumb ends of a slope too slight to cut are cut square: the length is that of the edges.
    let length = if degrees.abs() < SLOPING { ends[2] - ends[3] } else { ends[1].max(ends[2]) - ends[0].min(ends[3]) };
    let nm = |mm: f64| Length::nearest_mm(mm).exact();
    (nm(length), nm(ends[2] - ends[3]), nm(ends[1] - ends[0]))
}

fn end_cut(ground: &Ground<'_>, run: &RailRun, at: Exact, degrees: f64, end: Option<RailEnd>, which: usize) -> EndCut {
    let cut = |cut, degrees: f64| EndCut { cut, saw: Amount::of(degrees) };
    let survey = &ground.input.survey;
    match end {
        None => {
            // A kink: both pieces take half of it; less than a quarter of a degree is cut square.
            let half = (run.line.top.degrees_after(at) - run.line.top.degrees_before(at)).abs() / 2.0;
            if half < SQUARE_KINK { cut(CutKind::Square, 0.0) } else { cut(CutKind::Mitre, half) }
        }
        Some(_) if SLOPING <= degrees.abs() => cut(CutKind::Rake, degrees.abs()),
        Some(RailEnd::Wall) => {
            let end = if which == 0 { &survey.left } else { &survey.right };
            match (end.kind, end.angle) {
                (EndKind::OutsideMitred, Some(angle)) => cut(CutKind::Bevel, 90.0 - angle.get() / 2.0),
                _ => cut(CutKind::Square, 0.0),
            }
        }
        Some(_) => cut(CutKind::Square, 0.0),
    }
}
