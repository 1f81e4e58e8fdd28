//! An exercise: a question with fresh numbers, and what came of an attempt.
//!
//! Numbers, right answers and the names of mistakes come from `calculators::practice`.

use calculators::catalogue::{Entry, entry};
use calculators::practice::{AnswerFault, Exercise, Marked, drawn, exercise};
use calculators::quantity::Units;
use serde::Serialize;

use crate::{Face, figure, panel};

/// An attempt at an exercise, as it was typed, and what came of it.
#[derive(Clone, Copy, Debug)]
pub struct Attempt<'a> {
    /// What was typed.
    pub said: &'a str,
    /// Whether it is right, or why it cannot be read.
    pub outcome: Result<&'a Marked, &'a AnswerFault>,
}

#[derive(Serialize)]
struct ExerciseView<'a> {
    /// On a page of its own, not in a chapter.
    page: bool,
    id: &'static str,
    title: &'static str,
    asks: &'static str,
    seed: String,
    next: String,
    units: &'static str,
    given: String,
    said: &'a str,
    fault: Option<String>,
    verdict: Option<Verdict>,
    example: &'static str,
    place: &'a str,
}

/// Where an exercise is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Printed {
    /// On a page of its own.
    Page,
    /// In a chapter.
    Chapter,
}

#[derive(Serialize)]
struct Verdict {
    right: bool,
    mistake: Option<String>,
    expected: String,
    panel: String,
}

/// Seed of the numbers that a chapter prints; a script asks for fresh ones, and so does the link beside them.
const PRINTED_SEED: u64 = 17;

impl Face {
    /// A question with the numbers of a seed as a chapter holds it, for a script that puts it in the place of the one in a chapter.
    pub fn practice_part(
        &self,
        exercise: &'static Exercise,
        entry: &Entry,
        seeds: (u64, u64),
        attempt: Option<Attempt<'_>>,
        units: Units,
    ) -> String {
        self.exercise(exercise, entry, seeds, attempt, (units, Printed::Chapter))
    }

    /// The exercise as a chapter holds it; nothing for a calculator that has none.
    pub fn exercise_in_chapter(&self, id: &str, units: Units) -> String {
        let found = exercise(id).zip(entry(id));
        found.map_or_else(String::new, |(exercise, entry)| {
            self.practice_part(exercise, entry, (PRINTED_SEED, PRINTED_SEED + 1), None, units)
        })
    }

    /// A question with the numbers of a seed, the next seed, and the attempt at it.
    pub fn exercise(
        &self,
        exercise: &'static Exercise,
        entry: &Entry,
        (seed, next): (u64, u64),
        attempt: Option<Attempt<'_>>,
        (units, printed): (Units, Printed),
    ) -> String {
        let card = entry.card();
        let input = drawn(exercise, entry, seed, units);
        let read = entry.read(&input, units);
        let verdict = attempt.and_then(|attempt| attempt.outcome.ok()).map(|marked| Verdict {
            right: marked.right,
            mistake: marked.mistake.map(figure::in_sentence),
            expected: figure::set(marked.expected.clone(), units),
            panel: self.panel_html(entry, &marked.answer, units),
        });
        let view = ExerciseView {
            page: printed == Printed::Page,
            id: card.id,
            title: card.title,
            asks: exercise.asks,
            seed: seed.to_string(),
            next: next.to_string(),
            units: units.word(),
            given: read.map(|input| panel::given(&self.theme, entry, &input, units)).unwrap_or_default(),
            said: attempt.map_or("", |attempt| attempt.said),
            fault: attempt
                .and_then(|attempt| attempt.outcome.err())
                .map(|fault| figure::in_sentence(&fault.to_string())),
            verdict,
            example: match units {
                Units::Imperial => "As you would write it: 12 5/16, 4' 3 1/2\", 45.5, 1250.40.",
                Units::Metric => "As you would write it: 313.5, 2.4 m, 45.5, 1250.40.",
            },
            place: self.place_of(card.id).unwrap_or("index.html"),
        };
        self.theme.fill("exercise.html", &view)
    }
}
