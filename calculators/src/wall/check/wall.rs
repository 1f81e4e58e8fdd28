//! Pieces against the wall: out of openings and zones, between its ends, over its floor; and what must be told is told.

use super::Broken;
use crate::quantity::{Exact, Length};
use crate::wall::defaults::{PLATE_CLEARANCE, SHORTEST_BOARD};
use crate::wall::plan::{Layout, Member, MemberKind, Severity};
use crate::wall::scheme::WallInput;
use crate::wall::survey::{Agreed, BaseWork, EndKind, HeadKind};

/// What touches within this is not inside: outlines over slopes are kept to the nanometre.
const NEAR: Length = Length::um(2);

pub(super) fn check(input: &WallInput, layout: &Layout, found: &mut Vec<Broken>) {
    zones(input, layout, found);
    ends(input, layout, found);
    plates(input, layout, found);
    sizes(input, layout, found);
    bays(layout, found);
}

/// Left, bottom, right, top of something that trim keeps out of.
type Sides = [Exact; 4];

fn inside(member: &Member, [left, bottom, right, top]: Sides) -> bool {
    member.spans().is_some_and(|(x, y)| {
        left + NEAR < x.to && x.from + NEAR < right && bottom + NEAR < y.to && y.from + NEAR < top
    })
}

/// For a sloping piece the rectangle round it says too much: whether any of it really lies inside.
fn really_inside(member: &Member, sides: Sides) -> bool {
    if !inside(member, sides) {
        return false;
    }
    let [left, bottom, right, top] = sides.map(Exact::in_mm);
    let near = NEAR.in_mm();
    // Cut the outline back to the rectangle, side by side; what is left has an area or not.
    let mut points: Vec<(f64, f64)> = member.outline.iter().map(|point| (point.x.in_mm(), point.y.in_mm())).collect();
    let keep: [(bool, f64, f64); 4] = [
        (true, 1.0, left + near),
        (true, -1.0, -(right - near)),
        (false, 1.0, bottom + near),
        (false, -1.0, -(top - near)),
    ];
    for (along, sign, least) in keep {
        let value = |point: &(f64, f64)| sign * if along { point.0 } else { point.1 };
        let mut cut = Vec::with_capacity(points.len() + 2);
        for n in 0..points.len() {
            let (from, to) = (points[n], points[(n + 1) % points.len()]);
            let (a, b) = (value(&from) - least, value(&to) - least);
            if a >= 0.0 {
                cut.push(from);
            }
            if (a >= 0.0) != (b >= 0.0) {
                let share = a / (a - b);
                cut.push((from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share));
            }
        }
        points = cut;
    }
    let count = points.len();
    let area: f64 = (0..count)
        .map(|n| {
            let (from, to) = (points[n], points[(n + 1) % count]);
            from.0 * to.1 - to.0 * from.1
        })
        .sum();
    area.abs() / 2.0 > 0.01
}

/// No piece enters an opening or the clearance of a zone, or exactly that pair is told as to be settled.
fn zones(input: &WallInput, layout: &Layout, found: &mut Vec<Broken>) {
    let far_down = Length::mm(-100_000).exact();
    let survey = &input.survey;
    let openings = survey.openings.iter().filter(|opening| {
        // Beside a curved or sloping head boards stand inside the rectangle round it.
        opening.head.is_none_or(|head| head.kind == HeadKind::Level) && opening.apron.is_none()
    });
    let openings = openings.map(|opening| {
        let out = opening.clearance.map_or(Length::ZERO, Length::from);
        let bottom = opening.bottom.map_or(far_down, |bottom| (bottom.get() - out).exact());
        [
            (opening.left.get() - out).exact(),
            bottom,
            (opening.right.get() + out).exact(),
            (opening.top.get() + out).exact(),
        ]
    });
    let zones = survey.keep_clear.iter().map(|zone| {
        let out = zone.clearance.map_or(Length::ZERO, Length::from);
        [
            (zone.left.get() - out).exact(),
            (zone.bottom.get() - out).exact(),
            (zone.right.get() + out).exact(),
            (zone.top.get() + out).exact(),
        ]
    });
    for sides in openings.chain(zones) {
        for member in layout.members.iter().filter(|member| inside(member, sides)) {
            let told = layout
                .conflicts
                .iter()
                .any(|conflict| conflict.severity == Severity::Settle && conflict.members.contains(&member.id));
            if !told && really_inside(member, sides) {
                found.push(Broken::at("no piece stands in an opening or a clearance untold", &[&member.id]));
            }
        }
    }
}

/// Pieces lie between the ends of the wall but for what laps round an outside corner, and not below the floor.
fn ends(input: &WallInput, layout: &Layout, found: &mut Vec<Broken>) {
    let survey = &input.survey;
    // The longest lap: the long point of a mitre in a corner of 30°, from the thickest trim.
    let lap = |kind: EndKind| match kind {
        EndKind::OutsideLapping | EndKind::OutsideMitred => Length::mm(250),
        EndKind::OpenBay | EndKind::OpenBoard if input.scheme.cap.is_some() => Length::mm(305),
        _ => Length::ZERO,
    };
    let Some(longest) =
        survey.lengths.iter().map(|at| at.length.get() + at.left_in.map_or(Length::ZERO, Length::from)).max()
    else {
        return;
    };
    let first = survey.lengths.iter().map(|at| at.left_in.map_or(Length::ZERO, Length::from)).min();
    let from = first.unwrap_or(Length::ZERO).min(Length::ZERO) - lap(survey.left.kind) - NEAR;
    let to = longest + lap(survey.right.kind) + NEAR;
    let lowest = survey.stations.iter().map(|station| survey.datum.get() - station.datum_to_floor.get()).min();
    let floor = lowest.unwrap_or(Length::ZERO).min(Length::ZERO) - Length::mm(60);
    let ceiling = |station: &crate::wall::survey::Station| {
        Some(survey.datum.get() - station.datum_to_floor.get() + station.floor_to_ceiling?.get())
    };
    let highest = survey.stations.iter().filter_map(ceiling).max().filter(|_| survey.stair.is_none());
    for member in &layout.members {
        let Some((x, y)) = member.spans() else { continue };
        let under = highest.is_none_or(|highest| y.to <= highest + Length::mm(60) || member.kind == MemberKind::Cap);
        if x.from < from.exact() || to.exact() < x.to || y.from < floor.exact() || !under {
            found.push(Broken::at("every piece lies on the wall", &[&member.id]));
        }
    }
}

/// Every board within a plate's clearance is told for that plate.
fn plates(input: &WallInput, layout: &Layout, found: &mut Vec<Broken>) {
    let units = input.scheme.tape.units();
    let clearance = input.scheme.leeway.clearance.map_or(PLATE_CLEARANCE.in_units(units), Length::from);
    for (n, plate) in input.survey.boxes.iter().enumerate() {
        let out = match plate.agreed {
            None => clearance,
            Some(Agreed::WideBoard | Agreed::Notch | Agreed::MoveBox | Agreed::Leave) => continue,
        };
        let sides = [
            (plate.left.get() - out).exact(),
            plate.bottom.get().exact(),
            (plate.right.get() + out).exact(),
            plate.top.get().exact(),
        ];
        let boards = layout.members.iter().filter(|member| member.position.is_some());
        for member in boards.filter(|member| inside(member, sides)) {
            let told = layout
                .conflicts
                .iter()
                .any(|conflict| conflict.box_index == Some(n) && conflict.members.contains(&member.id));
            if !told {
                found.push(Broken::at("a board at a plate is told", &[&member.id]));
            }
        }
    }
}

/// No piece is smaller than the smallest.
fn sizes(input: &WallInput, layout: &Layout, found: &mut Vec<Broken>) {
    let least = SHORTEST_BOARD.in_units(input.scheme.tape.units()).exact();
    for member in
        layout.members.iter().filter(|member| member.kind != MemberKind::Cap && member.kind != MemberKind::Moulding)
    {
        if member.length.exact < least - NEAR || !member.width.is_positive() {
            found.push(Broken::at("no piece is shorter than the smallest", &[&member.id]));
        }
    }
    let new_base = input.survey.base.is_some_and(|base| base.work == BaseWork::New);
    if !new_base && layout.members.iter().any(|member| member.kind == MemberKind::Base) {
        found.push(Broken::at("a base that stays is not cut", &[]));
    }
}

/// Boards and bays fill each group exactly; no bay is without width or height; no board has passed its neighbour.
fn bays(layout: &Layout, found: &mut Vec<Broken>) {
    for run in &layout.runs {
        let inner = |position: &&crate::wall::plan::Position| {
            run.left <= position.left
                && position.right <= run.right
                && position.why == crate::wall::plan::Standing::Field
        };
        let widths = layout.positions.iter().filter(inner).map(|position| position.right - position.left);
        let sum = widths.clone().take(run.boards).fold(Exact::ZERO, |sum, width| sum + width);
        let bays = i64::try_from(run.bays).unwrap_or(0);
        if widths.count() >= run.boards && sum + run.bay * bays != run.right - run.left {
            found.push(Broken::at("boards and bays fill their run", &[]));
        }
    }
    if layout.bays.iter().any(|bay| !bay.width.is_positive() || !bay.height.is_positive()) {
        found.push(Broken::at("no bay is without width or height", &[]));
    }
    if layout.positions.windows(2).any(|pair| pair[1].left < pair[0].left) {
        found.push(Broken::at("boards are numbered from the left", &[]));
    }
}
