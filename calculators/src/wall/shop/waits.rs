//! Waits between tasks: what a shop has seen, and what the data sheets say.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::quantity::{Physical, kind};

/// A wait on the clock, day and night: up to 1,000 hours.
pub type WaitHours = Physical<kind::Hours, 0, 1_000_000>;

/// One wait. Where both times are given the longer governs; where neither is, the book's estimate stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Wait")]
pub struct Wait {
    /// As the shop's own jobs have shown.
    #[serde(default)]
    #[schemars(title = "The shop's own")]
    pub own: Option<WaitHours>,
    /// On the data sheet: the least that is ever planned.
    #[serde(default)]
    #[schemars(title = "On the data sheet")]
    pub sheet: Option<WaitHours>,
}

/// The waits of a job, and the window in which tape is pulled.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Waits")]
pub struct Waits {
    /// From the last board fixed to the first sanding or filling; empty is 16 h.
    #[serde(default)]
    #[schemars(title = "Adhesive")]
    pub adhesive: Wait,
    /// From filling to sanding; empty is 3 h. The sheet's time and the 3 h are stretched for the air of the room.
    #[serde(default)]
    #[schemars(title = "Filler")]
    pub filler: Wait,
    /// From caulking to masking and coating; empty is 2 h. The sheet's time and the 2 h are stretched for the air of the room.
    #[serde(default)]
    #[schemars(title = "Caulk")]
    pub caulk: Wait,
    /// From primer to the first coat, as the shop's own jobs have shown; empty stretches the sheet's time for the air.
    #[serde(default)]
    #[schemars(title = "Primer, the shop's own")]
    pub primer: Option<WaitHours>,
    /// As the shop's own jobs have shown; empty stretches the sheet's time for the air.
    #[serde(default)]
    #[schemars(title = "Touch-dry, the shop's own")]
    pub touch: Option<WaitHours>,
    /// As the shop's own jobs have shown; empty stretches the sheet's time for the air.
    #[serde(default)]
    #[schemars(title = "Recoat, the shop's own")]
    pub recoat: Option<WaitHours>,
    /// Tape is pulled from this share of the touch-dry time on; empty is 50 %.
    #[serde(default)]
    #[schemars(title = "Tape from, of touch-dry")]
    pub pull_from: Option<Physical<kind::Percent, 0, 200_000>>,
    /// Tape is pulled up to this share of the recoat time; empty is 50 %.
    #[serde(default)]
    #[schemars(title = "Tape until, of recoat")]
    pub pull_until: Option<Physical<kind::Percent, 5_000, 100_000>>,
}
