//! A calculator's answer in one line: a few of its figures for the practice room, and the way to the calculation.

use calculators::catalogue::entry;
use calculators::quantity::Units;
use serde::Serialize;
use serde_json::Value;

use crate::Face;
use crate::panel::{self, FigureView};

#[derive(Serialize)]
struct LookView<'a> {
    place: &'a str,
    number: &'a str,
    title: &'a str,
    figures: Vec<FigureView>,
    /// Signal panels of the calculator's card.
    cautions: Vec<String>,
}

/// The figures of a look: those at the places named, or the headline.
///
/// # Errors
/// A calculator that is not there, values it refuses, a place that is not in its answer; in words.
pub(crate) fn figures(id: &str, values: &Value, show: &[String], units: Units) -> Result<Vec<FigureView>, String> {
    let entry = entry(id).ok_or_else(|| format!("there is no calculator {id}"))?;
    let mut input = entry.example(units).input.clone();
    let own = values.get(units.word()).unwrap_or(values);
    if let (Some(input), Some(own)) = (input.as_object_mut(), own.as_object()) {
        input.extend(own.iter().map(|(name, value)| (name.clone(), value.clone())));
    }
    let answer = entry.work(&input, units).map_err(|faults| {
        let first = faults.first().map(|fault| (fault.pointer.trim_start_matches('/'), fault.why.in_units(units)));
        let (place, why) = first.unwrap_or_default();
        format!("the calculator {id} refuses {place}: {why}")
    })?;
    if let Some(missing) = show.iter().find(|place| answer.result.at(place).is_none()) {
        return Err(format!("the answer of {id} has nothing at {missing}"));
    }
    let headline = entry.card().headline.iter().copied();
    Ok(if show.is_empty() {
        panel::figures_at(entry, &answer.result, headline, units)
    } else {
        panel::figures_at(entry, &answer.result, show.iter().map(String::as_str), units)
    })
}

/// Why such a look cannot be printed; nothing where it can.
pub fn refusal(id: &str, values: &Value, show: &[String], units: Units) -> Option<String> {
    figures(id, values, show, units).err()
}

impl Face {
    /// One line with figures of a calculator's answer for the practice room, or for the chapter's own values.
    pub fn look(&self, id: &str, values: &Value, show: &[String], units: Units) -> String {
        let view = LookView {
            place: self.place_of(id).unwrap_or("index.html"),
            number: self.numbers.get(id).map_or("", String::as_str),
            title: entry(id).map_or("", |entry| entry.card().title),
            figures: figures(id, values, show, units).unwrap_or_default(),
            cautions: entry(id).map_or_else(Vec::new, |entry| self.brief_cautions(entry.card().cautions)),
        };
        self.theme.fill("look.html", &view)
    }
}
