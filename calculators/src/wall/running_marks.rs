//! Running marks: one hook of the tape, every left edge read from zero.

use serde_json::json;

use super::bays::{RunEnds, clear_bay, left_edges};
use super::scheme::BoardWidth;
use super::survey::{Along, WallLength};
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Count, Exact, Reading, Tape, Units};

pub(crate) struct RunningMarks;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Where the run begins, from the tape's zero.
    #[field("Run starts at")]
    start: Along,
    /// From its start to its end.
    #[field("Run")]
    run: WallLength,
    /// As measured.
    #[field("Board width")]
    board: BoardWidth,
    /// In the run, with those at its ends.
    #[field("Boards")]
    boards: Count<1, 400>,
    /// What stands at the two ends.
    #[field("Ends")]
    ends: RunEnds,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// What the tape must show at the right edge of the last board.
    #[field("Last mark")]
    last: Reading,
    /// Between two boards.
    #[field("Clear bay")]
    bay: Exact,
    /// Where stepping a block of the nearest width would have ended, past the true place; short is negative.
    #[field("A stepped block would miss by")]
    stepped: Exact,
    /// One line for each board; the cross goes right of the left edge.
    #[field("Marks")]
    marks: Vec<Mark>,
}

/// One board.
#[derive(Output)]
pub(crate) struct Mark {
    /// From the left.
    #[field("Board")]
    board: usize,
    /// From zero.
    #[field("Left edge")]
    left: Reading,
    /// From zero.
    #[field("Right edge")]
    right: Reading,
}

/// How far a block of the nearest width misses, stepped off over all bays.
pub(crate) fn stepping_error(bay: Exact, bays: i64, tape: Tape) -> Exact {
    (tape.mark(bay).shown().exact() - bay) * bays
}

impl Calculator for RunningMarks {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "running-marks",
        title: "Running marks",
        question: "What do I read off the tape, with one hook?",
        step: 8,
        search: &["marks", "tape", "set out", "left edge", "stepping", "next mark", "where is my next mark"],
        headline: &["/last", "/bay", "/stepped"],
        list: Some("/marks"),
        cautions: &["laser-light"],
        sources: &[Source::new(PRACTICE, "every mark from one zero, rounded for itself", Standing::CommonPractice)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "start": "3/4 in", "run": "171 7/8 in", "board": "2 1/2 in", "boards": 12, "ends": "board-both", "tape": "1/16 in" }),
                expects: vec![
                    ("/result/marks/1/left/tape", json!("16 1/8 in")),
                    ("/result/marks/11/left/tape", json!("170 1/8 in")),
                    ("/result/last/tape", json!("172 5/8 in")),
                    ("/result/stepped/tape", json!("-1/4 in")),
                ],
                checked_against: "common practice arithmetic, worked by hand: bay 12-79/88; eleven blocks of 12-7/8 end 1/4 short",
            },
            Units::Metric => Example {
                input: json!({ "start": "18 mm", "run": "4368 mm", "board": "64 mm", "boards": 12, "ends": "board-both", "tape": "1 mm" }),
                expects: vec![
                    ("/result/marks/1/left/tape", json!("409 mm")),
                    ("/result/marks/11/left/tape", json!("4322 mm")),
                    ("/result/last/tape", json!("4386 mm")),
                ],
                checked_against: "common practice arithmetic, worked by hand: bay 327.27",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (run, board, boards) = (input.run.get(), input.board.get(), i64::from(input.boards));
        let Some(bay) = clear_bay(run.exact(), board, boards, input.ends) else {
            let why = Words::new("{} boards of {} leave no bay on a run of {}").with(boards).with(board).with(run);
            return Err(vec![Fault::new("/boards", Words::of(boards), why, 2)]);
        };
        let start = input.start.get();
        let lefts: Vec<Exact> =
            left_edges(run.exact(), board, boards, input.ends).into_iter().map(|left| left + start).collect();
        let mark = |(n, left): (usize, &Exact)| Mark {
            board: n + 1,
            left: input.tape.mark(*left),
            right: input.tape.mark(*left + board),
        };
        let last_left = lefts.last().copied().unwrap_or(start.exact());
        let bays = input.ends.bays(boards);
        let stepped = stepping_error(bay, bays, input.tape);
        let first = lefts.first().copied().unwrap_or(start.exact());
        let working = vec![
            Step::new("clear bay")
                .by("(L - n * b) / m")
                .given("L", "run", run)
                .given("n", "boards", boards)
                .given("b", "board width", board)
                .given("m", "bays", bays)
                .gives("g", "clear bay", bay),
            Step::new("left edge of the last board")
                .by("f + (n - 1) * (g + b)")
                .given("f", "left edge of the first board", first)
                .given("n", "boards", boards)
                .given("g", "clear bay", bay)
                .given("b", "board width", board)
                .gives("x", "left edge of the last board", last_left)
                .because("every mark is worked out so and rounded once, so that no error adds up"),
            Step::new("a block of the nearest width, stepped off over all bays")
                .by("(k - g) * m")
                .given("k", "block", input.tape.mark(bay).shown())
                .given("g", "clear bay", bay)
                .given("m", "bays", bays)
                .gives("e", "miss at the end", stepped),
        ];
        let mut notes = Vec::new();
        if input.tape.step().exact() <= stepped.size() {
            notes.push(Note::check(
                Words::new("Do not step a block: it would end {} {} after {} bays.")
                    .with(stepped.size())
                    .with(if stepped.is_negative() { "short" } else { "over" })
                    .with(bays),
            ));
        }
        let marks = lefts.iter().enumerate().map(mark).collect();
        Ok(Answer { result: Output { last: input.tape.mark(last_left + board), bay, stepped, marks }, working, notes })
    }
}
