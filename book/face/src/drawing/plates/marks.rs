//! Marks read from one hook, and the same boards stepped off with a block.

use calculators::quantity::{Exact, Length};

use super::given::Given;
use super::plate::{Plate, Scale, WIDE, round_down};
use crate::drawing::canvas::{Anchor, Canvas};

const ROW: f64 = 86.0;

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (stepped, board) = (given.got("/stepped")?, given.put("/board")?);
    let mut lefts: Vec<Exact> = Vec::new();
    while let Some(left) = given.got(&format!("/marks/{}/left", lefts.len())) {
        lefts.push(left);
    }
    let last = *lefts.last()?;
    let scale = (WIDE - 60.0) / (last + board).in_mm();
    let x = |at: f64| 24.0 + at * scale;
    let off = stepped.in_mm() * scale;
    let larger = if off == 0.0 { 1.0 } else { round_down(30.0 / off.abs()) };
    let steps = lefts.len().saturating_sub(1).max(1) as f64;
    let mut canvas = Canvas::default();
    for (row, title, shift) in [(0.0, "READ FROM ONE HOOK", 0.0), (1.0, "STEPPED WITH A BLOCK", off * larger)] {
        let (top, foot) = (40.0 + row * (ROW + 46.0), 40.0 + row * (ROW + 46.0) + ROW);
        canvas.rect((x(0.0), top), (x((last + board).in_mm()), foot), "thin fill-wall");
        for (n, left) in lefts.iter().enumerate() {
            let place = x(left.in_mm());
            let moved = place + shift * n as f64 / steps;
            let wide = board.in_mm() * scale;
            if row > 0.0 {
                canvas.rect((place, top), (place + wide, foot), "thin dashed");
            }
            canvas.rect((moved, top), (moved + wide, foot), "medium fill-board");
            canvas.line((moved, top - 8.0), (moved, top), "medium");
        }
        canvas.dot((x(0.0), top - 4.0), 4.0, "medium fill-paper");
        canvas.line((x(0.0), top - 4.0), (x(last.in_mm()), top - 4.0), if row > 0.0 { "thin dashed" } else { "thin" });
        canvas.text((x(0.0), top - 18.0), Anchor::Start, "", title);
    }
    let said = given.said(stepped.size());
    let side = if stepped.is_negative() { "short" } else { "over" };
    let exact = stepped == Length::ZERO;
    Some(Plate {
        title: "Running marks and stepped marks",
        description: format!(
            "Above: {} boards, each mark read from the hook at zero. Below: the same boards stepped off with one block cut to the tape's \
             nearest mark; the last stands {said} {side}, the dashed outlines show where each belongs.",
            lefts.len()
        ),
        caption: if exact {
            "Here the block is exact and both rows agree; a bay that falls between two marks of the tape is never so kind.".to_owned()
        } else {
            format!("A block cut to the nearest mark is out by a hair; stepped {steps} times it is out by {said}.")
        },
        scale: Scale::Stretched(format!("Boards to scale; the error is drawn {larger} times as large.")),
        tall: 40.0 + 2.0 * ROW + 46.0 + 12.0,
        canvas,
    })
}
