//! What is written on an elevation: dimensions, board numbers, flags, and the words for those who do not see it.

use calculators::quantity::{Exact, Units};
use calculators::wall::plan::Severity;

use super::canvas::{Anchor, At, Canvas};
use super::dimension;
use super::elevation::Elevation;
use super::outline::{Outline, Sheet};

/// Marks nearer than this on the sheet are drawn without their figures.
const NEAREST_FIGURES: f64 = 28.0;
/// Figures of heights are moved up to keep this far apart.
const NEAREST_HEIGHTS: f64 = 32.0;
/// From the lowest floor down to the line of running dimensions.
const UNDER_FLOOR: f64 = 64.0;

/// Length above, height at the left, running marks below, heights at the right.
pub(super) fn dimensions(canvas: &mut Canvas, sheet: &Sheet, view: &Elevation<'_>, outline: &Outline, units: Units) {
    let (left, right) = (sheet.x(Exact::ZERO), sheet.x(view.plan.length.exact()));
    let head = sheet.y(outline.top);
    let middle = left + (right - left) / (2 * sheet.stretches) as f64;
    dimension::across(canvas, head - 44.0, (left, middle, right), view.plan.length.exact(), units);
    if let (Some((_, floor)), Some((_, ceiling))) = (outline.floor.first(), outline.ceiling.first()) {
        dimension::upright(canvas, left - 50.0, sheet.y(*floor), sheet.y(*ceiling), *ceiling - *floor, units);
    }
    marks(canvas, sheet, view, (left, sheet.y(outline.bottom) + UNDER_FLOOR, right), units);
    let x = right + 34.0;
    let mut heights: Vec<(Exact, f64)> =
        view.layout.offsets.iter().map(|offset| (offset.height, sheet.y(offset.height))).collect();
    heights.sort_by_key(|(height, _)| *height);
    heights.dedup_by_key(|(height, _)| *height);
    let mut lowest_free = f64::MAX;
    canvas.line((x, sheet.y(Exact::ZERO)), (x, head), "thin");
    for (height, y) in heights {
        let figure = y.min(lowest_free);
        dimension::height(canvas, x, y, (figure, height), units);
        lowest_free = figure - NEAREST_HEIGHTS;
    }
}

/// Board numbers and running dimensions to left edges; where boards stand close, only as many as can be read.
fn marks(canvas: &mut Canvas, sheet: &Sheet, view: &Elevation<'_>, (left, foot, right): (f64, f64, f64), units: Units) {
    dimension::origin(canvas, foot, left, right);
    let (mut lettered, mut all) = (f64::MIN, f64::MIN);
    for mark in view.layout.marks.first().into_iter().flat_map(|line| &line.marks) {
        let x = sheet.x(mark.left.exact);
        if x - all < NEAREST_FIGURES {
            dimension::unlettered(canvas, foot, x);
            continue;
        }
        all = x;
        // A narrow drawing has larger letters and leaves out every other figure.
        let minor = x - lettered < 2.0 * NEAREST_FIGURES;
        if !minor {
            lettered = x;
        }
        let place = mark.left.shown_in(units).exact();
        dimension::running(canvas, foot, x, place, units, if minor { "yours minor" } else { "yours" });
        let middle = sheet.x((mark.left.exact + mark.right.exact).half());
        let class = if minor { "name minor" } else { "name" };
        canvas.text((middle, foot - 16.0), Anchor::Middle, class, &mark.board.to_string());
    }
}

/// Flags at the conflicts, in the order and with the numbers of the findings; a clash is hatched where it lies.
pub(super) fn flags(canvas: &mut Canvas, sheet: &Sheet, view: &Elevation<'_>, id: &str) {
    let right = sheet.x(view.plan.length.exact());
    let mut taken: Vec<At> = Vec::new();
    for (index, conflict) in view.layout.conflicts.iter().enumerate() {
        let [left, bottom, far, top] = conflict.place;
        let (low, high) = ((sheet.x(left), sheet.y(bottom)), (sheet.x(far), sheet.y(top)));
        let solid = conflict.severity == Severity::Settle;
        let wide = high.0 - low.0;
        if solid && wide > 1.0 && wide < 200.0 {
            canvas.hatched(id, "clash", low, high, "heavy");
        }
        // What is as wide as an opening or a wall is pointed at by its left edge.
        let along = if wide > 60.0 { low.0 + 6.0 } else { (low.0 + high.0) / 2.0 };
        let place = (along, (low.1 + high.1) / 2.0);
        let pennant = free_place(place, &taken, (sheet.left, right));
        taken.push(pennant);
        canvas.flag(place, pennant, solid, index + 1);
    }
}

/// The nearest place for a pennant that keeps off the others and inside the wall.
fn free_place(place: At, taken: &[At], (left, right): (f64, f64)) -> At {
    let near = (place.0 + 26.0, place.1 - 60.0);
    let aside = [(26.0, -60.0), (-84.0, -60.0), (26.0, 92.0), (-84.0, 92.0)];
    let free = |at: &At| {
        (left..right - 58.0).contains(&at.0)
            && at.1 > 30.0
            && !taken.iter().any(|other| (other.0 - at.0).abs() < 62.0 && (other.1 - at.1).abs() < 46.0)
    };
    let rounds = (0..8).flat_map(|round| {
        aside.iter().map(move |(x, y)| {
            let away = f64::from(round) * 46.0;
            (place.0 + x, place.1 + y + if *y < 0.0 { -away } else { away })
        })
    });
    rounds.into_iter().find(free).unwrap_or(near)
}

pub(super) fn described(view: &Elevation<'_>, units: Units) -> String {
    let mut words = format!(
        "{} boards, {} openings, {} plates; bays differ by {} at most. Running marks, heights and findings stand in the lists below.",
        view.layout.boards,
        view.input.survey.openings.len(),
        view.input.survey.boxes.len(),
        view.layout.spread.text(units)
    );
    for (index, conflict) in view.layout.conflicts.iter().enumerate() {
        words += &format!(" Flag {}: {}.", index + 1, conflict.said.in_units(units).trim_end_matches('.'));
    }
    words
}
