//! A calculation as a page of its own.

use calculators::catalogue::Entry;
use calculators::quantity::Units;
use face::calculation::{Outcome, Setting};
use serde::Serialize;
use serde_json::Value;

use crate::handbook::Handbook;
use crate::page::Page;
use crate::render::{Frame, Turned};

#[derive(Serialize)]
struct PageView<'a> {
    frame: &'a Frame,
    calculation: String,
    place: &'a str,
    place_name: String,
}

impl Handbook {
    /// A calculation as a page of its own, `work/{id}`: what a form posts to, and what it comes back as without scripts.
    pub fn calculator_page(&self, entry: &Entry, values: &Value, outcome: Outcome<'_>, units: Units) -> Page {
        let card = entry.card();
        let path = format!("work/{}", card.id);
        let mut frame = self.frame(card.title, Some(card.step), &format!("/{path}"), units);
        frame.root = "../";
        frame.scripts.push("work.js");
        frame.turned =
            Some(Turned { form: format!("{}-form", card.id), address: path.clone(), name: "do", verb: "turn " });
        let setting = Setting { root: frame.root, level: 1, focus: true, told: &[] };
        let step = self.marks.iter().find(|mark| mark.number == card.step);
        let view = PageView {
            calculation: self.calculation(entry, values, outcome, units, setting),
            place: self.place_of(card.id).unwrap_or("index.html"),
            place_name: step
                .map_or_else(|| "the handbook".to_owned(), |mark| format!("step {}, {}", mark.number, mark.name)),
            frame: &frame,
        };
        Page::new(path, &self.theme.fill("work.html", &view))
    }
}
