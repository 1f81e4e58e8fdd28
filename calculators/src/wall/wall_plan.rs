//! The wall plan as a calculator: the whole main job through one declaration.

use serde_json::json;

use super::plan::WallPlan;
use super::planning::plan;
use super::practice_room::{self, Wall};
use super::scheme::WallInput;
use crate::catalogue::works::{GEOMETRY, ISO_129, PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Note, Source, Standing, Step};
use crate::quantity::Units;

pub(crate) struct WallPlanner;

impl Calculator for WallPlanner {
    type Input = WallInput;
    type Output = WallPlan;
    const CARD: Card = Card {
        id: "wall-plan",
        title: "Wall plan",
        question: "Where does every board on this wall go, and what do I cut?",
        step: 4,
        search: &["layout", "elevation", "cut list", "survey", "wall", "boards and rails"],
        headline: &["/layouts/0/mean_bay", "/layouts/0/boards", "/layouts/0/spread"],
        list: Some("/layouts/0/cut_list"),
        cautions: &["hidden-services", "live-box"],
        sources: &[
            Source::new(GEOMETRY, "running places as exact fractions, rounded once for the tape", Standing::Derived),
            Source::new(ISO_129, "running dimensions from one origin", Standing::FromMemory),
            Source::new(
                PRACTICE,
                "boards at corners and openings first; each board cut to its own length",
                Standing::CommonPractice,
            ),
            Source::new(THIS_BOOK, "leeway at plates, least neck, clearances, sticks", Standing::HouseDefault),
        ],
    };
    const HEAVY: bool = true;

    fn example(units: Units) -> Example {
        let mark = if units == Units::Imperial { "201 1/2 in" } else { "5117 mm" };
        Example {
            input: practice_room::input(Wall::Windows, units),
            expects: vec![
                ("/result/layouts/0/boards", json!(14)),
                ("/result/layouts/0/marks/0/marks/13/left/tape", json!(mark)),
            ],
            checked_against: "the practice room's wall B worked by hand: runs 29, 42 1/2, 30 3/8, 59 1/2, 42 1/8 in take 1, 2, 1, 3, 2 boards; the last moves 3/8 in (10 mm) for the switch",
        }
    }

    fn compute(input: &WallInput) -> Result<Answer<WallPlan>, Vec<Fault>> {
        let plan = plan(input)?;
        let mut working = Vec::new();
        let mut notes = plan.notes.clone();
        if let Some(layout) = plan.layouts.first() {
            working.extend(super::working::bays(layout, input));
            let mut score = Step::new("score of the first layout, less is better");
            let mut terms = Vec::new();
            for (index, term) in layout.score.terms.iter().enumerate() {
                let n = index + 1;
                terms.push(format!("w{n} * m{n}"));
                score = score.given(format!("m{n}"), term.name.in_units(Units::Metric), term.measure).given(
                    format!("w{n}"),
                    "its weight",
                    term.weight,
                );
            }
            if !terms.is_empty() {
                working.push(score.by(terms.join(" + ")).gives("S", "score", layout.score.total));
            }
            let marks = layout.marks.iter().flat_map(|line| super::working::marks(line, layout, input));
            working.extend(marks);
            working.extend(super::working::offsets(layout, input));
            working.extend(super::working::lengths(layout));
            working.push(super::working::nails(layout));
            working.extend(super::job::working(layout, &input.shop, input.scheme.tape.units()));
            if layout.conflicts.iter().any(|conflict| conflict.severity == super::plan::Severity::Settle) {
                notes.push(Note::hold(
                    "Some findings must be settled before anything is cut; each is named with what can be done.",
                ));
            }
        }
        if working.is_empty() {
            working.push(Step::new("no run is left to be shared out").gives("n", "layouts", plan.layouts.len()));
        }
        Ok(Answer { result: plan, working, notes })
    }
}
