//! Where cables may run behind a wall with no outlet to show it, by the rules of one country.

use crate::quantity::Length;

/// Width of the zones along the top of a wall and along the corner of two walls, United Kingdom.
/// # Source
/// BS 7671, 522.6.202, as quoted in public summaries: cables less than [`DEPTH`] deep.
pub const ZONE: Length = Length::mm(150);
/// Depth below which a cable must lie in a zone, United Kingdom.
/// # Source
/// BS 7671, 522.6.202, as quoted in public summaries.
pub const DEPTH: Length = Length::mm(50);
