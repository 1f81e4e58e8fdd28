//! Plates and parts to be kept clear: what stands in whose way.

use super::{Findings, applied, is_rail, rect, way};
use crate::catalogue::Words;
use crate::quantity::{Exact, Length};
use crate::wall::defaults::RAIL_TO_PLATE;
use crate::wall::geometry::{Rect, Span};
use crate::wall::layout::{Taken, TakenBy, taken};
use crate::wall::notch::{Meeting, meeting};
use crate::wall::plan::{Action, Choice, Conflict, ConflictKind, Position, Severity, Standing};
use crate::wall::plates::{PlateCase, choices};
use crate::wall::survey::{Agreed, WallBox};

fn name(taken: &Taken) -> &'static str {
    match taken.what {
        TakenBy::Box(_) => "plate",
        TakenBy::KeepClear(_) => "part to be kept clear",
        TakenBy::Opening(_) => "opening",
        TakenBy::Step => "step",
    }
}

const fn box_index(taken: &Taken) -> Option<usize> {
    match taken.what {
        TakenBy::Box(n) => Some(n),
        TakenBy::KeepClear(_) | TakenBy::Opening(_) | TakenBy::Step => None,
    }
}

fn place_of(taken: &Taken) -> [Exact; 4] {
    [taken.left, taken.bottom, taken.right, taken.top]
}

/// Plates in the runs: shifted clear within the leeway, or left with what can be done.
pub(super) fn shifted_or_left(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    for run in scene.placed {
        let origin = run.filled.lefts();
        for (n, taken) in run.taken.iter().enumerate() {
            let (from, to) = taken.stretch();
            let hits = |left: &&Exact| **left < to && from < **left + run.filled.board;
            let first = |lefts: &[Exact]| lefts.iter().position(|left| hits(&left));
            let Some(at) = first(&run.lefts).or_else(|| first(&origin)) else { continue };
            let number = scene
                .positions
                .iter()
                .find(|position| position.why == Standing::Field && position.left == run.lefts[at])
                .map_or(0, |position| position.number);
            let still = run.left_over.contains(&n);
            // Whatever could not be cleared is told with every board that it is too near to.
            let members: Vec<String> = if still {
                let near = run.lefts.iter().filter(|left| hits(left));
                let numbers = near.filter_map(|left| {
                    let own = |position: &&Position| position.why == Standing::Field && position.left == *left;
                    scene.positions.iter().find(own).map(|position| position.number)
                });
                numbers.flat_map(|number| scene.labels(number, taken.heights())).collect()
            } else {
                scene.labels(number, taken.heights())
            };
            if members.is_empty() {
                continue;
            }
            let (severity, said, options) = if still {
                let case = PlateCase {
                    plate: taken,
                    board: (run.lefts[at], run.lefts[at] + run.filled.board),
                    run: Some((&run.filled, at)),
                    bay_limits: scene.limits,
                    material: scene.ground.input.scheme.material,
                    settled: scene.ground.settled,
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
pub(super) fn fixed_boards(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let all = taken(scene.ground, scene.things);
    for position in scene.positions.iter().filter(|position| position.why != Standing::Field) {
        for taken in all.iter().filter(|taken| taken.what != TakenBy::Step) {
            let (from, to) = taken.stretch();
            let members = scene.labels(position.number, taken.heights());
            if position.right <= from || to <= position.left || members.is_empty() {
                continue;
            }
            let case = PlateCase {
                plate: taken,
                board: (position.left, position.right),
                run: None,
                bay_limits: scene.limits,
                material: scene.ground.input.scheme.material,
                settled: scene.ground.settled,
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

/// A plate, as a rectangle.
fn plate_of(plate: &WallBox) -> Rect {
    Rect::new(
        Span::new(plate.left.get().exact(), plate.right.get().exact()),
        Span::new(plate.bottom.get().exact(), plate.top.get().exact()),
    )
}

/// Boxes for which something was agreed: said again, so that it stands on the sheet, or told as impossible.
pub(super) fn agreed(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    for (n, plate) in scene.ground.input.survey.boxes.iter().enumerate() {
        let place = plate_of(plate);
        let field = scene.ground.field(place.x);
        let pieces = || scene.members.iter().filter(|member| member.position.is_some());
        let members: Vec<String> =
            pieces().filter(|member| rect(member).overlaps(place)).map(|member| member.id.clone()).collect();
        let carried =
            pieces().any(|member| rect(member).x.covers(place.x) && rect(member).y.covers(place.y.shared(field)));
        let notched = pieces()
            .any(|member| member.notches.iter().any(|notch| Span::new(notch.left, notch.right).overlaps(place.x)));
        let refused = |action, words| (Severity::Settle, Choice { action, allowed: false, applied: false, words });
        let (severity, option) = match plate.agreed {
            None => continue,
            Some(Agreed::MoveBox) => {
                let words = Words::new("an electrician moves this box before boards are fixed here");
                (Severity::Note, applied(Action::MoveBox, words))
            }
            Some(Agreed::Leave) => (Severity::Note, applied(Action::Leave, Words::new("agreed to stay as it is"))),
            Some(Agreed::WideBoard) if carried || !place.y.overlaps(field) => {
                let words = Words::new("one board carries the plate; the box is brought flush with its face");
                (Severity::Note, applied(Action::WideBoard, words))
            }
            Some(Agreed::WideBoard) => refused(
                Action::WideBoard,
                Words::new("a wide board was agreed, but none can stand here over the whole plate"),
            ),
            Some(Agreed::Notch) if notched || members.is_empty() => {
                (Severity::Note, applied(Action::Notch, Words::new("the board is notched round the plate")))
            }
            Some(Agreed::Notch) => {
                let words = Words::new("a notch was agreed, but it would leave less than {} of wood or be too long");
                refused(Action::Notch, words.with(scene.ground.settled.min_neck))
            }
        };
        found.push(Conflict {
            severity,
            what: ConflictKind::Plate,
            said: Words::new("plate at {} to {}").with(place.x.from).with(place.x.to),
            options: vec![option],
            members,
            box_index: Some(n),
            place: place.sides(),
        });
    }
}

/// Rails that cross a plate, or run near one.
pub(super) fn rails_and_plates(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let near = RAIL_TO_PLATE.in_units(scene.units());
    for (n, plate) in scene.ground.input.survey.boxes.iter().enumerate() {
        if matches!(plate.agreed, Some(Agreed::Leave | Agreed::MoveBox)) {
            continue;
        }
        let place = plate_of(plate);
        for run in scene.rails.runs.iter().filter(|run| run.x.overlaps(place.x)) {
            let band = run.line.band(run.x.shared(place.x));
            if !band.overlaps(place.y.grown(near)) {
                continue;
            }
            let Some(rail) = scene.members.iter().find(|member| {
                is_rail(member)
                    && member.kind == run.line.kind
                    && rect(member).x.overlaps(place.x)
                    && rect(member).y.overlaps(band)
            }) else {
                continue;
            };
            let crosses = band.overlaps(place.y);
            let said = if crosses {
                Words::new("the rail {} crosses the plate at {}").with(rail.id.clone()).with(place.x.from)
            } else {
                Words::new("the rail {} runs less than {} from the plate at {}")
                    .with(rail.id.clone())
                    .with(near)
                    .with(place.x.from)
            };
            let carrying = place.y.size() + super::carrying_margin(scene) * 2;
            let mut options = vec![way(Action::MoveRail, Words::new("move the rail clear of the plate"))];
            if crosses && carrying <= rail.width {
                options.push(way(
                    Action::WideBoard,
                    Words::new("let the rail carry the plate flat: move it so that {} of it lies round the plate")
                        .with(carrying),
                ));
            } else if crosses {
                options.push(way(
                    Action::WideBoard,
                    Words::new("a rail at least {} wide carries the plate flat").with(carrying),
                ));
            }
            options.push(way(Action::MoveBox, Words::new("an electrician moves the box")));
            found.push(Conflict {
                severity: if crosses { Severity::Settle } else { Severity::Note },
                what: ConflictKind::RailPlate,
                said,
                options,
                members: vec![rail.id.clone()],
                box_index: Some(n),
                place: place.sides(),
            });
        }
    }
}
