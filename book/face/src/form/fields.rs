//! The fields of a form as HTML: one walk over the shape of an input with the values beside it.

use calculators::catalogue::{Choice, Entry, Fault, Kind, Shape, in_words};
use calculators::quantity::{Length, Units};
use serde::Serialize;
use serde_json::Value;

use super::place::{LONGEST_LIST, Place};
use super::told::{Told, told};
use super::written::{physical_line, text_of, text_of_default};
use crate::figure;
use crate::theme::Theme;

/// A calculator's form, about to be printed.
pub(crate) struct Form<'a> {
    theme: &'a Theme,
    id: &'a str,
    input: &'a Shape,
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
        let input = entry.input();
        Self { theme, id, input, values, faults: told(id, input, faults, units), units, folding: false }
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
        let mut fields = Place::of(*self.input).fields();
        self.input.fields().len() <= 5 && fields.all(|(_, place)| place.is_single()) && self.faults.is_empty()
    }

    /// All fields.
    pub(crate) fn html(&self) -> String {
        self.inside(Place::of(*self.input), "")
    }

    fn inside(&self, group: Place, at: &str) -> String {
        let (mut shown, mut folded, mut labels) = (String::new(), String::new(), Vec::new());
        // Groups and lists come after the fields that belong to nothing smaller.
        let mut below = String::new();
        for (name, place) in group.fields() {
            let at = format!("{at}/{name}");
            let html = self.field(place, name, &at);
            if self.folding && !place.is_single() {
                below.push_str(&html);
            } else if self.folding && self.is_empty(place, &at) && !in_row(&at) {
                labels.push(place.label(name).to_lowercase());
                folded.push_str(&html);
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
    fn is_empty(&self, place: Place, at: &str) -> bool {
        place.spare() && self.values.pointer(at).is_none_or(Value::is_null) && self.fault(at).is_none()
    }

    fn fault(&self, at: &str) -> Option<&Told> {
        self.faults.iter().find(|fault| fault.pointer == at)
    }

    fn field(&self, place: Place, name: &str, at: &str) -> String {
        let label = place.label(name);
        match place.shape.kind {
            Kind::Group(_) => self.group(place, label, at),
            Kind::List { item, least, most } => {
                let most = most.unwrap_or(LONGEST_LIST).min(LONGEST_LIST);
                self.list(place, label, at, Place::of(*item), (least, most))
            }
            _ => self.single(place, &label, at),
        }
    }

    fn single(&self, place: Place, label: &str, at: &str) -> String {
        let given = self.values.pointer(at).filter(|value| !value.is_null());
        let value = match given {
            Some(value) => text_of(value, &place.shape, self.units),
            None => place.default().map(|default| text_of_default(&default, self.units)).unwrap_or_default(),
        };
        let id = field_id(self.id, at);
        let mut view = FieldView {
            id: &id,
            name: at,
            kind: "plain",
            label,
            help: place.help(),
            optional: place.spare(),
            value,
            line: String::new(),
            broken: false,
            mode: "text",
            options: Vec::new(),
            meaning: String::new(),
            fault: self.fault(at),
        };
        match place.shape.kind {
            Kind::Length(_) => {
                view.kind = "length";
                let read = Length::read(&view.value, self.units).ok();
                view.broken = read.is_none() || view.fault.is_some();
                view.line = match read {
                    Some(length) => figure::set_in_prose(length.exact(), self.units.other()),
                    None if view.optional && view.value.is_empty() => "left empty".to_owned(),
                    None => "no length yet".to_owned(),
                };
            }
            Kind::Count { least, most } => {
                view.kind = "count";
                view.mode = "numeric";
                view.line = match (least, most) {
                    (Some(least), Some(most)) => format!("{least} to {most}"),
                    _ => String::new(),
                };
            }
            Kind::Physical(facts, Some(range)) => {
                view.line = physical_line(facts, range, self.units);
            }
            Kind::Choice(choices) => choose(&mut view, choices),
            Kind::Flag => {
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

    fn group(&self, place: Place, label: String, at: &str) -> String {
        let is_there = self.values.pointer(at).is_some_and(|value| !value.is_null());
        let id = field_id(self.id, at);
        let absent = place.spare() && !is_there;
        let says = format!("Add: {}", label.to_lowercase());
        let view = GroupView {
            id: &id,
            name: at,
            kind: if absent { "absent" } else { "group" },
            help: place.help(),
            inside: if absent { String::new() } else { self.inside(place, at) },
            drop: (place.spare() && is_there).then(|| format!("drop {at}")),
            add: absent.then(|| Add { action: format!("add {at}"), says }),
            columns: Vec::new(),
            label,
            fault: self.fault(at),
        };
        self.theme.fill("group.html", &view)
    }

    fn list(&self, place: Place, label: String, at: &str, item: Place, (least, most): (usize, usize)) -> String {
        let given = self.values.pointer(at).map(|rows| rows.as_array().map_or(0, Vec::len));
        let rows = given.or_else(|| Some(place.default()?.items().len())).unwrap_or(0);
        let item_label = item.label(label.trim_end_matches('s'));
        let mut inside = String::new();
        for row in 0..rows {
            let place = format!("{at}/{row}");
            let name = format!("{item_label} {}", row + 1);
            // A row of one field leaves the id of its place to that field.
            let own = matches!(item.shape.kind, Kind::Group(_));
            let id = field_id(self.id, &if own { place.clone() } else { format!("{place}-row") });
            let body = if own { self.inside(item, &place) } else { self.single(item, &name, &place) };
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
            help: place.help(),
            inside,
            drop: None,
            add: (rows < most).then(|| Add { action: format!("add {at}"), says }),
            columns: if self.folding && rows > 0 { columns(item) } else { Vec::new() },
            fault: self.fault(at),
        };
        self.theme.fill("group.html", &view)
    }
}

/// What the fields of a row are for.
fn columns(item: Place) -> Vec<ColumnView<'static>> {
    let said = item.fields().filter(|(_, place)| !place.help().is_empty());
    said.map(|(name, place)| ColumnView { label: place.label(name), help: place.help(), optional: place.spare() })
        .collect()
}

/// Whether a place lies in a row of a list, where room is short.
fn in_row(at: &str) -> bool {
    at.split('/').any(|part| part.parse::<usize>().is_ok())
}

fn choose(view: &mut FieldView<'_>, choices: &[Choice]) {
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
