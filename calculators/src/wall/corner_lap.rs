//! Corner boards as a question of their own.

use serde_json::json;

use super::corners::{at_corner, mitre_point};
use super::scheme::{BoardWidth, CornerBoards};
use super::survey::{CornerAngle, EndKind, Thickness};
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Exact, Units};

pub(crate) struct CornerBoard;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// What the two boards do to each other.
    #[field("Corner")]
    corner: Corner,
    /// As measured.
    #[field("Board width")]
    board: BoardWidth,
    /// On this wall.
    #[field("Board thickness")]
    thickness: Thickness,
    /// On the wall round the corner.
    #[field("Thickness round the corner")]
    other: Thickness,
    /// Both boards of an inside corner show the same, or are cut from the same width.
    #[field("Corner boards", default)]
    boards: CornerBoards,
    /// Measured; needed for a mitre.
    #[field("Corner angle", default, usual = ["86 deg", "94 deg"])]
    angle: Option<CornerAngle>,
}

/// The corners at which a board stands.
#[derive(Clone, Copy, PartialEq, Eq, Input)]
pub(crate) enum Corner {
    /// Inside, this wall fitted first.
    InsideFirst,
    /// Inside, this wall fitted second.
    InsideSecond,
    /// Outside, this wall's board laps over the other's edge.
    OutsideLapping,
    /// Outside, the other wall's board laps over this one's edge.
    OutsideLapped,
    /// Outside, mitred.
    OutsideMitred,
}

impl From<Corner> for EndKind {
    fn from(corner: Corner) -> Self {
        match corner {
            Corner::InsideFirst => Self::InsideFirst,
            Corner::InsideSecond => Self::InsideSecond,
            Corner::OutsideLapping => Self::OutsideLapping,
            Corner::OutsideLapped => Self::OutsideLapped,
            Corner::OutsideMitred => Self::OutsideMitred,
        }
    }
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// What the board is ripped to.
    #[field("Rip")]
    rip: Exact,
    /// Seen on this wall.
    #[field("Shows")]
    shows: Exact,
    /// Where its visible edge begins, in from the corner; past the corner when negative.
    #[field("Begins at")]
    begins: Exact,
}

impl Calculator for CornerBoard {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "corner-boards",
        title: "Corner boards",
        question: "Why is my corner board narrower on one side?",
        step: 4,
        search: &["corner", "lap", "butt", "mitre", "reveal"],
        headline: &["/rip", "/shows", "/begins"],
        list: None,
        cautions: &["rip-kickback"],
        sources: &[
            Source::new(GEOMETRY, "laps and mitres", Standing::Derived),
            Source::new(PRACTICE, "the first wall runs tight, the second laps it", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "corner": "inside-first", "board": "2 1/2 in", "thickness": "3/4 in", "other": "3/4 in" }),
                expects: vec![("/result/rip/tape", json!("3 1/4 in")), ("/result/shows/tape", json!("2 1/2 in"))],
                checked_against: "by hand: 2 1/2 + 3/4",
            },
            Units::Metric => Example {
                input: json!({ "corner": "inside-first", "board": "64 mm", "thickness": "18 mm", "other": "18 mm" }),
                expects: vec![("/result/rip/tape", json!("82 mm")), ("/result/begins/tape", json!("18 mm"))],
                checked_against: "by hand: 64 + 18",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (board, own, other) = (input.board.get(), input.thickness.get(), input.other.get());
        if input.corner == Corner::OutsideMitred && input.angle.is_none() {
            let why = "a mitre needs the corner's measured angle; 90° is never taken for granted";
            return Err(vec![Fault::new("/angle", "nothing", why, "90.5")]);
        }
        let inside_first = input.corner == Corner::InsideFirst && input.boards == CornerBoards::EqualStock;
        if inside_first && board <= other {
            let why = Words::new("with {} round the corner nothing of this board would show").with(other);
            return Err(vec![Fault::new("/board", Words::of(board), why, Words::of(other * 3))]);
        }
        let degrees = input.angle.map_or(90.0, |angle| angle.get());
        let kind = EndKind::from(input.corner);
        let Some(corner) = at_corner(kind, board, own, other, degrees, input.boards) else {
            return Err(vec![Fault::new("/corner", "this end", "no board stands there", "inside-first")]);
        };
        let step = match input.corner {
            Corner::InsideFirst if input.boards == CornerBoards::EqualStock => Step::new("what shows")
                .by("b - o")
                .given("b", "board width", board)
                .given("o", "thickness round the corner", other)
                .gives("v", "shows", corner.shows),
            Corner::InsideFirst | Corner::OutsideLapping => Step::new("rip")
                .by("b + o")
                .given("b", "board width", board)
                .given("o", "thickness round the corner", other)
                .gives("r", "rip", corner.rip),
            Corner::OutsideMitred => Step::new("rip to the long point")
                .by("b + t * tan(90 - A / 2)")
                .given("b", "board width", board)
                .given("t", "board thickness", own)
                .given("A", "corner angle", degrees)
                .gives("r", "rip", corner.rip)
                .because(Words::new("the long point lies {} past the corner").with(mitre_point(own, degrees))),
            Corner::InsideSecond | Corner::OutsideLapped => {
                Step::new("rip").by("b").given("b", "board width", board).gives("r", "rip", corner.rip)
            }
        };
        let mut notes = Vec::new();
        if input.angle.is_none() {
            notes.push(Note::check("The corner was not measured: laps are worked out as square."));
        } else if (degrees - 90.0).abs() > 0.25 && input.corner != Corner::OutsideMitred {
            notes.push(Note::remark(
                "The corner is not square: bevel the edge that meets the other board, or scribe it.",
            ));
        }
        notes.push(Note::remark("Bases and rails lap the same way as boards."));
        let result = Output { rip: corner.rip, shows: corner.shows, begins: corner.start };
        Ok(Answer { result, working: vec![step], notes })
    }
}
