//! The main job: one measured wall and a scheme in, a wall plan out; and every question on the way as a calculator of its own.
//!
//! [`survey`] and [`scheme`] are what goes in, [`plan`] what comes out. Between them stand plain functions on exact lengths, one
//! small file per question. Places along the wall stay exact fractions until a mark is read off; heights that follow a slope
//! are kept to the nanometre.

pub mod scheme;
pub mod survey;

pub mod base_step;
pub mod bays;
pub mod boarding;
pub mod check;
pub mod clash;
pub mod closing;
pub mod corners;
pub mod defaults;
pub mod faults;
pub mod findings;
pub mod geometry;
pub mod joint_choice;
pub mod layout;
pub mod marking;
pub mod measured;
pub mod members;
pub mod notch;
pub mod plates;
pub mod rake;
pub mod sticks;
pub mod sums;

pub mod job;
pub mod plan;
pub mod planning;
pub mod practice_room;
pub mod shop;
pub mod wall_plan;
pub mod working;

pub mod saw;
pub mod squareness;

pub(crate) mod arc;
pub(crate) mod base_and_board;
pub(crate) mod bays_round_openings;
pub(crate) mod closing_checks;
pub(crate) mod compound_mitre;
pub(crate) mod corner_angle;
pub(crate) mod corner_lap;
pub(crate) mod cut_lengths;
pub(crate) mod equal_bays;
pub mod frame_mitre;
pub(crate) mod laser_offsets;
pub(crate) mod notch_neck;
pub(crate) mod out_of_square;
pub(crate) mod panel_proportion;
pub(crate) mod plate_clash;
pub(crate) mod rail_heights;
pub(crate) mod rail_kinks;
pub(crate) mod read_a_length;
pub(crate) mod running_marks;
pub(crate) mod saw_angle;
pub(crate) mod scarf_joint;
pub(crate) mod short_rails;
pub(crate) mod sloping_ceiling;
pub(crate) mod stair_rake;
pub(crate) mod story_pole;
