//! The mitre in the plane of the wall, where a rail meets a board as in a picture frame, as a question of its own.
//!
//! With two widths the joint does not halve the angle: its line runs from the inner corner to the outer one, and each piece has its own
//! setting.

use serde_json::json;

use super::scheme::BoardWidth;
use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Length, Physical, Units, kind};

/// The saw's settings for two strips of these widths that meet at an angle, in degrees from a square cut: for the first, for the second.
///
/// Angle between the strips, over 0 and under 180 degrees. Formula: the line of the joint lies at atan(w sin A / (v + w cos A)) from the
/// strip that is w wide, v being the other's width. `None` where no line runs from corner to corner.
/// # Source
/// Plane geometry: both strips cut the same line, whose length is width over sine.
pub fn settings(first: Length, second: Length, degrees: f64) -> Option<(f64, f64)> {
    let (w, v, angle) = (first.in_mm(), second.in_mm(), degrees.to_radians());
    let line = libm::atan2(w * libm::sin(angle), v + w * libm::cos(angle)).to_degrees();
    let (one, other) = (90.0 - line, 90.0 - (degrees - line));
    (w > 0.0 && v > 0.0 && 0.0 < degrees && degrees < 180.0 && one.abs() < 90.0 && other.abs() < 90.0)
        .then_some((one, other))
}

/// How far the long point of a strip lies beyond its short point.
fn beyond(width: Length, setting: f64) -> Length {
    Length::nearest_mm(width.in_mm() * libm::tan(setting.to_radians()))
}

pub(crate) struct FrameMitre;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Seen from the room, as measured.
    #[field("Width of the rail")]
    rail: BoardWidth,
    /// Seen from the room, as measured.
    #[field("Width of the board")]
    board: BoardWidth,
    /// Inside the frame: 90° where rail and board are square.
    #[field("Angle between them", usual = ["85°", "95°"])]
    angle: Physical<kind::Angle, 30_000, 150_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// From a square cut.
    #[field("Saw for the rail")]
    rail_setting: Amount<kind::Angle>,
    /// From a square cut.
    #[field("Saw for the board")]
    board_setting: Amount<kind::Angle>,
    /// The rail's long point beyond its short point.
    #[field("Rail, long point beyond short")]
    rail_beyond: Length,
    /// The board's long point beyond its short point.
    #[field("Board, long point beyond short")]
    board_beyond: Length,
}

impl Calculator for FrameMitre {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "frame-mitre",
        title: "Corner of a frame",
        question: "What do I set the saw to for a frame corner, rail into board?",
        step: 9,
        search: &["picture frame", "mitre", "miter", "frame corner", "flat mitre", "panel frame"],
        headline: &["/rail_setting", "/board_setting"],
        list: None,
        cautions: &["saw-blade", "flying-chips"],
        sources: &[Source::new(
            GEOMETRY,
            "both pieces cut the line from the inner to the outer corner",
            Standing::Derived,
        )],
    };

    fn example(units: Units) -> Example {
        let (rail, board) = if units == Units::Metric { ("90 mm", "64 mm") } else { ("3 1/2 in", "2 1/2 in") };
        let (rail_setting, board_setting) =
            if units == Units::Metric { ("35.42°", "54.58°") } else { ("35.54°", "54.46°") };
        Example {
            input: json!({ "rail": rail, "board": board, "angle": "90°" }),
            expects: vec![
                ("/result/rail_setting/text", json!(rail_setting)),
                ("/result/board_setting/text", json!(board_setting)),
            ],
            checked_against: "square corner by hand: atan(2.5 / 3.5) = 35.54 and 90 less that; atan(64 / 90) = 35.42",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (rail, board, angle) = (input.rail.get(), input.board.get(), input.angle.get());
        let Some((one, other)) = settings(rail, board, angle) else {
            let why = "no line runs from the inner to the outer corner of these two widths";
            return Err(vec![Fault::new("/angle", Words::of(input.angle), why, "90°")]);
        };
        let degrees = Amount::<kind::Angle>::of;
        let (rail_beyond, board_beyond) = (beyond(rail, one), beyond(board, other));
        let working = vec![
            Step::new("saw for the rail, from a square cut")
                .by("90 - 2 * atan(w * sin(A) / (sqrt((w * sin(A)) ^ 2 + (v + w * cos(A)) ^ 2) + v + w * cos(A)))")
                .given("w", "width of the rail", input.rail)
                .given("v", "width of the board", input.board)
                .given("A", "angle between them", input.angle)
                .gives("r", "rail", degrees(one)),
            Step::new("saw for the board, from a square cut")
                .by("180 - A - r")
                .given("A", "angle between them", input.angle)
                .given("r", "rail", degrees(one))
                .gives("b", "board", degrees(other)),
            Step::new("rail, long point beyond short")
                .by("w * tan(r)")
                .given("w", "width of the rail", input.rail)
                .given("r", "rail", degrees(one))
                .gives("l", "beyond", rail_beyond),
        ];
        let mut notes = Vec::new();
        if rail != board {
            notes.push(Note::check(
                "Two widths, two settings. Cut a short pair and hold it in the corner before the rail is cut.",
            ));
        }
        if one.max(other) > 50.0 {
            notes.push(Note::check(
                Words::new("{} is more than many saws turn to: cut that piece on its edge, or against a wedge.")
                    .with(degrees(one.max(other))),
            ));
        }
        Ok(Answer {
            result: Output { rail_setting: degrees(one), board_setting: degrees(other), rail_beyond, board_beyond },
            working,
            notes,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_widths_halve_the_angle() {
        // Plane geometry: 90 degrees gives 45 and 45, 88 gives 46 and 46 from square.
        for (angle, setting) in [(90.0, 45.0), (88.0, 46.0), (120.0, 30.0)] {
            let (one, other) = settings(Length::mm(64), Length::mm(64), angle).expect("a joint");
            assert!((one - setting).abs() < 1e-9 && (other - setting).abs() < 1e-9, "{angle}: {one}, {other}");
        }
    }

    #[test]
    fn both_pieces_cut_one_line() {
        // The line's length is width over the cosine of the setting, the same for both pieces.
        for (first, second, angle) in [(90, 64, 90.0), (120, 40, 86.5), (64, 90, 100.0)] {
            let (one, other) = settings(Length::mm(first), Length::mm(second), angle).expect("a joint");
            let line = |width: i64, setting: f64| width as f64 / setting.to_radians().cos();
            assert!((line(first, one) - line(second, other)).abs() < 1e-9);
        }
        assert_eq!(settings(Length::mm(64), Length::mm(64), 180.0), None);
    }
}
