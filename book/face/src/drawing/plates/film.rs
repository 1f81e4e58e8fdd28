//! What is wet on the wall, what dries of it, and the two teeth of the comb that hold it between them.

use super::given::Given;
use super::plate::{Plate, Scale, WIDE};
use crate::drawing::canvas::{Anchor, Canvas};

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (wet, dry) = (given.got_number("/wet_film")?, given.put_number("/dry_film")?);
    let (low, high) = (given.got_number("/wet_tooth"), given.got_number("/dry_tooth"));
    let tallest = high.unwrap_or(wet).max(wet);
    let scale = 130.0 / tallest;
    let foot = 200.0;
    let mut canvas = Canvas::default();
    canvas.hatched("drawing-wet-and-dry", "ground", (20.0, foot), (WIDE - 20.0, foot + 22.0), "medium");
    canvas.rect((20.0, foot - wet * scale), (250.0, foot), "medium fill-wall");
    canvas.rect((330.0, foot - dry * scale), (WIDE - 20.0, foot), "medium fill-solid");
    canvas.text((36.0, 34.0), Anchor::Start, "", "WET, UNDER THE COMB");
    canvas.text((330.0, 34.0), Anchor::Start, "", "DRY");
    // The comb stands on its outer teeth; those between are shorter by what is written on them.
    let back = foot - 150.0;
    canvas.path(&[(44.0, foot), (44.0, back), (232.0, back), (232.0, foot)], false, "heavy");
    for (at, tooth) in [(84.0, low), (158.0, high)] {
        if let Some(tooth) = tooth {
            let end = foot - tooth * scale;
            canvas.rect((at, back), (at + 40.0, end), "medium fill-sheet");
        }
    }
    for x in [44.0, 212.0] {
        canvas.rect((x, back), (x + 20.0, foot), "medium fill-sheet");
    }
    let text = |pointer: &str| given.text(pointer).unwrap_or_default();
    canvas.text((104.0, foot + 46.0), Anchor::Middle, "yours", &text("/wet_tooth"));
    canvas.text((104.0, foot + 68.0), Anchor::Middle, "", "WETTED");
    canvas.text((188.0, foot + 46.0), Anchor::Middle, "yours", &text("/dry_tooth"));
    canvas.text((188.0, foot + 68.0), Anchor::Middle, "", "DRY");
    let dried = calculators::quantity::Amount::<calculators::quantity::kind::Film>::of(dry).text(given.units);
    canvas.text((395.0, foot + 46.0), Anchor::Middle, "yours", &dried);
    let wet = text("/wet_film");
    Some(Plate {
        title: "Wet film, dry film and the comb",
        description: format!(
            "A wet film of {wet} on the wall with a comb standing in it: the tooth of {} is wetted, the tooth of {} is not. Beside it what \
             dries of it: {dried}.",
            text("/wet_tooth"),
            text("/dry_tooth")
        ),
        caption: format!(
            "Aim at {wet} wet and {dried} is left dry. The comb shows it between two teeth: {} comes out wetted, {} clean.",
            text("/wet_tooth"),
            text("/dry_tooth")
        ),
        scale: Scale::Stretched("Thicknesses to scale with each other.".to_owned()),
        tall: foot + 78.0,
        canvas,
    })
}
