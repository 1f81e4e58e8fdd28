//! What is read off the tape and the laser: running marks per line, heights from the datum, the cut list.

use super::boarding::Boarding;
use super::defaults::Settled;
use super::frame::Frame;
use super::measured::Measured;
use super::plan::{Cut, HeightKnown, Mark, MarkLine, Member, MemberKind, Offset, Position, Standing};
use super::scheme::WallInput;
use crate::catalogue::Words;
use crate::quantity::{Exact, Length};

/// Running marks for every horizontal line, all from one zero; each is rounded alone.
pub fn mark_lines(
    positions: &[Position],
    members: &[Member],
    boarding: &Boarding,
    frame: &Frame,
    settled: &Settled,
) -> Vec<MarkLine> {
    let tape = settled.tape;
    let line = |name: Words, height: Exact, meets: &dyn Fn(&Position) -> bool| {
        let marks: Vec<Mark> = positions
            .iter()
            .filter(|position| meets(position))
            .map(|position| Mark {
                board: position.number,
                left: tape.mark(position.left),
                right: tape.mark(position.right),
            })
            .collect();
        let last = marks.last()?.right;
        Some(MarkLine { name, height, marks, last })
    };
    let pieces = |position: &Position| {
        members.iter().filter(move |member| member.position == Some(position.number)).collect::<Vec<_>>()
    };
    let at_foot = |position: &Position| {
        let foot = boarding.foot.at(position.board_left);
        pieces(position).iter().any(|piece| piece.outline.first().is_some_and(|corner| corner.y == foot))
    };
    let at_head = |position: &Position| {
        let head = boarding.head.at(position.board_left);
        pieces(position).iter().any(|piece| piece.outline.last().is_some_and(|corner| corner.y == head))
    };
    let centre = |position: &Position| (position.left + position.right).half();
    let mut lines = vec![
        line(Words::new("along the foot"), boarding.foot.at(Exact::ZERO), &at_foot),
        line(Words::new("along the top"), boarding.head.at(Exact::ZERO), &at_head),
    ];
    for stopper in frame.stoppers.iter().filter(|stopper| stopper.under || stopper.over) {
        let name =
            Words::new("at the opening from {} to {}").with(tape.mark(stopper.left)).with(tape.mark(stopper.right));
        let height = stopper.bottom.filter(|_| stopper.under).unwrap_or(stopper.top);
        lines.push(line(name, height, &|position| stopper.left < centre(position) && centre(position) < stopper.right));
    }
    lines.into_iter().flatten().collect()
}

/// Every height that is set out, measured from the datum line; on a stair from each landing's own.
pub fn offsets(
    input: &WallInput,
    wall: &Measured,
    boarding: &Boarding,
    rails: &[Member],
    settled: &Settled,
) -> Vec<Offset> {
    let datum = input.survey.datum.get();
    let mut heights: Vec<(Words, Exact)> = Vec::new();
    if let Some(base) = input.survey.base {
        heights.push((Words::new("top of base at the high floor point"), base.height.get().exact()));
    }
    let stairs = wall.flight.is_some();
    for line in &boarding.rails {
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
    for rail in rails.iter().filter(|rail| matches!(rail.kind, MemberKind::SillRail | MemberKind::HeadRail)) {
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
        .map(|(name, height)| Offset { name, height, offset: settled.tape.mark(height - datum) })
        .collect()
}

fn low_end(line: &super::line::Line) -> Length {
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
            remarks.push(Words::new("scarf on the stud at {}").with(joint.stud));
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
