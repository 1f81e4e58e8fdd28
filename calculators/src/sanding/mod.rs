//! Abrasives: from one grit to the next, and how much paper.

pub mod grain;
pub mod grit_ladder;
