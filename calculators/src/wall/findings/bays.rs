//! Bays outside the wish, wall that stays bare, strips too narrow for anything.

use super::{Findings, told, way};
use crate::catalogue::Words;
use crate::quantity::Exact;
use crate::wall::defaults::{NARROWEST_RIP, SMALLEST_BAY, WIDEST_CAULK};
use crate::wall::geometry::{Rect, Span};
use crate::wall::plan::{Action, Conflict, ConflictKind, MemberKind, Severity};

/// Bays narrower or wider than wished, group by group, with the reason where no count does better.
pub(super) fn outside_the_wish(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let (least, most) = scene.limits;
    let smallest = SMALLEST_BAY.in_units(scene.units()).exact();
    let foot = &scene.ground.boarding.foot;
    for group in scene.placed {
        let bays = group.bays();
        let (Some(narrowest), Some(widest)) = (bays.iter().min().copied(), bays.iter().max().copied()) else {
            continue;
        };
        let span = Span::new(group.filled.left, group.filled.right);
        let place = Rect::new(span, Span::new(foot.after(span.from), foot.after(span.from)));
        if narrowest < smallest {
            let said = Words::new("between {} and {} a bay of {} is left, narrower than {}")
                .with(span.from)
                .with(span.to)
                .with(narrowest)
                .with(smallest);
            let one = Words::new("one board of {} takes the whole gap, where such stock can be had")
                .with(span.size() + scene.ground.board() * 2);
            let keep = Words::new("keep it, and show it to the client");
            let ways = vec![way(Action::WideBoard, one), way(Action::Leave, keep)];
            found.push(told(Severity::Settle, ConflictKind::NarrowBay, said, ways, Vec::new(), place));
            continue;
        }
        if least <= narrowest && widest <= most {
            continue;
        }
        let bay = if narrowest < least { narrowest } else { widest };
        let boards = i64::try_from(group.filled.boards).unwrap_or(0);
        let with = |count: i64| (span.size() - scene.ground.board().exact() * count).over(count + 1);
        let fits = |count: i64| count >= 0 && with(count).is_some_and(|bay| least <= bay && bay <= most);
        let better = fits(boards - 1) || fits(boards + 1);
        let said = if better {
            Words::new("from {} to {} a bay is {}, outside the wished {} to {}")
        } else {
            Words::new("from {} to {} a bay is {}, outside the wished {} to {}: no number of boards does better there")
        };
        let said = said.with(span.from).with(span.to).with(bay).with(least).with(most);
        let keep = Words::new("keep it, and show it to the client");
        found.push(told(Severity::Note, ConflictKind::Bay, said, vec![way(Action::Leave, keep)], Vec::new(), place));
    }
}

/// The place that stays bare: rows too low for boards, and the clearance of what stands beside them.
fn bare_places(scene: &Findings<'_>) -> Vec<Rect> {
    let field = |over: Span| scene.ground.field(over);
    let mut places: Vec<Rect> = Vec::new();
    for bare in scene.bare.iter().chain(&scene.rails.bare) {
        // A clearance line right below or above the row: nothing closes there, and it is one bare field with the thing's own zone.
        let zones = scene.things.iter().filter(|thing| thing.wide && !thing.closes && thing.whole.x.overlaps(bare.x));
        let place = zones.fold(*bare, |place, thing| {
            let heights = thing.heights().shared(field(bare.x));
            let touches = heights.to == bare.y.from || heights.from == bare.y.to;
            if touches { Rect::new(place.x, place.y.hull(heights)) } else { place }
        });
        let foot = scene.ground.boarding.foot.range(place.x).0;
        let low = scene.bare.iter().filter(|other| other.y.to == place.y.from && other.x.overlaps(place.x));
        let from = low.map(|other| other.y.from).fold(place.y.from, Exact::min);
        let place = Rect::new(place.x, Span::new(from.max(foot), place.y.to));
        match places.iter_mut().find(|other| other.overlaps(place)) {
            Some(other) => *other = other.hull(place),
            None => places.push(place),
        }
    }
    places
}

pub(super) fn bare(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    for place in bare_places(scene) {
        if !place.y.is_open() {
            continue;
        }
        let said = Words::new(
            "from {} to {} the wall stays bare from {} up to {}: no row there is higher than a board is wide",
        )
        .with(place.x.from)
        .with(place.x.to)
        .with(place.y.from)
        .with(place.y.to);
        let ways = vec![
            way(Action::Leave, Words::new("leave it bare, and show it to the client")),
            way(Action::MoveRail, Words::new("leave the short rail out there, where one makes the row too low")),
        ];
        found.push(told(Severity::Note, ConflictKind::Bare, said, ways, Vec::new(), place));
    }
    let caulk = WIDEST_CAULK.in_units(scene.units());
    for strip in scene.rails.strips.iter().filter(|strip| caulk.exact() < strip.y.size()) {
        let said = Words::new("from {} to {} only {} of wall is left for a rail: it stays bare")
            .with(strip.x.from)
            .with(strip.x.to)
            .with(strip.y.size());
        let leave = way(Action::Leave, Words::new("leave it bare, and show it to the client"));
        found.push(told(Severity::Note, ConflictKind::Bare, said, vec![leave], Vec::new(), *strip));
    }
}

/// Strips of wall beside things, too narrow for a board and a bay.
pub(super) fn strips(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let (caulk, rip) = (WIDEST_CAULK.in_units(scene.units()), NARROWEST_RIP.in_units(scene.units()));
    let bare = bare_places(scene);
    for group in scene.strips.iter().filter(|group| caulk.exact() < group.span.size()) {
        for cell in &group.cells {
            let field = scene.ground.field(group.span);
            let rails =
                scene.rails.runs.iter().filter(|run| run.line.kind != MemberKind::Base && run.x.overlaps(group.span));
            let bands: Vec<Span> = rails.map(|run| run.line.band(group.span)).collect();
            for heights in crate::wall::geometry::left_free(cell.heights.shared(field), bands) {
                let place = Rect::new(group.span, heights);
                let hidden = bare.iter().any(|bare| bare.x.covers(place.x) && bare.y.covers(place.y));
                if hidden || !heights.is_open() {
                    continue;
                }
                let narrow = group.span.size() < rip.exact();
                let what = if narrow { ConflictKind::Strip } else { ConflictKind::NarrowBay };
                let said = Words::new("from {} to {} a strip of {} is left beside what stands there, from {} up to {}")
                    .with(place.x.from)
                    .with(place.x.to)
                    .with(group.span.size())
                    .with(heights.from)
                    .with(heights.to);
                let paint = way(Action::Leave, Words::new("it is painted with the wall; show it to the client"));
                found.push(told(Severity::Note, what, said, vec![paint], Vec::new(), place));
            }
        }
    }
}
