//! What goes into a wall besides boards, and what is lost of it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::quantity::{Physical, Within, kind};

/// A shop's beads, cartridges, losses and reserves. What is empty is the book's estimate.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "What goes in and what is lost")]
pub struct Usage {
    /// Diameter; empty is 1/4 in (6 mm).
    #[serde(default)]
    #[schemars(title = "Bead of adhesive", extend("x-usual" = ["3/16 in", "3/8 in"]))]
    pub bead: Option<Within<3_000, 13_000>>,
    /// Bead length over board length; empty is 1.25.
    #[serde(default)]
    #[schemars(title = "Wave of the bead")]
    pub wave: Option<Physical<kind::Number, 1_000, 3_000>>,
    /// Nozzle, tube and squeeze-out; empty is 10 %.
    #[serde(default)]
    #[schemars(title = "Adhesive lost", extend("x-usual" = ["5 %", "40 %"]))]
    pub adhesive_lost: Option<Physical<kind::Percent, 0, 70_000>>,
    /// As printed on it; empty is 10.1 US fl oz (300 mL).
    #[serde(default)]
    #[schemars(title = "Cartridge of adhesive")]
    pub adhesive_cartridge: Option<Physical<kind::SmallVolume, 30_000, 1_200_000>>,
    /// Of the caulk's fillet, along wall and board; empty is 1/8 in (3 mm).
    #[serde(default)]
    #[schemars(title = "Leg of the caulk", extend("x-usual" = ["1/16 in", "3/16 in"]))]
    pub leg: Option<Within<700, 10_000>>,
    /// Nozzle, tube and cloth; empty is 25 %.
    #[serde(default)]
    #[schemars(title = "Caulk lost", extend("x-usual" = ["5 %", "40 %"]))]
    pub caulk_lost: Option<Physical<kind::Percent, 0, 70_000>>,
    /// As printed on it; empty is 10.1 US fl oz (300 mL).
    #[serde(default)]
    #[schemars(title = "Cartridge of caulk")]
    pub caulk_cartridge: Option<Physical<kind::SmallVolume, 30_000, 1_200_000>>,
    /// Filler that one takes; empty is 0.05 mL.
    #[serde(default)]
    #[schemars(title = "A nail hole holds")]
    pub hole: Option<Physical<kind::SmallVolume, 1, 20_000>>,
    /// While it dries; empty is 10 %.
    #[serde(default)]
    #[schemars(title = "Filler shrinks", extend("x-usual" = ["0 %", "20 %"]))]
    pub shrink: Option<Physical<kind::Percent, 0, 60_000>>,
    /// As printed on it; empty is 180 ft (55 m).
    #[serde(default)]
    #[schemars(title = "Roll of tape")]
    pub tape_roll: Option<Within<1_000_000, 200_000_000>>,
    /// For laps, corners and torn ends; empty is 10 %.
    #[serde(default)]
    #[schemars(title = "Tape on top", extend("x-usual" = ["5 %", "20 %"]))]
    pub tape_extra: Option<Physical<kind::Percent, 0, 100_000>>,
    /// Kept back for putting right; empty is 5 %.
    #[serde(default)]
    #[schemars(title = "Paint on top")]
    pub paint_reserve: Option<Physical<kind::Percent, 0, 100_000>>,
}
