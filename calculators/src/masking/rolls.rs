//! Rolls of tape and film for a field, with what overlaps and what tears.

use serde_json::json;

use crate::catalogue::works::{PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Length, Physical, Run, Units, Within, kind};

/// Tape for a length of edges, with a share on top for corners, laps and torn ends.
pub fn tape_needed(edges: Length, extra_percent: f64) -> Length {
    Length::nearest_mm(edges.in_mm() * (1.0 + extra_percent / 100.0))
}

/// Whole rolls of a length; a roll of no length gives none.
pub fn rolls(needed: Length, roll: Length) -> u32 {
    if !roll.is_positive() {
        return 0;
    }
    u32::try_from(needed.whole_parts(roll) + i64::from(needed.nm().rem_euclid(roll.nm()) != 0)).unwrap_or(u32::MAX)
}

pub(crate) struct Masking;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Every edge that gets tape.
    #[field("Edges to tape")]
    edges: Within<25_000, 900_000_000>,
    /// For laps, corners and torn ends.
    #[field("On top", usual = ["5 %", "20 %"])]
    extra: Physical<kind::Percent, 0, 100_000>,
    /// As printed on it: 60 yd is 180 ft.
    #[field("Roll of tape")]
    roll: Within<1_000_000, 200_000_000>,
    /// Walls, windows and floor that get film or paper.
    #[field("Area to cover")]
    cover: Physical<kind::Area, 0, 2_000_000>,
    /// One roll of film.
    #[field("Roll of film covers")]
    film_roll: Physical<kind::Area, 500, 1_000_000>,
    /// From taping to pulling, coats and nights counted.
    #[field("Days it will stay")]
    days: Physical<kind::Days, 0, 60_000>,
    /// Clean removal, from the tape's sheet; sun on the glass shortens it.
    #[field("Days on the tape's sheet")]
    sheet_days: Physical<kind::Days, 100, 120_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// To take along.
    #[field("Rolls of tape")]
    tape_rolls: u32,
    /// Laps included.
    #[field("Tape")]
    tape: Run,
    /// Rolls of film.
    #[field("Rolls of film")]
    film_rolls: u32,
    /// Days that are left on the sheet.
    #[field("Days in hand")]
    in_hand: Amount<kind::Days>,
}

impl Calculator for Masking {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "masking-rolls",
        title: "Tape and film",
        question: "How many rolls of tape and film?",
        step: 14,
        search: &["masking", "tape", "film", "cover", "rolls"],
        headline: &["/tape_rolls", "/film_rolls"],
        list: None,
        cautions: &[],
        sources: &[
            Source::new(THIS_BOOK, "10 % on top", Standing::HouseDefault),
            Source::new(PRACTICE, "low-tack tape on fresh paint", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "edges": "39' 2 1/2\"", "extra": "10 %", "roll": "180 ft", "cover": "41.2 ft2", "film_roll": "400 ft2", "days": "3 d", "sheet_days": "14 d" }),
                expects: vec![("/result/tape_rolls", json!(1)), ("/result/film_rolls", json!(1))],
                checked_against: "by hand: 39.2 ft x 1.1 = 43.1 ft of 180",
            },
            Units::Metric => Example {
                input: json!({ "edges": "60 m", "extra": "10 %", "roll": "55 m", "cover": "38 m2", "film_roll": "36 m2", "days": "3 d", "sheet_days": "14 d" }),
                expects: vec![
                    ("/result/tape_rolls", json!(2)),
                    ("/result/film_rolls", json!(2)),
                    ("/result/tape/tape", json!("66 m")),
                ],
                checked_against: "by hand: 60 x 1.1 = 66 m of 55 each; 38 of 36 each",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let tape = tape_needed(input.edges.get(), input.extra.get());
        let tape_rolls = rolls(tape, input.roll.get());
        let film_rolls = libm::ceil(input.cover.get() / input.film_roll.get() - 1e-9).max(0.0) as u32;
        let in_hand = Amount::<kind::Days>::of(input.sheet_days.get() - input.days.get());
        let working = vec![
            Step::new("tape")
                .by("E * (1 + x / 100)")
                .given("E", "edges to tape", input.edges)
                .given("x", "on top", input.extra)
                .gives("T", "tape", tape),
            Step::new("rolls of tape")
                .by("ceil(T / r)")
                .given("T", "tape", tape)
                .given("r", "roll of tape", input.roll)
                .gives("n", "rolls", tape_rolls),
            Step::new("rolls of film")
                .by("ceil(A / f)")
                .given("A", "area to cover", input.cover)
                .given("f", "roll of film covers", input.film_roll)
                .gives("m", "rolls", film_rolls),
        ];
        let notes = if in_hand.get() < 0.0 {
            vec![Note::check(
                Words::new(
                    "It will stay longer than its sheet allows, {}: renew it between the coats or take another tape.",
                )
                .with(input.sheet_days),
            )]
        } else {
            Vec::new()
        };
        Ok(Answer { result: Output { tape_rolls, tape: Run::of(tape), film_rolls, in_hand }, working, notes })
    }
}
