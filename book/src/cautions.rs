//! The register of cautions. A chapter names a key; the words stand once, so that every page warns alike.
//!
//! Levels and their signal words are those of ANSI Z535.4 and ISO 3864-2 (from memory): danger will, warning could cause death
//! or serious injury; caution could cause minor or moderate injury; notice is harm to the work only.
//!
//! The register in the binary always counts. A shop's own file adds to it: new cautions, a higher level, a further sentence. It can
//! take no caution away, lower no level and change no word.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::fault::BookFault;
use crate::source::{CAUTIONS_FILE, Source};

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
pub(crate) const ADDED: &str = "This shop adds:";

/// What a shop's file may say of a caution.
#[derive(Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
struct Laid {
    level: Option<Level>,
    hazard: Option<String>,
    consequence: Option<String>,
    avoid: Option<String>,
    add: Option<String>,
}

/// The register: cautions by key, kebab-case.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cautions {
    by_key: BTreeMap<String, Caution>,
    end_line: usize,
}

impl Cautions {
    /// The register in the binary, with what the book's own file adds to it.
    pub(crate) fn read(source: &Source) -> (Self, Vec<BookFault>) {
        let built_in = Source::built_in();
        let (own, laid) =
            (built_in.text(CAUTIONS_FILE).unwrap_or_default(), source.text(CAUTIONS_FILE).unwrap_or_default());
        let told = |text: &str, error: &toml::de::Error| {
            let at = error.span().map_or(0, |span| line_at(text, span.start));
            vec![BookFault::new(CAUTIONS_FILE, at, error.message().to_owned())]
        };
        let by_key: BTreeMap<String, Caution> = match toml::from_str(own) {
            Ok(by_key) => by_key,
            Err(error) => return (Self::default(), told(own, &error)),
        };
        let mut register = Self { by_key, end_line: laid.lines().count() };
        if laid == own {
            return (register, Vec::new());
        }
        let faults = match toml::from_str::<BTreeMap<String, Laid>>(laid) {
            Ok(entries) => entries.into_iter().flat_map(|(key, entry)| register.lay(key, entry, laid)).collect(),
            Err(error) => told(laid, &error),
        };
        (register, faults)
    }

    /// Lays what a shop says of one caution over the book's own, and tells what it may not say.
    fn lay(&mut self, key: String, entry: Laid, text: &str) -> Vec<BookFault> {
        let line = text.lines().position(|line| line.trim() == format!("[{key}]")).map_or(1, |at| at + 1);
        let mut faults = Vec::new();
        let mut tell = |what: String| faults.push(BookFault::new(CAUTIONS_FILE, line, what));
        let said = [&entry.hazard, &entry.consequence, &entry.avoid, &entry.add];
        if said.into_iter().flatten().any(|text| promises(text)) {
            tell(format!("{key}: no sentence of a caution says that something is safe or harmless; say what to do"));
        }
        let Some(own) = self.by_key.get_mut(&key) else {
            match (entry.level, entry.hazard, entry.consequence, entry.avoid) {
                (Some(level), Some(hazard), Some(consequence), Some(avoid)) => {
                    self.by_key.insert(key, Caution { level, hazard, consequence, avoid, add: entry.add });
                }
                _ => tell(format!("{key}: a new caution needs level, hazard, consequence and avoid")),
            }
            return faults;
        };
        if let Some(level) = entry.level {
            if level > own.level {
                let word = own.level.word().to_lowercase();
                tell(format!(
                    "{key}: the level is {word} and may be raised, never lowered; leave it out, or write level = \"{word}\""
                ));
            }
            own.level = own.level.min(level);
        }
        let mut added = Vec::new();
        let parts = [
            ("hazard", &own.hazard, entry.hazard),
            ("consequence", &own.consequence, entry.consequence),
            ("avoid", &own.avoid, entry.avoid),
        ];
        for (name, kept, said) in parts {
            let Some(said) = said else { continue };
            match said.strip_prefix(kept.as_str()) {
                Some(rest) if rest.trim().is_empty() => {}
                Some(rest) if rest.starts_with(' ') => added.push(rest.trim().to_owned()),
                _ => tell(format!(
                    "{key}: the words of {name} stay as they are, sentences may be added after them; leave {name} out and write add = \"Ask in the office first.\""
                )),
            }
        }
        added.extend(entry.add);
        if !added.is_empty() {
            own.add = Some(added.join(" "));
        }
        faults
    }

    /// The caution of a key.
    pub fn get(&self, key: &str) -> Option<&Caution> {
        self.by_key.get(key)
    }

    /// The last line of the register, where a caution that is missing would be added.
    pub(crate) fn end_line(&self) -> usize {
        self.end_line
    }

    /// Every key with its caution, by alphabet.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &Caution)> {
        self.by_key.iter().map(|(key, caution)| (key.as_str(), caution))
    }
}

/// Whether a sentence says that something is safe or harmless.
fn promises(text: &str) -> bool {
    let words = text.split(|sign: char| !sign.is_alphanumeric()).map(str::to_lowercase);
    words.into_iter().any(|word| matches!(word.as_str(), "safe" | "safely" | "harmless" | "harmlessly"))
}

/// The line, from 1, at an offset of a text.
pub(crate) fn line_at(text: &str, offset: usize) -> usize {
    text.as_bytes().iter().take(offset).filter(|byte| **byte == b'\n').count().saturating_add(1)
}
