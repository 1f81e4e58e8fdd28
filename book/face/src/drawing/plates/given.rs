//! What a drawing is drawn from: the input and the answer of one calculator.

use calculators::catalogue::{Entry, Fault, Figure, Node};
use calculators::quantity::{Exact, Units};
use serde_json::Value;

/// The measures of one drawing.
pub(super) struct Given {
    /// The reader's units.
    pub(super) units: Units,
    input: Node,
    answer: Node,
}

impl Given {
    pub(super) const fn nothing(units: Units) -> Self {
        Self { units, input: Node::Nothing, answer: Node::Nothing }
    }

    /// The worked example of a calculator, with values laid over it, and its answer.
    pub(super) fn of(entry: &Entry, values: &Value, units: Units) -> Result<Self, Vec<Fault>> {
        let mut raw = entry.example(units).input.clone();
        let own = values.get(units.word()).unwrap_or(values);
        if let (Some(raw), Some(own)) = (raw.as_object_mut(), own.as_object()) {
            raw.extend(own.iter().map(|(name, value)| (name.clone(), value.clone())));
        }
        let input = entry.read(&raw, units)?;
        let answer = entry.work(&raw, units)?.result;
        Ok(Self { units, input, answer })
    }

    /// A length that was put in.
    pub(super) fn put(&self, pointer: &str) -> Option<Exact> {
        self.input.at(pointer)?.length()
    }

    /// A number that was put in, in its metric unit.
    pub(super) fn put_number(&self, pointer: &str) -> Option<f64> {
        self.input.at(pointer)?.number()
    }

    /// A length of the answer, as it is shown there.
    pub(super) fn got(&self, pointer: &str) -> Option<Exact> {
        match self.answer.at(pointer)?.figure()? {
            Figure::Reading(reading) => Some(reading.shown_in(self.units).exact()),
            figure => figure.length(),
        }
    }

    /// A number of the answer, in its metric unit.
    pub(super) fn got_number(&self, pointer: &str) -> Option<f64> {
        self.answer.at(pointer)?.number()
    }

    /// A quantity of the answer in words, with its unit.
    pub(super) fn text(&self, pointer: &str) -> Option<String> {
        Some(self.answer.at(pointer)?.figure()?.text(self.units))
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
