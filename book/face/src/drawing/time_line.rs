//! The programme as bars: solid is hands on, hatched is waiting; nights are drawn narrower, and said to be.

use super::canvas::{Anchor, Canvas};

const WIDTH: f64 = 1_200.0;
const LEFT: f64 = 330.0;
const ROW: f64 = 58.0;
const HEAD: f64 = 56.0;
const DAY: i64 = 24 * 60;
/// Nights, from the end of work to its start, are drawn at this share of the day's scale.
const NIGHT_SCALE: f64 = 0.35;
const MORNING: i64 = 8 * 60;
const EVENING: i64 = 16 * 60 + 30;

/// One task on the line.
pub struct TimeBar<'a> {
    /// What is done.
    pub task: &'a str,
    /// Minutes from midnight of the first day.
    pub start: i64,
    /// Minutes from midnight of the first day.
    pub end: i64,
    /// Minutes of waiting after it.
    pub wait: i64,
}

/// How far a moment lies along the line, in drawn minutes.
fn drawn(minute: i64) -> f64 {
    let (day, clock) = (minute.div_euclid(DAY), minute.rem_euclid(DAY));
    let light = (EVENING - MORNING) as f64;
    let night = (DAY - (EVENING - MORNING)) as f64 * NIGHT_SCALE;
    let part = if clock < MORNING {
        clock as f64 * NIGHT_SCALE
    } else if clock < EVENING {
        MORNING as f64 * NIGHT_SCALE + (clock - MORNING) as f64
    } else {
        MORNING as f64 * NIGHT_SCALE + light + (clock - EVENING) as f64 * NIGHT_SCALE
    };
    day as f64 * (light + night) + part
}

/// The whole programme on one line of days. `id` must be unique on its page.
pub fn time_line(id: &str, bars: &[TimeBar<'_>]) -> String {
    let mut canvas = Canvas::default();
    let first = bars.iter().map(|bar| bar.start).min().unwrap_or(0).div_euclid(DAY);
    let last = bars.iter().map(|bar| bar.end).max().unwrap_or(0).div_euclid(DAY) + 1;
    let (from, to) = (drawn(first * DAY), drawn(last * DAY));
    let scale = (WIDTH - LEFT - 10.0) / (to - from).max(1.0);
    let x = |minute: i64| LEFT + (drawn(minute.min(last * DAY)) - from) * scale;
    let tall = HEAD + bars.len() as f64 * ROW;
    for day in first..=last {
        canvas.line((x(day * DAY), HEAD - 30.0), (x(day * DAY), tall), "thin soft");
        if day < last && x((day + 1) * DAY) - x(day * DAY) > 60.0 {
            let middle = (x(day * DAY) + x((day + 1) * DAY)) / 2.0;
            canvas.text((middle, HEAD - 22.0), Anchor::Middle, "name", &format!("day {}", day + 1));
        }
    }
    for (row, bar) in bars.iter().enumerate() {
        let top = HEAD + row as f64 * ROW;
        canvas.text((0.0, top + 36.0), Anchor::Start, "name", bar.task);
        if bar.wait > 0 {
            canvas.hatched(id, "ground", (x(bar.end), top + 14.0), (x(bar.end + bar.wait), top + 42.0), "thin");
        }
        let end = x(bar.end).max(x(bar.start) + 3.0);
        canvas.rect((x(bar.start), top + 14.0), (end, top + 42.0), "fill-solid");
    }
    let words: Vec<String> = bars.iter().map(|bar| bar.task.to_owned()).collect();
    let description = format!("{}. The same times stand in the table.", words.join(", then "));
    canvas.svg(id, "strip", (WIDTH, tall + 6.0), "Time line of the programme", &description)
}
