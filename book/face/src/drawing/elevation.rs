//! The elevation of a wall: openings, boards and rails in relief, studs behind, plates, dimensions, and a flag at every conflict.

use calculators::quantity::{Exact, Length, Units};
use calculators::wall::geometry::Span;
use calculators::wall::layout::Curve;
use calculators::wall::measured::Measured;
use calculators::wall::plan::{Layout, Member, MemberKind, WallPlan};
use calculators::wall::scheme::WallInput;
use calculators::wall::survey::{BoxKind, EndKind, KeepClearKind, OpeningKind, Survey};

use super::canvas::{Anchor, At, Canvas};
use super::lettered;
use super::outline::{Outline, Sheet, extend};

/// What of a wall is drawn.
pub struct Elevation<'a> {
    /// The survey and the scheme.
    pub input: &'a WallInput,
    /// The plan made from it.
    pub plan: &'a WallPlan,
    /// The layout of that plan.
    pub layout: &'a Layout,
    /// Whether dimensions, numbers and flags are drawn: not on the small drawings that compare layouts.
    pub dimensioned: bool,
}

/// Width of the wall on the sheet, in drawing units; of one stretch of it where a long wall is drawn in several.
const WALL: f64 = 1_095.0;
/// A longer wall is drawn in stretches under each other, so that its boards can still be told apart.
const LONGEST_STRETCH: f64 = 11_000.0;
/// Room for dimensions: left, top, right, bottom.
const ROOM: [f64; 4] = [96.0, 78.0, 142.0, 188.0];
const SMALL_ROOM: [f64; 4] = [10.0, 10.0, 10.0, 10.0];
/// Draws a wall. `id` must be unique on its page.
pub fn elevation(id: &str, view: &Elevation<'_>, units: Units) -> String {
    let survey = &view.input.survey;
    let outline = Outline::of(survey, view.layout, view.plan.length);
    let sheet = sheet(view, &outline);
    let mut canvas = Canvas::default();
    let surface: Vec<At> =
        outline.floor.iter().chain(outline.ceiling.iter().rev()).map(|(x, y)| (sheet.x(*x), sheet.y(*y))).collect();
    canvas.path(&surface, true, "fill-wall");
    studs(&mut canvas, &sheet, view, &outline);
    base(&mut canvas, &sheet, view, &outline);
    for opening in &survey.openings {
        let bottom = opening.bottom.map_or(outline.floor_at(opening.left.get()), |height| height.get().exact());
        let corners = [opening.left.get().exact(), bottom, opening.right.get().exact(), opening.top.get().exact()];
        match Curve::of_opening(opening) {
            Some(curve) => draw_arch(&mut canvas, &sheet, &curve, corners),
            None => draw_opening(&mut canvas, &sheet, opening.kind, corners, opening.casing_projection.is_some()),
        }
    }
    for member in &view.layout.members {
        draw_member(&mut canvas, &sheet, member);
    }
    for plate in &survey.boxes {
        let (low, high) = (
            (sheet.x(plate.left.get().exact()), sheet.y(plate.bottom.get().exact())),
            (sheet.x(plate.right.get().exact()), sheet.y(plate.top.get().exact())),
        );
        canvas.rect(low, high, "medium fill-sheet");
        let middle = ((low.0 + high.0) / 2.0, (low.1 + high.1) / 2.0);
        if plate.kind == BoxKind::Switch {
            canvas.line((middle.0, middle.1 - 4.0), (middle.0, middle.1 + 4.0), "heavy");
        } else {
            canvas.dot(middle, 2.5, "fill-solid");
        }
    }
    for thing in &survey.keep_clear {
        let corner = |x: Length, y: Length| (sheet.x(x.exact()), sheet.y(y.exact()));
        let (low, high) = (corner(thing.left.get(), thing.bottom.get()), corner(thing.right.get(), thing.top.get()));
        canvas.rect(low, high, "medium fill-sheet");
        if let Some(clearance) = thing.clearance {
            let far = clearance.get();
            let low = corner(thing.left.get() - far, thing.bottom.get() - far);
            let high = corner(thing.right.get() + far, thing.top.get() + far);
            canvas.rect(low, high, "thin dashed");
        }
        if view.dimensioned {
            canvas.text(
                ((low.0 + high.0) / 2.0, (low.1 + high.1) / 2.0 + 5.0),
                Anchor::Middle,
                "minor",
                thing_word(thing.kind),
            );
        }
    }
    frame(&mut canvas, &sheet, survey, &outline, id);
    if view.dimensioned {
        lettered::dimensions(&mut canvas, &sheet, view, &outline, units);
        lettered::flags(&mut canvas, &sheet, view, id);
    }
    if sheet.stretches > 1 {
        canvas.break_up(id, sheet.stretches, WALL, (WALL + ROOM[0] + ROOM[2], sheet.size.1));
    }
    let class = if view.dimensioned { "elevation" } else { "elevation small-drawing" };
    let title = format!("Wall {}, layout {}", view.plan.wall, view.layout.rank);
    let size = if sheet.stretches > 1 {
        (WALL + ROOM[0] + ROOM[2], sheet.size.1 * sheet.stretches as f64)
    } else {
        sheet.size
    };
    canvas.svg(id, class, size, &title, &lettered::described(view, units))
}

fn sheet(view: &Elevation<'_>, outline: &Outline) -> Sheet {
    let room = if view.dimensioned { ROOM } else { SMALL_ROOM };
    let length = view.plan.length.in_mm().max(1.0);
    let stretches = if view.dimensioned { (length / LONGEST_STRETCH).ceil().clamp(1.0, 12.0) as usize } else { 1 };
    let width = WALL * stretches as f64;
    let scale = width / length;
    let tall = (outline.top - outline.bottom).in_mm() * scale;
    let zero = room[1] + outline.top.in_mm() * scale;
    Sheet { scale, left: room[0], zero, size: (width + room[0] + room[2], tall + room[1] + room[3]), stretches }
}

fn studs(canvas: &mut Canvas, sheet: &Sheet, view: &Elevation<'_>, outline: &Outline) {
    for stud in &view.layout.studs.centres {
        let x = sheet.x(stud.exact());
        canvas.line((x, sheet.y(outline.floor_at(*stud))), (x, sheet.y(outline.top)), "thin soft chain");
    }
}

/// The base: its top edge as it was measured, over a falling floor or up a stair.
fn base(canvas: &mut Canvas, sheet: &Sheet, view: &Elevation<'_>, outline: &Outline) {
    let survey = &view.input.survey;
    if survey.base.is_none() {
        return;
    }
    let mut edge: Vec<(Exact, Exact)> =
        Measured::of(survey).foot.points().iter().map(|(x, y)| (x.exact(), y.exact())).collect();
    extend(&mut edge, view.plan.length, Exact::ZERO);
    let top: Vec<At> = edge.iter().map(|(x, y)| (sheet.x(*x), sheet.y(*y))).collect();
    let foot = outline.floor.iter().rev().map(|(x, y)| (sheet.x(*x), sheet.y(*y)));
    let shape: Vec<At> = top.iter().copied().chain(foot).collect();
    canvas.path(&shape, true, "fill-board");
    canvas.path(&top, false, "thin");
}

/// An opening whose head is not level: its sides up to the springing, and the curve between them.
fn draw_arch(canvas: &mut Canvas, sheet: &Sheet, curve: &Curve, [left, bottom, right, _]: [Exact; 4]) {
    let at = |(x, y): (Exact, Exact)| (sheet.x(x), sheet.y(y));
    let mut shape = vec![at((left, bottom))];
    // Each eighth of the width is drawn by eight chords.
    for eighth in 0..8 {
        let place = |k: i64| left + (right - left).times(k, 8).unwrap_or(Exact::ZERO);
        shape.extend(curve.points(Span::new(place(eighth), place(eighth + 1))).into_iter().map(at));
    }
    shape.push(at((right, bottom)));
    canvas.path(&shape, true, "fill-sheet");
    canvas.path(&shape, false, "medium");
}

fn draw_opening(canvas: &mut Canvas, sheet: &Sheet, kind: OpeningKind, corners: [Exact; 4], cased: bool) {
    let (left, right) = (sheet.x(corners[0]), sheet.x(corners[2]));
    let (foot, head) = (sheet.y(corners[1]), sheet.y(corners[3]));
    let casing = if cased { (65.0 * sheet.scale).min((right - left) / 4.0) } else { 0.0 };
    let standing = kind == OpeningKind::Door || kind == OpeningKind::Fireplace;
    let inner_foot = if standing { foot } else { foot - casing };
    canvas.rect((left, foot), (right, head), "fill-board");
    canvas.path(&[(left, foot), (left, head), (right, head)], false, "thin");
    canvas.path(&[(right, head), (right, foot), (left, foot)], false, "heavy");
    let (low, high) = ((left + casing, inner_foot), (right - casing, head + casing));
    match kind {
        OpeningKind::Window => {
            canvas.rect(low, high, "fill-glass");
            let (across, upright) = ((low.0 + high.0) / 2.0, (low.1 + high.1) / 2.0);
            canvas.line((across, low.1), (across, high.1), "medium");
            canvas.line((low.0, upright), (high.0, upright), "medium");
        }
        OpeningKind::Door => {
            canvas.rect(low, high, "fill-sheet");
            canvas.dot((high.0 - 12.0, (low.1 + high.1) / 2.0 + 10.0), 4.0, "medium");
        }
        OpeningKind::Fireplace | OpeningKind::Other => canvas.rect(low, high, "fill-sheet"),
    }
    if casing > 0.0 {
        canvas.line((left, head), high_left(low, high), "thin");
        canvas.line((right, head), high, "thin");
        if !standing {
            canvas.line((left, foot), low, "thin");
            canvas.line((right, foot), (high.0, low.1), "thin");
        }
    }
    // What lies back from the casing has its shade at the left and above.
    canvas.path(&[low, high_left(low, high), high], false, "heavy");
    canvas.path(&[high, (high.0, low.1), low], false, "thin");
}

const fn high_left(low: At, high: At) -> At {
    (low.0, high.1)
}

/// A piece of trim: its face, lit edges thin, shade edges heavy where they stand free.
fn draw_member(canvas: &mut Canvas, sheet: &Sheet, member: &Member) {
    let points: Vec<At> = member.outline.iter().map(|point| sheet.at(*point)).collect();
    if points.len() < 3 {
        return;
    }
    canvas.path(&points, true, "fill-board");
    let upright = matches!(member.kind, MemberKind::Board | MemberKind::UnderBoard | MemberKind::OverBoard);
    for (index, from) in points.iter().enumerate() {
        let to = points[(index + 1) % points.len()];
        // The outline runs anticlockwise on the wall, so the free side of an edge lies to its right there.
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let (faces_right, faces_down) = (dy < -dx.abs(), dx > dy.abs());
        let shade = if upright { faces_right } else { faces_down };
        canvas.line(*from, to, if shade { "heavy" } else { "thin" });
    }
    for notch in &member.notches {
        canvas.rect(
            (sheet.x(notch.left), sheet.y(notch.bottom)),
            (sheet.x(notch.right), sheet.y(notch.top)),
            "medium fill-wall",
        );
    }
    for joint in &member.joints {
        let x = sheet.x(joint.stud.exact());
        let (top, foot) = points.iter().fold((f64::MAX, f64::MIN), |(top, foot), (_, y)| (top.min(*y), foot.max(*y)));
        canvas.line((x - 4.0, foot), (x + 4.0, top), "medium");
    }
}

/// Floor, ceiling and the ends of the wall, as the cut through them.
fn frame(canvas: &mut Canvas, sheet: &Sheet, survey: &Survey, outline: &Outline, id: &str) {
    let line = |line: &[(Exact, Exact)]| line.iter().map(|(x, y)| (sheet.x(*x), sheet.y(*y))).collect::<Vec<At>>();
    let (floor, ceiling) = (line(&outline.floor), line(&outline.ceiling));
    canvas.path(&floor, false, "cut");
    canvas.path(&ceiling, false, "heavy");
    if let (Some(first), Some(last)) = (floor.first(), floor.last()) {
        if survey.stair.is_none() {
            let low = first.1.max(last.1);
            canvas.hatched(id, "ground", (first.0 - 14.0, low + 3.0), (last.0 + 14.0, low + 15.0), "thin soft");
        }
        let ends = [(first, ceiling.first(), &survey.left), (last, ceiling.last(), &survey.right)];
        for (foot, head, end) in ends {
            let class = if is_corner(end.kind) { "cut" } else { "thin" };
            canvas.line(*foot, (foot.0, head.map_or(foot.1, |head| head.1)), class);
        }
    }
}

const fn is_corner(kind: EndKind) -> bool {
    !matches!(kind, EndKind::CasingBay | EndKind::CasingBoard | EndKind::OpenBay | EndKind::OpenBoard)
}

const fn thing_word(kind: KeepClearKind) -> &'static str {
    match kind {
        KeepClearKind::Heater => "heater",
        KeepClearKind::Vent => "vent",
        KeepClearKind::Detector => "detector",
        KeepClearKind::Panel => "panel",
        KeepClearKind::Other => "keep clear",
    }
}
