//! Mitred frames of a moulding inside the bays: four pieces each, with a margin of bare wall round them.

use crate::quantity::{Amount, Exact, Length};
use crate::wall::defaults::MOULDING_TO_PLATE;
use crate::wall::geometry::{Rect, Span};
use crate::wall::layout::{Ground, Thing};
use crate::wall::plan::{CutKind, EndCut, Member, MemberKind, Point};
use crate::wall::scheme::Mouldings;

/// A bay as its four corners: both ends of its foot, both ends of its head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BayShape {
    /// From side to side.
    pub x: Span,
    /// The foot at the left and at the right.
    pub foot: (Exact, Exact),
    /// The head at the left and at the right.
    pub head: (Exact, Exact),
    /// Which row it lies in, counted from the bottom, beginning with 1.
    pub row: usize,
    /// True where its foot and its head are straight.
    pub straight: bool,
}

/// The frames of all bays that take one, and the places of those that do not: too small for it, not straight, or in the way of a plate or
/// a narrow thing.
///
/// Each piece is as long as the outer side of its frame; beside a plumb side that meets a line of slope r the saw is set to 45° ± r/2.
/// # Source
/// Plane geometry; frames with one margin all round are common practice, no source.
pub fn mouldings(ground: &Ground<'_>, things: &[Thing], bays: &[BayShape]) -> (Vec<(Member, [bool; 2])>, Vec<Rect>) {
    let Some(asked) = &ground.input.scheme.mouldings else { return Default::default() };
    let rows: Vec<u32> = asked.rows.iter().map(|row| row.get()).collect();
    let (mut found, mut left_out): (Vec<(Member, [bool; 2])>, _) = (Vec::new(), Vec::new());
    for bay in bays {
        if !rows.is_empty() && !rows.iter().any(|row| usize::try_from(*row) == Ok(bay.row)) {
            continue;
        }
        let whole = Rect::new(bay.x, Span::new(bay.foot.0.min(bay.foot.1), bay.head.0.max(bay.head.1)));
        let frame = Frame::of(bay, asked);
        match frame.filter(|frame| frame.has_room(asked) && frame.is_clear(ground, things)) {
            Some(frame) => {
                for side in 0..4 {
                    let number = found.len() + 1;
                    found.push((frame.piece(side, number, ground, asked), [false, false]));
                }
            }
            None => left_out.push(whole),
        }
    }
    (found, left_out)
}

/// A frame by the corners of its outer and its inner outline, anticlockwise from the lower left.
struct Frame {
    outer: [Point; 4],
    inner: [Point; 4],
    /// Slope of its foot and of its head in degrees.
    slopes: (f64, f64),
}

impl Frame {
    fn of(bay: &BayShape, asked: &Mouldings) -> Option<Self> {
        let slope = |(from, to): (Exact, Exact)| {
            if from == to { 0.0 } else { libm::atan2((to - from).in_mm(), bay.x.size().in_mm()).to_degrees() }
        };
        let slopes = (slope(bay.foot), slope(bay.head));
        let margin = asked.margin.get();
        Some(Self {
            outer: inset(bay, slopes, margin)?,
            inner: inset(bay, slopes, margin + asked.width.get())?,
            slopes,
        })
        .filter(|_| bay.straight)
    }

    /// Inside it is at least twice as wide and as high as the moulding.
    fn has_room(&self, asked: &Mouldings) -> bool {
        let least = (asked.width.get() * 2).exact();
        let [a, b, c, d] = self.inner;
        least <= b.x - a.x && least <= d.y - a.y && least <= c.y - b.y
    }

    /// Nothing that a person must reach or that must stay clear lies under it.
    fn is_clear(&self, ground: &Ground<'_>, things: &[Thing]) -> bool {
        let air = MOULDING_TO_PLATE.in_units(ground.settled.units());
        let plates = ground.input.survey.boxes.iter().map(|plate| {
            Rect::new(
                Span::new(plate.left.get().exact(), plate.right.get().exact()),
                Span::new(plate.bottom.get().exact(), plate.top.get().exact()),
            )
            .grown(air)
        });
        let things = things.iter().flat_map(|thing| thing.parts.iter().copied());
        plates.chain(things).all(|taken| (0..4).all(|side| !self.bounds(side).overlaps(taken)))
    }

    fn corners(&self, side: usize) -> [Point; 4] {
        let next = (side + 1) % 4;
        [self.outer[side], self.outer[next], self.inner[next], self.inner[side]]
    }

    fn bounds(&self, side: usize) -> Rect {
        let corners = self.corners(side);
        let span = |of: fn(&Point) -> Exact| {
            let places = || corners.iter().map(of);
            Span::new(places().min().unwrap_or(Exact::ZERO), places().max().unwrap_or(Exact::ZERO))
        };
        Rect::new(span(|point| point.x), span(|point| point.y))
    }

    fn piece(&self, side: usize, number: usize, ground: &Ground<'_>, asked: &Mouldings) -> Member {
        let corners = self.corners(side);
        let along = |from: Point, to: Point| {
            if from.y == to.y {
                (to.x - from.x).size()
            } else if from.x == to.x {
                (to.y - from.y).size()
            } else {
                Length::nearest_mm(libm::hypot((to.x - from.x).in_mm(), (to.y - from.y).in_mm())).exact()
            }
        };
        let (length, inner) = (along(corners[0], corners[1]), along(corners[3], corners[2]));
        // Half of the corner's angle: the foot makes 90° + slope with the left side, 90° − slope with the right one; the head the other way.
        let (foot, head) = self.slopes;
        let turns = [foot, -foot, head, -head];
        let saw = |corner: usize| EndCut { cut: CutKind::Mitre, saw: Amount::of(45.0 + turns[corner] / 2.0) };
        Member {
            id: format!("{}-moulding-{number}", ground.input.survey.name),
            kind: MemberKind::Moulding,
            position: None,
            outline: corners.to_vec(),
            width: asked.width.get().exact(),
            thickness: asked.thickness.get(),
            length: ground.settled.saw_tape.mark(length),
            first_edge: length,
            second_edge: inner,
            start: saw(side),
            end: saw((side + 1) % 4),
            notches: Vec::new(),
            taper: None,
            edges: Default::default(),
            joints: Vec::new(),
            joint_places: Vec::new(),
            studs: Vec::new(),
        }
    }
}

/// The corners of a bay drawn in by so much on all four sides, square to each; none where nothing is left.
fn inset(bay: &BayShape, slopes: (f64, f64), by: Length) -> Option<[Point; 4]> {
    let x = Span::new(bay.x.from + by, bay.x.to - by);
    let on = |(from, _): (Exact, Exact), slope: f64, up: bool, at: Exact| {
        if slope == 0.0 {
            return if up { from + by } else { from - by };
        }
        let tangent = libm::tan(slope.to_radians());
        let rise = Length::nearest_mm((at - bay.x.from).in_mm() * tangent);
        let plumb = Length::nearest_mm(by.in_mm() / libm::cos(slope.to_radians()));
        if up { from + rise + plumb } else { from + rise - plumb }
    };
    let corner = |x: Exact, line: (Exact, Exact), slope: f64, up: bool| Point { x, y: on(line, slope, up, x) };
    let corners = [
        corner(x.from, bay.foot, slopes.0, true),
        corner(x.to, bay.foot, slopes.0, true),
        corner(x.to, bay.head, slopes.1, false),
        corner(x.from, bay.head, slopes.1, false),
    ];
    (x.is_open() && corners[0].y < corners[3].y && corners[1].y < corners[2].y).then_some(corners)
}
