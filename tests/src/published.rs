//! Values published elsewhere: loading them, and comparing ours with them row by row.

use std::path::Path;

use calculators::catalogue::{Fault, entry};
use calculators::quantity::Units;
use serde::Deserialize;
use serde_json::Value;

/// One published value.
#[derive(Clone, Debug, Deserialize)]
pub struct Row {
    /// What is given, in the source's words.
    pub quantity: String,
    /// From what.
    pub inputs: Value,
    /// What the source says.
    pub expected: Value,
    /// Absolute, for each element of a list; 0 means equal.
    pub tolerance: f64,
    /// The source's unit.
    pub unit: String,
    /// The work.
    pub source: String,
    /// Table, clause or equation in it.
    pub locator: String,
    /// Published, computed, from memory, common practice.
    pub standing: String,
    /// How the value was obtained.
    pub obtained: String,
}

#[derive(Deserialize)]
struct Topic {
    topic: String,
    rows: Vec<Row>,
}

impl Row {
    /// A number of the inputs; a fraction such as `3-1/2` counts as one.
    pub fn number(&self, name: &str) -> f64 {
        number_of(&self.inputs[name])
            .unwrap_or_else(|| panic!("{}: no number {name} in {}", self.quantity, self.inputs))
    }

    /// A text of the inputs.
    pub fn text(&self, name: &str) -> &str {
        self.inputs[name].as_str().unwrap_or_else(|| panic!("{}: no text {name} in {}", self.quantity, self.inputs))
    }

    /// A length of the inputs in inches, as the calculators read it.
    pub fn inches(&self, name: &str) -> String {
        match &self.inputs[name] {
            Value::String(text) => format!("{} in", text.replace('-', " ").trim()),
            number => format!("{number} in"),
        }
    }

    /// A length of the inputs in millimetres, as the calculators read it.
    pub fn millimetres(&self, name: &str) -> String {
        format!("{} mm", self.inputs[name])
    }
}

fn number_of(value: &Value) -> Option<f64> {
    match value {
        Value::Number(number) => number.as_f64(),
        Value::String(text) => fraction(text),
        _ => None,
    }
}

/// `3-1/2`, `1/64`, `12.5` as a number.
fn fraction(text: &str) -> Option<f64> {
    let part = |text: &str| match text.split_once('/') {
        Some((top, bottom)) => Some(top.parse::<f64>().ok()? / bottom.parse::<f64>().ok()?),
        None => text.parse().ok(),
    };
    match text.split_once('-') {
        Some((whole, rest)) if !whole.is_empty() => Some(whole.parse::<f64>().ok()? + part(rest)?),
        _ => part(text),
    }
}

/// Reads one topic's rows.
///
/// # Panics
/// When the file cannot be read, names another topic, or holds no rows.
pub fn topic(name: &str) -> Vec<Row> {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/published").join(format!("{name}.json"));
    let text = std::fs::read_to_string(&file).unwrap_or_else(|why| panic!("{}: {why}", file.display()));
    let topic: Topic = serde_json::from_str(&text).unwrap_or_else(|why| panic!("{}: {why}", file.display()));
    assert_eq!(topic.topic, name, "the file names another topic");
    assert!(!topic.rows.is_empty(), "{name}: no rows were read");
    topic.rows
}

/// Asks a calculator through its public face and gives back `result`, with every quantity in its metric unit beside its text.
///
/// # Panics
/// When the input is refused; the faults are printed.
pub fn ask(id: &str, input: Value) -> Value {
    let entry = entry(id).unwrap_or_else(|| panic!("no calculator {id}"));
    match entry.answer(&input, Units::Metric) {
        Ok(mut answer) => answer["result"].take(),
        Err(faults) => panic!("{id} refuses {input}: {:#}", Fault::print_all(&faults, Units::Metric)),
    }
}

/// The number in a printed leaf: millimetres, the metric value, or the number itself.
///
/// # Panics
/// When there is none.
pub fn number(leaf: &Value) -> f64 {
    let exact = || {
        let pair = leaf.get("exact_nm").or_else(|| leaf.get("nm"))?;
        Some(pair[0].as_f64()? / pair[1].as_f64()? / 1e6)
    };
    let found = leaf
        .as_f64()
        .or_else(exact)
        .or_else(|| leaf["value"].as_f64())
        .or_else(|| Some(leaf["minor"].as_f64()? / 100.0));
    found.unwrap_or_else(|| panic!("no number in {leaf}"))
}

/// What came of one topic.
#[derive(Debug, Default)]
pub struct Outcome {
    /// Rows that were compared.
    pub compared: usize,
    /// Lines on rows that differ.
    pub different: Vec<String>,
}

/// How the value of a row is worked out here, or why it is not.
pub enum Ours {
    /// By this function.
    By(fn(&Row) -> Value),
    /// It belongs to no calculation of ours.
    NotOurs(&'static str),
}

/// Compares every row of a topic; `of` says by which function, by the row's quantity.
///
/// # Panics
/// When a quantity of the file is not named in `of`, or one in `of` is not in the file.
pub fn compare(name: &str, of: &[(&str, Ours)]) -> Outcome {
    let rows = topic(name);
    for (quantity, _) in of {
        assert!(rows.iter().any(|row| row.quantity == *quantity), "{name}: nothing published on «{quantity}»");
    }
    let mut outcome = Outcome::default();
    for row in &rows {
        let (_, ours) = of
            .iter()
            .find(|(quantity, _)| *quantity == row.quantity)
            .unwrap_or_else(|| panic!("{name}: «{}» is not compared", row.quantity));
        let Ours::By(ours) = ours else { continue };
        outcome.compared += 1;
        let ours = ours(row);
        if let Some(difference) = difference(&ours, &row.expected, row.tolerance) {
            outcome.different.push(format!(
                "{name}: {} of {}: ours {ours}, theirs {} {}, difference {difference}, allowed {} ({}, {}; {})",
                row.quantity, row.inputs, row.expected, row.unit, row.tolerance, row.source, row.locator, row.standing
            ));
        }
    }
    outcome
}

/// Nothing when the two agree; else how far apart they are.
fn difference(ours: &Value, theirs: &Value, tolerance: f64) -> Option<String> {
    match (ours, theirs) {
        (Value::Array(ours), Value::Array(theirs)) if ours.len() == theirs.len() => {
            ours.iter().zip(theirs).find_map(|(ours, theirs)| difference(ours, theirs, tolerance))
        }
        (ours, theirs) => match (ours.as_f64(), theirs.as_f64()) {
            (Some(ours), Some(theirs)) => {
                let apart = (ours - theirs).abs();
                // A thousandth of the tolerance allows for the last figures of the machine.
                (apart > tolerance * 1.001 + 1e-12 * theirs.abs()).then(|| format!("{apart:e}"))
            }
            _ => (ours != theirs).then(|| "in words".to_owned()),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wrong_value_is_found() {
        assert_eq!(difference(&1.0.into(), &1.0005.into(), 0.001), None);
        assert!(difference(&1.0.into(), &1.002.into(), 0.001).is_some());
        assert!(difference(&"7/8".into(), &"3/4".into(), 0.0).is_some());
        assert!(difference(&serde_json::json!([1, 2]), &serde_json::json!([1, 2, 3]), 0.0).is_some());
    }
}
