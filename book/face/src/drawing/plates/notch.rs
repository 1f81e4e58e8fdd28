//! A plate that overlaps the edge of a board, and the neck that a notch would leave.

use super::given::Given;
use super::plate::{Plate, Scale, across, proud, upright};
use crate::drawing::canvas::{Anchor, Canvas};

const ID: &str = "drawing-neck";

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (board, overlap) = (given.put("/board")?, given.put("/overlap")?);
    let (plate_width, plate_height) = (given.put("/plate_width")?, given.put("/plate_height")?);
    let (neck, least) = (given.got("/neck")?, given.got("/least")?);
    let scale = 300.0 / (board.in_mm() + plate_width.in_mm() - overlap.in_mm());
    let (left, wide) = (60.0, board.in_mm() * scale);
    let plate_left = left + (board.in_mm() - overlap.in_mm()) * scale;
    let (plate_right, tall) = (plate_left + plate_width.in_mm() * scale, plate_height.in_mm() * scale);
    let cut = left + neck.in_mm() * scale;
    let (top, middle) = (60.0, 60.0 + tall / 2.0 + 40.0);
    let (high, low) = (middle - tall / 2.0, middle + tall / 2.0);
    let mut canvas = Canvas::default();
    proud(&mut canvas, (left, top), (left + wide, low + 46.0));
    canvas.hatched(ID, "clash", (cut, high), (left + wide, low), "medium");
    canvas.rect((plate_left, high), (plate_right, low), "heavy dashed");
    canvas.text((left + wide + 12.0, middle), Anchor::Start, "", "PLATE");
    across(&mut canvas, top - 14.0, (left, left + wide), board, given.units);
    across(&mut canvas, low + 76.0, (left, cut), neck, given.units);
    canvas.line((cut, low), (cut, low + 84.0), "thin soft");
    canvas.text((cut + 14.0, low + 82.0), Anchor::Start, "", "NECK LEFT");
    upright(&mut canvas, plate_right + 16.0, (high, low), plate_height, given.units);
    Some(Plate {
        title: "What a notch leaves of a board",
        description: format!(
            "A plate {} wide overlaps a board {} wide by {}. A notch for it, hatched, leaves a neck of {}; the rule asks for {}.",
            given.said(plate_width),
            given.said(board),
            given.said(overlap),
            given.said(neck),
            given.said(least)
        ),
        caption: format!(
            "The plate takes {} off the board. What is left, {}, is held against the least that stands up: {}.",
            given.said(overlap),
            given.said(neck),
            given.said(least)
        ),
        scale: Scale::True,
        tall: low + 96.0,
        canvas,
    })
}
