//! What is in the way, and what to do about it, for one layout.

use super::boarding::RailLine;
use super::corners::square_edge_stands_off;
use super::defaults::{NARROWEST_RIP, RAIL_TO_PLATE, Settled, WIDEST_CAULK};
use super::frame::{Frame, StopperSource};
use super::measured::Measured;
use super::notch::{Meeting, meeting};
use super::placing::{PlacedRun, Taken, TakenBy};
use super::plan::{Action, Choice, Conflict, ConflictKind, Member, MemberKind, Position, Severity, Standing};
use super::plates::{PlateCase, choices};
use super::rail_members::longest_usable;
use super::scheme::WallInput;
use super::survey::{Agreed, End, EndKind, OpeningKind};
use crate::catalogue::Words;
use crate::quantity::{Amount, Exact, Length, kind};

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

fn name(taken: &Taken) -> &'static str {
    match taken.what {
        TakenBy::Box(_) => "plate",
        TakenBy::KeepClear(_) => "part to be kept clear",
    }
}

const fn box_index(taken: &Taken) -> Option<usize> {
    match taken.what {
        TakenBy::Box(n) => Some(n),
        TakenBy::KeepClear(_) => None,
    }
}

fn place_of(taken: &Taken) -> [Exact; 4] {
    [taken.left, taken.bottom, taken.right, taken.top]
}

/// Plates in the runs: shifted clear within the leeway, or left with what can be done.
fn shifted_or_left(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    for run in scene.runs {
        let origin = run.filled.lefts();
        for (n, taken) in run.taken.iter().enumerate() {
            let (from, to) = taken.stretch();
            let hits = |left: &Exact| *left < to && from < *left + run.filled.board;
            let Some(at) = origin.iter().position(hits).or_else(|| run.lefts.iter().position(hits)) else { continue };
            let number = scene.positions.iter().find(|position| position.left == run.lefts[at]).map_or(0, |p| p.number);
            let members = scene.labels(number, taken.bottom, taken.top);
            if members.is_empty() {
                continue;
            }
            let still = run.left_over.contains(&n);
            let (severity, said, options) = if still {
                let case = PlateCase {
                    plate: taken,
                    board: (run.lefts[at], run.lefts[at] + run.filled.board),
                    run: Some((&run.filled, at)),
                    bay_limits: scene.bay_limits,
                    material: scene.input.scheme.material,
                    settled: scene.settled,
                };
                let said = Words::new("board {} at {} to {} meets the {} at {} to {}")
                    .with(number)
                    .with(run.lefts[at])
                    .with(run.lefts[at] + run.filled.board)
                    .with(name(taken))
                    .with(taken.left)
                    .with(taken.right);
                (Severity::Settle, said, choices(&case))
            } else {
                let shift = run.lefts[at] - origin[at];
                let gap = (taken.left - origin[at] - run.filled.board).max(origin[at] - taken.right);
                let said = if gap.is_negative() {
                    Words::new("board {} would have met the {} by {}").with(number).with(name(taken)).with(gap.size())
                } else {
                    Words::new("board {} would have stood {} from the {}").with(number).with(gap).with(name(taken))
                };
                let bays = run.filled.bays(&run.lefts);
                let words = Words::new("board {} moves {} to the {}; the bays beside it become {} and {}")
                    .with(number)
                    .with(shift.size())
                    .with(if shift.is_negative() { "left" } else { "right" })
                    .with(bays[at])
                    .with(bays[at + 1]);
                (Severity::Note, said, vec![applied(Action::Shift, words)])
            };
            let what = if box_index(taken).is_some() { ConflictKind::Plate } else { ConflictKind::Clearance };
            found.push(Conflict {
                severity,
                what,
                said,
                options,
                members,
                box_index: box_index(taken),
                place: place_of(taken),
            });
        }
    }
}

/// Plates at boards that cannot move.
fn fixed_boards(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let all = super::placing::taken(&scene.input.survey, scene.frame, scene.settled);
    for position in scene.positions.iter().filter(|position| position.why != Standing::Field) {
        for taken in &all {
            let (from, to) = taken.stretch();
            let members = scene.labels(position.number, taken.bottom, taken.top);
            if position.right <= from || to <= position.left || members.is_empty() {
                continue;
            }
            let case = PlateCase {
                plate: taken,
                board: (position.left, position.right),
                run: None,
                bay_limits: scene.bay_limits,
                material: scene.input.scheme.material,
                settled: scene.settled,
            };
            let said = match meeting((position.left, position.right), (taken.left, taken.right), Length::ZERO) {
                Meeting::Clear(gap) => Words::new("board {}, which cannot move, leaves {} clear beside the {}")
                    .with(position.number)
                    .with(gap)
                    .with(name(taken)),
                _ => Words::new("board {}, which cannot move, meets the {}").with(position.number).with(name(taken)),
            };
            found.push(Conflict {
                severity: Severity::Settle,
                what: if box_index(taken).is_some() { ConflictKind::Plate } else { ConflictKind::Clearance },
                said,
                options: choices(&case),
                members,
                box_index: box_index(taken),
                place: place_of(taken),
            });
        }
    }
}

/// Boxes for which something was agreed: said again, so that it stands on the sheet.
fn agreed(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    for (n, plate) in scene.input.survey.boxes.iter().enumerate() {
        let (left, right) = (plate.left.get().exact(), plate.right.get().exact());
        let (bottom, top) = (plate.bottom.get().exact(), plate.top.get().exact());
        let members: Vec<String> = scene
            .positions
            .iter()
            .filter(|position| position.left < right && left < position.right)
            .flat_map(|position| scene.labels(position.number, bottom, top))
            .collect();
        let notched = scene
            .members
            .iter()
            .any(|member| member.notches.iter().any(|notch| notch.left < right && left < notch.right));
        let (severity, option) = match plate.agreed {
            None => continue,
            Some(Agreed::MoveBox) => {
                let words = Words::new("an electrician moves this box before boards are fixed here");
                (Severity::Note, applied(Action::MoveBox, words))
            }
            Some(Agreed::Leave) => (Severity::Note, applied(Action::Leave, Words::new("agreed to stay as it is"))),
            Some(Agreed::WideBoard) => {
                let words = Words::new("one board carries the plate; the box is brought flush with its face");
                (Severity::Note, applied(Action::WideBoard, words))
            }
            Some(Agreed::Notch) if notched || members.is_empty() => {
                (Severity::Note, applied(Action::Notch, Words::new("the board is notched round the plate")))
            }
            Some(Agreed::Notch) => {
                let words =
                    Words::new("a notch was agreed, but would leave less than {} of wood").with(scene.settled.min_neck);
                (Severity::Settle, Choice { action: Action::Notch, allowed: false, applied: false, words })
            }
        };
        found.push(Conflict {
            severity,
            what: ConflictKind::Plate,
            said: Words::new("plate at {} to {}").with(left).with(right),
            options: vec![option],
            members,
            box_index: Some(n),
            place: [left, bottom, right, top],
        });
    }
}

fn is_rail(member: &Member) -> bool {
    member.position.is_none()
}

fn rails_and_plates(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let near = RAIL_TO_PLATE.in_units(scene.settled.units());
    for (n, plate) in scene.input.survey.boxes.iter().enumerate() {
        if matches!(plate.agreed, Some(Agreed::Leave | Agreed::MoveBox)) {
            continue;
        }
        let (left, right) = (plate.left.get().exact(), plate.right.get().exact());
        let (bottom, top) = (plate.bottom.get().exact(), plate.top.get().exact());
        for rail in scene.members.iter().filter(|member| is_rail(member)) {
            let (from, to) = spans(rail);
            if to <= left || right <= from || !stands(rail, bottom - near, top + near) {
                continue;
            }
            let crosses = stands(rail, bottom, top);
            let said = if crosses {
                Words::new("the rail {} crosses the plate at {}").with(rail.id.clone()).with(left)
            } else {
                Words::new("the rail {} runs less than {} from the plate at {}")
                    .with(rail.id.clone())
                    .with(near)
                    .with(left)
            };
            found.push(Conflict {
                severity: if crosses { Severity::Settle } else { Severity::Note },
                what: ConflictKind::RailPlate,
                said,
                options: vec![
                    way(Action::MoveRail, Words::new("move the rail clear of the plate")),
                    way(Action::MoveBox, Words::new("an electrician moves the box")),
                ],
                members: vec![rail.id.clone()],
                box_index: Some(n),
                place: [left, bottom, right, top],
            });
        }
    }
}

/// Trim within a clearance, and clearances that nobody has read.
fn clearances(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let survey = &scene.input.survey;
    let zones = survey.keep_clear.iter().enumerate().map(|(n, zone)| {
        let framed = scene.frame.stoppers.iter().any(|stopper| stopper.source == StopperSource::KeepClear(n));
        let edges = [zone.left.get(), zone.bottom.get(), zone.right.get(), zone.top.get()];
        (edges, zone.clearance, framed)
    });
    let fires = survey.openings.iter().filter(|opening| opening.kind == OpeningKind::Fireplace).map(|opening| {
        let bottom = opening.bottom.map_or(Length::ZERO, Length::from);
        ([opening.left.get(), bottom, opening.right.get(), opening.top.get()], opening.clearance, true)
    });
    for (edges, clearance, framed) in zones.chain(fires) {
        let place = edges.map(Length::exact);
        let Some(clearance) = clearance.map(Length::from) else {
            found.push(Conflict {
                severity: Severity::Settle,
                what: ConflictKind::ClearanceUnknown,
                said: Words::new("nobody has read yet how far trim must stay from the part at {} to {}")
                    .with(edges[0])
                    .with(edges[2]),
                options: vec![way(
                    Action::Measure,
                    Words::new("read the label or the local code, and write the clearance into the survey"),
                )],
                members: Vec::new(),
                box_index: None,
                place,
            });
            continue;
        };
        let (left, right) = (edges[0] - clearance, edges[2] + clearance);
        let (bottom, top) = (edges[1] - clearance, edges[3] + clearance);
        let inside: Vec<String> = scene
            .members
            .iter()
            .filter(|member| framed || is_rail(member))
            .filter(|member| {
                let (from, to) = spans(member);
                from < right.exact() && left.exact() < to && stands(member, bottom.exact(), top.exact())
            })
            .map(|member| member.id.clone())
            .collect();
        if !inside.is_empty() {
            found.push(Conflict {
                severity: Severity::Settle,
                what: ConflictKind::Clearance,
                said: Words::new("trim stands within {} of the part at {} to {}")
                    .with(clearance)
                    .with(edges[0])
                    .with(edges[2]),
                options: vec![way(
                    Action::KeepOut,
                    Words::new("keep trim out of the clearance; the label and the local code decide, not this plan"),
                )],
                members: inside,
                box_index: None,
                place,
            });
        }
    }
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
    let Some(usable) = longest_usable(scene.input, scene.settled) else { return };
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

fn leans(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let caulk = WIDEST_CAULK.in_units(scene.settled.units());
    for member in scene.members.iter().filter(|member| member.taper.is_some()) {
        let taper = member.taper.unwrap_or(Exact::ZERO);
        if taper < scene.settled.tape.step().exact() {
            continue;
        }
        let scribe = way(Action::Scribe, Words::new("scribe a taper of {} along its outer edge").with(taper));
        let option = if caulk.exact() < taper {
            Choice { applied: true, ..scribe }
        } else {
            way(Action::Caulk, Words::new("leave it plumb and caulk the wedge of {}").with(taper))
        };
        let (from, to) = spans(member);
        let heights = || member.outline.iter().map(|point| point.y);
        found.push(Conflict {
            severity: Severity::Note,
            what: ConflictKind::Lean,
            said: Words::new("the end of the wall leans {} over the board {}; bays are set out on the length measured {} above the high floor point")
                .with(taper)
                .with(member.id.clone())
                .with(scene.wall.length_at),
            options: vec![option],
            members: vec![member.id.clone()],
            box_index: None,
            place: [from, heights().min().unwrap_or(from), to, heights().max().unwrap_or(to)],
        });
    }
}

/// Boards that stand proud of, or back from, the base and the casings they meet.
fn projections(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let board = scene.input.scheme.board_thickness.get();
    let end = scene.wall.length.exact();
    if let Some(base) = scene.input.survey.base.filter(|base| base.thickness.get() != board) {
        let step = super::base_step::step(board, base.thickness.get());
        found.push(Conflict {
            severity: Severity::Note,
            what: ConflictKind::Projection,
            said: step.said(),
            options: vec![way(Action::Chamfer, step.remedy())],
            members: Vec::new(),
            box_index: None,
            place: [Exact::ZERO, scene.wall.foot.at(Exact::ZERO), end, scene.wall.foot.at(end)],
        });
    }
    for opening in &scene.input.survey.openings {
        let Some(casing) = opening.casing_projection.map(Length::from).filter(|casing| *casing < board) else {
            continue;
        };
        found.push(Conflict {
            severity: Severity::Note,
            what: ConflictKind::Projection,
            said: Words::new("boards stand {} proud of the casing at {}").with(board - casing).with(opening.left),
            options: vec![way(Action::Chamfer, Words::new("ease the edge that meets the casing"))],
            members: Vec::new(),
            box_index: None,
            place: [
                opening.left.get().exact(),
                opening.bottom.map_or(Exact::ZERO, |bottom| bottom.get().exact()),
                opening.right.get().exact(),
                opening.top.get().exact(),
            ],
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

fn corners(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let survey = &scene.input.survey;
    for (end, at, name) in [(&survey.left, Exact::ZERO, "left"), (&survey.right, scene.wall.length.exact(), "right")] {
        let corner = matches!(
            end.kind,
            EndKind::InsideFirst | EndKind::InsideSecond | EndKind::OutsideLapping | EndKind::OutsideLapped
        );
        if corner && end.angle.is_none() {
            found.push(Conflict {
                severity: Severity::Note,
                what: ConflictKind::Corner,
                said: Words::new("the corner at the {} end was not measured").with(name),
                options: vec![way(
                    Action::Measure,
                    Words::new("measure it before caps or mitres are cut; 90° is not taken for granted"),
                )],
                members: Vec::new(),
                box_index: None,
                place: [at, Exact::ZERO, at, Exact::ZERO],
            });
        }
        if let (EndKind::InsideSecond, Some(angle)) = (end.kind, end.angle) {
            out_of_square_corner(scene, end, angle.get(), (at, name), found);
        }
    }
}

/// An inside corner whose angle moves the first board by more than a tape shows: places count from a square corner.
fn out_of_square_corner(
    scene: &Scene<'_>,
    end: &End,
    degrees: f64,
    (at, name): (Exact, &'static str),
    found: &mut Vec<Conflict>,
) {
    let own = scene.input.scheme.board_thickness.get();
    let other = end.other_thickness.map_or(own, Length::from);
    let off = square_edge_stands_off(own, other, degrees);
    let open = Length::nearest_mm(own.in_mm() * libm::fabs(1.0 / libm::tan(degrees.to_radians())));
    if off.size().max(open) < Length::sixty_fourths(1) {
        return;
    }
    let edge = if degrees < 90.0 { "front" } else { "back" };
    found.push(Conflict {
        severity: Severity::Note,
        what: ConflictKind::Corner,
        said: Words::new("the corner at the {} end is {}: a square edge meets the other wall’s boards at its {} first, {} further in, and stands open by {}; places here count from a square corner")
            .with(name)
            .with(Amount::<kind::Angle>::of(degrees))
            .with(edge)
            .with(off)
            .with(open),
        options: vec![way(
            Action::Scribe,
            Words::new("plane that edge to {} off square, or scribe it, and the board stands at its mark")
                .with(Amount::<kind::Angle>::of(libm::fabs(90.0 - degrees))),
        )],
        members: Vec::new(),
        box_index: None,
        place: [at, Exact::ZERO, at, Exact::ZERO],
    });
}
