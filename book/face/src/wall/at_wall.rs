//! One mark at a time, as large as the screen allows: for a person with a pencil in one hand.

use calculators::quantity::Units;
use calculators::wall::plan::{Layout, Mark, MarkLine};
use serde::Serialize;

use super::marks::shown;
use crate::figure;

/// The mark in view and the way to the ones beside it.
#[derive(Debug, Serialize)]
pub(super) struct OneMark {
    line: String,
    board: usize,
    left: String,
    right: String,
    /// Counted over all lines, beginning with 1.
    at: usize,
    of: usize,
    before: Option<usize>,
    after: Option<usize>,
    /// In one sentence, for a screen reader.
    said: String,
}

/// The mark with this number; the first or last one for a number beyond them.
pub(super) fn one(layout: &Layout, at: usize, units: Units) -> Option<OneMark> {
    let all: Vec<(&MarkLine, &Mark)> =
        layout.marks.iter().flat_map(|line| line.marks.iter().map(move |mark| (line, mark))).collect();
    let of = all.len();
    let at = at.clamp(1, of.max(1));
    let (line, mark) = *all.get(at - 1)?;
    Some(OneMark {
        line: figure::words(&line.name, units),
        board: mark.board,
        left: shown(&mark.left, units),
        right: shown(&mark.right, units),
        at,
        of,
        before: (at > 1).then(|| at - 1),
        after: (at < of).then(|| at + 1),
        said: format!("Board {}: left edge {}", mark.board, mark.left.shown_in(units).text(units)),
    })
}
