//! Lines that turn, that depart from what was measured, and rails that were left out.

use super::{Findings, rect, told, way};
use crate::catalogue::Words;
use crate::quantity::Exact;
use crate::wall::defaults::WIDEST_CAULK;
use crate::wall::geometry::{Rect, Span, most_light};
use crate::wall::plan::{Action, Conflict, ConflictKind, CutKind, MemberKind, Severity};
use crate::wall::scheme::{OverLight, TopLine};

/// Boards over the turn of a rail or base, and boards cut to a curve.
pub(super) fn turns(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    for member in scene.members.iter().filter(|member| member.position.is_some()) {
        let has = |kind| member.start.cut == kind || member.end.cut == kind;
        if has(CutKind::TwoCuts) {
            let said = Words::new("the board {} stands over a turn of the line that it meets: one end takes two cuts")
                .with(member.id.clone());
            let ways = vec![
                way(Action::Leave, Words::new("cut it twice, and try it before it is glued")),
                way(Action::MoveBoard, Words::new("another number of boards may stand clear of the turn")),
            ];
            found.push(told(Severity::Note, ConflictKind::Kink, said, ways, vec![member.id.clone()], rect(member)));
        }
        if has(CutKind::Curve) {
            let said = Words::new("the board {} ends on a curve: its left edge is {} long, its right edge {}")
                .with(member.id.clone())
                .with(member.first_edge)
                .with(member.second_edge);
            let template =
                Words::new("make a template of the curve; cut to the longer edge, scribe, and saw on the waste side");
            let ways = vec![way(Action::Scribe, template)];
            found.push(told(Severity::Note, ConflictKind::Curve, said, ways, vec![member.id.clone()], rect(member)));
        }
    }
}

/// Light over a straight rail, the wedge between a level rail and what falls above it, and kinks that lie on no stud.
pub(super) fn departures(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let caulk = WIDEST_CAULK.in_units(scene.units());
    let rails = &scene.ground.input.scheme.rails;
    let Some(ceiling) = &scene.ground.wall.ceiling else { return };
    let level = rails.top_line == TopLine::LevelRail && rails.top.is_none();
    let follows = rails.top_line == TopLine::CeilingRail;
    if !level && !follows {
        return;
    }
    for member in scene.members.iter().filter(|member| member.kind == MemberKind::TopRail) {
        let x = Span::new(member.outline[3].x, member.outline[2].x);
        let line = &scene.ground.boarding.top;
        let inner = Span::new(x.from.max(Exact::ZERO), x.to.min(scene.ground.ends.1));
        let Some((at, light)) = most_light(ceiling, line, inner, caulk) else { continue };
        let height = line.at(at.exact());
        let place = Rect::new(x, Span::new(height, height + light));
        let said = if level {
            Words::new(
                "the rail {} is level under a ceiling or crown that is not: at {} a wedge of {} is open above it",
            )
        } else {
            Words::new("the ceiling rises over the straight rail {}: at {} light of {} is seen above it")
        };
        let said = said.with(member.id.clone()).with(at).with(light);
        let strip = Words::new("cover it with a thin strip along the ceiling");
        let scribe =
            Words::new("scribe the rail's top edge to the ceiling from stock {} wider; its lower edge stays straight")
                .with(light);
        let mut ways = vec![way(Action::Cover, strip), way(Action::Scribe, scribe)];
        if rails.over_light == OverLight::Scribed {
            ways.reverse();
        }
        ways[0].applied = true;
        if level {
            ways.push(way(Action::MoveRail, Words::new("let the rail follow the crown, if the client wants it so")));
        }
        found.push(told(Severity::Note, ConflictKind::Line, said, ways, vec![member.id.clone()], place));
    }
    kinks(scene, found);
}

/// Pieces of a rail that meet where the ceiling kinks or turns: the joint wants something behind it.
fn kinks(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let rails: Vec<_> = scene.members.iter().filter(|member| member.kind == MemberKind::TopRail).collect();
    for pair in rails.windows(2) {
        let at = pair[0].outline[2];
        if at != pair[1].outline[3] {
            continue;
        }
        let half = scene.ground.board().exact().half();
        if scene.studs.iter().any(|stud| (stud.exact() - at.x).size() <= half) {
            continue;
        }
        let said = Words::new("{} and {} meet at {}, where no stud was found")
            .with(pair[0].id.clone())
            .with(pair[1].id.clone())
            .with(at.x);
        let block = way(Action::Blocking, Words::new("fix a block behind the joint, or glue it to the plasterboard"));
        let place = Rect::new(Span::new(at.x, at.x), Span::new(at.y - pair[0].width, at.y));
        let members = vec![pair[0].id.clone(), pair[1].id.clone()];
        found.push(told(Severity::Note, ConflictKind::Joint, said, vec![block], members, place));
    }
}

/// Pieces of rails shorter than the smallest, and rails at things that another line crowds out.
pub(super) fn left_out(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    for (_, place) in &scene.rails.short {
        if place.x.size() <= WIDEST_CAULK.in_units(scene.units()).exact() {
            continue;
        }
        let said = Words::new("from {} to {} a rail would be only {} long and is left out")
            .with(place.x.from)
            .with(place.x.to)
            .with(place.x.size());
        let leave = way(Action::Leave, Words::new("leave it out, and show it to the client"));
        found.push(told(Severity::Note, ConflictKind::Rail, said, vec![leave], Vec::new(), *place));
    }
    for (kind, place) in &scene.rails.crowded {
        let side = if *kind == MemberKind::SillRail { "below the sill" } else { "above the head" };
        let said = Words::new("the rail {} from {} to {} would meet another rail and is left out")
            .with(side)
            .with(place.x.from)
            .with(place.x.to);
        let options = vec![way(Action::MoveRail, Words::new("move the other rail to the line of the sill or head"))];
        found.push(told(Severity::Note, ConflictKind::Rail, said, options, Vec::new(), *place));
    }
}

/// Bays without a frame of mouldings.
pub(super) fn unframed(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let Some(place) = scene.unframed.iter().copied().reduce(Rect::hull) else { return };
    let said = Words::new("{} bays take no frame of mouldings: too small, not straight, or a plate lies under it")
        .with(scene.unframed.len());
    let leave = way(Action::Leave, Words::new("leave them without, and show it to the client"));
    found.push(told(Severity::Note, ConflictKind::Moulding, said, vec![leave], Vec::new(), place));
}
