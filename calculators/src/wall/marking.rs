//! What is read off the tape and the laser: running marks per line, heights from the datum, the cut list.

use super::geometry::Span;
use super::layout::{Ground, Thing};
use super::measured::Measured;
use super::members::RailRun;
use super::plan::{Cut, HeightKnown, Mark, MarkLine, Member, MemberKind, Offset, Position, Standing};
use crate::catalogue::Words;
use crate::quantity::{Exact, Length};

/// What is marked.
pub struct MarkWork<'a> {
    /// The wall, its lines and settings.
    pub ground: &'a Ground<'a>,
    /// What stands on the wall.
    pub things: &'a [Thing],
    /// Boards at their places.
    pub positions: &'a [Position],
    /// Every piece of trim.
    pub members: &'a [Member],
    /// Rails as they run.
    pub runs: &'a [RailRun],
}

/// A line on which boards are marked.
struct Line<'a> {
    name: Words,
    height: Exact,
    meets: Box<dyn Fn(&Position) -> bool + 'a>,
}

/// Running marks for every line, all from one zero; each is rounded alone. Every board is marked on one line at least.
pub fn mark_lines(work: &MarkWork<'_>) -> Vec<MarkLine> {
    let tape = work.ground.settled.tape;
    let boarding = work.ground.boarding;
    let mut pieces: Vec<Vec<&Member>> = vec![Vec::new(); work.positions.len()];
    for member in work.members {
        if let Some(own) = member.position.and_then(|number| pieces.get_mut(number.wrapping_sub(1))) {
            own.push(member);
        }
    }
    let of = |position: &Position| pieces.get(position.number.wrapping_sub(1)).map_or(&[][..], Vec::as_slice);
    let at_foot = |position: &Position| {
        let foot = boarding.foot.after(position.board_left);
        of(position).iter().any(|piece| piece.outline.first().is_some_and(|corner| corner.y == foot))
    };
    let at_head = |position: &Position| {
        let head = boarding.head.after(position.board_left);
        of(position).iter().any(|piece| piece.outline.last().is_some_and(|corner| corner.y == head))
    };
    let mut lines: Vec<Line<'_>> = vec![
        Line { name: Words::new("along the foot"), height: boarding.foot.after(Exact::ZERO), meets: Box::new(at_foot) },
        Line { name: Words::new("along the top"), height: boarding.head.after(Exact::ZERO), meets: Box::new(at_head) },
    ];
    for run in work.runs.iter().filter(|run| matches!(run.line.kind, MemberKind::SillRail | MemberKind::HeadRail)) {
        let band = run.line.band(run.x);
        let under = run.line.kind == MemberKind::SillRail;
        let ends_on = move |piece: &&&Member| {
            let edge = if under { piece.outline.last() } else { piece.outline.first() };
            edge.is_some_and(|corner| corner.y == if under { band.from } else { band.to })
        };
        let name =
            if under { Words::new("under the sill from {} to {}") } else { Words::new("over the head from {} to {}") };
        lines.push(Line {
            name: name.with(tape.mark(run.x.from)).with(tape.mark(run.x.to)),
            height: if under { band.from } else { band.to },
            meets: Box::new(move |position| {
                let own = Span::new(position.board_left, position.board_right);
                own.overlaps(run.x) && of(position).iter().any(|piece| ends_on(&piece))
            }),
        });
    }
    let mut marked = vec![false; work.positions.len()];
    let mut found = Vec::with_capacity(lines.len());
    for line in &lines {
        found.extend(marks(work, &line.name, line.height, &mut marked, |position| (line.meets)(position)));
    }
    // What stands between other things: on the line of its own foot.
    while let Some(n) = marked.iter().position(|marked| !marked) {
        let Some(height) = pieces[n].first().and_then(|piece| piece.outline.first()).map(|corner| corner.y) else {
            marked[n] = true;
            continue;
        };
        let stands = |position: &Position| {
            of(position).iter().any(|piece| piece.outline.first().is_some_and(|corner| corner.y == height))
        };
        found.extend(marks(work, &Words::new("on the line where they stand"), height, &mut marked, stands));
    }
    found
}

fn marks(
    work: &MarkWork<'_>,
    name: &Words,
    height: Exact,
    marked: &mut [bool],
    meets: impl Fn(&Position) -> bool,
) -> Option<MarkLine> {
    let tape = work.ground.settled.tape;
    let mut marks = Vec::new();
    for (n, position) in work.positions.iter().enumerate().filter(|(_, position)| meets(position)) {
        marked[n] = true;
        marks.push(Mark { board: position.number, left: tape.mark(position.left), right: tape.mark(position.right) });
    }
    let last = marks.last()?.right;
    Some(MarkLine { name: name.clone(), height, marks, last })
}

/// Every height that is set out, measured from the datum line; on a stair from each landing's own.
pub fn offsets(ground: &Ground<'_>, members: &[Member]) -> Vec<Offset> {
    let (input, wall, boarding) = (ground.input, ground.wall, ground.boarding);
    let datum = input.survey.datum.get();
    let mut heights: Vec<(Words, Exact)> = Vec::new();
    if let Some(base) = input.survey.base {
        heights.push((Words::new("top of base at the high floor point"), base.height.get().exact()));
    }
    let stairs = wall.flight.is_some();
    for line in boarding.rails.iter().chain(&boarding.between) {
        let (low, high) = (line.bottom.points(), line.top.points());
        let level = low.len() == 1 && high.len() == 1;
        if let (true, Some(low), Some(high)) = (level || stairs, low.first(), high.first()) {
            let low_high = if wall.mirrored { (low_end(&line.bottom), low_end(&line.top)) } else { (low.1, high.1) };
            let (bottom, top) = match line.kind {
                MemberKind::TopRail => ("top rail, bottom edge", "top rail, top edge"),
                _ => ("rail, bottom edge", "rail, top edge"),
            };
            heights.push((Words::new(bottom), low_high.0.exact()));
            heights.push((Words::new(top), low_high.1.exact()));
        }
    }
    for rail in members.iter().filter(|rail| matches!(rail.kind, MemberKind::SillRail | MemberKind::HeadRail)) {
        let (bottom, top) = match rail.kind {
            MemberKind::SillRail => ("sill rail, bottom edge", "sill rail, top edge"),
            _ => ("head rail, bottom edge", "head rail, top edge"),
        };
        heights.push((Words::new(bottom), rail.outline[0].y));
        heights.push((Words::new(top), rail.outline[2].y));
    }
    for plate in &input.survey.boxes {
        heights.push((Words::new("plate, bottom"), plate.bottom.get().exact()));
        heights.push((Words::new("plate, top"), plate.top.get().exact()));
    }
    heights.push((Words::new("datum line"), datum.exact()));
    heights.sort_by_key(|(_, height)| *height);
    heights.dedup();
    heights
        .into_iter()
        .map(|(name, height)| Offset { name, height, offset: ground.settled.tape.mark(height - datum) })
        .collect()
}

fn low_end(line: &super::geometry::Line) -> Length {
    line.points().last().map_or(Length::ZERO, |(_, height)| *height)
}

/// The cut list, in the order of the wall: boards from the left, then rails and base.
pub fn cut_list(members: &[Member], positions: &[Position], wall: &Measured) -> Vec<Cut> {
    let cut = |member: &Member| {
        let position = member.position.and_then(|number| positions.get(number - 1));
        let (left, right) = position.map_or((Exact::ZERO, Exact::ZERO), |place| (place.board_left, place.board_right));
        let mut remarks = Vec::new();
        if let Some(place) = position.filter(|place| place.board_right - place.board_left != place.right - place.left) {
            remarks.push(Words::new("ripped to {}; {} shows").with(member.width).with(place.right - place.left));
        }
        for (edge, bevel) in [("left", member.edges.left), ("right", member.edges.right)] {
            if let Some(bevel) = bevel {
                remarks
                    .push(Words::new("bevel the {} edge {} off square, long point on the face").with(edge).with(bevel));
            }
        }
        if member.end.cut == super::plan::CutKind::Curve || member.start.cut == super::plan::CutKind::Curve {
            remarks.push(
                Words::new("cut to a curve by a template: left edge {}, right edge {}")
                    .with(member.first_edge)
                    .with(member.second_edge),
            );
        }
        if position.is_some_and(|place| place.why == Standing::Pier) {
            remarks.push(Words::new("one board takes the whole pier: rip to {}").with(member.width));
        }
        if let Some(taper) = member.taper {
            remarks.push(Words::new("the wall leans {} over this length: scribe the edge").with(taper));
        }
        for notch in &member.notches {
            remarks.push(
                Words::new("notch {} by {}, corners drilled first")
                    .with(notch.right - notch.left)
                    .with(notch.top - notch.bottom),
            );
        }
        for joint in &member.joints {
            remarks.push(Words::new("scarf on the stud at {}, {} along the rail").with(joint.stud).with(joint.along));
        }
        Cut {
            label: if member.position.is_some() { format!("{} ↑", member.id) } else { member.id.clone() },
            kind: member.kind,
            width: member.width,
            length: member.length,
            start: member.start,
            end: member.end,
            height: if position.is_some() { wall.known(left, right) } else { HeightKnown::Measured },
            remarks,
        }
    };
    members.iter().map(cut).collect()
}
