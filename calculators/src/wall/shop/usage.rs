//! What goes into a wall besides boards, and what is lost of it.

use crate::catalogue::Input;
use crate::quantity::{Physical, Within, kind};

/// A shop's beads, cartridges, losses and reserves. What is empty is the book's estimate.
#[derive(Clone, Copy, Debug, Default, PartialEq, Input)]
#[field("What goes in and what is lost")]
pub struct Usage {
    /// Diameter; empty is 1/4 in (6 mm).
    #[field("Bead of adhesive", default, usual = ["3/16 in", "3/8 in"])]
    pub bead: Option<Within<3_000, 13_000>>,
    /// Bead length over board length; empty is 1.25.
    #[field("Wave of the bead", default)]
    pub wave: Option<Physical<kind::Number, 1_000, 3_000>>,
    /// Nozzle, tube and squeeze-out; empty is 10 %.
    #[field("Adhesive lost", default, usual = ["5 %", "40 %"])]
    pub adhesive_lost: Option<Physical<kind::Percent, 0, 70_000>>,
    /// As printed on it; empty is 10.1 US fl oz (300 mL).
    #[field("Cartridge of adhesive", default)]
    pub adhesive_cartridge: Option<Physical<kind::SmallVolume, 30_000, 1_200_000>>,
    /// Of the caulk's fillet, along wall and board; empty is 1/8 in (3 mm).
    #[field("Leg of the caulk", default, usual = ["1/16 in", "3/16 in"])]
    pub leg: Option<Within<700, 10_000>>,
    /// Nozzle, tube and cloth; empty is 25 %.
    #[field("Caulk lost", default, usual = ["5 %", "40 %"])]
    pub caulk_lost: Option<Physical<kind::Percent, 0, 70_000>>,
    /// As printed on it; empty is 10.1 US fl oz (300 mL).
    #[field("Cartridge of caulk", default)]
    pub caulk_cartridge: Option<Physical<kind::SmallVolume, 30_000, 1_200_000>>,
    /// Filler that one takes; empty is 0.05 mL.
    #[field("A nail hole holds", default)]
    pub hole: Option<Physical<kind::SmallVolume, 1, 20_000>>,
    /// While it dries; empty is 10 %.
    #[field("Filler shrinks", default, usual = ["0 %", "20 %"])]
    pub shrink: Option<Physical<kind::Percent, 0, 60_000>>,
    /// As printed on it; empty is 180 ft (55 m).
    #[field("Roll of tape", default)]
    pub tape_roll: Option<Within<1_000_000, 200_000_000>>,
    /// For laps, corners and torn ends; empty is 10 %.
    #[field("Tape on top", default, usual = ["5 %", "20 %"])]
    pub tape_extra: Option<Physical<kind::Percent, 0, 100_000>>,
    /// Kept back for putting right; empty is 5 %.
    #[field("Paint on top", default)]
    pub paint_reserve: Option<Physical<kind::Percent, 0, 100_000>>,
}
