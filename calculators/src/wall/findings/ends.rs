//! The ends of a wall and what its boards meet there: leans, thicker trim, corners.

use super::{Findings, rect, way};
use crate::catalogue::Words;
use crate::quantity::{Amount, Exact, Length, kind};
use crate::wall::corners::square_edge_stands_off;
use crate::wall::defaults::WIDEST_CAULK;
use crate::wall::plan::{Action, Choice, Conflict, ConflictKind, Severity};
use crate::wall::survey::{End, EndKind};
pub(super) fn leans(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let caulk = WIDEST_CAULK.in_units(scene.ground.settled.units());
    for member in scene.members.iter().filter(|member| member.taper.is_some()) {
        let taper = member.taper.unwrap_or(Exact::ZERO);
        if taper < scene.ground.settled.tape.step().exact() {
            continue;
        }
        let scribe = way(Action::Scribe, Words::new("scribe a taper of {} along its outer edge").with(taper));
        let option = if caulk.exact() < taper {
            Choice { applied: true, ..scribe }
        } else {
            way(Action::Caulk, Words::new("leave it plumb and caulk the wedge of {}").with(taper))
        };
        found.push(Conflict {
            severity: Severity::Note,
            what: ConflictKind::Lean,
            said: Words::new("the end of the wall leans {} over the board {}; bays are set out on the length measured {} above the high floor point")
                .with(taper)
                .with(member.id.clone())
                .with(scene.ground.wall.length_at),
            options: vec![option],
            members: vec![member.id.clone()],
            box_index: None,
            place: rect(member).sides(),
        });
    }
}

/// Boards that stand proud of, or back from, the base and the casings they meet.
pub(super) fn projections(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let board = scene.ground.input.scheme.board_thickness.get();
    let end = scene.ground.wall.length.exact();
    if let Some(base) = scene.ground.input.survey.base.filter(|base| base.thickness.get() != board) {
        let step = crate::wall::base_step::step(board, base.thickness.get());
        found.push(Conflict {
            severity: Severity::Note,
            what: ConflictKind::Projection,
            said: step.said(),
            options: vec![way(Action::Chamfer, step.remedy())],
            members: Vec::new(),
            box_index: None,
            place: [Exact::ZERO, scene.ground.wall.foot.at(Exact::ZERO), end, scene.ground.wall.foot.at(end)],
        });
    }
    for opening in &scene.ground.input.survey.openings {
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

pub(super) fn corners(scene: &Findings<'_>, found: &mut Vec<Conflict>) {
    let survey = &scene.ground.input.survey;
    for (end, at, name) in
        [(&survey.left, Exact::ZERO, "left"), (&survey.right, scene.ground.wall.length.exact(), "right")]
    {
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
    scene: &Findings<'_>,
    end: &End,
    degrees: f64,
    (at, name): (Exact, &'static str),
    found: &mut Vec<Conflict>,
) {
    let own = scene.ground.input.scheme.board_thickness.get();
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
