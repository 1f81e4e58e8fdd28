//! The fields of a form as HTML: one walk over the schema with the values beside it.

use calculators::catalogue::{Entry, Fault};
use calculators::quantity::{Length, Units, print};
use serde::Serialize;
use serde_json::Value;

use super::shape::{Choice, Node, Shape, capital, in_words};
use super::told::{Told, told};
use super::written::{physical_line, text_of};
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
    /// Whether optional fields that nobody has filled stand in a fold at the end of their group.
    folding: bool,
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
    /// What each field of a list's rows is for, said once for all rows.
    columns: Vec<ColumnView<'a>>,
    fault: Option<&'a Told>,
}

#[derive(Serialize)]
struct ColumnView<'a> {
    label: String,
    help: &'a str,
    optional: bool,
}

#[derive(Serialize)]
struct FoldView<'a> {
    id: String,
    labels: String,
    inside: &'a str,
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
        Self { theme, id, schema, values, faults: told(id, schema, faults, units), units, folding: false }
    }

    /// The same form with its empty optional fields folded away, for inputs of many fields.
    pub(crate) fn folding(mut self) -> Self {
        self.folding = true;
        self
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
        let (mut shown, mut folded, mut labels) = (String::new(), String::new(), Vec::new());
        // Groups and lists come after the fields that belong to nothing smaller.
        let mut below = String::new();
        for (name, node) in fields {
            let place = format!("{at}/{name}");
            let html = self.field(node, name, &place);
            let part = !node.is_single();
            if self.folding && !part && self.is_spare(&node, &place) && !in_row(&place) {
                labels.push(node.label(name).to_lowercase());
                folded.push_str(&html);
            } else if self.folding && part {
                below.push_str(&html);
            } else {
                shown.push_str(&html);
            }
        }
        if !labels.is_empty() {
            let view =
                FoldView { id: format!("{}-more", field_id(self.id, at)), labels: labels.join(", "), inside: &folded };
            shown.push_str(&self.theme.fill("fold.html", &view));
        }
        shown + &below
    }

    /// Whether a place may be left empty, is empty, and has nothing wrong with it.
    fn is_spare(&self, node: &Node<'_>, at: &str) -> bool {
        let empty = self.values.pointer(at).is_none_or(Value::is_null);
        node.optional && node.default().is_none() && empty && self.fault(at).is_none()
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
            Shape::Choice(choices) => choose(&mut view, choices),
            Shape::Flag => {
                let yes_no = [Choice { word: "true", meaning: "" }, Choice { word: "false", meaning: "" }];
                choose(&mut view, &yes_no);
                for (option, label) in view.options.iter_mut().zip(["yes", "no"]) {
                    label.clone_into(&mut option.label);
                }
            }
            _ => {}
        }
        self.theme.fill("field.html", &view)
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
            columns: Vec::new(),
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
        choose(&mut view, &choices);
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
            columns: Vec::new(),
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
            // A row of one field leaves the id of its place to that field.
            let own = matches!(item.shape(), Shape::Group | Shape::Variants { .. });
            let id = field_id(self.id, &if own { place.clone() } else { format!("{place}-row") });
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
                columns: Vec::new(),
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
            columns: if self.folding && rows > 0 { columns(&item) } else { Vec::new() },
            fault: self.fault(at),
        };
        self.theme.fill("group.html", &view)
    }
}

/// What the fields of a row are for.
fn columns<'s>(item: &Node<'s>) -> Vec<ColumnView<'s>> {
    let said = item.fields().filter(|(_, node)| !node.help().is_empty());
    said.map(|(name, node)| ColumnView {
        label: node.label(name),
        help: node.help(),
        optional: node.optional && node.default().is_none(),
    })
    .collect()
}

/// Whether a place lies in a row of a list, where room is short.
fn in_row(at: &str) -> bool {
    at.split('/').any(|part| part.parse::<usize>().is_ok())
}

fn choose(view: &mut FieldView<'_>, choices: &[Choice<'_>]) {
    let letters: usize = choices.iter().map(|choice| choice.word.len() + 2).sum();
    view.kind = match choices.len() {
        2..=4 if in_row(view.name) => "select",
        2..=4 if letters <= SEGMENTS && !view.optional => "segments",
        2..=4 if !view.optional => "tall",
        _ => "select",
    };
    if view.kind == "select" && (view.optional || view.value.is_empty()) {
        let label = if view.optional { "not said" } else { "choose one" };
        view.options.push(OptionView { word: String::new(), label: label.to_owned(), chosen: view.value.is_empty() });
    }
    view.options.extend(choices.iter().map(|choice| OptionView {
        word: choice.word.to_owned(),
        label: in_words(choice.word),
        chosen: choice.word == view.value,
    }));
    let chosen = choices.iter().find(|choice| choice.word == view.value);
    view.meaning = chosen.map_or("", |choice| choice.meaning).to_owned();
}

/// The id of a field on its page.
pub(crate) fn field_id(calculator: &str, at: &str) -> String {
    format!("{calculator}{}", at.replace('/', "-"))
}
