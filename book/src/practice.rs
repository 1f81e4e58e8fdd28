//! Practice pages: a question with fresh numbers, what came of an attempt, and the list of all exercises.
//!
//! Numbers, right answers and the names of mistakes come from `calculators::practice`. What has been learnt is kept by the page's
//! own script on the device; nothing about a person is sent anywhere.

use calculators::catalogue::{Entry, entry};
use calculators::practice::{AnswerFault, EXERCISES, Exercise, Marked, drawn};
use calculators::quantity::{Units, print};
use serde::Serialize;

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
        let input = drawn(exercise, entry, seed, units);
        let read = entry.read(&input, units).unwrap_or(input);
        let verdict = attempt.and_then(|attempt| attempt.outcome.ok()).map(|marked| Verdict {
            right: marked.right,
            mistake: marked.mistake.map(figure::in_sentence),
            expected: figure::set(&print::printed_text(&marked.expected)),
            panel: self.panel_html(entry, &marked.answer, units),
        });
        let view = PracticeView {
            id: card.id,
            title: card.title,
            asks: exercise.asks,
            seed: seed.to_string(),
            next: next.to_string(),
            units: units.word(),
            given: panel::given(&self.theme, entry, read, units),
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
            frame: &frame,
        };
        Page::new(path, &self.theme.fill("practice.html", &view))
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
