//! Forms made from a calculator's schema: nothing about a calculator is written twice.

mod fields;
mod posted;
pub(crate) mod shape;

pub(crate) use fields::{Form, Told, text_of};
pub use posted::{ACTION, Posted, UNITS, read, to_json, units_of};
