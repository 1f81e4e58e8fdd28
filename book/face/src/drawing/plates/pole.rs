//! A story pole with its marks, beside the wall it was marked for.

use calculators::quantity::Exact;

use super::given::Given;
use super::plate::{Plate, Scale, WIDE};
use crate::drawing::canvas::{Anchor, Canvas};

/// Letters closer than this would stand in each other.
const NEAREST: f64 = 24.0;

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let length = given.got("/length")?;
    let mut marks: Vec<(String, Exact)> = Vec::new();
    while let Some(mark) = given.got(&format!("/marks/{}/mark", marks.len())) {
        marks.push((given.text(&format!("/marks/{}/what", marks.len()))?, mark));
    }
    let (top, foot) = (20.0, 430.0);
    let scale = (foot - top) / length.in_mm();
    let y = |mark: Exact| foot - mark.in_mm() * scale;
    let (left, right) = (40.0, 84.0);
    let mut canvas = Canvas::default();
    canvas.rect((left, top), (right, foot), "medium fill-board");
    canvas.path(&[(right, top), (right, foot), (left, foot)], false, "heavy");
    let mut lowest = f64::MAX;
    for (what, mark) in &marks {
        let at = y(*mark);
        let written = (at + 6.0).min(lowest - NEAREST);
        lowest = written;
        canvas.line((left, at), (right, at), if what == "datum" { "cut" } else { "medium" });
        canvas.path(
            &[(right, at), (right + 20.0, at), (right + 34.0, written - 6.0), (right + 48.0, written - 6.0)],
            false,
            "thin",
        );
        canvas.length((right + 56.0, written), Anchor::Start, "yours", *mark, given.units);
        canvas.text((right + 136.0, written), Anchor::Start, "", &what.to_uppercase());
    }
    canvas.line((10.0, foot), (WIDE - 20.0, foot), "thin chain");
    let words: Vec<String> = marks.iter().map(|(what, mark)| format!("{what} {}", given.said(*mark))).collect();
    Some(Plate {
        title: "A story pole",
        description: format!("A stick {} long with marks from its foot: {}.", given.said(length), words.join(", ")),
        caption: "One stick for every height in the room. Its datum mark is held to the red line, never its foot to the floor.".to_owned(),
        scale: Scale::Stretched("Heights to scale.".to_owned()),
        tall: foot + 14.0,
        canvas,
    })
}
