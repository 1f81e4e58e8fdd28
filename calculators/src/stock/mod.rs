//! Boards, sticks and sheets before they are cut.

pub mod board_weight;
