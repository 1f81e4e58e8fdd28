//! The elevation of a wall: openings, boards and rails in relief, studs behind, plates, dimensions, and a flag at every conflict.

use calculators::quantity::{Exact, Length, Units};
use calculators::wall::plan::{Layout, Member, MemberKind, Point, Severity, WallPlan};
use calculators::wall::scheme::WallInput;
use calculators::wall::survey::{BoxKind, EndKind, KeepClearKind, OpeningKind, Stair, Survey};

use super::canvas::{Anchor, At, Canvas};
use super::dimension;

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

/// Width of the wall on the sheet, in drawing units.
const WALL: f64 = 1_095.0;
/// Room for dimensions: left, top, right, bottom.
const ROOM: [f64; 4] = [96.0, 78.0, 118.0, 168.0];
const SMALL_ROOM: [f64; 4] = [10.0, 10.0, 10.0, 10.0];
/// Marks nearer than this on the sheet leave out every other figure.
const NEAREST_FIGURES: f64 = 30.0;

/// From the wall to the sheet.
struct Sheet {
    scale: f64,
    left: f64,
    /// Where the zero level lies on the sheet.
    zero: f64,
    size: At,
}

impl Sheet {
    fn x(&self, along: Exact) -> f64 {
        self.left + along.in_mm() * self.scale
    }

    fn y(&self, up: Exact) -> f64 {
        self.zero - up.in_mm() * self.scale
    }

    fn at(&self, point: Point) -> At {
        (self.x(point.x), self.y(point.y))
    }
}

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
    base(&mut canvas, &sheet, survey, &outline);
    for opening in &survey.openings {
        let bottom = opening.bottom.map_or(outline.floor_at(opening.left.get()), |height| height.get().exact());
        let corners = [opening.left.get().exact(), bottom, opening.right.get().exact(), opening.top.get().exact()];
        draw_opening(&mut canvas, &sheet, opening.kind, corners, opening.casing_projection.is_some());
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
        dimensions(&mut canvas, &sheet, view, &outline, units);
        flags(&mut canvas, &sheet, view, id);
    }
    let class = if view.dimensioned { "elevation" } else { "elevation small-drawing" };
    let title = format!("Wall {}, layout {}", view.plan.wall, view.layout.rank);
    canvas.svg(id, class, sheet.size, &title, &described(view, units))
}

/// Floor and ceiling of the wall as drawn, from left to right.
struct Outline {
    floor: Vec<(Exact, Exact)>,
    ceiling: Vec<(Exact, Exact)>,
    top: Exact,
    bottom: Exact,
}

impl Outline {
    fn of(survey: &Survey, layout: &Layout, length: Length) -> Self {
        let highest =
            layout.members.iter().flat_map(|member| &member.outline).map(|point| point.y).max().unwrap_or(Exact::ZERO);
        let heads = survey.openings.iter().map(|opening| opening.top.get().exact()).max().unwrap_or(Exact::ZERO);
        let over = highest.max(heads) + Length::mm(300);
        let mut floor = survey.stair.as_ref().map_or_else(Vec::new, |stair| stair_profile(stair, length));
        let mut ceiling = Vec::new();
        let stairs = !floor.is_empty();
        for station in &survey.stations {
            let foot = (survey.datum.get() - station.datum_to_floor.get()).exact();
            let x = station.at.get().exact();
            if !stairs {
                floor.push((x, foot));
            }
            if let Some(height) = station.floor_to_ceiling {
                ceiling.push((x, foot + height.get()));
            }
        }
        extend(&mut floor, length, Exact::ZERO);
        extend(&mut ceiling, length, over);
        let top = ceiling.iter().map(|(_, y)| *y).max().unwrap_or(over).max(over - Length::mm(200));
        let bottom = floor.iter().map(|(_, y)| *y).min().unwrap_or(Exact::ZERO).min(Exact::ZERO);
        Self { floor, ceiling, top, bottom }
    }

    fn floor_at(&self, along: Length) -> Exact {
        let along = along.exact();
        let before = self.floor.iter().rev().find(|(x, _)| *x <= along);
        before.or(self.floor.first()).map_or(Exact::ZERO, |(_, y)| *y)
    }
}

/// Carries a line level to both ends of the wall.
fn extend(line: &mut Vec<(Exact, Exact)>, length: Length, level: Exact) {
    let (first, last) = (line.first().map_or(level, |(_, y)| *y), line.last().map_or(level, |(_, y)| *y));
    if line.first().is_none_or(|(x, _)| x.is_positive()) {
        line.insert(0, (Exact::ZERO, first));
    }
    if line.last().is_none_or(|(x, _)| *x < length) {
        line.push((length.exact(), last));
    }
}

/// Treads and risers as far as they are known: equal steps between the measured nosings.
fn stair_profile(stair: &Stair, length: Length) -> Vec<(Exact, Exact)> {
    let (run, rise, riser) = (stair.run.get(), stair.rise.get(), stair.first_riser.get());
    let steps = (rise.in_mm() / riser.in_mm().max(1.0)).round().clamp(1.0, 60.0) as i64;
    let right = stair.climbs == calculators::wall::survey::Climbs::Right;
    let first = stair.first_nosing.get().exact();
    let mut profile = Vec::new();
    let mut level = Exact::ZERO;
    for step in 0..=steps {
        let Some(along) = run.exact().times(step, steps) else { continue };
        let nosing = if right { first + along } else { first - along };
        profile.push((nosing, level));
        level = rise.exact().times(step, steps).map_or(level, |up| up + riser);
        profile.push((nosing, level));
    }
    if !right {
        profile.reverse();
    }
    let (start, end) = if right { (Exact::ZERO, level) } else { (level, Exact::ZERO) };
    profile.insert(0, (Exact::ZERO, start));
    profile.push((length.exact(), end));
    profile
}

fn sheet(view: &Elevation<'_>, outline: &Outline) -> Sheet {
    let room = if view.dimensioned { ROOM } else { SMALL_ROOM };
    let scale = WALL / view.plan.length.in_mm().max(1.0);
    let tall = (outline.top - outline.bottom).in_mm() * scale;
    let zero = room[1] + outline.top.in_mm() * scale;
    Sheet { scale, left: room[0], zero, size: (WALL + room[0] + room[2], tall + room[1] + room[3]) }
}

fn studs(canvas: &mut Canvas, sheet: &Sheet, view: &Elevation<'_>, outline: &Outline) {
    for stud in &view.layout.studs.centres {
        let x = sheet.x(stud.exact());
        canvas.line((x, sheet.y(outline.floor_at(*stud))), (x, sheet.y(outline.top)), "thin soft chain");
    }
}

fn base(canvas: &mut Canvas, sheet: &Sheet, survey: &Survey, outline: &Outline) {
    let Some(base) = survey.base else { return };
    if survey.stair.is_some() {
        return;
    }
    let top: Vec<At> = outline.floor.iter().map(|(x, y)| (sheet.x(*x), sheet.y(*y + base.height.get()))).collect();
    let foot = outline.floor.iter().rev().map(|(x, y)| (sheet.x(*x), sheet.y(*y)));
    let shape: Vec<At> = top.iter().copied().chain(foot).collect();
    canvas.path(&shape, true, "fill-board");
    canvas.path(&top, false, "thin");
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
            canvas.hatched(id, "ground", (first.0 - 14.0, low + 3.0), (last.0 + 14.0, low + 15.0), "soft");
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

fn dimensions(canvas: &mut Canvas, sheet: &Sheet, view: &Elevation<'_>, outline: &Outline, units: Units) {
    let (left, right) = (sheet.x(Exact::ZERO), sheet.x(view.plan.length.exact()));
    let head = sheet.y(outline.top);
    dimension::across(canvas, head - 44.0, left, right, view.plan.length.exact(), units);
    if let (Some((_, floor)), Some((_, ceiling))) = (outline.floor.first(), outline.ceiling.first()) {
        dimension::upright(canvas, left - 50.0, sheet.y(*floor), sheet.y(*ceiling), *ceiling - *floor, units);
    }
    let foot = sheet.y(outline.bottom) + 44.0;
    dimension::origin(canvas, foot, left, right);
    let mut last_x = f64::MIN;
    for mark in view.layout.marks.first().into_iter().flat_map(|line| &line.marks) {
        let x = sheet.x(mark.left.exact);
        let crowded = x - last_x < NEAREST_FIGURES;
        dimension::running(
            canvas,
            foot,
            x,
            mark.left.shown_in(units).exact(),
            units,
            if crowded { "yours minor" } else { "yours" },
        );
        if !crowded {
            last_x = x;
        }
        let middle = sheet.x((mark.left.exact + mark.right.exact).half());
        let class = if crowded { "name minor" } else { "name" };
        canvas.text((middle, foot - 16.0), Anchor::Middle, class, &mark.board.to_string());
    }
    let x = right + 34.0;
    let mut heights: Vec<(Exact, f64)> =
        view.layout.offsets.iter().map(|offset| (offset.height, sheet.y(offset.height))).collect();
    heights.sort_by_key(|(height, _)| *height);
    let mut last_y = f64::MAX;
    canvas.line((x, sheet.y(Exact::ZERO)), (x, head), "thin");
    for (height, y) in heights {
        if last_y - y > 24.0 {
            dimension::height(canvas, x, y, height, units);
            last_y = y;
        }
    }
}

/// Flags at the conflicts, in the order and with the numbers of the findings; a clash is hatched where it lies.
fn flags(canvas: &mut Canvas, sheet: &Sheet, view: &Elevation<'_>, id: &str) {
    let mut taken: Vec<At> = Vec::new();
    for (index, conflict) in view.layout.conflicts.iter().enumerate() {
        let [left, bottom, right, top] = conflict.place;
        let (low, high) = ((sheet.x(left), sheet.y(bottom)), (sheet.x(right), sheet.y(top)));
        let solid = conflict.severity == Severity::Settle;
        if solid && (high.0 - low.0) > 1.0 && (high.0 - low.0) < 200.0 {
            canvas.hatched(id, "clash", low, high, "heavy");
        }
        let place = ((low.0 + high.0) / 2.0, (low.1 + high.1) / 2.0);
        let mut pennant = ((place.0 + 26.0).min(sheet.size.0 - 62.0), (place.1 - 84.0).max(30.0));
        while taken.iter().any(|other| (other.0 - pennant.0).abs() < 62.0 && (other.1 - pennant.1).abs() < 54.0) {
            pennant.1 += 56.0;
        }
        taken.push(pennant);
        canvas.flag(place, pennant, solid, index + 1);
    }
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

fn described(view: &Elevation<'_>, units: Units) -> String {
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
