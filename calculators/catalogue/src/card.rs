//! What is known of a calculator before a number is typed, and where its constants come from.

use serde::Serialize;

/// Names, question, place in the trade's sequence, cautions and sources of a calculator.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Card {
    /// Kebab-case term of the trade; part of the address.
    pub id: &'static str,
    /// A short noun for headings.
    pub title: &'static str,
    /// What a practitioner asks, in their words.
    pub question: &'static str,
    /// The step of the trade's sequence, 1 to 17, in whose chapter it stands.
    pub step: u8,
    /// Further words a person may search for.
    pub search: &'static [&'static str],
    /// Pointers into `result`: the one big figure, then at most two beside it.
    pub headline: &'static [&'static str],
    /// Pointer into `result` of the list that can be had as CSV.
    pub list: Option<&'static str>,
    /// Keys of the cautions that stand with every answer; their words are in the handbook's register.
    pub cautions: &'static [&'static str],
    /// Where method and constants come from.
    pub sources: &'static [Source],
}

/// A published work, or the trade's own practice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Work {
    /// Issuing body and title.
    pub title: &'static str,
    /// Edition or year, as far as it is known.
    pub edition: &'static str,
}

/// How far a value can be relied on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Stands in a published document.
    Published,
    /// Follows from geometry or arithmetic alone.
    Derived,
    /// Common practice of the trade, no source.
    CommonPractice,
    /// A default of this book, meant to be changed by a shop.
    HouseDefault,
    /// Published, but quoted from memory: check before relying on it.
    FromMemory,
}

impl Standing {
    /// The standing in words, as sources lists print it.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Derived => "follows from arithmetic",
            Self::CommonPractice => "common practice, no source",
            Self::HouseDefault => "a default of this book; a shop may change it",
            Self::FromMemory => "from memory; check the document",
        }
    }
}

/// Where one fact comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Source {
    /// The work.
    pub work: Work,
    /// Table, clause or equation, or what was taken from it.
    pub locator: &'static str,
    /// How far it can be relied on.
    pub standing: Standing,
}

impl Source {
    /// A source from the list of works.
    pub const fn new(work: Work, locator: &'static str, standing: Standing) -> Self {
        Self { work, locator, standing }
    }

    /// The source in one line.
    pub fn line(&self) -> String {
        let edition = if self.work.edition.is_empty() { String::new() } else { format!(", {}", self.work.edition) };
        let locator = if self.locator.is_empty() { String::new() } else { format!(": {}", self.locator) };
        format!("{}{edition}{locator} ({})", self.work.title, self.standing.words())
    }
}

/// A constant beside its source.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Cited<T> {
    /// The value.
    pub value: T,
    /// Where it comes from.
    pub source: Source,
}

impl<T> Cited<T> {
    /// A value with its source.
    pub const fn new(value: T, source: Source) -> Self {
        Self { value, source }
    }
}
