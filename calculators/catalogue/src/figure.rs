//! Quantities and sentences that hold them: what every leaf of an answer, line of working and fault is made of.

use std::borrow::Cow;

use quantity::{Exact, Kind, KindFacts, Length, Money, Physical, Reading, Run, Units, Within, print};

/// Any quantity that an answer, working or words can hold.
#[derive(Clone, Debug, PartialEq)]
pub enum Figure {
    /// An exact length.
    Length(Exact),
    /// A length as a tape shows it.
    Reading(Reading),
    /// A length of goods that run on.
    Run(Run),
    /// A whole number.
    Count(i64),
    /// A plain number of an answer.
    Number(f64),
    /// A physical quantity: its kind and the value in its metric unit.
    Physical(&'static KindFacts, f64),
    /// A length or a physical quantity told in full, for a comparison whose two sides would else read alike.
    Finely(Box<Figure>),
    /// An amount of money.
    Money(Money),
    /// A word, where a number will not do.
    Text(String),
    /// A sentence with quantities in it.
    Words(Box<Words>),
}

impl Figure {
    /// The number that formulas work with: millimetres, the kind's metric unit, major units of money; none for words.
    pub fn number(&self) -> Option<f64> {
        match self {
            Self::Length(exact) => Some(exact.in_mm()),
            Self::Reading(reading) => Some(reading.exact.in_mm()),
            Self::Run(run) => Some(run.length().in_mm()),
            Self::Count(count) => Some(*count as f64),
            Self::Number(number) | Self::Physical(_, number) => Some(*number),
            Self::Money(money) => Some(money.minor() as f64 / 100.0),
            Self::Finely(figure) => figure.number(),
            Self::Text(_) | Self::Words(_) => None,
        }
    }

    /// Both sides of a comparison, told in full where they differ and would read alike in either unit system.
    pub fn told_apart(one: impl Into<Self>, other: impl Into<Self>) -> (Self, Self) {
        let (one, other) = (one.into(), other.into());
        let alike = [Units::Imperial, Units::Metric].into_iter().any(|units| one.text(units) == other.text(units));
        if alike && one.number() != other.number() {
            (Self::Finely(Box::new(one)), Self::Finely(Box::new(other)))
        } else {
            (one, other)
        }
    }

    /// The exact length; none of anything else.
    pub fn length(&self) -> Option<Exact> {
        match self {
            Self::Length(exact) => Some(*exact),
            Self::Reading(reading) => Some(reading.exact),
            Self::Run(run) => Some(run.length().exact()),
            Self::Finely(figure) => figure.length(),
            _ => None,
        }
    }

    /// What is read out in one unit system: a length as called out from a tape, a quantity with its unit, a word as it is.
    pub fn text(&self, units: Units) -> String {
        let mut out = String::with_capacity(24);
        self.push_text(&mut out, units);
        out
    }

    /// Writes what [`Figure::text`] says.
    pub fn push_text(&self, out: &mut String, units: Units) {
        match self {
            Self::Length(exact) => print::push_plain(out, *exact, units),
            Self::Reading(reading) => print::push_plain(out, reading.shown_in(units).exact(), units),
            Self::Run(run) => out.push_str(&run.text(units)),
            Self::Count(count) => out.push_str(&count.to_string()),
            Self::Number(number) => {
                out.push_str(&serde_json::Number::from_f64(*number).map_or_else(String::new, |one| one.to_string()));
            }
            Self::Physical(facts, metric) => facts.push_text(out, *metric, units),
            Self::Money(money) => out.push_str(&money.to_string()),
            Self::Finely(figure) => out.push_str(&figure.in_full(units)),
            Self::Text(text) => out.push_str(text),
            Self::Words(words) => words.push(out, units),
        }
    }

    /// The same told so fully that working which is printed comes out again: exact lengths in decimals where they stand on no mark,
    /// quantities to seven figures that count.
    pub fn in_full(&self, units: Units) -> String {
        match self {
            Self::Length(exact) => print::in_full(*exact, units),
            Self::Reading(reading) => print::in_full(reading.exact, units),
            Self::Run(run) => print::in_full(run.length().exact(), units),
            Self::Physical(facts, metric) => facts.text_in_full(*metric, units),
            Self::Finely(figure) => figure.in_full(units),
            other => other.text(units),
        }
    }
}

macro_rules! figures {
    ($($from:ty => |$value:ident| $figure:expr;)*) => { $(
        impl From<$from> for Figure {
            fn from($value: $from) -> Self { $figure }
        }
    )* };
}

figures! {
    Length => |length| Self::Length(length.exact());
    Exact => |exact| Self::Length(exact);
    Reading => |reading| Self::Reading(reading);
    Run => |run| Self::Run(run);
    i64 => |count| Self::Count(count);
    u8 => |count| Self::Count(i64::from(count));
    u16 => |count| Self::Count(i64::from(count));
    u32 => |count| Self::Count(i64::from(count));
    i32 => |count| Self::Count(i64::from(count));
    u64 => |count| Self::Count(i64::try_from(count).unwrap_or(i64::MAX));
    usize => |count| Self::Count(i64::try_from(count).unwrap_or(i64::MAX));
    Money => |money| Self::Money(money);
    &str => |text| Self::Text(text.to_owned());
    String => |text| Self::Text(text);
    Cow<'static, str> => |text| Self::Text(text.into_owned());
    f64 => |number| Self::Physical(&quantity::kind::Number::FACTS, number);
    Words => |words| Self::Words(Box::new(words));
}

impl<const MIN: i64, const MAX: i64> From<Within<MIN, MAX>> for Figure {
    fn from(within: Within<MIN, MAX>) -> Self {
        Self::Length(within.get().exact())
    }
}

impl<K: Kind, const MIN: i64, const MAX: i64> From<Physical<K, MIN, MAX>> for Figure {
    fn from(value: Physical<K, MIN, MAX>) -> Self {
        Self::Physical(&K::FACTS, value.get())
    }
}

/// A sentence with quantities in it: `{}` marks their places in order.
///
/// # Examples
/// ```
/// use catalogue::Words;
/// use quantity::{Length, Units};
/// let words = Words::new("the last bay is {} wide").with(Length::mm(330));
/// assert_eq!(words.in_units(Units::Metric), "the last bay is 330 mm wide");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Words {
    say: Cow<'static, str>,
    with: Vec<Figure>,
}

impl Words {
    /// A sentence, with `{}` where each quantity goes.
    pub fn new(say: impl Into<Cow<'static, str>>) -> Self {
        Self { say: say.into(), with: Vec::new() }
    }

    /// One quantity and no word beside it.
    pub fn of(figure: impl Into<Figure>) -> Self {
        Self::new("{}").with(figure)
    }

    /// Adds the next quantity.
    #[must_use]
    pub fn with(mut self, figure: impl Into<Figure>) -> Self {
        self.with.push(figure.into());
        self
    }

    /// Adds the two sides of a comparison, told in full where they would else read alike.
    #[must_use]
    pub fn with_both(self, one: impl Into<Figure>, other: impl Into<Figure>) -> Self {
        let (one, other) = Figure::told_apart(one, other);
        self.with(one).with(other)
    }

    /// The sentence taken apart: what is said, and the quantities between, in their order.
    pub fn pieces(&self) -> impl Iterator<Item = Piece<'_>> {
        let mut figures = self.with.iter();
        let mut rest = Some(&*self.say);
        let said_and_figure = std::iter::from_fn(move || match rest?.split_once("{}") {
            Some((before, after)) => {
                rest = Some(after);
                Some([Some(Piece::Text(before)), figures.next().map(Piece::Figure)])
            }
            None => rest.take().map(|last| [Some(Piece::Text(last)), None]),
        });
        said_and_figure.flatten().flatten().filter(|piece| *piece != Piece::Text(""))
    }

    /// The sentence in one unit system.
    pub fn in_units(&self, units: Units) -> String {
        let mut text = String::with_capacity(self.say.len() + 16 * self.with.len());
        self.push(&mut text, units);
        text
    }

    /// Writes what [`Words::in_units`] says.
    pub fn push(&self, out: &mut String, units: Units) {
        if self.with.is_empty() && !self.say.contains("{}") {
            return out.push_str(&self.say);
        }
        for piece in self.pieces() {
            match piece {
                Piece::Text(said) => out.push_str(said),
                Piece::Figure(figure) => figure.push_text(out, units),
            }
        }
    }
}

/// A part of a sentence.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Piece<'a> {
    /// What is said.
    Text(&'a str),
    /// A quantity.
    Figure(&'a Figure),
}

impl From<&'static str> for Words {
    fn from(say: &'static str) -> Self {
        Self::new(say)
    }
}

impl From<String> for Words {
    /// Plain text: braces in it stay braces.
    fn from(text: String) -> Self {
        Self::of(text)
    }
}
