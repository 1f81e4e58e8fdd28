//! The wall sheet: one measured wall on one page, in order of use: drawing, findings, layouts, marks, cuts, sticks.
//!
//! It prints what the plan says and works nothing out. The same view model serves the whole sheet, the marks alone for use at the
//! wall, and the saw's sheet.

mod at_wall;
mod client;
mod cuts;
mod findings;
mod how;
mod job;
mod marks;
mod pole;
mod sheet;
mod ways;

pub use sheet::{WallSheet, WallView};
