//! Practice: a question with fresh numbers and what came of an attempt, on a page of its own or in a chapter, and the list of all.
//!
//! Numbers, right answers and the names of mistakes come from `calculators::practice`. What has been learnt is kept by the page's
//! own script on the device; nothing about a person is sent anywhere.

use calculators::catalogue::{Entry, entry};
use calculators::practice::{AnswerFault, EXERCISES, Exercise, Marked, WITHOUT, drawn, exercise};
use calculators::quantity::Units;
use serde::Serialize;

use crate::find::Findable;
use crate::handbook::Handbook;
use crate::page::Page;
use crate::render::Frame;
use crate::{figure, panel};

/// An attempt at an exercise, as it was typed, and what came of it.
#[derive(Clone, Copy, Debug)]
pub struct Attempt<'a> {
    /// What was typed.
    pub said: &'a str,
    /// Whether it is right, or why it cannot be read.
    pub outcome: Result<&'a Marked, &'a AnswerFault>,
}

#[derive(Serialize)]
struct PracticeView<'a> {
    frame: &'a Frame,
    exercise: &'a str,
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
#[derive(Clone, Copy, PartialEq)]
enum Printed {
    Page,
    Chapter,
}

#[derive(Serialize)]
struct Verdict {
    right: bool,
    mistake: Option<String>,
    expected: String,
    panel: String,
}

#[derive(Serialize)]
struct ListView<'a> {
    frame: &'a Frame,
    steps: Vec<StepOf>,
    count: usize,
}

#[derive(Serialize)]
struct StepOf {
    number: u8,
    name: String,
    exercises: Vec<Line>,
}

#[derive(Serialize)]
struct Line {
    id: &'static str,
    title: &'static str,
    asks: &'static str,
}

/// Seed of the numbers that a chapter prints; a script asks for fresh ones, and so does the link beside them.
const PRINTED_SEED: u64 = 17;

/// The list of all exercises, as a search finds it.
pub(crate) fn findable() -> Findable {
    Findable {
        path: "practice".to_owned(),
        title: "Practice: the trade’s questions with fresh numbers".to_owned(),
        place: format!("{} exercises", EXERCISES.len()),
        also: "learn apprentice exercise quiz".to_owned(),
        text: "Pencil, paper and a pocket calculator; the likely mistake is named, and the working shown.".to_owned(),
    }
}

/// Why a chapter cannot hold the exercise of this calculator; nothing where it can.
pub(crate) fn without(id: &str) -> Option<String> {
    if exercise(id).is_some() {
        return None;
    }
    if entry(id).is_none() {
        return Some(format!("there is no calculator {id}"));
    }
    let why = WITHOUT.iter().find(|(without, _)| *without == id).map_or("none is written yet", |(_, why)| why);
    Some(format!("the calculator {id} has no exercise: {why}"))
}

impl Handbook {
    /// A question with the numbers of a seed, and the attempt at it.
    ///
    /// `next` is the seed of the question that follows.
    pub fn practice_page(
        &self,
        exercise: &'static Exercise,
        entry: &Entry,
        (seed, next): (u64, u64),
        attempt: Option<Attempt<'_>>,
        units: Units,
    ) -> Page {
        let card = entry.card();
        let path = format!("practice/{}", card.id);
        let mut frame = self.frame("Practice", Some(card.step), &format!("/{path}?seed={seed}"), units);
        frame.root = "/";
        frame.scripts.push("practice.js");
        let printed = self.exercise(exercise, entry, (seed, next), attempt, (units, Printed::Page));
        Page::new(path, &self.theme.fill("practice.html", &PracticeView { frame: &frame, exercise: &printed }))
    }

    /// The same without a page round it, for a script that puts it in the place of the one in a chapter.
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
    pub(crate) fn exercise_in_chapter(&self, id: &str, units: Units) -> String {
        let found = exercise(id).zip(entry(id));
        found.map_or_else(String::new, |(exercise, entry)| {
            self.practice_part(exercise, entry, (PRINTED_SEED, PRINTED_SEED + 1), None, units)
        })
    }

    fn exercise(
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

    /// All exercises by step, for the page's script to say what has been learnt.
    pub fn practice_list(&self, units: Units) -> Page {
        let mut frame = self.frame("Practice", None, "/practice", units);
        frame.root = "/";
        frame.scripts.push("practice.js");
        let steps = self.marks.iter().filter_map(|mark| {
            let of_step = EXERCISES.iter().filter_map(|exercise| Some((exercise, entry(exercise.calculator)?.card())));
            let exercises: Vec<Line> = of_step
                .filter(|(_, card)| card.step == mark.number)
                .map(|(exercise, card)| Line { id: card.id, title: card.title, asks: exercise.asks })
                .collect();
            (!exercises.is_empty()).then(|| StepOf { number: mark.number, name: mark.name.clone(), exercises })
        });
        let view = ListView { steps: steps.collect(), count: EXERCISES.len(), frame: &frame };
        Page::new("practice", &self.theme.fill("practice-list.html", &view))
    }
}
