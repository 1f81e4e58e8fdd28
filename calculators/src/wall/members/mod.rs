//! Pieces of trim: rails as they run, boards between them, and what is fixed on top of both.

mod barriers;
mod boards;
mod caps;
mod joints;
mod mouldings;
mod rail_runs;
mod rails;
mod top_corners;

pub use boards::{BoardWork, board_members};
pub use caps::caps;
pub use joints::along;
pub use mouldings::{BayShape, mouldings};
pub use rail_runs::{RailEnd, RailRun, RailRuns, rail_runs};
pub use rails::{rail_members, word};
pub use top_corners::mitre_top_corners;
