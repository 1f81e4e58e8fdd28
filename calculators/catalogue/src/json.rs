//! The one place where quantities become JSON: in a unit system, with their texts beside the exact value.
//!
//! - A length is `{"mm", "text", "tape", "other", "nm"}`: `text` in feet and inches or millimetres, `tape` as called out from a
//!   tape, `other` in the other unit system, `nm` numerator and denominator in nanometres.
//! - A tape reading also has `left`: how far the exact place lies beside the mark, in words of the trade; and `exact_nm`.
//! - A run of goods is told to the inch or the centimetre in all three texts, and says `run`.
//! - A physical quantity is `{"value", "unit", "text", "other", "kind"}`, money `{"minor", "text"}`.
//! - A sentence is its text. Everything else is what JSON has for it.
//!
//! Everything is written into one buffer. A quantity that stands in an answer again, as those of the working do, is copied from
//! where it was written first: printing it is nearly all that an answer of a small calculator costs.

use std::ops::Range;

use quantity::{Exact, KindFacts, Reading, Run, Units, print};
use serde_json::Value;

use crate::{Answer, Fault, Figure, Named, Node, Note, Offer, Step, Words};

/// Something as it is written in one unit system.
#[derive(Clone, Copy, Debug)]
pub struct Printed<'a, T: ?Sized>(pub &'a T, pub Units);

/// What can be written as JSON in a unit system.
pub trait Print {
    /// Writes it.
    fn print(&self, page: &mut Page);
}

impl<T: Print + ?Sized> Printed<'_, T> {
    /// As JSON text.
    pub fn to_json(&self) -> String {
        let mut page = Page::new(self.1);
        self.0.print(&mut page);
        page.out
    }

    /// As a JSON value, for those who look into it.
    pub fn to_value(&self) -> Value {
        // What is written here is JSON; a test reads it all back.
        serde_json::from_str(&self.to_json()).unwrap_or_default()
    }
}

/// JSON that is being written.
#[derive(Debug)]
pub struct Page {
    out: String,
    units: Units,
    /// A text before it is known to need no escape.
    text: String,
    /// Quantities that stand on the page, and where.
    written: Vec<(Figure, Range<usize>)>,
}

/// Quantities that are looked for again: those of a small answer and its working.
const REMEMBERED: usize = 16;

impl Page {
    fn new(units: Units) -> Self {
        Self {
            out: String::with_capacity(2_048),
            units,
            text: String::with_capacity(64),
            written: Vec::with_capacity(REMEMBERED),
        }
    }

    /// The next key of an object; the first opens it.
    fn key(&mut self, name: &str, first: bool) {
        self.out.push(if first { '{' } else { ',' });
        self.out.push('"');
        self.out.push_str(name);
        self.out.push_str("\":");
    }

    fn field(&mut self, name: &str, first: bool, value: &(impl Print + ?Sized)) {
        self.key(name, first);
        value.print(self);
    }

    fn string(&mut self, text: &str) {
        self.out.push('"');
        push_escaped(&mut self.out, text);
        self.out.push('"');
    }

    /// A text that is put together first.
    fn written(&mut self, write: impl FnOnce(&mut String)) {
        let mut text = std::mem::take(&mut self.text);
        text.clear();
        write(&mut text);
        self.string(&text);
        self.text = text;
    }

    fn whole(&mut self, number: i128) {
        let mut figures = [b'0'; 40];
        let (mut at, mut rest) = (figures.len(), number.unsigned_abs());
        if let Ok(small) = u64::try_from(rest) {
            let mut small = small;
            while small > 9 {
                at -= 1;
                figures[at] = b'0' + (small % 10) as u8;
                small /= 10;
            }
            rest = u128::from(small);
        }
        while {
            at -= 1;
            figures[at] = b'0' + (rest % 10) as u8;
            rest /= 10;
            rest != 0
        } {}
        if number < 0 {
            self.out.push('-');
        }
        self.out.extend(figures[at..].iter().map(|figure| char::from(*figure)));
    }

    fn float(&mut self, number: f64) {
        match serde_json::Number::from_f64(number) {
            Some(number) => {
                use std::fmt::Write;
                // Writing to a string cannot fail.
                let _ = write!(self.out, "{number}");
            }
            None => self.out.push_str("null"),
        }
    }

    /// Numerator and denominator: whole numbers where they fit 64 bits, else text.
    fn nanometres(&mut self, exact: Exact) {
        for (sign, number) in [('[', exact.nm()), (',', exact.parts())] {
            self.out.push(sign);
            if i64::try_from(number).is_ok() {
                self.whole(number);
            } else {
                self.out.push('"');
                self.whole(number);
                self.out.push('"');
            }
        }
        self.out.push(']');
    }

    /// `mm`, `text`, `tape` and `other`, in which all lengths are alike.
    fn lengths(&mut self, exact: Exact, other: Exact) {
        let units = self.units;
        self.key("mm", true);
        self.float(exact.in_mm());
        self.key("text", false);
        match units {
            Units::Imperial => {
                self.written(|out| print::push_feet_inches(out, exact, print::FINEST_PARTS));
                self.key("tape", false);
                self.written(|out| print::push_plain(out, exact, units));
            }
            Units::Metric => {
                let start = self.out.len();
                self.written(|out| print::push_plain(out, exact, units));
                let text = start..self.out.len();
                self.key("tape", false);
                self.out.extend_from_within(text);
            }
        }
        self.key("other", false);
        self.written(|out| print::push_plain(out, other, units.other()));
    }

    fn length(&mut self, exact: Exact) {
        self.lengths(exact, exact);
        self.key("nm", false);
        self.nanometres(exact);
        self.out.push('}');
    }

    fn reading(&mut self, reading: Reading) {
        let units = self.units;
        let shown = reading.shown_in(units).exact();
        self.lengths(shown, reading.shown_in(units.other()).exact());
        self.key("left", false);
        self.written(|out| out.push_str(&print::left_over(reading, units)));
        self.key("nm", false);
        self.nanometres(shown);
        self.key("exact_nm", false);
        self.nanometres(reading.exact);
        self.out.push('}');
    }

    fn run(&mut self, run: Run) {
        let text = run.text(self.units);
        self.key("mm", true);
        self.float(run.length().in_mm());
        for name in ["text", "tape"] {
            self.key(name, false);
            self.string(&text);
        }
        self.key("other", false);
        self.string(&run.text(self.units.other()));
        self.key("nm", false);
        self.nanometres(run.length().exact());
        self.out.push_str(",\"run\":true}");
    }

    fn physical(&mut self, facts: &KindFacts, metric: f64) {
        let units = self.units;
        self.key("value", true);
        self.float(metric);
        self.key("unit", false);
        self.string(facts.metric.symbol);
        self.key("text", false);
        let start = self.out.len();
        self.written(|out| facts.push_text(out, metric, units));
        let text = start..self.out.len();
        self.key("other", false);
        if facts.metric.symbol == facts.imperial.symbol {
            self.out.extend_from_within(text);
        } else {
            self.written(|out| facts.push_text(out, metric, units.other()));
        }
        self.key("kind", false);
        self.string(facts.name);
        self.out.push('}');
    }
}

/// Text as it stands between the quotes of JSON.
fn push_escaped(out: &mut String, text: &str) {
    let mut rest = text;
    while let Some(at) = rest.bytes().position(|byte| byte < 0x20 || byte == b'"' || byte == b'\\') {
        out.push_str(&rest[..at]);
        match rest.as_bytes()[at] {
            b'"' => out.push_str("\\\""),
            b'\\' => out.push_str("\\\\"),
            b'\n' => out.push_str("\\n"),
            b'\r' => out.push_str("\\r"),
            b'\t' => out.push_str("\\t"),
            0x08 => out.push_str("\\b"),
            0x0c => out.push_str("\\f"),
            byte => out.push_str(&format!("\\u{byte:04x}")),
        }
        rest = &rest[at + 1..];
    }
    out.push_str(rest);
}

impl Print for Node {
    fn print(&self, page: &mut Page) {
        match self {
            Self::Nothing => page.out.push_str("null"),
            Self::Flag(flag) => page.out.push_str(if *flag { "true" } else { "false" }),
            Self::Word(word) => page.string(word),
            Self::Leaf(figure) => figure.print(page),
            Self::Group(fields) => {
                for (place, (name, node)) in fields.iter().enumerate() {
                    page.field(name, place == 0, node);
                }
                page.out.push_str(if fields.is_empty() { "{}" } else { "}" });
            }
            Self::List(items) => items.print(page),
            Self::Data(data) => page.out.push_str(&data.to_string()),
        }
    }
}

impl<T: Print> Print for [T] {
    fn print(&self, page: &mut Page) {
        page.out.push('[');
        for (place, item) in self.iter().enumerate() {
            if place > 0 {
                page.out.push(',');
            }
            item.print(page);
        }
        page.out.push(']');
    }
}

impl Print for str {
    fn print(&self, page: &mut Page) {
        page.string(self);
    }
}

impl Print for Figure {
    fn print(&self, page: &mut Page) {
        match self {
            Self::Count(count) => return page.whole(i128::from(*count)),
            Self::Number(number) => return page.float(*number),
            Self::Text(text) => return page.string(text),
            Self::Words(words) => return words.print(page),
            Self::Finely(figure) => return page.string(&figure.in_full(page.units)),
            Self::Length(_) | Self::Reading(_) | Self::Run(_) | Self::Physical(..) | Self::Money(_) => {}
        }
        if let Some((_, range)) = page.written.iter().find(|(figure, _)| same(figure, self)) {
            return page.out.extend_from_within(range.clone());
        }
        let start = page.out.len();
        match self {
            Self::Length(exact) => page.length(*exact),
            Self::Reading(reading) => page.reading(*reading),
            Self::Run(run) => page.run(*run),
            Self::Physical(facts, metric) => page.physical(facts, *metric),
            Self::Money(money) => {
                page.key("minor", true);
                page.whole(i128::from(money.minor()));
                page.key("text", false);
                page.string(&money.to_string());
                page.out.push('}');
            }
            _ => {}
        }
        if page.written.len() < REMEMBERED {
            page.written.push((self.clone(), start..page.out.len()));
        }
    }
}

/// Whether two quantities are written alike.
fn same(one: &Figure, other: &Figure) -> bool {
    match (one, other) {
        (Figure::Physical(kind, one), Figure::Physical(other_kind, other)) => {
            one.to_bits() == other.to_bits() && kind.name == other_kind.name
        }
        (Figure::Physical(..), _) | (_, Figure::Physical(..)) => false,
        _ => one == other,
    }
}

impl Print for Words {
    fn print(&self, page: &mut Page) {
        let units = page.units;
        page.written(|out| self.push(out, units));
    }
}

impl Print for Answer<Node> {
    fn print(&self, page: &mut Page) {
        page.field("result", true, &self.result);
        page.field("working", false, self.working.as_slice());
        page.field("notes", false, self.notes.as_slice());
        page.out.push('}');
    }
}

impl Print for Named {
    fn print(&self, page: &mut Page) {
        page.field("symbol", true, &*self.symbol);
        page.field("name", false, &*self.name);
        page.field("value", false, &self.value);
        page.out.push('}');
    }
}

impl Print for Step {
    fn print(&self, page: &mut Page) {
        page.field("what", true, &self.what);
        if let Some(formula) = &self.formula {
            page.field("formula", false, &**formula);
        }
        page.field("given", false, self.given.as_slice());
        if let Some(result) = &self.result {
            page.field("result", false, result);
        }
        if let Some(because) = &self.because {
            page.field("because", false, because);
        }
        page.out.push('}');
    }
}

impl Print for Note {
    fn print(&self, page: &mut Page) {
        page.field("level", true, self.level.word());
        page.field("words", false, &self.words);
        if let Some(offer) = &self.offer {
            page.field("offer", false, offer);
        }
        page.out.push('}');
    }
}

impl Print for Offer {
    fn print(&self, page: &mut Page) {
        page.field("field", true, &*self.field);
        page.field("value", false, self.value.as_str());
        page.field("action", false, &*self.action);
        page.out.push('}');
    }
}

impl Print for Fault {
    fn print(&self, page: &mut Page) {
        page.field("pointer", true, self.pointer.as_str());
        page.field("said", false, &self.said);
        page.field("why", false, &self.why);
        page.field("try", false, &self.instead);
        page.out.push('}');
    }
}

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
    fn any_text_and_any_number_is_read_back_as_it_was() {
        for text in ["", "7' 3 1/2\"", "a\\b", "line\nline\r\t\u{8}\u{c}\u{1}\u{1f}", "½ ° µ 🪚", "\u{7f}"] {
            assert_eq!(Printed(text, Units::Metric).to_value(), text);
            assert_eq!(Printed(text, Units::Metric).to_json(), serde_json::to_string(text).expect("text"));
        }
        for count in [0, 7, -10, i64::MAX, i64::MIN] {
            assert_eq!(Printed(&Figure::Count(count), Units::Metric).to_json(), count.to_string());
        }
        for number in [0.0, -0.0, 0.1, 1e300, -2.5, 330.200_000_000_000_05] {
            let text = Printed(&Figure::Number(number), Units::Metric).to_json();
            assert_eq!(text, serde_json::to_string(&number).expect("a number"));
        }
        let long = Exact::of_parts(i128::from(i64::MAX) * 10, 3).expect("not zero");
        let nm = &Printed(&Figure::Length(long), Units::Metric).to_value()["nm"];
        assert_eq!([&nm[0], &nm[1]], [&long.nm().to_string().into(), &Value::from(3)]);
    }

    #[test]
    fn a_quantity_that_comes_again_is_written_alike() {
        let figures: Vec<Figure> = [0.0, -0.0, 1.5, 1.5].map(|mass| Amount::<kind::Mass>::of(mass).into()).into();
        let together = Printed(figures.as_slice(), Units::Imperial).to_json();
        let alone: Vec<_> = figures.iter().map(|figure| Printed(figure, Units::Imperial).to_json()).collect();
        assert_eq!(together, format!("[{}]", alone.join(",")));
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
