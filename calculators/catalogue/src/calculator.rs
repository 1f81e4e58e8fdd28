//! The trait that a calculator implements.

use quantity::Units;
use serde_json::Value;

use crate::{Card, Fault, FromNode, Note, Shaped, Step};

/// A question the trade asks, answered by arithmetic alone: no I/O, no clock, no global state.
pub trait Calculator: 'static {
    /// What is asked, with the derive `Input`. Each field is a type that carries its unit and its valid range.
    type Input: FromNode;
    /// What is answered, with the derive `Output`; without units of display: those are chosen at the edge.
    type Output: Shaped;
    /// All that is known before a number is typed: names, question, cautions, sources.
    const CARD: Card;
    /// Whether an input within its bounds can take longer than a millisecond. Such work is given a thread of its own, and a time.
    const HEAVY: bool = false;

    /// The worked example in one unit system: it fills the form, is computed on the page and checked by a test.
    fn example(units: Units) -> Example;

    /// The answer with its working.
    /// # Errors
    /// Every rule between fields that the input breaks, all at once.
    fn compute(input: &Self::Input) -> Result<Answer<Self::Output>, Vec<Fault>>;
}

/// A worked example, and the figures it must come to.
#[derive(Clone, Debug, PartialEq)]
pub struct Example {
    /// The input as a person would write it: lengths with their unit.
    pub input: Value,
    /// Pointers into the printed answer and the text or number that stands there, worked out outside this project's code.
    pub expects: Vec<(&'static str, Value)>,
    /// Where the expected figures come from.
    pub checked_against: &'static str,
}

/// What a calculator answers: a type of its own, or the tree that every answer becomes at the edge.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer<O> {
    /// The figures.
    pub result: O,
    /// How they were got, line by line.
    pub working: Vec<Step>,
    /// What the numbers give reason to say.
    pub notes: Vec<Note>,
}
