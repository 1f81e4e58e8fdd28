//! A sheet to draw on: shapes in drawing units, y downward, each with its class of stroke or fill.

use std::fmt::Write;

use calculators::quantity::{Exact, Units, print};

use crate::figure::push_escaped;

/// A place on the sheet, in drawing units.
pub(super) type At = (f64, f64);

/// Finest fraction of an inch on drawings; marks are rounded before they come here.
const FRACTION: i64 = 64;

#[derive(Default)]
pub(super) struct Canvas {
    body: String,
}

/// How a text stands at its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    /// Turned a quarter, reading downward from its place.
    Down,
    /// Turned a quarter, reading upward and centred on its place.
    Up,
}

/// A figure of a drawing with tenths rounded off where nobody sees them.
fn short(value: f64) -> f64 {
    // Adding zero turns a negative zero into zero.
    (value * 10.0).round() / 10.0 + 0.0
}

impl Canvas {
    pub(super) fn line(&mut self, from: At, to: At, class: &str) {
        let (x1, y1, x2, y2) = (short(from.0), short(from.1), short(to.0), short(to.1));
        let _ = write!(self.body, "<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\" class=\"{class}\"/>");
    }

    pub(super) fn path(&mut self, points: &[At], closed: bool, class: &str) {
        let Some(((x, y), rest)) = points.split_first() else { return };
        let _ = write!(self.body, "<path d=\"M{} {}", short(*x), short(*y));
        for (x, y) in rest {
            let _ = write!(self.body, "L{} {}", short(*x), short(*y));
        }
        let _ = write!(self.body, "{}\" class=\"{class}\"/>", if closed { "Z" } else { "" });
    }

    pub(super) fn rect(&mut self, low: At, high: At, class: &str) {
        let (x, y) = (low.0.min(high.0), low.1.min(high.1));
        let (width, height) = ((high.0 - low.0).abs(), (high.1 - low.1).abs());
        let _ = write!(
            self.body,
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" class=\"{class}\"/>",
            short(x),
            short(y),
            short(width),
            short(height)
        );
    }

    pub(super) fn dot(&mut self, at: At, radius: f64, class: &str) {
        let _ = write!(
            self.body,
            "<circle cx=\"{}\" cy=\"{}\" r=\"{radius}\" class=\"{class}\"/>",
            short(at.0),
            short(at.1)
        );
    }

    pub(super) fn text(&mut self, at: At, anchor: Anchor, class: &str, text: &str) {
        self.open_text(at, anchor, class);
        push_escaped(&mut self.body, text);
        self.body.push_str("</text>");
    }

    /// A length without its unit, fractions stacked aslant: units are not repeated in a drawing.
    pub(super) fn length(&mut self, at: At, anchor: Anchor, class: &str, length: Exact, units: Units) {
        self.open_text(at, anchor, class);
        match units {
            Units::Metric => {
                let text = print::millimetres(length, print::TENTH_MM);
                self.body.push_str(text.trim_end_matches(" mm"));
            }
            Units::Imperial => {
                let (sign, whole, fraction) = print::stacked(length, FRACTION);
                self.body.push_str(sign);
                if whole != 0 || fraction.is_none() {
                    let _ = write!(self.body, "{whole}");
                }
                if let Some((top, bottom)) = fraction {
                    let _ = write!(
                        self.body,
                        "<tspan dx=\".14em\" dy=\"-.42em\" font-size=\".72em\">{top}</tspan><tspan dy=\".3em\">⁄</tspan>\
                         <tspan dy=\".12em\" font-size=\".72em\">{bottom}</tspan>"
                    );
                }
            }
        }
        self.body.push_str("</text>");
    }

    fn open_text(&mut self, at: At, anchor: Anchor, class: &str) {
        let (x, y) = (short(at.0), short(at.1));
        let place = match anchor {
            Anchor::Start => format!("x=\"{x}\" y=\"{y}\""),
            Anchor::Middle => format!("x=\"{x}\" y=\"{y}\" text-anchor=\"middle\""),
            Anchor::Down => format!("transform=\"translate({x} {y}) rotate(90)\""),
            Anchor::Up => format!("transform=\"translate({x} {y}) rotate(-90)\" text-anchor=\"middle\""),
        };
        let _ = write!(self.body, "<text {place} class=\"{class}\">");
    }

    /// A pennant with a number, on a leader from the place it speaks of; solid when it must be settled.
    pub(super) fn flag(&mut self, place: At, pennant: At, solid: bool, number: usize) {
        let foot = if pennant.0 < place.0 { pennant.0 + 42.0 } else { pennant.0 };
        let end = if pennant.1 > place.1 { pennant.1 - 40.0 } else { pennant.1 };
        let _ = write!(self.body, "<g class=\"flag{}\">", if solid { "" } else { " hollow" });
        self.line(place, (foot, end), "medium");
        self.dot(place, 5.0, "fill-solid");
        let _ = write!(
            self.body,
            "<g transform=\"translate({} {})\"><path d=\"M0 -40H42L58 -20L42 0H0Z\" class=\"pennant\"/>",
            short(pennant.0),
            short(pennant.1)
        );
        self.text((22.0, -11.0), Anchor::Middle, "number", &number.to_string());
        self.body.push_str("</g></g>");
    }

    /// Breaks what was drawn so far, too wide for one row, into rows under each other; `size` is one row's, `step` what it carries on by.
    pub(super) fn break_up(&mut self, id: &str, rows: usize, step: f64, size: At) {
        let whole = std::mem::take(&mut self.body);
        let (width, height) = (short(size.0), short(size.1));
        for row in 0..rows {
            let (y, from) = (short(row as f64 * size.1), short(row as f64 * step));
            let _ = write!(
                self.body,
                "<svg x=\"0\" y=\"{y}\" width=\"{width}\" height=\"{height}\" viewBox=\"{from} 0 {width} {height}\">"
            );
            if row == 0 {
                let _ = write!(self.body, "<g id=\"{id}-whole\" class=\"drawing\">{whole}</g>");
            } else {
                let _ = write!(self.body, "<use href=\"#{id}-whole\"/>");
            }
            self.body.push_str("</svg>");
        }
    }

    /// The finished drawing. `id` must be unique on its page.
    pub(super) fn svg(self, id: &str, class: &str, size: At, title: &str, description: &str) -> String {
        let mut out = format!(
            "<svg class=\"drawing {class}\" viewBox=\"0 0 {} {}\" role=\"img\" \
             aria-labelledby=\"{id}-title\" aria-describedby=\"{id}-desc\"><title id=\"{id}-title\">",
            short(size.0),
            short(size.1)
        );
        push_escaped(&mut out, title);
        let _ = write!(out, "</title><desc id=\"{id}-desc\">");
        push_escaped(&mut out, description);
        let _ = write!(
            out,
            "</desc><defs><pattern id=\"{id}-clash\" width=\"9\" height=\"9\" patternUnits=\"userSpaceOnUse\" \
             patternTransform=\"rotate(45)\"><rect width=\"9\" height=\"9\" class=\"fill-sheet\"/><path d=\"M0 0V9M0 0H9\" \
             class=\"medium\"/></pattern><pattern id=\"{id}-ground\" width=\"11\" height=\"11\" patternUnits=\"userSpaceOnUse\" \
             patternTransform=\"rotate(45)\"><path d=\"M0 0V11\" class=\"thin\"/></pattern></defs>"
        );
        out.push_str(&self.body);
        out.push_str("</svg>");
        out
    }

    /// A rectangle filled with one of the drawing's hatches, `clash` or `ground`, and framed.
    pub(super) fn hatched(&mut self, id: &str, hatch: &str, low: At, high: At, class: &str) {
        let (x, y) = (low.0.min(high.0), low.1.min(high.1));
        let (width, height) = ((high.0 - low.0).abs(), (high.1 - low.1).abs());
        let _ = write!(
            self.body,
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"url(#{id}-{hatch})\"/>",
            short(x),
            short(y),
            short(width),
            short(height)
        );
        self.rect(low, high, class);
    }
}
