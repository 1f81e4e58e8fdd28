//! The exercises, by part of the trade. Mistakes are common practice, no source.
//!
//! An exercise is for what an apprentice works out with a pencil and a pocket calculator. The calculators of [`WITHOUT`] have
//! none, and the list says why.

mod air;
mod cutting;
mod finish;
mod fixing;
mod money;
mod setting_out;
mod survey;
mod timber;

use std::sync::LazyLock;

use super::exercise::{Draw, Exercise, Mistake, Range};
use crate::catalogue::CATALOGUE;

/// All exercises, in the order of the trade.
pub static EXERCISES: LazyLock<Vec<Exercise>> = LazyLock::new(|| {
    let mut all = [
        survey::EXERCISES,
        setting_out::EXERCISES,
        money::EXERCISES,
        timber::EXERCISES,
        cutting::EXERCISES,
        fixing::EXERCISES,
        finish::EXERCISES,
        air::EXERCISES,
    ]
    .concat();
    all.sort_by_key(|exercise| CATALOGUE.iter().position(|entry| entry.card().id == exercise.calculator));
    all
});

/// Calculators without an exercise, and why.
pub const WITHOUT: &[(&str, &str)] = &[
    ("read-a-length", "a page prints every length in the reader's own units, which leaves nothing to turn"),
    ("wall-plan", "a whole wall is no sum for a pencil"),
    ("bays-round-openings", "it weighs every count of boards on every run; one run is practised as equal bays"),
    ("colour-values", "it needs powers with broken exponents, channel by channel"),
    ("programme", "it searches a calendar; the sums are practised as the critical path"),
    ("tins", "it weighs every set of tins by price"),
    ("equilibrium-moisture", "it is read off the table of moisture"),
    ("story-pole", "a list of heights is put in order, and one length added"),
    ("base-and-board", "one length less another; what is decided from it is no sum"),
    ("short-rails", "one length less another, bay by bay"),
    ("frame-mitre", "it needs an arc tangent of two widths; equal halves are practised as the saw angle"),
    ("cutting-plan", "it weighs every way of cutting; one stick is practised as pieces per stick"),
    ("stud-hits", "it is looked up board by board, not worked out"),
    ("nail-size", "it is looked up by its number"),
    ("box-fill", "it is the electrician's sum"),
    ("sanding-dust", "its figures are measured, and it informs a judgement that is not ours"),
    ("dust-build-up", "its figures are measured, and it informs a judgement that is not ours"),
    ("flow-cup", "it is read off the cup's own table"),
    ("thinning", "it needs logarithms of two trials; the way is a third trial"),
    ("solvent-content", "it is read off the data sheet"),
    ("solvent-vapour", "fire and health are the hygienist's sums"),
    ("vapour-dilution", "fire and health are the hygienist's sums"),
    ("room-moisture", "it needs the table of saturated air"),
    ("air-state", "it is read off instruments and tables"),
    ("spray-climate", "the dew point is read off its table"),
    ("recoat-time", "the stretch for the air is read off its table"),
    ("tape-pull", "its answer is a time of day"),
    ("overspray", "its answer is a way of working"),
    ("gloss-level", "it is looked up between limits"),
    ("colour-difference", "it is an instrument's sum"),
    ("site-waste", "its answer is a list of ways"),
];

/// The exercise of a calculator.
pub fn exercise(calculator: &str) -> Option<&'static Exercise> {
    EXERCISES.iter().find(|exercise| exercise.calculator == calculator)
}

const fn draw(field: &'static str, imperial: Range, metric: Range) -> Draw {
    Draw { field, imperial, metric }
}

/// Eighths of an inch, from and to in whole inches.
const fn eighths(from: i64, to: i64) -> Range {
    Range { from: from * 8, to: to * 8, parts: 8, unit: "in" }
}

/// Sixteenths of an inch, from and to in sixteenths.
const fn sixteenths(from: i64, to: i64) -> Range {
    Range { from, to, parts: 16, unit: "in" }
}

const fn mm(from: i64, to: i64) -> Range {
    Range { from, to, parts: 1, unit: "mm" }
}

const fn count(from: i64, to: i64) -> Range {
    Range { from, to, parts: 1, unit: "" }
}

const fn money(from: i64, to: i64) -> Range {
    Range { from: from * 100, to: to * 100, parts: 100, unit: "¤" }
}

const fn whole(from: i64, to: i64, unit: &'static str) -> Range {
    Range { from, to, parts: 1, unit }
}

/// The same in both unit systems.
const fn same(field: &'static str, range: Range) -> Draw {
    Draw { field, imperial: range, metric: range }
}

const fn mistake(step: usize, formula: &'static str, words: &'static str) -> Mistake {
    Mistake { step, formula, words }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_calculator_has_one_exercise_or_one_reason_for_none() {
        for entry in CATALOGUE.iter() {
            let id = entry.card().id;
            let exercises = EXERCISES.iter().filter(|exercise| exercise.calculator == id).count();
            let reasons = WITHOUT.iter().filter(|(without, _)| *without == id).count();
            assert_eq!(exercises + reasons, 1, "{id}");
        }
        assert_eq!(EXERCISES.len() + WITHOUT.len(), CATALOGUE.len(), "an exercise or a reason names no calculator");
    }

    #[test]
    fn every_exercise_asks_a_question_and_knows_two_mistakes_by_different_words() {
        for exercise in EXERCISES.iter() {
            let id = exercise.calculator;
            assert!(exercise.asks.ends_with('?') || exercise.asks.contains("? "), "{id}: {}", exercise.asks);
            let mut words: Vec<_> = exercise.mistakes.iter().map(|mistake| mistake.words).collect();
            words.sort_unstable();
            words.dedup();
            assert!(words.len() >= 2, "{id} knows {} mistakes", words.len());
            assert!(words.iter().all(|words| words.ends_with('.')), "{id}: a mistake is told in sentences");
        }
    }
}
