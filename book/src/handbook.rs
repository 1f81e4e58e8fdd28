//! The whole book, read and checked: order, chapters, cautions, theme, and where everything stands.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use calculators::catalogue::{CATALOGUE, entry};

use crate::cautions::Cautions;
use crate::chapter::{self, Block, Chapter};
use crate::contents::{self, Listed};
use crate::fault::{BookFault, BookFaults};
use crate::find::{self, Findable, Hit};
use crate::pole::Mark;
use crate::reference;
use crate::source::{CAUTIONS_FILE, CHAPTERS_FOLDER, Source};
use crate::theme::{self, Asset, Theme};
use crate::wall::invitation::wall_address;

/// The file of the front page.
pub(crate) const FRONT: &str = "index.md";

/// A handbook that was read without a fault.
#[derive(Debug)]
pub struct Handbook {
    pub(crate) leaves: Vec<Leaf>,
    pub(crate) marks: Vec<Mark>,
    pub(crate) cautions: Cautions,
    pub(crate) theme: Theme,
    /// Where each calculator stands: page and anchor by its id.
    pub(crate) places: BTreeMap<String, String>,
    /// The number of each calculator in the book, `3.1`, by its id.
    pub(crate) numbers: BTreeMap<String, String>,
    pub(crate) assets: Vec<Asset>,
    findable: Vec<Findable>,
}

/// One page's worth of the book.
#[derive(Debug)]
pub(crate) struct Leaf {
    pub(crate) listed: Listed,
    pub(crate) chapter: Chapter,
}

impl Handbook {
    /// The book compiled into the binary.
    /// # Errors
    /// Every fault of the book, with file and line.
    pub fn built_in() -> Result<Self, BookFaults> {
        Self::read(&Source::built_in())
    }

    /// The built-in book with a folder of the same layout laid over it, file by file.
    /// # Errors
    /// Every fault of the book, with file and line; a folder that cannot be read is one.
    pub fn load(folder: &Path) -> Result<Self, BookFaults> {
        let source = Source::with_folder(folder).map_err(|error| {
            BookFaults(vec![BookFault::new(&folder.to_string_lossy(), 0, format!("cannot be read: {error}"))])
        })?;
        Self::read(&source)
    }

    /// The book made of these files.
    /// # Errors
    /// Every fault of the book, with file and line.
    pub fn read(source: &Source) -> Result<Self, BookFaults> {
        let (listed, mut faults) = contents::read(source);
        let (cautions, caution_faults) = Cautions::read(source);
        faults.extend(caution_faults);
        let mut leaves = Vec::with_capacity(listed.len());
        for listed in listed {
            let file = format!("{CHAPTERS_FOLDER}{}", listed.file);
            let (chapter, chapter_faults) = chapter::read(&file, source.text(&file).unwrap_or_default());
            faults.extend(chapter_faults);
            leaves.push(Leaf { listed, chapter });
        }
        let places = places(&leaves);
        check(&leaves, &cautions, &mut faults);
        let theme = match Theme::read(source) {
            Ok(theme) if faults.is_empty() => theme,
            Ok(_) => return Err(sorted(faults)),
            Err(fault) => {
                faults.push(fault);
                return Err(sorted(faults));
            }
        };
        let marks = leaves.iter().filter_map(mark).collect();
        let findable = findable(&leaves, &places);
        let numbers = numbers(&leaves);
        let mut assets = theme::assets(source);
        assets.push(find::index(&findable));
        Ok(Self { leaves, marks, cautions, theme, places, numbers, assets, findable })
    }

    /// What a reader's words lead to, best first, 24 at most.
    pub fn find(&self, query: &str) -> Vec<Hit> {
        find::find(&self.findable, query)
    }

    /// The page and anchor at which a calculator stands, `survey.html#closing-check`.
    pub fn place_of(&self, calculator: &str) -> Option<&str> {
        self.places.get(calculator).map(String::as_str)
    }

    /// The register of cautions.
    pub fn cautions(&self) -> &Cautions {
        &self.cautions
    }
}

impl Leaf {
    /// Where the page stands in words: `Step 3 · Measure the wall`.
    pub(crate) fn place(&self) -> String {
        match self.listed.step {
            Some(step) => format!("Step {step}, {}", self.listed.name),
            None => self.listed.name.clone(),
        }
    }

    /// The chapter's calculators with their number in it, from 1.
    pub(crate) fn calculators(&self) -> impl Iterator<Item = (usize, &str)> {
        let ids = self.chapter.blocks.iter().filter_map(|placed| match &placed.block {
            Block::Calculator { id, .. } => Some(id.as_str()),
            _ => None,
        });
        ids.enumerate().map(|(at, id)| (at + 1, id))
    }
}

fn sorted(mut faults: Vec<BookFault>) -> BookFaults {
    faults.sort_by(|one, other| (&one.file, one.line).cmp(&(&other.file, other.line)));
    BookFaults(faults)
}

fn mark(leaf: &Leaf) -> Option<Mark> {
    Some(Mark {
        number: leaf.listed.step?,
        name: leaf.listed.name.clone(),
        path: leaf.listed.path(),
        wait: leaf.chapter.wait.is_some(),
        here: false,
    })
}

fn places(leaves: &[Leaf]) -> BTreeMap<String, String> {
    let all = leaves.iter().flat_map(|leaf| {
        leaf.calculators().map(move |(_, id)| (id.to_owned(), format!("{}#{id}", leaf.listed.path())))
    });
    all.collect()
}

fn numbers(leaves: &[Leaf]) -> BTreeMap<String, String> {
    let all = leaves.iter().flat_map(|leaf| {
        leaf.calculators().filter_map(move |(at, id)| Some((id.to_owned(), format!("{}.{at}", leaf.listed.step?))))
    });
    all.collect()
}

/// The rules between files: cautions are registered, calculators exist and stand once, links lead somewhere.
fn check(leaves: &[Leaf], cautions: &Cautions, faults: &mut Vec<BookFault>) {
    let anchors: BTreeMap<&str, BTreeSet<&str>> = leaves
        .iter()
        .map(|leaf| {
            let anchors = leaf.chapter.blocks.iter().filter_map(|placed| match &placed.block {
                Block::Heading { id, .. } | Block::Calculator { id, .. } => Some(id.as_str()),
                _ => None,
            });
            (leaf.listed.file.as_str(), anchors.collect())
        })
        .collect();
    let mut placed_calculators = BTreeSet::new();
    for leaf in leaves {
        let file = format!("{CHAPTERS_FOLDER}{}", leaf.listed.file);
        let mut tell = |line: usize, what: String| faults.push(BookFault::new(&file, line, what));
        for placed in &leaf.chapter.blocks {
            match &placed.block {
                Block::Caution { key } if cautions.get(key).is_none() => {
                    tell(placed.line, format!("there is no caution {key} in cautions.toml"));
                }
                Block::Calculator { id, .. } if !placed_calculators.insert(id.as_str()) => {
                    tell(
                        placed.line,
                        format!("the calculator {id} already stands in a chapter; link to it with work:{id}"),
                    );
                }
                Block::Calculator { id, .. } if entry(id).is_none() => {
                    tell(placed.line, format!("there is no calculator {id}"));
                }
                Block::Reference { table } if !reference::known().any(|known| known == table) => {
                    let known = reference::known().collect::<Vec<_>>().join(", ");
                    tell(placed.line, format!("there is no table {table}; known are {known}"));
                }
                _ => {}
            }
        }
        for (line, link) in &leaf.chapter.links {
            if link.contains("://") {
                continue;
            }
            let (target, anchor) = link.split_once('#').unwrap_or((link, ""));
            let target = if target.is_empty() { leaf.listed.file.as_str() } else { target };
            match anchors.get(target) {
                None if target.starts_with("work:") => {}
                None if wall_address(target).is_some() => {}
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
    for card in CATALOGUE.iter().map(|entry| entry.card()) {
        if !placed_calculators.contains(card.id) {
            let step = leaves.iter().find(|leaf| leaf.listed.step == Some(card.step));
            let file = step.map_or("SUMMARY.md", |leaf| leaf.listed.file.as_str());
            let what = format!("the calculator {} stands in no chapter; its card says step {}", card.id, card.step);
            faults.push(BookFault::new(&format!("{CHAPTERS_FOLDER}{file}"), 0, what));
        }
        for key in card.cautions.iter().filter(|key| cautions.get(key).is_none()) {
            faults.push(BookFault::new(
                CAUTIONS_FILE,
                0,
                format!("the calculator {} names the caution {key}, which is not registered", card.id),
            ));
        }
    }
    for leaf in leaves {
        for (line, link) in &leaf.chapter.links {
            if let Some(id) = link.strip_prefix("work:").filter(|id| !placed_calculators.contains(id)) {
                let file = format!("{CHAPTERS_FOLDER}{}", leaf.listed.file);
                faults.push(BookFault::new(&file, *line, format!("no chapter holds the calculator {id}")));
            }
        }
    }
}

/// One thing to find for each section.
fn findable(leaves: &[Leaf], places: &BTreeMap<String, String>) -> Vec<Findable> {
    let mut all = Vec::new();
    for leaf in leaves {
        let path = leaf.listed.path();
        let mut current = Findable {
            path: path.clone(),
            title: leaf.chapter.title.clone(),
            place: leaf.place(),
            also: leaf.listed.name.clone(),
            text: leaf.chapter.lead.words(),
        };
        for (label, text) in &leaf.chapter.needs {
            current.text = format!("{} {label}: {}.", current.text, text.words());
        }
        for placed in &leaf.chapter.blocks {
            let words = match &placed.block {
                Block::Heading { level: 2, id, text } => {
                    let next = Findable {
                        path: format!("{path}#{id}"),
                        title: text.words(),
                        place: leaf.place(),
                        also: String::new(),
                        text: String::new(),
                    };
                    all.push(std::mem::replace(&mut current, next));
                    continue;
                }
                Block::Margin { label, labelled: true, text } => format!("{label}: {}", text.words()),
                Block::Margin { text, .. } | Block::Heading { text, .. } | Block::Prose(text) | Block::Table(text) => {
                    text.words()
                }
                Block::Checks { legend, intro, items, .. } => {
                    let items: Vec<_> = items.iter().map(|item| item.text.words()).collect();
                    format!("{legend}. {} {}", intro.words(), items.join(". "))
                }
                Block::Calculator { id, .. } => {
                    all.extend(entry(id).map(|entry| {
                        let card = entry.card();
                        Findable {
                            path: places.get(id).cloned().unwrap_or_default(),
                            title: card.question.to_owned(),
                            place: format!("Calculation, {}", leaf.place().to_lowercase()),
                            also: format!("{} {}", card.title, card.search.join(" ")),
                            text: card.title.to_owned(),
                        }
                    }));
                    continue;
                }
                _ => continue,
            };
            if !current.text.is_empty() {
                current.text.push(' ');
            }
            current.text.push_str(&words);
        }
        all.push(current);
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_built_in_book_has_no_fault() {
        let faults = Handbook::built_in().map_err(|faults| faults.to_string());
        assert_eq!(faults.err(), None);
    }

    /// The built-in book with one chapter changed, and what is told about it.
    fn told(file: &str, change: impl Fn(&str) -> String) -> String {
        let mut source = Source::built_in();
        let text = change(source.text(file).expect("a file of the book"));
        source.put(file, text);
        Handbook::read(&source).map_or_else(|faults| faults.to_string(), |_| String::new())
    }

    #[test]
    fn a_caution_that_is_not_registered_is_named_with_its_line() {
        let told = told("chapters/17-year.md", |text| format!("{text}\n```caution\nkey = \"dragons\"\n```\n"));
        let line = Source::built_in().text("chapters/17-year.md").expect("a chapter").lines().count() + 2;
        let expected = format!("chapters/17-year.md:{line}: there is no caution dragons in cautions.toml");
        assert!(told.lines().any(|one| one == expected), "{told}");
    }

    #[test]
    fn a_link_to_nowhere_is_named() {
        let told = told("chapters/17-year.md", |text| {
            format!("{text}\n[a](18-none.md) [b](03-survey.md#none) [c](work:none) [d](wall:none)\n")
        });
        for part in [
            "the link 18-none.md leads nowhere",
            "the link wall:none leads nowhere",
            "03-survey.md has no heading none",
            "no chapter holds the calculator none",
        ] {
            assert!(told.contains(part), "{told}");
        }
    }

    #[test]
    fn a_calculator_that_does_not_exist_or_stands_nowhere_is_named() {
        let told_unknown =
            told("chapters/17-year.md", |text| format!("{text}\n```calculator\nid = \"moon-phase\"\n```\n"));
        assert!(told_unknown.contains("there is no calculator moon-phase"), "{told_unknown}");
        let told_missing = told("chapters/06-stock.md", |text| text.replace("id = \"board-weight\"", "id = \"tins\""));
        assert!(
            told_missing.contains("the calculator board-weight stands in no chapter; its card says step 6"),
            "{told_missing}"
        );
        assert!(told_missing.contains("the calculator tins already stands in a chapter"), "{told_missing}");
    }

    #[test]
    fn a_template_that_cannot_be_read_is_a_fault() {
        let told = told("theme/templates/frame.html", |text| format!("{text}{{% if %}}"));
        assert!(told.contains("theme/templates: "), "{told}");
    }
}
