//! Inputs of calculators taken apart and written anew: where their quantities stand, of what kind they are, and how they are spelled.

use calculators::catalogue::Entry;
use calculators::quantity::{Exact, Length, Units, kind_named, print};
use serde_json::{Value, json};

/// What stands at one place of an input.
#[derive(Clone, Debug, PartialEq)]
pub enum Quantity {
    /// In nanometres.
    Length(i64),
    /// The kind's name, and the value in its metric unit.
    Physical(String, f64),
    /// In minor units.
    Money(i64),
    /// A whole number.
    Count(i64),
}

impl Quantity {
    /// The same quantity with another size, in nanometres, metric units, minor units or ones; as far as its kind can show it.
    pub fn sized(&self, size: f64) -> Self {
        match self {
            Self::Length(_) => Self::Length(size.round() as i64),
            Self::Physical(kind, _) => Self::Physical(kind.clone(), size),
            Self::Money(_) => Self::Money(size.round() as i64),
            Self::Count(_) => Self::Count(size.round() as i64),
        }
    }

    /// Its size.
    pub fn size(&self) -> f64 {
        match self {
            Self::Length(size) | Self::Money(size) | Self::Count(size) => *size as f64,
            Self::Physical(_, size) => *size,
        }
    }

    /// As a shop writes it without a unit, in the shop's own unit. Lengths of an inch shop must lie on sixty-fourths.
    pub fn written(&self, units: Units) -> Value {
        match self {
            Self::Length(nm) if units == Units::Metric => json!(decimal(*nm, 1_000_000)),
            Self::Length(nm) => {
                let (sign, nm) = (if *nm < 0 { "-" } else { "" }, nm.abs());
                assert_eq!(nm % SIXTY_FOURTH, 0, "{nm} nm is no sixty-fourth");
                let parts = nm / SIXTY_FOURTH;
                let inches = if parts % 64 == 0 {
                    format!("{}", parts / 64)
                } else {
                    format!("{} {}/64", parts / 64, parts % 64)
                };
                json!(format!("{sign}{inches}"))
            }
            Self::Physical(kind, metric) => {
                let facts = kind_named(kind).unwrap_or_else(|| panic!("no kind {kind}"));
                let unit = if units == Units::Metric { facts.metric } else { facts.imperial };
                json!(format!("{}", (metric - unit.offset) / unit.factor))
            }
            Self::Money(minor) => json!(decimal(*minor, 100)),
            Self::Count(count) => json!(count),
        }
    }
}

/// Nanometres in 1/64 in (international yard and pound agreement of 1959: an inch is 25.4 mm).
pub const SIXTY_FOURTH: i64 = 396_875;

fn decimal(number: i64, unit: i64) -> String {
    let (sign, size) = (if number < 0 { "-" } else { "" }, number.unsigned_abs());
    let unit = unit.unsigned_abs();
    let digits = unit.to_string().len() - 1;
    let text = format!("{sign}{}.{:0digits$}", size / unit, size % unit);
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if unit == 100 { text } else { short.to_owned() }
}

/// Every quantity of an input with its pointer, found by the calculator's schema.
pub fn quantities(entry: &Entry, input: &Value, units: Units) -> Vec<(String, Quantity)> {
    let complete = entry.read(input, units).unwrap_or_else(|faults| panic!("{}: {faults:?}", entry.card().id));
    let mut found = Vec::new();
    walk(entry.input_schema(), &complete, "", &mut found);
    found
}

fn walk(schema: &Value, value: &Value, at: &str, found: &mut Vec<(String, Quantity)>) {
    if value.is_null() {
        return;
    }
    if schema.get("x-length").is_some() {
        let exact: Exact = print::length_in(value).unwrap_or_else(|| panic!("no length at {at}: {value}"));
        found.push((at.to_owned(), Quantity::Length(exact.nearest(Length::from_nm(1)).nm())));
    } else if let Some(kind) = schema.get("x-kind").and_then(Value::as_str) {
        let size = value["value"].as_f64().unwrap_or_else(|| panic!("no {kind} at {at}: {value}"));
        found.push((at.to_owned(), Quantity::Physical(kind.to_owned(), size)));
    } else if schema.get("x-money").is_some() {
        let minor = value["minor"].as_i64().unwrap_or_else(|| panic!("no money at {at}: {value}"));
        found.push((at.to_owned(), Quantity::Money(minor)));
    } else if let Some(branches) = ["anyOf", "oneOf"].iter().find_map(|key| schema.get(*key)).and_then(Value::as_array)
    {
        if let Some(branch) = branches.iter().find(|branch| fits(branch, value)) {
            walk(branch, value, at, found);
        }
    } else {
        match value {
            Value::Object(fields) => {
                for (name, inner) in fields {
                    if let Some(field) = schema.get("properties").and_then(|known| known.get(name)) {
                        walk(field, inner, &format!("{at}/{name}"), found);
                    }
                }
            }
            Value::Array(items) => {
                for (n, item) in items.iter().enumerate() {
                    walk(&schema["items"], item, &format!("{at}/{n}"), found);
                }
            }
            Value::Number(number) if schema.get("type").is_some_and(|kind| says(kind, "integer")) => {
                let count = number.as_f64().unwrap_or_default();
                found.push((at.to_owned(), Quantity::Count(count as i64)));
            }
            _ => {}
        }
    }
}

fn says(kind: &Value, word: &str) -> bool {
    kind == word || kind.as_array().is_some_and(|kinds| kinds.iter().any(|one| one == word))
}

/// Whether a branch of a choice is the one that a value took.
fn fits(branch: &Value, value: &Value) -> bool {
    if branch.get("type").is_some_and(|kind| kind == "null") {
        return false;
    }
    let Some(known) = branch.get("properties").and_then(Value::as_object) else {
        return ["x-length", "x-kind", "x-money", "items", "const", "enum", "type", "oneOf", "anyOf"]
            .iter()
            .any(|key| branch.get(*key).is_some());
    };
    let tags = known.iter().filter_map(|(name, field)| Some((name, field.get("const")?)));
    value.is_object() && tags.into_iter().all(|(name, word)| value.get(name) == Some(word))
}

/// The input with these quantities written into their places.
pub fn with(input: &Value, quantities: &[(String, Quantity)], units: Units) -> Value {
    let mut written = input.clone();
    for (pointer, quantity) in quantities {
        put(&mut written, pointer, quantity.written(units));
    }
    written
}

/// Puts a value at a pointer, making the groups on the way.
pub fn put(input: &mut Value, pointer: &str, value: Value) {
    let mut place = input;
    for part in pointer.split('/').skip(1) {
        place = match place {
            Value::Array(items) => {
                let n: usize = part.parse().unwrap_or_else(|_| panic!("{part} is no place in a list"));
                &mut items[n]
            }
            other => &mut other[part],
        };
    }
    *place = value;
}

/// A figure of an exact answer: millimetres, the kind's metric unit, minor units, or the number itself.
pub fn figure(leaf: &Value) -> Option<f64> {
    if let Value::Number(number) = leaf {
        return number.as_f64();
    }
    let length = print::length_in(leaf).map(Exact::in_mm);
    length
        .or_else(|| leaf.get("exact").and_then(figure))
        .or_else(|| leaf.get("value")?.as_f64())
        .or_else(|| leaf.get("minor")?.as_f64())
}
