//! Boards, sticks and sheets before they are cut.

pub mod board_weight;
pub mod crack_forecast;
pub mod equilibrium;
pub mod moisture;
pub mod movement;
pub mod pieces_per_stick;
