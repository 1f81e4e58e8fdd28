//! The angle of a corner from two legs and a diagonal, seen from above.

use super::given::Given;
use super::plate::{Plate, Scale, WIDE};
use crate::drawing::canvas::{Anchor, At, Canvas};

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (leg, other, across) = (given.put("/leg")?, given.put("/other_leg")?, given.put("/across")?);
    let (angle, square) = (given.got_number("/angle")?, given.got("/square")?);
    let reach = leg.in_mm().max(other.in_mm());
    let scale = 230.0 / reach;
    let (corner, turn) = ((150.0, 280.0), angle.to_radians());
    let along = |length: f64| -> At { (corner.0 + length * scale, corner.1) };
    let up = |length: f64| -> At {
        (corner.0 + length * scale * libm::cos(turn), corner.1 - length * scale * libm::sin(turn))
    };
    let mut canvas = Canvas::default();
    canvas.path(&[up(reach * 1.12), corner, along(reach * 1.25)], false, "cut");
    let (one, two) = (along(leg.in_mm()), up(other.in_mm()));
    canvas.line(one, two, "medium dashed");
    for place in [one, two] {
        canvas.dot(place, 4.0, "fill-solid");
    }
    let middle = |from: At, to: At| (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1));
    let (below, beside, slant) = (middle(corner, one), middle(corner, two), middle(one, two));
    canvas.length((below.0, below.1 + 26.0), Anchor::Middle, "", leg, given.units);
    canvas.length((beside.0 - 46.0, beside.1), Anchor::Middle, "", other, given.units);
    canvas.length((slant.0 + 14.0, slant.1 - 8.0), Anchor::Start, "", across, given.units);
    let arc: Vec<At> = (0..=12)
        .map(|step| turn * f64::from(step) / 12.0)
        .map(|at| (corner.0 + 46.0 * libm::cos(at), corner.1 - 46.0 * libm::sin(at)))
        .collect();
    canvas.path(&arc, false, "thin");
    let text = given.text("/angle")?;
    canvas.text((corner.0 + 44.0, corner.1 - 44.0), Anchor::Start, "yours", &text);
    canvas.text((corner.0 - 130.0, corner.1 + 26.0), Anchor::Start, "", "WALLS");
    let (across, square) = (given.said(across), given.said(square));
    Some(Plate {
        title: "A corner by its legs, from above",
        description: format!(
            "Two walls meet. {} along one and {} along the other are marked; the diagonal between the marks is {across}, so the corner is {text}.",
            given.said(leg),
            given.said(other)
        ),
        caption: format!(
            "With these legs a square corner would measure {square} across. This one measures {across}: it is {text}."
        ),
        scale: Scale::True,
        tall: (corner.1 + 40.0).min(WIDE),
        canvas,
    })
}
