//! Pieces of trim: rails as they run, boards between them, and what is fixed on top of both.

mod barriers;
mod boards;
mod joints;
mod rail_runs;
mod rails;

pub use boards::{BoardWork, board_members};
pub use joints::along;
pub use rail_runs::{RailEnd, RailRun, RailRuns, rail_runs};
pub use rails::{rail_members, word};
