//! The layout search as a question of its own: runs between fixed boards, and the counts that make them match.

use serde_json::json;

use super::layout::{Ask, Choice, evenest_by_total, offered};
use super::scheme::{BayWidth, BoardWidth};
use super::survey::WallLength;
use crate::catalogue::works::{GEOMETRY, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Exact, Units};

pub(crate) struct BaysRoundOpenings;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// The clear length of each run between boards that cannot move: corners, opening edges.
    #[field("Runs", size(1..=30))]
    runs: Vec<WallLength>,
    /// As measured on delivered stock.
    #[field("Board width")]
    board: BoardWidth,
    /// The clear width that the bays should come near to.
    #[field("Target bay")]
    target: BayWidth,
    /// No bay narrower than this, where a run allows it.
    #[field("Narrowest bay")]
    bay_min: BayWidth,
    /// No bay wider than this, where a run allows it.
    #[field("Widest bay")]
    bay_max: BayWidth,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Widest bay less narrowest, in the layout to take first.
    #[field("Spread")]
    spread: Exact,
    /// All bays shared out equally.
    #[field("Mean bay")]
    mean: Exact,
    /// The nearest to the target first, the evenest of all second where it is another.
    #[field("Layouts")]
    layouts: Vec<Way>,
}

/// One way to fill the runs.
#[derive(Output)]
pub(crate) struct Way {
    /// In all runs.
    #[field("Boards")]
    boards: usize,
    /// In each run.
    #[field("Boards per run")]
    counts: Vec<usize>,
    /// In each run.
    #[field("Bay per run")]
    bays: Vec<Exact>,
    /// Widest less narrowest.
    #[field("Spread")]
    spread: Exact,
    /// All bays shared out equally.
    #[field("Mean bay")]
    mean: Exact,
    /// Between two neighbouring runs.
    #[field("Largest jump between neighbours")]
    jump: Exact,
    /// Spread and distance of the mean from the target; less is better.
    #[field("Score")]
    score: Exact,
}

fn way(choice: Choice, target: Exact) -> Way {
    let jump = choice.bays.windows(2).map(|pair| (pair[1] - pair[0]).size()).max().unwrap_or(Exact::ZERO);
    Way {
        boards: choice.total,
        spread: choice.spread,
        mean: choice.mean,
        jump,
        score: choice.cost(Some(target)),
        counts: choice.counts,
        bays: choice.bays,
    }
}

impl Calculator for BaysRoundOpenings {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "bays-round-openings",
        title: "Bays round openings",
        question: "Boards at the window edges, and the rest to match?",
        step: 4,
        search: &["windows", "spacing", "unequal", "layout", "match"],
        headline: &["/spread", "/mean"],
        list: Some("/layouts"),
        cautions: &["nominal-size"],
        sources: &[
            Source::new(GEOMETRY, "runs shared out; every total of boards searched", Standing::Derived),
            Source::new(
                THIS_BOOK,
                "score: spread plus distance of the mean bay from the target",
                Standing::HouseDefault,
            ),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({
                    "runs": ["29 in", "42 1/2 in", "30 3/8 in", "59 1/2 in", "42 1/8 in"],
                    "board": "2 1/2 in", "target": "13 in", "bay_min": "7 in", "bay_max": "22 in"
                }),
                expects: vec![
                    ("/result/layouts/0/counts", json!([1, 2, 1, 3, 2])),
                    ("/result/spread/tape", json!("1 9/16 in")),
                    ("/result/layouts/1/counts", json!([2, 3, 2, 5, 3])),
                ],
                checked_against: "common practice arithmetic, worked by hand: bays 13 1/4, 12 1/2, 13 15/16, 13, 12 3/8",
            },
            Units::Metric => Example {
                input: json!({
                    "runs": ["737 mm", "1079 mm", "771 mm", "1511 mm", "1069 mm"],
                    "board": "64 mm", "target": "330 mm", "bay_min": "180 mm", "bay_max": "560 mm"
                }),
                expects: vec![
                    ("/result/layouts/0/counts", json!([1, 2, 1, 3, 2])),
                    ("/result/spread/text", json!("39.8 mm")),
                ],
                checked_against: "common practice arithmetic, worked by hand: bays 336.5, 317, 353.5, 329.75, 313.67",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let mut faults = Vec::new();
        if input.bay_max < input.bay_min {
            let why = Words::new("the widest bay must not be narrower than the narrowest, {}").with(input.bay_min);
            faults.push(Fault::new("/bay_max", Words::of(input.bay_max), why, Words::of(input.bay_min)));
        }
        if input.target < input.bay_min || input.bay_max < input.target {
            let why = Words::new("the wished bay must lie between {} and {}").with(input.bay_min).with(input.bay_max);
            faults.push(Fault::new("/target", Words::of(input.target), why, Words::of(input.bay_min)));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let target = input.target.get().exact();
        let ask = Ask {
            runs: input.runs.iter().map(|run| run.get().exact()).collect(),
            board: input.board.get(),
            target: Some(target),
            counted: vec![true; input.runs.len()],
            bay_min: input.bay_min.get().exact(),
            bay_max: input.bay_max.get().exact(),
        };
        let offers = offered(evenest_by_total(&ask), Some(target), 3);
        let Some(first) = offers.first() else {
            let why = "no run leaves a bay";
            return Err(vec![Fault::new("/runs", "these runs", why, Words::of(input.target))]);
        };
        let mut working: Vec<Step> = input
            .runs
            .iter()
            .zip(first.counts.iter().zip(&first.bays))
            .map(|(run, (boards, bay))| {
                Step::new(Words::new("bay of the run of {}").with(*run))
                    .by("(L - n * b) / (n + 1)")
                    .given("L", "run", *run)
                    .given("n", "boards", *boards)
                    .given("b", "board width", input.board)
                    .gives("g", "clear bay", *bay)
            })
            .collect();
        let widest = first.bays.iter().max().copied().unwrap_or(Exact::ZERO);
        let narrowest = first.bays.iter().min().copied().unwrap_or(Exact::ZERO);
        working.push(
            Step::new("score; less is better")
                .by("w - n + abs(m - t)")
                .given("w", "widest bay", widest)
                .given("n", "narrowest bay", narrowest)
                .given("m", "mean bay", first.mean)
                .given("t", "wished bay", input.target)
                .gives("S", "score", first.cost(Some(target)))
                .because("the least spread alone would always put in too many boards: narrow bays differ less"),
        );
        let mut notes = Vec::new();
        if let Some(even) = offers.get(1).filter(|even| even.spread < first.spread) {
            let more = i64::try_from(even.total).unwrap_or(0) - i64::try_from(first.total).unwrap_or(0);
            let words = Words::new("The evenest of all differs by {} only, but with {} boards more and bays near {}.");
            notes.push(Note::remark(words.with(even.spread).with(more).with(even.mean)));
        }
        if first.bays.iter().any(|bay| *bay < ask.bay_min || ask.bay_max < *bay) {
            notes.push(Note::check("A run cannot keep to the limits; the bay nearest to them is given. One wider board may serve better there."));
        }
        let (spread, mean) = (first.spread, first.mean);
        let layouts = offers.into_iter().map(|choice| way(choice, target)).collect();
        Ok(Answer { result: Output { spread, mean, layouts }, working, notes })
    }
}
