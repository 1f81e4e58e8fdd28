//! Where a level rail turns into the rake at the foot of a stair.

use super::given::Given;
use super::plate::{Plate, Scale, WIDE, pointed};
use crate::drawing::canvas::{Anchor, At, Canvas};

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let first = given.put("/first_nosing")?;
    let (riser, run, rise) = (given.put("/riser")?, given.put("/run")?, given.put("/rise")?);
    let (over, rail) = (given.put("/over_landings")?, given.put("/rail")?);
    let (top, bottom) = (given.got("/lower_top")?, given.got("/lower_bottom")?);
    let slope = rise.in_mm() / run.in_mm();
    // As much of the stair as two steps and what lies before them.
    let steps = (rise.in_mm() / riser.in_mm()).round().max(1.0);
    let going = run.in_mm() / steps;
    let end = first.in_mm() + 2.2 * going;
    let tallest = over.in_mm() + (end - top.in_mm()) * slope;
    let scale = ((WIDE - 60.0) / end).min(360.0 / tallest);
    let foot = tallest * scale + 30.0;
    let at = |x: f64, height: f64| -> At { (20.0 + x * scale, foot - height * scale) };
    let mut canvas = Canvas::default();
    // Floor and steps.
    let mut profile = vec![at(0.0, 0.0), at(first.in_mm(), 0.0)];
    let mut height = riser.in_mm();
    for step in 0..3 {
        let x = first.in_mm() + f64::from(step) * going;
        profile.push(at(x, height));
        profile.push(at((x + going).min(end), height));
        height += rise.in_mm() / steps;
        if x + going < end {
            profile.push(at(x + going, height));
        }
    }
    profile.dedup();
    canvas.path(&profile, false, "cut");
    let level = over.in_mm();
    let raked = |x: f64, turn: f64, level: f64| level + (x - turn) * slope;
    let (high, low) = (top.in_mm(), bottom.in_mm());
    let under = level - rail.in_mm();
    canvas.path(
        &[
            at(0.0, level),
            at(high, level),
            at(end, raked(end, high, level)),
            at(end, raked(end, low, under)),
            at(low, under),
            at(0.0, under),
        ],
        true,
        "medium fill-board",
    );
    canvas.path(&[at(end, raked(end, low, under)), at(low, under), at(0.0, under)], false, "heavy");
    canvas.line(at(high, level), at(low, under), "cut");
    let nosing = at(first.in_mm(), riser.in_mm());
    canvas.line(nosing, (nosing.0, at(0.0, raked(first.in_mm(), high, level)).1), "thin dashed");
    // Running dimensions under the floor.
    let line = foot + 30.0;
    canvas.line(at(0.0, 0.0), (at(0.0, 0.0).0, line + 8.0), "thin soft");
    canvas.line((at(0.0, 0.0).0, line), (at(first.in_mm(), 0.0).0, line), "thin");
    for (x, length, class) in [(high, top, "yours"), (first.in_mm(), first, "")] {
        let place = at(x, 0.0).0;
        canvas.line((place, line - 6.0), (place, line + 6.0), "medium");
        canvas.length((place, line + 28.0), Anchor::Middle, class, length, given.units);
    }
    let from = at(high, level);
    canvas.line(from, (from.0, line), "thin chain");
    pointed(&mut canvas, nosing, (nosing.0 + 26.0, foot - 6.0), Anchor::Start, "FIRST NOSING");
    let mitre = given.text("/mitre")?;
    canvas.text((from.0 - 8.0, from.1 - 14.0), Anchor::Middle, "yours", &mitre);
    let (turns, first) = (given.said(top), given.said(first));
    Some(Plate {
        title: "Where the rail turns",
        description: format!(
            "A level rail meets the raking rail of a stair at {turns} from zero; the first nosing stands at {first}. Both pieces are cut to \
             {mitre}, and the lower edge turns at {}.",
            given.said(bottom)
        ),
        caption: format!(
            "The upper edge turns at {turns}, before the first nosing at {first}, because the rail keeps its height over the landing until the \
             rake has come down to it. Both ends are cut to {mitre}."
        ),
        scale: Scale::True,
        tall: line + 42.0,
        canvas,
    })
}
