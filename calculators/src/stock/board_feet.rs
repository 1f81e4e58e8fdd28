//! Board feet as a question of its own.

use serde_json::json;

use super::dressed::board_feet;
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step};
use crate::quantity::{Amount, Count, Length, Units, Within, kind};

pub(crate) struct BoardFeet;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// What the board is called, not what it measures.
    #[field("Nominal thickness")]
    thickness: Within<6_000, 102_000>,
    /// What the board is called, not what it measures.
    #[field("Nominal width")]
    width: Within<25_000, 610_000>,
    /// Of one board.
    #[field("Length")]
    length: Within<300_000, 7_400_000>,
    /// Of this size.
    #[field("Boards")]
    boards: Count<1, 2000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Of one board.
    #[field("One board, board feet")]
    each: Amount<kind::Number>,
    /// Of all of them.
    #[field("All, board feet")]
    all: Amount<kind::Number>,
}

impl Calculator for BoardFeet {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "board-feet",
        title: "Board feet",
        question: "How many board feet is this?",
        step: 6,
        search: &["board foot", "lumber", "measure", "yard", "price"],
        headline: &["/all", "/each"],
        list: None,
        cautions: &["nominal-size"],
        sources: &[Source::new(
            PRACTICE,
            "nominal thickness x width x length; thinner than 1 in counts as 1 in",
            Standing::FromMemory,
        )],
    };

    fn example(units: Units) -> Example {
        let (thickness, width, length) = match units {
            Units::Imperial => ("1 in", "6 in", "12'"),
            Units::Metric => ("25.4 mm", "152.4 mm", "3657.6 mm"),
        };
        Example {
            input: json!({ "thickness": thickness, "width": width, "length": length, "boards": 4 }),
            expects: vec![("/result/each/text", json!("6")), ("/result/all/text", json!("24"))],
            checked_against: "by hand: 1 x 6 x 12 / 12, times 4",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (thickness, width, length) = (input.thickness.get(), input.width.get(), input.length.get());
        let each = board_feet(thickness, width, length);
        let all = each * f64::from(input.boards.get());
        let working = vec![
            Step::new("board feet of one board")
                .by("max(t, u) * w * L / (144 * u ^ 3)")
                .given("t", "nominal thickness", thickness)
                .given("w", "nominal width", width)
                .given("L", "length", length)
                .given("u", "one inch", Length::inches(1))
                .gives("f", "one board", each),
            Step::new("all boards")
                .by("f * n")
                .given("f", "one board", each)
                .given("n", "boards", input.boards.get())
                .gives("F", "all", all),
        ];
        let notes = vec![Note::remark(
            "Board feet are counted from the name of a board; spacing and paint go by what it measures.",
        )];
        Ok(Answer { result: Output { each: Amount::of(each), all: Amount::of(all) }, working, notes })
    }
}
