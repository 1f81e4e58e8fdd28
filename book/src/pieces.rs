//! Cutting a stretch of Markdown events into the pieces that a chapter's conventions name.

use pulldown_cmark::{Event, Tag};

use crate::prose::Text;

/// The events between the first and the last one.
pub(crate) fn inside(events: &[Event<'static>]) -> Text {
    Text(events.get(1..events.len().saturating_sub(1)).unwrap_or_default().to_vec())
}

/// How many events the first block takes.
pub(crate) fn block_end(events: &[Event<'static>]) -> usize {
    let mut depth = 0_usize;
    for (at, event) in events.iter().enumerate() {
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

/// The items of a list, each without its own start and end.
pub(crate) fn items(list: &[Event<'static>]) -> Vec<Vec<Event<'static>>> {
    let mut found = Vec::new();
    let mut rest = inside(list).0;
    while !rest.is_empty() {
        let end = block_end(&rest);
        let after = rest.split_off(end);
        found.push(inside(&rest).0);
        rest = after;
    }
    found
}

/// Splits `**Label:** words` into the label and the words.
pub(crate) fn bold_beginning(events: &[Event<'static>]) -> Option<(String, Text)> {
    let events: Vec<_> = match events.first() {
        Some(Event::Start(Tag::Paragraph)) => inside(events).0,
        _ => events.to_vec(),
    };
    if !matches!(events.first(), Some(Event::Start(Tag::Strong))) {
        return None;
    }
    let end = block_end(&events);
    let label = Text(events.get(..end)?.to_vec()).words();
    let mut rest = events.get(end..)?.to_vec();
    if let Some(Event::Text(text)) = rest.first_mut() {
        *text = text.trim_start_matches([':', '.', ' ']).to_owned().into();
    }
    Some((label, Text(rest)))
}

/// Labels and words of a list in which every item begins in bold; nothing for any other list.
pub(crate) fn labelled(list: &[Event<'static>]) -> Option<Vec<(String, Text)>> {
    let each = items(list).into_iter().map(|item| {
        let (label, text) = bold_beginning(&item)?;
        Some((label.trim_end_matches(['.', ':']).to_owned(), text))
    });
    each.collect()
}

/// Rows of a table in Markdown whose cells are not as many as the heads: row from 0, cells, heads.
///
/// Markdown drops what is too much without a word. A bar parts cells even inside backquotes, unless it is escaped.
pub(crate) fn uneven_rows(table: &str) -> Vec<(usize, usize, usize)> {
    let cells = |row: &str| {
        let row = row.trim().trim_start_matches('>').trim();
        let row = row.strip_prefix('|').unwrap_or(row);
        let row = row.strip_suffix('|').filter(|cut| !cut.ends_with('\\')).unwrap_or(row);
        let escaped = row.matches("\\|").count();
        row.matches('|').count() - escaped + 1
    };
    let heads = table.lines().next().map_or(0, cells);
    let rows = table.lines().enumerate().filter(|(_, row)| !row.trim().is_empty());
    rows.map(|(at, row)| (at, cells(row), heads)).filter(|(_, cells, heads)| cells != heads).collect()
}

/// A heading's anchor: its words in lower case, joined by hyphens.
pub(crate) fn slug(words: &str) -> String {
    let mut out = String::new();
    for sign in words.chars() {
        if sign.is_alphanumeric() {
            out.extend(sign.to_lowercase());
        } else if !out.ends_with('-') && !out.is_empty() {
            out.push('-');
        }
    }
    out.trim_end_matches('-').to_owned()
}
