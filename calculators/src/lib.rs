//! The arithmetic of decorative wall trim: pure functions on exact lengths, and their declarations.
//!
//! Nothing here opens a file, reads a clock, or knows HTML or HTTP. Folders follow the trade's own sequence.

pub mod quantity;

pub mod catalogue;

pub mod wall;

pub mod stock;

pub mod fixing;

pub mod filling;
pub mod masking;
pub mod sanding;

pub mod coating;
pub mod drying;

pub mod colour;
pub mod exposure;

pub mod practice;
pub mod price;
pub mod programme;
