//! Tape, film and paper: what is covered, how many rolls, how long it may stay.

pub mod rolls;
