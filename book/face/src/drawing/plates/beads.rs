//! Sections of beads of one size with how far a cartridge goes, and the gap that is too wide for one.

use calculators::filling::bead::{BeadShape, metres_per};
use calculators::quantity::{Amount, Length, kind};
use calculators::wall::defaults::WIDEST_CAULK;

use super::given::Given;
use super::plate::{Plate, Scale, pointed};
use crate::drawing::canvas::{Anchor, At, Canvas};
use crate::figure;

/// Side of every bead on the sheet.
const SIDE: f64 = 62.0;

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let size = given.put("/leg")?.nearest(Length::um(1));
    let cartridge: Amount<kind::SmallVolume> = Amount::of(given.put_number("/cartridge")?);
    let mut canvas = Canvas::default();
    let mut words = Vec::new();
    let shapes = [
        ("ROUND", "round", BeadShape::Round),
        ("FILLET", "straight fillet", BeadShape::TriangularFillet),
        ("HOLLOW", "hollow fillet", BeadShape::ConcaveFillet),
        ("FILLED", "filled joint", BeadShape::Rectangle),
    ];
    for (n, (letters, name, shape)) in shapes.into_iter().enumerate() {
        let (x, foot) = (34.0 + 116.0 * n as f64, 112.0);
        canvas.path(&section(shape, (x, foot)), true, "medium fill-solid");
        if !matches!(shape, BeadShape::Round) {
            let high = if matches!(shape, BeadShape::Rectangle) { foot } else { foot - SIDE - 14.0 };
            canvas.path(&[(x, high), (x, foot), (x + SIDE + 14.0, foot)], false, "heavy");
        }
        if matches!(shape, BeadShape::Rectangle) {
            canvas.line((x, foot - SIDE - 14.0), (x, foot), "heavy");
            canvas.line((x + SIDE, foot - SIDE - 14.0), (x + SIDE, foot), "heavy");
        }
        let metres = metres_per(cartridge, shape.section_mm2(size, size), 0.0);
        let far = Length::nearest_mm(metres * 1_000.0);
        canvas.text((x + SIDE / 2.0, foot + 26.0), Anchor::Middle, "", letters);
        let (number, unit) = figure::run(far, given.units);
        let far = if unit.is_empty() { number } else { format!("{number} {unit}") };
        canvas.text((x + SIDE / 2.0, foot + 50.0), Anchor::Middle, "yours", &far);
        words.push(format!("{name} {far}"));
    }
    wide_gap(&mut canvas, (120.0, 300.0));
    let (size, gap) = (size.text(given.units), WIDEST_CAULK.in_units(given.units).text(given.units));
    Some(Plate {
        title: "Shapes of a bead",
        description: format!(
            "Sections of four beads, each {size} in size, with the run that a cartridge of {} gives when nothing is lost: {}. Below, a gap wider than {gap}: a round \
             backer is pushed in first, and the bead bridges it.",
            cartridge.text(given.units),
            words.join(", ")
        ),
        caption: format!(
            "One cartridge of {}, beads of {size}, nothing lost. Over {gap} a bead shrinks into a groove: push in a backer and bridge it.",
            cartridge.text(given.units)
        ),
        scale: Scale::Stretched("Beads to scale with each other.".to_owned()),
        tall: 322.0,
        canvas,
    })
}

fn section(shape: BeadShape, (x, foot): At) -> Vec<At> {
    let arc = |middle: At, radius: f64, from: f64, to: f64| -> Vec<At> {
        (0..=24)
            .map(|step| (from + (to - from) * f64::from(step) / 24.0).to_radians())
            .map(|turn| (middle.0 + radius * libm::cos(turn), middle.1 - radius * libm::sin(turn)))
            .collect()
    };
    match shape {
        BeadShape::Round => arc((x + SIDE / 2.0, foot - SIDE / 2.0), SIDE / 2.0, 0.0, 360.0),
        BeadShape::HalfRound => arc((x + SIDE / 2.0, foot), SIDE / 2.0, 0.0, 180.0),
        BeadShape::TriangularFillet => vec![(x, foot), (x + SIDE, foot), (x, foot - SIDE)],
        BeadShape::ConcaveFillet => {
            let mut points = arc((x + SIDE, foot - SIDE), SIDE, 180.0, 270.0);
            points.push((x, foot));
            points
        }
        BeadShape::Rectangle => vec![(x, foot), (x + SIDE, foot), (x + SIDE, foot - SIDE), (x, foot - SIDE)],
    }
}

/// Board and wall with a wide gap between them, a backer in it, and the bead over it.
fn wide_gap(canvas: &mut Canvas, (x, foot): At) {
    let (gap, tall) = (44.0, 86.0);
    canvas.rect((x - 76.0, foot - tall), (x, foot), "medium fill-board");
    canvas.rect((x + gap, foot - tall), (x + gap + 90.0, foot), "medium fill-wall");
    canvas.dot((x + gap / 2.0, foot - tall + 48.0), gap / 2.0 + 1.0, "medium fill-sheet");
    let dip: Vec<At> = (0..=12)
        .map(|n| {
            (x + gap * f64::from(n) / 12.0, foot - tall + 7.0 * libm::sin(f64::from(n) / 12.0 * std::f64::consts::PI))
        })
        .collect();
    let mut bead = vec![(x, foot - tall + 26.0)];
    bead.extend(dip);
    bead.push((x + gap, foot - tall + 26.0));
    canvas.path(&bead, true, "medium fill-solid");
    pointed(canvas, (x + gap - 10.0, foot - tall + 14.0), (x + gap + 116.0, foot - tall + 12.0), Anchor::Start, "BEAD");
    pointed(
        canvas,
        (x + gap / 2.0 + 10.0, foot - tall + 52.0),
        (x + gap + 116.0, foot - tall + 48.0),
        Anchor::Start,
        "BACKER",
    );
    canvas.text((x - 68.0, foot - 12.0), Anchor::Start, "", "BOARD");
    canvas.text((x + gap + 10.0, foot - 12.0), Anchor::Start, "", "WALL");
}
