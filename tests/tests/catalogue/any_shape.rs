//! Inputs of any shape: an answer or faults with pointers, never a panic, never a part of an answer.
//!
//! Examples are spoiled at random places by a fixed sequence, so a failure comes again; the number of the case is told with it.

use std::panic::{AssertUnwindSafe, catch_unwind};

use calculators::catalogue::{CATALOGUE, Entry, Fault};
use calculators::quantity::Units;
use serde_json::{Map, Value, json};

/// Begins the sequence; printed with a failure.
const SEED: u64 = 0x5EED_0F70_AB0A_4D01;
/// Spoiled inputs for each calculator; the wall's plan is asked less often, for it takes longer.
const CASES: u64 = 300;
const WALL_CASES: u64 = 120;

/// A sequence of numbers without pattern: SplitMix64 (Steele, Lea, Flood 2014).
pub(crate) struct Chance(u64);

impl From<u64> for Chance {
    fn from(seed: u64) -> Self {
        Self(seed)
    }
}

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    pub(crate) fn below(&mut self, count: usize) -> usize {
        (self.next() % count.max(1) as u64) as usize
    }
}

fn places(value: &Value, at: &str, found: &mut Vec<String>) {
    found.push(at.to_owned());
    match value {
        Value::Object(fields) => fields.iter().for_each(|(name, inner)| {
            places(inner, &format!("{at}/{}", name.replace('~', "~0").replace('/', "~1")), found);
        }),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(n, inner)| places(inner, &format!("{at}/{n}"), found));
        }
        _ => {}
    }
}

/// What nobody should write into a field.
fn hostile(chance: &mut Chance) -> Value {
    let nested = |depth: usize, list: bool| {
        (0..depth).fold(json!("1"), |inner, _| if list { json!([inner]) } else { json!({ "value": inner }) })
    };
    let texts = [
        "",
        " ",
        "NaN",
        "inf",
        "-Infinity",
        "1e999",
        "1e308",
        "-1e308",
        "1e-308",
        "0",
        "-0",
        "-5 mm",
        "5 mm",
        "1/0",
        "1/3 in",
        "99999999999999999999999",
        "12' 300\"",
        "''\"\"",
        "٣ mm",
        "９９ mm",
        "1,234,5",
        "½ in",
        "−3 in",
        "\u{0}",
        "\u{202e}3 mm",
        "🪚🪚",
        "e\u{301}\u{301}\u{301}",
        "../../etc",
        "{}",
        "<b>3</b>",
        "%s%n",
        "3 furlongs",
        "NULL",
        "25:61",
        "00:00",
        "1 mm 1 mm",
        "0.0000001 in",
        "9223372036854775807",
        "-9223372036854775808 nm",
    ];
    match chance.below(18) {
        0 => Value::Null,
        1 => json!(chance.below(2) == 0),
        2 => json!(i64::MAX),
        3 => json!(i64::MIN),
        4 => json!(u64::MAX),
        5 => json!(f64::MAX),
        6 => json!(f64::MIN_POSITIVE),
        7 => json!(-0.0),
        8 => json!([]),
        9 => json!({}),
        10 => nested(1 + chance.below(100), chance.below(2) == 0),
        11 => json!({ "nm": [i64::MAX, chance.below(3)] }),
        12 => json!({ "value": null, "kind": "hours" }),
        13 => json!({ "minor": i64::MAX }),
        14 => json!("7".repeat(1 + chance.below(5_000))),
        15 => json!((chance.next() as i64) >> chance.below(63)),
        16 => json!(f64::from_bits(chance.next())),
        _ => json!(texts[chance.below(texts.len())]),
    }
}

/// A number or a text of a number made larger, smaller or negative.
fn bent(value: &Value, chance: &mut Chance) -> Value {
    let factor = [-1.0, 0.0, 0.1, 0.5, 0.999, 1.001, 2.0, 10.0, 1e3, 1e6, 1e12][chance.below(11)];
    match value {
        Value::Number(number) => json!(number.as_f64().unwrap_or_default() * factor),
        Value::String(text) => {
            let digits = text.find(|sign: char| !(sign.is_ascii_digit() || sign == '.')).unwrap_or(text.len());
            match text[..digits].parse::<f64>() {
                Ok(number) => json!(format!("{}{}", number * factor, &text[digits..])),
                Err(_) => json!(format!("{text}{text}")),
            }
        }
        other => json!([other]),
    }
}

/// Spoils one place of an input.
pub(crate) fn spoil(input: &mut Value, chance: &mut Chance) {
    let mut found = Vec::new();
    places(input, "", &mut found);
    let at = found.swap_remove(chance.below(found.len()));
    let other =
        found.get(chance.below(found.len())).and_then(|other| input.pointer(other)).cloned().unwrap_or(Value::Null);
    let Some(place) = input.pointer_mut(&at) else { return };
    match (chance.below(7), place) {
        (0, Value::Object(fields)) if !fields.is_empty() => {
            let name = fields.keys().nth(chance.below(fields.len())).cloned().unwrap_or_default();
            fields.remove(&name);
        }
        (1, Value::Object(fields)) => {
            let names = ["", "unknown", "höhe", "a/b~c", "__proto__", "value", "nm"];
            fields.insert(names[chance.below(names.len())].to_owned(), hostile(chance));
        }
        (2, Value::Array(items)) if !items.is_empty() => {
            let item = items[chance.below(items.len())].clone();
            let times = [1, 2, 50, 700][chance.below(4)];
            items.extend(std::iter::repeat_n(item, times));
        }
        (3, Value::Array(items)) => items.reverse(),
        (4, place) => *place = other,
        (5, place) => *place = bent(place, chance),
        (_, place) => *place = hostile(chance),
    }
}

/// A figure without its value: what is left of a number that is none.
fn hollow(value: &Value, at: &str) -> Option<String> {
    match value {
        Value::Object(fields) => {
            let is_figure = fields.contains_key("kind") && fields.get("value").is_some_and(Value::is_null);
            if is_figure || fields.get("text").is_some_and(Value::is_null) {
                return Some(at.to_owned());
            }
            fields.iter().find_map(|(name, inner)| hollow(inner, &format!("{at}/{name}")))
        }
        Value::Array(items) => items.iter().enumerate().find_map(|(n, inner)| hollow(inner, &format!("{at}/{n}"))),
        Value::String(text) if text.contains("NaN") || text.contains("inf ") || text == "inf" => {
            Some(format!("{at}: {text}"))
        }
        _ => None,
    }
}

/// What is wrong with what a calculator said to an input.
fn complaint(entry: &Entry, input: &Value, units: Units) -> Option<String> {
    match entry.answer(input, units) {
        Ok(answer) => {
            let promised = entry.output().fields().iter().map(|field| field.name);
            let missing = promised.into_iter().find(|name| answer["result"].get(*name).is_none());
            let worked = answer["working"].as_array().is_some_and(|steps| !steps.is_empty());
            missing
                .map(|name| format!("the answer has no {name}"))
                .or_else(|| (!worked).then(|| "the answer has no working".to_owned()))
                .or_else(|| hollow(&answer["result"], "/result").map(|at| format!("no value at {at}")))
        }
        Err(faults) if faults.is_empty() => Some("neither an answer nor a fault".to_owned()),
        Err(faults) => faults.iter().find_map(|fault| ill_told(fault, input)),
    }
}

/// A fault that does not say where, or not why.
fn ill_told(fault: &Fault, input: &Value) -> Option<String> {
    let group = fault.pointer.rsplit_once('/').map_or("", |(group, _)| group);
    let nowhere = !fault.pointer.is_empty() && !fault.pointer.starts_with('/');
    // A field that was left out has no place, but the nearest group around it has; empty groups may be left out altogether.
    let mut around = group;
    while input.pointer(around).is_none() {
        around = around.rsplit_once('/').map_or("", |(outer, _)| outer);
    }
    let lost = around.is_empty() && group.matches('/').count() > 1 && !input.is_object();
    let mute = fault.why.in_units(Units::Metric).trim().is_empty();
    (nowhere || lost || mute).then(|| format!("ill told: {fault:?}"))
}

#[test]
fn any_input_has_an_answer_or_faults_and_nothing_in_between() {
    let mut told = [0_u32; 2];
    for (n, entry) in CATALOGUE.iter().enumerate() {
        let id = entry.card().id;
        for case in 0..if id == "wall-plan" { WALL_CASES } else { CASES } {
            let mut chance = Chance::from(SEED ^ ((n as u64) << 32) ^ case);
            let units = [Units::Imperial, Units::Metric][chance.below(2)];
            let mut input = entry.example(units).input.clone();
            for _ in 0..=chance.below(3) {
                spoil(&mut input, &mut chance);
            }
            let outcome = catch_unwind(AssertUnwindSafe(|| complaint(entry, &input, units)));
            let shown = || input.to_string().chars().take(2_000).collect::<String>();
            match outcome {
                Ok(None) => told[usize::from(entry.work(&input, units).is_ok())] += 1,
                Ok(Some(why)) => panic!("{id}, seed {SEED:#x}, case {case}: {why} for {}", shown()),
                Err(_) => panic!("{id}, seed {SEED:#x}, case {case}: it panicked for {}", shown()),
            }
        }
    }
    // Both must really occur: spoiled inputs that nobody refuses would prove as little as ones that all are.
    assert!(told[0] > 2_000 && told[1] > 1_000, "{} refused, {} answered", told[0], told[1]);
}

#[test]
fn an_answer_with_a_hole_in_it_is_found() {
    let hole: Map<String, Value> =
        [("kind".to_owned(), json!("hours")), ("value".to_owned(), Value::Null)].into_iter().collect();
    assert_eq!(hollow(&json!({ "list": [hole] }), ""), Some("/list/0".to_owned()));
    assert_eq!(hollow(&json!({ "dew": "NaN °C" }), ""), Some("/dew: NaN °C".to_owned()));
}
