//! Sticks as bars to scale: a heavy stroke for every cut, the rest hatched.

use calculators::quantity::{Length, Units};

use super::canvas::{Anchor, Canvas};

const WIDTH: f64 = 1_200.0;
const BAR: f64 = 78.0;
const PITCH: f64 = 104.0;

/// One stick and what is sawn from it.
pub struct StickBar<'a> {
    /// Whole length.
    pub stick: Length,
    /// Cut off its first end, before the pieces; on a stick with bad stretches where its clear part begins.
    pub trim: Length,
    /// Bad stretches, from its first end.
    pub bad: Vec<(Length, Length)>,
    /// Label and length of each piece, in the order of sawing.
    pub pieces: Vec<(&'a str, Length)>,
}

/// All sticks of one section under each other, to one scale. `id` must be unique on its page.
pub fn stick_bars(id: &str, bars: &[StickBar<'_>], kerf: Length, units: Units) -> String {
    let mut canvas = Canvas::default();
    let longest = bars.iter().map(|bar| bar.stick).max().unwrap_or(Length::mm(1)).in_mm().max(1.0);
    let scale = (WIDTH - 80.0) / longest;
    for (row, bar) in bars.iter().enumerate() {
        let top = row as f64 * PITCH + 8.0;
        let bottom = top + BAR;
        let x = |length: Length| 60.0 + length.in_mm() * scale;
        canvas.text((26.0, top + 48.0), Anchor::Middle, "name", &(row + 1).to_string());
        canvas.hatched(id, "ground", (x(Length::ZERO), top), (x(bar.stick), bottom), "medium");
        for (from, to) in &bar.bad {
            canvas.hatched(id, "clash", (x(*from), top), (x(*to), bottom), "medium");
        }
        let mut at = bar.trim;
        if at.is_positive() {
            canvas.line((x(at), top), (x(at), bottom), "cut");
            at += kerf;
        }
        for (label, length) in &bar.pieces {
            let end = at + *length;
            canvas.rect((x(at), top), (x(end), bottom), "medium fill-board");
            let (middle, wide) = ((x(at) + x(end)) / 2.0, x(end) - x(at));
            if wide > 16.0 * label.chars().count() as f64 {
                canvas.text((middle, top + 32.0), Anchor::Middle, "name minor", label);
                canvas.length((middle, top + 65.0), Anchor::Middle, "yours minor", length.exact(), units);
            }
            canvas.line((x(end), top), (x(end), bottom), "cut");
            at = end + kerf;
        }
    }
    let title = format!("{} sticks", bars.len());
    let words: Vec<String> = bars
        .iter()
        .enumerate()
        .map(|(row, bar)| {
            let pieces: Vec<_> =
                bar.pieces.iter().map(|(label, length)| format!("{label} {}", length.text(units))).collect();
            let bad: Vec<_> = bar
                .bad
                .iter()
                .map(|(from, to)| format!(", bad from {} to {}", from.text(units), to.text(units)))
                .collect();
            format!("Stick {}, {}{}: {}.", row + 1, bar.stick.text(units), bad.concat(), pieces.join(", "))
        })
        .collect();
    canvas.svg(id, "strip", (WIDTH, bars.len() as f64 * PITCH + 8.0), &title, &words.join(" "))
}
