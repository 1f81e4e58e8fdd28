//! How two pieces meet: butted, coped, mitred.

use super::given::Given;
use super::plate::{Plate, Scale, proud};
use crate::drawing::canvas::{Anchor, At, Canvas};

/// A moulded edge, from the wall to its foot, in parts of a hundred.
const PROFILE: [At; 9] = [
    (0.0, 0.0),
    (18.0, 0.0),
    (22.0, 8.0),
    (20.0, 18.0),
    (28.0, 28.0),
    (38.0, 32.0),
    (42.0, 42.0),
    (42.0, 100.0),
    (0.0, 100.0),
];

pub(super) fn plate(_: &Given) -> Option<Plate> {
    let mut canvas = Canvas::default();
    // Butt: a board square between rail and base.
    proud(&mut canvas, (14.0, 40.0), (146.0, 76.0));
    canvas.rect((60.0, 76.0), (100.0, 170.0), "medium fill-board");
    canvas.line((100.0, 76.0), (100.0, 170.0), "heavy");
    canvas.line((60.0, 76.0), (100.0, 76.0), "cut");
    proud(&mut canvas, (14.0, 170.0), (146.0, 206.0));
    // Cope: one profile runs into the corner, the other is cut to fit over it.
    let shape =
        |left: f64, top: f64| -> Vec<At> { PROFILE.iter().map(|(x, y)| (left + x * 1.4, top + y * 1.6)).collect() };
    canvas.line((176.0, 30.0), (176.0, 214.0), "cut");
    canvas.path(&shape(178.0, 46.0), true, "medium fill-board");
    let mut over = shape(184.0, 46.0);
    over.retain(|(x, _)| *x > 184.5);
    over.push((318.0, 206.0));
    over.push((318.0, 46.0));
    canvas.path(&over, true, "medium fill-sheet");
    canvas.path(&over[..over.len() - 2], false, "cut");
    // Mitre: an outside corner from above.
    let (x, y) = (356.0, 96.0);
    canvas.path(&[(x, 214.0), (x, y), (466.0, y)], false, "cut");
    let (outer_x, outer_y) = (x - 26.0, y - 26.0);
    canvas.path(&[(x, 206.0), (outer_x, 206.0), (outer_x, outer_y), (x, y)], true, "medium fill-board");
    canvas.path(&[(466.0, y), (466.0, outer_y), (outer_x, outer_y), (x, y)], true, "medium fill-board");
    canvas.line((outer_x, outer_y), (x, y), "cut");
    for (at, name) in [(80.0, "BUTT"), (250.0, "COPE"), (404.0, "MITRE")] {
        canvas.text((at, 24.0), Anchor::Middle, "", name);
    }
    Some(Plate {
        title: "Three ways to meet",
        description: "Left: a board butts square under a rail and on the base, from the front. Middle: a moulded base runs into the corner \
                      and the second piece is cut to its profile, seen along the first. Right: two boards mitred round an outside corner, \
                      from above. The cut is the heaviest line in each."
            .to_owned(),
        caption: "Flat boards butt against rails. A moulded base is coped at inside corners, since a cope stays shut when the corner is not \
                  square. Outside corners are mitred, or one board laps."
            .to_owned(),
        scale: Scale::None,
        tall: 222.0,
        canvas,
    })
}
