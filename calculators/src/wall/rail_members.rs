//! Rails and new base as pieces of trim: interrupted at openings, mitred where they turn, scarfed on studs.

use super::boarding::{Boarding, RailLine};
use super::corners::mitre_point;
use super::defaults::{JOINT_DISTANCE, Settled};
use super::frame::Frame;
use super::line::Line;
use super::measured::Measured;
use super::plan::{CutKind, EndCut, Joint, Member, MemberKind, Point};
use super::scheme::{AtOpenings, WallInput};
use super::sticks::longest_for_rails;
use super::survey::{BaseWork, EndKind};
use crate::fixing::studs;
use crate::quantity::{Amount, Exact, Length};
use crate::stock::scarf::{LongRail, lap};

/// A line steeper than this many degrees is cut to its slope.
const SLOPING: f64 = 0.5;

/// What rails are made with.
pub struct RailWork<'a> {
    /// The whole input.
    pub input: &'a WallInput,
    /// The measured wall.
    pub wall: &'a Measured,
    /// The lines of the boarding.
    pub boarding: &'a Boarding,
    /// Fixed boards and what interrupts the boarding.
    pub frame: &'a Frame,
    /// Filled-in settings.
    pub settled: &'a Settled,
    /// Stud centres.
    pub studs: &'a [Length],
}

/// Every rail and new base of a wall, and the rails at openings that found no room.
pub fn rail_members(work: &RailWork<'_>) -> (Vec<Member>, Vec<RailLine>) {
    let (lines, crowded) = all_lines(work);
    let mut members: Vec<Member> = Vec::new();
    let mut joined: Vec<Length> = Vec::new();
    for line in &lines {
        for (left, right) in stretches(line, work) {
            for (from, to) in straight(&line.top, left, right) {
                let number = members.iter().filter(|member| member.kind == line.kind).count() + 1;
                let id = format!("{}-{}-{number}", work.input.survey.name, word(line.kind));
                members.push(piece(id, line, (from, to), (left, right), work, &mut joined));
            }
        }
    }
    (members, crowded)
}

const fn word(kind: MemberKind) -> &'static str {
    match kind {
        MemberKind::TopRail => "top",
        MemberKind::MidRail => "mid",
        MemberKind::SillRail => "sill",
        MemberKind::HeadRail => "head",
        MemberKind::Base => "base",
        MemberKind::Board | MemberKind::UnderBoard | MemberKind::OverBoard => "board",
    }
}

/// Rails along the wall, rails at openings, and the base where it is new; then rails at openings that have no room.
fn all_lines(work: &RailWork<'_>) -> (Vec<RailLine>, Vec<RailLine>) {
    let mut lines = Vec::new();
    if let Some(base) = work.input.survey.base.filter(|base| base.work == BaseWork::New) {
        lines.push(RailLine::under(MemberKind::Base, work.wall.foot.clone(), base.height.get()));
    }
    lines.extend(work.boarding.rails.iter().cloned());
    let rails = &work.input.scheme.rails;
    let width = rails.width.get();
    let mut crowded = Vec::new();
    for stopper in &work.frame.stoppers {
        let mut at = Vec::new();
        if let (true, AtOpenings::SillAndHead | AtOpenings::Sill, Some(bottom)) =
            (stopper.under, rails.at_openings, stopper.bottom)
        {
            at.push((MemberKind::SillRail, bottom.down_to(Length::from_nm(1))));
        }
        if let (true, AtOpenings::SillAndHead | AtOpenings::Head) = (stopper.over, rails.at_openings) {
            at.push((MemberKind::HeadRail, stopper.top.up_to(Length::from_nm(1)) + width));
        }
        for (kind, top) in at {
            let mut line = RailLine::under(kind, Line::level(top), width);
            line.along = Some((stopper.left, stopper.right));
            let band = line.band(stopper.left, stopper.right);
            let meets = |other: &&RailLine| {
                let theirs = other.band(stopper.left, stopper.right);
                theirs.0 < band.1 && band.0 < theirs.1
            };
            let free = work.boarding.rails.iter().find(meets).is_none();
            if free { lines.push(line) } else { crowded.push(line) }
        }
    }
    (lines, crowded)
}

/// The stretches of a rail between the ends of the wall and what interrupts it.
fn stretches(line: &RailLine, work: &RailWork<'_>) -> Vec<(Exact, Exact)> {
    let (mut from, to) = line.along.unwrap_or_else(|| along_wall(line, work));
    let mut stretches = Vec::new();
    let wide = work.wall.length.exact();
    if line.along.is_none() {
        for (left, right, bottom, top) in blocks(line, work) {
            let band = line.band(left.max(Exact::ZERO), right.min(wide));
            let meets = band.0 < top && bottom.is_none_or(|bottom| bottom < band.1);
            if meets && from < right && left < to {
                if from < left {
                    stretches.push((from, left));
                }
                from = right;
            }
        }
    }
    if from < to {
        stretches.push((from, to));
    }
    stretches
}

/// Left, right, bottom and top of everything that can interrupt a rail, from left to right. Low openings that no board meets
/// still interrupt the base.
fn blocks(line: &RailLine, work: &RailWork<'_>) -> Vec<(Exact, Exact, Option<Exact>, Exact)> {
    let stoppers = work.frame.stoppers.iter().map(|stop| (stop.left, stop.right, stop.bottom, stop.top));
    let low = work.input.survey.openings.iter().filter(|_| line.kind == MemberKind::Base).map(|opening| {
        let bottom = opening.bottom.map(|bottom| bottom.get().exact());
        (opening.left.get().exact(), opening.right.get().exact(), bottom, opening.top.get().exact())
    });
    let mut blocks: Vec<_> = stoppers.chain(low).collect();
    blocks.sort_by_key(|block| (block.0, block.1));
    blocks
}

/// From end to end: the clear length at the rail's own height, less what other walls' boards take, plus what laps past a corner.
fn along_wall(line: &RailLine, work: &RailWork<'_>) -> (Exact, Exact) {
    let survey = &work.input.survey;
    let band = line.band(Exact::ZERO, work.wall.length.exact());
    let (left, right) = work.wall.clear_between(band.0, band.1);
    let own = rail_thickness(work.input);
    let inset = |end: &super::survey::End| {
        let other = end.other_thickness.map_or(work.input.scheme.board_thickness.get(), Length::from);
        match end.kind {
            EndKind::InsideSecond => other,
            EndKind::OutsideLapping => -other,
            EndKind::OutsideMitred => -mitre_point(own, end.angle.map_or(90.0, |angle| angle.get())),
            _ => Length::ZERO,
        }
    };
    (left + inset(&survey.left), right - inset(&survey.right))
}

fn rail_thickness(input: &WallInput) -> Length {
    input.scheme.rails.thickness.map_or(input.scheme.board_thickness.get(), Length::from)
}

/// A stretch divided where its top edge turns.
fn straight(top: &Line, left: Exact, right: Exact) -> Vec<(Exact, Exact)> {
    let mut places = vec![left];
    places.extend(top.kinks(left, right).into_iter().map(|kink| kink.x));
    places.push(right);
    places.windows(2).map(|pair| (pair[0], pair[1])).collect()
}

fn piece(
    id: String,
    line: &RailLine,
    (from, to): (Exact, Exact),
    (left, right): (Exact, Exact),
    work: &RailWork<'_>,
    joined: &mut Vec<Length>,
) -> Member {
    // The bottom edge turns beside the top edge; they go together in order.
    let bottom_at = |x: Exact| {
        let tops = line.top.kinks(left, right);
        let bottoms = line.bottom.kinks(left, right);
        let index = tops.iter().position(|kink| kink.x == x);
        match index.filter(|_| tops.len() == bottoms.len()).and_then(|index| bottoms.get(index)) {
            Some(kink) => *kink,
            None => Point { x, y: line.bottom.at(x) },
        }
    };
    let top_at = |x: Exact| Point { x, y: line.top.at(x) };
    let outline = vec![bottom_at(from), bottom_at(to), top_at(to), top_at(from)];
    let degrees = line.top.degrees_at(middle(from, to));
    let (length, first_edge, second_edge) = lengths(&outline, degrees);
    let base = (line.kind == MemberKind::Base).then_some(work.input.survey.base).flatten();
    let thickness = base.map_or(rail_thickness(work.input), |base| base.thickness.get());
    let (start, end) = (end_cut(line, from, left, degrees, work, true), end_cut(line, to, right, degrees, work, false));
    let (low, high) = (from.min(outline[0].x), to.max(outline[1].x));
    let mut member = Member {
        id,
        kind: line.kind,
        position: None,
        outline,
        width: base.map_or(work.input.scheme.rails.width.get(), |base| base.height.get()).exact(),
        thickness,
        length: work.settled.tape.mark(length),
        first_edge,
        second_edge,
        start,
        end,
        notches: Vec::new(),
        taper: None,
        joints: Vec::new(),
        joint_places: Vec::new(),
        studs: studs::between(low, high, work.studs),
    };
    (member.joints, member.joint_places) = joints(&member, degrees, work, joined);
    member
}

/// Long point to long point, top edge, bottom edge.
fn lengths(outline: &[Point], degrees: f64) -> (Exact, Exact, Exact) {
    let (top, bottom) = (outline[2].x - outline[3].x, outline[1].x - outline[0].x);
    let level = outline[2].x.max(outline[1].x) - outline[3].x.min(outline[0].x);
    if degrees.abs() < SLOPING {
        return (level, top, bottom);
    }
    let (sine, cosine) = (libm::sin(degrees.to_radians()), libm::cos(degrees.to_radians()));
    let along = |point: &Point| point.x.in_mm() * cosine + point.y.in_mm() * sine;
    let ends: Vec<f64> = outline.iter().map(along).collect();
    let length = ends[1].max(ends[2]) - ends[0].min(ends[3]);
    let nm = |mm: f64| Length::nearest_mm(mm).exact();
    (nm(length), nm(ends[2] - ends[3]), nm(ends[1] - ends[0]))
}

fn end_cut(line: &RailLine, at: Exact, limit: Exact, degrees: f64, work: &RailWork<'_>, left: bool) -> EndCut {
    let cut = |cut, degrees: f64| EndCut { cut, saw: Amount::of(degrees) };
    if at != limit {
        // A turn: both pieces take half of it.
        let step = Length::um(10).exact();
        let (before, after) = (line.top.degrees_at(at - step), line.top.degrees_at(at + step));
        return cut(CutKind::Mitre, (after - before).abs() / 2.0);
    }
    if SLOPING <= degrees.abs() {
        return cut(CutKind::Rake, degrees.abs());
    }
    let end = if left { &work.input.survey.left } else { &work.input.survey.right };
    let at_corner = if left { at <= Exact::ZERO } else { work.wall.length.exact() <= at };
    match (end.kind, end.angle) {
        (EndKind::OutsideMitred, Some(angle)) if at_corner => cut(CutKind::Bevel, 90.0 - angle.get() / 2.0),
        _ => cut(CutKind::Square, 0.0),
    }
}

/// Joints of a rail that is longer than any stick for rails, and where a single one could stand as well; none where no stud allows
/// them (told as a conflict).
fn joints(member: &Member, degrees: f64, work: &RailWork<'_>, joined: &mut Vec<Length>) -> (Vec<Joint>, Vec<Length>) {
    let Some(usable) = longest_for_rails(&work.input.stock, work.settled) else { return Default::default() };
    if member.length.exact <= usable || SLOPING <= degrees.abs() {
        return Default::default();
    }
    let angle = work.input.stock.scarf_angle.map_or(45.0, |angle| angle.get());
    let distance = JOINT_DISTANCE.in_units(work.settled.units());
    let free = |stud: &&Length| clear_of_edges(**stud, member, work, distance);
    let all: Vec<Length> = member.studs.iter().filter(free).copied().collect();
    let staggered: Vec<Length> = all.iter().filter(|stud| !joined.contains(stud)).copied().collect();
    let nm = Length::from_nm(1);
    let xs = || member.outline.iter().map(|point| point.x);
    let ends = xs().min().zip(xs().max());
    let (from, to) = ends.map_or((Length::ZERO, Length::ZERO), |(from, to)| (from.nearest(nm), to.nearest(nm)));
    let lap = lap(member.thickness, angle);
    let rail = |studs| LongRail { from, to, usable, lap, studs };
    let made = rail(&staggered).joints().or_else(|| rail(&all).joints()).unwrap_or_default();
    joined.extend(made.iter().copied());
    let places = if made.len() == 1 { rail(&all).single_joints() } else { Vec::new() };
    (made.into_iter().map(|stud| Joint { stud, angle: Amount::of(angle), lap: lap.exact() }).collect(), places)
}

fn clear_of_edges(stud: Length, member: &Member, work: &RailWork<'_>, distance: Length) -> bool {
    let near = |left: Exact, right: Exact| left - distance < stud.exact() && stud.exact() < right + distance;
    let openings = work.frame.stoppers.iter().filter(|stopper| {
        // A sill or head rail lies along its own opening; only the others' edges count.
        let own = member.outline.iter().all(|point| stopper.left <= point.x && point.x <= stopper.right);
        !own
    });
    let low = member.outline.iter().map(|point| point.y).min().unwrap_or(Exact::ZERO);
    let high = member.outline.iter().map(|point| point.y).max().unwrap_or(Exact::ZERO);
    let plates = work
        .input
        .survey
        .boxes
        .iter()
        .filter(|plate| low < plate.top.get().exact() + distance && plate.bottom.get().exact() - distance < high);
    let over_plate = |plate: &super::survey::WallBox| plate.left.get() <= stud && stud <= plate.right.get();
    !openings.into_iter().any(|stopper| near(stopper.left, stopper.right)) && !plates.into_iter().any(over_plate)
}

pub(super) fn middle(from: Exact, to: Exact) -> Exact {
    (from + to).half()
}
