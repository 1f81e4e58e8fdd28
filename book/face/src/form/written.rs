//! Values and ranges of an input as text: in the form the book prints, where that says exactly the same.

use calculators::catalogue::{Kind, Node, Shape};
use calculators::quantity::{KindFacts, Length, Units, print, read_physical};
use serde_json::Value;

/// A value of the input as a person would write it.
pub(crate) fn text_of(value: &Value, shape: &Shape, units: Units) -> String {
    match (value, shape.kind) {
        (Value::String(text), _) => standard(text, shape, units),
        (Value::Number(_), Kind::Length(_)) => match Length::from_json(value, Some(units)) {
            Ok(length) => print::plain(length.exact(), units),
            Err(_) => value.to_string(),
        },
        // In full in its metric unit first, since the printed form may have fewer figures than the value.
        (Value::Number(number), Kind::Physical(facts, _)) => {
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

/// What stands in a field that nobody has filled.
pub(super) fn text_of_default(default: &Node, units: Units) -> String {
    match default {
        Node::Flag(flag) => flag.to_string(),
        Node::Word(word) => (*word).to_owned(),
        Node::Leaf(figure) => figure.text(units),
        _ => String::new(),
    }
}

/// The range of a physical quantity, rounded to its inside to three figures that count.
pub(super) fn physical_line(facts: &KindFacts, [least, most]: [f64; 2], units: Units) -> String {
    let unit = facts.unit(units);
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
fn standard(text: &str, shape: &Shape, units: Units) -> String {
    match shape.kind {
        Kind::Length(_) => {
            let Ok(length) = Length::read(text, units) else { return text.to_owned() };
            let printed = print::plain(length.exact(), units);
            if Length::read(&printed, units) == Ok(length) { printed } else { text.to_owned() }
        }
        Kind::Physical(facts, _) => {
            let read = |text: &str| read_physical(facts, &Value::from(text), units).ok();
            let Some(metric) = read(text) else { return text.to_owned() };
            let printed = facts.text(metric, units);
            let same = read(&printed).is_some_and(|other| other.total_cmp(&metric).is_eq());
            if same { printed } else { text.to_owned() }
        }
        _ => text.to_owned(),
    }
}
