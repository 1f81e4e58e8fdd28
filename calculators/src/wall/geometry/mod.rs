//! The plane of a wall: stretches, rectangles, lines across it, and the string that is pulled tight under a ceiling.
//!
//! All tests are on open sets: what touches does not overlap.

mod line;
mod rect;
mod span;
mod taut;

pub use line::Line;
pub use rect::Rect;
pub use span::{Span, left_free, united};
pub use taut::{TURN, Taut, most_light, split_where_it_departs};

use crate::quantity::Exact;

/// Below everything on a wall: where the field ends at the foot.
pub const DEEP: Exact = Exact::whole(-1_000_000_000_000);
/// Above everything on a wall: where the field ends at the top.
pub const HIGH: Exact = Exact::whole(1_000_000_000_000);
