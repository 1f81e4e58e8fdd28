//! More of this is more, or less, of that: the directions in which arithmetic and physics move each calculator's answer.
//!
//! The table stands in `data/monotone.json`, each row with its source; calculators for which no direction holds stand there with the reason.

use std::cell::Cell;
use std::collections::BTreeMap;

use calculators::catalogue::{CATALOGUE, entry};
use calculators::quantity::Units;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use serde::Deserialize;
use serde_json::Value;
use tests::inputs::{Quantity, number, put, quantities, with};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    rows: Vec<Row>,
    left_out: BTreeMap<String, String>,
}

/// One direction.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    calculator: String,
    /// Pointer into the input.
    input: String,
    /// Pointer into the result.
    result: String,
    direction: Direction,
    source: String,
    /// How far the input is moved, as factors of the example's value.
    #[serde(default = "usual")]
    range: (f64, f64),
    /// How far it is moved in millimetres, metric units or ones.
    absolute: Option<(f64, f64)>,
    /// Whether the other quantities stay as in the example.
    #[serde(default)]
    alone: bool,
    /// How many pairs are tried.
    #[serde(default = "many")]
    cases: u32,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Direction {
    Rises,
    Falls,
}

fn usual() -> (f64, f64) {
    (0.4, 2.5)
}

fn many() -> u32 {
    64
}

fn table() -> Table {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("data/monotone.json");
    let text = std::fs::read_to_string(&path).unwrap_or_else(|why| panic!("{}: {why}", path.display()));
    serde_json::from_str(&text).unwrap_or_else(|why| panic!("{}: {why}", path.display()))
}

#[test]
fn every_calculator_has_a_direction_or_a_reason() {
    let table = table();
    for entry in CATALOGUE.iter() {
        let id = entry.card().id;
        let has = table.rows.iter().any(|row| row.calculator == id);
        let left_out = table.left_out.get(id).is_some_and(|reason| reason.len() > 20);
        assert!(has != left_out, "{id}: needs a direction or a reason, and not both");
    }
    for id in table.rows.iter().map(|row| &row.calculator).chain(table.left_out.keys()) {
        assert!(entry(id).is_some(), "{id} is no calculator");
    }
    assert!(table.rows.iter().all(|row| !row.source.is_empty()));
}

#[test]
fn answers_move_in_the_direction_that_arithmetic_and_physics_say() {
    let mut wrong = Vec::new();
    for row in table().rows {
        if let Err(why) = moved(&row) {
            wrong.push(format!("{} {} -> {}: {why}", row.calculator, row.input, row.result));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Tries a row over many pairs of values, the other quantities drifting too.
fn moved(row: &Row) -> Result<(), String> {
    let entry = entry(&row.calculator).ok_or("no such calculator")?;
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut runner =
        TestRunner::new_with_rng(Config { cases: row.cases, failure_persistence: None, ..Config::default() }, rng);
    let drift = prop::collection::vec(prop_oneof![Just(1.0), 0.9_f64..1.1], 24);
    let (answered, different) = (Cell::new(0_u32), Cell::new(0_u32));
    let outcome = runner.run(&(0.0_f64..1.0, 0.0_f64..1.0, drift, any::<bool>()), |(one, other, drift, metric)| {
        let units = if metric { Units::Metric } else { Units::Imperial };
        let mut example = entry.example(units).input.clone();
        let found = quantities(entry, &example, units);
        let drifting: Vec<(String, Quantity)> = found
            .iter()
            .zip(drift.iter().cycle())
            .map(|((pointer, quantity), drift)| {
                let moved = match quantity {
                    Quantity::Count(_) => quantity.clone(),
                    _ if row.alone => quantity.clone(),
                    _ => quantity.sized(quantity.size() * drift),
                };
                (pointer.clone(), moved)
            })
            .collect();
        // A field that the example leaves empty is put in by its size alone.
        let here = found.iter().find(|(pointer, _)| *pointer == row.input).map(|(_, quantity)| quantity.clone());
        let (from, to) = match (row.absolute, &here) {
            (Some((from, to)), Some(Quantity::Length(_))) => (from * 1e6, to * 1e6),
            (Some(absolute), _) => absolute,
            (None, Some(here)) => (here.size() * row.range.0, here.size() * row.range.1),
            (None, None) => return Err(TestCaseError::fail("the example has no quantity there")),
        };
        example = with(&example, &drifting, Units::Metric);
        let mut answer = |share: f64| {
            let size = from + (to - from) * share;
            let value = here.as_ref().map_or(Value::from(size), |here| here.sized(size).written(Units::Metric));
            put(&mut example, &row.input, value);
            let answer = entry.work(&example, Units::Metric).ok()?;
            let node = answer.result.at(&row.result);
            Some(node.map(|node| number(node).ok_or_else(|| format!("no number: {node:?}"))))
        };
        let (Some(low), Some(high)) = (answer(one.min(other)), answer(one.max(other))) else { return Ok(()) };
        let (Some(Ok(low)), Some(Ok(high))) = (low.clone(), high.clone()) else {
            return Err(TestCaseError::fail(format!("{low:?}, {high:?}")));
        };
        answered.set(answered.get() + 1);
        let apart = (low - high).abs() > 1e-12 * low.abs().max(high.abs());
        different.set(different.get() + u32::from(apart));
        let slack = 1e-9 * low.abs().max(high.abs());
        let holds = match row.direction {
            Direction::Rises => low <= high + slack,
            Direction::Falls => high <= low + slack,
        };
        prop_assert!(holds, "{low} then {high} does not {:?}", row.direction);
        Ok(())
    });
    outcome.map_err(|why| why.to_string())?;
    if answered.get() * 4 < row.cases {
        return Err(format!("only {} of {} pairs were answered", answered.get(), row.cases));
    }
    if different.get() == 0 { Err("it never moves".to_owned()) } else { Ok(()) }
}
