//! The end of one piece of a corner, cut to the corner it was measured for and cut to 45 degrees.

use calculators::quantity::{Amount, kind};

use super::given::Given;
use super::plate::{Plate, Scale};
use crate::drawing::canvas::{Anchor, Canvas};

/// The difference from 45 degrees is drawn this much larger.
const LARGER: f64 = 8.0;

pub(super) fn plate(given: &Given) -> Option<Plate> {
    let (corner, width) = (given.put_number("/corner")?, given.put("/width")?);
    let setting = given.got_number("/setting")?;
    let opens = given.got("/cap_opens")?;
    let (left, right, top, foot) = (30.0, 420.0, 70.0, 230.0);
    let tall = foot - top;
    let end = |degrees: f64| right - tall * libm::tan(degrees.to_radians());
    let drawn = (45.0 + (setting - 45.0) * LARGER).clamp(20.0, 62.0);
    let (true_end, square_end) = (end(drawn), end(45.0));
    let mut canvas = Canvas::default();
    canvas.path(&[(left, top), (true_end, top), (right, foot), (left, foot)], true, "medium fill-board");
    canvas.path(&[(left, foot), (right, foot), (true_end, top)], false, "heavy");
    let (low, high) = (true_end.min(square_end), true_end.max(square_end));
    canvas.path(&[(low, top), (high, top), (right, foot)], true, "thin fill-wall");
    canvas.line((square_end, top), (right, foot), "medium dashed");
    canvas.line((true_end, top), (right, foot), "cut");
    canvas.line((right, foot), (right, top - 10.0), "thin chain");
    canvas.text((right + 2.0, top - 16.0), Anchor::Middle, "", "SQUARE");
    let text = given.text("/setting")?;
    canvas.text((true_end - 12.0, top - 14.0), Anchor::Middle, "yours", &text);
    canvas.text((square_end + 22.0, top - 14.0), Anchor::Start, "", "45°");
    canvas.line((true_end, top), (true_end - 8.0, top - 10.0), "thin");
    canvas.line((square_end, top), (square_end + 18.0, top - 14.0), "thin");
    canvas.text((left + 200.0, foot - 14.0), Anchor::Start, "", "LONG POINT");
    canvas.line((left + 312.0, foot - 19.0), (right - 10.0, foot - 5.0), "thin");
    let (corner, opens) = (Amount::<kind::Angle>::of(corner).text(given.units), given.said(opens));
    Some(Plate {
        title: "One piece of a corner on the saw",
        description: format!(
            "A piece whose end is cut to {text} from square for a corner of {corner}. A dashed line shows the cut at 45°; the wedge between \
             them is what each piece has wrong."
        ),
        caption: format!(
            "A corner of {corner} wants {text} on both pieces. Two pieces cut at 45° would open by {opens} across a cap of {}.",
            given.said(width)
        ),
        scale: Scale::Stretched(format!("The difference between the two cuts is drawn {LARGER} times as large.")),
        tall: foot + 14.0,
        canvas,
    })
}
