//! One declaration, many faces: every calculator of the trade as data, and the one way into it.
//!
//! A calculator is a unit struct that implements [`Calculator`]: a [`Card`], a typed input, a typed output, a worked example and
//! a function. A list names them in the order in which the trade meets them. From an [`Entry`] follow the route, the
//! schema, the form, the answer panel, the command and the example's test; none of them is written by hand.
//!
//! The declaration is the outermost layer. Beneath it stand plain functions on exact types, which the wall plan and other
//! calculators call directly, so that the same question never has two answers.

mod calculator;
mod card;
mod entry;
mod fault;
mod figure;
pub mod formula;
mod reading;
pub mod works;

pub use calculator::{Answer, Calculator, Example};
pub use card::{Card, Cited, Source, Standing, Work};
pub use entry::Entry;
pub use fault::Fault;
pub use figure::{Figure, Named, Note, NoteLevel, Step, Words};
