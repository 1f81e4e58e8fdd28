//! The wall sheet as a page of its own, and as a file that needs no server.

use calculators::catalogue::Entry;
use calculators::quantity::Units;
use face::wall::WallSheet;
use serde::Serialize;

use crate::handbook::Handbook;
use crate::page::Page;
use crate::render::{Frame, Turned};

#[derive(Serialize)]
struct WallPageView<'a> {
    frame: &'a Frame,
    sheet: String,
}

impl Handbook {
    /// The wall sheet as a page of its own.
    pub fn wall_page(&self, entry: &Entry, sheet: WallSheet<'_>, units: Units) -> Page {
        let mut frame = self.frame("Wall sheet", None, "/wall", units);
        frame.scripts.extend(["wall.js", "awake.js"]);
        frame.turned =
            Some(Turned { form: "wall-form".to_owned(), address: "wall".to_owned(), name: "turn", verb: "" });
        Page::new("wall", &self.sheet_page(&frame, self.wall_sheet(entry, sheet, frame.bare, units)))
    }

    /// The wall sheet as a file that needs no server: its links stay in its own folder.
    pub fn wall_file(&self, entry: &Entry, sheet: WallSheet<'_>, units: Units) -> Page {
        let mut frame = self.frame("Wall sheet", None, "/wall", units);
        frame.scripts.clear();
        frame.bare = true;
        Page::new("wall.html", &self.sheet_page(&frame, self.wall_sheet(entry, sheet, frame.bare, units)))
    }

    fn sheet_page(&self, frame: &Frame, sheet: String) -> String {
        self.theme.fill("wall.html", &WallPageView { frame, sheet })
    }
}
