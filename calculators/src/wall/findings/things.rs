//! Trim at things: inside a clearance, beside one that nobody has read, and ends that nothing closes.

use super::{Findings, rect, told, way};
use crate::catalogue::Words;
use crate::quantity::Exact;
use crate::wall::defaults::WIDEST_CAULK;
use crate::wall::geometry::{Rect, Span};
use crate::wall::layout::Source;
use crate::wall::members::RailEnd;
use crate::wall::plan::{Action, Conflict, ConflictKind, Member, MemberKind, Severity};
use crate::wall::survey::OpeningKind;

/// Trim within a clearance, and clearances that nobody has read.
pub(super) fn clearances(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let survey = &scene.ground.input.survey;
    let unread = |source: Source| match source {
        Source::KeepClear(n) => survey.keep_clear[n].clearance.is_none(),
        Source::Opening(n) => {
            survey.openings[n].kind == OpeningKind::Fireplace && survey.openings[n].clearance.is_none()
        }
    };
    for thing in scene.things {
        let place = Rect::new(thing.own.x, thing.own.y.shared(scene.ground.field(thing.whole.x)));
        if unread(thing.source) {
            let said = Words::new("nobody has read yet how far trim must stay from the part at {} to {}")
                .with(thing.own.x.from)
                .with(thing.own.x.to);
            let read = Words::new("read the label or the local code, and write the clearance into the survey");
            let ways = vec![way(Action::Measure, read)];
            found.push(told(Severity::Settle, ConflictKind::ClearanceUnknown, said, ways, Vec::new(), place));
        }
        let inside: Vec<String> = scene
            .members
            .iter()
            .filter(|member| thing.parts.iter().any(|part| enters(member, *part)) && !over_a_curve(member, thing))
            .map(|member| member.id.clone())
            .collect();
        if inside.is_empty() {
            continue;
        }
        let said = Words::new("trim stands within {} of the part at {} to {}")
            .with(thing.clearance)
            .with(thing.own.x.from)
            .with(thing.own.x.to);
        let keep = Words::new("keep trim out of the clearance; the label and the local code decide, not this plan");
        found.push(told(
            Severity::Settle,
            ConflictKind::Clearance,
            said,
            vec![way(Action::KeepOut, keep)],
            inside,
            place,
        ));
    }
}

/// Beside a curved head a board may stand inside the rectangle round the opening.
fn over_a_curve(member: &Member, thing: &crate::wall::layout::Thing) -> bool {
    thing.head.is_some_and(|curve| member.outline.iter().all(|point| curve.at(point.x) <= point.y))
}

/// Whether a piece lies inside a rectangle: its outline over the rectangle's width against the rectangle's heights.
fn enters(member: &Member, part: Rect) -> bool {
    let whole = rect(member);
    if !whole.overlaps(part) {
        return false;
    }
    let across = whole.x.shared(part.x);
    match member.position {
        Some(_) => true,
        // A raked rail may pass over a corner of the rectangle round it.
        None => {
            let [a, b, c, d] = [0, 1, 2, 3].map(|n| member.outline[n]);
            let on = |from: crate::wall::plan::Point, to: crate::wall::plan::Point, x: Exact| {
                if from.y == to.y || from.x == to.x {
                    return from.y;
                }
                let share = (x - from.x).ratio_to(to.x - from.x);
                let rise = crate::quantity::Length::nearest_mm((to.y - from.y).in_mm() * share);
                from.y + rise
            };
            let heights = [across.from, across.to].map(|x| Span::new(on(a, b, x), on(d, c, x)));
            heights[0].hull(heights[1]).overlaps(part.y)
                && heights.iter().any(|at| at.grown(-crate::quantity::MICROMETRE).overlaps(part.y))
        }
    }
}

/// Ends of boards and rails that nothing carries or closes.
pub(super) fn ends_in_the_air(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let told_already = |found: &[Conflict], id: &String| {
        found.iter().any(|other| {
            matches!(other.what, ConflictKind::Clearance | ConflictKind::Plate) && other.members.contains(id)
        })
    };
    for (member, ends) in scene.members.iter().zip(scene.ends) {
        if member.position.is_none() || *ends == [false, false] || told_already(found, &member.id) {
            continue;
        }
        let which = if ends[0] { "foot" } else { "head" };
        let said =
            Words::new("the {} of board {} ends on a clearance line or in the air: nothing carries or closes it there")
                .with(which)
                .with(member.id.clone());
        found.push(in_the_air(said, member));
    }
    for run in &scene.rails.runs {
        for (n, end) in run.ends.iter().enumerate() {
            let at = if n == 0 { run.x.from } else { run.x.to };
            let open = match end {
                RailEnd::Side => true,
                RailEnd::Thing(thing) => !scene.things[*thing].closes,
                RailEnd::Wall | RailEnd::Board | RailEnd::Step => false,
            };
            if !open || run.line.kind == MemberKind::Base || flush(scene, at, run.line.band(run.x)) {
                continue;
            }
            let Some(member) = scene
                .members
                .iter()
                .find(|member| member.kind == run.line.kind && (rect(member).x.from == at || rect(member).x.to == at))
            else {
                continue;
            };
            let said =
                Words::new("the rail {} ends at {} with nothing that closes its end").with(member.id.clone()).with(at);
            found.push(in_the_air(said, member));
        }
    }
}

fn in_the_air(said: Words, member: &Member) -> Conflict {
    let ways = vec![
        way(Action::MoveRail, Words::new("run a rail there for it to end on")),
        way(Action::Leave, Words::new("leave that piece out")),
    ];
    told(Severity::Settle, ConflictKind::End, said, ways, vec![member.id.clone()], rect(member))
}

/// Whether a rail's end is flush with the outer edge of a board under or over it.
fn flush(scene: &Findings<'_>, at: Exact, band: Span) -> bool {
    let near = WIDEST_CAULK.in_units(scene.units()).exact();
    scene.members.iter().filter(|member| member.position.is_some()).any(|member| {
        let place = rect(member);
        let beside = (place.x.from - at).size() <= near || (place.x.to - at).size() <= near;
        beside && place.y.from <= band.to + near && band.from - near <= place.y.to
    })
}
