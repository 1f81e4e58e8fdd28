//! How many equal pieces one stick gives: kerf lies between the pieces.

use serde_json::json;

use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Units, Within};

/// Whole pieces of one length from a stick, and what is left after the last cut.
///
/// Formula: floor((stick + kerf) / (piece + kerf)). The last piece may end flush; then nothing is left.
pub fn pieces_per_stick(stick: Length, piece: Length, kerf: Length) -> (i64, Length) {
    let count = (stick + kerf).whole_parts(piece + kerf);
    let left = stick - (piece + kerf) * count;
    (count, if left.is_positive() { left } else { Length::ZERO })
}

pub(crate) struct PiecesPerStick;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Its usable length, ends trimmed.
    #[field("Stick")]
    stick: Within<25_000, 12_000_000>,
    /// What the stop is set to.
    #[field("Piece")]
    piece: Within<1_000, 12_000_000>,
    /// What one cut eats, measured.
    #[field("Kerf", usual = ["1.6 mm", "4 mm"])]
    kerf: Within<0, 6_400>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Whole ones.
    #[field("Pieces")]
    pieces: i64,
    /// After the last cut.
    #[field("Left over")]
    left: Length,
}

impl Calculator for PiecesPerStick {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "pieces-per-stick",
        title: "Equal pieces from a stick",
        question: "How many of these come out of one stick?",
        step: 9,
        search: &["kerf", "stick", "pieces", "offcut"],
        headline: &["/pieces", "/left"],
        list: None,
        cautions: &["saw-blade"],
        sources: &[Source::new(GEOMETRY, "floor((L + k) / (p + k))", Standing::Derived)],
    };

    fn example(units: Units) -> Example {
        let (stick, piece, kerf, left) = if units == Units::Metric {
            ("2400 mm", "600 mm", "3.2 mm", "590.4 mm")
        } else {
            ("96 in", "31 7/8 in", "1/8 in", "0 in")
        };
        Example {
            input: json!({ "stick": stick, "piece": piece, "kerf": kerf }),
            expects: vec![("/result/pieces", json!(3)), ("/result/left/tape", json!(left))],
            checked_against: "by hand: 3 x 31 7/8 and two cuts are 95 7/8, the third cut eats the rest; 4 x 600 and three cuts are too long",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (stick, piece, kerf) = (input.stick.get(), input.piece.get(), input.kerf.get());
        if piece > stick {
            let why = Words::new("must fit the stick, {}").with(input.stick);
            return Err(vec![Fault::new("/piece", Words::of(input.piece), why, Words::of(input.stick))]);
        }
        let (pieces, left) = pieces_per_stick(stick, piece, kerf);
        let working = vec![
            Step::new("pieces")
                .by("floor((L + k) / (p + k))")
                .given("L", "stick", input.stick)
                .given("k", "kerf", input.kerf)
                .given("p", "piece", input.piece)
                .gives("n", "pieces", pieces),
            Step::new("left over")
                .by("max(0, L - n * (p + k))")
                .given("L", "stick", input.stick)
                .given("n", "pieces", pieces)
                .given("p", "piece", input.piece)
                .given("k", "kerf", input.kerf)
                .gives("l", "left over", left)
                .because("the last cut frees the last piece, unless it ends flush"),
        ];
        Ok(Answer { result: Output { pieces, left }, working, notes: Vec::new() })
    }
}
