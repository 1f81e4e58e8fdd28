//! What lies between an answer and its HTML or SVG: forms, answer panels, working, exercises, drawings, the wall sheet.
//!
//! It asks for nothing that a page could not give: no file, no clock, no thread, no chapter. Templates, cautions and places are
//! handed in as data. A [`Face`] holds them; the handbook round it is the crate `book`.

pub mod figure;
mod mathml;
mod theme;

mod cautions;
pub mod form;

mod panel;
mod plain;

pub mod calculation;
pub mod exercise;
pub mod look;

pub mod drawing;
pub mod wall;

use std::collections::BTreeMap;

use serde::Serialize;

pub use cautions::{ADDED, Caution, Cautions, Level};
pub use theme::Theme;

/// What calculations, exercises and sheets are printed with.
#[derive(Debug)]
pub struct Face {
    /// Templates.
    pub theme: Theme,
    /// The register of cautions.
    pub cautions: Cautions,
    /// Where each calculator stands: page and anchor by its id; tables and drawings too, by `table:nail-sizes`.
    pub places: BTreeMap<String, String>,
    /// The number of each calculator in the book, `3.1`, by its id.
    pub numbers: BTreeMap<String, String>,
}

#[derive(Serialize)]
struct CautionView<'a> {
    word: &'static str,
    caution: &'a Caution,
    brief: bool,
    added: &'static str,
}

impl Face {
    /// The page and anchor at which a calculator stands, `survey.html#closing-check`.
    pub fn place_of(&self, calculator: &str) -> Option<&str> {
        self.places.get(calculator).map(String::as_str)
    }

    /// The register of cautions.
    pub const fn cautions(&self) -> &Cautions {
        &self.cautions
    }

    /// The signal panel of a registered caution; nothing for a key that is not registered.
    pub fn caution(&self, key: &str) -> String {
        self.signal(key, false)
    }

    /// The same panel in a few lines, for where a card's cautions stand beside one figure or on a sheet of paper.
    pub fn brief_caution(&self, key: &str) -> String {
        self.signal(key, true)
    }

    /// The cautions of a card, each in a few lines.
    pub fn brief_cautions(&self, keys: &[&str]) -> Vec<String> {
        keys.iter().map(|key| self.brief_caution(key)).collect()
    }

    fn signal(&self, key: &str, brief: bool) -> String {
        let view = self.cautions.get(key).map(|caution| CautionView {
            word: caution.level.word(),
            caution,
            brief,
            added: ADDED,
        });
        view.map(|view| self.theme.fill("caution.html", &view)).unwrap_or_default()
    }
}
