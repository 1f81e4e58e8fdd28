//! Forms made from the shape of a calculator's input: nothing about a calculator is written twice.

mod fields;
mod place;
mod posted;
mod told;
mod written;

pub(crate) use fields::Form;
pub(crate) use place::Place;
pub use posted::{ACTION, Posted, UNITS, read, to_json, units_of};
pub(crate) use told::Told;
pub(crate) use written::text_of;
