//! Colour by numbers: differences, light reflectance, contrast.

pub mod colour_difference;
pub mod colour_values;
pub mod srgb;
