//! Faults in words, each with the label and the place of its field.

use calculators::catalogue::{Fault, Node, Shape, capital, in_words};
use calculators::quantity::Units;
use serde::Serialize;

use super::fields::field_id;
use super::place::Place;

/// A fault in the reader's units.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct Told {
    pub(crate) pointer: String,
    /// The field's id on the page, empty when the fault is no field's.
    pub(crate) target: String,
    pub(crate) label: String,
    pub(crate) said: String,
    pub(crate) why: String,
    /// What the button under the fault puts in.
    pub(crate) instead: Option<String>,
}

/// Faults in words, each with the label of its field.
pub(super) fn told(id: &str, input: &Shape, faults: &[Fault], units: Units) -> Vec<Told> {
    let told = faults.iter().map(|fault| {
        let pointer = fault.pointer.clone();
        let known = !pointer.is_empty() && input.at(&pointer).is_some();
        let name = pointer.rsplit('/').next().unwrap_or_default();
        Told {
            target: if known { field_id(id, &pointer) } else { String::new() },
            label: label_path(input, &pointer).unwrap_or_else(|| capital(&in_words(name))),
            said: Some(fault.said.in_units(units))
                .filter(|said| said != "nothing")
                .unwrap_or_default()
                .trim_matches(['«', '»'])
                .to_owned(),
            why: sentence(&fault.why.in_units(units)),
            instead: Some(instead(&fault.instead, units)).filter(|text| known && !text.is_empty()),
            pointer,
        }
    });
    told.collect()
}

/// What would do, as the button types it.
fn instead(node: &Node, units: Units) -> String {
    match node {
        Node::Nothing => String::new(),
        Node::Leaf(figure) => figure.text(units),
        Node::Data(value) => value.as_str().map_or_else(|| value.to_string(), str::to_owned),
        other => other.as_str().unwrap_or_default().to_owned(),
    }
}

/// `Openings 2, left` for a pointer into a list.
fn label_path(input: &Shape, pointer: &str) -> Option<String> {
    let mut label = String::new();
    let mut at = String::new();
    for part in pointer.split('/').skip(1) {
        at.push('/');
        at.push_str(part);
        if part.bytes().all(|byte| byte.is_ascii_digit()) {
            let row: usize = part.parse().ok()?;
            label = format!("{label} {}", row.saturating_add(1));
            continue;
        }
        let name = Place::at(input, &at)?.label(part);
        label = if label.is_empty() { name } else { format!("{label}, {}", name.to_lowercase()) };
    }
    Some(label).filter(|label| !label.is_empty())
}

fn sentence(text: &str) -> String {
    let text = capital(text);
    if text.is_empty() || text.ends_with(['.', '?']) { text } else { format!("{text}.") }
}
