//! Transport, storage and the command line: the calculators and the handbook over HTTP, on this machine only.
//!
//! [`app()`] is all that a test needs; the binary adds a socket and words on the terminal. A handler extracts, calls and answers;
//! it knows no trade.

pub mod answer;
pub mod app;
pub mod calculators;
pub mod choices;
pub mod command;
pub mod guard;
pub mod kept;
pub mod live;
pub mod openapi;
pub mod pages;
pub mod posted;
pub mod practice;
pub mod problem;
pub mod walls;

pub use app::{State, app};
