//! The fields of a form as HTML: one walk over the schema with the values beside it.

use calculators::catalogue::{Entry, Fault, Figure, Words};
use calculators::quantity::{Length, Units, kind_named, print, read_physical};
use serde::Serialize;
use serde_json::Value;

use super::shape::{Choice, Node, Shape, capital, in_words};
use crate::figure;
use crate::theme::Theme;

/// A calculator's form, about to be printed.
pub(crate) struct Form<'a> {
    theme: &'a Theme,
    id: &'a str,
    schema: &'a Value,
    values: &'a Value,
    faults: Vec<Told>,
    units: Units,
}

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

#[derive(Serialize)]
struct FieldView<'a> {
    id: &'a str,
    name: &'a str,
    kind: &'static str,
    label: &'a str,
    help: &'a str,
    optional: bool,
    value: String,
    /// What stands in or below the line: the other unit, or the range.
    line: String,
    broken: bool,
    mode: &'static str,
    options: Vec<OptionView>,
    meaning: String,
    fault: Option<&'a Told>,
}

#[derive(Serialize)]
struct OptionView {
    word: String,
    label: String,
    chosen: bool,
}

#[derive(Serialize)]
struct GroupView<'a> {
    id: &'a str,
    name: &'a str,
    kind: &'static str,
    label: String,
    help: &'a str,
    inside: String,
    /// `drop` and the pointer, when the group may be taken away.
    drop: Option<String>,
    /// `add` and the pointer, with what the button says.
    add: Option<Add>,
    fault: Option<&'a Told>,
}

#[derive(Serialize)]
struct Add {
    action: String,
    says: String,
}

/// Longest run of words that still fits a row of segments.
const SEGMENTS: usize = 34;

impl<'a> Form<'a> {
    pub(crate) fn new(theme: &'a Theme, entry: &'a Entry, values: &'a Value, faults: &[Fault], units: Units) -> Self {
        let id = entry.card().id;
        let schema = entry.input_schema();
        Self { theme, id, schema, values, faults: told(id, schema, faults, units), units }
    }

    /// Every fault, in the order in which they were found.
    pub(crate) fn faults(&self) -> &[Told] {
        &self.faults
    }

    /// Whether the form is short enough to stay in view beside a long answer.
    pub(crate) fn is_short(&self) -> bool {
        let fields: Vec<_> = super::shape::fields(self.schema).collect();
        let simple =
            |node: &Node<'_>| !matches!(node.shape(), Shape::Group | Shape::List { .. } | Shape::Variants { .. });
        fields.len() <= 5 && fields.iter().all(|(_, node)| simple(node)) && self.faults.is_empty()
    }

    /// All fields.
    pub(crate) fn html(&self) -> String {
        self.inside(self.schema, "")
    }

    fn inside(&self, schema: &Value, at: &str) -> String {
        let fields = super::shape::fields(schema).filter(|(_, node)| node.schema.get("const").is_none());
        fields.map(|(name, node)| self.field(node, name, &format!("{at}/{name}"))).collect()
    }

    fn fault(&self, at: &str) -> Option<&Told> {
        self.faults.iter().find(|fault| fault.pointer == at)
    }

    fn field(&self, node: Node<'_>, name: &str, at: &str) -> String {
        let label = node.label(name);
        match node.shape() {
            Shape::Group => self.group(node, label, at),
            Shape::Variants { tag, branches } => self.variants(node, label, at, tag, &branches),
            Shape::List { item, least, most } => self.list(node, label, at, Node::new(item, true), (least, most)),
            shape => self.single(node, &label, at, &shape),
        }
    }

    fn single(&self, node: Node<'_>, label: &str, at: &str, shape: &Shape<'_>) -> String {
        let given = self.values.pointer(at).filter(|value| !value.is_null());
        let shown = given.or_else(|| node.default());
        let value = shown.map(|value| text_of(value, shape, self.units)).unwrap_or_default();
        let id = field_id(self.id, at);
        let mut view = FieldView {
            id: &id,
            name: at,
            kind: "plain",
            label,
            help: node.help(),
            optional: node.optional && node.default().is_none(),
            value,
            line: String::new(),
            broken: false,
            mode: "text",
            options: Vec::new(),
            meaning: String::new(),
            fault: self.fault(at),
        };
        match shape {
            Shape::Length { .. } => {
                view.kind = "length";
                let read = Length::read(&view.value, self.units).ok();
                view.broken = read.is_none() || view.fault.is_some();
                view.line = match read {
                    Some(length) => figure::set_in_prose(&print::plain(length.exact(), self.units.other())),
                    None if view.optional && view.value.is_empty() => "left empty".to_owned(),
                    None => "no length yet".to_owned(),
                };
            }
            Shape::Count { least, most } => {
                view.kind = "count";
                view.mode = "numeric";
                view.line = match (least, most) {
                    (Some(least), Some(most)) => format!("{least} to {most}"),
                    _ => String::new(),
                };
            }
            Shape::Physical { kind, range } => {
                view.line = physical_line(kind, *range, self.units);
            }
            Shape::Choice(choices) => self.choose(&mut view, choices),
            Shape::Flag => {
                let yes_no = [Choice { word: "true", meaning: "" }, Choice { word: "false", meaning: "" }];
                self.choose(&mut view, &yes_no);
                for (option, label) in view.options.iter_mut().zip(["yes", "no"]) {
                    label.clone_into(&mut option.label);
                }
            }
            _ => {}
        }
        self.theme.fill("field.html", &view)
    }

    fn choose(&self, view: &mut FieldView<'_>, choices: &[Choice<'_>]) {
        let letters: usize = choices.iter().map(|choice| choice.word.len() + 2).sum();
        view.kind = match choices.len() {
            2..=4 if letters <= SEGMENTS && !view.optional => "segments",
            2..=4 if !view.optional => "tall",
            _ => "select",
        };
        if view.kind == "select" && (view.optional || view.value.is_empty()) {
            let label = if view.optional { "not said" } else { "choose one" };
            view.options.push(OptionView {
                word: String::new(),
                label: label.to_owned(),
                chosen: view.value.is_empty(),
            });
        }
        view.options.extend(choices.iter().map(|choice| OptionView {
            word: choice.word.to_owned(),
            label: in_words(choice.word),
            chosen: choice.word == view.value,
        }));
        let chosen = choices.iter().find(|choice| choice.word == view.value);
        view.meaning = chosen.map_or("", |choice| choice.meaning).to_owned();
    }

    fn group(&self, node: Node<'_>, label: String, at: &str) -> String {
        let is_there = self.values.pointer(at).is_some_and(|value| !value.is_null());
        let id = field_id(self.id, at);
        let optional = node.optional && node.default().is_none();
        let absent = optional && !is_there;
        let says = format!("Add: {}", label.to_lowercase());
        let view = GroupView {
            id: &id,
            name: at,
            kind: if absent { "absent" } else { "group" },
            help: node.help(),
            inside: if absent { String::new() } else { self.inside(node.schema, at) },
            drop: (optional && is_there).then(|| format!("drop {at}")),
            add: absent.then(|| Add { action: format!("add {at}"), says }),
            label,
            fault: self.fault(at),
        };
        self.theme.fill("group.html", &view)
    }

    fn variants(&self, node: Node<'_>, label: String, at: &str, tag: &str, branches: &[(&str, &Value)]) -> String {
        let place = format!("{at}/{tag}");
        let default = node.default().and_then(|value| value.get(tag)).and_then(Value::as_str);
        let word = self.values.pointer(&place).and_then(Value::as_str).or(default).unwrap_or_default();
        let chosen = branches.iter().find(|(name, _)| *name == word);
        let choices: Vec<Choice<'_>> = branches
            .iter()
            .map(|(word, schema)| Choice {
                word,
                meaning: schema.get("description").and_then(Value::as_str).unwrap_or_default(),
            })
            .collect();
        let id = field_id(self.id, &place);
        let tag_label = capital(&in_words(tag));
        let mut view = FieldView {
            id: &id,
            name: &place,
            kind: "select",
            label: &tag_label,
            help: "",
            optional: node.optional,
            value: word.to_owned(),
            line: String::new(),
            broken: false,
            mode: "text",
            options: Vec::new(),
            meaning: String::new(),
            fault: self.fault(&place),
        };
        self.choose(&mut view, &choices);
        let mut inside = self.theme.fill("field.html", &view);
        inside.push_str(&self.theme.fill("show.html", &place));
        if let Some((_, schema)) = chosen {
            inside.push_str(&self.inside(schema, at));
        }
        let id = field_id(self.id, at);
        let view = GroupView {
            id: &id,
            name: at,
            kind: "group",
            label,
            help: node.help(),
            inside,
            drop: None,
            add: None,
            fault: self.fault(at),
        };
        self.theme.fill("group.html", &view)
    }

    fn list(&self, node: Node<'_>, label: String, at: &str, item: Node<'_>, (least, most): (usize, usize)) -> String {
        let rows = self.values.pointer(at).or_else(|| node.default()).and_then(Value::as_array).map_or(0, Vec::len);
        let item_label = item.label(label.trim_end_matches('s'));
        let mut inside = String::new();
        for row in 0..rows {
            let place = format!("{at}/{row}");
            let name = format!("{item_label} {}", row + 1);
            let id = field_id(self.id, &place);
            let body = match item.shape() {
                Shape::Group => self.inside(item.schema, &place),
                Shape::Variants { tag, branches } => self.variants(item, name.clone(), &place, tag, &branches),
                shape => self.single(item, &name, &place, &shape),
            };
            let view = GroupView {
                id: &id,
                name: &place,
                kind: "row",
                label: name,
                help: "",
                inside: body,
                drop: (least < rows).then(|| format!("drop {place}")),
                add: None,
                fault: self.fault(&place),
            };
            inside.push_str(&self.theme.fill("group.html", &view));
        }
        let id = field_id(self.id, at);
        let says = format!("Add: {}", item_label.to_lowercase());
        let view = GroupView {
            id: &id,
            name: at,
            kind: "list",
            label,
            help: node.help(),
            inside,
            drop: None,
            add: (rows < most).then(|| Add { action: format!("add {at}"), says }),
            fault: self.fault(at),
        };
        self.theme.fill("group.html", &view)
    }
}

/// The id of a field on its page.
pub(crate) fn field_id(calculator: &str, at: &str) -> String {
    format!("{calculator}{}", at.replace('/', "-"))
}

/// Faults in words, each with the label of its field.
fn told(id: &str, schema: &Value, faults: &[Fault], units: Units) -> Vec<Told> {
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
            let node = super::shape::at(schema, &pointer).filter(|_| !pointer.is_empty());
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
        let name = super::shape::at(schema, &at)?.label(part);
        label = if label.is_empty() { name } else { format!("{label}, {}", name.to_lowercase()) };
    }
    Some(label).filter(|label| !label.is_empty())
}

fn sentence(text: &str) -> String {
    let text = capital(text);
    if text.is_empty() || text.ends_with(['.', '?']) { text } else { format!("{text}.") }
}

/// A value of the input as a person would write it.
pub(crate) fn text_of(value: &Value, shape: &Shape<'_>, units: Units) -> String {
    match (value, shape) {
        (Value::String(text), _) => standard(text, shape, units),
        (Value::Number(_), Shape::Length { .. }) => match Length::from_json(value, Some(units)) {
            Ok(length) => print::plain(length.exact(), units),
            Err(_) => value.to_string(),
        },
        (Value::Number(number), Shape::Physical { kind, .. }) => {
            let Some(facts) = kind_named(kind) else { return String::new() };
            // In full in its metric unit first, since the printed form may have fewer figures than the value.
            standard(format!("{number} {}", facts.metric.symbol).trim_end(), shape, units)
        }
        (Value::Object(leaf), _) => {
            let text = leaf.get("tape").or_else(|| leaf.get("text")).and_then(Value::as_str);
            text.unwrap_or_default().to_owned()
        }
        (Value::Null, _) => String::new(),
        (other, _) => other.to_string(),
    }
}

/// The range of a physical quantity, rounded to its inside to three figures that count.
fn physical_line(kind: &str, range: Option<(f64, f64)>, units: Units) -> String {
    let Some((facts, (least, most))) = kind_named(kind).zip(range) else { return String::new() };
    let unit = match units {
        Units::Imperial => facts.imperial,
        Units::Metric => facts.metric,
    };
    let number = |metric: f64, up: bool| {
        let value = (metric - unit.offset) / unit.factor;
        let size = value.abs().max(1e-9);
        let decimals = if size >= 100.0 {
            0
        } else if size >= 10.0 {
            1
        } else {
            2
        };
        let scale = [1.0, 10.0, 100.0].get(decimals).copied().unwrap_or(1.0);
        // A hair is taken off first, so that a bound that is whole in this unit stays so.
        let inward = if up { (value * scale - 1e-6).ceil() } else { (value * scale + 1e-6).floor() } / scale;
        let text = format!("{inward:.decimals$}");
        let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
        if text == "-0" { "0".to_owned() } else { text.to_owned() }
    };
    match unit.symbol {
        "" => format!("{} to {}", number(least, true), number(most, false)),
        "°" | "%" => format!("{} to {}{}", number(least, true), number(most, false), unit.symbol),
        symbol => format!("{} to {} {symbol}", number(least, true), number(most, false)),
    }
}

/// A text in the form the book prints, where that says exactly the same; else as it was written.
fn standard(text: &str, shape: &Shape<'_>, units: Units) -> String {
    match shape {
        Shape::Length { .. } => {
            let Ok(length) = Length::read(text, units) else { return text.to_owned() };
            let printed = print::plain(length.exact(), units);
            if Length::read(&printed, units) == Ok(length) { printed } else { text.to_owned() }
        }
        Shape::Physical { kind, .. } => {
            let Some(facts) = kind_named(kind) else { return text.to_owned() };
            let read = |text: &str| read_physical(facts, &Value::from(text), units).ok();
            let Some(metric) = read(text) else { return text.to_owned() };
            let printed = Words::new("{}").with(Figure::Physical(facts.name, metric)).in_units(units);
            let same = read(&printed).is_some_and(|other| other.total_cmp(&metric).is_eq());
            if same { printed } else { text.to_owned() }
        }
        _ => text.to_owned(),
    }
}
