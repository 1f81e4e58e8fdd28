//! The story pole: one stick with every height on it, in order.

use serde_json::json;

use super::survey::Height;
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Reading, Tape, Units};

/// Two marks nearer than this are easily taken for each other: 1/4 in. A default of this book.
const CLOSE: Length = Length::sixty_fourths(16);

pub(crate) struct StoryPole;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Every height of one floor level, above its highest point.
    #[field("Heights", size(1..=40))]
    heights: Vec<Named>,
    /// Left standing above the highest mark.
    #[field("Over the top")]
    over: super::survey::Small,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// One height and its name.
#[derive(Clone, Input)]
pub(crate) struct Named {
    /// What lies there.
    #[field("What", size(1..=40))]
    what: String,
    /// Above the highest point of the floor.
    #[field("Height")]
    height: Height,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// What the stick is cut to.
    #[field("Pole")]
    length: Reading,
    /// From the foot up.
    #[field("Marks")]
    marks: Vec<Mark>,
}

/// One mark on the pole.
#[derive(Output)]
pub(crate) struct Mark {
    /// What lies there.
    #[field("What")]
    what: String,
    /// From the foot of the pole.
    #[field("Mark")]
    mark: Reading,
    /// Up from the mark below it.
    #[field("From the last")]
    step: Length,
}

impl Calculator for StoryPole {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "story-pole",
        title: "Story pole",
        question: "One stick with every height: what goes on it?",
        step: 8,
        search: &["story pole", "rod", "heights", "marks", "set out"],
        headline: &["/length"],
        list: Some("/marks"),
        cautions: &[],
        sources: &[Source::new(
            PRACTICE,
            "one pole for each floor level, marked from the datum",
            Standing::CommonPractice,
        )],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({
                    "heights": [
                        { "what": "datum", "height": "40 in" },
                        { "what": "top of base", "height": "5 1/2 in" },
                        { "what": "underside of apron", "height": "30 in" },
                        { "what": "sill rail, bottom", "height": "26 1/2 in" },
                        { "what": "top rail, bottom", "height": "58 1/2 in" },
                        { "what": "top rail, top", "height": "62 in" }
                    ],
                    "over": "2 in", "tape": "1/16 in"
                }),
                expects: vec![
                    ("/result/length/tape", json!("64 in")),
                    ("/result/marks/0/mark/tape", json!("5 1/2 in")),
                    ("/result/marks/1/mark/tape", json!("26 1/2 in")),
                    ("/result/marks/4/what", json!("top rail, bottom")),
                ],
                checked_against: "by hand: in order 5 1/2, 26 1/2, 30, 40, 58 1/2, 62; 62 + 2",
            },
            Units::Metric => Example {
                input: json!({
                    "heights": [
                        { "what": "datum", "height": "1016 mm" },
                        { "what": "top of base", "height": "140 mm" },
                        { "what": "top rail, bottom", "height": "1485 mm" },
                        { "what": "top rail, top", "height": "1575 mm" }
                    ],
                    "over": "50 mm", "tape": "1 mm"
                }),
                expects: vec![
                    ("/result/length/tape", json!("1625 mm")),
                    ("/result/marks/2/step/tape", json!("469 mm")),
                ],
                checked_against: "by hand: 1575 + 50; 1485 - 1016",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let mut faults = Vec::new();
        for (n, named) in input.heights.iter().enumerate() {
            if named.height.get().is_negative() {
                let why = "lies below the foot of the pole; give heights above the highest point of the floor";
                let pointer = format!("/heights/{n}/height");
                faults.push(Fault::new(pointer, Words::of(named.height), why, Words::of(Length::ZERO)));
            }
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let mut heights = input.heights.clone();
        heights.sort_by_key(|named| named.height);
        let mut below = Length::ZERO;
        let mut marks = Vec::new();
        let mut notes = vec![Note::remark("Stand the pole on the datum mark, not on the floor; mark both ends UP.")];
        for named in heights {
            let height = named.height.get();
            if height - below < CLOSE && !marks.is_empty() {
                notes.push(Note::check(
                    Words::new("{} lies {} above the mark below it: write its name beside it.")
                        .with(named.what.clone())
                        .with(height - below),
                ));
            }
            marks.push(Mark { what: named.what, mark: input.tape.mark(height.exact()), step: height - below });
            below = height;
        }
        let length = input.tape.mark((below + input.over.get()).exact());
        let working = vec![
            Step::new("length of the pole")
                .by("t + o")
                .given("t", "highest mark", below)
                .given("o", "over the top", input.over)
                .gives("l", "pole", length.exact),
        ];
        Ok(Answer { result: Output { length, marks }, working, notes })
    }
}
