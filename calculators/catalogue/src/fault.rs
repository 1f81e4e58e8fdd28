//! What is wrong with an input: where, what was given, which rule it met, and what would do.

use quantity::Units;
use serde_json::Value;

use crate::{Node, Printed, Words};

/// One fault of an input. Faults are collected: a person is told all of them at once.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// JSON pointer of the field.
    pub pointer: String,
    /// What was given, as the rule sees it.
    pub said: Words,
    /// The rule that was met.
    pub why: Words,
    /// A value that would do, as a person would write it.
    pub instead: Node,
}

impl Fault {
    /// A fault of one field.
    pub fn new(
        pointer: impl Into<String>,
        said: impl Into<Words>,
        why: impl Into<Words>,
        instead: impl Into<Node>,
    ) -> Self {
        Self { pointer: pointer.into(), said: said.into(), why: why.into(), instead: instead.into() }
    }

    /// Faults as JSON with every quantity printed in one unit system: `{"pointer", "said", "why", "try"}` each.
    pub fn print_all(faults: &[Self], units: Units) -> Value {
        Printed(faults, units).to_value()
    }
}
