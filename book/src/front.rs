//! The front page: the name, one number now, the bench, and the whole sequence on one stick.

use calculators::catalogue::entry;
use calculators::quantity::Units;
use serde::Serialize;

use crate::chapter::Block;
use crate::handbook::{FRONT, Handbook, Leaf};
use crate::page::Page;
use crate::render::Frame;

#[derive(Serialize)]
struct FrontView<'a> {
    frame: &'a Frame,
    /// Written into the section drawing, without its unit.
    board_width: &'static str,
    title: &'a str,
    lead: String,
    sequence: Vec<StepLine>,
    /// Calculators to look up at once, as the front page's chapter lists them, each with its number in the book.
    numbers: Vec<SheetLine>,
    /// The wall sheet with each practice wall, and with an empty one.
    walls: [WallLine; 5],
    sheets: Vec<SheetLine>,
}

#[derive(Serialize)]
struct WallLine {
    name: &'static str,
    path: &'static str,
    mark: &'static str,
}

/// Addresses of the wall sheet, as the front page lists them.
const WALLS: [WallLine; 5] = [
    WallLine { name: "A wall of your own", path: "/wall?wall=new", mark: "begin" },
    WallLine { name: "Practice wall A: plain, two inside corners", path: "/wall?wall=a", mark: "A" },
    WallLine { name: "Practice wall B: two windows and a switch", path: "/wall?wall=b", mark: "B" },
    WallLine { name: "Practice wall C: up a stair", path: "/wall?wall=c", mark: "C" },
    WallLine { name: "Practice: the trade’s questions with fresh numbers", path: "/practice", mark: "learn" },
];

#[derive(Serialize)]
struct StepLine {
    number: u8,
    name: String,
    path: String,
    lead: String,
    part: Option<String>,
    wait: Option<String>,
    calculators: String,
}

#[derive(Serialize)]
struct SheetLine {
    name: String,
    path: String,
    number: String,
}

impl Handbook {
    /// The front page, from the chapter that holds its words.
    pub(crate) fn front_page(&self, leaf: &Leaf, units: Units) -> Page {
        let setting = self.setting(units);
        let mut frame = self.frame(&leaf.chapter.title, None, "/", units);
        frame.front = true;
        frame.scripts.push("find.js");
        let mut part = None;
        let steps = self.leaves.iter().filter_map(|leaf| Some((leaf.listed.step?, leaf)));
        let sequence = steps
            .map(|(number, leaf)| {
                let begins = (part != leaf.listed.part.as_ref()).then(|| leaf.listed.part.clone()).flatten();
                part = leaf.listed.part.as_ref();
                StepLine {
                    number,
                    name: leaf.listed.name.clone(),
                    path: leaf.listed.path(),
                    lead: leaf.chapter.lead.html(setting),
                    part: begins,
                    wait: leaf.chapter.wait.as_ref().map(|wait| wait.html(setting)),
                    calculators: leaf
                        .calculators()
                        .filter_map(|(_, id)| Some(entry(id)?.card().title))
                        .collect::<Vec<_>>()
                        .join(" · "),
                }
            })
            .collect();
        let asked = leaf.chapter.blocks.iter().filter_map(|placed| match &placed.block {
            Block::Prose(text) => Some(text.calculators()),
            _ => None,
        });
        let numbers = asked.flatten().filter_map(|(name, id)| {
            Some(SheetLine { name, path: self.place_of(&id)?.to_owned(), number: self.numbers.get(&id)?.clone() })
        });
        let sheets = self.leaves.iter().filter(|leaf| leaf.listed.step.is_none() && leaf.listed.file != FRONT);
        let view = FrontView {
            frame: &frame,
            board_width: match units {
                Units::Imperial => "2½",
                Units::Metric => "64",
            },
            title: &leaf.chapter.title,
            lead: leaf.chapter.lead.html(setting),
            sequence,
            numbers: numbers.collect(),
            walls: WALLS,
            sheets: sheets
                .map(|leaf| SheetLine {
                    name: leaf.listed.name.clone(),
                    path: leaf.listed.path(),
                    number: "sheet".to_owned(),
                })
                .collect(),
        };
        Page::new(leaf.listed.path(), &self.theme.fill("front.html", &view))
    }
}
