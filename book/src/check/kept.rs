//! What a folder laid over the book must keep: cautions, hold points, and the theme that shows them.
//!
//! Templates, style and scripts could each hide a caution, so none of them is a shop's to change; chapters and cautions are.

use std::collections::BTreeSet;

use crate::chapter::Block;
use crate::fault::BookFault;
use crate::handbook::Leaf;
use crate::source::Source;

use super::{file, last_line};

/// Tells every caution and every hold point of the built-in book that the book laid over it has lost.
pub(crate) fn kept(whole: &[Leaf], laid_over: &[Leaf]) -> Vec<BookFault> {
    let known: BTreeSet<&str> = whole.iter().map(|leaf| leaf.listed.file.as_str()).collect();
    // What stood on a page that was taken out may stand on pages that are new.
    let new: Vec<&Leaf> = laid_over.iter().filter(|leaf| !known.contains(leaf.listed.file.as_str())).collect();
    let mut lost = Vec::new();
    for leaf in whole {
        let twin = laid_over.iter().find(|other| other.listed.file == leaf.listed.file);
        let pages = twin.map_or_else(|| new.clone(), |twin| vec![twin]);
        let line = twin.map_or(1, |twin| last_line(&twin.chapter));
        let mut tell = |what: String| lost.push(BookFault::new(&file(leaf), line, what));
        let cautions: BTreeSet<&str> = pages.iter().flat_map(|page| cautions(page)).collect();
        for key in self::cautions(leaf).filter(|key| !cautions.contains(key)) {
            tell(format!(
                "the page this one replaces carries the caution {key}; keep it, cautions may be added and never removed"
            ));
        }
        let holds: Vec<(&str, String)> = pages.iter().flat_map(|page| holds(page)).collect();
        for (key, words) in self::holds(leaf) {
            let kept = holds.iter().any(|(other, said)| *other == key && begins(said, &words));
            if !kept {
                tell(format!(
                    "the page this one replaces stops the work at {key}; keep it in a hold point, its words first: - [ ] {{{key}}} {words}"
                ));
            }
        }
    }
    lost
}

/// Whether a text is another one, or goes on after it.
fn begins(said: &str, words: &str) -> bool {
    said.strip_prefix(words).is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
}

fn cautions(leaf: &Leaf) -> impl Iterator<Item = &str> {
    leaf.chapter.blocks.iter().filter_map(|placed| match &placed.block {
        Block::Caution { key } => Some(key.as_str()),
        _ => None,
    })
}

/// The checks of a page's hold points, by key, with their words.
fn holds(leaf: &Leaf) -> impl Iterator<Item = (&str, String)> {
    let items = leaf.chapter.blocks.iter().filter_map(|placed| match &placed.block {
        Block::Checks { hold: true, items, .. } => Some(items),
        _ => None,
    });
    items.flatten().map(|item| (item.key.as_str(), item.text.words()))
}

/// Tells every file of the theme that a folder brings and that is not the binary's own.
pub(crate) fn theme_kept(whole: &Source, laid_over: &Source) -> Vec<BookFault> {
    let foreign = laid_over.below(THEME).filter(|(name, bytes)| whole.file(&format!("{THEME}{name}")) != Some(bytes));
    let told = foreign.map(|(name, _)| {
        let what = "templates, style and scripts come with the program, since they carry the cautions; take this file out: chapters/ and cautions.toml are a shop's own";
        BookFault::new(&format!("{THEME}{name}"), 1, what)
    });
    told.collect()
}

const THEME: &str = "theme/";
