//! Boards and a panel on a stair: plumb edges, raking ends, two diagonals.

use super::given::Given;
use super::plate::{Plate, Scale, WIDE, upright};
use crate::drawing::canvas::{Anchor, At, Canvas};

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (board, bay, rail) = (given.put("/board")?, given.put("/bay")?, given.put("/rail")?);
    let (edge, rake) = (given.got("/edge")?, given.got_number("/rake")?);
    let (long, short) = (given.got("/long_diagonal")?, given.got("/short_diagonal")?);
    let plumb = given.got("/rail_plumb")?;
    let slope = libm::tan(rake.to_radians());
    let run = 2.0 * board.in_mm() + bay.in_mm() * 1.5;
    let rise = run * slope + edge.in_mm() + plumb.in_mm();
    let scale = ((WIDE - 210.0) / run).min(430.0 / rise);
    let left = 120.0;
    let tall = rise * scale + 90.0;
    let foot = tall - 44.0;
    // A place by its distance along the floor and its plumb height over the base's top edge.
    let at = |along: f64, over: f64| -> At { (left + along * scale, foot - (along * slope + over) * scale) };
    let (high, width) = (edge.in_mm(), board.in_mm());
    let mut canvas = Canvas::default();
    let end = run;
    canvas.path(
        &[at(0.0, high), at(end, high), at(end, high + plumb.in_mm()), at(0.0, high + plumb.in_mm())],
        true,
        "medium fill-board",
    );
    canvas.path(&[at(0.0, high), at(end, high)], false, "heavy");
    canvas.path(&[at(0.0, 0.0), at(end, 0.0)], false, "heavy");
    let first = bay.in_mm() * 0.25;
    let second = first + width + bay.in_mm();
    for start in [first, second] {
        canvas.path(
            &[at(start, 0.0), at(start + width, 0.0), at(start + width, high), at(start, high)],
            true,
            "medium fill-board",
        );
        canvas.path(&[at(start + width, 0.0), at(start + width, high)], false, "heavy");
    }
    let (near, far) = (first + width, second);
    canvas.path(&[at(near, 0.0), at(far, high)], false, "thin dashed");
    canvas.path(&[at(near, high), at(far, 0.0)], false, "thin dashed");
    let along = |from: At, to: At, part: f64| (from.0 + (to.0 - from.0) * part, from.1 + (to.1 - from.1) * part);
    for (place, length) in
        [(along(at(near, 0.0), at(far, high), 0.3), long), (along(at(near, high), at(far, 0.0), 0.22), short)]
    {
        canvas.line(place, (96.0, place.1), "thin");
        canvas.dot(place, 2.6, "fill-solid");
        canvas.length((6.0, place.1 + 6.0), Anchor::Start, "yours", length, given.units);
    }
    let side = at(second + width, 0.0);
    let top = at(second + width, high);
    upright(&mut canvas, side.0 + 30.0, (top.1, side.1), edge, given.units);
    for (x, y) in [side, top] {
        canvas.line((x, y), (x + 36.0, y), "thin soft");
    }
    let origin = at(0.0, 0.0);
    canvas.line(origin, (origin.0 + 120.0, origin.1), "thin chain");
    let text = given.text("/rake")?;
    canvas.text((origin.0 + 130.0, origin.1 + 5.0), Anchor::Start, "yours", &text);
    canvas.text((origin.0, origin.1 + 22.0), Anchor::Start, "", "LEVEL");
    let rail_at = at(bay.in_mm() * 0.2, high + plumb.in_mm() + 18.0 / scale);
    canvas.text((rail_at.0, rail_at.1), Anchor::Middle, "", "RAIL");
    let (edge, stock) = (given.said(edge), given.text("/stock")?);
    Some(Plate {
        title: "Boards and a panel on the rake",
        description: format!(
            "Two plumb boards between a base and a rail of {} on a slope of {text}. Both long edges of a board are {edge}; it is cut from {stock}. \
             The panel between them has plumb sides and diagonals of {} and {}.",
            given.said(rail),
            given.said(long),
            given.said(short)
        ),
        caption: format!(
            "Both edges of a board are {edge}, its piece {stock}; the ends are cut to {text}. The panel leans the right way when its \
             diagonals are {} and {}.",
            given.said(long),
            given.said(short)
        ),
        scale: Scale::True,
        tall,
        canvas,
    })
}
