//! The arithmetic of decorative wall trim: pure functions on exact lengths, and their declarations.
//!
//! Nothing here opens a file, reads a clock, or knows HTML or HTTP. Folders follow the trade's own sequence.

pub use quantity;

/// The declaration of a calculator, and the list of all.
pub mod catalogue {
    pub use crate::list::{CATALOGUE, entry};
    pub use catalogue::*;
}

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

mod list;

pub use list::{CATALOGUE, entry};
