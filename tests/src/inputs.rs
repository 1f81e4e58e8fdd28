//! Inputs of calculators taken apart and written anew: where their quantities stand, of what kind they are, and how they are spelled.

use calculators::catalogue::{Entry, Figure, Node};
use calculators::quantity::{Length, Units, kind_named};
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

/// Every quantity of an input with its pointer.
pub fn quantities(entry: &Entry, input: &Value, units: Units) -> Vec<(String, Quantity)> {
    let complete = entry.read(input, units).unwrap_or_else(|faults| panic!("{}: {faults:?}", entry.card().id));
    let mut found = Vec::new();
    walk(&complete, "", &mut found);
    found
}

fn walk(node: &Node, at: &str, found: &mut Vec<(String, Quantity)>) {
    for (name, inner) in node.fields() {
        walk(inner, &format!("{at}/{name}"), found);
    }
    for (n, item) in node.items().iter().enumerate() {
        walk(item, &format!("{at}/{n}"), found);
    }
    let quantity = node.figure().and_then(|figure| match figure {
        Figure::Length(exact) => Some(Quantity::Length(exact.nearest(Length::from_nm(1)).nm())),
        Figure::Physical(facts, metric) => Some(Quantity::Physical(facts.name.to_owned(), *metric)),
        Figure::Money(money) => Some(Quantity::Money(money.minor())),
        Figure::Count(count) => Some(Quantity::Count(*count)),
        _ => None,
    });
    found.extend(quantity.map(|quantity| (at.to_owned(), quantity)));
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

/// The number of an exact answer's figure: millimetres, the kind's metric unit, minor units, or the number itself.
pub fn number(node: &Node) -> Option<f64> {
    match node.figure()? {
        Figure::Money(money) => Some(money.minor() as f64),
        figure => figure.number(),
    }
}
