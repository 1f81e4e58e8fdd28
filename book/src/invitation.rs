//! What stands in a chapter for the wall plan: its drawing of the practice room, and the way to the sheet.

use calculators::catalogue::{Entry, FromNode};
use calculators::quantity::Units;
use calculators::wall::planning::plan;
use calculators::wall::practice_room::{self, Wall};
use calculators::wall::scheme::WallInput;
use serde::Serialize;

use crate::handbook::Handbook;

/// Id of the calculator that has a sheet of its own instead of a form in a chapter.
pub(crate) const WALL_PLAN: &str = "wall-plan";

/// Where `wall:b` in a chapter leads: the wall sheet with a practice wall, or with an empty one.
pub(crate) fn wall_address(link: &str) -> Option<&'static str> {
    match link {
        "wall:a" => Some("/wall?wall=a"),
        "wall:b" => Some("/wall?wall=b"),
        "wall:c" => Some("/wall?wall=c"),
        "wall:new" => Some("/wall?wall=new"),
        "wall:saw" => Some("/wall?wall=a&view=saw"),
        _ => None,
    }
}

#[derive(Serialize)]
struct InvitationView<'a> {
    question: &'a str,
    title: &'a str,
    drawing: String,
}

impl Handbook {
    /// The practice room's wall with windows, drawn, and links to the sheet with each of its walls.
    pub(crate) fn wall_invitation(&self, entry: &Entry, units: Units) -> String {
        let values = practice_room::input(Wall::Windows, units);
        let input = entry.read(&values, units).ok().and_then(WallInput::from_node);
        let drawing = input.and_then(|input| {
            let plan = plan(&input).ok()?;
            Some(self.drawing_of(&input, &plan, 1, units))
        });
        let view = InvitationView {
            question: entry.card().question,
            title: entry.card().title,
            drawing: drawing.unwrap_or_default(),
        };
        self.theme.fill("wall-invitation.html", &view)
    }
}
