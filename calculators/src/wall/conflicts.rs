//! What is in the way, and what to do about it, for one layout.

mod ends;
mod plates;

use ends::{corners, leans, projections};
use plates::{agreed, clearances, fixed_boards, rails_and_plates, shifted_or_left};

use super::boarding::RailLine;
use super::defaults::{NARROWEST_RIP, Settled};
use super::frame::Frame;
use super::measured::Measured;
use super::placing::PlacedRun;
use super::plan::{Action, Choice, Conflict, ConflictKind, Member, MemberKind, Position, Severity};
use super::scheme::WallInput;
use super::sticks::longest_for_rails;
use crate::catalogue::Words;
use crate::quantity::Exact;

/// What conflicts are looked for in.
pub struct Scene<'a> {
    /// The whole input.
    pub input: &'a WallInput,
    /// The measured wall.
    pub wall: &'a Measured,
    /// Fixed boards and what interrupts the boarding.
    pub frame: &'a Frame,
    /// Filled-in settings.
    pub settled: &'a Settled,
    /// Narrowest and widest bay wished for.
    pub bay_limits: (Exact, Exact),
    /// Boards at their places.
    pub positions: &'a [Position],
    /// The runs with their boards.
    pub runs: &'a [PlacedRun],
    /// Every piece of trim.
    pub members: &'a [Member],
    /// Rails at openings that found no room.
    pub crowded: &'a [RailLine],
}

/// Every conflict, those to be settled first.
pub fn conflicts(scene: &Scene<'_>) -> Vec<Conflict> {
    let mut found = Vec::new();
    shifted_or_left(scene, &mut found);
    fixed_boards(scene, &mut found);
    agreed(scene, &mut found);
    rails_and_plates(scene, &mut found);
    clearances(scene, &mut found);
    kinks(scene, &mut found);
    bays(scene, &mut found);
    slivers(scene, &mut found);
    joints(scene, &mut found);
    leans(scene, &mut found);
    projections(scene, &mut found);
    crowded(scene, &mut found);
    corners(scene, &mut found);
    found.sort_by_key(|conflict| (conflict.severity != Severity::Settle, conflict.place[0]));
    found
}

fn way(action: Action, words: Words) -> Choice {
    Choice { action, allowed: true, applied: false, words }
}

fn applied(action: Action, words: Words) -> Choice {
    Choice { action, allowed: true, applied: true, words }
}

impl Scene<'_> {
    fn pieces_of(&self, number: usize) -> impl Iterator<Item = &Member> {
        self.members.iter().filter(move |member| member.position == Some(number))
    }

    /// Labels of the pieces of a board that stand at some of these heights.
    fn labels(&self, number: usize, bottom: Exact, top: Exact) -> Vec<String> {
        self.pieces_of(number).filter(|piece| stands(piece, bottom, top)).map(|piece| piece.id.clone()).collect()
    }
}

fn stands(piece: &Member, bottom: Exact, top: Exact) -> bool {
    let heights = || piece.outline.iter().map(|point| point.y);
    heights().min().zip(heights().max()).is_some_and(|(low, high)| low < top && bottom < high)
}

fn spans(piece: &Member) -> (Exact, Exact) {
    let xs = || piece.outline.iter().map(|point| point.x);
    (xs().min().unwrap_or(Exact::ZERO), xs().max().unwrap_or(Exact::ZERO))
}

fn is_rail(member: &Member) -> bool {
    member.position.is_none()
}

/// Boards over the turn of a rail or base.
fn kinks(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    use super::plan::CutKind;
    for member in scene.members.iter().filter(|member| !is_rail(member)) {
        let two = |cut: super::plan::EndCut| cut.cut == CutKind::TwoCuts;
        if !two(member.start) && !two(member.end) {
            continue;
        }
        let (from, to) = spans(member);
        let heights = || member.outline.iter().map(|point| point.y);
        found.push(Conflict {
            severity: Severity::Note,
            what: ConflictKind::Kink,
            said: Words::new("the board {} stands over a turn from level to rake: one end takes two cuts")
                .with(member.id.clone()),
            options: vec![
                way(Action::MoveBoard, Words::new("another count or bay moves it off the turn")),
                way(Action::Leave, Words::new("keep it, and cut a template for the end first")),
            ],
            members: vec![member.id.clone()],
            box_index: None,
            place: [from, heights().min().unwrap_or(from), to, heights().max().unwrap_or(to)],
        });
    }
}

fn bays(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let (narrowest, widest) = scene.bay_limits;
    let foot = scene.wall.foot.at(Exact::ZERO);
    for run in scene.runs {
        let bay = run.filled.bay();
        if narrowest <= bay && bay <= widest {
            continue;
        }
        let options = if bay < narrowest {
            let words = Words::new("one wider board of {} can take its place")
                .with(run.filled.right - run.filled.left + scene.input.scheme.board_width.get() * 2);
            vec![
                way(Action::WideBoard, words),
                way(Action::Leave, Words::new("keep the narrow bay, and show it to the client")),
            ]
        } else {
            vec![way(Action::Leave, Words::new("keep the wide bay, and show it to the client"))]
        };
        found.push(Conflict {
            severity: Severity::Note,
            what: ConflictKind::Bay,
            said: Words::new("the run from {} to {} has bays of {}, outside the wished {} to {}")
                .with(run.filled.left)
                .with(run.filled.right)
                .with(bay)
                .with(narrowest)
                .with(widest),
            options,
            members: Vec::new(),
            box_index: None,
            place: [run.filled.left, foot, run.filled.right, foot],
        });
    }
}

fn slivers(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let least = NARROWEST_RIP.in_units(scene.settled.units());
    for position in scene.positions.iter().filter(|position| position.board_right - position.board_left < least.exact())
    {
        found.push(Conflict {
            severity: Severity::Settle,
            what: ConflictKind::Sliver,
            said: Words::new("board {} would be ripped to {}, less than {}")
                .with(position.number)
                .with(position.board_right - position.board_left)
                .with(least),
            options: vec![
                way(Action::Leave, Words::new("leave it out and caulk or paint the strip of wall")),
                way(Action::ChangeCount, Words::new("let bays run to the openings instead of boards at their edges")),
            ],
            members: scene.pieces_of(position.number).map(|piece| piece.id.clone()).collect(),
            box_index: None,
            place: [position.board_left, Exact::ZERO, position.board_right, Exact::ZERO],
        });
    }
}

/// Rails longer than any stick for which no joint on a stud was found.
fn joints(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let Some(usable) = longest_for_rails(&scene.input.stock, scene.settled) else { return };
    for rail in scene.members.iter().filter(|member| is_rail(member)) {
        if rail.length.exact <= usable || !rail.joints.is_empty() {
            continue;
        }
        let (from, to) = spans(rail);
        let heights = || rail.outline.iter().map(|point| point.y);
        found.push(Conflict {
            severity: Severity::Settle,
            what: ConflictKind::Joint,
            said: Words::new("{} is {} long, the longest stick gives {}, and no stud allows a joint")
                .with(rail.id.clone())
                .with(rail.length.exact)
                .with(usable),
            options: vec![
                way(Action::Measure, Words::new("find the studs, or order a longer stick")),
                way(Action::Blocking, Words::new("fix blocking behind the joint before the wall is closed")),
            ],
            members: vec![rail.id.clone()],
            box_index: None,
            place: [from, heights().min().unwrap_or(from), to, heights().max().unwrap_or(to)],
        });
    }
}

fn crowded(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    for line in scene.crowded {
        let (from, to) = line.along.unwrap_or((Exact::ZERO, Exact::ZERO));
        let band = line.band(from, to);
        let what = if line.kind == MemberKind::SillRail { "below the sill" } else { "above the head" };
        found.push(Conflict {
            severity: Severity::Note,
            what: ConflictKind::Rail,
            said: Words::new("the rail {} from {} to {} would meet another rail and is left out")
                .with(what)
                .with(from)
                .with(to),
            options: vec![way(Action::MoveRail, Words::new("move the other rail to the line of the sill or head"))],
            members: Vec::new(),
            box_index: None,
            place: [from, band.0, to, band.1],
        });
    }
}
