//! Dimensions: a chain with 45° ticks, running dimensions from an origin, heights from the floor.

use calculators::quantity::{Exact, Units};

use super::canvas::{Anchor, Canvas};

const TICK: f64 = 7.0;

/// A chain dimension along a horizontal line, its figure in a gap of the line at `middle`.
pub(super) fn across(canvas: &mut Canvas, y: f64, (from, middle, to): (f64, f64, f64), length: Exact, units: Units) {
    let gap = ((to - from) / 2.0 - 8.0).clamp(0.0, 70.0);
    canvas.line((from, y), (middle - gap, y), "thin");
    canvas.line((middle + gap, y), (to, y), "thin");
    for x in [from, to] {
        canvas.line((x, y - 12.0), (x, y + 26.0), "thin");
        canvas.line((x - TICK, y + TICK), (x + TICK, y - TICK), "medium");
    }
    canvas.length((middle, y + 7.0), Anchor::Middle, "yours", length, units);
}

/// A chain dimension along an upright line at the left of a drawing.
pub(super) fn upright(canvas: &mut Canvas, x: f64, from: f64, to: f64, length: Exact, units: Units) {
    let middle = (from + to) / 2.0;
    let gap = ((to - from).abs() / 2.0 - 8.0).clamp(0.0, 70.0);
    let (high, low) = (from.min(to), from.max(to));
    canvas.line((x, high), (x, middle - gap), "thin");
    canvas.line((x, middle + gap), (x, low), "thin");
    for y in [high, low] {
        canvas.line((x - 12.0, y), (x + 12.0, y), "thin");
        canvas.line((x - TICK, y + TICK), (x + TICK, y - TICK), "medium");
    }
    canvas.length((x + 7.0, middle), Anchor::Up, "yours", length, units);
}

/// The origin of running dimensions, at the left end.
pub(super) fn origin(canvas: &mut Canvas, y: f64, from: f64, to: f64) {
    canvas.line((from, y), (to, y), "thin");
    canvas.dot((from, y), 6.0, "medium fill-paper");
}

/// A mark on the line of running dimensions without its figure, where figures would stand in each other.
pub(super) fn unlettered(canvas: &mut Canvas, y: f64, x: f64) {
    canvas.line((x, y - 6.0), (x, y + 6.0), "thin");
}

/// One running dimension: an open arrow on the line and the figure below it, turned.
pub(super) fn running(canvas: &mut Canvas, y: f64, x: f64, place: Exact, units: Units, class: &str) {
    canvas.path(&[(x - 9.0, y - 5.0), (x, y), (x - 9.0, y + 5.0)], false, "thin");
    canvas.line((x, y - 10.0), (x, y + 10.0), "thin");
    canvas.length((x - 6.0, y + 20.0), Anchor::Down, class, place, units);
}

/// One height at the right of a drawing; its figure may stand higher than its line.
pub(super) fn height(canvas: &mut Canvas, x: f64, y: f64, (figure, height): (f64, Exact), units: Units) {
    canvas.line((x - 26.0, y), (x + 8.0, y), "thin");
    if figure < y {
        canvas.line((x + 8.0, y), (x + 14.0, figure), "thin");
    }
    canvas.path(&[(x - 5.0, y + 9.0), (x, y), (x + 5.0, y + 9.0)], false, "thin");
    canvas.length((x + 18.0, figure + 7.0), Anchor::Start, "yours", height, units);
}
