//! A calculator's answer in one line: the figures of its headline for the practice room, and the way to the calculation.

use calculators::catalogue::entry;
use calculators::quantity::Units;
use serde::Serialize;
use serde_json::Value;

use crate::handbook::Handbook;
use crate::panel::{self, FigureView};

#[derive(Serialize)]
struct LookView<'a> {
    place: &'a str,
    number: &'a str,
    title: &'a str,
    figures: Vec<FigureView>,
}

impl Handbook {
    /// One line with the worked example's answer, or that of the chapter's own values laid over it.
    pub(crate) fn look(&self, id: &str, values: &Value, units: Units) -> String {
        let Some(entry) = entry(id) else { return String::new() };
        let mut input = entry.example(units).input.clone();
        let own = values.get(units.word()).unwrap_or(values);
        if let (Some(input), Some(own)) = (input.as_object_mut(), own.as_object()) {
            input.extend(own.iter().map(|(name, value)| (name.clone(), value.clone())));
        }
        let answer = entry.answer(&input, units).unwrap_or_default();
        let view = LookView {
            place: self.place_of(id).unwrap_or("index.html"),
            number: self.numbers.get(id).map_or("", String::as_str),
            title: entry.card().title,
            figures: panel::headline(entry, &answer),
        };
        self.theme.fill("look.html", &view)
    }
}
