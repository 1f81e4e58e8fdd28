//! A piece of trim on the wall: its outline, its ends, its notches and joints.

use crate::catalogue::{Node, Output, Shape, Shaped};
use crate::quantity::{Amount, Exact, Length, Reading, kind};
use crate::wall::geometry::Span;

/// A point on the elevation: along from zero, up from the zero level.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Point {
    /// Along the wall.
    pub x: Exact,
    /// Above the zero level.
    pub y: Exact,
}

impl Shaped for Point {
    const SHAPE: Shape = <[i64; 2]>::SHAPE;
    fn node(&self) -> Node {
        [self.x, self.y].map(|place| place.nearest(Length::from_nm(1)).nm()).node()
    }
}

/// A piece of trim on the wall.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Member {
    /// Its label: wall, number, and which end is up where it has one.
    pub id: String,
    /// What it is.
    pub kind: MemberKind,
    /// The board's number from the left; none for rails and bases.
    pub position: Option<usize>,
    /// Its outline on the elevation, anticlockwise from the lower left.
    pub outline: Vec<Point>,
    /// Width across its length.
    pub width: Exact,
    /// Thickness.
    pub thickness: Length,
    /// Shortest stock it is cut from, long point to long point.
    pub length: Reading,
    /// Along its left edge (a board) or its top edge (a rail).
    pub first_edge: Exact,
    /// Along its right edge (a board) or its bottom edge (a rail).
    pub second_edge: Exact,
    /// The cut at the foot of a board or the left end of a rail.
    pub start: EndCut,
    /// The cut at the head of a board or the right end of a rail.
    pub end: EndCut,
    /// Notches round plates.
    pub notches: Vec<Notch>,
    /// A taper to be scribed along an edge where the wall leans.
    pub taper: Option<Exact>,
    /// Long edges that are not square.
    pub edges: LongEdges,
    /// Where it is joined, when it is longer than any stick.
    pub joints: Vec<Joint>,
    /// Where its single joint could stand as well: studs on which both parts fit a stick.
    #[field(skip)]
    pub joint_places: Vec<Length>,
    /// Where the studs behind it are, from zero.
    pub studs: Vec<Length>,
}

impl Member {
    /// The stretch along the wall and the heights that its outline takes; none for a piece without one.
    pub fn spans(&self) -> Option<(Span, Span)> {
        let span = |of: fn(&Point) -> Exact| {
            let places = || self.outline.iter().map(of);
            places().min().zip(places().max()).map(|(from, to)| Span::new(from, to))
        };
        span(|point| point.x).zip(span(|point| point.y))
    }
}

/// The bevels of a piece's long edges, from square; nothing where an edge is square.
#[derive(Clone, Copy, Debug, Default, PartialEq, Output)]
pub struct LongEdges {
    /// Its left edge.
    pub left: Option<Amount<kind::Angle>>,
    /// Its right edge.
    pub right: Option<Amount<kind::Angle>>,
}

/// What a piece of trim is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Output)]
pub enum MemberKind {
    /// A vertical board between base or floor and a rail.
    Board,
    /// A board below a window.
    UnderBoard,
    /// A board above an opening.
    OverBoard,
    /// The rail along the top.
    TopRail,
    /// A rail between base and top rail.
    MidRail,
    /// A rail below a sill.
    SillRail,
    /// A rail above a head.
    HeadRail,
    /// The base, where it is new.
    Base,
    /// A cap or ledge on the top rail, or its return to the wall.
    Cap,
    /// A piece of a mitred frame inside a bay.
    Moulding,
}

/// How an end is cut.
#[derive(Clone, Copy, Debug, PartialEq, Output)]
pub struct EndCut {
    /// The way it is cut.
    pub cut: CutKind,
    /// What the saw is set to, from a square cut.
    pub saw: Amount<kind::Angle>,
}

/// The ways in which an end is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Output)]
pub enum CutKind {
    /// Square.
    Square,
    /// A mitre across the face.
    Mitre,
    /// A bevel through the thickness.
    Bevel,
    /// Parallel to a slope.
    Rake,
    /// Two cuts that meet, because a line turns within the board.
    TwoCuts,
    /// To a curve, by a template.
    Curve,
    /// A scarf to the next piece.
    Scarf,
}

/// A cut-out round a plate.
#[derive(Clone, Copy, Debug, PartialEq, Output)]
pub struct Notch {
    /// Left edge of the cut-out.
    pub left: Exact,
    /// Right edge of the cut-out.
    pub right: Exact,
    /// Lower edge.
    pub bottom: Exact,
    /// Upper edge.
    pub top: Exact,
    /// Width of wood that is left beside it.
    pub neck: Exact,
    /// Radius of its inner corners.
    pub radius: Length,
    /// Air round the plate's back.
    pub clearance: Length,
}

/// A joint between two pieces of one member.
#[derive(Clone, Copy, Debug, PartialEq, Output)]
pub struct Joint {
    /// The stud on which it is made, from zero.
    pub stud: Length,
    /// Angle of the cut from the face.
    pub angle: Amount<kind::Angle>,
    /// How far the two pieces lap along the rail.
    pub lap: Exact,
    /// Where it is along the rail, from its left long point.
    pub along: Length,
}
