//! A box behind a new board, left where it was and brought forward, in section from above.

use calculators::fixing::box_set_back::PLASTER_SET_BACK;
use calculators::quantity::{MILLIMETRE, Units};

use super::given::Given;
use super::plate::{Plate, Scale, WIDE, pointed};
use crate::drawing::canvas::{Anchor, Canvas};

/// What is allowed behind plaster, as the code of either unit system says it.
fn allowed(units: Units) -> String {
    match units {
        Units::Imperial => PLASTER_SET_BACK.text(units),
        Units::Metric => PLASTER_SET_BACK.exact().down_to(MILLIMETRE).text(units).replace(' ', "\u{a0}"),
    }
}

const ID: &str = "drawing-box-depth";

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (board, old) = (given.put("/added")?, given.put("/set_back")?);
    let extension = given.got("/extension")?;
    let scale = 60.0 / board.in_mm().max(6.0);
    let mut canvas = Canvas::default();
    for (at, title, flush) in [(0.0, "LEFT BACK", false), (WIDE / 2.0, "FLUSH", true)] {
        let (left, right) = (at + 14.0, at + WIDE / 2.0 - 14.0);
        let (low, high) = (left + 56.0, right - 56.0);
        let wall = 150.0;
        let (face, plaster) = (wall + board.in_mm() * scale, wall - 40.0);
        let front = wall - old.in_mm() * scale;
        for (from, to) in [(left, low), (high, right)] {
            canvas.rect((from, plaster), (to, wall), "medium fill-sheet");
            canvas.rect((from, wall), (to, face), "medium fill-board");
            canvas.line((from, face), (to, face), "heavy");
        }
        canvas.path(&[(low + 4.0, front), (low + 4.0, 52.0), (high - 4.0, 52.0), (high - 4.0, front)], false, "cut");
        if flush {
            for x in [low + 4.0, high - 4.0] {
                canvas.line((x, front), (x, face), "cut");
                canvas.line((x - 6.0, front), (x + 6.0, front), "medium");
            }
        } else {
            canvas.hatched(ID, "clash", (low, front), (low + 9.0, face), "thin");
            canvas.hatched(ID, "clash", (high - 9.0, front), (high, face), "thin");
        }
        canvas.rect((low - 18.0, face), (high + 18.0, face + 9.0), "medium fill-sheet");
        canvas.text((f64::midpoint(left, right), 32.0), Anchor::Middle, "", title);
        canvas.text((f64::midpoint(low, high), 76.0), Anchor::Middle, "", "BOX");
        if flush {
            let (middle, y) = (f64::midpoint(low, high), wall + 24.0);
            canvas.text((middle - 8.0, y + 5.0), Anchor::Middle, "", "RING");
            canvas.line((middle + 20.0, y), (high - 4.0, y), "thin");
            canvas.dot((high - 4.0, y), 2.6, "fill-solid");
        } else {
            let line = f64::midpoint(low, high);
            canvas.line((line, front), (line, face), "thin");
            for y in [front, face] {
                canvas.line((line - 12.0, y), (line + 12.0, y), "thin");
            }
            canvas.length(
                (line + 8.0, f64::midpoint(front, face) + 6.0),
                Anchor::Start,
                "yours",
                extension,
                given.units,
            );
        }
    }
    let foot = 150.0 + board.in_mm() * scale + 40.0;
    let face = 150.0 + board.in_mm() * scale;
    pointed(&mut canvas, (82.0, face + 5.0), (72.0, foot), Anchor::Start, "PLATE");
    pointed(&mut canvas, (266.0, face - 14.0), (280.0, foot), Anchor::Start, "BOARD");
    pointed(&mut canvas, (420.0, 130.0), (384.0, foot), Anchor::Start, "PLASTER");
    let (said, allowed) = (given.said(extension), allowed(given.units));
    Some(Plate {
        title: "The box behind the board, from above",
        description: format!(
            "Left: the box stayed where it was; {said} of bare board stands round the opening between box and plate, hatched. Right: an \
             extension ring {said} deep brings it flush with the face of the board."
        ),
        caption: format!(
            "Behind plaster a set-back of {allowed} is commonly allowed. Behind wood, which burns, it is none: a ring of {said}, fitted by \
             the electrician."
        ),
        scale: Scale::Stretched(
            "Depths to scale with each other; the box is drawn narrower and shallower than it is.".to_owned(),
        ),
        tall: foot + 8.0,
        canvas,
    })
}
