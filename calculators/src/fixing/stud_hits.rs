//! Stud hits as a question of its own.

use serde_json::json;

use super::studs::{centres, hit};
use crate::catalogue::works::{PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Units, Within};
use crate::wall::scheme::BoardWidth;
use crate::wall::survey::{Along, Small, WallLength};

pub(crate) struct StudHits;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// From zero to its end.
    #[field("Wall")]
    wall: WallLength,
    /// The centre of one stud, proved by a hole or a magnet.
    #[field("One proved centre")]
    first: Along,
    /// From centre to centre.
    #[field("Spacing", usual = ["12 in", "24 in"])]
    spacing: Within<200_000, 915_000>,
    /// As measured.
    #[field("Board width")]
    board: BoardWidth,
    /// Least distance from a stud's centre to both edges of a board.
    #[field("Edge margin")]
    margin: Small,
    /// Left edge of each board.
    #[field("Left edges", size(1..=400))]
    lefts: Vec<Along>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// With a stud well inside their width.
    #[field("Boards on a stud")]
    on: usize,
    /// Held by adhesive and pins.
    #[field("Boards off the studs")]
    off: usize,
    /// One line for each board.
    #[field("Boards")]
    boards: Vec<Board>,
}

/// One board.
#[derive(Output)]
pub(crate) struct Board {
    /// From the left.
    #[field("Board")]
    board: usize,
    /// Its left edge.
    #[field("Left edge")]
    left: Length,
    /// The stud behind it; nothing where it misses.
    #[field("Stud")]
    stud: Option<Length>,
    /// What holds it.
    #[field("Held by")]
    held: &'static str,
}

impl Calculator for StudHits {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "stud-hits",
        title: "Boards on studs",
        question: "Which boards get a real fixing?",
        step: 10,
        search: &["stud", "nail", "fixing", "adhesive", "spacing"],
        headline: &["/on", "/off"],
        list: Some("/boards"),
        cautions: &["hidden-services", "nail-gun"],
        sources: &[
            Source::new(
                PRACTICE,
                "studs keep one spacing, except at openings and the last one",
                Standing::CommonPractice,
            ),
            Source::new(THIS_BOOK, "1/2 in (12 mm) inside both edges", Standing::HouseDefault),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({
                    "wall": "173 3/8 in", "first": "15 1/4 in", "spacing": "16 in", "board": "2 1/2 in", "margin": "1/2 in",
                    "lefts": ["3/4 in", "16 1/8 in", "31 9/16 in", "46 15/16 in", "62 5/16 in", "77 3/4 in", "93 1/8 in", "108 9/16 in", "123 15/16 in", "139 5/16 in", "154 3/4 in", "170 1/8 in"]
                }),
                expects: vec![
                    ("/result/on", json!(2)),
                    ("/result/boards/4/stud/tape", json!("63 1/4 in")),
                    ("/result/boards/5/stud/tape", json!("79 1/4 in")),
                ],
                checked_against: "common practice arithmetic, worked by hand: bays of 15.4 never keep step with 16",
            },
            Units::Metric => Example {
                input: json!({
                    "wall": "4404 mm", "first": "387 mm", "spacing": "406 mm", "board": "64 mm", "margin": "12 mm",
                    "lefts": ["18 mm", "409 mm", "801 mm", "1192 mm", "1583 mm", "1974 mm", "2366 mm", "2757 mm", "3148 mm", "3539 mm", "3931 mm", "4322 mm"]
                }),
                expects: vec![("/result/on", json!(3)), ("/result/boards/4/stud/tape", json!("1605 mm"))],
                checked_against: "by hand: 1605 in 1595 to 1635, 2011 in 1986 to 2026, 2417 in 2378 to 2418",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (wall, board, margin) = (input.wall.get(), input.board.get(), input.margin.get());
        let mut faults = Vec::new();
        let said = |length: Length| Words::of(length);
        if wall < input.first.get() {
            let why = Words::new("lies beyond the end of the wall, which is {} long").with(wall);
            faults.push(Fault::new("/first", said(input.first.get()), why, said(wall)));
        }
        if board <= margin * 2 {
            let why = Words::new("a margin on both edges leaves nothing of a board of {}").with(board);
            faults.push(Fault::new(
                "/margin",
                said(margin),
                why,
                Words::of(board.exact().over(5).unwrap_or_else(|| board.exact())),
            ));
        }
        for (n, left) in input.lefts.iter().enumerate().filter(|(_, left)| wall < left.get() + board) {
            let why = Words::new("this board would reach beyond the wall, which is {} long").with(wall);
            faults.push(Fault::new(
                format!("/lefts/{n}"),
                said(left.get()),
                why,
                said((wall - board).max(Length::ZERO)),
            ));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let studs = centres(input.first.get(), input.spacing.get(), wall);
        let boards: Vec<Board> = input
            .lefts
            .iter()
            .enumerate()
            .map(|(n, left)| {
                let left = left.get();
                let stud = hit((left.exact(), (left + board).exact()), &studs, margin);
                let held = if stud.is_some() { "nails into the stud" } else { "adhesive and pins" };
                Board { board: n + 1, left, stud, held }
            })
            .collect();
        let on = boards.iter().filter(|board| board.stud.is_some()).count();
        let start = studs.first().copied().unwrap_or(input.first.get());
        let working = vec![
            Step::new("first stud from zero")
                .by("c - floor(c / s) * s")
                .given("c", "one proved centre", input.first)
                .given("s", "spacing", input.spacing)
                .gives("f", "first stud", start),
            Step::new("where a stud's centre must lie in a board, from its left edge")
                .by("b - 2 * m")
                .given("b", "board width", board)
                .given("m", "edge margin", margin)
                .gives("w", "width of the stretch", board - margin * 2),
        ];
        let mut notes = vec![Note::remark(
            "Boards beside openings often stand on doubled studs: prove them, the pattern does not show them.",
        )];
        if on * 2 < boards.len() {
            notes.push(Note::check(
                "Most boards miss the studs: plan for adhesive with pins, and do not answer «nail to the studs».",
            ));
        }
        Ok(Answer { result: Output { on, off: boards.len() - on, boards }, working, notes })
    }
}
