//! Fresh numbers from a seed.

use fastrand::Rng;
use serde_json::{Value, json};

use super::exercise::{Draw, Exercise, Range};
use crate::catalogue::Entry;
use crate::quantity::Units;

/// Drawings that are tried before the worked example is asked as it is.
const TRIES: u32 = 24;

/// The input an exercise asks with for a seed: the worked example with some fields drawn anew.
///
/// The same seed gives the same input in one unit system. Numbers that the calculator refuses are drawn again.
pub fn drawn(exercise: &Exercise, entry: &Entry, seed: u64, units: Units) -> Value {
    let mut random = Rng::with_seed(seed);
    let example = &entry.example(units).input;
    for _ in 0..TRIES {
        let mut input = example.clone();
        if let Some(fields) = input.as_object_mut() {
            fields.retain(|name, _| !exercise.empty.contains(&name.as_str()));
        }
        for draw in exercise.draws {
            put(&mut input, draw, &mut random, units);
        }
        if entry.work(&input, units).is_ok() {
            return input;
        }
    }
    example.clone()
}

fn put(input: &mut Value, draw: &Draw, random: &mut Rng, units: Units) {
    let range = match units {
        Units::Imperial => draw.imperial,
        Units::Metric => draw.metric,
    };
    let value = written(random.i64(range.from..=range.to), range);
    match (input.pointer_mut(draw.field), draw.field.strip_prefix('/')) {
        (Some(place), _) => *place = value,
        // A field that the example leaves empty.
        (None, Some(name)) => {
            if let Some(fields) = input.as_object_mut() {
                fields.insert(name.to_owned(), value);
            }
        }
        _ => {}
    }
}

fn written(parts: i64, range: Range) -> Value {
    let number = parts as f64 / range.parts.max(1) as f64;
    match range.unit {
        "" => json!(parts),
        "¤" => json!(format!("{number:.2}")),
        unit => json!(format!("{number} {unit}")),
    }
}
