//! Exercises: the calculators' own questions with fresh numbers, and the likely mistakes named.
//!
//! An exercise draws numbers from a seed, so that the same seed asks the same question again; the right answer comes from the
//! calculator and nowhere else. A mistake is a wrong formula on the same letters as the calculator's working: an answer that fits
//! one is told by its name.

mod draw;
mod exercise;
mod exercises;
mod mark;

pub use draw::drawn;
pub use exercise::{Draw, Exercise, Mistake, Range};
pub use exercises::{EXERCISES, WITHOUT, exercise};
pub use mark::{AnswerFault, Marked, marked};
