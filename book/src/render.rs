//! From the book to the site: every page, once in inches and once in millimetres.

use calculators::catalogue::entry;
use calculators::quantity::Units;
use serde::Serialize;
use serde_json::Value;

use crate::chapter::{Block, Placed};
use crate::find::Hit;
use crate::handbook::{FRONT, Handbook, Leaf};
use crate::invitation::WALL_PLAN;
use crate::page::{LIGHT_SLOT, Page};
use crate::pole::Pole;
use crate::prose::Setting;
use crate::theme::Asset;
use face::calculation::{self, Outcome};
use face::drawing::plates;

/// All pages of the book in one unit system, and the files they ask for.
#[derive(Clone, Debug)]
pub struct Site {
    /// The unit system of every page.
    pub units: Units,
    /// The pages, in the order of the book.
    pub pages: Vec<Page>,
    /// Style sheet, scripts, fonts.
    pub assets: Vec<Asset>,
}

/// What every page has around it.
#[derive(Debug, Serialize)]
pub(crate) struct Frame {
    pub(crate) title: String,
    /// Named beside the book's name in the running head.
    pub(crate) here: String,
    pub(crate) units: &'static str,
    light: &'static str,
    /// Leads from the page to the site's root: empty, or `../`.
    pub(crate) root: &'static str,
    /// The page the switches of the head come back to, from the root.
    pub(crate) back: String,
    pub(crate) front: bool,
    /// The form that the unit switch sends along, so that a change of units loses nothing that was typed.
    pub(crate) turned: Option<Turned>,
    /// A file by itself: no links into the book, no switches.
    pub(crate) bare: bool,
    pub(crate) pole: Pole,
    pub(crate) step: Option<u8>,
    pub(crate) scripts: Vec<&'static str>,
}

/// Renders the whole book into memory.
pub fn render(book: &Handbook, units: Units) -> Site {
    let pages = book.leaves.iter().map(|leaf| book.leaf_page(leaf, units)).collect();
    Site { units, pages, assets: book.assets.clone() }
}

#[derive(Serialize)]
struct ChapterView<'a> {
    frame: &'a Frame,
    title: &'a str,
    lead: String,
    needs: Vec<Need>,
    body: String,
}

#[derive(Serialize)]
struct Need {
    label: String,
    text: String,
}

/// A form that is asked again when the units are changed.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct Turned {
    /// Its id on the page.
    pub(crate) form: String,
    /// Where it is posted.
    pub(crate) address: String,
    /// Name of the button.
    pub(crate) name: &'static str,
    /// What stands before the unit system in the button's value.
    pub(crate) verb: &'static str,
}

#[derive(Serialize)]
struct FindView<'a> {
    frame: &'a Frame,
    query: &'a str,
    hits: Vec<Hit>,
}

#[derive(Serialize)]
struct MessageView<'a> {
    frame: &'a Frame,
    title: &'a str,
    said: &'a str,
}

impl Handbook {
    pub(crate) fn setting(&self, units: Units) -> Setting<'_> {
        Setting { units, places: &self.places }
    }

    pub(crate) fn frame(&self, title: &str, step: Option<u8>, back: &str, units: Units) -> Frame {
        Frame {
            title: if title == "Benchleaf" {
                "Benchleaf, a method book that calculates".to_owned()
            } else {
                format!("{title} · Benchleaf")
            },
            here: title.to_owned(),
            units: units.word(),
            light: LIGHT_SLOT,
            root: "",
            back: back.to_owned(),
            front: false,
            turned: None,
            bare: false,
            pole: Pole::at(&self.marks, step),
            step,
            scripts: vec!["choices.js", "ticks.js", "lay-out.js"],
        }
    }

    fn leaf_page(&self, leaf: &Leaf, units: Units) -> Page {
        if leaf.listed.file == FRONT { self.front_page(leaf, units) } else { self.chapter_page(leaf, units) }
    }

    fn chapter_page(&self, leaf: &Leaf, units: Units) -> Page {
        let setting = self.setting(units);
        let path = leaf.listed.path();
        let mut frame = self.frame(&leaf.chapter.title, leaf.listed.step, &format!("/{path}"), units);
        if leaf.calculators().next().is_some() {
            frame.scripts.extend(["work.js", "turn.js"]);
        }
        if leaf.chapter.blocks.iter().any(|placed| matches!(placed.block, Block::Practice { .. })) {
            frame.scripts.extend(["practice.js", "exercise.js"]);
        }
        let needs = leaf.chapter.needs.iter();
        let view = ChapterView {
            frame: &frame,
            title: &leaf.chapter.title,
            lead: leaf.chapter.lead.html(setting),
            needs: needs.map(|(label, text)| Need { label: label.clone(), text: text.html(setting) }).collect(),
            body: self.body(leaf, units),
        };
        Page::new(path, &self.theme.fill("chapter.html", &view))
    }

    /// The page that answers a search: what was found, or how to ask again.
    pub fn find_page(&self, query: &str, units: Units) -> Page {
        let mut frame = self.frame("Find", None, "/", units);
        frame.scripts.push("find.js");
        let query: String = query.chars().take(200).collect();
        let view = FindView { frame: &frame, query: &query, hits: self.find(&query) };
        Page::new("find", &self.theme.fill("find.html", &view))
    }

    /// A page that says one thing, such as that nothing stands at an address. Links in it lead from the site's root.
    pub fn message_page(&self, title: &str, said: &str, units: Units) -> Page {
        let mut frame = self.frame(title, None, "/", units);
        frame.root = "/";
        Page::new("message", &self.theme.fill("message.html", &MessageView { frame: &frame, title, said }))
    }

    /// The blocks of a chapter in sections, one to each heading of the second level.
    fn body(&self, leaf: &Leaf, units: Units) -> String {
        let mut out = String::new();
        let mut open = false;
        let mut told: Vec<&str> = Vec::new();
        for placed in &leaf.chapter.blocks {
            if let Block::Caution { key } = &placed.block {
                told.push(key);
            }
            let heading = matches!(placed.block, Block::Heading { level: 2, .. });
            if heading || !open {
                if open {
                    out.push_str("</section>\n");
                }
                out.push_str(if heading {
                    "<section class=\"section\">\n"
                } else {
                    "<section class=\"section opening\">\n"
                });
                open = true;
            }
            out.push_str(&self.block(leaf, placed, &told, units));
        }
        if open {
            out.push_str("</section>\n");
        }
        out
    }

    fn block(&self, leaf: &Leaf, placed: &Placed, told: &[&str], units: Units) -> String {
        let setting = self.setting(units);
        match &placed.block {
            Block::Heading { level, id, text } => {
                format!("<h{level} id=\"{id}\">{}</h{level}>\n", text.html(setting))
            }
            Block::Prose(text) if text.is_list_of_links() => {
                let letters = if text.words().split_whitespace().all(|word| word.len() < 3) { " letters" } else { "" };
                format!("<nav class=\"jumps{letters} wide\" aria-label=\"On this page\">{}</nav>\n", text.html(setting))
            }
            Block::Prose(text) => text.html(setting),
            Block::Table(text) => format!(
                "<div class=\"tablewrap worded wide\" role=\"group\" aria-label=\"Table\" tabindex=\"0\">{}</div>\n",
                text.html(setting)
            ),
            Block::Margin { label, labelled, text } => {
                self.theme.fill("margin.html", &MarginView { label, labelled: *labelled, text: text.html(setting) })
            }
            Block::Checks { legend, hold, intro, items } => {
                let items = items.iter().map(|item| CheckView { key: &item.key, text: item.text.html(setting) });
                let view = ChecksView {
                    chapter: leaf.listed.path().trim_end_matches(".html").to_owned(),
                    legend,
                    hold: *hold,
                    intro: intro.html(setting),
                    items: items.collect(),
                };
                self.theme.fill("checks.html", &view)
            }
            Block::Caution { key } => self.caution(key),
            Block::Calculator { id, values } => self.worked(id, values, told, units),
            Block::Reference { table } => self.reference_table(table, units),
            Block::Drawing { name, values } => {
                plates::draw(name, values, units).map(|plate| plate.html(name)).unwrap_or_default()
            }
            Block::Look { id, values, show } => self.look(id, values, show, units),
            Block::Practice { id } => self.exercise_in_chapter(id, units),
            Block::Terms(terms) => {
                let terms =
                    terms.iter().map(|term| TermView { id: &term.id, name: &term.name, text: term.text.html(setting) });
                self.theme.fill("terms.html", &TermsView { terms: terms.collect() })
            }
        }
    }

    /// A calculation with its worked example in it, or with the chapter's own values laid over that.
    fn worked(&self, id: &str, values: &Value, told: &[&str], units: Units) -> String {
        let Some(entry) = entry(id) else { return String::new() };
        if id == WALL_PLAN {
            return self.wall_invitation(entry, units);
        }
        let mut input = entry.example(units).input.clone();
        let own = values.get(units.word()).unwrap_or(values);
        if let (Some(input), Some(own)) = (input.as_object_mut(), own.as_object()) {
            input.extend(own.iter().map(|(name, value)| (name.clone(), value.clone())));
        }
        let setting = calculation::Setting { root: "", level: 3, focus: false, told };
        match entry.work(&input, units) {
            Ok(answer) => self.calculation(entry, &input, Outcome::Answer(&answer), units, setting),
            Err(faults) => self.calculation(entry, &input, Outcome::Faults(&faults), units, setting),
        }
    }
}

#[derive(Serialize)]
struct MarginView<'a> {
    label: &'a str,
    labelled: bool,
    text: String,
}

#[derive(Serialize)]
struct ChecksView<'a> {
    chapter: String,
    legend: &'a str,
    hold: bool,
    intro: String,
    items: Vec<CheckView<'a>>,
}

#[derive(Serialize)]
struct TermsView<'a> {
    terms: Vec<TermView<'a>>,
}

#[derive(Serialize)]
struct TermView<'a> {
    id: &'a str,
    name: &'a str,
    text: String,
}

#[derive(Serialize)]
struct CheckView<'a> {
    key: &'a str,
    text: String,
}
