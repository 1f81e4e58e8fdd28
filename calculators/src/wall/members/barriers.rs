//! What a board meets on its way up, and where a rail meets a thing.

use crate::quantity::{Exact, Length};
use crate::wall::boarding::RailLine;
use crate::wall::geometry::{Line, Rect, Span};
use crate::wall::layout::{Curve, Thing};
use crate::wall::plan::Point;

/// One edge that a board ends on, over the board's width.
#[derive(Clone, Debug)]
pub(super) enum Side<'a> {
    /// A line of the boarding.
    Line(&'a Line),
    /// A level edge.
    Level(Exact),
    /// The head of an arch, or a sloping head.
    Curve(&'a Curve),
}

impl Side<'_> {
    /// Its height over the left edge, the middle or the right edge of a stretch, seen from inside it.
    pub(super) fn left(&self, over: Span) -> Exact {
        match self {
            Self::Line(line) => line.after(over.from),
            Self::Level(height) => *height,
            Self::Curve(curve) => curve.at(over.from),
        }
    }

    pub(super) fn right(&self, over: Span) -> Exact {
        match self {
            Self::Line(line) => line.at(over.to),
            Self::Level(height) => *height,
            Self::Curve(curve) => curve.at(over.to),
        }
    }

    pub(super) fn at(&self, x: Exact) -> Exact {
        match self {
            Self::Line(line) => line.at(x),
            Self::Level(height) => *height,
            Self::Curve(curve) => curve.at(x),
        }
    }

    /// It as points from left to right over a stretch.
    pub(super) fn points(&self, over: Span) -> Vec<Point> {
        if let Self::Curve(curve) = self {
            return curve.points(over).into_iter().map(|(x, y)| Point { x, y }).collect();
        }
        let mut points = vec![Point { x: over.from, y: self.left(over) }];
        if let Self::Line(line) = self {
            points.extend(line.vertices(over));
        }
        points.push(Point { x: over.to, y: self.right(over) });
        points
    }
}

/// What an edge belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Met {
    /// The foot of the boarding.
    Foot,
    /// The head of the boarding.
    Head,
    /// A rail, by its index.
    Rail(usize),
    /// A thing, by its index.
    Thing(usize),
    /// Nothing: the board is left out beyond.
    Nothing,
}

/// Something across a board: its lower and upper edge.
pub(super) struct Barrier<'a> {
    pub(super) low: Side<'a>,
    pub(super) high: Side<'a>,
    pub(super) met: Met,
}

/// The stretch along which a rail's band overlaps a part of a thing; none where they do not meet.
pub(super) fn meets(line: &RailLine, part: Rect, head: Option<&Curve>) -> Option<Span> {
    let band = line.band(part.x);
    if !band.overlaps(part.y) {
        return None;
    }
    let curve = head.filter(|curve| curve.springing() < band.to && curve.springing() <= part.y.to);
    let (low, high) = (line.bottom.range(part.x), line.top.range(part.x));
    if curve.is_none() && low.0 == low.1 && high.0 == high.1 {
        return Some(part.x);
    }
    let upper = |x: Exact| curve.map_or(part.y.to, |curve| curve.at(x));
    let inside = |x: Exact| line.bottom.at(x) < upper(x) && part.y.from < line.top.at(x);
    // Sixty-four looks find where it begins and ends; halving closes in on both to the nanometre, from outside.
    let places: Vec<Exact> =
        (0..=64).map(|k| part.x.from + part.x.size().times(k, 64).unwrap_or(Exact::ZERO)).collect();
    let hit = |from: usize, to: usize| {
        let middle = (places[from] + places[to]).half();
        inside(middle)
    };
    let first = (0..64).find(|k| inside(places[*k]) || hit(*k, k + 1))?;
    let last = (1..=64).rev().find(|k| inside(places[*k]) || hit(k - 1, *k))?;
    let middle = |k: usize, other: usize| (places[k] + places[other]).half();
    let from = if inside(places[first]) && first == 0 {
        places[0]
    } else {
        let within = if inside(places[first]) { places[first] } else { middle(first, first + 1) };
        close_in(places[first.saturating_sub(usize::from(inside(places[first])))], within, inside)
    };
    let to = if inside(places[last]) && last == 64 {
        places[64]
    } else {
        let within = if inside(places[last]) { places[last] } else { middle(last, last - 1) };
        close_in(places[(last + usize::from(inside(places[last]))).min(64)], within, inside)
    };
    Some(Span::new(from, to)).filter(|span| span.is_open())
}

/// The last place outside on the way from one outside to one inside, to the nanometre.
fn close_in(outside: Exact, within: Exact, inside: impl Fn(Exact) -> bool) -> Exact {
    let nm = Length::from_nm(1);
    let (mut out, mut within) = (outside.nearest(nm), within.nearest(nm));
    while (within - out).size() > nm {
        let middle = (out + within).exact().half().nearest(nm);
        if middle == out || middle == within {
            break;
        }
        if inside(middle.exact()) { within = middle } else { out = middle }
    }
    out.exact()
}

/// The parts of things across a strip, each with its curved head where it has one.
pub(super) fn things_across<'a>(things: &'a [Thing], strip: Span) -> impl Iterator<Item = Barrier<'a>> {
    let across = move |(n, thing): (usize, &'a Thing)| {
        let parts = thing.parts.iter().filter(move |part| part.x.overlaps(strip));
        parts.map(move |part| {
            let curved = thing.head.as_ref().filter(|_| part.y == thing.parts[0].y);
            let high = curved.map_or(Side::Level(part.y.to), Side::Curve);
            Barrier { low: Side::Level(part.y.from), high, met: Met::Thing(n) }
        })
    };
    things.iter().enumerate().flat_map(across)
}
