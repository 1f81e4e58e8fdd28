//! How the sheet's figures were got: the plan's own lines of working, each list beside the figures it belongs to.

use calculators::catalogue::Step;
use calculators::quantity::Units;
use calculators::wall::plan::Layout;
use calculators::wall::scheme::WallInput;
use calculators::wall::{job, working};
use serde::Serialize;

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

pub(super) fn view(theme: &Theme, input: &WallInput, layout: &Layout, units: Units) -> HowView {
    let set = |steps: &[Step]| working_of(theme, steps, units);
    HowView {
        bays: set(&working::bays(layout, input)),
        marks: layout.marks.iter().map(|line| set(&working::marks(line, layout, input))).collect(),
        offsets: set(&working::offsets(layout, input)),
        lengths: set(&working::lengths(layout)),
        nails: set(&[working::nails(layout)]),
        job: set(&job::working(layout, &input.shop, input.scheme.tape.units())),
    }
}
