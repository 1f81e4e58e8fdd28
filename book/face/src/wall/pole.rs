//! The wall's heights as a story pole to be printed at full size.

use calculators::quantity::{Exact, Units};
use calculators::wall::plan::Layout;
use serde::Serialize;

use crate::drawing::{PoleMark, strips};

/// One strip, ready to be set.
#[derive(Debug, Serialize)]
pub(super) struct StripView {
    number: usize,
    svg: String,
    said: Vec<String>,
}

/// Strips from the high floor point to a little above the highest height.
pub(super) fn view(layout: &Layout, units: Units) -> Vec<StripView> {
    let marks: Vec<PoleMark> = layout
        .offsets
        .iter()
        .filter(|offset| !offset.height.is_negative())
        .map(|offset| PoleMark { height: offset.height, name: offset.name.in_units(units) })
        .collect();
    let top = marks.iter().map(|mark| mark.height).max().unwrap_or(Exact::ZERO);
    strips(&marks, top, units)
        .into_iter()
        .map(|strip| StripView { number: strip.number, svg: strip.svg, said: strip.said })
        .collect()
}
