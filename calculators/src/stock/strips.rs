//! Strips ripped from a sheet: how many, and how many sheets.

use serde_json::json;

use super::pieces_per_stick::pieces_per_stick;
use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Count, Length, Units, Within};

pub(crate) struct Strips;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// As measured: a sheet called 48 in may measure 49.
    #[field("Sheet width")]
    width: Within<50_000, 3_000_000>,
    /// As measured.
    #[field("Sheet length")]
    length: Within<50_000, 6_000_000>,
    /// Of a strip, as it is to measure.
    #[field("Strip width")]
    strip: Within<6_000, 600_000>,
    /// Of a piece cut from a strip.
    #[field("Piece length")]
    piece: Within<25_000, 6_000_000>,
    /// That are needed.
    #[field("Pieces")]
    pieces: Count<1, 5_000>,
    /// What one cut eats, measured.
    #[field("Kerf", usual = ["1.6 mm", "4 mm"])]
    kerf: Within<0, 6_400>,
    /// Off the factory edge first, kerf included.
    #[field("Clean-up cut")]
    clean_up: Within<0, 51_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Out of one sheet.
    #[field("Strips from a sheet")]
    strips: i64,
    /// Of the sheet's width.
    #[field("Left of the width")]
    left: Length,
    /// Out of one strip.
    #[field("Pieces from a strip")]
    pieces_each: i64,
    /// To buy.
    #[field("Sheets")]
    sheets: i64,
}

impl Calculator for Strips {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "strips-from-sheet",
        title: "Strips from a sheet",
        question: "How many boards come out of one sheet?",
        step: 6,
        search: &["rip", "sheet", "MDF", "panel", "strips"],
        headline: &["/strips", "/sheets", "/left"],
        list: None,
        cautions: &["rip-kickback", "saw-blade"],
        sources: &[Source::new(GEOMETRY, "floor((W + k) / (w + k)) of the cleaned width", Standing::Derived)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "width": "49 in", "length": "97 in", "strip": "2 1/2 in", "piece": "53 1/4 in", "pieces": 33, "kerf": "1/8 in", "clean_up": "0 in" }),
                expects: vec![
                    ("/result/strips", json!(18)),
                    ("/result/sheets", json!(2)),
                    ("/result/left/tape", json!("1 3/4 in")),
                ],
                checked_against: "by hand: (49 + 1/8) / 2 5/8 = 18.7; 18 strips and 18 cuts are 47 1/4",
            },
            Units::Metric => Example {
                input: json!({ "width": "1220 mm", "length": "2440 mm", "strip": "64 mm", "piece": "1351 mm", "pieces": 33, "kerf": "3.2 mm", "clean_up": "0 mm" }),
                expects: vec![
                    ("/result/strips", json!(18)),
                    ("/result/sheets", json!(2)),
                    ("/result/left/tape", json!("10.4 mm")),
                ],
                checked_against: "by hand: 1223.2 / 67.2 = 18.2; 18 strips and 18 cuts are 1209.6",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let clean = input.width.get() - input.clean_up.get();
        let mut faults = Vec::new();
        if input.strip.get() > clean {
            let why = Words::new("wider than what is left of the sheet, {}").with(clean);
            faults.push(Fault::new("/strip", Words::of(input.strip), why, Words::of(clean)));
        }
        if input.piece.get() > input.length.get() {
            let why = Words::new("longer than the sheet, {}; join it, or buy longer sheets").with(input.length);
            faults.push(Fault::new("/piece", Words::of(input.piece), why, Words::of(input.length)));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let (strips, left) = pieces_per_stick(clean, input.strip.get(), input.kerf.get());
        let (pieces_each, _) = pieces_per_stick(input.length.get(), input.piece.get(), input.kerf.get());
        let from_sheet = strips * pieces_each;
        let needed = i64::from(input.pieces);
        let sheets = (needed + from_sheet - 1) / from_sheet.max(1);
        let working = vec![
            Step::new("strips from a sheet")
                .by("floor((W - c + k) / (w + k))")
                .given("W", "sheet width", input.width)
                .given("c", "clean-up cut", input.clean_up)
                .given("k", "kerf", input.kerf)
                .given("w", "strip width", input.strip)
                .gives("n", "strips", strips),
            Step::new("pieces from a strip")
                .by("floor((L + k) / (p + k))")
                .given("L", "sheet length", input.length)
                .given("k", "kerf", input.kerf)
                .given("p", "piece length", input.piece)
                .gives("m", "pieces", pieces_each),
            Step::new("sheets")
                .by("ceil(N / (n * m))")
                .given("N", "pieces needed", needed)
                .given("n", "strips", strips)
                .given("m", "pieces from a strip", pieces_each)
                .gives("s", "sheets", sheets),
        ];
        let notes = vec![Note::remark(
            "Measure the delivered sheet: 48 and 49 in are sold under one name. Rip with a push block; narrow strips kick back.",
        )];
        Ok(Answer { result: Output { strips, left, pieces_each, sheets }, working, notes })
    }
}
