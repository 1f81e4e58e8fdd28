//! Every line of working comes out again from the figures that are printed in it, by hand, as a reader would work it.
//!
//! Checked against arithmetic: the printed figures are read back and put into the printed formula; the outcome may differ from the
//! printed result by half of its last digit and no more.

use calculators::catalogue::{CATALOGUE, Figure, Step, formula};
use calculators::quantity::{Length, Units, read_physical};
use serde_json::Value;

/// A printed figure as the number that formulas work with, and half of its last digit in the same measure.
fn read_back(figure: &Figure, text: &str, units: Units) -> Option<(f64, f64)> {
    let digits = text.split([' ', '%', '°']).next().unwrap_or_default();
    let last = digits.split_once('.').map_or(1.0, |(_, after)| 0.1_f64.powi(i32::try_from(after.len()).unwrap_or(9)));
    match figure {
        Figure::Count(count) => Some((*count as f64, 1e-9)),
        Figure::Length(_) | Figure::Reading(_) | Figure::Run(_) => {
            let length = Length::read(text, units).ok()?;
            let half = match (units, figure) {
                (_, Figure::Run(_)) if !text.ends_with("mm") => 12.7,
                (Units::Imperial, _) if text.contains('.') => 25.4 * last / 2.0,
                (Units::Imperial, _) => 25.4 / 128.0,
                (Units::Metric, _) => last.max(0.1) / 2.0,
            };
            Some((length.in_mm(), half))
        }
        Figure::Money(_) => Some((text.parse().ok()?, 0.005)),
        Figure::Physical(facts, _) => {
            let at = |text: &str| read_physical(facts, &Value::from(text), units).ok();
            let unit = text.get(digits.len()..).unwrap_or_default();
            let step = at(&format!("{last}{unit}"))? - at(&format!("0{unit}"))?;
            Some((at(text)?, step.abs() / 2.0))
        }
        _ => None,
    }
}

fn same_measure(one: &Figure, other: &Figure) -> bool {
    match (one, other) {
        (Figure::Physical(one, _), Figure::Physical(other, _)) => {
            let temperatures = [one, other].iter().all(|facts| facts.name.starts_with("temperature"));
            one.name == other.name || temperatures
        }
        _ => one.length().is_some() && other.length().is_some(),
    }
}

/// Works a line out by hand; nothing where it has no formula or no number comes of it.
fn check(id: &str, step: &Step, units: Units) -> Option<()> {
    let tree = formula::parse(step.formula.as_deref()?).unwrap_or_else(|fault| panic!("{id}: {fault}"));
    let result = &step.result.as_ref()?.value;
    result.number()?;
    let number = |symbol: &str| {
        let value = &step.given.iter().find(|named| named.symbol == symbol)?.value;
        read_back(value, &value.in_full(units), units).map(|(number, _)| number)
    };
    let worked = tree.value(&number).unwrap_or_else(|missing| panic!("{id}: nothing printed for {missing}: {step:#?}"));
    let exact = match result {
        Figure::Reading(_) => vec![result.in_full(units)],
        _ => vec![result.text(units), result.in_full(units)],
    };
    for text in exact {
        let (printed, half) = read_back(result, &text, units).unwrap_or_else(|| panic!("{id}: «{text}» is no figure"));
        // Seven figures of what goes in leave as much open in a difference of two of them.
        let alike = step.given.iter().filter(|named| same_measure(&named.value, result));
        let largest = alike
            .filter_map(|named| named.value.number())
            .fold(printed.abs().max(worked.abs()), |most, one| most.max(one.abs()));
        let slack = half * 1.000_001 + 2e-6 * largest;
        assert!((worked - printed).abs() <= slack, "{id}: {:?} comes to {worked}, printed is {text}", step.formula);
    }
    Some(())
}

#[test]
fn working_comes_out_again_from_what_is_printed() {
    let mut lines = 0;
    for entry in CATALOGUE.iter() {
        for units in [Units::Imperial, Units::Metric] {
            let answer = entry.work(&entry.example(units).input, units).expect("the example is answered");
            lines += answer.working.iter().filter_map(|step| check(entry.card().id, step, units)).count();
        }
    }
    assert!(300 < lines, "only {lines} lines were worked");
}
