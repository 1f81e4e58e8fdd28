//! Nails by their penny number, and the old rule of three times the thickness, as a question of its own.

use serde_json::json;

use super::nail_sizes::{self, BOX, COMMON, FINISHING, NailSize, length_by_rule, of_penny, three_times};
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Count, Length, Units, Within};

pub(crate) struct NailBySize;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// The 8 in 8d, from 2 to 60.
    #[field("Penny number", default)]
    penny: Option<Count<2, 60>>,
    /// Thickness of the board that the nail holds, for the old rule.
    #[field("Thickness held", default)]
    held: Option<Within<1_000, 100_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// As the standard lists it.
    #[field("Length")]
    length: Option<Length>,
    /// Half an inch and a quarter of an inch for each penny: from 2d to 10d only.
    #[field("Length by the rule")]
    by_rule: Option<Length>,
    /// Shank of a common nail.
    #[field("Common nail, shank")]
    common: Option<Length>,
    /// Shank of a box nail.
    #[field("Box nail, shank")]
    box_nail: Option<Length>,
    /// Shank of a finishing nail.
    #[field("Finishing nail, shank")]
    finishing: Option<Length>,
    /// At least three times as long as what it holds is thick.
    #[field("Shortest nail by the old rule")]
    three_times: Option<Length>,
    /// The first common nail that is so long.
    #[field("That is, in penny")]
    penny_for_it: Option<u32>,
}

impl Calculator for NailBySize {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "nail-size",
        title: "Nail sizes by penny",
        question: "How long is an 8d nail, and how long a nail by the old rule?",
        step: 10,
        search: &["penny", "8d", "pennyweight", "finish nail size", "shank", "three times", "8d nail", "what is 8d"],
        headline: &["/length", "/three_times"],
        list: None,
        cautions: &["nail-gun", "hidden-services"],
        sources: &[
            nail_sizes::SOURCE,
            Source::new(
                PRACTICE,
                "1/2 in and d/4 from 2d to 10d; a nail three times as long as what it holds is thick",
                Standing::CommonPractice,
            ),
        ],
    };

    fn example(units: Units) -> Example {
        let (held, nail) = if units == Units::Metric { ("18 mm", "54 mm") } else { ("3/4 in", "2 1/4 in") };
        let length = if units == Units::Metric { "63.5 mm" } else { "2 1/2 in" };
        Example {
            input: json!({ "penny": 8, "held": held }),
            expects: vec![("/result/length/tape", json!(length)), ("/result/three_times/tape", json!(nail))],
            checked_against: "ASTM F1667, from memory: 8d is 2 1/2 in; 1/2 + 8/4 by the rule; three times the board by hand",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        if input.penny.is_none() && input.held.is_none() {
            let why = "give a penny number, a thickness, or both";
            return Err(vec![Fault::new("/penny", "nothing", why, 8)]);
        }
        let penny = input.penny.map(Count::get);
        let of = |list: &[NailSize]| penny.and_then(|penny| of_penny(list, penny));
        let (common, box_nail, finishing) = (of(&COMMON), of(&BOX), of(&FINISHING));
        let length = [common, box_nail, finishing].into_iter().flatten().next().map(NailSize::length);
        if let (Some(penny), None) = (penny, length) {
            let why = "no nail of this number is listed; known are 2 to 10, 12, 16, 20, 30, 40, 50 and 60";
            return Err(vec![Fault::new("/penny", penny.to_string(), why, 8)]);
        }
        let by_rule = penny.and_then(length_by_rule);
        let long = input.held.map(|held| three_times(held.get()));
        let penny_for_it =
            long.and_then(|long| COMMON.iter().find(|nail| long <= nail.length())).map(|nail| nail.penny);
        let mut working = Vec::new();
        if let (Some(penny), Some(by_rule)) = (penny, by_rule) {
            working.push(
                Step::new("length by the rule, in millimetres of 25.4 to the inch")
                    .by("25.4 * (1 / 2 + d / 4)")
                    .given("d", "penny number", penny)
                    .gives("l", "length", by_rule),
            );
        }
        if let (Some(held), Some(long)) = (input.held, long) {
            working.push(Step::new("three times what is held").by("3 * t").given("t", "thickness held", held).gives(
                "n",
                "shortest nail",
                long,
            ));
        }
        let mut notes = Vec::new();
        if by_rule.is_none() && penny.is_some() {
            notes.push(Note::check("The rule of half an inch and d/4 ends at 10d; the length is the listed one."));
        }
        if let Some(long) = long {
            notes.push(Note::hold(
                Words::new("{} is the old rule for wood on wood. Behind plasterboard cables may run nearer than that: a nail stays inside its window, whatever the old rule says.").with(long),
            ));
        }
        let result = Output {
            length,
            by_rule,
            common: common.map(NailSize::shank),
            box_nail: box_nail.map(NailSize::shank),
            finishing: finishing.map(NailSize::shank),
            three_times: long,
            penny_for_it,
        };
        Ok(Answer { result, working, notes })
    }
}
