//! Boards as pieces of trim: each stands between the lines that it meets at its own place, and takes their slopes.

use super::boarding::Boarding;
use super::defaults::{SHORTEST_BOARD, Settled};
use super::frame::Frame;
use super::line::Line;
use super::measured::Measured;
use super::plan::{CutKind, EndCut, Member, MemberKind, Point, Position, Standing};
use super::rail_members::middle;
use super::scheme::{Rounding, Scheme};
use super::survey::{EndKind, Survey};
use crate::fixing::studs;
use crate::quantity::{Amount, Exact, Length};

/// What boards are made with.
pub struct BoardWork<'a> {
    /// The survey.
    pub survey: &'a Survey,
    /// The scheme.
    pub scheme: &'a Scheme,
    /// The measured wall.
    pub wall: &'a Measured,
    /// The lines of the boarding.
    pub boarding: &'a Boarding,
    /// Fixed boards and what interrupts the boarding.
    pub frame: &'a Frame,
    /// Filled-in settings.
    pub settled: &'a Settled,
    /// Stud centres.
    pub studs: &'a [Length],
    /// Rails and base, already cut.
    pub rails: &'a [Member],
}

/// The pieces of one board, from the bottom up.
pub fn board_members(position: &Position, work: &BoardWork<'_>) -> Vec<Member> {
    let pieces = rows_at(position.board_left, position.board_right, work);
    let several = pieces.len() > 1;
    let name = &work.survey.name;
    pieces
        .into_iter()
        .enumerate()
        .map(|(n, (low, high))| {
            let id = if several {
                format!("{name}-{}.{}", position.number, n + 1)
            } else {
                format!("{name}-{}", position.number)
            };
            member(id, position, &low, &high, work)
        })
        .collect()
}

/// The rows over a stretch of wall, from the bottom up: lower and upper line of each, rails and openings left out.
pub fn rows_at(left: Exact, right: Exact, work: &BoardWork<'_>) -> Vec<(Line, Line)> {
    let centre = middle(left, right);
    let least = SHORTEST_BOARD.in_units(work.settled.units()).exact();
    let mut rows: Vec<(Line, Line)> = Vec::new();
    let mut from = work.boarding.foot.clone();
    for (low, high) in obstacles(left, right, work) {
        let low = low.unwrap_or_else(|| from.clone());
        let low = if work.boarding.head.at(centre) < low.at(centre) { work.boarding.head.clone() } else { low };
        if least <= low.at(centre) - from.at(centre) {
            rows.push((from.clone(), low));
        }
        if from.at(centre) < high.at(centre) {
            from = high;
        }
    }
    if least <= work.boarding.head.at(centre) - from.at(centre) {
        rows.push((from, work.boarding.head.clone()));
    }
    rows
}

/// What a board meets from the bottom up: lower and upper line of each rail and opening over its width.
fn obstacles(left: Exact, right: Exact, work: &BoardWork<'_>) -> Vec<(Option<Line>, Line)> {
    let centre = middle(left, right);
    let mut found: Vec<(Exact, Option<Line>, Line)> = Vec::new();
    for stopper in work.frame.stoppers.iter().filter(|stopper| stopper.left < right && left < stopper.right) {
        let nm = Length::from_nm(1);
        let bottom = stopper.bottom.map(|bottom| Line::level(bottom.nearest(nm)));
        let from = stopper.bottom.unwrap_or_else(|| work.boarding.foot.at(centre));
        found.push((from, bottom, Line::level(stopper.top.nearest(nm))));
    }
    for rail in work.rails.iter().filter(|rail| rail.kind != MemberKind::Base) {
        let (first, last) = (rail.outline[3].x.min(rail.outline[0].x), rail.outline[2].x.max(rail.outline[1].x));
        if first < right && left < last {
            let (low, high) = lines_of(rail, work);
            found.push((low.at(centre), Some(low), high));
        }
    }
    found.sort_by_key(|found| found.0);
    // Pieces of one rail on both sides of a turn stand for the same line.
    found.dedup_by(|one, other| one.1 == other.1 && one.2 == other.2);
    found.into_iter().map(|(_, low, high)| (low, high)).collect()
}

/// The lines that a rail's piece belongs to, so that a board over a turn meets both sides of it.
fn lines_of(rail: &Member, work: &BoardWork<'_>) -> (Line, Line) {
    let nm = Length::from_nm(1);
    let centre = middle(rail.outline[3].x, rail.outline[2].x);
    let own = work.boarding.rails.iter().find(|line| {
        line.kind == rail.kind
            && (line.top.at(centre) - middle(rail.outline[3].y, rail.outline[2].y)).size() <= nm.exact()
    });
    match own {
        Some(line) => (line.bottom.clone(), line.top.clone()),
        None => {
            let point = |point: &Point| (point.x.nearest(nm), point.y.nearest(nm));
            let [a, b, c, d] = [0, 1, 2, 3].map(|n| point(&rail.outline[n]));
            (Line::through(vec![a, b]), Line::through(vec![d, c]))
        }
    }
}

fn member(id: String, position: &Position, low: &Line, high: &Line, work: &BoardWork<'_>) -> Member {
    let (left, right) = (position.board_left, position.board_right);
    let lower = edge(low, left, right);
    let upper = edge(high, left, right);
    let mut outline = lower.clone();
    outline.extend(upper.iter().rev().copied());
    let taper = scribe(&mut outline, position, work);

    let (start, foot_drop) = end_cut(&lower, work.settled);
    let (end, head_drop) = end_cut(&upper, work.settled);
    let at = |x: Exact| high.at(x) - low.at(x);
    let square = start.cut == CutKind::Square && end.cut == CutKind::Square;
    let length = if square {
        at(middle(left, right))
    } else {
        let top = upper.iter().map(|point| point.y).max().unwrap_or(Exact::ZERO);
        let bottom = lower.iter().map(|point| point.y).min().unwrap_or(Exact::ZERO);
        // A slope too slight to cut is taken at the middle of the board, as everywhere else.
        top - bottom
            - if start.cut == CutKind::Square { foot_drop.half() } else { Exact::ZERO }
            - if end.cut == CutKind::Square { head_drop.half() } else { Exact::ZERO }
    };
    let tape = work.settled.saw_tape;
    Member {
        id,
        kind: kind(position, low, work),
        position: Some(position.number),
        outline,
        width: right - left,
        thickness: work.scheme.board_thickness.get(),
        length: match work.scheme.rounding {
            Rounding::Nearest => tape.mark(length),
            Rounding::NeverOver => tape.short(length),
        },
        first_edge: at(left),
        second_edge: at(right),
        start,
        end,
        notches: Vec::new(),
        taper,
        joints: Vec::new(),
        joint_places: Vec::new(),
        studs: studs::between(left, right, work.studs),
    }
}

/// A line over the width of a board: its ends and its turns, from left to right.
fn edge(line: &Line, left: Exact, right: Exact) -> Vec<Point> {
    let mut points = vec![Point { x: left, y: line.at(left) }];
    points.extend(line.kinks(left, right));
    points.push(Point { x: right, y: line.at(right) });
    points
}

/// How an end is cut, and how much it drops over the board's width.
fn end_cut(points: &[Point], settled: &Settled) -> (EndCut, Exact) {
    let (first, last) = (points[0], points[points.len() - 1]);
    let drop = (last.y - first.y).size();
    let degrees = libm::atan2(drop.in_mm(), (last.x - first.x).in_mm()).to_degrees();
    if points.len() > 2 {
        let steepest = points.windows(2).map(|pair| {
            libm::atan2((pair[1].y - pair[0].y).in_mm(), (pair[1].x - pair[0].x).in_mm()).to_degrees().abs()
        });
        return (EndCut { cut: CutKind::TwoCuts, saw: Amount::of(steepest.fold(0.0, f64::max)) }, drop);
    }
    let (cut, degrees) =
        if drop <= settled.saw_tape.step().exact().half() { (CutKind::Square, 0.0) } else { (CutKind::Rake, degrees) };
    (EndCut { cut, saw: Amount::of(degrees) }, drop)
}

fn kind(position: &Position, low: &Line, work: &BoardWork<'_>) -> MemberKind {
    let centre = middle(position.board_left, position.board_right);
    let inside = work.frame.stoppers.iter().find(|stopper| stopper.left < centre && centre < stopper.right);
    match inside {
        None => MemberKind::Board,
        Some(stopper) if low.at(centre) < stopper.top => MemberKind::UnderBoard,
        Some(_) => MemberKind::OverBoard,
    }
}

/// Lets the outer edge of an end board follow a wall that leans; answers how much it tapers.
fn scribe(outline: &mut [Point], position: &Position, work: &BoardWork<'_>) -> Option<Exact> {
    if !matches!(position.why, Standing::End | Standing::Pier) {
        return None;
    }
    let scribed = |kind| matches!(kind, EndKind::InsideFirst | EndKind::InsideSecond | EndKind::CasingBoard);
    let (left, right) = (position.board_left, position.board_right);
    let wall = work.wall;
    let mut taper = None;
    let reach = work.scheme.board_width.get().exact();
    if left < reach && scribed(work.survey.left.kind) {
        taper = follow(outline, left, |height| (wall.left_at(height) + left).min(middle(left, right)));
    }
    let inset = wall.length.exact() - right;
    if inset < reach && scribed(work.survey.right.kind) {
        taper = follow(outline, right, |height| (wall.right_at(height) - inset).max(middle(left, right))).or(taper);
    }
    taper
}

fn follow(outline: &mut [Point], edge: Exact, at: impl Fn(Exact) -> Exact) -> Option<Exact> {
    let mut reach: Option<(Exact, Exact)> = None;
    for point in outline.iter_mut().filter(|point| point.x == edge) {
        point.x = at(point.y);
        reach = Some(reach.map_or((point.x, point.x), |(low, high)| (low.min(point.x), high.max(point.x))));
    }
    reach.map(|(low, high)| high - low).filter(|taper| taper.is_positive())
}
