//! A plan looked at a second time, by other means than it was made and held with: points are thrown on the wall and it is asked what
//! covers them; areas are summed where lengths are stated. In floating millimetres throughout.

use calculators::quantity::Exact;
use calculators::wall::plan::{Layout, Member, MemberKind, Severity};
use calculators::wall::scheme::WallInput;
use calculators::wall::survey::{BaseWork, HeadKind};

/// A point this near to an edge is not looked at.
const NEAR: f64 = 0.01;
/// A new base is pressed down to its floor by up to 1/16 in.
const PRESSED: f64 = 1.6;

/// What is wrong with a layout; nothing for a good one.
pub(super) fn faults(input: &WallInput, layout: &Layout) -> Vec<String> {
    let mut found = Vec::new();
    let shapes: Vec<Shape<'_>> = layout.members.iter().filter_map(Shape::of).collect();
    for point in points(input, layout) {
        let over: Vec<&str> =
            shapes.iter().filter(|shape| shape.covers(point)).map(|shape| shape.member.id.as_str()).collect();
        if over.len() > 1 {
            found.push(format!("{point:?} is covered by {over:?}"));
        }
        if let (Some(label), Some(what)) = (over.first(), kept_clear(input, point)) {
            let told = layout.conflicts.iter().any(|conflict| {
                conflict.severity == Severity::Settle && conflict.members.iter().any(|member| member == label)
            });
            if !told {
                found.push(format!("{label} covers {point:?} inside {what}"));
            }
        }
    }
    for shape in &shapes {
        areas(shape, &mut found);
    }
    bays(layout, &shapes, &mut found);
    sums(layout, &mut found);
    found
}

fn mm(place: Exact) -> f64 {
    place.in_mm()
}

struct Shape<'a> {
    member: &'a Member,
    points: Vec<(f64, f64)>,
    low: (f64, f64),
    high: (f64, f64),
}

impl<'a> Shape<'a> {
    fn of(member: &'a Member) -> Option<Self> {
        let points: Vec<(f64, f64)> = member.outline.iter().map(|point| (mm(point.x), mm(point.y))).collect();
        let (mut low, mut high) = ((f64::MAX, f64::MAX), (f64::MIN, f64::MIN));
        for (x, y) in &points {
            low = (low.0.min(*x), low.1.min(*y));
            high = (high.0.max(*x), high.1.max(*y));
        }
        (high.0 - low.0 > NEAR && high.1 - low.1 > NEAR).then_some(Self { member, points, low, high })
    }

    /// Whether a point lies well inside, by the number of edges that a ray to the right crosses.
    fn covers(&self, (x, y): (f64, f64)) -> bool {
        let pressed = if self.member.kind == MemberKind::Base { PRESSED } else { 0.0 };
        if x < self.low.0 + NEAR || self.high.0 - NEAR < x || y < self.low.1 + NEAR || self.high.1 - NEAR - pressed < y
        {
            return false;
        }
        let count = self.points.len();
        let mut inside = false;
        for n in 0..count {
            let ((ax, ay), (bx, by)) = (self.points[n], self.points[(n + 1) % count]);
            let along = libm::hypot(bx - ax, by - ay);
            if along > 0.0 && ((bx - ax) * (y - ay) - (by - ay) * (x - ax)).abs() / along < NEAR + pressed {
                return false;
            }
            if (ay > y) != (by > y) && x < ax + (y - ay) / (by - ay) * (bx - ax) {
                inside = !inside;
            }
        }
        inside
    }

    fn area(&self) -> f64 {
        let count = self.points.len();
        let twice: f64 = (0..count)
            .map(|n| {
                let ((ax, ay), (bx, by)) = (self.points[n], self.points[(n + 1) % count]);
                ax * by - bx * ay
            })
            .sum();
        twice.abs() / 2.0
    }
}

/// Points spread evenly over the wall, and beside every corner of every piece.
fn points(input: &WallInput, layout: &Layout) -> Vec<(f64, f64)> {
    let length = input.survey.lengths.iter().map(|at| at.length.get().in_mm()).fold(0.0, f64::max);
    let tops = layout.members.iter().flat_map(|member| &member.outline).map(|point| mm(point.y));
    let top = tops.fold(0.0, f64::max);
    let mut points = Vec::new();
    // Two irrational steps fill a rectangle without a grid's blind lines.
    for n in 0..600_u32 {
        let share = |step: f64| (f64::from(n) * step).fract();
        points.push((
            share(0.618_033_988_749) * (length + 100.0) - 50.0,
            share(0.754_877_666_247) * (top + 100.0) - 50.0,
        ));
    }
    for point in layout.members.iter().flat_map(|member| &member.outline) {
        let (x, y) = (mm(point.x), mm(point.y));
        points.extend([(x - 0.5, y - 0.7), (x + 0.5, y - 0.7), (x - 0.5, y + 0.7), (x + 0.5, y + 0.7)]);
    }
    points
}

/// The opening or the zone whose inside a point lies in.
fn kept_clear(input: &WallInput, (x, y): (f64, f64)) -> Option<String> {
    let within = |left: f64, right: f64, bottom: f64, top: f64| {
        left + NEAR < x && x < right - NEAR && bottom + NEAR < y && y < top - NEAR
    };
    let opening = input.survey.openings.iter().position(|opening| {
        let level = opening.head.is_none_or(|head| head.kind == HeadKind::Level);
        let out = opening.clearance.map_or(0.0, |out| out.get().in_mm());
        let bottom = opening.bottom.map_or(f64::MIN, |bottom| bottom.get().in_mm() - out);
        let (left, right) = (opening.left.get().in_mm() - out, opening.right.get().in_mm() + out);
        level && opening.apron.is_none() && within(left, right, bottom, opening.top.get().in_mm() + out)
    });
    let zone = input.survey.keep_clear.iter().position(|zone| {
        let out = zone.clearance.map_or(0.0, |out| out.get().in_mm());
        within(
            zone.left.get().in_mm() - out,
            zone.right.get().in_mm() + out,
            zone.bottom.get().in_mm() - out,
            zone.top.get().in_mm() + out,
        )
    });
    opening.map(|n| format!("opening {n}")).or(zone.map(|n| format!("zone {n}")))
}

/// The area of a piece with four corners is its width times the mean of its two long edges; a leaning or turned one is left to others.
fn areas(shape: &Shape<'_>, found: &mut Vec<String>) {
    let member = shape.member;
    let plain = shape.points.len() == 4 && member.taper.is_none() && member.kind != MemberKind::Cap;
    if !plain {
        return;
    }
    let edges = mm(member.first_edge) + mm(member.second_edge);
    let stated = mm(member.width) * edges / 2.0;
    // Mitres at both ends of a rail that turn against each other, and plumb ends of a rake, keep the area of the mean edge too.
    let near = 0.001 * (shape.high.0 - shape.low.0 + shape.high.1 - shape.low.1) + 0.1;
    if (shape.area() - stated).abs() > near * 10.0 {
        found.push(format!("{}: {} mm² drawn, {stated} by its edges", member.id, shape.area()));
    }
}

/// A bay is clear wall: nothing but a moulding stands in its middle, and none is narrower than the difference that is printed allows.
fn bays(layout: &Layout, shapes: &[Shape<'_>], found: &mut Vec<String>) {
    let widths = layout.bays.iter().map(|bay| mm(bay.width));
    let (least, most) = widths.fold((f64::MAX, f64::MIN), |(least, most), width| (least.min(width), most.max(width)));
    if !layout.bays.is_empty() && (most - least - mm(layout.spread)).abs() > 0.001 {
        found.push(format!("bays differ by {}, {} is printed", most - least, mm(layout.spread)));
    }
    for bay in &layout.bays {
        let point = (mm(bay.left) + mm(bay.width) / 2.0, mm(bay.bottom) + mm(bay.height) / 2.0);
        let over = shapes.iter().find(|shape| shape.member.kind != MemberKind::Moulding && shape.covers(point));
        if let Some(shape) = over {
            found.push(format!("{} stands in the bay at {point:?}", shape.member.id));
        }
    }
}

/// What is listed is what is drawn: counts, labels, lengths.
fn sums(layout: &Layout, found: &mut Vec<String>) {
    let drawn: f64 =
        layout.members.iter().filter(|member| member.position.is_some()).map(|member| mm(member.length.exact)).sum();
    if (drawn - mm(layout.totals.board_length)).abs() > 0.01 {
        found.push(format!("boards of {drawn} are drawn, {} are summed", mm(layout.totals.board_length)));
    }
    let whole: usize = layout.members.iter().map(|member| member.joints.len() + 1).sum();
    if layout.cut_list.len() != layout.members.len() || layout.pieces.len() != whole {
        found.push("the lists do not hold what is drawn".to_owned());
    }
    let price = layout.job.price.is_some() && layout.sticks.iter().any(|plan| !plan.without.is_empty());
    if price {
        found.push("a price stands though a piece has no stick".to_owned());
    }
}

/// A survey of a base that stays has no base to cut.
pub(super) fn cuts_a_base_that_stays(input: &WallInput, layout: &Layout) -> bool {
    let stays = input.survey.base.is_none_or(|base| base.work == BaseWork::Stays);
    stays && layout.members.iter().any(|member| member.kind == MemberKind::Base)
}
