//! Pieces for the saw: too narrow, too long, of their own stock, without a stick.

use super::{Findings, is_rail, rect, told, way};
use crate::catalogue::Words;
use crate::quantity::{Exact, Length};
use crate::wall::defaults::{JOINT_DISTANCE, NARROWEST_RIP, ROUNDED_DOWN};
use crate::wall::geometry::{Rect, Span};
use crate::wall::plan::{Action, Conflict, ConflictKind, Member, Severity, Standing};
use crate::wall::sticks::longest_for;

pub(super) fn slivers(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let least = NARROWEST_RIP.in_units(scene.units());
    for position in scene.positions.iter().filter(|position| position.board_right - position.board_left < least.exact())
    {
        let said = Words::new("board {} would be ripped to {}, less than {}")
            .with(position.number)
            .with(position.board_right - position.board_left)
            .with(least);
        let ways = vec![
            way(Action::Leave, Words::new("leave it out and caulk or paint the strip of wall")),
            way(Action::ChangeCount, Words::new("let bays run to the openings instead of boards at their edges")),
        ];
        let members = scene.pieces_of(position.number).map(|piece| piece.id.clone()).collect();
        let span = Span::new(position.board_left, position.board_right);
        let place = Rect::new(span, scene.ground.field(span));
        found.push(told(Severity::Settle, ConflictKind::Sliver, said, ways, members, place));
    }
}

/// Rails longer than any stick for which no joint on a stud was found, with the reason.
pub(super) fn joints(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let Some(usable) = longest_for(&scene.ground.input.stock, scene.ground.settled, true) else { return };
    for rail in scene.members.iter().filter(|member| is_rail(member)) {
        if rail.length.exact <= usable || !rail.joints.is_empty() {
            continue;
        }
        let said = why_no_joint(scene, rail).with(rail.id.clone()).with(rail.length.exact).with(usable);
        let mut ways = vec![
            way(Action::Measure, Words::new("find and prove the studs, and write them into the survey")),
            way(Action::Blocking, Words::new("fix blocking behind the joint before the wall is closed")),
        ];
        let longer = Words::new("order a stick that gives {}").with(rail.length.shown());
        ways.insert(usize::from(scene.studs.is_empty()), way(Action::LongerStick, longer));
        let members = vec![rail.id.clone()];
        found.push(told(Severity::Settle, ConflictKind::Joint, said, ways, members, rect(rail)));
    }
}

fn why_no_joint(scene: &Findings<'_>, rail: &Member) -> Words {
    if scene.studs.is_empty() {
        return Words::new("{} is {} long, the longest stick gives {}, and no stud was found to join it on");
    }
    let distance = JOINT_DISTANCE.in_units(scene.units());
    let survey = &scene.ground.input.survey;
    let near = |stud: &Length| {
        let side = |place: Length| (*stud - place).size() < distance;
        survey.openings.iter().any(|opening| side(opening.left.get()) || side(opening.right.get()))
    };
    if rail.studs.is_empty() {
        Words::new("{} is {} long, the longest stick gives {}, and no stud stands behind it")
    } else if rail.studs.iter().all(near) {
        Words::new(
            "{} is {} long, the longest stick gives {}, and every stud behind it is too near an opening for a joint",
        )
    } else {
        Words::new("{} is {} long, the longest stick gives {}, and no stud stands where both parts would fit a stick")
    }
}

/// Boards wider than the others that need stock of their own.
pub(super) fn own_stock(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let board = scene.ground.board();
    for position in scene.positions {
        let span = Span::new(position.board_left, position.board_right);
        let own = matches!(position.why, Standing::WideBoard | Standing::Pier);
        if !own || span.size() <= board {
            continue;
        }
        let members: Vec<String> = scene.pieces_of(position.number).map(|piece| piece.id.clone()).collect();
        let said = Words::new("board {} is {} wide: it is ripped from stock of its own, wider than {}")
            .with(position.number)
            .with(span.size())
            .with(board);
        let very = span.size() > (board * 2).exact();
        let order = way(Action::LongerStick, Words::new("order stock at least {} wide for it").with(span.size()));
        let ways = if very && position.why == Standing::WideBoard {
            vec![way(Action::MoveBox, Words::new("an electrician moves the box instead")), order]
        } else {
            vec![order]
        };
        let severity = if very { Severity::Settle } else { Severity::Note };
        let place = Rect::new(span, scene.ground.field(span));
        found.push(told(severity, ConflictKind::Stock, said, ways, members, place));
    }
}

/// Pieces that no stick gives, but for rails whose missing joint is told already.
pub(super) fn without_a_stick(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let already = |label: &String| {
        found.iter().any(|conflict| conflict.what == ConflictKind::Joint && conflict.members.contains(label))
    };
    let missing: Vec<String> =
        scene.sticks.iter().flat_map(|plan| &plan.without).filter(|label| !already(label)).cloned().collect();
    if missing.is_empty() {
        return;
    }
    let said = Words::new("{} pieces have no stick that they can be cut from").with(missing.len());
    let longest =
        scene.members.iter().filter(|member| missing.contains(&member.id)).map(|member| member.length.shown());
    let longest = longest.max().unwrap_or(Length::ZERO);
    let order = way(Action::LongerStick, Words::new("add sticks that give {} to the stock").with(longest));
    let places = scene.members.iter().filter(|member| missing.contains(&member.id)).map(rect);
    let nothing = Span::new(Exact::ZERO, Exact::ZERO);
    let place = places.reduce(Rect::hull).unwrap_or(Rect::new(nothing, nothing));
    found.push(told(Severity::Settle, ConflictKind::Stick, said, vec![order], missing, place));
}

/// Closed rails that the saw's stop leaves short by more than caulk hides.
pub(super) fn rounded_down(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let most = ROUNDED_DOWN.in_units(scene.units());
    for (member, ends) in scene.members.iter().zip(scene.ends) {
        let left = member.length.exact - member.length.shown();
        if member.position.is_some() || *ends != [true, true] || left <= most.exact() {
            continue;
        }
        let said = Words::new("{} is cut {} short of its place, so that it goes in").with(member.id.clone()).with(left);
        let finer =
            way(Action::Caulk, Words::new("shim it to the middle and caulk both ends, or set the saw finer by hand"));
        found.push(told(
            Severity::Note,
            ConflictKind::Rounding,
            said,
            vec![finer],
            vec![member.id.clone()],
            rect(member),
        ));
    }
}
