//! Layouts side by side: the same rows in the same order, so that they compare across.

use calculators::quantity::Units;
use calculators::wall::plan::{Layout, Severity, WallPlan};
use calculators::wall::scheme::WallInput;
use serde::Serialize;

use crate::drawing::{Elevation, elevation};
use crate::figure;

/// One layout.
#[derive(Debug, Serialize)]
pub(super) struct WayView {
    rank: usize,
    chosen: bool,
    reason: String,
    drawing: String,
    rows: Vec<WayRow>,
    score: Vec<TermView>,
    total: String,
}

/// One row of the comparison.
#[derive(Debug, Serialize)]
pub(super) struct WayRow {
    label: &'static str,
    value: String,
    /// Worse than the best of the layouts.
    worse: bool,
}

/// One term of a score.
#[derive(Debug, Serialize)]
pub(super) struct TermView {
    name: String,
    measure: String,
    weight: i64,
    adds: String,
}

/// The clear widths of a layout's bays, the narrowest and the widest with a word between them.
pub(super) fn bay_range(layout: &Layout, to: &str, units: Units) -> String {
    let widths = || layout.bays.iter().map(|bay| bay.width);
    match (widths().min(), widths().max()) {
        (Some(narrow), Some(wide)) if narrow != wide => {
            format!("{} {to} {}", figure::set(narrow, units), figure::set(wide, units))
        }
        (Some(narrow), _) => figure::set(narrow, units),
        _ => "none".to_owned(),
    }
}

pub(super) fn ways(input: &WallInput, plan: &WallPlan, chosen: usize, units: Units) -> Vec<WayView> {
    let settle =
        |layout: &Layout| layout.conflicts.iter().filter(|conflict| conflict.severity == Severity::Settle).count();
    let least = |of: &dyn Fn(&Layout) -> usize| plan.layouts.iter().map(of).min().unwrap_or(0);
    let (fewest, least_settle) = (least(&|layout| layout.boards), least(&settle));
    let least_spread = plan.layouts.iter().map(|layout| layout.spread).min();
    let most_hits = plan.layouts.iter().map(|layout| layout.studs.hits.len()).max().unwrap_or(0);
    plan.layouts
        .iter()
        .map(|layout| {
            let row = |label, value: String, worse| WayRow { label, value, worse };
            let mut rows = vec![
                row("Bays", bay_range(layout, "to", units), false),
                row("Differ by", figure::set(layout.spread, units), Some(layout.spread) > least_spread),
                row("Boards", layout.boards.to_string(), layout.boards > fewest),
                row("To settle", settle(layout).to_string(), settle(layout) > least_settle),
            ];
            if layout.studs.known {
                rows.push(row(
                    "Boards on a stud",
                    layout.studs.hits.len().to_string(),
                    layout.studs.hits.len() < most_hits,
                ));
            }
            let drawing = Elevation { input, plan, layout, dimensioned: false };
            WayView {
                rank: layout.rank,
                chosen: layout.rank == chosen,
                reason: figure::sentence(&layout.reason, units),
                drawing: elevation(&format!("way-{}", layout.rank), &drawing, units),
                rows,
                score: layout
                    .score
                    .terms
                    .iter()
                    .map(|term| TermView {
                        name: figure::sentence(&term.name, units),
                        measure: figure::set(term.measure, units),
                        weight: term.weight,
                        adds: figure::set(term.adds, units),
                    })
                    .collect(),
                total: figure::set(layout.score.total, units),
            }
        })
        .collect()
}
