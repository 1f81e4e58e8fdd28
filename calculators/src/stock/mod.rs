//! Boards, sticks and sheets before they are cut.

pub use sticks::{certificate, certificate_check, instance, plan, rack, solve};

pub(crate) mod board_feet;
pub mod board_weight;
pub mod crack_forecast;
pub mod dressed;
pub(crate) mod dressed_sizes;
pub mod equilibrium;
pub mod moisture;
pub mod movement;
pub mod pieces_per_stick;

pub mod clear_parts;
pub mod long_members;
pub mod matched;
pub mod on_hand;
pub mod scarf;
pub mod stick_job;

mod stick_answer;
pub(crate) mod stick_plan;
mod stick_proof;
pub(crate) mod strips;
