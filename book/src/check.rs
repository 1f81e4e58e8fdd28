//! The rules between files: what a chapter names exists, what must stand somewhere stands once, and links lead somewhere.

use std::collections::{BTreeMap, BTreeSet};

use calculators::catalogue::{CATALOGUE, entry};
use calculators::quantity::Units;

use crate::chapter::{Block, Chapter};
use crate::fault::BookFault;
use crate::handbook::{FRONT, Leaf};
use crate::invitation::wall_address;
use crate::practice;
use crate::reference;
use crate::source::{CAUTIONS_FILE, CHAPTERS_FOLDER, Source};
use face::Cautions;
use face::drawing::plates;
use face::look;

const BOTH: [Units; 2] = [Units::Imperial, Units::Metric];

/// Tells every fault between the files of a book.
pub(crate) fn between_files(leaves: &[Leaf], cautions: &Cautions, faults: &mut Vec<BookFault>) {
    let placed = placed(leaves, faults);
    for leaf in leaves {
        names(leaf, cautions, faults);
        anchors_stand_once(leaf, faults);
        if leaf.listed.file != FRONT && !names_its_sources(&leaf.chapter) {
            let what = "the chapter names no sources; end it with the heading Sources and a list, were it only common practice, no source";
            faults.push(BookFault::new(&file(leaf), last_line(&leaf.chapter), what));
        }
    }
    links(leaves, &placed, faults);
    cards(leaves, cautions, &placed, faults);
}

fn file(leaf: &Leaf) -> String {
    format!("{CHAPTERS_FOLDER}{}", leaf.listed.file)
}

/// Calculators, tables and drawings by the link that leads to them; each may stand once in the book.
fn placed(leaves: &[Leaf], faults: &mut Vec<BookFault>) -> BTreeSet<String> {
    let mut placed: BTreeMap<String, String> = BTreeMap::new();
    for leaf in leaves {
        for block in &leaf.chapter.blocks {
            let (what, link) = match &block.block {
                Block::Calculator { id, .. } => ("calculator", format!("work:{id}")),
                Block::Reference { table } => ("table", format!("table:{table}")),
                Block::Drawing { name, .. } => ("drawing", format!("drawing:{name}")),
                _ => continue,
            };
            let name = link.split_once(':').map_or("", |(_, name)| name);
            match placed.get(&link) {
                Some(first) => {
                    let told = format!("the {what} {name} already stands in {first}; link to it with {link}");
                    faults.push(BookFault::new(&file(leaf), block.line, told));
                }
                None => {
                    placed.insert(link, leaf.listed.file.clone());
                }
            }
        }
    }
    placed.into_keys().collect()
}

/// Whatever a block names is there.
fn names(leaf: &Leaf, cautions: &Cautions, faults: &mut Vec<BookFault>) {
    let file = file(leaf);
    let mut tell = |line: usize, what: String| faults.push(BookFault::new(&file, line, what));
    for placed in &leaf.chapter.blocks {
        match &placed.block {
            Block::Caution { key } if cautions.get(key).is_none() => {
                tell(placed.line, format!("there is no caution {key} in cautions.toml"));
            }
            Block::Calculator { id, .. } if entry(id).is_none() => {
                tell(placed.line, format!("there is no calculator {id}"));
            }
            Block::Practice { id } => {
                if let Some(why) = practice::without(id) {
                    tell(placed.line, why);
                }
            }
            Block::Reference { table } if !reference::known().any(|known| known == table) => {
                let known = reference::known().collect::<Vec<_>>().join(", ");
                tell(placed.line, format!("there is no table {table}; known are {known}"));
            }
            Block::Look { id, values, show } => {
                let wrong = BOTH.iter().find_map(|units| look::refusal(id, values, show, *units));
                if let Some(why) = wrong {
                    tell(placed.line, why);
                }
            }
            Block::Drawing { name, values } => {
                let wrong = BOTH.iter().find_map(|units| plates::draw(name, values, *units).err());
                if let Some(why) = wrong {
                    tell(placed.line, why);
                }
            }
            _ => {}
        }
    }
}

/// An anchor that stands twice on a page leads to one of the two only.
fn anchors_stand_once(leaf: &Leaf, faults: &mut Vec<BookFault>) {
    let mut seen = BTreeSet::new();
    for (line, anchor) in anchors(&leaf.chapter) {
        if !seen.insert(anchor.clone()) {
            let what = format!("the heading or term {anchor} stands twice on this page; word one of them otherwise");
            faults.push(BookFault::new(&file(leaf), line, what));
        }
    }
}

/// Every place on the page that a link may lead to, with its line.
fn anchors(chapter: &Chapter) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    for placed in &chapter.blocks {
        match &placed.block {
            Block::Heading { id, .. } | Block::Calculator { id, .. } => found.push((placed.line, id.clone())),
            Block::Practice { id } => found.push((placed.line, format!("practice-{id}"))),
            Block::Reference { table } => found.push((placed.line, format!("table-{table}"))),
            Block::Drawing { name, .. } => found.push((placed.line, format!("drawing-{name}"))),
            Block::Terms(terms) => found.extend(terms.iter().map(|term| (placed.line, term.id.clone()))),
            _ => {}
        }
    }
    found
}

/// A heading `Sources` with something under it, or the table of all sources.
fn names_its_sources(chapter: &Chapter) -> bool {
    let heading = chapter
        .blocks
        .iter()
        .position(|placed| matches!(&placed.block, Block::Heading { text, .. } if text.words() == "Sources"));
    let under = heading.and_then(|at| chapter.blocks.get(at + 1));
    under.is_some_and(|placed| matches!(placed.block, Block::Prose(_) | Block::Table(_)))
        || chapter.blocks.iter().any(|placed| matches!(&placed.block, Block::Reference { table } if table == "sources"))
}

fn last_line(chapter: &Chapter) -> usize {
    chapter.blocks.last().map_or(0, |placed| placed.line)
}

fn links(leaves: &[Leaf], placed: &BTreeSet<String>, faults: &mut Vec<BookFault>) {
    let places: BTreeMap<&str, BTreeSet<String>> = leaves
        .iter()
        .map(|leaf| {
            let anchors = anchors(&leaf.chapter).into_iter().map(|(_, anchor)| anchor);
            (leaf.listed.file.as_str(), anchors.collect())
        })
        .collect();
    for leaf in leaves {
        let mut tell = |line: usize, what: String| faults.push(BookFault::new(&file(leaf), line, what));
        for (line, link) in &leaf.chapter.links {
            if link.contains("://") || placed.contains(link) || wall_address(link).is_some() {
                continue;
            }
            if let Some((kind @ ("work" | "table" | "drawing"), name)) = link.split_once(':') {
                let kind = if kind == "work" { "calculator" } else { kind };
                tell(*line, format!("no chapter holds the {kind} {name}"));
                continue;
            }
            let (target, anchor) = link.split_once('#').unwrap_or((link, ""));
            let target = if target.is_empty() { leaf.listed.file.as_str() } else { target };
            match places.get(target) {
                None => {
                    tell(*line, format!("the link {link} leads nowhere; write the chapter's file name, 03-survey.md"))
                }
                Some(anchors) if !anchor.is_empty() && !anchors.contains(anchor) => {
                    tell(*line, format!("{target} has no heading {anchor}"));
                }
                Some(_) => {}
            }
        }
    }
}

/// What the catalogue and the tables offer stands somewhere, and the cautions its cards name are registered.
fn cards(leaves: &[Leaf], cautions: &Cautions, placed: &BTreeSet<String>, faults: &mut Vec<BookFault>) {
    for card in CATALOGUE.iter().map(|entry| entry.card()) {
        if !placed.contains(&format!("work:{}", card.id)) {
            let (file, line) = stood(&format!("id = \"{}\"", card.id), leaves);
            let what = format!("the calculator {} stands in no chapter; its card says step {}", card.id, card.step);
            faults.push(BookFault::new(&file, line, what));
        }
        for key in card.cautions.iter().filter(|key| cautions.get(key).is_none()) {
            let what = format!("the calculator {} names the caution {key}, which is not registered", card.id);
            faults.push(BookFault::new(CAUTIONS_FILE, cautions.end_line(), what));
        }
    }
    let tables = reference::known().map(|name| ("table", name));
    for (what, name) in tables.chain(plates::known().map(|name| ("drawing", name))) {
        if !placed.contains(&format!("{what}:{name}")) {
            let told = format!("the {what} {name} stands in no chapter; show it, or take it out");
            let (file, line) = stood(&format!("name = \"{name}\""), leaves);
            faults.push(BookFault::new(&file, line, told));
        }
    }
}

/// Where the book in the binary has the line that places something, which is where it is missed; in a page laid over that one, no
/// further down than the page goes.
fn stood(line: &str, leaves: &[Leaf]) -> (String, usize) {
    let built_in = Source::built_in();
    let found = built_in.below(CHAPTERS_FOLDER).find_map(|(name, bytes)| {
        let text = std::str::from_utf8(bytes).ok()?;
        Some((name.to_owned(), text.lines().position(|one| one.trim() == line)?.saturating_add(1)))
    });
    let Some((name, line)) = found else { return ("chapters/SUMMARY.md".to_owned(), 1) };
    let end = leaves.iter().find(|leaf| leaf.listed.file == name).map_or(1, |leaf| last_line(&leaf.chapter));
    (format!("{CHAPTERS_FOLDER}{name}"), line.min(end))
}

pub(crate) mod kept;
#[cfg(test)]
mod tests;
