//! Where rails run: along the wall between what stops them, and at wide things from what passes on the left to what passes on the right.

use super::barriers::meets;
use crate::quantity::{Exact, Length};
use crate::wall::boarding::RailLine;
use crate::wall::corners::mitre_point;
use crate::wall::defaults::{NARROWEST_RIP, SHORTEST_BASE, SHORTEST_BOARD, SMALLEST_BAY, WIDEST_CAULK};
use crate::wall::geometry::{DEEP, HIGH, Line, Rect, Span, left_free};
use crate::wall::layout::{Column, Ground, Thing};
use crate::wall::plan::{MemberKind, Standing};
use crate::wall::scheme::AtOpenings;
use crate::wall::survey::{End, EndKind};

/// A stretch of a rail without a break.
#[derive(Clone, Debug, PartialEq)]
pub struct RailRun {
    /// The line it lies on.
    pub line: RailLine,
    /// From where to where along the wall.
    pub x: Span,
    /// What its left and right end meet.
    pub ends: [RailEnd; 2],
}

/// What the end of a rail meets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RailEnd {
    /// The end of the wall.
    Wall,
    /// A thing on the wall, by its index.
    Thing(usize),
    /// A board that runs past it, or a pier.
    Board,
    /// A step of its own line.
    Step,
    /// Nothing: flush with the side of its own thing, or cut off for another rail.
    Side,
}

/// Every rail of a wall before it is cut into pieces, and what was left out.
#[derive(Clone, Debug, Default)]
pub struct RailRuns {
    /// Base, rails along the wall, rails at things.
    pub runs: Vec<RailRun>,
    /// Pieces of rails along the wall that would be shorter than the smallest.
    pub short: Vec<(MemberKind, Rect)>,
    /// Rails at things that another line crowds out.
    pub crowded: Vec<(MemberKind, Rect)>,
    /// Bare wall below a sill or above a head with no room for a rail.
    pub strips: Vec<Rect>,
    /// Wall between things above each other where no board is to stand.
    pub bare: Vec<Rect>,
}

/// All rails. `over` is the boards that rails along the wall are cut between, each with its heights; without them those rails are left
/// out.
pub fn rail_runs(ground: &Ground<'_>, things: &[Thing], columns: &[Column], over: Option<&[(Span, Span)]>) -> RailRuns {
    let mut found = RailRuns::default();
    let boarding = ground.boarding;
    for line in boarding.base.iter().chain(&boarding.rails) {
        along(ground, things, columns, line, &[], &mut found);
    }
    for line in over.iter().flat_map(|_| &boarding.between) {
        along(ground, things, columns, line, over.unwrap_or_default(), &mut found);
    }
    at_things(ground, things, columns, &mut found);
    found
}

/// One rail along the wall, stopped by things, piers too narrow for it, the boards it is cut between, and its own steps.
fn along(
    ground: &Ground<'_>,
    things: &[Thing],
    columns: &[Column],
    line: &RailLine,
    over: &[(Span, Span)],
    found: &mut RailRuns,
) {
    let units = ground.settled.units();
    let whole = along_wall(ground, line);
    let mut stops: Vec<(Span, RailEnd)> = Vec::new();
    for (n, thing) in things.iter().enumerate() {
        let met = thing.parts.iter().filter_map(|part| {
            let curved = thing.head.as_ref().filter(|_| part.y == thing.parts[0].y);
            meets(line, *part, curved)
        });
        stops.extend(met.map(|span| (span, RailEnd::Thing(n))));
    }
    let narrow = SHORTEST_BOARD.in_units(units);
    let piers = columns.iter().filter(|column| column.why == Standing::Pier && column.span.size() < narrow.exact());
    let piers = piers.filter(|column| line.kind != MemberKind::Base && column.stands(line.band(column.span)));
    stops.extend(piers.map(|column| (column.span, RailEnd::Board)));
    let crossing = over.iter().filter(|(span, heights)| heights.overlaps(line.band(*span)));
    stops.extend(crossing.map(|(span, _)| (*span, RailEnd::Board)));
    let steps: Vec<Exact> = line.top.steps().into_iter().map(Length::exact).collect();
    let least = if line.kind == MemberKind::Base { SHORTEST_BASE } else { SHORTEST_BOARD }.in_units(units);
    let at_end = |x: Exact, right: bool| {
        let touches = |(span, _): &&(Span, RailEnd)| if right { span.from == x } else { span.to == x };
        stops.iter().find(touches).map_or(RailEnd::Wall, |(_, end)| *end)
    };
    for free in left_free(whole, stops.iter().map(|(span, _)| *span)) {
        let mut cuts = vec![free.from];
        cuts.extend(steps.iter().copied().filter(|step| free.from < *step && *step < free.to));
        cuts.push(free.to);
        for pair in cuts.windows(2) {
            let x = Span::new(pair[0], pair[1]);
            if x.size() < least.exact() {
                found.short.push((line.kind, Rect::new(x, line.band(x))));
                continue;
            }
            let end = |at: Exact, right: bool| {
                if at != free.from && at != free.to { RailEnd::Step } else { at_end(at, right) }
            };
            found.runs.push(RailRun { line: line.clone(), x, ends: [end(x.from, false), end(x.to, true)] });
        }
    }
}

/// From end to end: the clear length at the rail's own height, less what other walls' rails take, plus what laps past a corner.
fn along_wall(ground: &Ground<'_>, line: &RailLine) -> Span {
    let survey = &ground.input.survey;
    let band = line.band(Span::new(ground.ends.0, ground.ends.1));
    let (left, right) = ground.wall.clear_between(band.from, band.to);
    let own = line.section.thickness;
    let inset = |end: &End| {
        let other = end.other_thickness.map_or(ground.input.scheme.board_thickness.get(), Length::from);
        match end.kind {
            EndKind::InsideSecond => other,
            EndKind::OutsideLapping => -other,
            EndKind::OutsideMitred => -mitre_point(own, end.angle.map_or(90.0, |angle| angle.get())),
            _ => Length::ZERO,
        }
    };
    Span::new(left + inset(&survey.left), right - inset(&survey.right))
}

/// A rail under a sill or over a head, before it is looked at beside others.
struct Wanted {
    thing: usize,
    kind: MemberKind,
    line: RailLine,
    /// The sill or head itself.
    edge: Exact,
    x: Span,
    ends: [RailEnd; 2],
}

impl Wanted {
    fn band(&self) -> Span {
        self.line.band(self.x)
    }
}

fn at_things(ground: &Ground<'_>, things: &[Thing], columns: &[Column], found: &mut RailRuns) {
    let mut wanted: Vec<Wanted> = Vec::new();
    for (n, thing) in things.iter().enumerate().filter(|(_, thing)| thing.wide) {
        for kind in [MemberKind::SillRail, MemberKind::HeadRail] {
            wanted.extend(at_thing(ground, things, columns, n, thing, kind, found));
        }
    }
    let wanted = shared(ground, wanted);
    let mut made: Vec<RailRun> = Vec::new();
    // Under sills first: the line the eye follows stays where two would overlap.
    for of in [MemberKind::SillRail, MemberKind::HeadRail] {
        for want in wanted.iter().filter(|want| want.kind == of) {
            let band = want.band();
            let others = found.runs.iter().chain(&made);
            let taken = others.filter(|run| run.line.kind != MemberKind::Base).filter_map(|run| {
                let part = Rect::new(run.x.shared(want.x), band);
                part.x.is_open().then(|| meets(&run.line, part, None)).flatten()
            });
            let least = SHORTEST_BOARD.in_units(ground.settled.units()).exact();
            let free: Vec<Span> = left_free(want.x, taken)
                .into_iter()
                .filter_map(|free| in_the_field(ground, free, band))
                .filter(|free| least <= free.size())
                .collect();
            if free.is_empty() {
                found.crowded.push((want.kind, Rect::new(want.x, band)));
            }
            for x in free {
                let end = |at: Exact, own: Exact, end: RailEnd| if at == own { end } else { RailEnd::Side };
                made.push(RailRun {
                    line: want.line.clone(),
                    x,
                    ends: [end(x.from, want.x.from, want.ends[0]), end(x.to, want.x.to, want.ends[1])],
                });
            }
        }
    }
    made.sort_by_key(|run| (run.line.kind == MemberKind::HeadRail, run.x, run.line.top.at(run.x.from)));
    found.runs.extend(made);
}

/// The part of a stretch over which a band lies above the foot and below the top of the boarding: beside a stair the field ends on a slope.
fn in_the_field(ground: &Ground<'_>, over: Span, band: Span) -> Option<Span> {
    let foot = &ground.boarding.foot;
    // Where the top of the boarding is level a rail may lie beside a top rail that a thing has stopped; under a slope it stays below it.
    let (lowest, highest) = ground.boarding.top.range(over);
    let head = if lowest == highest { &ground.boarding.top } else { &ground.boarding.head };
    if foot.range(over).1 <= band.from && band.to <= head.range(over).0 {
        return Some(over);
    }
    let inside = |x: Exact| foot.at(x).max(foot.after(x)) <= band.from && band.to <= head.at(x).min(head.after(x));
    let places = (0..=64).map(|k| over.from + over.size().times(k, 64).unwrap_or(Exact::ZERO));
    let mut best: Option<Span> = None;
    let mut open: Option<Span> = None;
    for x in places {
        open = inside(x).then(|| open.map_or(Span::new(x, x), |span| Span::new(span.from, x)));
        if open.is_some_and(|span| best.is_none_or(|best| best.size() < span.size())) {
            best = open;
        }
    }
    best.filter(|span| span.is_open())
}

/// The rail at one sill or head; none where there is none to be, no room for it, or a rail along the wall takes its place.
fn at_thing(
    ground: &Ground<'_>,
    things: &[Thing],
    columns: &[Column],
    n: usize,
    thing: &Thing,
    kind: MemberKind,
    found: &mut RailRuns,
) -> Option<Wanted> {
    let asked = ground.input.scheme.rails.at_openings;
    let section = ground.input.scheme.rails.opening_section(ground.input.scheme.board_thickness.get());
    let (width, board) = (section.width, ground.board());
    let under = kind == MemberKind::SillRail;
    let edge = if under { thing.sill()? } else { thing.level_head().filter(|head| *head < HIGH)? };
    let wished = if under {
        matches!(asked, AtOpenings::SillAndHead | AtOpenings::Sill)
    } else {
        matches!(asked, AtOpenings::SillAndHead | AtOpenings::Head)
    };
    let x = thing.sides();
    let (free, next) = free_beside(ground, things, n, edge, under);
    let room = free.size();
    if !room.is_positive() || !wished {
        return None;
    }
    let step = ground.settled.tape.step();
    let taken_over = found.runs.iter().any(|run| {
        let own = if under { run.line.top.at(x.middle()) } else { run.line.bottom.at(x.middle()) };
        run.line.kind != MemberKind::Base && (own - edge).size() <= step && run.x.covers(x)
    });
    if taken_over {
        return None;
    }
    let caulk = WIDEST_CAULK.in_units(ground.settled.units());
    if room < width.exact() {
        if caulk.exact() < room {
            found.strips.push(Rect::new(x, free));
        }
        return None;
    }
    let nm = Length::from_nm(1);
    let top = if under { edge.down_to(nm) } else { edge.up_to(nm) + width };
    let line = RailLine::under(kind, Line::level(top), section);
    let (x, mut ends) = reach(ground, things, columns, n, x, edge, line.band(x))?;
    let whole = along_wall(ground, &line);
    if x.from <= whole.from {
        ends[0] = RailEnd::Wall;
    }
    if whole.to <= x.to {
        ends[1] = RailEnd::Wall;
    }
    let x = x.shared(whole);
    if let Some(other) = next.filter(|other| things[*other].wide) {
        let both = asked == AtOpenings::SillAndHead;
        // One rail under the upper sill where there is room for no more; over a clearance line no board stands under it either.
        let one_rail = room <= (width * 2 + board).exact();
        let no_boards = room <= (width + board).exact() || (one_rail && !things[other].closes);
        if under && no_boards {
            found.bare.push(Rect::new(x, Span::new(free.from, free.to - width)));
        }
        if !under && both && one_rail {
            return None;
        }
    }
    Some(Wanted { thing: n, kind, line, edge, x, ends })
}

/// The free heights below a sill or above a head, up to the next thing that shares its width, or to the foot or the head of the boarding.
fn free_beside(ground: &Ground<'_>, things: &[Thing], n: usize, edge: Exact, under: bool) -> (Span, Option<usize>) {
    let x = things[n].sides();
    let others = things.iter().enumerate().filter(|(other, _)| *other != n);
    let parts = others.flat_map(|(other, thing)| thing.parts.iter().map(move |part| (other, *part)));
    let across = parts.filter(|(_, part)| part.x.overlaps(x));
    if under {
        let foot = ground.boarding.foot.range(x).1;
        let next = across.filter(|(_, part)| part.y.to <= edge).max_by_key(|(_, part)| part.y.to);
        match next.filter(|(_, part)| foot < part.y.to) {
            Some((other, part)) => (Span::new(part.y.to, edge), Some(other)),
            None => (Span::new(foot, edge), None),
        }
    } else {
        let head = ground.boarding.head.range(x).0;
        let next = across.filter(|(_, part)| edge <= part.y.from).min_by_key(|(_, part)| part.y.from);
        match next.filter(|(_, part)| part.y.from < head) {
            Some((other, part)) => (Span::new(edge, part.y.from), Some(other)),
            None => (Span::new(edge, head), None),
        }
    }
}

/// How far a rail at a thing runs: cut by other things at its height, and on to the column or thing that passes beside its own.
fn reach(
    ground: &Ground<'_>,
    things: &[Thing],
    columns: &[Column],
    n: usize,
    own: Span,
    edge: Exact,
    band: Span,
) -> Option<(Span, [RailEnd; 2])> {
    let far = ground.board() + SMALLEST_BAY.in_units(ground.settled.units());
    let others = things.iter().enumerate().filter(|(other, _)| *other != n);
    let stops: Vec<(Span, RailEnd)> = others
        .flat_map(|(other, thing)| thing.parts.iter().map(move |part| (other, *part)))
        .filter(|(_, part)| part.y.overlaps(band))
        .map(|(other, part)| (part.x, RailEnd::Thing(other)))
        .collect();
    let free = left_free(own, stops.iter().map(|(span, _)| *span)).into_iter().max_by_key(|free| free.size())?;
    let boards = columns.iter().filter(|column| column.passes(edge)).map(|column| (column.span, RailEnd::Board));
    let all: Vec<(Span, RailEnd)> = stops.iter().copied().chain(boards).collect();
    let left = if free.from == own.from {
        let near = all.iter().filter(|(span, _)| span.to <= free.from && free.from - span.to <= far);
        let next = near.map(|(span, end)| (span.to, *end)).max_by_key(|(at, _)| *at);
        next.unwrap_or((free.from, RailEnd::Side))
    } else {
        (free.from, end_at(&stops, free.from, false))
    };
    let right = if free.to == own.to {
        let near = all.iter().filter(|(span, _)| free.to <= span.from && span.from - free.to <= far);
        let next = near.map(|(span, end)| (span.from, *end)).min_by_key(|(at, _)| *at);
        next.unwrap_or((free.to, RailEnd::Side))
    } else {
        (free.to, end_at(&stops, free.to, true))
    };
    Some((Span::new(left.0, right.0), [left.1, right.1]))
}

fn end_at(stops: &[(Span, RailEnd)], at: Exact, right: bool) -> RailEnd {
    let touches = |(span, _): &&(Span, RailEnd)| if right { span.from == at } else { span.to == at };
    stops.iter().find(touches).map_or(RailEnd::Side, |(_, end)| *end)
}

/// Things with equal sills or heads and less than a rip between them share one rail.
fn shared(ground: &Ground<'_>, mut wanted: Vec<Wanted>) -> Vec<Wanted> {
    let step = ground.settled.tape.step();
    let strip = NARROWEST_RIP.in_units(ground.settled.units());
    wanted.sort_by_key(|want| (want.kind == MemberKind::HeadRail, want.x));
    let mut found: Vec<Wanted> = Vec::with_capacity(wanted.len());
    for want in wanted {
        let joins = |other: &&mut Wanted| {
            other.kind == want.kind
                && (other.edge - want.edge).size() <= step
                && want.x.from - other.x.to < strip.exact()
                && other.thing != want.thing
        };
        match found.iter_mut().rev().find(joins) {
            Some(other) => {
                if other.x.to <= want.x.to {
                    other.ends[1] = want.ends[1];
                }
                other.x = other.x.hull(want.x);
                let lower = (want.edge < other.edge) == (want.kind == MemberKind::SillRail);
                if lower {
                    (other.edge, other.line) = (want.edge, want.line);
                }
            }
            None => found.push(want),
        }
    }
    debug_assert!(found.iter().all(|want| DEEP < want.edge));
    found
}
