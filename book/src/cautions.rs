//! Reading the register of cautions: the book's own, and what a shop's file adds to it.
//!
//! The register in the binary always counts. A shop's own file adds to it: new cautions, a higher level, a further sentence. It can
//! take no caution away, lower no level and change no word.

use std::collections::BTreeMap;

use face::{Caution, Cautions, Level};
use serde::Deserialize;

use crate::fault::BookFault;
use crate::source::{CAUTIONS_FILE, Source};

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

/// The register in the binary, with what the book's own file adds to it.
pub(crate) fn read(source: &Source) -> (Cautions, Vec<BookFault>) {
    let built_in = Source::built_in();
    let (own, laid) =
        (built_in.text(CAUTIONS_FILE).unwrap_or_default(), source.text(CAUTIONS_FILE).unwrap_or_default());
    let told = |text: &str, error: &toml::de::Error| {
        let at = error.span().map_or(0, |span| line_at(text, span.start));
        vec![BookFault::new(CAUTIONS_FILE, at, error.message().to_owned())]
    };
    let mut by_key: BTreeMap<String, Caution> = match toml::from_str(own) {
        Ok(by_key) => by_key,
        Err(error) => return (Cautions::default(), told(own, &error)),
    };
    let end_line = laid.lines().count();
    if laid == own {
        return (Cautions::new(by_key, end_line), Vec::new());
    }
    let faults = match toml::from_str::<BTreeMap<String, Laid>>(laid) {
        Ok(entries) => entries.into_iter().flat_map(|(key, entry)| lay(&mut by_key, key, entry, laid)).collect(),
        Err(error) => told(laid, &error),
    };
    (Cautions::new(by_key, end_line), faults)
}

/// Lays what a shop says of one caution over the book's own, and tells what it may not say.
fn lay(by_key: &mut BTreeMap<String, Caution>, key: String, entry: Laid, text: &str) -> Vec<BookFault> {
    let line = text.lines().position(|line| line.trim() == format!("[{key}]")).map_or(1, |at| at + 1);
    let mut faults = Vec::new();
    let mut tell = |what: String| faults.push(BookFault::new(CAUTIONS_FILE, line, what));
    let said = [&entry.hazard, &entry.consequence, &entry.avoid, &entry.add];
    if said.into_iter().flatten().any(|text| promises(text)) {
        tell(format!("{key}: no sentence of a caution says that something is safe or harmless; say what to do"));
    }
    let Some(own) = by_key.get_mut(&key) else {
        match (entry.level, entry.hazard, entry.consequence, entry.avoid) {
            (Some(level), Some(hazard), Some(consequence), Some(avoid)) => {
                by_key.insert(key, Caution { level, hazard, consequence, avoid, add: entry.add });
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

/// Whether a sentence says that something is safe or harmless.
fn promises(text: &str) -> bool {
    let words = text.split(|sign: char| !sign.is_alphanumeric()).map(str::to_lowercase);
    words.into_iter().any(|word| matches!(word.as_str(), "safe" | "safely" | "harmless" | "harmlessly"))
}

/// The line, from 1, at an offset of a text.
pub(crate) fn line_at(text: &str, offset: usize) -> usize {
    text.as_bytes().iter().take(offset).filter(|byte| **byte == b'\n').count().saturating_add(1)
}
