//! Practice: a question with fresh numbers and what came of an attempt, on a page of its own or in a chapter, and the list of all.
//!
//! Numbers, right answers and the names of mistakes come from `calculators::practice`. What has been learnt is kept by the page's
//! own script on the device; nothing about a person is sent anywhere.

use calculators::catalogue::{Entry, entry};
use calculators::practice::{EXERCISES, Exercise, WITHOUT, exercise};
use calculators::quantity::Units;
use face::exercise::{Attempt, Printed};
use serde::Serialize;

use crate::find::Findable;
use crate::handbook::Handbook;
use crate::page::Page;
use crate::render::Frame;

#[derive(Serialize)]
struct PracticeView<'a> {
    frame: &'a Frame,
    exercise: &'a str,
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
