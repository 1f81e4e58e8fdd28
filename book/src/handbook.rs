//! The whole book, read and checked: order, chapters, cautions, theme, and where everything stands.

use std::collections::BTreeMap;
use std::ops::Deref;
use std::path::Path;

use calculators::catalogue::entry;
use face::Face;

use crate::cautions;
use crate::chapter::{self, Block, Chapter};
use crate::check;
use crate::check::kept;
use crate::contents::{self, Listed};
use crate::fault::{BookFault, BookFaults};
use crate::find::{self, Findable, Hit};
use crate::pole::Mark;
use crate::source::{CHAPTERS_FOLDER, Source};
use crate::theme::{self, Asset};

/// The file of the front page.
pub(crate) const FRONT: &str = "index.md";

/// A handbook that was read without a fault.
#[derive(Debug)]
pub struct Handbook {
    pub(crate) leaves: Vec<Leaf>,
    pub(crate) marks: Vec<Mark>,
    face: Face,
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
    ///
    /// Cautions and hold points of the built-in book stay whatever the folder holds, and so does the theme that shows them.
    /// # Errors
    /// Every fault of the book, with file and line; a folder that cannot be read is one.
    pub fn load(folder: &Path) -> Result<Self, BookFaults> {
        let source = Source::with_folder(folder).map_err(|error| {
            BookFaults(vec![BookFault::new(&folder.to_string_lossy(), 0, format!("cannot be read: {error}"))])
        })?;
        let built_in = Source::built_in();
        let mut faults = kept::theme_kept(&built_in, &source);
        let whole = Self::read(&built_in)?;
        match Self::read(&source.with_theme_of(&built_in)) {
            Ok(book) => {
                faults.extend(kept::kept(&whole.leaves, &book.leaves));
                if faults.is_empty() { Ok(book) } else { Err(sorted(faults)) }
            }
            Err(BookFaults(others)) => {
                faults.extend(others);
                Err(sorted(faults))
            }
        }
    }

    /// The book made of these files.
    /// # Errors
    /// Every fault of the book, with file and line.
    pub fn read(source: &Source) -> Result<Self, BookFaults> {
        let (listed, mut faults) = contents::read(source);
        let (cautions, caution_faults) = cautions::read(source);
        faults.extend(caution_faults);
        let mut leaves = Vec::with_capacity(listed.len());
        for listed in listed {
            let file = format!("{CHAPTERS_FOLDER}{}", listed.file);
            let (chapter, chapter_faults) = chapter::read(&file, source.text(&file).unwrap_or_default());
            faults.extend(chapter_faults);
            leaves.push(Leaf { listed, chapter });
        }
        let places = places(&leaves);
        check::between_files(&leaves, &cautions, &mut faults);
        theme::check(source, &mut faults);
        let theme = match theme::read(source) {
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
        Ok(Self { leaves, marks, face: Face { theme, cautions, places, numbers }, assets, findable })
    }

    /// What a reader's words lead to, best first, 24 at most.
    pub fn find(&self, query: &str) -> Vec<Hit> {
        find::find(&self.findable, query)
    }
}

/// A handbook prints calculations, exercises and sheets as its face does.
impl Deref for Handbook {
    type Target = Face;
    fn deref(&self) -> &Face {
        &self.face
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
    let calculators = leaves.iter().flat_map(|leaf| {
        leaf.calculators().map(move |(_, id)| (id.to_owned(), format!("{}#{id}", leaf.listed.path())))
    });
    let others = leaves.iter().flat_map(|leaf| {
        leaf.chapter.blocks.iter().filter_map(move |placed| {
            let (kind, name) = match &placed.block {
                Block::Reference { table } => ("table", table),
                Block::Drawing { name, .. } => ("drawing", name),
                _ => return None,
            };
            Some((format!("{kind}:{name}"), format!("{}#{kind}-{name}", leaf.listed.path())))
        })
    });
    calculators.chain(others).collect()
}

fn numbers(leaves: &[Leaf]) -> BTreeMap<String, String> {
    let all = leaves.iter().flat_map(|leaf| {
        leaf.calculators().filter_map(move |(at, id)| Some((id.to_owned(), format!("{}.{at}", leaf.listed.step?))))
    });
    all.collect()
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
                Block::Heading { level: 2 | 3, id, text } => {
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
                // Places to jump to say nothing of their own.
                Block::Prose(text) if text.is_list_of_links() => continue,
                Block::Margin { label, labelled: true, text } => format!("{label}: {}", text.words()),
                Block::Margin { text, .. } | Block::Heading { text, .. } | Block::Prose(text) | Block::Table(text) => {
                    text.words()
                }
                Block::Checks { legend, intro, items, .. } => {
                    let items: Vec<_> = items.iter().map(|item| item.text.words()).collect();
                    format!("{legend}. {} {}", intro.words(), items.join(". "))
                }
                Block::Terms(terms) => {
                    all.extend(terms.iter().map(|term| Findable {
                        path: format!("{path}#{}", term.id),
                        title: term.name.clone(),
                        place: leaf.place(),
                        also: String::new(),
                        text: term.text.words(),
                    }));
                    continue;
                }
                Block::Calculator { id, .. } => {
                    all.extend(entry(id).map(|entry| {
                        let card = entry.card();
                        Findable {
                            path: places.get(id).cloned().unwrap_or_default(),
                            title: card.question.to_owned(),
                            place: format!("{}, {}", find::CALCULATION, leaf.place().to_lowercase()),
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
    all.push(crate::practice::findable());
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

    #[test]
    fn a_template_that_cannot_be_read_is_a_fault() {
        let mut source = Source::built_in();
        let frame = source.text("theme/templates/frame.html").expect("the frame is a template").to_owned();
        source.put("theme/templates/frame.html", format!("{frame}{{% if %}}"));
        let told = Handbook::read(&source).map_or_else(|faults| faults.to_string(), |_| String::new());
        let line = frame.lines().count() + 1;
        assert!(told.starts_with(&format!("theme/templates/frame.html:{line}: ")), "{told}");
    }
}
