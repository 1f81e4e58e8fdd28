//! The nail as a question of its own: which length, and how many.

use serde_json::json;

use super::nails::{GAUGES, choice, in_board, in_rail, penetration, pin, pins, sold, window};
use crate::catalogue::works::{BS_7671, NFPA_70, PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Count, Length, Tape, Units, Within};
use crate::wall::survey::Thickness;

pub(crate) struct NailChoice;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Of the rail or board that is nailed.
    #[field("Trim")]
    trim: Thickness,
    /// Behind it.
    #[field("Plasterboard", usual = ["3/8 in", "5/8 in"])]
    plasterboard: Within<6_000, 32_000>,
    /// That the rail crosses.
    #[field("Studs behind the rail")]
    studs: Count<0, 200>,
    /// The pieces of the rail: one, or more with joints.
    #[field("Pieces of rail")]
    pieces: Count<1, 40>,
    /// Held by adhesive and pins, and by nails into base and rail.
    #[field("Boards")]
    boards: Count<0, 400>,
    /// Of one board.
    #[field("Board length")]
    board_length: Within<50_000, 6_000_000>,
    /// It says in which units nails are bought.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// The shortest that is sold inside the window; nothing where none is.
    #[field("Nail")]
    nail: Option<Length>,
    /// Where there is no stud: through board and plasterboard and no further; nothing where none sold is short enough.
    #[field("Pin off the studs")]
    pin: Option<Length>,
    /// By what is nailed.
    #[field("Gauge")]
    gauge: &'static str,
    /// At least this long.
    #[field("From")]
    from: Length,
    /// Shorter than this.
    #[field("Below")]
    below: Length,
    /// Into studs and at the ends.
    #[field("Nails in the rail")]
    in_rail: usize,
    /// Into base and rail.
    #[field("Nails in boards")]
    in_boards: usize,
    /// Beside the adhesive.
    #[field("Pins")]
    pins: usize,
    /// To be filled.
    #[field("Heads")]
    heads: usize,
}

impl Calculator for NailChoice {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "nail-choice",
        title: "Which nail, how many",
        question: "Which nail, and how many?",
        step: 10,
        search: &[
            "nail",
            "brad",
            "pin",
            "length",
            "gauge",
            "count",
            "how long",
            "board",
            "plasterboard",
            "stud",
            "brad length",
            "how long a brad",
            "brad nailer",
        ],
        headline: &["/nail", "/pin", "/below"],
        list: None,
        cautions: &["hidden-services", "nail-gun"],
        sources: &[
            Source::new(PRACTICE, "3/4 in (19 mm) at least in the stud; lengths sold", Standing::CommonPractice),
            Source::new(PRACTICE, "off the studs no pin beyond the plasterboard; gauges", Standing::CommonPractice),
            Source::new(NFPA_70, "300.4: 1-1/4 in behind the face of a stud, United States", Standing::FromMemory),
            Source::new(
                BS_7671,
                "522.6.202, as quoted in public summaries: cables under 50 mm deep run in line with an outlet, within 150 mm of the top of the wall, or within 150 mm of a corner; United Kingdom",
                Standing::Published,
            ),
            Source::new(THIS_BOOK, "nails and pins per piece", Standing::HouseDefault),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "trim": "3/4 in", "plasterboard": "1/2 in", "studs": 10, "pieces": 1, "boards": 12, "board_length": "53 in", "tape": "1/16 in" }),
                expects: vec![
                    ("/result/nail/tape", json!("2 in")),
                    ("/result/below/tape", json!("2 1/2 in")),
                    ("/result/pin/tape", json!("1 1/4 in")),
                    ("/result/in_rail", json!(24)),
                    ("/result/in_boards", json!(60)),
                    ("/result/pins", json!(72)),
                ],
                checked_against: "common practice arithmetic, worked by hand: 3/4 + 1/2 + 3/4; 2 x 10 + 4",
            },
            Units::Metric => Example {
                input: json!({ "trim": "18 mm", "plasterboard": "12.5 mm", "studs": 10, "pieces": 1, "boards": 12, "board_length": "1351 mm", "tape": "1 mm" }),
                expects: vec![
                    ("/result/nail/tape", json!("50 mm")),
                    ("/result/from/tape", json!("49.5 mm")),
                    ("/result/below/tape", json!("62.5 mm")),
                ],
                checked_against: "common practice arithmetic, worked by hand: 18 + 12.5 + 19 and + 32",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let units = input.tape.units();
        let (least, most) = penetration(units);
        let window = window(input.trim.get(), input.plasterboard.get(), (least, most));
        let nail = choice(window, &sold(units));
        let pin_length = pin(input.trim.get(), input.plasterboard.get(), &sold(units));
        let counted = |count: u32| usize::try_from(count).unwrap_or(0);
        let (boards, length) = (counted(input.boards.get()), input.board_length.get());
        let rail = in_rail(counted(input.studs.get()), counted(input.pieces.get()));
        let in_boards = boards * in_board(length, units);
        let pins = boards * pins(length, units);
        let heads = rail + in_boards + pins;
        let working = vec![
            Step::new("shortest nail that holds")
                .by("t + p + d")
                .given("t", "trim", input.trim)
                .given("p", "plasterboard", input.plasterboard)
                .given("d", "least depth in the stud", least)
                .gives("f", "from", window.from),
            Step::new("length that is not reached")
                .by("t + p + e")
                .given("t", "trim", input.trim)
                .given("p", "plasterboard", input.plasterboard)
                .given("e", "depth at which cables may begin", most)
                .gives("b", "below", window.below),
            Step::new("longest pin off the studs")
                .by("t + p")
                .given("t", "trim", input.trim)
                .given("p", "plasterboard", input.plasterboard)
                .gives("o", "not beyond", input.trim.get() + input.plasterboard.get())
                .because("behind the plasterboard hang cables and pipes; the longest pin sold up to this is taken"),
            Step::new("nails in the rail")
                .by("2 * n + 4 * k")
                .given("n", "studs", input.studs.get())
                .given("k", "pieces", input.pieces.get())
                .gives("N", "nails in the rail", rail)
                .because("two at each stud, two at each end of each piece"),
            Step::new("heads to be filled")
                .by("N + M + P")
                .given("N", "nails in the rail", rail)
                .given("M", "nails in boards", in_boards)
                .given("P", "pins", pins)
                .gives("H", "heads", heads),
        ];
        let mut notes = vec![Note::hold(
            "No nails until the cables are traced. They run in line with every outlet, and where the local rules allow it also along the ceiling and in corners, where no outlet shows them.",
        )];
        if nail.is_none() {
            notes.push(Note::check(
                Words::new("No usual nail is from {} to below {}: cut down a longer one, or use screws.")
                    .with(window.from)
                    .with(window.below),
            ));
        }
        let result = Output {
            nail,
            pin: pin_length,
            gauge: GAUGES,
            from: window.from,
            below: window.below,
            in_rail: rail,
            in_boards,
            pins,
            heads,
        };
        Ok(Answer { result, working, notes })
    }
}
