//! A finished drawing with its title, its words and its caption; and the few signs that several drawings share.

use calculators::quantity::{Exact, Units};

use crate::drawing::canvas::{Anchor, At, Canvas};
use crate::figure;

/// Width of every plate in drawing units; its lettering is chosen for that.
pub(super) const WIDE: f64 = 480.0;
const TICK: f64 = 5.0;

/// Whether lengths in a drawing may be compared with each other.
pub(super) enum Scale {
    /// All of it.
    True,
    /// Said in words: what is drawn larger than it is.
    Stretched(String),
    /// A sketch.
    None,
}

/// A drawing of the handbook, finished in one unit system.
pub struct Plate {
    pub(super) title: &'static str,
    /// What there is to see, for those who do not see it.
    pub(super) description: String,
    /// What it is for, with the figures it holds.
    pub(super) caption: String,
    pub(super) scale: Scale,
    pub(super) tall: f64,
    pub(super) canvas: Canvas,
}

impl Plate {
    /// The figure with its caption; `name` must be unique on its page.
    pub fn html(self, name: &str) -> String {
        let scale = match self.scale {
            Scale::True => "Drawn to scale.".to_owned(),
            Scale::Stretched(words) => words,
            Scale::None => "Not to scale.".to_owned(),
        };
        let description = format!("{} {scale}", self.description);
        let drawing =
            self.canvas.svg(&format!("drawing-{name}"), "sketch", (WIDE, self.tall), self.title, &description);
        format!(
            "<figure class=\"draw sketched\" id=\"drawing-{name}\">{drawing}<figcaption><b>{}.</b> {} <i>{}</i></figcaption></figure>\n",
            figure::escape(self.title),
            figure::in_sentence(&self.caption),
            figure::escape(&scale),
        )
    }
}

/// A word with a line to the place it speaks of.
pub(super) fn pointed(canvas: &mut Canvas, place: At, words: At, anchor: Anchor, text: &str) {
    let gap = match anchor {
        Anchor::Start => (words.0 - 4.0, words.1 - 5.0),
        _ => (words.0, words.1 + if place.1 < words.1 { -18.0 } else { 5.0 }),
    };
    canvas.line(place, gap, "thin");
    canvas.dot(place, 2.6, "fill-solid");
    canvas.text(words, anchor, "", text);
}

/// A length between two uprights, its figure over the line.
pub(super) fn across(canvas: &mut Canvas, y: f64, (from, to): (f64, f64), length: Exact, units: Units) {
    span(canvas, (from, y), (to, y));
    canvas.length(((from + to) / 2.0, y - 7.0), Anchor::Middle, "yours", length, units);
}

/// A length between two levels, its figure to the right of the line.
pub(super) fn upright(canvas: &mut Canvas, x: f64, (from, to): (f64, f64), length: Exact, units: Units) {
    span(canvas, (x, from), (x, to));
    canvas.length((x + 8.0, (from + to) / 2.0 + 6.0), Anchor::Start, "yours", length, units);
}

/// A line between two ticks.
fn span(canvas: &mut Canvas, from: At, to: At) {
    canvas.line(from, to, "thin");
    for (x, y) in [from, to] {
        canvas.line((x - TICK, y + TICK), (x + TICK, y - TICK), "medium");
    }
}

/// What stands proud of the wall, seen from the front: heavy right and lower edges.
pub(super) fn proud(canvas: &mut Canvas, low: At, high: At) {
    canvas.rect(low, high, "medium fill-board");
    let (left, right) = (low.0.min(high.0), low.0.max(high.0));
    let (top, bottom) = (low.1.min(high.1), low.1.max(high.1));
    canvas.path(&[(right, top), (right, bottom), (left, bottom)], false, "heavy");
}

/// The largest round factor that is not above a number.
pub(super) fn round_down(most: f64) -> f64 {
    let mut step = 1.0;
    for next in [2.0, 3.0, 4.0, 5.0, 8.0, 10.0, 15.0, 20.0, 30.0, 40.0, 50.0, 80.0, 100.0, 200.0] {
        if next <= most {
            step = next;
        }
    }
    step
}
