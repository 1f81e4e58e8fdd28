//! Forms made from a calculator's schema: nothing about a calculator is written twice.

mod fields;
mod posted;
pub(crate) mod shape;
mod told;
mod written;

pub(crate) use fields::Form;
pub use posted::{ACTION, Posted, UNITS, read, to_json, units_of};
pub(crate) use told::Told;
pub(crate) use written::text_of;
