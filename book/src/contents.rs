//! The order of the book: `chapters/SUMMARY.md` in mdBook's layout, read with mdBook's own reader.
//!
//! A file whose name begins with two figures, `03-survey.md`, is a step of the trade sequence; all others are sheets. Steps
//! must follow each other without a gap, since they are the marks of the story pole.

use mdbook_summary::{SummaryItem, parse_summary};

use crate::fault::BookFault;
use crate::source::{CHAPTERS_FOLDER, Source};

const FILE: &str = "chapters/SUMMARY.md";

/// One line of the contents.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Listed {
    /// The name in the contents, used on the pole and in lists.
    pub(crate) name: String,
    /// The file below `chapters/`.
    pub(crate) file: String,
    /// The part it stands in, if any.
    pub(crate) part: Option<String>,
    /// The step of the trade sequence, from 1.
    pub(crate) step: Option<u8>,
}

impl Listed {
    /// Where its page stands in the site: `03-survey.md` becomes `survey.html`.
    pub(crate) fn path(&self) -> String {
        page_of(&self.file)
    }
}

/// The page of a chapter file.
pub(crate) fn page_of(file: &str) -> String {
    let stem = file.strip_suffix(".md").unwrap_or(file);
    let stem = match stem.split_at_checked(3) {
        Some((_, rest)) if step_of(file).is_some() => rest,
        _ => stem,
    };
    format!("{stem}.html")
}

fn step_of(file: &str) -> Option<u8> {
    let (figures, rest) = file.split_at_checked(2)?;
    if rest.starts_with('-') { figures.parse().ok() } else { None }
}

/// Reads the contents, and whatever is wrong with them.
pub(crate) fn read(source: &Source) -> (Vec<Listed>, Vec<BookFault>) {
    let Some(text) = source.text(FILE) else {
        return (Vec::new(), vec![BookFault::new(FILE, 1, "the book has no contents; write them in mdBook's layout")]);
    };
    let line_of =
        |needle: &str| text.lines().position(|line| line.contains(needle)).map_or(1, |line| line.saturating_add(1));
    let summary = match parse_summary(text) {
        Ok(summary) => summary,
        Err(error) => return (Vec::new(), vec![BookFault::new(FILE, 1, format!("cannot be read: {error}"))]),
    };
    let mut listed = Vec::new();
    let mut faults = Vec::new();
    let mut part = None;
    for item in summary.prefix_chapters.iter().chain(&summary.numbered_chapters).chain(&summary.suffix_chapters) {
        match item {
            SummaryItem::PartTitle(title) => part = Some(title.clone()),
            SummaryItem::Link(link) => match &link.location {
                None => faults.push(BookFault::new(FILE, line_of(&link.name), format!("{} names no file", link.name))),
                Some(location) => {
                    let file = location.to_string_lossy().replace('\\', "/");
                    if file.starts_with('/') || file.split('/').any(|step| step == "..") || file.contains(':') {
                        faults.push(BookFault::new(FILE, line_of(&file), format!("{file} lies outside the book")));
                    } else if source.text(&format!("{CHAPTERS_FOLDER}{file}")).is_none() {
                        faults.push(BookFault::new(FILE, line_of(&file), format!("there is no file chapters/{file}")));
                    } else {
                        let step = step_of(&file);
                        listed.push(Listed { name: link.name.clone(), file, part: part.clone(), step });
                    }
                }
            },
            _ => {}
        }
    }
    let steps: Vec<u8> = listed.iter().filter_map(|listed| listed.step).collect();
    if !steps.iter().copied().eq(1..=u8::try_from(steps.len()).unwrap_or(u8::MAX)) {
        let odd = listed
            .iter()
            .filter(|listed| listed.step.is_some())
            .zip(1..)
            .find(|(listed, due)| listed.step != Some(*due));
        faults.push(BookFault::new(
            FILE,
            odd.map_or(1, |(listed, _)| line_of(&listed.file)),
            format!("steps must run 1, 2, 3 and so on without a gap; they run {steps:?}"),
        ));
    }
    (listed, faults)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_is_named_without_its_number() {
        assert_eq!(page_of("03-survey.md"), "survey.html");
        assert_eq!(page_of("wall.md"), "wall.html");
        assert_eq!(page_of("1a.md"), "1a.html");
    }

    #[test]
    fn a_chapter_outside_the_book_is_refused() {
        let mut source = Source::default();
        source.put(FILE, "# Contents\n\n- [One](../01-one.md)\n- [Two](/etc/two.md)\n- [Three](03-three.md)\n");
        let (listed, faults) = read(&source);
        assert!(listed.is_empty());
        let told: Vec<_> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(
            told,
            [
                "chapters/SUMMARY.md:3: ../01-one.md lies outside the book",
                "chapters/SUMMARY.md:4: /etc/two.md lies outside the book",
                "chapters/SUMMARY.md:5: there is no file chapters/03-three.md",
            ]
        );
    }
}
