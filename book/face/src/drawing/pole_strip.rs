//! A story pole at full size, in strips for paper sheets: print them, check the bar, tape them together at the match lines.

use calculators::quantity::{Exact, Length, Units};

use super::canvas::{Anchor, Canvas};

/// A height on the pole.
#[derive(Clone, Debug)]
pub struct PoleMark {
    /// Above the zero level.
    pub height: Exact,
    /// What lies there.
    pub name: String,
}

/// One strip of the pole.
#[derive(Clone, Debug)]
pub struct Strip {
    /// Counted from the floor, beginning with 1.
    pub number: usize,
    /// The drawing, in millimetres at full size.
    pub svg: String,
    /// The marks on it, in words, from the lowest.
    pub said: Vec<String>,
}

/// What one strip shows of the pole: fits the printable part of A4 and of US Letter with its head line.
const SHOWN_MM: i64 = 220;
const WIDTH: f64 = 850.0;
/// Room above and below the stretch shown, for the match lines' words; tenths of a millimetre, as all of the drawing.
const ROOM: f64 = 60.0;
const EDGE: f64 = 120.0;
/// Names nearer than this would be set over each other.
const APART: f64 = 84.0;

/// The strips of a pole from the zero level to `top`.
pub fn strips(marks: &[PoleMark], top: Exact, units: Units) -> Vec<Strip> {
    let step = Length::mm(SHOWN_MM);
    let count = usize::try_from((top.up_to(Length::mm(1)) + step - Length::from_nm(1)).whole_parts(step))
        .unwrap_or(1)
        .clamp(1, 60);
    (0..count).map(|index| strip(marks, index, count, units)).collect()
}

fn strip(marks: &[PoleMark], index: usize, count: usize, units: Units) -> Strip {
    let low = Length::mm(SHOWN_MM * i64::try_from(index).unwrap_or(0));
    let high = low + Length::mm(SHOWN_MM);
    let scale = 10.0;
    let shown = SHOWN_MM as f64 * scale;
    let level = |height: Exact| ROOM + shown - (height - low).in_mm() * scale;
    let mut canvas = Canvas::default();
    canvas.line((EDGE, ROOM), (EDGE, ROOM + shown), "cut");
    graduations(&mut canvas, low, high, &level, units);
    let mut said = Vec::new();
    let mut last_name = f64::MAX;
    for mark in marks.iter().filter(|mark| low.exact() <= mark.height && mark.height <= high.exact()) {
        let y = level(mark.height);
        canvas.line((EDGE, y), (330.0, y), "heavy");
        let name_at = y.min(last_name - APART);
        if name_at < y {
            canvas.line((330.0, y), (350.0, name_at), "thin");
        }
        last_name = name_at;
        canvas.length((356.0, name_at - 2.0), Anchor::Start, "figure", mark.height, units);
        canvas.text((356.0, name_at + 30.0), Anchor::Start, "name", &mark.name);
        said.push(format!("{} at {}", mark.name, mark.height.text(units)));
    }
    let number = index + 1;
    if number < count {
        canvas.line((0.0, ROOM), (WIDTH, ROOM), "thin dashed");
        canvas.text((WIDTH / 2.0, ROOM - 14.0), Anchor::Middle, "name", &format!("{number} meets {} here", number + 1));
    }
    if index > 0 {
        canvas.line((0.0, ROOM + shown), (WIDTH, ROOM + shown), "thin dashed");
        canvas.text(
            (WIDTH / 2.0, ROOM + shown + 34.0),
            Anchor::Middle,
            "name",
            &format!("{index} meets {number} here"),
        );
    } else {
        canvas.line((0.0, ROOM + shown), (WIDTH, ROOM + shown), "heavy");
        canvas.text((WIDTH / 2.0, ROOM + shown + 34.0), Anchor::Middle, "name", "high floor point");
    }
    check_bar(&mut canvas, ROOM + shown, units);
    let drawn = canvas.svg(
        &format!("strip-{number}"),
        "pole-strip",
        (WIDTH, shown + 2.0 * ROOM),
        &format!("Strip {number} of {count}, full size"),
        &said.join("; "),
    );
    let (width, height) = (WIDTH / scale, (shown + 2.0 * ROOM) / scale);
    let svg = drawn.replacen("<svg ", &format!("<svg width=\"{width}mm\" height=\"{height}mm\" "), 1);
    Strip { number, svg, said }
}

/// A tape's own lines along the edge, so that a strip that slipped is seen.
fn graduations(canvas: &mut Canvas, low: Length, high: Length, level: &dyn Fn(Exact) -> f64, units: Units) {
    let (small, per) = match units {
        Units::Imperial => (Length::sixty_fourths(16), 4),
        Units::Metric => (Length::mm(5), 2),
    };
    let first = (low + small - Length::from_nm(1)).whole_parts(small);
    let last = high.whole_parts(small);
    for n in first..=last {
        let y = level((small * n).exact());
        let long = n % per == 0;
        canvas.line((EDGE - if long { 60.0 } else { 28.0 }, y), (EDGE, y), if long { "medium" } else { "thin" });
        if long && (units == Units::Imperial || n % 10 == 0) {
            canvas.length((4.0, y + 9.0), Anchor::Start, "small", (small * n).exact(), units);
        }
    }
}

/// A bar of a length that any tape can check.
fn check_bar(canvas: &mut Canvas, foot: f64, units: Units) {
    let (long, words) = match units {
        Units::Imperial => (Length::inches(4), "measure: 4 in"),
        Units::Metric => (Length::mm(100), "measure: 100 mm"),
    };
    let (x, top) = (WIDTH - 16.0, foot - 60.0 - long.exact().in_mm() * 10.0);
    canvas.line((x, top), (x, foot - 60.0), "heavy");
    for y in [top, foot - 60.0] {
        canvas.line((x - 14.0, y), (x + 14.0, y), "medium");
    }
    canvas.text((x - 12.0, top + 300.0), Anchor::Down, "small", words);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_strip_is_drawn_at_full_size_and_every_mark_stands_on_one() {
        // 1:1 means that a user unit is a tenth of a millimetre on paper: the width in mm is a tenth of the viewBox's.
        let mark = |mm: i64| PoleMark { height: Length::mm(mm).exact(), name: format!("at {mm}") };
        let found = strips(&[mark(140), mark(220), mark(1485)], Length::mm(1575).exact(), Units::Metric);
        assert_eq!(found.len(), 8, "1575 mm in stretches of 220 mm");
        assert!(
            found[0]
                .svg
                .contains("<svg width=\"85mm\" height=\"232mm\" class=\"drawing pole-strip\" viewBox=\"0 0 850 2320\""),
            "{}",
            found[0].svg
        );
        // 140 mm above a floor that is drawn at 60 + 2200: 2260 - 1400 = 860 units down.
        assert!(found[0].svg.contains("y1=\"860\" x2=\"330\" y2=\"860\" class=\"heavy\""));
        assert_eq!(found[0].said, ["at 140 at 140 mm", "at 220 at 220 mm"]);
        assert_eq!(found[1].said, ["at 220 at 220 mm"], "a mark on a match line stands on both strips");
        assert_eq!(found[6].said, ["at 1485 at 1485 mm"]);
        // The check bar is 100 mm, 1000 units.
        assert!(
            found[0].svg.contains("<line x1=\"834\" y1=\"1200\" x2=\"834\" y2=\"2200\" class=\"heavy\"/>"),
            "{}",
            found[0].svg
        );
    }
}
