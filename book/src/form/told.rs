//! Faults in words, each with the label and the place of its field.

use calculators::catalogue::Fault;
use calculators::quantity::Units;
use serde::Serialize;
use serde_json::Value;

use super::fields::field_id;
use super::shape::{self, capital, in_words};

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
pub(super) fn told(id: &str, schema: &Value, faults: &[Fault], units: Units) -> Vec<Told> {
    let printed = Fault::print_all(faults, units);
    let text = |value: &Value| match value {
        Value::String(text) => text.clone(),
        Value::Null => String::new(),
        other => other.to_string(),
    };
    printed
        .as_array()
        .into_iter()
        .flatten()
        .map(|fault| {
            let pointer = text(&fault["pointer"]);
            let node = shape::at(schema, &pointer).filter(|_| !pointer.is_empty());
            let name = pointer.rsplit('/').next().unwrap_or_default();
            let instead = Some(text(&fault["try"])).filter(|text| !text.is_empty());
            Told {
                target: node.map(|_| field_id(id, &pointer)).unwrap_or_default(),
                label: label_path(schema, &pointer).unwrap_or_else(|| capital(&in_words(name))),
                said: Some(text(&fault["said"]))
                    .filter(|said| said != "nothing")
                    .unwrap_or_default()
                    .trim_matches(['«', '»'])
                    .to_owned(),
                why: sentence(&text(&fault["why"])),
                instead: instead.filter(|_| node.is_some()),
                pointer,
            }
        })
        .collect()
}

/// `Openings 2, left` for a pointer into a list.
fn label_path(schema: &Value, pointer: &str) -> Option<String> {
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
        let name = shape::at(schema, &at)?.label(part);
        label = if label.is_empty() { name } else { format!("{label}, {}", name.to_lowercase()) };
    }
    Some(label).filter(|label| !label.is_empty())
}

fn sentence(text: &str) -> String {
    let text = capital(text);
    if text.is_empty() || text.ends_with(['.', '?']) { text } else { format!("{text}.") }
}
