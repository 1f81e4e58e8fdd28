//! A top rail mitred into an end board in the plane of the wall: the line of the joint from the inner to the outer corner.

use super::given::Given;
use super::plate::{Plate, Scale, across, upright};
use crate::drawing::canvas::{Anchor, Canvas};

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (rail, board) = (given.put("/rail")?, given.put("/board")?);
    let (rail_setting, board_setting) = (given.text("/rail_setting")?, given.text("/board_setting")?);
    // Square corners only: a frame that leans is drawn by the wall sheet.
    if (given.put_number("/angle")? - 90.0).abs() > 5.0 {
        return None;
    }
    let scale = 110.0 / rail.in_mm().max(board.in_mm());
    let (tall, wide) = (rail.in_mm() * scale, board.in_mm() * scale);
    let (left, top, right, foot) = (70.0, 40.0, 380.0, 270.0);
    let (inner, outer) = ((left + wide, top + tall), (left, top));
    let mut canvas = Canvas::default();
    canvas.path(&[outer, (right, top), (right, top + tall), inner], true, "medium fill-board");
    canvas.path(&[outer, inner, (left + wide, foot), (left, foot)], true, "medium fill-board");
    canvas.path(&[(right, top + tall), inner, (left + wide, foot)], false, "heavy");
    canvas.line(outer, inner, "cut");
    upright(&mut canvas, right + 14.0, (top, top + tall), rail, given.units);
    across(&mut canvas, foot + 26.0, (left, left + wide), board, given.units);
    canvas.text((left + wide + 60.0, top + tall / 2.0 + 6.0), Anchor::Start, "", "RAIL");
    canvas.text((left + wide + 130.0, top + tall / 2.0 + 6.0), Anchor::Start, "yours", &rail_setting);
    canvas.text((left + wide + 16.0, foot - 40.0), Anchor::Start, "", "BOARD");
    canvas.text((left + wide + 96.0, foot - 40.0), Anchor::Start, "yours", &board_setting);
    Some(Plate {
        title: "A rail mitred into a board",
        description: format!(
            "A rail {} wide meets a board {} wide in a corner. The joint runs from the outer corner to the inner one; the rail is cut at \
             {rail_setting} and the board at {board_setting} from square.",
            given.said(rail),
            given.said(board)
        ),
        caption: format!(
            "Both pieces cut one line from corner to corner. With a rail of {} and a board of {} the saw is set to {rail_setting} for the rail and \
             {board_setting} for the board.",
            given.said(rail),
            given.said(board)
        ),
        scale: Scale::True,
        tall: foot + 40.0,
        canvas,
    })
}
