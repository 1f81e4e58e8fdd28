//! The notch as a question of its own: is enough wood left, and will the plate sit flat?

use serde_json::json;

use super::defaults::{CUT_CLEARANCE, LONGEST_NOTCH, NECK_MDF, NECK_SOLID};
use super::notch::carrying_width;
use super::scheme::{BoardWidth, Material};
use super::survey::Thickness;
use crate::catalogue::works::{GEOMETRY, PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Exact, Length, Tape, Units, Within};

pub(crate) struct NotchNeck;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// As measured.
    #[field("Board width")]
    board: BoardWidth,
    /// As measured.
    #[field("Board thickness")]
    thickness: Thickness,
    /// How far the plate reaches over the board's edge.
    #[field("Plate over the board by")]
    overlap: Within<0, 305_000>,
    /// From side to side.
    #[field("Plate width")]
    plate_width: Within<20_000, 610_000>,
    /// From bottom to top.
    #[field("Plate height")]
    plate_height: Within<20_000, 610_000>,
    /// Of the board's long edges.
    #[field("Edge radius")]
    radius: Within<0, 51_000>,
    /// It decides how thin a neck may be.
    #[field("Material")]
    material: Material,
    /// It says in which units the shop cuts.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Left beside the notch.
    #[field("Neck")]
    neck: Exact,
    /// Whether the notch can be cut.
    #[field("Verdict")]
    verdict: Verdict,
    /// The narrowest board that carries the whole plate flat instead.
    #[field("Board that carries the plate")]
    carrying: Exact,
    /// What the neck must not go below.
    #[field("Thinnest neck")]
    least: Length,
}

/// Whether a notch can be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Output)]
pub(crate) enum Verdict {
    /// Enough wood is left.
    Notch,
    /// The neck would break.
    NeckTooThin,
    /// The notch would be too long.
    NotchTooLong,
}

impl Calculator for NotchNeck {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "notch-neck",
        title: "Notch and neck",
        question: "Can I notch for the plate, and will it sit flat?",
        step: 11,
        search: &["notch", "plate", "neck", "switch", "cut-out", "round-over"],
        headline: &["/neck", "/verdict", "/carrying"],
        list: None,
        cautions: &["live-box", "saw-blade"],
        sources: &[
            Source::new(GEOMETRY, "what is left of a width", Standing::Derived),
            Source::new(PRACTICE, "a plate sits on the flat of a board", Standing::CommonPractice),
            Source::new(THIS_BOOK, "thinnest neck, longest notch", Standing::HouseDefault),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({
                    "board": "2 1/2 in", "thickness": "3/4 in", "overlap": "1 3/8 in", "plate_width": "2 3/4 in",
                    "plate_height": "4 1/2 in", "radius": "1/8 in", "material": "mdf", "tape": "1/16 in"
                }),
                expects: vec![
                    ("/result/neck/tape", json!("1 1/16 in")),
                    ("/result/verdict", json!("neck-too-thin")),
                    ("/result/carrying/tape", json!("3 1/8 in")),
                ],
                checked_against: "by hand: 2 1/2 - 1 3/8 - 1/16; 2 3/4 + 2 x 1/16 + 2 x 1/8",
            },
            Units::Metric => Example {
                input: json!({
                    "board": "64 mm", "thickness": "18 mm", "overlap": "20 mm", "plate_width": "86 mm",
                    "plate_height": "86 mm", "radius": "3 mm", "material": "mdf", "tape": "1 mm"
                }),
                expects: vec![
                    ("/result/neck/text", json!("42.5 mm")),
                    ("/result/verdict", json!("notch")),
                    ("/result/carrying/text", json!("95 mm")),
                ],
                checked_against: "by hand: 64 - 20 - 1.5; 86 + 2 x 1.5 + 2 x 3",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let mut faults = Vec::new();
        if input.thickness.get() < input.radius.get() {
            let why = Words::new("an edge cannot be rounded more than the board is thick, {}").with(input.thickness);
            faults.push(Fault::new("/radius", Words::of(input.radius), why, Words::of(input.thickness)));
        }
        if input.board.get() <= input.overlap.get() {
            let why = Words::new("the plate would cover the whole board of {}").with(input.board);
            faults.push(Fault::new(
                "/overlap",
                Words::of(input.overlap),
                why,
                Words::of(input.board.get().exact().half()),
            ));
        }
        if input.plate_width.get() < input.overlap.get() {
            let why = Words::new("the plate is only {} wide").with(input.plate_width);
            faults.push(Fault::new("/overlap", Words::of(input.overlap), why, Words::of(input.plate_width)));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let units = input.tape.units();
        let clearance = CUT_CLEARANCE.in_units(units);
        let least = match input.material {
            Material::Mdf => NECK_MDF.in_units(units),
            Material::Solid => NECK_SOLID.in_units(units),
        };
        let neck = (input.board.get() - input.overlap.get() - clearance).exact();
        let carrying = carrying_width(input.plate_width.get().exact(), clearance, input.radius.get());
        let long = input.plate_height.get() + clearance * 2;
        let longest = LONGEST_NOTCH.in_units(units);
        let verdict = if neck < least.exact() {
            Verdict::NeckTooThin
        } else if longest < long {
            Verdict::NotchTooLong
        } else {
            Verdict::Notch
        };
        let working = vec![
            Step::new("neck beside the notch")
                .by("w - o - c")
                .given("w", "board width", input.board)
                .given("o", "plate over the board by", input.overlap)
                .given("c", "clearance of the cut", clearance)
                .gives("k", "neck", neck),
            Step::new("board that carries the plate")
                .by("p + 2 * c + 2 * r")
                .given("p", "plate width", input.plate_width)
                .given("c", "flat wood on each side", clearance)
                .given("r", "edge radius", input.radius)
                .gives("W", "board that carries the plate", carrying),
        ];
        let notes = vec![match verdict {
            Verdict::Notch => Note::remark("Drill the inner corners first, round, then saw into the holes: a sharp corner starts a crack."),
            Verdict::NeckTooThin => Note::hold(
                Words::new("A neck of {} breaks; at least {} is wanted. Carry the plate on one wider board, or have the box moved.").with(neck).with(least),
            ),
            Verdict::NotchTooLong => Note::hold(
                Words::new("A notch {} long leaves a spring, not a board; {} is the most.").with(long).with(longest),
            ),
        }];
        Ok(Answer { result: Output { neck, verdict, carrying, least }, working, notes })
    }
}
