//! A chapter as it is written: plain Markdown with a few conventions, taken apart into blocks.
//!
//! The conventions stand in the crate's documentation. Nothing is printed here; a chapter is read once and printed twice.

use std::ops::Range;

use pulldown_cmark::{CodeBlockKind, Event, HeadingLevel, Options, Parser, Tag, TagEnd};

use crate::cautions::line_at;
use crate::fault::BookFault;
use crate::fence;
use crate::pieces::{block_end, bold_beginning, inside, items, labelled, slug, uneven_rows};
use crate::prose::Text;

/// A chapter taken apart.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Chapter {
    /// Its title, from the one first-level heading.
    pub(crate) title: String,
    /// What it is for: the first paragraph.
    pub(crate) lead: Text,
    /// What is known, to hand, left behind: the list with bold beginnings that follows the lead.
    pub(crate) needs: Vec<(String, Text)>,
    /// A wait that follows the step.
    pub(crate) wait: Option<Text>,
    /// Everything else, in order.
    pub(crate) blocks: Vec<Placed>,
    /// Every link with its line.
    pub(crate) links: Vec<(usize, String)>,
}

/// A block with the line it begins on.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Placed {
    pub(crate) line: usize,
    pub(crate) block: Block,
}

/// What a chapter is made of.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Block {
    /// A heading of the second or third level.
    Heading { level: u8, id: String, text: Text },
    /// Paragraphs, lists.
    Prose(Text),
    /// A table.
    Table(Text),
    /// A note for the margin, under its label or beginning with it.
    Margin { label: String, labelled: bool, text: Text },
    /// A check list, or a hold point when the work must stop there.
    Checks { legend: String, hold: bool, intro: Text, items: Vec<Check> },
    /// A caution of the register.
    Caution { key: String },
    /// A calculator, perhaps with values other than its worked example's.
    Calculator { id: String, values: serde_json::Value },
    /// A generated reference table.
    Reference { table: String },
    /// A drawing, perhaps with values other than its calculation's worked example.
    Drawing { name: String, values: serde_json::Value },
    /// A calculator's answer in one line, with the way to it.
    Look { id: String, values: serde_json::Value, show: Vec<String> },
    /// An exercise, with the numbers of a seed.
    Practice { id: String },
    /// Terms and what they mean.
    Terms(Vec<Term>),
}

impl Block {
    fn terms(labelled: Vec<(String, Text)>) -> Self {
        Self::Terms(labelled.into_iter().map(|(name, text)| Term { id: slug(&name), name, text }).collect())
    }
}

/// A word of the trade and what it means.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Term {
    /// Its anchor on the page.
    pub(crate) id: String,
    /// The word.
    pub(crate) name: String,
    /// What it means.
    pub(crate) text: Text,
}

/// One row of a check list.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Check {
    /// Its key, stable when the words change.
    pub(crate) key: String,
    /// Its words.
    pub(crate) text: Text,
}

/// Takes a chapter apart, and tells whatever is wrong with it.
pub(crate) fn read(file: &str, markdown: &str) -> (Chapter, Vec<BookFault>) {
    let options = Options::ENABLE_TABLES | Options::ENABLE_TASKLISTS | Options::ENABLE_SMART_PUNCTUATION;
    let events: Vec<(Event<'static>, Range<usize>)> = Parser::new_ext(markdown, options)
        .into_offset_iter()
        .map(|(event, range)| (event.into_static(), range))
        .collect();
    let mut reader = Reader { file, markdown, chapter: Chapter::default(), faults: Vec::new(), keys: Vec::new() };
    let mut rest = events.as_slice();
    while let Some((_, range)) = rest.first() {
        let (block, after) = rest.split_at(block_length(rest));
        reader.block(line_at(markdown, range.start), block);
        rest = after;
    }
    if reader.chapter.title.is_empty() {
        reader.fault(1, "a chapter begins with one heading of the first level");
    }
    (reader.chapter, reader.faults)
}

/// How many events the first block takes.
fn block_length(events: &[(Event<'static>, Range<usize>)]) -> usize {
    let mut depth = 0_usize;
    for (at, (event, _)) in events.iter().enumerate() {
        match event {
            Event::Start(_) => depth += 1,
            Event::End(_) => depth = depth.saturating_sub(1),
            _ => {}
        }
        if depth == 0 {
            return at + 1;
        }
    }
    events.len()
}

struct Reader<'a> {
    file: &'a str,
    markdown: &'a str,
    chapter: Chapter,
    faults: Vec<BookFault>,
    keys: Vec<String>,
}

impl Reader<'_> {
    fn fault(&mut self, line: usize, what: impl Into<String>) {
        self.faults.push(BookFault::new(self.file, line, what));
    }

    fn place(&mut self, line: usize, block: Block) {
        self.chapter.blocks.push(Placed { line, block });
    }

    fn block(&mut self, line: usize, placed: &[(Event<'static>, Range<usize>)]) {
        for (event, range) in placed {
            match event {
                Event::Html(_) | Event::InlineHtml(_) => {
                    self.fault(line_at(self.markdown, range.start), "chapters hold no HTML; write plain Markdown");
                    return;
                }
                Event::Start(Tag::Link { dest_url, .. }) => {
                    self.chapter.links.push((line_at(self.markdown, range.start), dest_url.to_string()));
                }
                _ => {}
            }
        }
        let events: Vec<Event<'static>> = placed.iter().map(|(event, _)| event.clone()).collect();
        match &events[0] {
            Event::Start(Tag::Heading { level: HeadingLevel::H1, .. }) => {
                if !self.chapter.title.is_empty() {
                    self.fault(line, "a chapter has one heading of the first level only");
                }
                self.chapter.title = inside(&events).words();
            }
            Event::Start(Tag::Heading { level, .. }) => {
                let text = inside(&events);
                let id = slug(&text.words());
                self.place(line, Block::Heading { level: *level as u8, id, text });
            }
            Event::Start(Tag::Paragraph) if self.chapter.blocks.is_empty() && self.chapter.lead.is_empty() => {
                self.chapter.lead = inside(&events);
            }
            Event::Start(Tag::List(None)) if self.chapter.blocks.is_empty() && self.needs_list(&events) => {}
            Event::Start(Tag::List(_)) if events.iter().any(|event| matches!(event, Event::TaskListMarker(_))) => {
                let legend = self.last_heading();
                let items = self.check_items(line, &events);
                self.place(line, Block::Checks { legend, hold: false, intro: Text::default(), items });
            }
            Event::Start(Tag::List(None)) => {
                let block = labelled(&events).map_or_else(|| Block::Prose(Text(events.clone())), Block::terms);
                self.place(line, block);
            }
            Event::Start(Tag::BlockQuote(_)) => self.quote(line, &events),
            Event::Start(Tag::CodeBlock(CodeBlockKind::Fenced(kind))) => {
                let body = inside(&events).0.iter().fold(String::new(), |mut body, event| {
                    if let Event::Text(text) = event {
                        body.push_str(text);
                    }
                    body
                });
                match fence::read(kind, &body) {
                    Ok(block) => self.place(line, block),
                    Err((below, what)) => self.fault(line + below, what),
                }
            }
            Event::Start(Tag::Table(_)) => {
                for (row, cells, heads) in
                    placed.first().map_or_else(Vec::new, |(_, range)| uneven_rows(&self.markdown[range.clone()]))
                {
                    let what =
                        format!("this row has {cells} cells under {heads} heads; a bar inside a cell is written \\|");
                    self.fault(line + row, what);
                }
                self.place(line, Block::Table(Text(events)));
            }
            _ => self.place(line, Block::Prose(Text(events))),
        }
    }

    fn last_heading(&self) -> String {
        let headings = self.chapter.blocks.iter().rev();
        let found = headings.into_iter().find_map(|placed| match &placed.block {
            Block::Heading { text, .. } => Some(text.words()),
            _ => None,
        });
        found.unwrap_or_else(|| "Check".to_owned())
    }

    /// Takes the list of what is known, to hand and left behind; false when the list is an ordinary one.
    fn needs_list(&mut self, events: &[Event<'static>]) -> bool {
        let Some(needs) = labelled(events) else { return false };
        for (label, text) in needs {
            if label.eq_ignore_ascii_case("wait after") {
                self.chapter.wait = Some(text);
            } else {
                self.chapter.needs.push((label, text));
            }
        }
        true
    }

    /// A quotation with a bold beginning is a margin note, or a hold point when it says so.
    fn quote(&mut self, line: usize, events: &[Event<'static>]) {
        let content = inside(events).0;
        let first = block_end(&content);
        let opening = content.get(..first).map(|block| inside(block).0).unwrap_or_default();
        let Some((label, beginning)) = bold_beginning(&opening) else {
            self.place(line, Block::Prose(Text(events.to_vec())));
            return;
        };
        // A label is a sentence of its own; bold words that begin a sentence stay in it.
        let is_label = label.ends_with(['.', ':', '?', '!']) || label.starts_with("Hold point");
        let label = label.trim_end_matches(['.', ':']).to_owned();
        let beginning = if is_label { beginning } else { Text(opening) };
        let mut text = Vec::new();
        if !beginning.is_empty() {
            text.push(Event::Start(Tag::Paragraph));
            text.extend(beginning.0);
            text.push(Event::End(TagEnd::Paragraph));
        }
        let rest = content.get(first..).unwrap_or_default();
        if !label.starts_with("Hold point") {
            text.extend_from_slice(rest);
            self.place(line, Block::Margin { label, labelled: is_label, text: Text(text) });
            return;
        }
        let list = rest.iter().position(|event| matches!(event, Event::Start(Tag::List(_)))).unwrap_or(rest.len());
        let (before, list) = rest.split_at(list);
        text.extend_from_slice(before);
        let items = self.check_items(line, list);
        self.place(line, Block::Checks { legend: label, hold: true, intro: Text(text), items });
    }

    fn check_items(&mut self, line: usize, events: &[Event<'static>]) -> Vec<Check> {
        let mut checks = Vec::new();
        for mut item in items(events) {
            item.retain(|event| {
                !matches!(
                    event,
                    Event::TaskListMarker(_) | Event::Start(Tag::Paragraph) | Event::End(TagEnd::Paragraph)
                )
            });
            let key = match item.first_mut() {
                Some(Event::Text(text)) => match text.strip_prefix('{').and_then(|text| text.split_once('}')) {
                    Some((key, rest)) => {
                        let (key, rest) = (key.to_owned(), rest.trim_start().to_owned());
                        *text = rest.into();
                        Some(key)
                    }
                    None => None,
                },
                _ => None,
            };
            let words = Text(item.clone()).words();
            match key {
                None => self.fault(line, format!("the check \"{words}\" has no key; begin it with one: {{like-this}}")),
                Some(key) if self.keys.contains(&key) => {
                    self.fault(line, format!("the check key {key} stands twice in this chapter"));
                }
                Some(key) => {
                    self.keys.push(key.clone());
                    checks.push(Check { key, text: Text(item) });
                }
            }
        }
        if checks.is_empty() {
            self.fault(line, "a check list or hold point needs at least one check: - [ ] {key} words");
        }
        checks
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WHOLE: &str = "# Set out\n\nEvery board gets its place.\n\n- **Known by now**: the run\n- **Wait after**: none\n\n\
        ## In this order\n\n1. Strike the line.\n2. Mark.\n\n> **Why the line.** Floors fall.\n\n> **Hold point: before the saw**\n>\n\
        > Stop here.\n>\n> - [ ] {marks-read} All marks read\n\n```caution\nkey = \"laser-light\"\n```\n";

    #[test]
    fn a_chapter_comes_apart_into_its_blocks() {
        let (chapter, faults) = read("chapters/08-set-out.md", WHOLE);
        assert_eq!(faults, []);
        assert_eq!(chapter.title, "Set out");
        assert_eq!(chapter.lead.words(), "Every board gets its place.");
        assert_eq!(chapter.needs[0].0, "Known by now");
        assert_eq!(chapter.needs[0].1.words(), "the run");
        assert_eq!(chapter.wait.as_ref().map(Text::words).as_deref(), Some("none"));
        let kinds: Vec<_> = chapter.blocks.iter().map(|placed| &placed.block).collect();
        assert!(matches!(kinds[0], Block::Heading { level: 2, id, .. } if id == "in-this-order"));
        assert!(matches!(kinds[1], Block::Prose(_)));
        assert!(
            matches!(kinds[2], Block::Margin { label, labelled: true, text } if label == "Why the line" && text.words() == "Floors fall.")
        );
        assert!(matches!(kinds[3], Block::Checks { hold: true, legend, items, .. }
            if legend == "Hold point: before the saw" && items[0].key == "marks-read" && items[0].text.words() == "All marks read"));
        assert!(matches!(kinds[4], Block::Caution { key } if key == "laser-light"));
        assert_eq!(chapter.blocks[4].line, 21);
    }

    #[test]
    fn bold_words_that_begin_a_sentence_stay_in_it() {
        let (chapter, _) = read("chapters/x.md", "# T\n\nLead.\n\n> **Spread** is a width.\n");
        assert!(
            matches!(&chapter.blocks[0].block, Block::Margin { labelled: false, text, .. } if text.words() == "Spread is a width.")
        );
    }

    #[test]
    fn a_list_that_begins_in_bold_throughout_is_a_list_of_terms() {
        let (chapter, faults) = read(
            "chapters/x.md",
            "# T\n\nLead.\n\n## B\n\n- **Clear bay**: the opening.\n- **Base**: the foot.\n\n## C\n\n- **Cap**: a strip.\n- a plain line\n",
        );
        assert_eq!(faults, []);
        let names: Vec<_> = chapter
            .blocks
            .iter()
            .filter_map(|placed| match &placed.block {
                Block::Terms(terms) => {
                    Some(terms.iter().map(|term| (term.id.as_str(), term.text.words())).collect::<Vec<_>>())
                }
                _ => None,
            })
            .collect();
        assert_eq!(names, [[("clear-bay", "the opening.".to_owned()), ("base", "the foot.".to_owned())]]);
    }

    #[test]
    fn a_row_with_a_cell_too_many_is_named_with_its_line() {
        let (_, faults) = read(
            "chapters/x.md",
            "# T\n\nLead.\n\n| A | B |\n| --- | --- |\n| `1 in | 25 mm` | c |\n| `1 in \\| 25 mm` | c |\n| d |\n",
        );
        let told: Vec<_> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(
            told,
            [
                "chapters/x.md:7: this row has 3 cells under 2 heads; a bar inside a cell is written \\|",
                "chapters/x.md:9: this row has 1 cells under 2 heads; a bar inside a cell is written \\|"
            ]
        );
    }

    #[test]
    fn only_a_list_of_nothing_but_links_is_a_row_of_jumps() {
        let check = |list: &str, expected: bool| {
            let (chapter, _) = read("chapters/x.md", &format!("# T\n\nLead.\n\n{list}"));
            let Some(Placed { block: Block::Prose(text), .. }) = chapter.blocks.first() else { panic!("{list}") };
            assert_eq!(text.is_list_of_links(), expected, "{list}");
        };
        check("- [one](#one)\n- [two `2 in`](#two)\n", true);
        check("- [one](#one) and more\n", false);
        check("- words\n", false);
        check("1. [one](#one)\n", false);
    }

    #[test]
    fn faults_name_their_line() {
        let text = "# T\n\nLead.\n\n## Check\n\n- [ ] no key here\n\n<b>no</b>\n\n```caution\nkey =\n```\n\n```magic\na = 1\n```\n";
        let (_, faults) = read("chapters/x.md", text);
        let lines: Vec<_> = faults.iter().map(|fault| fault.line).collect();
        assert_eq!(lines, [7, 7, 9, 12, 15], "{faults:?}");
    }
}
