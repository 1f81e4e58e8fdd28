//! What a form posts, made into the JSON its calculator reads; and what its small buttons do.
//!
//! Field names are JSON pointers. The shape of the input decides what each text becomes, so that a form, a command line and a JSON body
//! end at the same place. Empty fields are left out: whether something is needed is the calculator's rule, not the form's.

use std::collections::{BTreeMap, BTreeSet};

use calculators::catalogue::{Entry, Kind, Shape};
use calculators::quantity::{Length, Tape, Units, print, read_physical};
use serde_json::{Map, Value};

use super::place::{LONGEST_LIST, Place};

/// The name under which a form's buttons post what they do.
pub const ACTION: &str = "do";
/// The name under which a form posts the unit system it was printed in.
pub const UNITS: &str = "units";

/// A form as it came in.
#[derive(Clone, Debug, PartialEq)]
pub struct Posted {
    /// The input, as the person left it and the button changed it.
    pub values: Value,
    /// Whether it is to be worked out: not when a row was added that has yet to be filled in.
    pub work: bool,
}

/// Reads posted pairs: values first, then what the pressed button does.
///
/// Buttons post `do` with `work`; `add /openings`, `drop /openings/1`, `more /run`, `less /run` (with a count: `more /run 10`),
/// `put /run 87 1/2 in`; `turn metric`, which says in the
/// other units what was written in the form's. Anything else works it out as it stands. No pair can make this fail.
pub fn read(entry: &Entry, pairs: &[(String, String)], units: Units) -> Posted {
    let mut values = to_json(entry, pairs);
    let action = pairs.iter().rev().find(|(name, _)| name == ACTION).map_or("", |(_, action)| action.as_str());
    let (verb, rest) = action.split_once(' ').unwrap_or((action, ""));
    let (pointer, word) = rest.split_once(' ').unwrap_or((rest, ""));
    let input = entry.input();
    let mut work = true;
    match verb {
        "add" => {
            add(&mut values, input, pointer, &entry.example(units).input);
            work = false;
        }
        "drop" => drop_at(&mut values, pointer),
        "more" | "less" => {
            let count = word.parse::<i64>().unwrap_or(1).clamp(1, 1_000);
            step(&mut values, input, pointer, if verb == "more" { count } else { -count }, units);
        }
        "put" => set(&mut values, input, pointer, word),
        "turn" => {
            let printed_in = written_in(pairs).unwrap_or(units);
            turn(&mut values, input, printed_in, units);
        }
        _ => {}
    }
    Posted { values, work }
}

/// The unit system in which a form is to be read and answered: the one it says it was printed in, or the one it turns to.
pub fn units_of(pairs: &[(String, String)]) -> Option<Units> {
    let turned =
        pairs.iter().rev().find(|(name, _)| name == ACTION).and_then(|(_, action)| action.strip_prefix("turn "));
    turned.and_then(units_named).or_else(|| written_in(pairs))
}

fn written_in(pairs: &[(String, String)]) -> Option<Units> {
    units_named(&pairs.iter().find(|(name, _)| name == UNITS)?.1)
}

fn units_named(word: &str) -> Option<Units> {
    [Units::Imperial, Units::Metric].into_iter().find(|units| units.word() == word)
}

/// Posted pairs as the JSON their calculator reads. Names that are no place of the input are left aside.
pub fn to_json(entry: &Entry, pairs: &[(String, String)]) -> Value {
    let given: BTreeMap<&str, &str> = pairs
        .iter()
        .filter(|(name, _)| name.starts_with('/'))
        .map(|(name, text)| (name.as_str(), text.as_str()))
        .collect();
    value_of(Place::of(*entry.input()), "", &given).unwrap_or_else(|| Value::Object(Map::new()))
}

fn value_of(place: Place, at: &str, given: &BTreeMap<&str, &str>) -> Option<Value> {
    let text = given.get(at).map(|text| text.trim()).filter(|text| !text.is_empty());
    match place.shape.kind {
        Kind::Group(_) => {
            if place.optional() && !is_present(at, given) {
                return None;
            }
            let fields = place.fields();
            let fields = fields
                .filter_map(|(name, field)| Some((name.to_owned(), value_of(field, &format!("{at}/{name}"), given)?)));
            Some(Value::Object(fields.collect()))
        }
        Kind::List { item, most, .. } => {
            let rows = rows(at, given);
            if rows.is_empty() && place.optional() && !given.contains_key(at) {
                return None;
            }
            let item = Place::of(*item);
            let items = rows.into_iter().take(most.unwrap_or(LONGEST_LIST).min(LONGEST_LIST).saturating_add(1));
            let items = items.map(|row| value_of(item, &format!("{at}/{row}"), given).unwrap_or(Value::Null));
            Some(items.filter(|item| !item.is_null()).collect())
        }
        Kind::Count { .. } | Kind::Number => text.map(number),
        Kind::Flag => text.map(|text| match text {
            "true" | "yes" | "on" => Value::Bool(true),
            "false" | "no" | "off" => Value::Bool(false),
            other => Value::from(other),
        }),
        _ => text.map(Value::from),
    }
}

/// Whether anything was posted at or below a place.
fn is_present(at: &str, given: &BTreeMap<&str, &str>) -> bool {
    given.contains_key(at) || below(&format!("{at}/"), given).next().is_some()
}

fn below<'g>(prefix: &'g str, given: &'g BTreeMap<&str, &str>) -> impl Iterator<Item = &'g str> {
    given.range(prefix..).map_while(move |(name, _)| name.strip_prefix(prefix))
}

/// The rows posted of a list, in order of their numbers.
fn rows(at: &str, given: &BTreeMap<&str, &str>) -> BTreeSet<u32> {
    let prefix = format!("{at}/");
    below(&prefix, given).filter_map(|rest| rest.split('/').next()?.parse().ok()).collect()
}

/// A number where the text is one, else the text, which the calculator then refuses in its own words.
fn number(text: &str) -> Value {
    if let Ok(whole) = text.parse::<i64>() {
        return Value::from(whole);
    }
    match text.parse::<f64>() {
        Ok(number) if number.is_finite() => Value::from(number),
        _ => Value::from(text),
    }
}

/// Adds a row to a list, or a group that was left out. Words of choice are taken from the example; figures are left to the person.
fn add(values: &mut Value, input: &Shape, pointer: &str, example: &Value) {
    let Some(place) = Place::at(input, pointer) else { return };
    let (parent, name) = pointer.rsplit_once('/').unwrap_or(("", ""));
    let Some(Value::Object(fields)) = values.pointer_mut(parent) else { return };
    match place.shape.kind {
        Kind::List { item, most, .. } => {
            let list = fields.entry(name.to_owned()).or_insert_with(|| Value::Array(Vec::new()));
            if let Value::Array(rows) = list
                && rows.len() < most.unwrap_or(LONGEST_LIST).min(LONGEST_LIST)
            {
                rows.push(blank(Place::of(*item), example.pointer(&format!("{pointer}/0"))));
            }
        }
        _ => {
            fields.entry(name.to_owned()).or_insert_with(|| blank(place, example.pointer(pointer)));
        }
    }
}

/// A row without figures yet.
fn blank(place: Place, example: Option<&Value>) -> Value {
    match place.shape.kind {
        Kind::Group(_) => {
            let mut fields = Map::new();
            for (name, field) in place.fields().filter(|(_, field)| !field.optional()) {
                let value = blank(field, example.and_then(|example| example.get(name)));
                if !value.is_null() && value != "" {
                    fields.insert(name.to_owned(), value);
                }
            }
            Value::Object(fields)
        }
        Kind::List { .. } => Value::Array(Vec::new()),
        Kind::Choice(choices) => {
            let first = choices.first().map(|choice| Value::from(choice.word));
            example.filter(|word| word.is_string()).cloned().or(first).unwrap_or(Value::Null)
        }
        _ => Value::from(""),
    }
}

fn drop_at(values: &mut Value, pointer: &str) {
    let Some((parent, name)) = pointer.rsplit_once('/') else { return };
    match values.pointer_mut(parent) {
        Some(Value::Array(rows)) => {
            if let Some(at) = name.parse::<usize>().ok().filter(|at| *at < rows.len()) {
                rows.remove(at);
            }
        }
        Some(Value::Object(fields)) => {
            fields.shift_remove(name);
        }
        _ => {}
    }
}

/// Puts a text at a place, in the form the place asks for.
fn set(values: &mut Value, input: &Shape, pointer: &str, text: &str) {
    let Some(shape) = input.at(pointer) else { return };
    let value = match shape.kind {
        Kind::Count { .. } | Kind::Number => number(text),
        _ => Value::from(text),
    };
    let Some((parent, name)) = pointer.rsplit_once('/') else { return };
    match values.pointer_mut(parent) {
        Some(Value::Object(fields)) => {
            fields.insert(name.to_owned(), value);
        }
        Some(Value::Array(rows)) => {
            if let Some(place) = name.parse::<usize>().ok().and_then(|at| rows.get_mut(at)) {
                *place = value;
            }
        }
        _ => {}
    }
}

/// Moves a length by marks of the usual tape, or a count by ones, and stays inside the bounds.
fn step(values: &mut Value, input: &Shape, pointer: &str, count: i64, units: Units) {
    let Some(place) = Place::at(input, pointer) else { return };
    let given = values.pointer(pointer).cloned();
    match place.shape.kind {
        Kind::Length(bounds) => {
            let read = |value: Value| Length::from_json(&value, Some(units)).ok();
            let default = || Some(place.default()?.length()?.nearest(Length::from_nm(1)));
            let Some(length) = given.map_or_else(default, read) else { return };
            let moved = units.usual_tape().step().nm().saturating_mul(count).saturating_add(length.nm());
            let [least, most] = bounds.unwrap_or([Length::from_nm(i64::MIN), Length::from_nm(i64::MAX)]);
            let moved = Length::from_nm(moved.clamp(least.nm(), most.nm()));
            set(values, input, pointer, &print::plain(moved.exact(), units));
        }
        Kind::Count { least, most } => {
            let default = || Some(place.default()?.number()? as i64);
            let Some(number) = given.map_or_else(default, |value| value.as_i64()) else { return };
            let moved = number.saturating_add(count).clamp(least.unwrap_or(i64::MIN), most.unwrap_or(i64::MAX));
            set(values, input, pointer, &moved.to_string());
        }
        _ => {}
    }
}

/// Says every length and quantity that can be read in the units of `from` again in those of `to`. Nothing changes its value: what
/// lies on no mark of the other system is said in millimetres to the last decimal.
fn turn(value: &mut Value, shape: &Shape, from: Units, to: Units) {
    match (shape.kind, value) {
        (Kind::Group(known), Value::Object(fields)) => {
            for field in known {
                fields.get_mut(field.name).into_iter().for_each(|value| turn(value, &field.shape, from, to));
            }
        }
        (Kind::List { item, .. }, Value::Array(items)) => {
            items.iter_mut().for_each(|value| turn(value, item, from, to));
        }
        // A tape of the other system becomes the usual one of the system that is turned to.
        (Kind::Choice(choices), Value::String(word)) => {
            let Some(tape) = Tape::ALL.into_iter().find(|tape| tape.word() == word) else { return };
            let usual = tape.in_units(to).word();
            if choices.iter().any(|choice| choice.word == usual) {
                *word = usual.to_owned();
            }
        }
        (Kind::Length(_), Value::String(text)) => {
            let Ok(length) = Length::read(text, from) else { return };
            let plain = print::plain(length.exact(), to);
            let same = Length::read(&plain, to) == Ok(length);
            *text = if same { plain } else { print::millimetres(length.exact(), Length::from_nm(1)) };
        }
        (Kind::Physical(facts, _), Value::String(text)) => {
            let Ok(metric) = read_physical(facts, &Value::from(text.as_str()), from) else { return };
            let usual = facts.text(metric, to);
            let again = read_physical(facts, &Value::from(usual.as_str()), to);
            *text = if again.is_ok_and(|again| (again - metric).abs() <= 1e-12 * metric.abs()) {
                usual
            } else {
                // Twelve figures that count: what a conversion leaves behind them is no part of the value.
                let places = if metric == 0.0 { 0.0 } else { metric.abs().log10().floor() };
                let number = format!("{metric:.*}", (11.0 - places).clamp(0.0, 15.0) as usize);
                let short =
                    if number.contains('.') { number.trim_end_matches('0').trim_end_matches('.') } else { &number };
                format!("{short} {}", facts.metric.symbol).trim_end().to_owned()
            };
        }
        _ => {}
    }
}
