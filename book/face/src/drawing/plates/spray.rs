//! Passes of a spray gun beside each other and what they add up to.

use calculators::quantity::{Amount, kind};

use super::given::Given;
use super::plate::{Plate, Scale, WIDE, across};
use crate::drawing::canvas::{Anchor, Canvas};

const PASSES: usize = 5;
/// Height of one pass in the sum.
const LAYER: f64 = 26.0;

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (fan, pitch) = (given.put("/fan")?, given.got("/pitch")?);
    let overlap = given.put_number("/overlap")?;
    let steps = (PASSES - 1) as f64;
    let scale = (WIDE - 40.0) / (fan.in_mm() + steps * pitch.in_mm());
    let (wide, step) = (fan.in_mm() * scale, pitch.in_mm() * scale);
    let left = |pass: usize| 20.0 + pass as f64 * step;
    let mut canvas = Canvas::default();
    for pass in 0..PASSES {
        let (x, y) = (left(pass), 58.0 + 24.0 * pass as f64);
        canvas.rect((x, y), (x + wide, y + 17.0), "medium fill-wall");
        canvas.text((x + wide / 2.0, y + 15.0), Anchor::Middle, "name", &(pass + 1).to_string());
    }
    across(&mut canvas, 40.0, (left(0), left(0) + wide), fan, given.units);
    let middle = left(PASSES - 1) + wide / 2.0;
    across(&mut canvas, 58.0 + 24.0 * 5.0 + 26.0, (middle - step, middle), pitch, given.units);
    let foot = 58.0 + 24.0 * 5.0 + 26.0 + 30.0 + 3.0 * LAYER;
    // The sum, from edge to edge of every pass.
    let mut edges: Vec<f64> = (0..PASSES).flat_map(|pass| [left(pass), left(pass) + wide]).collect();
    edges.sort_by(f64::total_cmp);
    let mut outline = vec![(left(0), foot)];
    for pair in edges.windows(2) {
        let centre = f64::midpoint(pair[0], pair[1]);
        let layers = (0..PASSES).filter(|pass| left(*pass) < centre && centre < left(*pass) + wide).count();
        let y = foot - LAYER * layers as f64;
        outline.push((pair[0], y));
        outline.push((pair[1], y));
    }
    outline.push((left(PASSES - 1) + wide, foot));
    canvas.path(&outline, true, "medium fill-solid");
    canvas.line((20.0, foot), (WIDE - 20.0, foot), "heavy");
    canvas.text((WIDE / 2.0, foot + 26.0), Anchor::Middle, "", "WHAT LIES ON THE WALL");
    let share = Amount::<kind::Percent>::of(overlap).text(given.units);
    Some(Plate {
        title: "Passes and their overlap",
        description: format!(
            "{PASSES} passes with a fan {} wide, each over the last by {share}, so that {} lie from one to the next. Below, their sum: even \
             in the middle, thin over the first and the last part of a fan.",
            given.said(fan),
            given.said(pitch)
        ),
        caption: format!(
            "With {share} overlap the gun moves over by {} each time. The edges get less: begin and end beyond the board, or add a pass there.",
            given.said(pitch)
        ),
        scale: Scale::Stretched("Widths to scale.".to_owned()),
        tall: foot + 38.0,
        canvas,
    })
}
