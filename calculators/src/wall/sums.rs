//! Lengths and areas of a layout, its nails, and its pieces for the saw.

use super::defaults::Settled;
use super::geometry::{DEEP, Line};
use super::layout::{Ground, Source, Thing};
use super::plan::{CutKind, Member, MemberKind, MemberNails, Nails, Piece, Position, Standing, StudHits, Totals};
use super::scheme::{Glue, WallInput};
use super::survey::{Agreed, EndKind};
use crate::fixing::{nails, studs};
use crate::quantity::{Amount, Exact, Length};
use crate::stock::scarf::LongRail;

/// The boards that meet a stud and those that do not.
pub fn stud_hits(positions: &[Position], centres: &[Length], settled: &Settled) -> StudHits {
    let margin = super::defaults::STUD_MARGIN.in_units(settled.units());
    let hit = |position: &&Position| studs::hit((position.board_left, position.board_right), centres, margin).is_some();
    let (hits, misses): (Vec<&Position>, Vec<&Position>) = positions.iter().partition(hit);
    StudHits {
        known: !centres.is_empty(),
        centres: centres.to_vec(),
        hits: hits.iter().map(|position| position.number).collect(),
        misses: misses.iter().map(|position| position.number).collect(),
    }
}

/// Nails and pins of every member.
pub fn nail_list(members: &[Member], input: &WallInput, settled: &Settled) -> Nails {
    let units = settled.units();
    let rail = input.scheme.rails.thickness.map_or(input.scheme.board_thickness.get(), Length::from);
    let window = nails::window(rail, settled.plasterboard, nails::penetration(units));
    let per_member: Vec<MemberNails> = members
        .iter()
        .map(|member| {
            let length = member.length.exact.up_to(Length::from_nm(1));
            let (in_member, pins) = match member.position {
                Some(_) => (nails::in_board(length, units), nails::pins(length, units)),
                None if member.studs.is_empty() => (0, nails::pins(length, units)),
                None => (nails::in_rail(member.studs.len(), member.joints.len() + 1), 0),
            };
            MemberNails { member: member.id.clone(), nails: in_member, pins }
        })
        .collect();
    let sum = |boards: bool| {
        let chosen = members.iter().zip(&per_member).filter(|(member, _)| member.position.is_some() == boards);
        chosen.map(|(_, nails)| nails.nails).sum::<usize>()
    };
    let (in_rails, in_boards) = (sum(false), sum(true));
    let pins = per_member.iter().map(|nails| nails.pins).sum();
    Nails {
        rail_from: window.from,
        rail_below: window.below,
        rail_nail: nails::choice(window, &nails::sold(units)),
        pin: nails::pin(input.scheme.board_thickness.get().min(rail), settled.plasterboard, &nails::sold(units)),
        in_rails,
        in_boards,
        pins,
        heads: in_rails + in_boards + pins,
        per_member,
    }
}

/// Every piece with its stop setting; joined rails as their parts. `ends` says of each rail which of its ends are closed: between two
/// closed ends the last part takes what is left, never over.
pub fn pieces(members: &[Member], ends: &[[bool; 2]], settled: &Settled) -> Vec<Piece> {
    let saw = settled.saw_tape;
    let whole = |(member, ends): (&Member, &[bool; 2])| {
        let width = member.width.up_to(Length::from_nm(1));
        let piece = |label: String, length: Length| Piece {
            label,
            width,
            thickness: member.thickness,
            length,
            rail: member.position.is_none(),
        };
        if member.joints.is_empty() {
            return vec![piece(member.id.clone(), member.length.shown())];
        }
        let lap = member.joints.first().map_or(Length::ZERO, |joint| joint.lap.nearest(Length::from_nm(1)));
        let joints: Vec<Length> = member.joints.iter().map(|joint| joint.along).collect();
        let to = member.length.exact.nearest(Length::from_nm(1));
        let rail = LongRail { from: Length::ZERO, to, usable: Length::LONGEST, lap, studs: &[] };
        let mut parts: Vec<Length> =
            rail.pieces(&joints).into_iter().map(|length| saw.mark(length.exact()).shown()).collect();
        if let ([true, true], Some((last, others))) = (ends, parts.split_last_mut()) {
            let laps = lap * i64::try_from(joints.len()).unwrap_or(0);
            *last = saw.short((member.length.shown() + laps - others.iter().copied().sum()).exact()).shown();
        }
        let named = parts.into_iter().enumerate();
        named.map(|(n, length)| piece(format!("{}{}", member.id, part_name(n)), length)).collect()
    };
    members.iter().zip(ends).flat_map(whole).collect()
}

/// Parts of a piece are a to z, then aa, ab and so on.
pub fn part_name(n: usize) -> String {
    let letter = |n: usize| char::from(b'a' + u8::try_from(n % 26).unwrap_or(0));
    match (n / 26).checked_sub(1) {
        None => letter(n).to_string(),
        Some(before) => format!("{}{}", part_name(before), letter(n)),
    }
}

/// What is summed over.
pub struct Whole<'a> {
    /// The wall, its lines and settings.
    pub ground: &'a Ground<'a>,
    /// What stands on the wall.
    pub things: &'a [Thing],
    /// Boards at their places.
    pub positions: &'a [Position],
    /// Every piece of trim.
    pub members: &'a [Member],
}

/// Lengths and areas that paint, caulk, tape and price are worked out from.
pub fn totals(whole: &Whole<'_>) -> Totals {
    let sum = |lengths: &mut dyn Iterator<Item = Exact>| lengths.fold(Exact::ZERO, |total, length| total + length);
    let boards = || whole.members.iter().filter(|member| member.position.is_some());
    let rails = || whole.members.iter().filter(|member| is_rail(member.kind));
    let bases = || whole.members.iter().filter(|member| member.kind == MemberKind::Base);
    let both_edges = |member: &Member| member.first_edge + member.second_edge;

    let all_edges = sum(&mut boards().map(both_edges));
    let hidden = sum(&mut boards().map(|member| hidden_edge(member, whole)));
    let board_edges = all_edges - hidden;
    let butts = sum(&mut rails().map(|rail| butting(rail, whole)));
    let rail_edges = sum(&mut rails().map(both_edges)) - butts;
    let foot = base_line(whole);
    let thickness = whole.ground.input.scheme.board_thickness.get().in_m();
    let rail_thickness = whole.ground.input.scheme.rails.thickness.map_or(thickness, |rail| rail.get().in_m());
    let faces = whole.members.iter().filter(|member| member.kind != MemberKind::Base);
    let face = |member: &Member| member.width.in_mm() * middle_length(member).in_mm() / 1e6;
    let every_board = whole.ground.input.scheme.glue == Glue::Boards;
    let glued =
        whole.members.iter().filter(|member| member.studs.is_empty() || (every_board && member.position.is_some()));
    let angled = |cut: CutKind| usize::from(!matches!(cut, CutKind::Square | CutKind::Scarf));
    Totals {
        board_length: sum(&mut boards().map(|member| member.length.exact)),
        glued: sum(&mut glued.map(|member| member.length.exact)),
        rail_length: sum(&mut rails().map(|member| member.length.exact)),
        base_length: sum(&mut bases().map(|member| member.length.exact)),
        board_edges,
        rail_edges,
        caulk: all_edges + rail_edges + foot,
        field: Amount::of(field(whole)),
        faces: Amount::of(faces.map(face).sum()),
        edges: Amount::of(board_edges.in_mm() / 1e3 * thickness + rail_edges.in_mm() / 1e3 * rail_thickness),
        base_face: Amount::of(base_face(whole)),
        openings: whole.ground.input.survey.openings.len(),
        plates: whole
            .ground
            .input
            .survey
            .boxes
            .iter()
            .filter(|plate| plate.agreed != Some(Agreed::MoveBox))
            .map(|plate| plate.kind)
            .collect(),
        angled_cuts: whole.members.iter().map(|member| angled(member.start.cut) + angled(member.end.cut)).sum(),
    }
}

const fn is_rail(kind: MemberKind) -> bool {
    matches!(kind, MemberKind::TopRail | MemberKind::MidRail | MemberKind::SillRail | MemberKind::HeadRail)
}

fn middle_length(member: &Member) -> Exact {
    (member.first_edge + member.second_edge).half()
}

fn place<'a>(member: &Member, whole: &'a Whole<'_>) -> Option<&'a Position> {
    member.position.and_then(|number| whole.positions.get(number.checked_sub(1)?))
}

/// The long edge of an end board that lies against another wall or a casing.
fn hidden_edge(member: &Member, whole: &Whole<'_>) -> Exact {
    let Some(position) = place(member, whole).filter(|place| matches!(place.why, Standing::End | Standing::Pier))
    else {
        return Exact::ZERO;
    };
    let against = |kind| matches!(kind, EndKind::InsideFirst | EndKind::InsideSecond | EndKind::CasingBoard);
    let reach = whole.ground.input.scheme.board_width.get().exact();
    let (left, right) = (position.board_left, whole.ground.wall.length.exact() - position.board_right);
    let mut hidden = Exact::ZERO;
    if left < reach && against(whole.ground.input.survey.left.kind) {
        hidden = hidden + member.first_edge;
    }
    if right < reach && against(whole.ground.input.survey.right.kind) {
        hidden = hidden + member.second_edge;
    }
    hidden
}

/// The width of all boards that butt against a rail, from below and from above.
fn butting(rail: &Member, whole: &Whole<'_>) -> Exact {
    let (from, to) = (rail.outline[3].x, rail.outline[2].x);
    let near = Length::um(100).exact();
    let edge = |one: usize, other: usize| {
        let (one, other) = (rail.outline[one].y, rail.outline[other].y);
        (one.min(other) - near, one.max(other) + near)
    };
    let (low, high) = (edge(0, 1), edge(2, 3));
    let on = |line: (Exact, Exact), height: Exact| line.0 <= height && height <= line.1;
    let butts = |member: &&Member| {
        // Heights first: they are whole numbers, places along the wall are not.
        let heights = || member.outline.iter().map(|point| point.y);
        let below = heights().all(|y| y <= low.1) && heights().any(|y| on(low, y));
        let above = heights().all(|y| high.0 <= y) && heights().any(|y| on(high, y));
        let centre = |place: &Position| (place.left + place.right).half();
        (below || above) && place(member, whole).is_some_and(|place| from < centre(place) && centre(place) < to)
    };
    let boards = whole.members.iter().filter(|member| member.position.is_some()).filter(butts);
    boards
        .filter_map(|member| place(member, whole))
        .fold(Exact::ZERO, |total, place| total + (place.right - place.left))
}

/// The line of base or floor between boards, doors left out.
fn base_line(whole: &Whole<'_>) -> Exact {
    let doors = whole.things.iter().filter(|thing| thing.heights().from == DEEP);
    let doors = doors.fold(Exact::ZERO, |total, thing| total + thing.whole.x.size());
    let boards = whole.positions.iter().filter(|position| {
        let foot = whole.ground.boarding.foot.after(position.board_left);
        whole.members.iter().any(|member| member.position == Some(position.number) && member.outline[0].y == foot)
    });
    let boards = boards.fold(Exact::ZERO, |total, position| total + (position.right - position.left));
    (whole.ground.wall.length.exact() - doors - boards).max(Exact::ZERO)
}

/// Wall between foot and top, openings taken off, in square metres.
fn field(whole: &Whole<'_>) -> f64 {
    let length = whole.ground.wall.length.exact();
    let relief = whole.ground.input.scheme.relief.map_or(Length::ZERO, Length::from);
    let foot = whole.ground.boarding.foot.raised(-relief);
    let all = area(&foot, &whole.ground.boarding.top, Exact::ZERO, length);
    let openings = whole.things.iter().filter_map(|thing| match thing.source {
        Source::Opening(n) => whole.ground.input.survey.openings.get(n),
        Source::KeepClear(_) => None,
    });
    let taken = openings.map(|opening| {
        let (left, right) = (opening.left.get().exact(), opening.right.get().exact());
        let middle = (left + right).half();
        let low = opening.bottom.map_or(foot.at(middle), |bottom| bottom.get().exact()).max(foot.at(middle));
        let high = whole.ground.boarding.top.at(middle).min(opening.top.get().exact());
        (right - left).in_mm() * (high - low).in_mm().max(0.0) / 1e6
    });
    (all - taken.sum::<f64>()).max(0.0)
}

/// The area between two lines, exact for lines that are straight between their points; square metres.
fn area(low: &Line, high: &Line, from: Exact, to: Exact) -> f64 {
    let inner = low.points().iter().chain(high.points()).map(|(x, _)| x.exact());
    let mut places: Vec<Exact> = inner.filter(|x| from < *x && *x < to).chain([from, to]).collect();
    places.sort_unstable();
    let mean = |pair: &[Exact]| {
        // Two points a hair inside, so that a step belongs to neither side.
        let at = |share: i64| pair[0] + (pair[1] - pair[0]).times(share, 1_000).unwrap_or(Exact::ZERO);
        let clear = |x: Exact| (high.at(x) - low.at(x)).in_mm();
        (pair[1] - pair[0]).in_mm() * (clear(at(1)) + clear(at(999))) / 2.0
    };
    places.windows(2).map(mean).sum::<f64>() / 1e6
}

fn base_face(whole: &Whole<'_>) -> f64 {
    let Some(base) = whole.ground.input.survey.base else { return 0.0 };
    let doors = whole.things.iter().filter(|thing| thing.heights().from == DEEP);
    let doors = doors.fold(Exact::ZERO, |total, thing| total + thing.whole.x.size());
    (whole.ground.wall.length.exact() - doors).in_mm().max(0.0) * base.height.get().in_mm() / 1e6
}
