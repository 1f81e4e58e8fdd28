//! Fixing: where the studs are, adhesive, which nail reaches and what it holds, and the boxes behind the boards.

pub mod adhesive;
pub mod box_fill;
pub mod box_set_back;
pub mod cable_zones;
pub(crate) mod nail_choice;
pub mod nail_holding;
pub mod nail_size;
pub mod nail_sizes;
pub mod nails;
pub(crate) mod stud_hits;
pub mod studs;
