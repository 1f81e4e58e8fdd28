//! What a drawing is drawn from: the input and the answer of one calculator.

use calculators::catalogue::{Entry, Fault};
use calculators::quantity::print::{length_in, printed_text};
use calculators::quantity::{Exact, Units};
use serde_json::Value;

/// The measures of one drawing.
pub(super) struct Given {
    /// The reader's units.
    pub(super) units: Units,
    input: Value,
    answer: Value,
}

impl Given {
    pub(super) const fn nothing(units: Units) -> Self {
        Self { units, input: Value::Null, answer: Value::Null }
    }

    /// The worked example of a calculator, with values laid over it, and its answer.
    pub(super) fn of(entry: &Entry, values: &Value, units: Units) -> Result<Self, Vec<Fault>> {
        let mut raw = entry.example(units).input.clone();
        let own = values.get(units.word()).unwrap_or(values);
        if let (Some(raw), Some(own)) = (raw.as_object_mut(), own.as_object()) {
            raw.extend(own.iter().map(|(name, value)| (name.clone(), value.clone())));
        }
        let input = entry.read(&raw, units)?;
        let answer = entry.answer(&raw, units)?.get("result").cloned().unwrap_or_default();
        Ok(Self { units, input, answer })
    }

    /// A length that was put in.
    pub(super) fn put(&self, pointer: &str) -> Option<Exact> {
        length_in(self.input.pointer(pointer)?)
    }

    /// A number that was put in, in its metric unit.
    pub(super) fn put_number(&self, pointer: &str) -> Option<f64> {
        number(self.input.pointer(pointer)?)
    }

    /// A length of the answer, as it is shown there.
    pub(super) fn got(&self, pointer: &str) -> Option<Exact> {
        length_in(self.answer.pointer(pointer)?)
    }

    /// A number of the answer, in its metric unit.
    pub(super) fn got_number(&self, pointer: &str) -> Option<f64> {
        number(self.answer.pointer(pointer)?)
    }

    /// A quantity of the answer in words, with its unit.
    pub(super) fn text(&self, pointer: &str) -> Option<String> {
        self.answer.pointer(pointer).map(printed_text)
    }

    /// A length in words, with its unit.
    pub(super) fn said(&self, length: Exact) -> String {
        match self.units {
            Units::Imperial => length.text(Units::Imperial),
            // Figure and unit stay on one line.
            Units::Metric => length.text(Units::Metric).replace(' ', "\u{a0}"),
        }
    }
}

fn number(leaf: &Value) -> Option<f64> {
    leaf.as_f64().or_else(|| leaf.get("value")?.as_f64())
}
