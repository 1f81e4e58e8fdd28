//! How the sheet's figures were got: the plan's own lines of working, each list beside the figures it belongs to.

use calculators::catalogue::Step;
use calculators::quantity::Units;
use calculators::wall::plan::Layout;
use calculators::wall::scheme::WallInput;
use calculators::wall::{job, working};
use serde::Serialize;

use super::WallView;
use crate::panel::working_of;
use crate::theme::Theme;

/// Lists of working, ready to be set.
#[derive(Debug, Serialize)]
pub(super) struct HowView {
    bays: String,
    /// One for each line of marks.
    marks: Vec<String>,
    offsets: String,
    lengths: String,
    nails: String,
    job: String,
}

/// The lists that a part of the sheet shows; the others stay empty.
pub(super) fn view(theme: &Theme, input: &WallInput, layout: &Layout, part: WallView, units: Units) -> HowView {
    let set = |parts: &[WallView], steps: &dyn Fn() -> Vec<Step>| {
        if parts.contains(&part) { working_of(theme, &steps(), units) } else { String::new() }
    };
    let (whole, read) = (&[WallView::Sheet], &[WallView::Sheet, WallView::Numbers]);
    let marks = layout.marks.iter().map(|line| set(read, &|| working::marks(line, layout, input)));
    HowView {
        bays: set(whole, &|| working::bays(layout, input)),
        marks: marks.collect(),
        offsets: set(read, &|| working::offsets(layout, input)),
        lengths: set(&[WallView::Sheet, WallView::Saw], &|| working::lengths(layout)),
        nails: set(whole, &|| vec![working::nails(layout)]),
        job: set(whole, &|| job::working(layout, &input.shop, input.scheme.tape.units())),
    }
}
