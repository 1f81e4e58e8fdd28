//! Base and board of different thickness as a question of its own.

use serde_json::json;

use super::base_step::{BaseStep, step};
use super::survey::Thickness;
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Units};

pub(crate) struct BaseAndBoard;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// As measured.
    #[field("Board thickness")]
    board: Thickness,
    /// As measured at its top edge.
    #[field("Base thickness")]
    base: Thickness,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Board less base: over the base when positive, a ledge when negative.
    #[field("Board stands proud by")]
    proud: Length,
    /// What there is to see.
    #[field("It looks")]
    looks: Words,
    /// What is done about it.
    #[field("Do")]
    remedy: Words,
}

impl Calculator for BaseAndBoard {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "base-and-board",
        title: "Base and board",
        question: "The board is thicker than the base: what now?",
        step: 9,
        search: &["base", "skirting", "overhang", "chamfer", "ledge", "thickness"],
        headline: &["/proud", "/remedy"],
        list: None,
        cautions: &["saw-blade"],
        sources: &[Source::new(PRACTICE, "chamfer an overhang, ease a ledge", Standing::CommonPractice)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "board": "3/4 in", "base": "9/16 in" }),
                expects: vec![("/result/proud/tape", json!("3/16 in"))],
                checked_against: "by hand: 12/16 - 9/16",
            },
            Units::Metric => Example {
                input: json!({ "board": "18 mm", "base": "14 mm" }),
                expects: vec![("/result/proud/tape", json!("4 mm"))],
                checked_against: "by hand: 18 - 14",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (board, base) = (input.board.get(), input.base.get());
        let found = step(board, base);
        let working = vec![
            Step::new("board less base")
                .by("t - b")
                .given("t", "board thickness", board)
                .given("b", "base thickness", base)
                .gives("p", "board stands proud by", board - base),
        ];
        let notes = match found {
            BaseStep::Overhang(by) => vec![Note::remark(
                Words::new("Or fit a cap of {} on the base, or replace the base by one as thick as the boards.")
                    .with(by),
            )],
            BaseStep::Ledge(_) => vec![Note::remark("Sockets in the base stay as they are.")],
            BaseStep::Flush => Vec::new(),
        };
        Ok(Answer {
            result: Output { proud: board - base, looks: found.said(), remedy: found.remedy() },
            working,
            notes,
        })
    }
}
