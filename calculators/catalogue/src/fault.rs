//! What is wrong with an input: where, what was given, which rule it met, and what would do.

use serde::Serialize;
use serde_json::Value;

use super::figure::Words;

/// One fault of an input. Faults are collected: a person is told all of them at once.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fault {
    /// JSON pointer of the field.
    pub pointer: String,
    /// What was given, as the rule sees it.
    pub said: Words,
    /// The rule that was met.
    pub why: Words,
    /// A value that would do, as a person would write it.
    #[serde(rename = "try")]
    pub instead: Value,
}

impl Fault {
    /// A fault of one field.
    pub fn new(
        pointer: impl Into<String>,
        said: impl Into<Words>,
        why: impl Into<Words>,
        instead: impl Serialize,
    ) -> Self {
        let instead = serde_json::to_value(instead).unwrap_or(Value::Null);
        Self { pointer: pointer.into(), said: said.into(), why: why.into(), instead }
    }
}
