//! A rectangle on the wall.

use super::Span;
use crate::quantity::{Exact, Length};

/// Upright: along the wall and up it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rect {
    /// Along the wall.
    pub x: Span,
    /// Above the zero level.
    pub y: Span,
}

impl Rect {
    /// By its two directions.
    pub const fn new(x: Span, y: Span) -> Self {
        Self { x, y }
    }

    /// True where the insides of the two share anything.
    pub fn overlaps(self, other: Self) -> bool {
        self.x.overlaps(other.x) && self.y.overlaps(other.y)
    }

    /// Larger by so much on all four sides.
    pub fn grown(self, by: Length) -> Self {
        Self { x: self.x.grown(by), y: self.y.grown(by) }
    }

    /// The smallest rectangle round both.
    pub fn hull(self, other: Self) -> Self {
        Self { x: self.x.hull(other.x), y: self.y.hull(other.y) }
    }

    /// Left, bottom, right, top.
    pub const fn sides(self) -> [Exact; 4] {
        [self.x.from, self.y.from, self.x.to, self.y.to]
    }
}
