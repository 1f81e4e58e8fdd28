//! Pieces against each other: none overlaps another, each is as long as its outline says.

use super::Broken;
use crate::quantity::{Exact, Length};
use crate::wall::plan::{CutKind, Layout, Member, MemberKind, Point};

/// Outlines may differ from exact places by so much: slopes are kept to the nanometre.
const NEAR_MM: f64 = 0.002;
/// As far as a base is pressed down.
const PRESSED_MM: f64 = 25.4 / 16.0;

pub(super) fn check(layout: &Layout, found: &mut Vec<Broken>) {
    overlaps(layout, found);
    for member in layout.members.iter().filter(|member| member.position.is_some()) {
        length(member, found);
    }
}

/// A convex outline in millimetres.
struct Shape<'a> {
    member: &'a Member,
    points: Vec<(f64, f64)>,
    x: (f64, f64),
    y: (f64, f64),
}

impl<'a> Shape<'a> {
    fn of(member: &'a Member) -> Option<Self> {
        let points: Vec<(f64, f64)> = member.outline.iter().map(|point| (point.x.in_mm(), point.y.in_mm())).collect();
        let range = |of: fn(&(f64, f64)) -> f64| {
            points
                .iter()
                .map(of)
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
        };
        let (x, y) = (range(|point| point.0), range(|point| point.1));
        (x.0 + NEAR_MM < x.1 && y.0 + NEAR_MM < y.1).then_some(Self { member, points, x, y })
    }

    fn is_upright(&self) -> bool {
        self.points.iter().all(|(x, y)| {
            let at =
                |place: f64, ends: (f64, f64)| (place - ends.0).abs() < NEAR_MM || (place - ends.1).abs() < NEAR_MM;
            at(*x, self.x) && at(*y, self.y)
        })
    }

    /// Whether some straight line parts the two: an edge of one with all of the other outside it.
    fn parted_by_an_edge(&self, other: &Self) -> bool {
        let count = self.points.len();
        (0..count).any(|n| {
            let (from, to) = (self.points[n], self.points[(n + 1) % count]);
            let (along, up) = (to.0 - from.0, to.1 - from.1);
            let long = libm::hypot(along, up);
            long > NEAR_MM
                && other.points.iter().all(|(x, y)| (along * (y - from.1) - up * (x - from.0)) / long <= NEAR_MM)
        })
    }

    fn overlaps(&self, other: &Self) -> bool {
        let apart = |one: (f64, f64), two: (f64, f64)| one.1 <= two.0 + NEAR_MM || two.1 <= one.0 + NEAR_MM;
        if apart(self.x, other.x) || apart(self.y, other.y) {
            return false;
        }
        if self.is_upright() && other.is_upright() {
            return true;
        }
        !self.parted_by_an_edge(other) && !other.parted_by_an_edge(self)
    }
}

/// A new base is pressed down to a floor that leaves its straight pieces by up to 1/16 in; boards are cut by the measured line.
fn pressed_down(one: &Shape<'_>, other: &Shape<'_>) -> bool {
    let (base, board) = if one.member.kind == MemberKind::Base { (one, other) } else { (other, one) };
    base.member.kind == MemberKind::Base && board.member.position.is_some() && {
        let lower = |points: &[(f64, f64)]| points.iter().map(|(x, y)| (*x, *y - PRESSED_MM)).collect();
        let lowered = Shape { points: lower(&base.points), y: (base.y.0 - PRESSED_MM, base.y.1 - PRESSED_MM), ..*base };
        !lowered.overlaps(board)
    }
}

/// No two pieces overlap.
fn overlaps(layout: &Layout, found: &mut Vec<Broken>) {
    let mut shapes: Vec<Shape<'_>> = layout.members.iter().filter_map(Shape::of).collect();
    shapes.sort_by(|one, other| one.x.0.total_cmp(&other.x.0));
    for (n, shape) in shapes.iter().enumerate() {
        let near = shapes[n + 1..].iter().take_while(|other| other.x.0 < shape.x.1 - NEAR_MM);
        for other in near.filter(|other| shape.overlaps(other) && !pressed_down(shape, other)) {
            found.push(Broken::at("no two pieces overlap", &[&shape.member.id, &other.member.id]));
        }
    }
}

/// The height of an outline over a place: its highest less its lowest crossing there.
fn height_at(outline: &[Point], x: Exact) -> Option<Exact> {
    let mut crossings: Vec<Exact> = Vec::new();
    for n in 0..outline.len() {
        let (from, to) = (outline[n], outline[(n + 1) % outline.len()]);
        let (low, high) = (from.x.min(to.x), from.x.max(to.x));
        if x < low || high < x || low == high {
            continue;
        }
        let share = (x - from.x).in_mm() / (to.x - from.x).in_mm();
        crossings.push(from.y + Length::nearest_mm((to.y - from.y).in_mm() * share));
    }
    Some(*crossings.iter().max()? - *crossings.iter().min()?)
}

/// A board cut square at both ends is as long as its outline is high in its middle; another one at most as long as its outline is high.
fn length(member: &Member, found: &mut Vec<Broken>) {
    let Some((x, y)) = member.spans() else { return };
    let square = member.start.cut == CutKind::Square && member.end.cut == CutKind::Square;
    let stated = member.length.exact;
    // A leaning edge moves the middle of the outline, not that of the board.
    let near = if member.taper.is_some() { Length::mm(1) } else { Length::um(2) }.exact();
    let right = if square {
        height_at(&member.outline, x.middle()).is_some_and(|height| (height - stated).size() <= near)
    } else {
        stated <= y.size() + near
    };
    if !right || !stated.is_positive() {
        found.push(Broken::at("a board is as long as its outline", &[&member.id]));
    }
    if (stated - member.length.shown()).size() > member.length.tape.step() {
        found.push(Broken::at("a cut length is within one stop of the exact one", &[&member.id]));
    }
}
