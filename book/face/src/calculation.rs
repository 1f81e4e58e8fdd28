//! A calculation as it stands on a page: given, answer, how it was got, worked example, sources.

use calculators::catalogue::{Answer, Entry, Fault, Kind, Node, in_words};
use calculators::practice::exercise;
use calculators::quantity::Units;
use serde::Serialize;
use serde_json::Value;

use crate::Face;
use crate::form::{Form, Place};
use crate::{figure, form, panel};

/// What came of a form.
#[derive(Clone, Copy, Debug)]
pub enum Outcome<'a> {
    /// Nothing yet: it has to be filled in first.
    Waiting,
    /// An answer.
    Answer(&'a Answer<Node>),
    /// What is wrong with it.
    Faults(&'a [Fault]),
}

#[derive(Serialize)]
struct CalculationView<'a> {
    id: &'a str,
    level: u8,
    number: String,
    title: &'a str,
    question: &'a str,
    root: &'a str,
    units: &'static str,
    short: bool,
    cautions: Vec<String>,
    faults: &'a [form::Told],
    heading: String,
    fields: String,
    /// The inside of the answer panel, or nothing.
    panel: String,
    say: String,
    waiting: bool,
    example: ExampleView<'a>,
    sources: Vec<String>,
    focus: bool,
    /// Whether there is an exercise to it.
    practised: bool,
}

#[derive(Serialize)]
struct ExampleView<'a> {
    given: Vec<Pair>,
    expects: Vec<Pair>,
    checked_against: &'a str,
    place: String,
}

#[derive(Serialize)]
struct Pair {
    label: String,
    html: String,
}

/// Where a calculation is printed, which decides its heading and its links.
#[derive(Clone, Copy, Debug)]
pub struct Setting<'a> {
    /// What its links begin with.
    pub root: &'a str,
    /// The level of its heading.
    pub level: u8,
    /// Whether it is what the page is for.
    pub focus: bool,
    /// Cautions that already stand above it on the page.
    pub told: &'a [&'a str],
}

impl Face {
    /// The fields of a calculator's form with values in them and faults beside them.
    pub fn form_html(&self, entry: &Entry, values: &Value, faults: &[Fault], units: Units) -> String {
        Form::new(&self.theme, entry, values, faults, units).html()
    }

    /// The inside of a calculator's answer panel.
    pub fn panel_html(&self, entry: &Entry, answer: &Answer<Node>, units: Units) -> String {
        panel::html(&self.theme, entry, answer, units)
    }

    /// An answer that stands alone, away from its page: the cautions of its card, then the inside of the panel.
    pub fn answer_html(&self, entry: &Entry, answer: &Answer<Node>, units: Units) -> String {
        let cautions: String = entry.card().cautions.iter().map(|key| self.caution(key)).collect();
        cautions + &self.panel_html(entry, answer, units)
    }

    /// A calculation alone, for a script that puts it in the place of the one on the page. Links in it lead from `root`.
    pub fn calculation_html(
        &self,
        entry: &Entry,
        values: &Value,
        outcome: Outcome<'_>,
        units: Units,
        root: &str,
    ) -> String {
        self.calculation(entry, values, outcome, units, Setting { root, level: 2, focus: true, told: &[] })
    }

    /// A calculation as it stands in a page.
    pub fn calculation(
        &self,
        entry: &Entry,
        values: &Value,
        outcome: Outcome<'_>,
        units: Units,
        setting: Setting<'_>,
    ) -> String {
        let card = entry.card();
        let faults = match outcome {
            Outcome::Faults(faults) => faults,
            _ => &[],
        };
        let form = Form::new(&self.theme, entry, values, faults, units);
        let (panel, say) = match outcome {
            Outcome::Answer(answer) => {
                (self.panel_html(entry, answer, units), panel::in_words_of(entry, answer, units))
            }
            _ => (String::new(), String::new()),
        };
        let heading = heading(form.faults().len());
        let view = CalculationView {
            id: card.id,
            level: setting.level,
            number: self.numbers.get(card.id).cloned().unwrap_or_default(),
            title: card.title,
            question: card.question,
            root: setting.root,
            units: units.word(),
            short: form.is_short(),
            cautions: card
                .cautions
                .iter()
                .filter(|key| !setting.told.contains(key))
                .map(|key| self.caution(key))
                .collect(),
            fields: form.html(),
            faults: form.faults(),
            say: if form.faults().is_empty() { say } else { heading.clone() },
            heading,
            panel,
            waiting: matches!(outcome, Outcome::Waiting),
            example: self.example(entry, units, setting.root),
            sources: card.sources.iter().map(|source| source.line()).collect(),
            focus: setting.focus,
            practised: exercise(card.id).is_some(),
        };
        self.theme.fill("calculation.html", &view)
    }

    fn example<'e>(&self, entry: &'e Entry, units: Units, root: &str) -> ExampleView<'e> {
        let example = entry.example(units);
        let simple = Place::of(*entry.input()).fields().filter_map(|(name, place)| {
            let value = example.input.get(name).filter(|value| !value.is_null() && place.is_single())?;
            let text = match place.shape.kind {
                Kind::Choice(_) => in_words(value.as_str().unwrap_or_default()),
                _ => form::text_of(value, &place.shape, units),
            };
            Some(Pair { label: place.label(name), html: figure::set_text(&text) })
        });
        let expects = example.expects.iter().filter_map(|(pointer, value)| {
            // A pointer leads to a quantity, or to one of its texts.
            let place = pointer.strip_prefix("/result")?;
            let quantity = ["/text", "/tape"].into_iter().find_map(|text| place.strip_suffix(text));
            let label = quantity.filter(|place| !place.is_empty()).unwrap_or(place);
            let label = panel::label_at(entry.output(), label)?;
            let text = match value {
                Value::String(text) => text.clone(),
                other => other.to_string(),
            };
            Some(Pair { label, html: figure::set_text(&text) })
        });
        ExampleView {
            given: simple.collect(),
            expects: expects.collect(),
            checked_against: example.checked_against,
            place: format!("{root}{}", self.place_of(entry.card().id).unwrap_or("index.html")),
        }
    }
}

/// How many fields need another look, in words as far as people count in words.
fn heading(count: usize) -> String {
    const WORDS: [&str; 10] = ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine"];
    match (count, WORDS.get(count)) {
        (1, _) => "One field needs another look".to_owned(),
        (_, Some(word)) => format!("{word} fields need another look"),
        _ => format!("{count} fields need another look"),
    }
}
