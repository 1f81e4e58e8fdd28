//! Two boards in an inside corner, from above: the first runs under the second.

use super::given::Given;
use super::plate::{Plate, Scale, across, upright};
use crate::drawing::canvas::{Anchor, Canvas};

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (rip, shows, begins) = (given.got("/rip")?, given.got("/shows")?, given.got("/begins")?);
    let (thickness, other) = (given.put("/thickness")?, given.put("/other")?);
    let scale = 270.0 / rip.in_mm();
    let (x, y) = (96.0, 84.0);
    let (deep, second) = (thickness.in_mm() * scale, other.in_mm() * scale);
    let long = rip.in_mm() * scale;
    let mut canvas = Canvas::default();
    canvas.path(
        &[(WALL, 0.0), (WALL, 330.0), (x, 330.0), (x, y), (460.0, y), (460.0, y - 62.0), (WALL, y - 62.0)],
        false,
        "thin soft",
    );
    canvas.path(&[(x, 330.0), (x, y), (460.0, y)], false, "cut");
    canvas.rect((x, y), (x + long, y + deep), "medium fill-board");
    canvas.line((x, y + deep), (x + long, y + deep), "heavy");
    let foot = y + deep + 150.0;
    canvas.rect((x, y + deep), (x + second, foot), "medium fill-board");
    canvas.line((x + second, y + deep), (x + second, foot), "heavy");
    across(&mut canvas, y - 14.0, (x, x + long), rip, given.units);
    across(&mut canvas, y + deep + 40.0, (x + second, x + long), shows, given.units);
    canvas.line((x + long, y + deep), (x + long, y + deep + 48.0), "thin soft");
    upright(&mut canvas, x + long + 26.0, (y, y + deep), begins, given.units);
    canvas.text((x + 14.0, y + deep / 2.0 + 6.0), Anchor::Start, "", "FIRST WALL'S BOARD");
    canvas.text((x + second + 14.0, foot - 12.0), Anchor::Start, "", "SECOND WALL'S BOARD");
    canvas.text((WALL + 8.0, 44.0), Anchor::Start, "", "WALL");
    Some(Plate {
        title: "Who laps in an inside corner, from above",
        description: format!(
            "The first wall's board runs into the corner and is ripped {} wide. The second wall's board butts against its face, so that {} \
             of the first is seen, and the second begins {} from the corner.",
            given.said(rip),
            given.said(shows),
            given.said(begins)
        ),
        caption: format!(
            "Ripped {} wide, the first board shows {} beside the second, as wide as every other board. Marks of the second wall begin at {}.",
            given.said(rip),
            given.said(shows),
            given.said(begins)
        ),
        scale: Scale::True,
        tall: 340.0,
        canvas,
    })
}

/// Left edge of the wall as drawn.
const WALL: f64 = 40.0;
