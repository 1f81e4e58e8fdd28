//! The register of cautions. A chapter names a key; the words stand once, so that every page warns alike.
//!
//! Levels and their signal words are those of ANSI Z535.4 and ISO 3864-2 (from memory): danger will, warning could cause death
//! or serious injury; caution could cause minor or moderate injury; notice is harm to the work only.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

/// How bad it can get.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// Will cause death or serious injury if not avoided.
    Danger,
    /// Could cause death or serious injury.
    Warning,
    /// Could cause minor or moderate injury.
    Caution,
    /// Harm to the work, not to people.
    Notice,
}

impl Level {
    /// The signal word as it is printed.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Danger => "DANGER",
            Self::Warning => "WARNING",
            Self::Caution => "CAUTION",
            Self::Notice => "NOTICE",
        }
    }
}

/// One registered caution.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Caution {
    /// How bad it can get.
    pub level: Level,
    /// What the hazard is.
    pub hazard: String,
    /// What it does.
    pub consequence: String,
    /// How to avoid it.
    pub avoid: String,
    /// What a shop adds to it, after the book's own sentences.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub add: Option<String>,
}

impl Caution {
    /// The whole caution in one line of text, signal word first.
    pub fn line(&self) -> String {
        let added = self.add.as_ref().map_or_else(String::new, |add| format!(" {ADDED} {add}"));
        format!("{}: {} {} {}{added}", self.level.word(), self.hazard, self.consequence, self.avoid)
    }
}

/// What stands before a shop's own sentence, so that nobody takes it for the book's.
pub const ADDED: &str = "This shop adds:";

/// The register: cautions by key, kebab-case.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cautions {
    by_key: BTreeMap<String, Caution>,
    end_line: usize,
}

impl Cautions {
    /// The register of these cautions; `end_line` is where one that is missing would be added.
    pub const fn new(by_key: BTreeMap<String, Caution>, end_line: usize) -> Self {
        Self { by_key, end_line }
    }

    /// The caution of a key.
    pub fn get(&self, key: &str) -> Option<&Caution> {
        self.by_key.get(key)
    }

    /// The last line of the register, where a caution that is missing would be added.
    pub const fn end_line(&self) -> usize {
        self.end_line
    }

    /// Every key with its caution, by alphabet.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &Caution)> {
        self.by_key.iter().map(|(key, caution)| (key.as_str(), caution))
    }
}
