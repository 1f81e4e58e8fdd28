//! Working and notes as data: named quantities in, words out, so that a page can print them in any unit system.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Serialize, Serializer, ser::SerializeMap};

use quantity::{Exact, Kind, Length, Money, Physical, Reading, Run, Within};

/// Any quantity that working or words can hold.
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
    /// A physical quantity: the kind's name and the value in its metric unit.
    Physical(&'static str, f64),
    /// An amount of money.
    Money(Money),
    /// A word, where a number will not do.
    Text(String),
}

impl Figure {
    /// The number that formulas work with: millimetres, the kind's metric unit, major units of money; none for words.
    pub fn number(&self) -> Option<f64> {
        match self {
            Self::Length(exact) => Some(exact.in_mm()),
            Self::Reading(reading) => Some(reading.exact.in_mm()),
            Self::Run(run) => Some(run.length().in_mm()),
            Self::Count(count) => Some(*count as f64),
            Self::Physical(_, value) => Some(*value),
            Self::Money(money) => Some(money.minor() as f64 / 100.0),
            Self::Text(_) => None,
        }
    }
}

impl Serialize for Figure {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Length(exact) => exact.serialize(serializer),
            Self::Reading(reading) => reading.serialize(serializer),
            Self::Run(run) => run.serialize(serializer),
            Self::Count(count) => count.serialize(serializer),
            Self::Physical(kind, value) => {
                let mut map = serializer.serialize_map(Some(2))?;
                map.serialize_entry("kind", kind)?;
                map.serialize_entry("value", value)?;
                map.end()
            }
            Self::Money(money) => money.serialize(serializer),
            Self::Text(text) => text.serialize(serializer),
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
    u32 => |count| Self::Count(i64::from(count));
    i32 => |count| Self::Count(i64::from(count));
    usize => |count| Self::Count(i64::try_from(count).unwrap_or(i64::MAX));
    Money => |money| Self::Money(money);
    &str => |text| Self::Text(text.to_owned());
    String => |text| Self::Text(text);
    f64 => |number| Self::Physical("number", number);
}

impl<const MIN: i64, const MAX: i64> From<Within<MIN, MAX>> for Figure {
    fn from(within: Within<MIN, MAX>) -> Self {
        Self::Length(within.get().exact())
    }
}

impl<K: Kind, const MIN: i64, const MAX: i64> From<Physical<K, MIN, MAX>> for Figure {
    fn from(value: Physical<K, MIN, MAX>) -> Self {
        Self::Physical(K::FACTS.name, value.get())
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

    /// Adds the next quantity.
    #[must_use]
    pub fn with(mut self, figure: impl Into<Figure>) -> Self {
        self.with.push(figure.into());
        self
    }

    /// The sentence in one unit system.
    pub fn in_units(&self, units: quantity::Units) -> String {
        let printed = serde_json::to_value(self).map(|raw| quantity::print::walk(raw, units));
        printed.ok().and_then(|value| value.as_str().map(str::to_owned)).unwrap_or_default()
    }
}

impl From<&'static str> for Words {
    fn from(say: &'static str) -> Self {
        Self::new(say)
    }
}

impl From<String> for Words {
    /// Plain text: braces in it stay braces.
    fn from(text: String) -> Self {
        Self::new("{}").with(text)
    }
}

impl Serialize for Words {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(2))?;
        map.serialize_entry("say", &self.say)?;
        map.serialize_entry("with", &self.with)?;
        map.end()
    }
}

impl JsonSchema for Words {
    fn schema_name() -> Cow<'static, str> {
        "Words".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string" })
    }
}

impl JsonSchema for Figure {
    fn schema_name() -> Cow<'static, str> {
        "Figure".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": ["object", "integer", "string"] })
    }
}

/// A quantity with its letter and its name.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Named {
    /// The letter used in the formula.
    pub symbol: Cow<'static, str>,
    /// What the letter stands for.
    pub name: Cow<'static, str>,
    /// Its value.
    pub value: Figure,
}

/// One line of working: what is worked out, by which formula, from what, to what.
///
/// The formula works on [`Figure::number`]s: lengths in millimetres, physical quantities in their metric unit, angles in
/// degrees. A test evaluates every formula of every worked example and compares it with the result that stands beside it.
/// # Examples
/// ```
/// use catalogue::Step;
/// use quantity::Length;
/// let step = Step::new("clear bay")
///     .by("(L - n * b) / m")
///     .given("L", "run", Length::mm(3660)).given("n", "boards", 9).given("b", "board width", Length::mm(64))
///     .given("m", "bays", 8)
///     .gives("g", "clear bay", Length::um(385_500));
/// assert_eq!(step.check(), Ok(()));
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
#[schemars(description = "One line of working: what is worked out, by which formula, from what, to what.")]
pub struct Step {
    /// What this line works out.
    pub what: Words,
    /// The formula for the result: letters of `given`, numbers, + - * / ^, brackets, functions; angles in degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub formula: Option<Cow<'static, str>>,
    /// What goes in.
    pub given: Vec<Named>,
    /// What comes out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub result: Option<Named>,
    /// The reason, or how the result was rounded.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub because: Option<Words>,
}

impl Step {
    /// A line of working about one thing.
    pub fn new(what: impl Into<Words>) -> Self {
        Self { what: what.into(), formula: None, given: Vec::new(), result: None, because: None }
    }

    /// Sets the formula for the result.
    #[must_use]
    pub fn by(mut self, formula: impl Into<Cow<'static, str>>) -> Self {
        self.formula = Some(formula.into());
        self
    }

    /// Adds a quantity that goes in.
    #[must_use]
    pub fn given(
        mut self,
        symbol: impl Into<Cow<'static, str>>,
        name: impl Into<Cow<'static, str>>,
        value: impl Into<Figure>,
    ) -> Self {
        self.given.push(Named { symbol: symbol.into(), name: name.into(), value: value.into() });
        self
    }

    /// Sets what comes out.
    #[must_use]
    pub fn gives(
        mut self,
        symbol: impl Into<Cow<'static, str>>,
        name: impl Into<Cow<'static, str>>,
        value: impl Into<Figure>,
    ) -> Self {
        self.result = Some(Named { symbol: symbol.into(), name: name.into(), value: value.into() });
        self
    }

    /// Says why, or how it was rounded.
    #[must_use]
    pub fn because(mut self, words: impl Into<Words>) -> Self {
        self.because = Some(words.into());
        self
    }

    /// Whether the formula, with the given numbers put in, comes to the result.
    ///
    /// The comparison allows one part in a million, or half of the last decimal of money.
    /// # Errors
    /// A sentence that says what does not hold.
    pub fn check(&self) -> Result<(), String> {
        let (Some(formula), Some(result)) = (&self.formula, &self.result) else { return Ok(()) };
        let tree = super::formula::parse(formula).map_err(|fault| format!("{formula}: {fault}"))?;
        let number = |symbol: &str| self.given.iter().find(|named| named.symbol == symbol)?.value.number();
        let ours = tree.value(&number).map_err(|missing| format!("{formula}: no number for {missing}"))?;
        let stated = result.value.number().ok_or_else(|| format!("{formula}: the result is no number"))?;
        let slack = match result.value {
            Figure::Money(_) => 0.005_001,
            _ => 1e-6 * ours.abs().max(stated.abs()) + 1e-6,
        };
        if (ours - stated).abs() <= slack {
            Ok(())
        } else {
            Err(format!("{formula} comes to {ours}, but {stated} is stated"))
        }
    }
}

/// How much a note weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum NoteLevel {
    /// Worth knowing.
    Note,
    /// Outside what is usual: look again.
    Check,
    /// Work stops here until somebody has settled it.
    Hold,
}

/// A sentence raised by the numbers.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Note {
    /// How much it weighs.
    pub level: NoteLevel,
    /// The sentence.
    pub words: Words,
    /// A value that would change it, for a button beside it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offer: Option<Offer>,
}

/// A value offered beside a note.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Offer {
    /// Which field it goes into, as a JSON pointer.
    pub field: Cow<'static, str>,
    /// The value, as it is typed.
    pub value: String,
    /// What taking it does, for the button.
    pub action: Cow<'static, str>,
}

impl Note {
    /// The same note with a value to take.
    #[must_use]
    pub fn offering(
        mut self,
        field: impl Into<Cow<'static, str>>,
        value: impl ToString,
        action: impl Into<Cow<'static, str>>,
    ) -> Self {
        self.offer = Some(Offer { field: field.into(), value: value.to_string(), action: action.into() });
        self
    }

    /// Worth knowing.
    pub fn remark(words: impl Into<Words>) -> Self {
        Self { level: NoteLevel::Note, words: words.into(), offer: None }
    }

    /// Outside what is usual.
    pub fn check(words: impl Into<Words>) -> Self {
        Self { level: NoteLevel::Check, words: words.into(), offer: None }
    }

    /// Work stops here.
    pub fn hold(words: impl Into<Words>) -> Self {
        Self { level: NoteLevel::Hold, words: words.into(), offer: None }
    }
}
