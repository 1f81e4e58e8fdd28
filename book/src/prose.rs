//! Running text: Markdown events to HTML in one unit system, and to plain words for the index.
//!
//! Chapters hold plain Markdown and no HTML, so a shop's own chapter can put no script on a page.

use std::collections::BTreeMap;

use calculators::quantity::Units;
use pulldown_cmark::{Alignment, CowStr, Event, Tag, TagEnd, html::push_html};

use crate::contents::page_of;
use crate::invitation::wall_address;
use face::figure;

/// What running text needs to know of its surroundings.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Setting<'a> {
    /// The reader's units.
    pub(crate) units: Units,
    /// Where each calculator stands: `survey.html#closing-check` by id.
    pub(crate) places: &'a BTreeMap<String, String>,
}

/// A stretch of Markdown, read once and printed in either unit system.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Text(pub(crate) Vec<Event<'static>>);

impl Text {
    /// Its HTML.
    pub(crate) fn html(&self, setting: Setting<'_>) -> String {
        let mut printer =
            Printer { setting, lists: 0, columns: Vec::new(), column: 0, in_head: false, heads: Vec::new() };
        let mut out = String::new();
        push_html(&mut out, self.0.iter().map(|event| printer.print(event)));
        out
    }

    /// Its words without marks, figures as they are written.
    pub(crate) fn words(&self) -> String {
        let mut out = String::new();
        for event in &self.0 {
            match event {
                Event::Text(text) | Event::Code(text) => out.push_str(text),
                Event::SoftBreak | Event::HardBreak if !out.ends_with(' ') => out.push(' '),
                event if block_ends(event) => out.push(' '),
                _ => {}
            }
        }
        out.trim().to_owned()
    }

    /// Its links to calculators: the words of the link and the calculator's id.
    pub(crate) fn calculators(&self) -> Vec<(String, String)> {
        let mut found: Vec<(String, String)> = Vec::new();
        let mut inside = false;
        for event in &self.0 {
            match event {
                Event::Start(Tag::Link { dest_url, .. }) => {
                    let id = dest_url.strip_prefix("work:");
                    inside = id.is_some();
                    found.extend(id.map(|id| (String::new(), id.to_owned())));
                }
                Event::End(TagEnd::Link) => inside = false,
                Event::Text(text) if inside => {
                    if let Some((words, _)) = found.last_mut() {
                        words.push_str(text);
                    }
                }
                _ => {}
            }
        }
        found
    }

    /// Whether it is a list in which every item is a link and nothing else: places to jump to.
    pub(crate) fn is_list_of_links(&self) -> bool {
        let Some(Event::Start(Tag::List(None))) = self.0.first() else { return false };
        let (mut items, mut links, mut inside) = (0, 0, false);
        for event in &self.0 {
            match event {
                Event::Start(Tag::Item) => items += 1,
                Event::Start(Tag::Link { .. }) => (links, inside) = (links + 1, true),
                Event::End(TagEnd::Link) => inside = false,
                Event::Text(_) | Event::Code(_) if !inside => return false,
                _ => {}
            }
        }
        items == links
    }

    /// Whether nothing is left to print.
    pub(crate) fn is_empty(&self) -> bool {
        self.words().is_empty()
    }
}

fn block_ends(event: &Event<'_>) -> bool {
    matches!(event, Event::End(TagEnd::Paragraph | TagEnd::Item | TagEnd::TableCell | TagEnd::Heading(_)))
}

/// Where a link in a chapter leads on the site.
pub(crate) fn link_target(dest: &str, places: &BTreeMap<String, String>) -> String {
    if let Some(id) = dest.strip_prefix("work:") {
        return places.get(id).cloned().unwrap_or_default();
    }
    if dest.starts_with("table:") || dest.starts_with("drawing:") {
        return places.get(dest).cloned().unwrap_or_default();
    }
    if let Some(address) = wall_address(dest) {
        return address.to_owned();
    }
    match dest.split_once('#') {
        Some((file, anchor)) if file.ends_with(".md") => format!("{}#{anchor}", page_of(file)),
        None if dest.ends_with(".md") => page_of(dest),
        _ => dest.to_owned(),
    }
}

struct Printer<'a> {
    setting: Setting<'a>,
    lists: usize,
    columns: Vec<Alignment>,
    column: usize,
    in_head: bool,
    /// The words over each column, which a narrow page prints beside each cell.
    heads: Vec<String>,
}

impl Printer<'_> {
    fn print(&mut self, event: &Event<'static>) -> Event<'static> {
        match event {
            Event::Code(code) => match figure::in_prose(code, self.setting.units) {
                Some(html) => Event::InlineHtml(html.into()),
                None => event.clone(),
            },
            Event::Start(Tag::Link { link_type, dest_url, title, id }) => Event::Start(Tag::Link {
                link_type: *link_type,
                dest_url: link_target(dest_url, self.setting.places).into(),
                title: title.clone(),
                id: id.clone(),
            }),
            Event::Start(Tag::List(start)) => {
                self.lists += 1;
                match start {
                    Some(_) if self.lists == 1 => html("<ol class=\"steps\">\n"),
                    _ => event.clone(),
                }
            }
            Event::End(TagEnd::List(_)) => {
                self.lists = self.lists.saturating_sub(1);
                event.clone()
            }
            Event::Start(Tag::Table(alignments)) => {
                self.columns.clone_from(alignments);
                self.heads.clear();
                html("<table>\n")
            }
            Event::End(TagEnd::Table) => html("</tbody></table>\n"),
            Event::Text(text) if self.in_head => {
                if let Some(head) = self.heads.last_mut() {
                    head.push_str(text);
                }
                event.clone()
            }
            Event::Start(Tag::TableHead) => {
                (self.in_head, self.column) = (true, 0);
                html("<thead><tr>")
            }
            Event::End(TagEnd::TableHead) => {
                self.in_head = false;
                html("</tr></thead><tbody>\n")
            }
            Event::Start(Tag::TableRow) => {
                self.column = 0;
                html("<tr>")
            }
            Event::End(TagEnd::TableRow) => html("</tr>\n"),
            Event::Start(Tag::TableCell) => {
                let class = match self.columns.get(self.column) {
                    Some(Alignment::Right) => " class=\"number\"",
                    _ => "",
                };
                if self.in_head {
                    self.heads.push(String::new());
                }
                let label = figure::escape(self.heads.get(self.column).map_or("", String::as_str));
                html(match (self.in_head, self.column) {
                    (true, _) => format!("<th scope=\"col\"{class}>"),
                    (false, 0) => format!("<th scope=\"row\"{class}>"),
                    _ => format!("<td{class} data-label=\"{label}\">"),
                })
            }
            Event::End(TagEnd::TableCell) => {
                let row_head = self.in_head || self.column == 0;
                self.column += 1;
                html(if row_head { "</th>" } else { "</td>" })
            }
            other => other.clone(),
        }
    }
}

fn html(text: impl Into<CowStr<'static>>) -> Event<'static> {
    Event::InlineHtml(text.into())
}
