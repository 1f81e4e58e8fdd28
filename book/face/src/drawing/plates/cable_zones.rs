//! Where the wiring rules of one country let a cable run behind a wall, with an outlet and without one.

use calculators::fixing::cable_zones::{DEPTH, ZONE};
use calculators::quantity::{Length, Units};

use super::given::Given;
use super::plate::{Plate, Scale, across, pointed, upright};
use crate::drawing::canvas::{Anchor, Canvas};

/// The wall that is drawn: its height, and drawing units to a millimetre.
const HEIGHT: Length = Length::mm(2_400);
const SCALE: f64 = 0.1;

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let zone = match given.units {
        Units::Imperial => Length::inches(6),
        Units::Metric => ZONE,
    };
    let band = ZONE.in_mm() * SCALE * 1.6;
    let (left, top, right) = (40.0, 40.0, 400.0);
    let foot = top + HEIGHT.in_mm() * SCALE;
    let (outlet, level) = ((250.0, foot - 45.0), (150.0, foot - 110.0));
    let mut canvas = Canvas::default();
    canvas.rect((left, top), (right, foot), "medium fill-sheet");
    canvas.rect((left, top), (right, top + band), "thin fill-wall");
    canvas.rect((left, top), (left + band, foot), "thin fill-wall");
    canvas.rect((right - band, top), (right, foot), "thin fill-wall");
    for (x, y) in [outlet, level] {
        canvas.rect((x - 9.0, top + band), (x + 9.0, foot), "thin fill-wall");
        canvas.rect((left + band, y - 6.0), (right - band, y + 6.0), "thin fill-wall");
    }
    for (x, y) in [outlet, level] {
        canvas.rect((x - 12.0, y - 8.0), (x + 12.0, y + 8.0), "medium fill-board");
    }
    canvas.path(&[(left, top), (right, top), (right, foot), (left, foot)], true, "heavy");
    across(&mut canvas, foot + 24.0, (left, left + band), zone.exact(), given.units);
    upright(&mut canvas, right + 12.0, (top, top + band), zone.exact(), given.units);
    pointed(&mut canvas, (330.0, top + band / 2.0), (200.0, 24.0), Anchor::Start, "NO OUTLET SHOWS IT");
    pointed(&mut canvas, (level.0, level.1 - 60.0), (180.0, level.1 - 56.0), Anchor::Start, "IN LINE WITH AN OUTLET");
    let said = given.said(zone.exact());
    Some(Plate {
        title: "Cable zones of one country",
        description: format!(
            "A wall with a switch and an outlet. Shaded: a band {said} wide along the top of the wall and along each corner, and bands straight up, \
             down and sideways from switch and outlet."
        ),
        caption: format!(
            "BS 7671 (United Kingdom), as quoted in public summaries: a cable less than {} deep runs in line with an outlet, or within {said} of the top of \
             the wall or of a corner, where no outlet shows it. Other countries have other zones. Old and bad wiring keeps to none.",
            given.said(match given.units {
                Units::Imperial => Length::inches(2).exact(),
                Units::Metric => DEPTH.exact(),
            })
        ),
        scale: Scale::Stretched("Zones are drawn wider than they are.".to_owned()),
        tall: foot + 40.0,
        canvas,
    })
}
