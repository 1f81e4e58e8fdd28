//! Judging an input: one walk over its shape and the raw JSON, which finds every fault and leaves the tree that types are read from.
//!
//! Quantities are read here: a bare number takes the reader's unit system. All faults are told at once, in the order of the form.

use quantity::{Exact, INCH, KindFacts, Length, MILLIMETRE, Money, Tape, Units, print, read_physical};
use serde_json::{Map, Value};

use crate::shape::{Choice, Field, Kind, Shape};
use crate::{Fault, Figure, Node, Note, Words};

/// More list entries and unknown fields than this are not looked at one by one.
const MOST_FAULTS: usize = 1_000;

impl Shape {
    /// The input as a tree, and notes on values outside what is usual. `example` is an input that would do, as a person writes it.
    /// # Errors
    /// All faults of the input at once.
    pub fn judge(&self, raw: &Value, units: Units, example: &Value) -> Result<(Node, Vec<Note>), Vec<Fault>> {
        let mut judge = Judge { units, example, at: String::new(), faults: Vec::new(), notes: Vec::new() };
        let node = judge.place(self, None, raw);
        if judge.faults.is_empty() { Ok((node, judge.notes)) } else { Err(judge.faults) }
    }
}

struct Judge<'a> {
    units: Units,
    example: &'a Value,
    /// The JSON pointer of the place that is being looked at.
    at: String,
    faults: Vec<Fault>,
    notes: Vec<Note>,
}

impl Judge<'_> {
    fn place(&mut self, shape: &Shape, field: Option<&Field>, value: &Value) -> Node {
        if value.is_null() {
            return if shape.nullable { Node::Nothing } else { self.not_of_its_kind(shape, value) };
        }
        match shape.kind {
            Kind::Length(bounds) => self.length(bounds, field, value),
            Kind::Physical(facts, range) => self.physical(facts, range, field, value),
            Kind::Money => self.money(value),
            Kind::Count { least, most } => self.count(shape, (least, most), value),
            Kind::Number => match value.as_f64() {
                Some(number) => Node::Leaf(Figure::Number(number)),
                None => self.not_of_its_kind(shape, value),
            },
            Kind::Text { least, most } => self.text(shape, (least, most), value),
            Kind::Flag => match value.as_bool() {
                Some(flag) => Node::Flag(flag),
                None => self.not_of_its_kind(shape, value),
            },
            Kind::Choice(choices) => self.choice(choices, value),
            Kind::Group(fields) => match value.as_object() {
                Some(given) => self.group(fields, given),
                None => self.not_of_its_kind(shape, value),
            },
            Kind::List { item, least, most } => match value.as_array() {
                Some(items) => self.list(item, (least, most), items, value),
                None => self.not_of_its_kind(shape, value),
            },
            // What only answers hold is asked of nobody.
            Kind::Reading | Kind::Run | Kind::Figure | Kind::Data => self.not_of_its_kind(shape, value),
        }
    }

    fn group(&mut self, fields: &'static [Field], given: &Map<String, Value>) -> Node {
        let mut found = Vec::with_capacity(fields.len());
        for field in fields {
            match given.get(field.name) {
                Some(value) => {
                    let node = self.inside(field.name, |judge| judge.place(&field.shape, Some(field), value));
                    found.push((field.name, node));
                }
                None if field.required() => self.inside(field.name, |judge| {
                    let instead = judge.instead(None);
                    judge.push("nothing", "this is needed and was left out", instead);
                }),
                None => {}
            }
        }
        if found.len() < given.len() {
            let unknown = given.keys().filter(|name| fields.iter().all(|field| field.name != **name));
            for name in unknown.take(MOST_FAULTS) {
                let known = fields.iter().map(|field| field.name).collect::<Vec<_>>().join(", ");
                let why = format!("there is no such field here; known are {known}");
                self.inside(name, |judge| judge.push(quoted(name), why, Value::Null));
            }
        }
        Node::Group(found)
    }

    fn list(&mut self, item: &Shape, (least, most): (usize, Option<usize>), items: &[Value], whole: &Value) -> Node {
        if items.len() < least {
            self.fault(whole, format!("needs at least {least}"), None);
        }
        if let Some(most) = most.filter(|most| *most < items.len()) {
            self.fault(whole, format!("can hold at most {most}"), None);
        }
        let looked_at = items.iter().enumerate().take(most.map_or(MOST_FAULTS, |most| most + 1));
        let nodes =
            looked_at.map(|(place, value)| self.inside(&place.to_string(), |judge| judge.place(item, None, value)));
        Node::List(nodes.collect())
    }

    /// Goes one step deeper, and back.
    fn inside<T>(&mut self, name: &str, look: impl FnOnce(&mut Self) -> T) -> T {
        let end = self.at.len();
        self.at.push('/');
        push_escaped(&mut self.at, name);
        let found = look(self);
        self.at.truncate(end);
        found
    }

    fn length(&mut self, bounds: Option<[Length; 2]>, field: Option<&Field>, value: &Value) -> Node {
        let length = match Length::from_json(value, Some(self.units)) {
            Ok(length) => length,
            Err(rule) => {
                let instead = self.instead(Some(rule.valid_example(self.units).into()));
                self.push(quoted(&plain(value)), rule.to_string(), instead);
                return Node::Nothing;
            }
        };
        if let Some([least, most]) = bounds.filter(|[least, most]| length < *least || length > *most) {
            let (least_said, most_said) = (self.bound(least, true), self.bound(most, false));
            let mut why = Words::new("must be from {} to {}").with(least_said.clone()).with(most_said.clone());
            if let Some(other) = self.other_reading(value, least, most) {
                why = Words::new("must be from {} to {}; if {} was meant, write the unit")
                    .with(least_said)
                    .with(most_said)
                    .with(other);
            }
            let instead = self.instead(Some(least.text(self.units).into()));
            self.push(Words::of(length), why, instead);
            return Node::Nothing;
        }
        if let Some((field, [least, most])) = usual(field, |word| Length::read_with_unit(word).ok())
            && (length < least || length > most)
        {
            self.unusual(field, length, least, most);
        }
        Node::Leaf(length.into())
    }

    /// A bound as it is told: rounded to the inside, to a mark that is easy to read.
    fn bound(&self, bound: Length, up: bool) -> String {
        let coarse = bound.size() >= INCH;
        let step = match (self.units, coarse) {
            (Units::Imperial, true) => Tape::Eighth.step(),
            (Units::Imperial, false) => Tape::SixtyFourth.step(),
            (Units::Metric, true) => MILLIMETRE,
            (Units::Metric, false) => Length::um(100),
        };
        let rounded = if up { bound.exact().up_to(step) } else { bound.exact().down_to(step) };
        rounded.text(self.units)
    }

    /// What a bare number out of range would be in the other unit system, when that would be in range.
    fn other_reading(&self, value: &Value, least: Length, most: Length) -> Option<String> {
        let text = value.as_str()?.trim();
        let bare = text.chars().all(|sign| sign.is_ascii_digit() || sign == '.');
        let other = self.units.other();
        let length = Length::read(text, other).ok().filter(|length| bare && least <= *length && *length <= most)?;
        Some(match other {
            Units::Metric => print::millimetres(length.exact(), Length::from_nm(1)),
            Units::Imperial => print::inches(Exact::from(length), 64),
        })
    }

    fn physical(
        &mut self,
        facts: &'static KindFacts,
        range: Option<[f64; 2]>,
        field: Option<&Field>,
        value: &Value,
    ) -> Node {
        let figure = |metric: f64| Figure::Physical(facts, metric);
        let metric = match read_physical(facts, value, self.units) {
            Ok(metric) => metric,
            Err(rule) => {
                let instead = self.middle(facts, range);
                self.push(quoted(&plain(value)), rule.to_string(), instead);
                return Node::Nothing;
            }
        };
        if let Some([least, most]) = range {
            let slack = 1e-9 * least.abs().max(most.abs()).min(1e9);
            if metric < least - slack || metric > most + slack {
                let why = Words::new("must be from {} to {}").with(figure(least)).with(figure(most));
                let instead = self.middle(facts, range);
                self.push(Words::of(figure(metric)), why, instead);
                return Node::Nothing;
            }
        }
        if let Some((field, [least, most])) =
            usual(field, |word| read_physical(facts, &word.into(), Units::Metric).ok())
            && (metric < least || metric > most)
        {
            self.unusual(field, figure(metric), figure(least), figure(most));
        }
        Node::Leaf(figure(metric))
    }

    /// The worked example's value, or one from the middle of the range.
    fn middle(&self, facts: &'static KindFacts, range: Option<[f64; 2]>) -> Value {
        let middle = range.map(|[least, most]| Figure::Physical(facts, (least + most) / 2.0));
        self.instead(middle.map(|middle| middle.text(self.units).into()))
    }

    fn unusual(&mut self, field: &Field, value: impl Into<Figure>, least: impl Into<Figure>, most: impl Into<Figure>) {
        let words = Words::new("{}: {} is outside the usual {} to {}").with(field.label()).with(value);
        self.notes.push(Note::check(words.with(least).with(most)));
    }

    fn money(&mut self, value: &Value) -> Node {
        match Money::from_json(value) {
            Ok(money) => Node::Leaf(money.into()),
            Err(rule) => {
                let instead = self.instead(Some("48.00".into()));
                self.push(quoted(&plain(value)), rule, instead);
                Node::Nothing
            }
        }
    }

    /// A whole number, also when it is written as `5.0`. One beyond 64 bits is out of range, not of another kind.
    fn count(&mut self, shape: &Shape, (least, most): (Option<i64>, Option<i64>), value: &Value) -> Node {
        let Some(number) = value.as_f64().filter(|number| libm::trunc(*number).total_cmp(number).is_eq()) else {
            return self.not_of_its_kind(shape, value);
        };
        let whole = value.as_i64().unwrap_or(number as i64);
        let (low, high) = (least.is_some_and(|least| whole < least), most.is_some_and(|most| most < whole));
        if low || high {
            let why = match (least, most) {
                (Some(least), Some(most)) => format!("must be from {least} to {most}"),
                (Some(least), None) => format!("must be {least} or more"),
                (_, most) => format!("must be {} or less", most.unwrap_or_default()),
            };
            let nearest = if low { least } else { most };
            self.fault(value, why, nearest.map(Value::from));
            return Node::Nothing;
        }
        Node::Leaf(whole.into())
    }

    fn text(&mut self, shape: &Shape, (least, most): (usize, Option<usize>), value: &Value) -> Node {
        let Some(text) = value.as_str() else { return self.not_of_its_kind(shape, value) };
        let letters = text.chars().count();
        if letters < least {
            self.fault(value, format!("must have at least {least} letters"), None);
        } else if let Some(most) = most.filter(|most| *most < letters) {
            self.fault(value, format!("must have at most {most} letters"), None);
        }
        Node::Leaf(text.into())
    }

    fn choice(&mut self, choices: &'static [Choice], value: &Value) -> Node {
        let said = value.as_str();
        if let Some(choice) = choices.iter().find(|choice| said == Some(choice.word)) {
            return Node::Word(choice.word);
        }
        let words: Vec<_> = choices.iter().map(|choice| format!("«{}»", choice.word)).collect();
        let likely = said.and_then(|said| nearest(said, choices)).map(Value::from);
        let instead = likely.unwrap_or_else(|| self.instead(choices.first().map(|choice| choice.word.into())));
        self.push(quoted(&plain(value)), format!("must be one of {}", words.join(", ")), instead);
        Node::Nothing
    }

    fn not_of_its_kind(&mut self, shape: &Shape, value: &Value) -> Node {
        let due = match shape.kind {
            Kind::Length(_) | Kind::Physical(..) | Kind::Money => "a number or text or a group of fields",
            Kind::Count { .. } => "a whole number",
            Kind::Number => "a number",
            Kind::Text { .. } => "text",
            Kind::Flag => "yes or no (true or false)",
            Kind::Choice(choices) => return self.choice(choices, value),
            Kind::Group(_) => "a group of fields",
            Kind::List { .. } => "a list",
            Kind::Reading | Kind::Run | Kind::Figure | Kind::Data => "left out",
        };
        self.fault(value, format!("must be {due}"), None);
        Node::Nothing
    }

    /// Tells a fault here, with the worked example's value or the one that is known to do.
    fn fault(&mut self, said: &Value, why: String, known: Option<Value>) {
        let instead = self.instead(known);
        self.push(quoted(&plain(said)), why, instead);
    }

    fn push(&mut self, said: impl Into<Words>, why: impl Into<Words>, instead: Value) {
        // One place has one fault: the first.
        if self.faults.last().is_none_or(|last| last.pointer != self.at) {
            self.faults.push(Fault::new(self.at.clone(), said, why, instead));
        }
    }

    /// What would do here: the worked example's value where it has one, else what is known of the field.
    fn instead(&self, known: Option<Value>) -> Value {
        let first = |part| if is_place(part) { "0" } else { part };
        let found = self.example.pointer(&self.at).or_else(|| {
            let at_first: Vec<_> = self.at.split('/').map(first).collect();
            self.example.pointer(&at_first.join("/"))
        });
        found.filter(|value| !value.is_object() && !value.is_array()).cloned().or(known).unwrap_or(Value::Null)
    }
}

/// The usual range of a field, read.
fn usual<T>(field: Option<&Field>, read: impl Fn(&str) -> Option<T>) -> Option<(&Field, [T; 2])> {
    let field = field?;
    let [least, most] = field.usual?;
    Some((field, [read(least)?, read(most)?]))
}

/// How alike two words must be, from 0 to 1, for one to have been meant by the other.
const ALIKE: f64 = 0.8;

/// The allowed word that is most like what was said, where one is.
fn nearest(said: &str, choices: &[Choice]) -> Option<&'static str> {
    let likeness = |choice: &Choice| strsim::jaro_winkler(said, choice.word);
    let nearest = choices.iter().max_by(|one, other| likeness(one).total_cmp(&likeness(other)))?;
    (likeness(nearest) >= ALIKE).then_some(nearest.word)
}

fn is_place(part: &str) -> bool {
    !part.is_empty() && part.chars().all(|sign| sign.is_ascii_digit())
}

fn push_escaped(at: &mut String, name: &str) {
    if name.contains(['~', '/']) {
        at.push_str(&name.replace('~', "~0").replace('/', "~1"));
    } else {
        at.push_str(name);
    }
}

/// What was given, shortened to what fits a line.
fn plain(value: &Value) -> String {
    let text = match value {
        Value::String(text) => text.clone(),
        Value::Object(_) => "several fields".to_owned(),
        Value::Array(items) => format!("a list of {}", items.len()),
        other => other.to_string(),
    };
    if text.chars().count() > 60 { text.chars().take(57).chain("…".chars()).collect() } else { text }
}

fn quoted(text: &str) -> Words {
    Words::from(format!("«{text}»"))
}
