//! A scarf joint on a stud, seen from above.

use super::given::Given;
use super::plate::{Plate, Scale, WIDE, across, pointed, upright};
use crate::drawing::canvas::{Anchor, Canvas};

/// Width of a stud on its narrow side, mm: 1-1/2 in. Common practice.
const STUD: f64 = 38.1;

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (thickness, board) = (given.put("/thickness")?, given.got("/lap")?);
    let scale = (84.0 / thickness.in_mm()).min(200.0 / board.in_mm().max(1.0));
    let (deep, lap) = (thickness.in_mm() * scale, board.in_mm() * scale);
    let (middle, half) = (WIDE / 2.0, STUD * scale / 2.0);
    let mut canvas = Canvas::default();
    canvas.hatched("drawing-scarf-on-stud", "ground", (middle - half, 34.0), (middle + half, 96.0), "medium");
    canvas.rect((20.0, 96.0), (WIDE - 20.0, 132.0), "medium fill-sheet");
    let (top, foot) = (132.0, 132.0 + deep);
    let (left, right) = (middle - lap / 2.0, middle + lap / 2.0);
    canvas.path(&[(20.0, top), (right, top), (left, foot), (20.0, foot)], true, "medium fill-board");
    canvas.path(&[(right, top), (WIDE - 20.0, top), (WIDE - 20.0, foot), (left, foot)], true, "medium fill-board");
    canvas.path(&[(20.0, foot), (WIDE - 20.0, foot)], false, "heavy");
    canvas.line((right, top), (left, foot), "cut");
    canvas.line((middle, 18.0), (middle, foot + 12.0), "thin chain");
    across(&mut canvas, foot + 46.0, (left, right), board, given.units);
    for x in [left, right] {
        canvas.line((x, if x == left { foot } else { top }), (x, foot + 54.0), "thin soft");
    }
    upright(&mut canvas, 56.0, (top, foot), thickness, given.units);
    pointed(&mut canvas, (middle + half - 14.0, 52.0), (WIDE - 110.0, 40.0), Anchor::Start, "STUD");
    canvas.text((28.0, 119.0), Anchor::Start, "", "PLASTERBOARD");
    pointed(
        &mut canvas,
        ((left + right) / 2.0 + 10.0, (top + foot) / 2.0 - 10.0),
        (WIDE - 126.0, foot - 20.0),
        Anchor::Start,
        "GLUED",
    );
    canvas.text((20.0, foot + 34.0), Anchor::Start, "", "ROOM");
    Some(Plate {
        title: "Scarf on a stud, from above",
        description: format!(
            "Two rails {} thick overlap in a slanting, glued cut whose middle lies on the centre of a stud. The cut takes {} of length.",
            given.said(thickness),
            given.said(board)
        ),
        caption: format!(
            "The cut is centred on the stud, so that both pieces can be pinned; it takes {} of length, half of it beyond the centre.",
            given.said(board)
        ),
        scale: Scale::True,
        tall: foot + 66.0,
        canvas,
    })
}
