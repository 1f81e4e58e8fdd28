//! Grains of a grit ladder beside each other, and the one step too long.

use calculators::quantity::{Amount, kind};
use calculators::sanding::grain::p_median;
use calculators::sanding::grit_ladder::{LONGEST_STEP, ladder};

use super::given::Given;
use super::plate::{Plate, Scale, WIDE};
use crate::drawing::canvas::{Anchor, Canvas};

/// From the roughest grit used on stripped timber to the last before the coat.
const FROM: u16 = 80;
const TO: u16 = 220;
/// Drawing units to a micrometre.
const SCALE: f64 = 0.42;

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let rungs = ladder(FROM, TO, LONGEST_STEP)?;
    let sizes: Vec<f64> = rungs.iter().filter_map(|grade| p_median(*grade)).collect();
    let (coarse, fine) = (p_median(FROM)?, p_median(TO)?);
    let mut canvas = Canvas::default();
    let pitch = (WIDE - 60.0) / rungs.len() as f64;
    let foot = 132.0;
    for (n, (grade, size)) in rungs.iter().zip(&sizes).enumerate() {
        let x = 30.0 + pitch * (n as f64 + 0.5);
        let radius = (size * SCALE / 2.0 * 10.0).round() / 10.0;
        canvas.dot((x, foot - radius), radius, "medium fill-board");
        canvas.text((x, foot + 24.0), Anchor::Middle, "name", &format!("P{grade}"));
        if let Some(before) = n.checked_sub(1).and_then(|before| sizes.get(before)) {
            canvas.text((x - pitch / 2.0, 34.0), Anchor::Middle, "yours", &format!("{:.1}", before / size));
            canvas.line((x - pitch + 24.0, 44.0), (x - 24.0, 44.0), "thin");
            canvas.path(&[(x - 32.0, 39.0), (x - 24.0, 44.0), (x - 32.0, 49.0)], false, "thin");
        }
    }
    canvas.line((20.0, foot), (WIDE - 20.0, foot), "heavy");
    let (first, last) = (30.0 + pitch / 2.0, 30.0 + pitch * (rungs.len() as f64 - 0.5));
    canvas.path(
        &[(first, foot + 36.0), (first, foot + 60.0), (last, foot + 60.0), (last, foot + 36.0)],
        false,
        "thin dashed",
    );
    canvas.text(
        (f64::midpoint(first, last), foot + 86.0),
        Anchor::Middle,
        "",
        &format!("P{FROM} TO P{TO} AT ONCE: {:.1}, TOO FAR", coarse / fine),
    );
    let words: Vec<String> = rungs
        .iter()
        .zip(&sizes)
        .map(|(grade, size)| format!("P{grade} {}", Amount::<kind::Film>::of(*size).text(given.units)))
        .collect();
    Some(Plate {
        title: "Grains of a ladder of grits",
        description: format!(
            "Median grains beside each other: {}. Over each step stands how many times coarser the one before is. Going from P{FROM} to \
             P{TO} at once would be {:.1}.",
            words.join(", "),
            coarse / fine
        ),
        caption: format!(
            "Each grit takes out the scratches of the one before while its grain is no less than 1 part in {LONGEST_STEP} of it; a longer \
             step polishes their edges."
        ),
        scale: Scale::Stretched("Grains to scale with each other.".to_owned()),
        tall: foot + 98.0,
        canvas,
    })
}
