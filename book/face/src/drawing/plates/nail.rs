//! The window for the point of a nail: past the least hold, short of where cables may run.

use super::given::Given;
use super::plate::{Plate, Scale, WIDE, pointed, upright};
use crate::drawing::canvas::{Anchor, Canvas};

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (trim, plasterboard) = (given.put("/trim")?, given.put("/plasterboard")?);
    let (from, below, nail) = (given.got("/from")?, given.got("/below")?, given.got("/nail")?);
    let scale = 280.0 / (below.in_mm() * 1.12);
    let top = 48.0;
    let y = |depth: f64| top + depth * scale;
    let (board, plaster) = (trim.in_mm(), trim.in_mm() + plasterboard.in_mm());
    let (left, right) = (80.0, 300.0);
    let foot = y(below.in_mm() * 1.12);
    let mut canvas = Canvas::default();
    canvas.rect((left + 40.0, y(plaster)), (right - 60.0, foot), "medium fill-board");
    canvas.hatched("drawing-nail-window", "ground", (left + 40.0, y(below.in_mm())), (right - 60.0, foot), "thin");
    canvas.rect((left - 20.0, y(board)), (right, y(plaster)), "medium fill-sheet");
    canvas.rect((left, top), (right - 20.0, y(board)), "medium fill-board");
    canvas.path(&[(left, top), (right - 20.0, top)], false, "heavy");
    for depth in [from, below] {
        canvas.line((left + 20.0, y(depth.in_mm())), (right + 20.0, y(depth.in_mm())), "medium dashed");
    }
    let middle = 200.0;
    canvas.line((middle, top), (middle, y(nail.in_mm())), "cut");
    canvas.line((middle - 8.0, top), (middle + 8.0, top), "cut");
    upright(&mut canvas, 40.0, (top, y(nail.in_mm())), nail, given.units);
    canvas.line((32.0, y(nail.in_mm())), (middle, y(nail.in_mm())), "thin soft");
    canvas.length((right + 28.0, y(from.in_mm()) + 2.0), Anchor::Start, "yours", from, given.units);
    canvas.length((right + 28.0, y(below.in_mm()) + 8.0), Anchor::Start, "yours", below, given.units);
    canvas.text((right + 78.0, y(from.in_mm()) + 2.0), Anchor::Start, "", "LEAST");
    canvas.text((right + 78.0, y(below.in_mm()) + 8.0), Anchor::Start, "", "NOT TO");
    pointed(&mut canvas, (right - 40.0, y(board / 2.0)), (right + 24.0, y(board / 2.0) + 5.0), Anchor::Start, "BOARD");
    let plaster_middle = y(f64::midpoint(board, plaster));
    pointed(
        &mut canvas,
        (right - 14.0, plaster_middle),
        (right + 24.0, plaster_middle + 5.0),
        Anchor::Start,
        "PLASTER",
    );
    canvas.text((left + 46.0, y(plaster) + 24.0), Anchor::Start, "", "STUD");
    Some(Plate {
        title: "How long the nail may be",
        description: format!(
            "Section through a board {} thick and plasterboard {} thick into a stud. The point must lie between {} and {} below the \
             face; the nail drawn is {}. Cables may run in the hatched part.",
            given.said(trim),
            given.said(plasterboard),
            given.said(from),
            given.said(below),
            given.said(nail)
        ),
        caption: format!(
            "Long enough for the stud to hold it, shorter than the depth where cables may run: {} at least, under {}. Of what is \
             sold, {}.",
            given.said(from),
            given.said(below),
            given.said(nail)
        ),
        scale: Scale::True,
        tall: (foot + 10.0).min(WIDE),
        canvas,
    })
}
