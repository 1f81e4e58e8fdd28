//! Cut lengths by position: every board between a base that follows the floor and a level rail has its own length.

use serde_json::json;

use super::geometry::Line;
use super::scheme::{BoardWidth, Rounding};
use super::survey::{Along, Height};
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Exact, Length, Reading, Tape, Units, Within};

pub(crate) struct CutLengths;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Above the highest point of the floor, where boards end.
    #[field("Underside of the rail")]
    rail: Height,
    /// Height of the base, which follows the floor; nothing where there is none.
    #[field("Base")]
    base: Within<0, 610_000>,
    /// Left under each board.
    #[field("Relief")]
    relief: Within<0, 51_000>,
    /// As measured.
    #[field("Board width")]
    board: BoardWidth,
    /// How far the floor lies below its highest point, from left to right.
    #[field("Fall of the floor", size(1..=60))]
    falls: Vec<Fall>,
    /// Left edge of each board.
    #[field("Left edges", size(1..=400))]
    lefts: Vec<Along>,
    /// Which way lengths are rounded to the saw stop; a piece that must go in is never over.
    #[field("Lengths are rounded", default = never_over)]
    rounding: Rounding,
    /// The finest mark used; the saw stop has half of it.
    #[field("Tape", default)]
    tape: Tape,
}

fn never_over() -> Rounding {
    Rounding::NeverOver
}

/// The floor at one place.
#[derive(Clone, Copy, Input)]
pub(crate) struct Fall {
    /// Along the wall.
    #[field("At")]
    at: Along,
    /// Below the highest point.
    #[field("Fall")]
    fall: Within<-102_000, 102_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// The shortest board.
    #[field("Shortest")]
    shortest: Reading,
    /// The longest board.
    #[field("Longest")]
    longest: Reading,
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
    /// What the saw stop is set to.
    #[field("Length")]
    length: Reading,
    /// Whether a reading of the floor lies under the board.
    #[field("Floor measured here")]
    measured: bool,
}

/// The length of a board between a base that follows the floor and a level rail.
///
/// Formula: rail − floor at the middle of the board − base − relief.
pub(crate) fn board_length(rail: Length, floor: &Line, middle: Exact, base: Length, relief: Length) -> Exact {
    rail.exact() - floor.at(middle) - base - relief
}

impl Calculator for CutLengths {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "cut-lengths",
        title: "Cut lengths",
        question: "How long is board 7?",
        step: 9,
        search: &["length", "floor", "fall", "stop", "cut list"],
        headline: &["/shortest", "/longest"],
        list: Some("/boards"),
        cautions: &["saw-blade"],
        sources: &[
            Source::new(GEOMETRY, "heights between two readings", Standing::Derived),
            Source::new(
                PRACTICE,
                "each board to its own length; ends square where the floor falls slowly",
                Standing::CommonPractice,
            ),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({
                    "rail": "58 1/2 in", "base": "5 1/2 in", "relief": "0 in", "board": "2 1/2 in",
                    "falls": [
                        { "at": "0 in", "fall": "0 in" }, { "at": "43 in", "fall": "1/16 in" }, { "at": "86 in", "fall": "1/8 in" },
                        { "at": "130 in", "fall": "3/16 in" }, { "at": "173 3/8 in", "fall": "1/4 in" }
                    ],
                    "lefts": ["3/4 in", "93 1/8 in", "170 1/8 in"], "tape": "1/16 in"
                }),
                expects: vec![
                    ("/result/boards/0/length/tape", json!("53 in")),
                    ("/result/boards/1/length/tape", json!("53 1/8 in")),
                    ("/result/boards/2/length/tape", json!("53 7/32 in")),
                ],
                checked_against: "common practice arithmetic, worked by hand: 53 + 0.0029, + 0.1369, + 0.2471, each down to half a sixteenth",
            },
            Units::Metric => Example {
                input: json!({
                    "rail": "1485 mm", "base": "140 mm", "relief": "0 mm", "board": "64 mm",
                    "falls": [
                        { "at": "0 mm", "fall": "0 mm" }, { "at": "1092 mm", "fall": "2 mm" }, { "at": "2184 mm", "fall": "3 mm" },
                        { "at": "3302 mm", "fall": "5 mm" }, { "at": "4404 mm", "fall": "6 mm" }
                    ],
                    "lefts": ["18 mm", "2366 mm", "4322 mm"], "tape": "1 mm"
                }),
                expects: vec![
                    ("/result/boards/0/length/tape", json!("1345 mm")),
                    ("/result/boards/1/length/tape", json!("1348 mm")),
                    ("/result/boards/2/length/tape", json!("1350 mm")),
                ],
                checked_against: "common practice arithmetic, worked by hand: 1345 + 0.09, + 3.38, + 5.95, each down to the millimetre",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let mut faults = Vec::new();
        for (n, pair) in input.falls.windows(2).enumerate() {
            if pair[1].at < pair[0].at {
                let why =
                    Words::new("readings go from left to right; this one lies before the last, at {}").with(pair[0].at);
                let pointer = format!("/falls/{}/at", n + 1);
                faults.push(Fault::new(pointer, Words::of(pair[1].at), why, Words::of(pair[0].at)));
            }
        }
        let floor = Line::through(input.falls.iter().map(|fall| (fall.at.get(), -fall.fall.get())).collect());
        let half = input.board.get().exact().half();
        let exact = |left: &Along| {
            board_length(input.rail.get(), &floor, left.get().exact() + half, input.base.get(), input.relief.get())
        };
        let lengths: Vec<Exact> = input.lefts.iter().map(exact).collect();
        if lengths.iter().any(|length| !length.is_positive()) {
            let why =
                Words::new("base and relief of {} leave no board below it").with(input.base.get() + input.relief.get());
            let instead = Words::of(input.base.get() + input.relief.get() + Length::inches(24));
            faults.push(Fault::new("/rail", Words::of(input.rail), why, instead));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let tape = super::defaults::saw_tape(input.tape);
        let reading = |length: Exact| match input.rounding {
            Rounding::Nearest => tape.mark(length),
            Rounding::NeverOver => tape.short(length),
        };
        let measured = |left: &Along| {
            let right = left.get() + input.board.get();
            input.falls.iter().any(|fall| left.get() <= fall.at.get() && fall.at.get() <= right)
        };
        let boards = lengths
            .iter()
            .zip(&input.lefts)
            .enumerate()
            .map(|(n, (length, left))| Board { board: n + 1, length: reading(*length), measured: measured(left) })
            .collect();
        let shortest = lengths.iter().min().copied().unwrap_or(Exact::ZERO);
        let longest = lengths.iter().max().copied().unwrap_or(Exact::ZERO);
        let step = |n: usize| {
            let middle = input.lefts[n].get().exact() + half;
            Step::new(Words::new("length of board {}").with(n + 1))
                .by("r - y - b - f")
                .given("r", "underside of the rail", input.rail)
                .given("y", "floor at the middle of the board", floor.at(middle))
                .given("b", "base", input.base)
                .given("f", "relief", input.relief)
                .gives("L", "length", lengths[n])
                .because(Words::new("the middle of the board is at {}").with(middle))
        };
        let working = (0..lengths.len().min(12)).map(step).collect();
        let mut notes = Vec::new();
        if longest - shortest >= tape.step().exact() {
            notes.push(Note::check(
                Words::new("All cut to the shortest, the longest place would gap by {}; all cut to the longest, the shortest place would not take its board.")
                    .with(longest - shortest),
            ));
        }
        let result = Output { shortest: reading(shortest), longest: reading(longest), boards };
        Ok(Answer { result, working, notes })
    }
}
