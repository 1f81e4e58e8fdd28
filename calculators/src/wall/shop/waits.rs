//! Waits between tasks: what a shop has seen, and what the data sheets say.

use crate::catalogue::Input;
use crate::quantity::{Physical, kind};

/// A wait on the clock, day and night: up to 1,000 hours.
pub type WaitHours = Physical<kind::Hours, 0, 1_000_000>;

/// One wait. Where both times are given the longer governs; where neither is, the book's estimate stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Input)]
#[field("Wait")]
pub struct Wait {
    /// As the shop's own jobs have shown.
    #[field("The shop's own", default)]
    pub own: Option<WaitHours>,
    /// On the data sheet: the least that is ever planned.
    #[field("On the data sheet", default)]
    pub sheet: Option<WaitHours>,
}

/// The waits of a job, and the window in which tape is pulled.
#[derive(Clone, Copy, Debug, Default, PartialEq, Input)]
#[field("Waits")]
pub struct Waits {
    /// From the last board fixed to the first sanding or filling; empty is 16 h.
    #[field("Adhesive", default)]
    pub adhesive: Wait,
    /// From filling to sanding; empty is 3 h. The sheet's time and the 3 h are stretched for the air of the room.
    #[field("Filler", default)]
    pub filler: Wait,
    /// From caulking to masking and coating; empty is 2 h. The sheet's time and the 2 h are stretched for the air of the room.
    #[field("Caulk", default)]
    pub caulk: Wait,
    /// From primer to the first coat, as the shop's own jobs have shown; empty stretches the sheet's time for the air.
    #[field("Primer, the shop's own", default)]
    pub primer: Option<WaitHours>,
    /// As the shop's own jobs have shown; empty stretches the sheet's time for the air.
    #[field("Touch-dry, the shop's own", default)]
    pub touch: Option<WaitHours>,
    /// As the shop's own jobs have shown; empty stretches the sheet's time for the air.
    #[field("Recoat, the shop's own", default)]
    pub recoat: Option<WaitHours>,
    /// Tape is pulled from this share of the touch-dry time on; empty is 50 %.
    #[field("Tape from, of touch-dry", default)]
    pub pull_from: Option<Physical<kind::Percent, 0, 200_000>>,
    /// Tape is pulled up to this share of the recoat time; empty is 50 %.
    #[field("Tape until, of recoat", default)]
    pub pull_until: Option<Physical<kind::Percent, 5_000, 100_000>>,
}
