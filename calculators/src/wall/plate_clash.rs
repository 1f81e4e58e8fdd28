//! A plate and a board as a question of its own: how little can be moved.

use serde_json::json;

use super::clash::FilledRun;
use super::defaults::Settled;
use super::layout::{Taken, TakenBy, limits};
use super::plan::{Action, Choice};
use super::plates::{PlateCase, choices};
use super::scheme::{BayWidth, BoardWidth, Leeway, Material};
use super::survey::{Along, Height};
use crate::catalogue::works::{GEOMETRY, PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Count, Exact, Length, MICROMETRE, Reading, Tape, Units};

pub(crate) struct PlateClash;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Where the run of boards starts: the right edge of the fixed board on its left, or the end.
    #[field("Run starts at")]
    run_left: Along,
    /// Where it ends.
    #[field("Run ends at")]
    run_right: Along,
    /// As measured.
    #[field("Board width")]
    board: BoardWidth,
    /// Boards in the run, those that are fixed not counted.
    #[field("Boards in the run")]
    boards: Count<1, 200>,
    /// Left edge of the plate, not of the box behind it.
    #[field("Plate, left")]
    plate_left: Along,
    /// Right edge of the plate.
    #[field("Plate, right")]
    plate_right: Along,
    /// Lower edge of the plate.
    #[field("Plate, bottom")]
    plate_bottom: Height,
    /// Upper edge of the plate.
    #[field("Plate, top")]
    plate_top: Height,
    /// Narrowest bay that is accepted when the number of boards changes.
    #[field("Narrowest bay")]
    bay_min: BayWidth,
    /// Widest bay that is accepted.
    #[field("Widest bay")]
    bay_max: BayWidth,
    /// It decides how thin a neck beside a notch may be.
    #[field("Material", default)]
    material: Material,
    /// What may be moved, and how far.
    #[field("Clearances", default)]
    leeway: Leeway,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// What is best done.
    #[field("Do")]
    best: Action,
    /// Clear wall between the plate and the nearest board before anything moves; less than nothing where they overlap.
    #[field("Clear now")]
    clear: Exact,
    /// The largest shift of a board, when shifting is enough.
    #[field("Largest shift")]
    shift: Exact,
    /// The ways, best first; those that are refused say why.
    #[field("Ways")]
    ways: Vec<Choice>,
    /// Left edges of the boards of the run in the end.
    #[field("Left edges")]
    lefts: Vec<Reading>,
    /// The bays of the run in the end.
    #[field("Bays")]
    bays: Vec<Exact>,
}

impl Calculator for PlateClash {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "plate-clash",
        title: "Plate and board",
        question: "The switch hits a board: how little can I move?",
        step: 4,
        search: &[
            "switch",
            "socket",
            "outlet",
            "shift",
            "clearance",
            "box",
            "light switch",
            "board",
            "plate",
            "clash",
            "close",
            "in the way",
        ],
        headline: &["/best", "/shift", "/clear"],
        list: Some("/ways"),
        cautions: &["live-box"],
        sources: &[
            Source::new(GEOMETRY, "change shared out over a run", Standing::Derived),
            Source::new(PRACTICE, "ways to settle a clash and their order", Standing::CommonPractice),
            Source::new(THIS_BOOK, "clearance, most shift, most change between neighbours", Standing::HouseDefault),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({
                    "run_left": "174 5/8 in", "run_right": "216 3/4 in", "board": "2 1/2 in", "boards": 2,
                    "plate_left": "204 1/2 in", "plate_right": "207 1/4 in", "plate_bottom": "44 3/4 in", "plate_top": "49 1/4 in",
                    "bay_min": "7 in", "bay_max": "22 in", "tape": "1/16 in"
                }),
                expects: vec![
                    ("/result/best", json!("shift")),
                    ("/result/clear/tape", json!("1/8 in")),
                    ("/result/shift/tape", json!("3/8 in")),
                    ("/result/lefts/0/tape", json!("186 13/16 in")),
                    ("/result/lefts/1/tape", json!("201 1/2 in")),
                ],
                checked_against: "common practice arithmetic, worked by hand: bays 12 3/16, 12 3/16, 12 3/4",
            },
            Units::Metric => Example {
                input: json!({
                    "run_left": "4436 mm", "run_right": "5505 mm", "board": "64 mm", "boards": 2,
                    "plate_left": "5194 mm", "plate_right": "5264 mm", "plate_bottom": "1137 mm", "plate_top": "1251 mm",
                    "bay_min": "180 mm", "bay_max": "560 mm", "tape": "1 mm"
                }),
                expects: vec![
                    ("/result/best", json!("shift")),
                    ("/result/shift/tape", json!("10 mm")),
                    ("/result/lefts/0/tape", json!("4745 mm")),
                    ("/result/lefts/1/tape", json!("5117 mm")),
                ],
                checked_against: "common practice arithmetic, worked by hand: bays 308.67, 308.67, 323.67",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        check(input)?;
        let settled = Settled::with_leeway(&input.leeway, input.material, input.tape);
        let filled = FilledRun {
            left: input.run_left.get().exact(),
            right: input.run_right.get().exact(),
            board: input.board.get(),
            boards: usize::try_from(input.boards.get()).unwrap_or(0),
        };
        if !filled.bay().is_positive() {
            let why = Words::new("{} boards of {} leave no bay in this run").with(input.boards.get()).with(input.board);
            return Err(vec![Fault::new("/boards", Words::of(input.boards.get()), why, 1)]);
        }
        let plate = Taken {
            what: TakenBy::Box(0),
            left: input.plate_left.get().exact(),
            right: input.plate_right.get().exact(),
            bottom: input.plate_bottom.get().exact(),
            top: input.plate_top.get().exact(),
            clearance: settled.clearance,
        };
        let origin = filled.lefts();
        let gap = |left: &Exact| (plate.left - *left - filled.board).max(*left - plate.right);
        let nearest = origin.iter().enumerate().min_by_key(|(_, left)| gap(left)).map(|(n, left)| (n, gap(left)));
        let (board, clear) = nearest.unwrap_or((0, Exact::ZERO));
        let limits = limits(&filled, &settled);
        let cleared = filled.cleared(&[plate.stretch()], limits);
        let moved =
            cleared.lefts.iter().zip(&origin).map(|(new, old)| (*new - *old).size()).max().unwrap_or(Exact::ZERO);
        let case = PlateCase {
            plate: &plate,
            board: (origin[board], origin[board] + filled.board),
            run: Some((&filled, board)),
            bay_limits: (input.bay_min.get().exact(), input.bay_max.get().exact()),
            material: input.material,
            settled: &settled,
        };
        let (best, ways) = if plate.clearance.exact() <= clear {
            let words = Words::new("{} stays clear: leave it").with(clear);
            (Action::Leave, vec![Choice { action: Action::Leave, allowed: true, applied: true, words }])
        } else {
            let mut ways = choices(&case);
            let shifted = cleared.left_over.is_empty();
            for way in ways.iter_mut().filter(|way| way.action == Action::Shift) {
                way.applied = shifted;
            }
            let first =
                ways.iter().find(|way| way.allowed && way.applied).or_else(|| ways.iter().find(|way| way.allowed));
            (first.map_or(Action::MoveBox, |way| way.action), ways)
        };
        let bays = filled.bays(&cleared.lefts);
        let mut working = vec![
            Step::new("bay before anything moves")
                .by("(R - L - n * b) / (n + 1)")
                .given("R", "run ends at", input.run_right)
                .given("L", "run starts at", input.run_left)
                .given("n", "boards", input.boards.get())
                .given("b", "board width", input.board)
                .gives("g", "clear bay", filled.bay()),
        ];
        if let Some(need) = filled.need(board, plate.stretch(), limits.step).filter(|_| clear < plate.clearance.exact())
        {
            let side = if need.shift.is_negative() { "c - d" } else { "d - c" };
            let (c, d) = if need.shift.is_negative() {
                (plate.left - plate.clearance, origin[board] + filled.board)
            } else {
                (plate.right + plate.clearance, origin[board])
            };
            let raw = if need.shift.is_negative() { c - d } else { d - c };
            working.push(
                Step::new("shift that clears the plate")
                    .by(side)
                    .given("c", "plate with its clearance", c)
                    .given("d", "edge of the board", d)
                    .gives("s", "shift before rounding", raw)
                    .because(
                        Words::new("rounded up to the next mark, away from the plate: {}").with(need.shift.size()),
                    ),
            );
        }
        let mut notes = Vec::new();
        if !cleared.left_over.is_empty() {
            notes.push(Note::hold(
                "No shift within these clearances clears this plate: settle it before the drawing is signed.",
            ));
        }
        let lefts = cleared.lefts.iter().map(|left| input.tape.mark(*left)).collect();
        Ok(Answer { result: Output { best, clear, shift: moved, ways, lefts, bays }, working, notes })
    }
}

fn check(input: &Input) -> Result<(), Vec<Fault>> {
    let mut faults = Vec::new();
    let mut order = |pointer: &str, low: Length, high: Length| {
        if high <= low {
            let why = Words::new("must lie beyond {}").with(low);
            let instead = Words::of(low + Length::inches(3));
            faults.push(Fault::new(pointer, Words::of(high), why, instead));
        }
    };
    order("/run_right", input.run_left.get(), input.run_right.get());
    order("/plate_right", input.plate_left.get(), input.plate_right.get());
    order("/plate_top", input.plate_bottom.get(), input.plate_top.get());
    order("/bay_max", input.bay_min.get() - MICROMETRE, input.bay_max.get());
    if faults.is_empty() { Ok(()) } else { Err(faults) }
}
