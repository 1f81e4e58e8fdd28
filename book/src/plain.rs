//! An answer as plain text, for a terminal: figures with their labels, lists as columns, the working line by line.

use calculators::catalogue::Entry;
use calculators::quantity::print::printed_text;
use serde_json::{Map, Value};

use crate::handbook::Handbook;

impl Handbook {
    /// An answer in plain text, cautions first.
    ///
    /// `answer` is what [`Entry::answer`] returned; its units are printed as they stand.
    pub fn plain_text(&self, entry: &Entry, answer: &Value) -> String {
        let mut out = format!("{}\n", entry.card().question);
        for caution in entry.card().cautions.iter().filter_map(|key| self.cautions().get(key)) {
            out +=
                &format!("\n{}: {} {} {}\n", caution.level.word(), caution.hazard, caution.consequence, caution.avoid);
        }
        out.push('\n');
        if let Some(result) = answer.get("result").and_then(Value::as_object) {
            group(result, entry.answer_schema().pointer("/properties/result"), 0, &mut out);
        }
        for note in answer.get("notes").and_then(Value::as_array).into_iter().flatten() {
            let level = note.get("level").and_then(Value::as_str).unwrap_or("note").to_uppercase();
            out += &format!("\n{level}: {}\n", note.get("words").map(printed_text).unwrap_or_default());
        }
        out += "\nHow it was got\n";
        for step in answer.get("working").and_then(Value::as_array).into_iter().flatten() {
            out += &working(step);
        }
        out
    }
}

fn group(fields: &Map<String, Value>, schema: Option<&Value>, depth: usize, out: &mut String) {
    let indent = "  ".repeat(depth);
    for (name, value) in fields {
        let field = schema.and_then(|schema| schema.get("properties")?.get(name));
        let label =
            field.and_then(|field| field.get("title")?.as_str()).map_or_else(|| name.replace('_', " "), str::to_owned);
        match value {
            Value::Null => {}
            Value::Array(rows) if rows.iter().any(is_group) => {
                *out += &format!("\n{indent}{label}\n");
                table(rows, &indent, out);
            }
            Value::Array(rows) => {
                let texts: Vec<_> = rows.iter().map(printed_text).collect();
                *out += &format!("{indent}{label}: {}\n", texts.join(", "));
            }
            Value::Object(inner) if is_group(value) => {
                *out += &format!("{indent}{label}\n");
                group(inner, field, depth + 1, out);
            }
            leaf => *out += &format!("{indent}{label}: {}\n", printed_text(leaf)),
        }
    }
}

/// True for a group of fields, false for a printed quantity or a plain value.
fn is_group(value: &Value) -> bool {
    value.as_object().is_some_and(|map| {
        !map.contains_key("text") || !(map.contains_key("nm") || map.contains_key("kind") || map.contains_key("minor"))
    })
}

fn cell(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::Array(items) => items.iter().map(cell).collect::<Vec<_>>().join(", "),
        Value::Object(inner) if is_group(value) => {
            inner.values().map(cell).filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" ")
        }
        leaf => printed_text(leaf),
    }
}

fn table(rows: &[Value], indent: &str, out: &mut String) {
    let heads: Vec<String> = rows.iter().filter_map(Value::as_object).fold(Vec::new(), |mut heads, row| {
        heads.extend(row.keys().filter(|key| !heads.contains(key)).cloned().collect::<Vec<_>>());
        heads
    });
    let lines: Vec<Vec<String>> = std::iter::once(heads.iter().map(|head| head.replace('_', " ")).collect())
        .chain(rows.iter().map(|row| heads.iter().map(|head| row.get(head).map(cell).unwrap_or_default()).collect()))
        .collect();
    let width = |column: usize| lines.iter().map(|line: &Vec<String>| line[column].chars().count()).max().unwrap_or(0);
    let widths: Vec<_> = (0..heads.len()).map(width).collect();
    for line in &lines {
        let cells: Vec<_> = line.iter().zip(&widths).map(|(text, width)| format!("{text:<width$}")).collect();
        *out += &format!("{indent}  {}\n", cells.join("  ").trim_end());
    }
}

fn working(step: &Value) -> String {
    let text = |name: &str| step.get(name).map(printed_text).unwrap_or_default();
    let mut out = format!("- {}\n", text("what"));
    let named = |named: &Value| {
        let part = |name: &str| named.get(name).map(printed_text).unwrap_or_default();
        format!("{} = {} ({})", part("symbol"), part("value"), part("name"))
    };
    if let Some(formula) = step.get("formula").and_then(Value::as_str) {
        let symbol = step.pointer("/result/symbol").map(printed_text).unwrap_or_default();
        out += &format!("    {symbol} = {formula}\n");
    }
    for given in step.get("given").and_then(Value::as_array).into_iter().flatten() {
        out += &format!("    {}\n", named(given));
    }
    if let Some(result) = step.get("result") {
        out += &format!("    gives {}\n", named(result));
    }
    if step.get("because").is_some() {
        out += &format!("    {}\n", text("because"));
    }
    out
}
