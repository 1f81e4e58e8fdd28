//! Equal bays as a question of its own: how many boards, and how wide the bay.

use serde_json::json;

use super::bays::{RunEnds, clear_bay, left_edges, nearest_counts};
use super::scheme::{BayWidth, BoardWidth};
use super::survey::WallLength;
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Count, Exact, Length, Reading, Tape, Units};

/// More boards than this in one run are not marked one by one.
const MOST_BOARDS: i64 = 600;

pub(crate) struct EqualBays;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// From end to end, between what the run ends at.
    #[field("Run")]
    run: WallLength,
    /// As measured on delivered stock.
    #[field("Board width", usual = ["1 1/2 in", "5 1/2 in"])]
    board: BoardWidth,
    /// What stands at the two ends.
    #[field("Ends")]
    ends: RunEnds,
    /// The clear width between two boards, not from centre to centre. Give this or a number of boards.
    #[field("Target bay", default, usual = ["8 in", "20 in"])]
    target: Option<BayWidth>,
    /// Counted with the boards at the ends. Give this or a wished bay.
    #[field("Number of boards", default)]
    boards: Option<Count<1, 600>>,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// In the run, with those at its ends.
    #[field("Boards")]
    boards: i64,
    /// Between two boards.
    #[field("Clear bay")]
    bay: Exact,
    /// From centre to centre, or left edge to left edge.
    #[field("Pitch")]
    pitch: Exact,
    /// The next best numbers and their bays.
    #[field("Other numbers")]
    others: Vec<Other>,
    /// Left edge of each board from the start of the run, each rounded for itself.
    #[field("Left edges")]
    lefts: Vec<Reading>,
}

/// Another number of boards.
#[derive(Output)]
pub(crate) struct Other {
    /// In the run.
    #[field("Boards")]
    boards: i64,
    /// Between two boards.
    #[field("Clear bay")]
    bay: Exact,
}

impl Calculator for EqualBays {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "equal-bays",
        title: "Equal bays",
        question: "How many boards, and how wide is the bay?",
        step: 4,
        search: &[
            "spacing",
            "gap",
            "centres",
            "battens",
            "divide",
            "boards",
            "bay",
            "even",
            "equal",
            "space",
            "wainscot",
            "wainscoting",
            "batten spacing",
        ],
        headline: &["/bay", "/boards", "/pitch"],
        list: Some("/lefts"),
        cautions: &["nominal-size"],
        sources: &[
            Source::new(GEOMETRY, "a run shared out", Standing::Derived),
            Source::new(PRACTICE, "bays of 8 to 20 in (200 to 500 mm)", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "run": "144 3/8 in", "board": "2 1/2 in", "ends": "board-both", "target": "13 in", "tape": "1/16 in" }),
                expects: vec![("/result/boards", json!(10)), ("/result/bay/tape", json!("13 17/64 in"))],
                checked_against: "by hand: (144.375 - 10 x 2.5) / 9 = 13.2639",
            },
            Units::Metric => Example {
                input: json!({ "run": "3660 mm", "board": "64 mm", "ends": "board-both", "target": "330 mm", "tape": "1 mm" }),
                expects: vec![("/result/boards", json!(10)), ("/result/bay/text", json!("335.6 mm"))],
                checked_against: "by hand: (3660 - 10 x 64) / 9 = 335.556",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (run, board, ends) = (input.run.get(), input.board.get(), input.ends);
        let said = |length: Length| Words::of(length);
        let counts = match (input.target, input.boards) {
            (Some(_), Some(boards)) => {
                let why = "a wished bay and a number of boards cannot both be kept; leave one of them empty";
                return Err(vec![Fault::new("/boards", Words::of(boards.get()), why, "")]);
            }
            (None, None) => {
                let why = "give a target bay, or a number of boards";
                return Err(vec![Fault::new("/target", "nothing", why, said(Length::inches(13)))]);
            }
            (Some(target), None) => nearest_counts(run.exact(), board, target.get(), ends, 3),
            (None, Some(boards)) => {
                let wished = i64::from(boards);
                let near = [wished, wished - 1, wished + 1];
                let bays = near.into_iter().filter_map(|n| clear_bay(run.exact(), board, n, ends).map(|bay| (n, bay)));
                bays.collect::<Vec<_>>()
            }
        };
        let wished = input.boards.map(i64::from);
        let best = counts.first().copied().filter(|(boards, _)| wished.is_none_or(|wished| wished == *boards));
        let Some((boards, bay)) = best.filter(|(boards, _)| *boards <= MOST_BOARDS) else {
            let (pointer, why) = if wished.is_some() {
                ("/boards", Words::new("this many boards of {} leave no bay on a run of {}").with(board).with(run))
            } else {
                (
                    "/run",
                    Words::new("boards of {} leave no bay on this run, or more than {} bays")
                        .with(board)
                        .with(MOST_BOARDS),
                )
            };
            return Err(vec![Fault::new(pointer, said(run), why, said(board * 6))]);
        };
        let bays = ends.bays(boards);
        let pitch = bay + board;
        let working = vec![
            Step::new("clear bay")
                .by("(L - n * b) / m")
                .given("L", "run", run)
                .given("n", "boards", boards)
                .given("b", "board width", board)
                .given("m", "bays", bays)
                .gives("g", "clear bay", bay)
                .because("kept as a fraction; every mark is rounded once, for itself"),
            Step::new("pitch")
                .by("g + b")
                .given("g", "clear bay", bay)
                .given("b", "board width", board)
                .gives("p", "pitch", pitch),
        ];
        let mut notes = Vec::new();
        if bay < board.exact() * 2 {
            notes.push(Note::check("Bays narrower than two boards look like bars."));
        }
        if bay > Length::inches(24) {
            notes.push(Note::check(
                Words::new("Bays wider than {} look empty, and plasterboard joints show in them.")
                    .with(Length::inches(24)),
            ));
        }
        let lefts =
            left_edges(run.exact(), board, boards, ends).into_iter().map(|left| input.tape.mark(left)).collect();
        let others = counts[1..].iter().map(|(boards, bay)| Other { boards: *boards, bay: *bay }).collect();
        Ok(Answer { result: Output { boards, bay, pitch, others, lefts }, working, notes })
    }
}
