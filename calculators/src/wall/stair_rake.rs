//! The stair rake as a question of its own: angle, lengths, and the panel between two boards.

use serde_json::json;

use super::rake::{Flight, plumb_thickness, rake_board, rake_panel};
use super::scheme::{BayWidth, BoardWidth};
use super::survey::Height;
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Exact, Length, Reading, Tape, Units, Within, kind};

pub(crate) struct StairRake;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Plumb, from the first nosing to the last, measured in one go.
    #[field("Rise, first to last nosing")]
    rise: Within<50_000, 12_000_000>,
    /// Level, from the first nosing to the last, measured in one go.
    #[field("Run, first to last nosing")]
    run: Within<150_000, 20_000_000>,
    /// As measured.
    #[field("Rail width")]
    rail: BoardWidth,
    /// As measured.
    #[field("Board width")]
    board: BoardWidth,
    /// Top edge of the rail above the nosing line, plumb.
    #[field("Rail over the nosings")]
    rail_top: Height,
    /// Top edge of the base above the nosing line, plumb.
    #[field("Base over the nosings")]
    base_top: Height,
    /// Clear and level, between two boards.
    #[field("Bay")]
    bay: BayWidth,
    /// Rise of one step; with its going it shows what a nominal step would have missed.
    #[field("Nominal riser", default)]
    riser: Option<Within<20_000, 305_000>>,
    /// Going of one step.
    #[field("Nominal going", default)]
    going: Option<Within<100_000, 610_000>>,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// From level; what the saw is set to for the ends of boards.
    #[field("Rake")]
    rake: Amount<kind::Angle>,
    /// Both long edges of a board, rounded down: it must go in.
    #[field("Edge of a board")]
    edge: Reading,
    /// The shortest piece a board is cut from, rounded up.
    #[field("Stock for a board")]
    stock: Reading,
    /// The rail's width, measured plumb.
    #[field("Rail, plumb")]
    rail_plumb: Length,
    /// The bay along the slope.
    #[field("Bay on the slope")]
    bay_on_slope: Length,
    /// Of the panel between two boards.
    #[field("Long diagonal")]
    long_diagonal: Length,
    /// Of the panel between two boards.
    #[field("Short diagonal")]
    short_diagonal: Length,
    /// The smaller corner of the panel.
    #[field("Sharp corner")]
    sharp_corner: Amount<kind::Angle>,
    /// The larger corner of the panel.
    #[field("Blunt corner")]
    blunt_corner: Amount<kind::Angle>,
    /// What a nominal step, repeated, would miss at the far end; nothing where no step was given.
    #[field("A nominal step misses by")]
    nominal_misses: Option<Exact>,
}

impl Calculator for StairRake {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "stair-rake",
        title: "Stair rake",
        question: "What angle, what length, what panel?",
        step: 11,
        search: &["stair", "rake", "slope", "angle", "nosing", "parallelogram"],
        headline: &["/rake", "/edge", "/stock"],
        list: None,
        cautions: &["stair-work", "saw-blade"],
        sources: &[
            Source::new(GEOMETRY, "right triangles", Standing::Derived),
            Source::new(
                PRACTICE,
                "rise and run from first to last nosing, not steps times a nominal step",
                Standing::CommonPractice,
            ),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({
                    "rise": "56 1/4 in", "run": "88 1/8 in", "rail": "3 1/2 in", "board": "2 1/2 in", "rail_top": "40 in",
                    "base_top": "4 1/2 in", "bay": "11 49/64 in", "riser": "7 in", "going": "11 in", "tape": "1/16 in"
                }),
                expects: vec![
                    ("/result/rake/text", json!("32.55°")),
                    ("/result/edge/tape", json!("31 5/16 in")),
                    ("/result/stock/tape", json!("33 in")),
                    ("/result/sharp_corner/text", json!("57.45°")),
                ],
                checked_against: "common practice arithmetic, worked by hand: edge 31.348 down, stock 32.944 up, nominal 7/11 misses 0.17",
            },
            Units::Metric => Example {
                input: json!({
                    "rise": "1429 mm", "run": "2238 mm", "rail": "90 mm", "board": "64 mm", "rail_top": "1016 mm",
                    "base_top": "114 mm", "bay": "298.3 mm", "riser": "178 mm", "going": "279 mm", "tape": "1 mm"
                }),
                expects: vec![
                    ("/result/rake/text", json!("32.56°")),
                    ("/result/edge/tape", json!("795 mm")),
                    ("/result/stock/tape", json!("837 mm")),
                ],
                checked_against: "common practice arithmetic, worked by hand: edge 795.2 down, stock 836.1 up",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (rise, run) = (input.rise.get(), input.run.get());
        let mut faults = Vec::new();
        let said = |length: Length| Words::of(length);
        if run < rise {
            let why =
                Words::new("a stair that rises more than its run of {} is a ladder; are rise and run changed over?")
                    .with(run);
            faults.push(Fault::new("/rise", said(rise), why, said(run)));
        }
        if input.riser.is_some() != input.going.is_some() {
            let pointer = if input.riser.is_some() { "/going" } else { "/riser" };
            faults.push(Fault::new(
                pointer,
                "nothing",
                "a nominal step needs both its riser and its going",
                said(Length::inches(11)),
            ));
        }
        let flight = Flight { first: Length::ZERO, riser: Length::ZERO, run, rise, start: Length::ZERO, landing: rise };
        let degrees = flight.degrees();
        let rail_plumb = plumb_thickness(input.rail.get(), degrees);
        let plumb = (input.rail_top.get() - input.base_top.get() - rail_plumb).exact();
        let Some(board) = rake_board(plumb, input.board.get(), rise, run).filter(|_| faults.is_empty()) else {
            if faults.is_empty() {
                let why = Words::new("base and rail, {} plumb, leave no board below it").with(rail_plumb);
                faults.push(Fault::new(
                    "/rail_top",
                    said(input.rail_top.get()),
                    why,
                    said(input.base_top.get() + rail_plumb * 4),
                ));
            }
            return Err(faults);
        };
        let panel = rake_panel(input.bay.get().exact(), plumb, degrees);
        let nominal = input.riser.zip(input.going).and_then(|(riser, going)| {
            run.exact().times(riser.get().nm(), going.get().nm()).map(|nominal| rise.exact() - nominal)
        });
        let angle = |degrees: f64| Amount::<kind::Angle>::of(degrees);
        let mut working = vec![
            Step::new("rake").by("atan(R / G)").given("R", "rise", rise).given("G", "run", run).gives(
                "a",
                "rake",
                angle(degrees),
            ),
            Step::new("rail, plumb")
                .by("w / cos(a)")
                .given("w", "rail width", input.rail)
                .given("a", "rake", angle(degrees))
                .gives("v", "rail, plumb", rail_plumb),
            Step::new("edge of a board")
                .by("t - v - s")
                .given("t", "rail over the nosings", input.rail_top)
                .given("v", "rail, plumb", rail_plumb)
                .given("s", "base over the nosings", input.base_top)
                .gives("H", "edge", board.edge),
            Step::new("stock for a board")
                .by("H + b * R / G")
                .given("H", "edge", board.edge)
                .given("b", "board width", input.board)
                .given("R", "rise", rise)
                .given("G", "run", run)
                .gives("S", "stock", board.stock),
            Step::new("bay on the slope")
                .by("g / cos(a)")
                .given("g", "bay", input.bay)
                .given("a", "rake", angle(degrees))
                .gives("u", "bay on the slope", panel.on_slope),
            Step::new("long diagonal of a panel")
                .by("sqrt(g ^ 2 + (H + g * tan(a)) ^ 2)")
                .given("g", "bay", input.bay)
                .given("H", "edge", board.edge)
                .given("a", "rake", angle(degrees))
                .gives("D", "long diagonal", panel.long_diagonal),
        ];
        let mut notes = Vec::new();
        if let (Some(miss), Some((riser, going))) = (nominal, input.riser.zip(input.going)) {
            working.push(
                Step::new("what a nominal step would miss over the flight")
                    .by("R - G * r / g")
                    .given("R", "rise", rise)
                    .given("G", "run", run)
                    .given("r", "nominal riser", riser)
                    .given("g", "nominal going", going)
                    .gives("e", "miss at the top", miss),
            );
            if input.tape.step().exact() <= miss.size() {
                notes.push(Note::check(
                    Words::new("The nominal step misses by {} at the top: take the measured flight.").with(miss.size()),
                ));
            }
        }
        notes.push(Note::remark(
            "Both long edges of a board have the same length; its two ends are cut parallel, at the rake.",
        ));
        let result = Output {
            rake: angle(degrees),
            edge: input.tape.short(board.edge),
            stock: input.tape.long(board.stock),
            rail_plumb,
            bay_on_slope: panel.on_slope,
            long_diagonal: panel.long_diagonal,
            short_diagonal: panel.short_diagonal,
            sharp_corner: angle(90.0 - degrees),
            blunt_corner: angle(90.0 + degrees),
            nominal_misses: nominal,
        };
        Ok(Answer { result, working, notes })
    }
}
