//! Plates and parts to be kept clear: what stands in whose way.

use super::{Scene, applied, is_rail, spans, stands, way};
use crate::catalogue::Words;
use crate::quantity::{Exact, Length};
use crate::wall::defaults::RAIL_TO_PLATE;
use crate::wall::frame::StopperSource;
use crate::wall::notch::{Meeting, meeting};
use crate::wall::placing::{Taken, TakenBy};
use crate::wall::plan::{Action, Choice, Conflict, ConflictKind, Severity, Standing};
use crate::wall::plates::{PlateCase, choices};
use crate::wall::survey::{Agreed, OpeningKind};
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
pub(super) fn shifted_or_left(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
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
pub(super) fn fixed_boards(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
    let all = crate::wall::placing::taken(&scene.input.survey, scene.frame, scene.settled);
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
pub(super) fn agreed(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
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

pub(super) fn rails_and_plates(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
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
pub(super) fn clearances(scene: &Scene<'_>, found: &mut Vec<Conflict>) {
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
