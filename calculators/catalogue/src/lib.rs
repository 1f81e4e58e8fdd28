//! One declaration, many faces: every calculator of the trade as data, and the one way into it.
//!
//! A calculator is a unit struct that implements [`Calculator`]: a [`Card`], a typed input, a typed output, a worked example and
//! a function. A list names them in the order in which the trade meets them. From an [`Entry`] follow the route, the schema, the
//! form, the answer panel, the command and the example's test; none of them is written by hand.
//!
//! The derives [`Input`] and [`Output`] write what a type looks like as a constant [`Shape`]. A raw input is judged against it
//! once, all faults together, and becomes a tree of [`Node`]s from which the type is read; an answer becomes such a tree again.
//! Its leaves are exact and know what they are; units are chosen when they are written, as JSON by [`Printed`] and nowhere else.
//!
//! The declaration is the outermost layer. Beneath it stand plain functions on exact types, which the wall plan and other
//! calculators call directly, so that the same question never has two answers.

mod shape;

mod figure;
mod note;
mod step;

mod node;

mod fault;
mod judge;

mod calculator;
mod card;
pub mod formula;
pub mod works;

mod entry;

mod json;
mod schema;

pub use calculator::{Answer, Calculator, Example};
pub use card::{Card, Cited, Source, Standing, Work};
pub use catalogue_derive::{Input, Output};
pub use entry::Entry;
pub use fault::Fault;
pub use figure::{Figure, Piece, Words};
pub use json::{Page, Print, Printed};
pub use node::{FromNode, Node, Shaped, read_as};
pub use note::{Note, NoteLevel, Offer};
pub use schema::Schemas;
pub use shape::{Choice, Field, Kind, Shape, capital, in_words};
pub use step::{Named, Step};
