//! The judge of inputs beside a validator of JSON Schema from outside the project: the crate `jsonschema`, on the schema that the
//! OpenAPI document publishes. Both must find the same faults at the same places, and tell them in the same words.
//!
//! What a quantity may be is left out of the schemas first: how a length is written is a rule of the trade, and no keyword says it.

use std::collections::BTreeMap;

use calculators::catalogue::{CATALOGUE, Kind, Schemas, Shape};
use calculators::quantity::Units;
use jsonschema::error::{TypeKind, ValidationErrorKind as Rule};
use jsonschema::{ValidationError, Validator};
use serde_json::{Value, json};

use crate::any_shape::{Chance, spoil};

const SEED: u64 = 0x1DEA_5EED_0B5E_55ED;
const CASES: u64 = 120;

/// A schema that binds everything but its quantities.
fn without_quantities(schema: &Value) -> Value {
    match schema {
        Value::Object(fields) if is_quantity(schema) => {
            let nullable =
                fields["anyOf"].as_array().is_some_and(|forms| forms.iter().any(|form| form["type"] == "null"));
            if nullable { json!({}) } else { json!({ "not": { "type": "null" } }) }
        }
        Value::Object(fields) => fields
            .iter()
            .map(|(name, inner)| (name.clone(), without_quantities(inner)))
            .collect::<serde_json::Map<_, _>>()
            .into(),
        Value::Array(items) => items.iter().map(without_quantities).collect(),
        other => other.clone(),
    }
}

/// A number in a unit, or text.
fn is_quantity(schema: &Value) -> bool {
    let forms: Vec<_> = schema["anyOf"].as_array().into_iter().flatten().map(|form| form["type"].clone()).collect();
    forms.starts_with(&[json!("number"), json!("string")])
}

/// The faults by their places, what was given and the rule, as the validator tells them; the first of a place counts.
fn told_outside(validator: &Validator, input: &Value) -> BTreeMap<String, (String, String)> {
    let mut found = BTreeMap::new();
    validator.iter_errors(input).for_each(|error| explain(&error, &mut found));
    // Of a list too long, nobody is told what is wrong with each of its items: only up to the first that is one too many.
    let full: Vec<(String, usize)> = found
        .iter()
        .filter_map(|(at, (_, why))| Some((format!("{at}/"), why.strip_prefix("can hold at most ")?.parse().ok()?)))
        .collect();
    let beyond = |at: &str| {
        full.iter().any(|(list, most)| {
            let place = at.strip_prefix(list.as_str()).and_then(|rest| rest.split('/').next()?.parse::<usize>().ok());
            place.is_some_and(|place| place > *most)
        })
    };
    found.retain(|at, _| !beyond(at));
    found
}

fn explain(error: &ValidationError<'_>, found: &mut BTreeMap<String, (String, String)>) {
    let at = error.instance_path().as_str().to_owned();
    let given = format!("«{}»", plain(error.instance()));
    let (at, given, why) = match error.kind() {
        Rule::AnyOf { context } => {
            // Something or nothing: what is wrong with the something.
            context.iter().flatten().filter(|inner| !is_null_only(inner)).for_each(|inner| explain(inner, found));
            return;
        }
        Rule::AdditionalProperties { unexpected } => {
            for name in unexpected {
                let place = format!("{at}/{}", name.replace('~', "~0").replace('/', "~1"));
                found.insert(place, (format!("«{name}»"), "there is no such field here".to_owned()));
            }
            return;
        }
        Rule::Required { property } => {
            let name = property.as_str().unwrap_or_default();
            (format!("{at}/{name}"), "nothing".to_owned(), "this is needed and was left out".to_owned())
        }
        Rule::Enum { options } => {
            let words: Vec<_> =
                options.as_array().into_iter().flatten().map(|word| format!("«{}»", plain(word))).collect();
            (at, given, format!("must be one of {}", words.join(", ")))
        }
        Rule::Type { kind } => {
            let TypeKind::Single(kind) = kind else {
                // A list, or nothing.
                return explain_or_nothing(&at, &given, kind, found);
            };
            (at, given, format!("must be {}", due(&kind.to_string())))
        }
        Rule::Minimum { .. } | Rule::Maximum { .. } => (at, given, "must be from".to_owned()),
        Rule::MinItems { limit } => (at, given, format!("needs at least {limit}")),
        Rule::MaxItems { limit } => (at, given, format!("can hold at most {limit}")),
        Rule::MinLength { limit } => (at, given, format!("must have at least {limit} letters")),
        Rule::MaxLength { limit } => (at, given, format!("must have at most {limit} letters")),
        Rule::Not { .. } => (at, given, "must be a number or text or a group of fields".to_owned()),
        other => panic!("no words for {other:?} at {at}"),
    };
    // What is of another kind is no word of a choice, and out of every range as well: the words are told first, then the kind.
    let strong = matches!(error.kind(), Rule::Enum { .. } | Rule::Type { .. });
    let has_words = found.get(&at).is_some_and(|(_, told)| told.starts_with("must be one of"));
    if !has_words && (strong || !found.contains_key(&at)) {
        found.insert(at, (given, why));
    }
}

fn explain_or_nothing(at: &str, given: &str, kinds: &TypeKind, found: &mut BTreeMap<String, (String, String)>) {
    let TypeKind::Multiple(kinds) = kinds else { return };
    let kinds: Vec<String> = kinds.iter().map(|kind| kind.to_string()).filter(|kind| kind != "null").collect();
    let due: Vec<_> = kinds.iter().map(|kind| due(kind)).collect();
    found.insert(at.to_owned(), (given.to_owned(), format!("must be {}", due.join(" or "))));
}

fn is_null_only(error: &ValidationError<'_>) -> bool {
    matches!(error.kind(), Rule::Type { kind: TypeKind::Single(kind) } if kind.to_string() == "null")
}

fn due(kind: &str) -> &'static str {
    match kind {
        "integer" => "a whole number",
        "number" => "a number",
        "string" => "text",
        "boolean" => "yes or no (true or false)",
        "array" => "a list",
        "object" => "a group of fields",
        _ => "left out",
    }
}

fn plain(value: &Value) -> String {
    let text = match value {
        Value::String(text) => text.clone(),
        Value::Object(_) => "several fields".to_owned(),
        Value::Array(items) => format!("a list of {}", items.len()),
        other => other.to_string(),
    };
    if text.chars().count() > 60 { text.chars().take(57).chain("…".chars()).collect() } else { text }
}

/// The judge's faults in the same form, without those that only a quantity's own rules find.
fn told_by_us(shape: &Shape, input: &Value, example: &Value) -> BTreeMap<String, (String, String)> {
    let faults = shape.judge(input, Units::Metric, example).err().unwrap_or_default();
    let kept = faults.into_iter().filter_map(|fault| {
        let why = fault.why.in_units(Units::Metric);
        let quantity = shape
            .at(&fault.pointer)
            .is_some_and(|place| matches!(place.kind, Kind::Length(_) | Kind::Physical(..) | Kind::Money));
        let of_a_quantity = quantity && !why.starts_with("this is needed") && !why.ends_with("group of fields");
        // Which fields are known and which bounds there are is compared by what they lead to.
        let why = ["there is no such field here", "must be from"]
            .into_iter()
            .find(|start| why.starts_with(start))
            .map_or(why.clone(), str::to_owned);
        (!of_a_quantity).then(|| (fault.pointer, (fault.said.in_units(Units::Metric), why)))
    });
    kept.collect()
}

#[test]
fn the_judge_and_a_validator_of_json_schema_tell_the_same_faults() {
    let (mut compared, mut refused) = (0, 0);
    for (n, entry) in CATALOGUE.iter().enumerate() {
        let id = entry.card().id;
        let schema = Schemas { root: "#/$defs/" }.input(entry.input());
        let validator = jsonschema::options().build(&without_quantities(&schema)).expect("a schema");
        let example = &entry.example(Units::Metric).input;
        assert!(validator.is_valid(example), "{id}: its own example does not fit its schema");
        for case in 0..CASES {
            let mut chance = Chance::from(SEED ^ ((n as u64) << 32) ^ case);
            let mut input = example.clone();
            for _ in 0..=chance.below(3) {
                spoil(&mut input, &mut chance);
            }
            let (ours, theirs) = (told_by_us(entry.input(), &input, example), told_outside(&validator, &input));
            let shown: String = input.to_string().chars().take(1_000).collect();
            assert_eq!(ours, theirs, "{id}, case {case}: {shown}");
            (compared, refused) = (compared + 1, refused + u32::from(!ours.is_empty()));
        }
    }
    assert!(refused * 4 > compared, "only {refused} of {compared} inputs were refused");
}

/// Inputs that lie on a bound and one beyond it, for every list, count and text that a calculator's example fills.
fn at_the_bounds(shape: &Shape, example: &Value, at: &str, found: &mut Vec<(String, Value)>) {
    let Some(here) = example.pointer(at).filter(|value| !value.is_null()) else { return };
    let mut put = |value: Value| found.push((at.to_owned(), value));
    match shape.kind {
        Kind::Count { least, most } => {
            let beside = |bound: i64| [bound - 1, bound, bound + 1];
            least.into_iter().chain(most).flat_map(beside).for_each(|count| put(json!(count)));
        }
        Kind::Text { least, most } => {
            let sizes =
                [least.saturating_sub(1), least].into_iter().chain(most.into_iter().flat_map(|most| [most, most + 1]));
            sizes.for_each(|size| put(json!("x".repeat(size))));
        }
        Kind::List { item, least, most } => {
            if let Some(first) = here.get(0) {
                let sizes = [least.saturating_sub(1), least]
                    .into_iter()
                    .chain(most.into_iter().flat_map(|most| [most, most + 1]));
                sizes.for_each(|size| put(std::iter::repeat_n(first.clone(), size).collect()));
            }
            at_the_bounds(item, example, &format!("{at}/0"), found);
        }
        Kind::Group(fields) => {
            fields
                .iter()
                .for_each(|field| at_the_bounds(&field.shape, example, &format!("{at}/{}", field.name), found));
        }
        _ => {}
    }
}

#[test]
fn a_bound_is_kept_to_the_last() {
    let mut compared = 0;
    for entry in CATALOGUE.iter() {
        let schema = Schemas { root: "#/$defs/" }.input(entry.input());
        let validator = jsonschema::options().build(&without_quantities(&schema)).expect("a schema");
        let example = &entry.example(Units::Metric).input;
        let mut edges = Vec::new();
        at_the_bounds(entry.input(), example, "", &mut edges);
        for (at, value) in edges {
            let mut input = example.clone();
            *input.pointer_mut(&at).expect("it is there") = value;
            let (ours, theirs) = (told_by_us(entry.input(), &input, example), told_outside(&validator, &input));
            assert_eq!(ours, theirs, "{} at {at}", entry.card().id);
            compared += 1;
        }
    }
    assert!(compared > 300, "only {compared} places have a bound");
}
