//! Where a rail turns from level to rake, and back: seldom at the nosing.

use serde_json::json;

use super::rake::Flight;
use super::scheme::BoardWidth;
use super::survey::{Along, Height};
use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Length, Reading, Tape, Units, Within, kind};

pub(crate) struct RailKinks;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Where the first nosing is, measured along the wall.
    #[field("First nosing at")]
    first_nosing: Along,
    /// From the lower landing to the first nosing.
    #[field("First riser")]
    riser: Within<20_000, 305_000>,
    /// Level, from the first nosing to the last.
    #[field("Run, first to last nosing")]
    run: Within<150_000, 20_000_000>,
    /// Plumb, from the first nosing to the last.
    #[field("Rise, first to last nosing")]
    rise: Within<50_000, 12_000_000>,
    /// Top edge above both landings.
    #[field("Height over the landings")]
    over_landings: Height,
    /// Top edge above the nosing line, plumb.
    #[field("Height over the nosings")]
    over_nosings: Height,
    /// Width of the rail, square to its edges.
    #[field("Rail width")]
    rail: BoardWidth,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Of the top edge, along the wall.
    #[field("Lower turn, top edge")]
    lower_top: Reading,
    /// Of the bottom edge.
    #[field("Lower turn, bottom edge")]
    lower_bottom: Reading,
    /// Of the top edge.
    #[field("Upper turn, top edge")]
    upper_top: Reading,
    /// Of the bottom edge.
    #[field("Upper turn, bottom edge")]
    upper_bottom: Reading,
    /// What both pieces of a turn are cut to, from a square cut.
    #[field("Mitre")]
    mitre: Amount<kind::Angle>,
}

impl Calculator for RailKinks {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "rail-kinks",
        title: "Turns from level to rake",
        question: "Where does the rail turn?",
        step: 11,
        search: &["kink", "turn", "mitre", "stair", "landing", "rake"],
        headline: &["/lower_top", "/upper_top", "/mitre"],
        list: None,
        cautions: &["stair-work"],
        sources: &[Source::new(GEOMETRY, "two lines meet", Standing::Derived)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({
                    "first_nosing": "30 in", "riser": "7 in", "run": "88 1/8 in", "rise": "56 1/4 in",
                    "over_landings": "40 in", "over_nosings": "40 in", "rail": "3 1/2 in", "tape": "1/16 in"
                }),
                expects: vec![
                    ("/result/lower_top/tape", json!("19 1/16 in")),
                    ("/result/lower_bottom/tape", json!("20 1/16 in")),
                    ("/result/upper_top/tape", json!("118 1/8 in")),
                    ("/result/upper_bottom/tape", json!("119 1/8 in")),
                    ("/result/mitre/text", json!("16.28°")),
                ],
                checked_against: "common practice arithmetic, worked by hand: 19.03, 20.055, 118.125, 119.147; 32.5503 / 2",
            },
            Units::Metric => Example {
                input: json!({
                    "first_nosing": "762 mm", "riser": "178 mm", "run": "2238 mm", "rise": "1429 mm",
                    "over_landings": "1016 mm", "over_nosings": "1016 mm", "rail": "90 mm", "tape": "1 mm"
                }),
                expects: vec![
                    ("/result/lower_top/tape", json!("483 mm")),
                    ("/result/upper_top/tape", json!("3000 mm")),
                ],
                checked_against: "common practice arithmetic, worked by hand: 483.2; 762 + 2238",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let flight = Flight {
            first: input.first_nosing.get(),
            riser: input.riser.get(),
            run: input.run.get(),
            rise: input.rise.get(),
            start: Length::ZERO,
            landing: input.riser.get() + input.rise.get(),
        };
        let said = |length: Length| Words::of(length);
        if flight.run < flight.rise {
            let why =
                Words::new("a stair that rises more than its run of {} is a ladder; are rise and run changed over?")
                    .with(flight.run);
            return Err(vec![Fault::new("/rise", said(flight.rise), why, said(flight.run))]);
        }
        let (landings, nosings) = (input.over_landings.get(), input.over_nosings.get());
        let (lower, upper) = flight.turns(landings, nosings);
        if upper <= lower {
            let why = "at these two heights the level lines meet before the rake begins";
            return Err(vec![Fault::new("/over_nosings", said(nosings), why, said(landings))]);
        }
        let degrees = flight.degrees();
        let aside = Length::nearest_mm(input.rail.get().in_mm() * libm::tan(degrees.to_radians() / 2.0));
        let mark = |length: Length| input.tape.mark(length.exact());
        let angle = |degrees: f64| Amount::<kind::Angle>::of(degrees);
        let working = vec![
            Step::new("rake").by("atan(R / G)").given("R", "rise", flight.rise).given("G", "run", flight.run).gives(
                "a",
                "rake",
                angle(degrees),
            ),
            Step::new("lower turn of the top edge")
                .by("x + (h - r - k) * G / R")
                .given("x", "first nosing at", flight.first)
                .given("h", "height over the landings", landings)
                .given("r", "first riser", flight.riser)
                .given("k", "height over the nosings", nosings)
                .given("G", "run", flight.run)
                .given("R", "rise", flight.rise)
                .gives("X", "lower turn", lower),
            Step::new("upper turn of the top edge")
                .by("x + G + (h - k) * G / R")
                .given("x", "first nosing at", flight.first)
                .given("h", "height over the landings", landings)
                .given("k", "height over the nosings", nosings)
                .given("G", "run", flight.run)
                .given("R", "rise", flight.rise)
                .gives("Y", "upper turn", upper),
            Step::new("how far the bottom edge turns beside the top edge")
                .by("w * tan(a / 2)")
                .given("w", "rail width", input.rail)
                .given("a", "rake", angle(degrees))
                .gives("d", "aside", aside),
        ];
        let mut notes = vec![Note::remark("Keep boards off the turns: a board over one takes two cuts on one end.")];
        if lower < flight.first {
            notes.push(Note::check(
                Words::new("The lower turn lies {} before the first nosing, over the landing.")
                    .with(flight.first - lower),
            ));
        }
        let result = Output {
            lower_top: mark(lower),
            lower_bottom: mark(lower + aside),
            upper_top: mark(upper),
            upper_bottom: mark(upper + aside),
            mitre: angle(degrees / 2.0),
        };
        Ok(Answer { result, working, notes })
    }
}
