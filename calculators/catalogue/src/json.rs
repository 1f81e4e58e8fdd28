//! The one place where quantities become JSON: in a unit system, with their texts beside the exact value.
//!
//! - A length is `{"mm", "text", "tape", "other", "nm"}`: `text` in feet and inches or millimetres, `tape` as called out from a
//!   tape, `other` in the other unit system, `nm` numerator and denominator in nanometres.
//! - A tape reading also has `left`: how far the exact place lies beside the mark, in words of the trade; and `exact_nm`.
//! - A run of goods is told to the inch or the centimetre in all three texts, and says `run`.
//! - A physical quantity is `{"value", "unit", "text", "other", "kind"}`, money `{"minor", "text"}`.
//! - A sentence is its text. Everything else is what JSON has for it.

use quantity::{Exact, KindFacts, Reading, Run, Units, print};
use serde::ser::{Serialize, SerializeMap, Serializer};

use crate::{Answer, Fault, Figure, Named, Node, Note, Offer, Step, Words};

/// Something as it is written in one unit system.
#[derive(Clone, Copy, Debug)]
pub struct Printed<'a, T: ?Sized>(pub &'a T, pub Units);

impl<T: ?Sized> Printed<'_, T>
where
    Self: Serialize,
{
    /// As JSON text.
    pub fn to_json(&self) -> String {
        // Keys are text and nothing refuses to be written: no error can come.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// As a JSON value, for those who look into it.
    pub fn to_value(&self) -> serde_json::Value {
        serde_json::to_value(self).unwrap_or_default()
    }
}

impl<'a, T: ?Sized> Printed<'a, T> {
    /// A part of the whole, in the same units.
    const fn part<U: ?Sized>(&self, part: &'a U) -> Printed<'a, U> {
        Printed(part, self.1)
    }
}

impl Serialize for Printed<'_, Node> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0 {
            Node::Nothing => serializer.serialize_unit(),
            Node::Flag(flag) => serializer.serialize_bool(*flag),
            Node::Word(word) => serializer.serialize_str(word),
            Node::Leaf(figure) => self.part(figure).serialize(serializer),
            Node::Group(fields) => serializer.collect_map(fields.iter().map(|(name, node)| (name, self.part(node)))),
            Node::List(items) => self.part(items.as_slice()).serialize(serializer),
            Node::Data(data) => data.serialize(serializer),
        }
    }
}

impl<T> Serialize for Printed<'_, [T]>
where
    for<'p> Printed<'p, T>: Serialize,
{
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.0.iter().map(|item| self.part(item)))
    }
}

impl Serialize for Printed<'_, Figure> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let units = self.1;
        match self.0 {
            Figure::Length(exact) => length(serializer, *exact, units),
            Figure::Reading(reading) => self::reading(serializer, *reading, units),
            Figure::Run(run) => self::run(serializer, *run, units),
            Figure::Count(count) => serializer.serialize_i64(*count),
            Figure::Number(number) => serializer.serialize_f64(*number),
            Figure::Physical(facts, metric) => physical(serializer, facts, *metric, units),
            Figure::Money(money) => {
                let mut map = serializer.serialize_map(Some(2))?;
                map.serialize_entry("minor", &money.minor())?;
                map.serialize_entry("text", &money.to_string())?;
                map.end()
            }
            Figure::Text(text) => serializer.serialize_str(text),
            Figure::Words(words) => self.part(&**words).serialize(serializer),
        }
    }
}

fn length<S: Serializer>(serializer: S, exact: Exact, units: Units) -> Result<S::Ok, S::Error> {
    let mut map = serializer.serialize_map(Some(5))?;
    map.serialize_entry("mm", &exact.in_mm())?;
    match units {
        Units::Imperial => {
            map.serialize_entry("text", &print::feet_inches(exact, print::FINEST_PARTS))?;
            map.serialize_entry("tape", &print::plain(exact, units))?;
        }
        Units::Metric => {
            let text = print::plain(exact, units);
            map.serialize_entry("text", &text)?;
            map.serialize_entry("tape", &text)?;
        }
    }
    map.serialize_entry("other", &print::plain(exact, units.other()))?;
    map.serialize_entry("nm", &Nanometres(exact))?;
    map.end()
}

fn reading<S: Serializer>(serializer: S, reading: Reading, units: Units) -> Result<S::Ok, S::Error> {
    let shown = reading.shown_in(units).exact();
    let mut map = serializer.serialize_map(Some(7))?;
    map.serialize_entry("mm", &shown.in_mm())?;
    match units {
        Units::Imperial => {
            map.serialize_entry("text", &print::feet_inches(shown, print::FINEST_PARTS))?;
            map.serialize_entry("tape", &print::plain(shown, units))?;
        }
        Units::Metric => {
            let text = print::plain(shown, units);
            map.serialize_entry("text", &text)?;
            map.serialize_entry("tape", &text)?;
        }
    }
    let other = reading.shown_in(units.other()).exact();
    map.serialize_entry("other", &print::plain(other, units.other()))?;
    map.serialize_entry("left", &print::left_over(reading, units))?;
    map.serialize_entry("nm", &Nanometres(shown))?;
    map.serialize_entry("exact_nm", &Nanometres(reading.exact))?;
    map.end()
}

fn run<S: Serializer>(serializer: S, run: Run, units: Units) -> Result<S::Ok, S::Error> {
    let (exact, text) = (run.length().exact(), run.text(units));
    let mut map = serializer.serialize_map(Some(6))?;
    map.serialize_entry("mm", &exact.in_mm())?;
    map.serialize_entry("text", &text)?;
    map.serialize_entry("tape", &text)?;
    map.serialize_entry("other", &run.text(units.other()))?;
    map.serialize_entry("nm", &Nanometres(exact))?;
    map.serialize_entry("run", &true)?;
    map.end()
}

fn physical<S: Serializer>(serializer: S, facts: &KindFacts, metric: f64, units: Units) -> Result<S::Ok, S::Error> {
    let text = facts.text(metric, units);
    let mut map = serializer.serialize_map(Some(5))?;
    map.serialize_entry("value", &metric)?;
    map.serialize_entry("unit", facts.metric.symbol)?;
    map.serialize_entry("text", &text)?;
    if facts.metric == facts.imperial {
        map.serialize_entry("other", &text)?;
    } else {
        map.serialize_entry("other", &facts.text(metric, units.other()))?;
    }
    map.serialize_entry("kind", facts.name)?;
    map.end()
}

/// Numerator and denominator: whole numbers where they fit 64 bits, else text.
struct Nanometres(Exact);

impl Serialize for Nanometres {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq([self.0.nm(), self.0.parts()].map(Whole))
    }
}

struct Whole(i128);

impl Serialize for Whole {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match i64::try_from(self.0) {
            Ok(number) => serializer.serialize_i64(number),
            Err(_) => serializer.collect_str(&self.0),
        }
    }
}

impl Serialize for Printed<'_, Words> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.0.in_units(self.1))
    }
}

impl Serialize for Printed<'_, Answer<Node>> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(3))?;
        map.serialize_entry("result", &self.part(&self.0.result))?;
        map.serialize_entry("working", &self.part(self.0.working.as_slice()))?;
        map.serialize_entry("notes", &self.part(self.0.notes.as_slice()))?;
        map.end()
    }
}

impl Serialize for Printed<'_, Named> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(3))?;
        map.serialize_entry("symbol", &self.0.symbol)?;
        map.serialize_entry("name", &self.0.name)?;
        map.serialize_entry("value", &self.part(&self.0.value))?;
        map.end()
    }
}

impl Serialize for Printed<'_, Step> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let step = self.0;
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("what", &self.part(&step.what))?;
        if let Some(formula) = &step.formula {
            map.serialize_entry("formula", formula)?;
        }
        map.serialize_entry("given", &self.part(step.given.as_slice()))?;
        if let Some(result) = &step.result {
            map.serialize_entry("result", &self.part(result))?;
        }
        if let Some(because) = &step.because {
            map.serialize_entry("because", &self.part(because))?;
        }
        map.end()
    }
}

impl Serialize for Printed<'_, Note> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let note = self.0;
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("level", note.level.word())?;
        map.serialize_entry("words", &self.part(&note.words))?;
        if let Some(offer) = &note.offer {
            map.serialize_entry("offer", &self.part(offer))?;
        }
        map.end()
    }
}

impl Serialize for Printed<'_, Offer> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(3))?;
        map.serialize_entry("field", &self.0.field)?;
        map.serialize_entry("value", &self.0.value)?;
        map.serialize_entry("action", &self.0.action)?;
        map.end()
    }
}

impl Serialize for Printed<'_, Fault> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(4))?;
        map.serialize_entry("pointer", &self.0.pointer)?;
        map.serialize_entry("said", &self.part(&self.0.said))?;
        map.serialize_entry("why", &self.part(&self.0.why))?;
        map.serialize_entry("try", &self.part(&self.0.instead))?;
        map.end()
    }
}

// Until no declaration derives Serialize beside its shape.
macro_rules! metric {
    ($($of:ty),*) => { $(
        impl Serialize for $of {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                Printed(self, Units::Metric).serialize(serializer)
            }
        }
    )* };
}
metric!(Words, Figure, Note);

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::{Amount, Length, Money, Tape, kind};

    #[test]
    fn an_answer_is_printed_throughout() {
        let node = Node::Group(vec![
            ("bay", Length::um(330_200).into()),
            ("count", 3_i64.into()),
            ("air", Node::Leaf(Amount::<kind::Temperature>::of(18.0).into())),
            ("price", Money::from_minor(4_850).into()),
            ("said", Words::new("{} wide").with(Length::um(330_200)).into()),
        ]);
        let printed = Printed(&node, Units::Imperial).to_value();
        assert_eq!(printed["bay"]["text"], "1' 1\"");
        assert_eq!(printed["bay"]["other"], "330.2 mm");
        assert_eq!(printed["air"]["text"], "64.4 °F");
        assert_eq!(printed["count"], 3);
        assert_eq!(printed["price"]["text"], "48.50");
        assert_eq!(printed["said"], "13 in wide");
    }

    #[test]
    fn a_mark_says_where_it_is_and_where_the_place_is() {
        let place = Tape::Sixteenth.mark(Length::sixty_fourths(65).exact());
        let printed = Printed(&Figure::from(place), Units::Imperial).to_value();
        assert_eq!(printed["tape"], "1 in");
        assert_eq!(printed["left"], "1/64 in full");
        assert_eq!(printed["nm"][0], 25_400_000);
        assert_eq!(printed["exact_nm"][0], 25_796_875);
    }
}
