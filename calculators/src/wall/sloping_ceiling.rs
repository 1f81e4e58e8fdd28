//! Boards under a sloping ceiling: long edge, short edge, and the cut at the head.

use serde_json::json;

use super::scheme::BoardWidth;
use super::survey::{Along, WallLength};
use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Exact, Length, Reading, Tape, Units, Within, kind};

pub(crate) struct SlopingCeiling;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// At the left end: from where boards stand to where they end.
    #[field("Height at the left")]
    left_height: Within<0, 12_000_000>,
    /// At the right end.
    #[field("Height at the right")]
    right_height: Within<0, 12_000_000>,
    /// Level, between the two heights.
    #[field("Run")]
    run: WallLength,
    /// As measured.
    #[field("Board width")]
    board: BoardWidth,
    /// Left edge of each board, from the left height.
    #[field("Left edges", size(1..=200))]
    lefts: Vec<Along>,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// From level; what the saw is set to for the heads of boards.
    #[field("Slope")]
    slope: Amount<kind::Angle>,
    /// Long edge less short edge, the same for all.
    #[field("Edges differ by")]
    differ: Exact,
    /// In the order of the left edges.
    #[field("Boards")]
    boards: Vec<Board>,
}

/// One board.
#[derive(Output)]
pub(crate) struct Board {
    /// From the left.
    #[field("Board")]
    board: usize,
    /// Rounded down: it must go in.
    #[field("Short edge")]
    short: Reading,
    /// Rounded down.
    #[field("Long edge")]
    long: Reading,
    /// On which side the long edge is.
    #[field("Long edge on the")]
    side: &'static str,
}

impl Calculator for SlopingCeiling {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "sloping-ceiling",
        title: "Sloping ceiling",
        question: "How long are boards up a loft slope?",
        step: 9,
        search: &["loft", "attic", "slope", "ceiling", "knee wall", "angle"],
        headline: &["/slope", "/differ"],
        list: Some("/boards"),
        cautions: &["saw-blade"],
        sources: &[Source::new(GEOMETRY, "right triangles", Standing::Derived)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "left_height": "40 in", "right_height": "88 in", "run": "96 in", "board": "2 1/2 in", "lefts": ["0 in", "15 1/2 in"], "tape": "1/16 in" }),
                expects: vec![
                    ("/result/slope/text", json!("26.57°")),
                    ("/result/differ/tape", json!("1 1/4 in")),
                    ("/result/boards/0/long/tape", json!("41 1/4 in")),
                    ("/result/boards/1/short/tape", json!("47 3/4 in")),
                    ("/result/boards/1/long/tape", json!("49 in")),
                ],
                checked_against: "by hand: 48 in 96 is 1 in 2; 40 + 15.5 / 2 = 47.75",
            },
            Units::Metric => Example {
                input: json!({ "left_height": "1000 mm", "right_height": "2200 mm", "run": "2400 mm", "board": "64 mm", "lefts": ["0 mm", "400 mm"], "tape": "1 mm" }),
                expects: vec![
                    ("/result/boards/0/long/tape", json!("1032 mm")),
                    ("/result/boards/1/short/tape", json!("1200 mm")),
                ],
                checked_against: "by hand: 1200 in 2400 is 1 in 2; 1000 + 400 / 2",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (low, high, run) = (input.left_height.get(), input.right_height.get(), input.run.get());
        let mut faults = Vec::new();
        for (n, left) in input.lefts.iter().enumerate() {
            if run < left.get() + input.board.get() {
                let why = Words::new("a board of {} here reaches beyond the run of {}").with(input.board).with(run);
                let instead = Words::of((run - input.board.get()).max(Length::ZERO));
                faults.push(Fault::new(format!("/lefts/{n}"), Words::of(*left), why, instead));
            }
        }
        if low == Length::ZERO && high == Length::ZERO {
            faults.push(Fault::new(
                "/right_height",
                Words::of(high),
                "one end at least must have a height",
                Words::of(Length::inches(88)),
            ));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let rise = high - low;
        let at = |x: Length| low.exact() + x.exact().times(rise.nm(), run.nm()).unwrap_or(Exact::ZERO);
        let differ = (at(input.board.get()) - low).size();
        let degrees = libm::atan2(rise.size().in_mm(), run.in_mm()).to_degrees();
        let side = if rise.is_negative() { "left" } else { "right" };
        let board = |(n, left): (usize, &Along)| {
            let ends = [at(left.get()), at(left.get() + input.board.get())];
            Board {
                board: n + 1,
                short: input.tape.short(ends[0].min(ends[1])),
                long: input.tape.short(ends[0].max(ends[1])),
                side,
            }
        };
        let first = input.lefts.first().map_or(Length::ZERO, |left| left.get());
        let working = vec![
            Step::new("slope")
                .by("atan(abs(h - k) / L)")
                .given("h", "height at the right", high)
                .given("k", "height at the left", low)
                .given("L", "run", run)
                .gives("a", "slope", Amount::<kind::Angle>::of(degrees)),
            Step::new("left edge of the first board")
                .by("k + x * (h - k) / L")
                .given("k", "height at the left", low)
                .given("x", "left edge at", first)
                .given("h", "height at the right", high)
                .given("L", "run", run)
                .gives("H", "left edge of the first board", at(first)),
            Step::new("long edge less short edge")
                .by("b * abs(h - k) / L")
                .given("b", "board width", input.board)
                .given("h", "height at the right", high)
                .given("k", "height at the left", low)
                .given("L", "run", run)
                .gives("d", "edges differ by", differ),
        ];
        let notes = vec![Note::remark(
            "Two heights make a slope; one height and a guessed angle do not. Offer the first board before cutting the rest.",
        )];
        let boards = input.lefts.iter().enumerate().map(board).collect();
        Ok(Answer { result: Output { slope: Amount::of(degrees), differ, boards }, working, notes })
    }
}
