//! The answer to a calculator as HTML: one big figure, the others as lists and tables, the working, what gives reason to speak.
//!
//! Made from the answer and its schema alone. It prints what the calculator returned and works nothing out.

use calculators::catalogue::{Entry, Step};
use calculators::quantity::{Amount, Units, kind, print};
use serde::Serialize;
use serde_json::{Map, Value};

use crate::figure;
use crate::form::shape::{self, Node, Shape, capital, in_words};
use crate::mathml;
use crate::theme::Theme;

#[derive(Serialize)]
struct PanelView {
    headline: Vec<FigureView>,
    blocks: Vec<BlockView>,
    notes: Vec<NoteView>,
    working: Vec<StepView>,
}

#[derive(Serialize)]
pub(crate) struct FigureView {
    label: String,
    html: String,
    /// It is words, not a figure, and is set smaller.
    words: bool,
}

/// A stretch of the answer: figures under each other, or a table.
#[derive(Default, Serialize)]
struct BlockView {
    title: String,
    figures: Vec<FigureView>,
    head: Vec<HeadView>,
    rows: Vec<Vec<CellView>>,
}

#[derive(Serialize)]
struct HeadView {
    label: String,
    number: bool,
}

#[derive(Serialize)]
struct CellView {
    html: String,
    number: bool,
}

#[derive(Serialize)]
struct NoteView {
    level: String,
    html: String,
    offer: Option<OfferView>,
}

/// A value that a button puts into a field of the form the panel stands in.
#[derive(Serialize)]
struct OfferView {
    put: String,
    action: String,
}

#[derive(Serialize)]
struct StepView {
    what: String,
    formula: Option<String>,
    /// It may be wider than a narrow page and is then slid sideways, which the keyboard must be able to do as well.
    long: bool,
    /// It may be wider than half a sheet of paper, where the working stands in two columns.
    wide: bool,
    /// The formula as it is written, where it is wider than any paper: there it stands in lines.
    plain: Option<String>,
    numbers: Option<String>,
    letters: Vec<LetterView>,
    /// What the result is, set as a figure.
    result: Option<String>,
    metric: bool,
    because: String,
}

#[derive(Serialize)]
struct LetterView {
    symbol: String,
    name: String,
    value: String,
}

/// The inside of the answer panel.
pub(crate) fn html(theme: &Theme, entry: &Entry, answer: &Value, units: Units) -> String {
    let empty = Value::Null;
    let result = answer.get("result").unwrap_or(&empty);
    let schema =
        entry.answer_schema().get("properties").and_then(|properties| properties.get("result")).unwrap_or(&empty);
    let headline = entry.card().headline;
    let view = PanelView {
        headline: figures_at(entry, answer, headline.iter().copied()),
        blocks: blocks(result, Node::new(schema, true), headline),
        notes: notes(answer),
        working: working(answer, units),
    };
    theme.fill("panel.html", &view)
}

/// The figures of an answer at these places in its result; a place that is not there is left out.
pub(crate) fn figures_at<'p>(entry: &Entry, answer: &Value, places: impl Iterator<Item = &'p str>) -> Vec<FigureView> {
    let empty = Value::Null;
    let schema =
        entry.answer_schema().get("properties").and_then(|properties| properties.get("result")).unwrap_or(&empty);
    let figures = places.filter_map(|pointer| {
        let node = shape::at(schema, pointer)?;
        let value = answer.pointer(&format!("/result{pointer}")).filter(|value| !value.is_null())?;
        let name = pointer.rsplit('/').find(|part| part.parse::<usize>().is_err()).unwrap_or_default();
        let row = pointer.split('/').filter_map(|part| part.parse::<usize>().ok()).next_back();
        let label = match row {
            Some(row) => format!("{} {}", node.label(name), row + 1),
            None => node.label(name),
        };
        Some(figure_view(label, value, &node))
    });
    figures.collect()
}

#[derive(Serialize)]
struct GivenView {
    blocks: Vec<BlockView>,
}

/// An input as figures and tables, for a question that is put to somebody.
pub(crate) fn given(theme: &Theme, entry: &Entry, read: Value, units: Units) -> String {
    let node = Node::new(entry.input_schema(), true);
    let printed = print::walk(with_kinds(read, node), units);
    theme.fill("blocks.html", &GivenView { blocks: blocks(&printed, node, &[]) })
}

/// An input says of a physical quantity its value alone; to be printed it needs to say what it is.
fn with_kinds(value: Value, node: Node<'_>) -> Value {
    match value {
        Value::Array(items) => {
            let item = node.schema.get("items").map(|item| Node::new(item, true));
            items.into_iter().map(|value| item.map_or(Value::Null, |item| with_kinds(value, item))).collect()
        }
        Value::Object(mut fields) => {
            if let Some(kind) = node.schema.get("x-kind") {
                fields.entry("kind").or_insert_with(|| kind.clone());
                return fields.into();
            }
            let whole = Value::Object(fields.clone());
            let branch = branch_of(node, &whole);
            for (name, field) in branch.fields() {
                if let Some(place) = fields.get_mut(name) {
                    *place = with_kinds(place.take(), field);
                }
            }
            fields.into()
        }
        other => other,
    }
}

/// The headline in words, for the announcement after an answer came in: `Clear bay: 13 in`.
pub(crate) fn in_words_of(entry: &Entry, answer: &Value) -> String {
    let Some(pointer) = entry.card().headline.first() else { return String::new() };
    let schema = entry.answer_schema().get("properties").and_then(|properties| properties.get("result"));
    let name = pointer.rsplit('/').next().unwrap_or_default();
    let label = schema
        .and_then(|schema| shape::at(schema, pointer))
        .map_or_else(|| capital(&in_words(name)), |node| node.label(name));
    let value = answer.pointer(&format!("/result{pointer}")).map(|value| plain(value, None)).unwrap_or_default();
    format!("{label}: {value}")
}

fn figure_view(label: String, value: &Value, node: &Node<'_>) -> FigureView {
    let words = value.is_string() || value.is_array();
    FigureView { label, html: value_html(value, Some(node)), words }
}

/// Everything of the result that is not in the headline, in the schema's order.
fn blocks(result: &Value, node: Node<'_>, headline: &[&str]) -> Vec<BlockView> {
    let mut found = Vec::new();
    let mut top = BlockView::default();
    let Some(fields) = result.as_object() else { return found };
    collect(fields, node, "", headline, &mut top, &mut found);
    if !top.figures.is_empty() {
        found.insert(0, top);
    }
    found
}

fn collect(
    fields: &Map<String, Value>,
    node: Node<'_>,
    at: &str,
    headline: &[&str],
    figures: &mut BlockView,
    found: &mut Vec<BlockView>,
) {
    for (name, value) in fields {
        let place = format!("{at}/{name}");
        if headline.contains(&place.as_str()) || value.is_null() {
            continue;
        }
        let field = node.fields().find(|(other, _)| other == name).map(|(_, field)| field);
        // What only a program reads stays in the answers that programs ask for.
        if field.is_some_and(|field| field.schema.get("x-for-machines").is_some()) {
            continue;
        }
        let label = field.map_or_else(|| capital(&in_words(name)), |field| field.label(name));
        match value {
            Value::Array(items) if items.iter().any(|item| item.is_object() && !is_leaf(item)) => {
                let item = field.and_then(|field| field.schema.get("items")).map(|item| Node::new(item, true));
                found.push(table(label, items, item));
            }
            Value::Array(items) if items.is_empty() => {}
            Value::Object(inner) if !is_leaf(value) => {
                let mut group = BlockView { title: label, ..BlockView::default() };
                let mut below = Vec::new();
                if let Some(field) = field {
                    collect(inner, branch_of(field, value), &place, headline, &mut group, &mut below);
                }
                if !group.figures.is_empty() {
                    found.push(group);
                }
                found.append(&mut below);
            }
            _ => {
                let view = field.map(|field| figure_view(label.clone(), value, &field));
                figures.figures.push(view.unwrap_or_else(|| FigureView {
                    label,
                    html: value_html(value, None),
                    words: value.is_string(),
                }));
            }
        }
    }
}

/// The branch of a choice between groups that a value is.
fn branch_of<'s>(node: Node<'s>, value: &Value) -> Node<'s> {
    match node.shape() {
        Shape::Variants { tag, branches } => {
            let word = value.get(tag).and_then(Value::as_str).unwrap_or_default();
            branches.iter().find(|(name, _)| *name == word).map_or(node, |(_, schema)| Node::new(schema, true))
        }
        _ => node,
    }
}

fn table(title: String, items: &[Value], item: Option<Node<'_>>) -> BlockView {
    let mut names: Vec<&str> = Vec::new();
    for name in items.iter().filter_map(Value::as_object).flat_map(Map::keys) {
        if !names.contains(&name.as_str()) {
            names.push(name);
        }
    }
    let fields: Vec<_> = names
        .iter()
        .map(|name| {
            let mut nodes = items.iter().filter_map(|value| {
                branch_of(item?, value).fields().find(|(other, _)| other == name).map(|(_, field)| field)
            });
            nodes.next()
        })
        .collect();
    let filled: Vec<bool> = names
        .iter()
        .map(|name| items.iter().any(|item| item.get(name).is_some_and(|value| !value.is_null())))
        .collect();
    let is_number = |name: &str| {
        let mut values = items.iter().filter_map(|item| item.get(name)).filter(|value| !value.is_null());
        values.all(|value| value.is_number() || is_leaf(value))
    };
    let columns: Vec<(usize, &str)> =
        names.iter().copied().enumerate().filter(|(at, _)| filled.get(*at).copied().unwrap_or(false)).collect();
    let head = columns.iter().map(|(at, name)| HeadView {
        label: fields.get(*at).copied().flatten().map_or_else(|| capital(&in_words(name)), |field| field.label(name)),
        number: is_number(name),
    });
    let rows = items.iter().map(|item| {
        let cells = columns.iter().map(|(at, name)| {
            let value = item.get(name).unwrap_or(&Value::Null);
            let field = fields.get(*at).copied().flatten();
            CellView { html: value_html(value, field.as_ref()), number: is_number(name) }
        });
        cells.collect()
    });
    BlockView { title, figures: Vec::new(), head: head.collect(), rows: rows.collect() }
}

/// Whether an object of the answer is one printed quantity.
fn is_leaf(value: &Value) -> bool {
    value.get("text").is_some_and(Value::is_string)
        && (value.get("nm").is_some() || value.get("kind").is_some() || value.get("minor").is_some())
}

/// A value as plain text.
fn plain(value: &Value, node: Option<&Node<'_>>) -> String {
    match value {
        Value::Null => String::new(),
        Value::Bool(true) => "yes".to_owned(),
        Value::Bool(false) => "no".to_owned(),
        Value::Number(number) if number.is_f64() => {
            Amount::<kind::Number>::of(number.as_f64().unwrap_or_default()).text(Units::Metric)
        }
        Value::Number(number) => number.to_string(),
        Value::String(text) => match node.map(Node::shape) {
            Some(Shape::Choice(_)) => in_words(text),
            _ => text.clone(),
        },
        Value::Array(items) => items.iter().map(|item| plain(item, None)).collect::<Vec<_>>().join(", "),
        Value::Object(leaf) => {
            let text = leaf.get("tape").or_else(|| leaf.get("text")).and_then(Value::as_str);
            match text {
                Some(text) => text.to_owned(),
                None => leaf.values().map(|inner| plain(inner, None)).collect::<Vec<_>>().join(" · "),
            }
        }
    }
}

fn value_html(value: &Value, node: Option<&Node<'_>>) -> String {
    match value {
        Value::Object(leaf) if is_leaf(value) => {
            let mut html = figure::set(&plain(value, None));
            if let Some(left) = leaf.get("left").and_then(Value::as_str).filter(|left| *left != "on the mark") {
                html.push_str(&format!(" <small class=\"left\">{}</small>", figure::in_sentence(left)));
            }
            html
        }
        Value::Number(_) => figure::set(&plain(value, None)),
        Value::Array(items) if items.iter().all(|item| is_leaf(item) || item.is_number()) => {
            items.iter().map(|item| value_html(item, None)).collect::<Vec<_>>().join(", ")
        }
        _ => figure::in_sentence(&plain(value, node)),
    }
}

fn notes(answer: &Value) -> Vec<NoteView> {
    let notes = answer.get("notes").and_then(Value::as_array).into_iter().flatten();
    notes
        .map(|note| {
            let text = |name: &str| note.get(name).and_then(Value::as_str).unwrap_or_default();
            let offered = |name: &str| note.get("offer")?.get(name)?.as_str();
            let offer =
                offered("field").zip(offered("value")).zip(offered("action")).map(|((field, value), action)| {
                    OfferView { put: format!("put {field} {value}"), action: action.to_owned() }
                });
            NoteView { level: text("level").to_owned(), html: figure::in_sentence(&capital(text("words"))), offer }
        })
        .collect()
}

#[derive(Serialize)]
struct WorkingView {
    working: Vec<StepView>,
}

/// Lines of working as a list, for a sheet that lets its own figures be unfolded.
pub(crate) fn working_of(theme: &Theme, steps: &[Step], units: Units) -> String {
    let raw = serde_json::to_value(steps).unwrap_or_default();
    let printed = print::walk(raw, units);
    let steps = printed.as_array().into_iter().flatten();
    theme.fill("working.html", &WorkingView { working: steps.map(|step| step_view(step, units)).collect() })
}

fn working(answer: &Value, units: Units) -> Vec<StepView> {
    let steps = answer.get("working").and_then(Value::as_array).into_iter().flatten();
    steps.map(|step| step_view(step, units)).collect()
}

fn step_view(step: &Value, units: Units) -> StepView {
    let text = |value: &Value, name: &str| value.get(name).and_then(Value::as_str).unwrap_or_default().to_owned();
    let given: Vec<&Value> = step.get("given").and_then(Value::as_array).into_iter().flatten().collect();
    let result = step.get("result").filter(|result| !result.is_null());
    let formula = step.get("formula").and_then(Value::as_str);
    let letter = result.map(|result| text(result, "symbol")).unwrap_or_default();
    let numbers: Vec<(&str, &Value)> =
        given.iter().filter_map(|named| Some((named.get("symbol")?.as_str()?, named.get("value")?))).collect();
    let outcome = result.and_then(|result| result.get("value")).unwrap_or(&Value::Null);
    let named = |named: &Value| LetterView {
        symbol: format!("<math>{}</math>", mathml::symbol(&text(named, "symbol"))),
        name: text(named, "name"),
        value: named.get("value").map(|value| value_html(value, None)).unwrap_or_default(),
    };
    StepView {
        what: figure::in_sentence(&capital(&text(step, "what"))),
        long: formula.is_some_and(|formula| 10 < formula.len()),
        wide: formula.is_some_and(|formula| 40 < formula.len()),
        plain: formula.filter(|formula| 120 < formula.len()).map(|formula| format!("{letter} = {formula}")),
        formula: formula.and_then(|formula| mathml::with_letters(&letter, formula)),
        numbers: formula.and_then(|formula| mathml::with_numbers(formula, &numbers, outcome, units)),
        letters: given.iter().map(|one| named(one)).collect(),
        result: result.and_then(|result| result.get("value")).map(|value| value_html(value, None)),
        metric: formula.is_some_and(|formula| mathml::works_in_metric(formula, &numbers, outcome, units)),
        because: figure::in_sentence(&capital(&text(step, "because"))),
    }
}
