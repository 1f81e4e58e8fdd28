//! Running marks and heights, as rows to read a tape by.

use calculators::quantity::{Reading, Units};
use calculators::wall::plan::{Layout, MarkLine, Position, Standing};
use serde::Serialize;

use crate::figure;

/// Marks along one line.
#[derive(Debug, Serialize)]
pub(super) struct MarkLineView {
    name: String,
    height: String,
    marks: Vec<MarkView>,
    /// What the tape must show at the last right edge.
    last: String,
}

/// One board's mark.
#[derive(Debug, Serialize)]
pub(super) struct MarkView {
    number: usize,
    left: String,
    right: String,
    /// What the mark leaves over, `1/64 in full`.
    over: String,
    what: String,
    key: String,
}

/// A height from the datum line.
#[derive(Debug, Serialize)]
pub(super) struct OffsetView {
    name: String,
    height: String,
    offset: String,
    way: &'static str,
}

pub(super) fn lines(wall: &str, layout: &Layout, units: Units) -> Vec<MarkLineView> {
    layout.marks.iter().enumerate().map(|(index, line)| line_view(wall, index, line, layout, units)).collect()
}

fn line_view(wall: &str, index: usize, line: &MarkLine, layout: &Layout, units: Units) -> MarkLineView {
    let marks = line
        .marks
        .iter()
        .map(|mark| MarkView {
            number: mark.board,
            left: shown(&mark.left, units),
            right: shown(&mark.right, units),
            over: over(&mark.left, units),
            what: layout.positions.iter().find(|place| place.number == mark.board).map_or_else(String::new, standing),
            key: format!("wall-{wall}/{}-{index}-{}", layout.rank, mark.board),
        })
        .collect();
    MarkLineView {
        name: figure::words(&line.name, units),
        height: figure::set(line.height, units),
        marks,
        last: shown(&line.last, units),
    }
}

pub(super) fn offsets(layout: &Layout, units: Units) -> Vec<OffsetView> {
    layout
        .offsets
        .iter()
        .map(|offset| {
            let shown = offset.offset.shown_in(units);
            OffsetView {
                name: figure::words(&offset.name, units),
                height: figure::set(offset.height, units),
                offset: figure::set(shown.size(), units),
                way: match (shown.is_positive(), shown.is_negative()) {
                    (true, _) => "up",
                    (_, true) => "down",
                    _ => "on the line",
                },
            }
        })
        .collect()
}

/// A tape reading as a figure, in one unit system.
pub(super) fn shown(reading: &Reading, units: Units) -> String {
    figure::set(reading.shown_in(units), units)
}

fn over(reading: &Reading, units: Units) -> String {
    let left = reading.exact - reading.shown_in(units);
    if left.size().nearest(calculators::quantity::SIXTY_FOURTH) == calculators::quantity::Length::ZERO {
        return String::new();
    }
    let side = if left.is_positive() { "full" } else { "bare" };
    format!("{} {side}", figure::in_line(left.size(), units))
}

fn standing(place: &Position) -> String {
    let why = match place.why {
        Standing::End => "at the end",
        Standing::Opening => "tight to the opening",
        Standing::Pier => "alone between two openings",
        Standing::Nosing => "at the nosing",
        Standing::Step => "tight to the step",
        Standing::WideBoard => "carries a plate",
        Standing::Field => "field board",
    };
    if place.shifted == calculators::quantity::Exact::ZERO {
        why.to_owned()
    } else {
        format!("{why}, moved for a plate")
    }
}
