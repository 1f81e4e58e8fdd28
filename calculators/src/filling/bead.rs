//! Beads: their section, and how far a cartridge goes.
//!
//! The leg of a fillet is not its face, the hole in a nozzle is not the bead, and 10.1 US fl oz, 290, 300 and 310 mL are four cartridges.

use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Input, Source, Standing};
use crate::quantity::{Amount, Length, kind};

/// Where the sections come from.
pub const SOURCE: Source = Source::new(GEOMETRY, "length is volume over section", Standing::Derived);

/// The section of a bead.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
pub enum BeadShape {
    /// A full round; the size is its diameter.
    Round,
    /// A half round lying on its flat; the size is its diameter.
    HalfRound,
    /// A straight fillet in a corner; the size is its leg.
    TriangularFillet,
    /// A fillet tooled hollow; the size is its radius.
    ConcaveFillet,
    /// A joint filled square; sizes are width and depth.
    Rectangle,
}

impl BeadShape {
    /// Area of the section in square millimetres; a rectangle takes `depth`, the others leave it aside.
    pub fn section_mm2(self, size: Length, depth: Length) -> f64 {
        let size = size.in_mm();
        match self {
            Self::Round => std::f64::consts::PI * size * size / 4.0,
            Self::HalfRound => std::f64::consts::PI * size * size / 8.0,
            Self::TriangularFillet => size * size / 2.0,
            Self::ConcaveFillet => size * size * (1.0 - std::f64::consts::FRAC_PI_4),
            Self::Rectangle => size * depth.in_mm(),
        }
    }

    /// The formula of the section, in `a` and `c`, and its value from them.
    pub const fn formula(self) -> &'static str {
        match self {
            Self::Round => "pi * a ^ 2 / 4",
            Self::HalfRound => "pi * a ^ 2 / 8",
            Self::TriangularFillet => "a ^ 2 / 2",
            Self::ConcaveFillet => "a ^ 2 * (1 - pi / 4)",
            Self::Rectangle => "a * c",
        }
    }
}

/// Metres of bead that a volume gives, with a share of what is bought lost; a lost share of 0 to less than 1.
pub fn metres_per(volume: Amount<kind::SmallVolume>, section_mm2: f64, lost: f64) -> f64 {
    volume.get() / section_mm2 * (1.0 - lost)
}

/// Whole cartridges for a length in metres; a count that comes out whole within a millionth stays.
pub fn cartridges_for(metres: f64, metres_each: f64) -> u32 {
    libm::ceil(metres / metres_each - 1e-6).clamp(0.0, 1e6) as u32
}
