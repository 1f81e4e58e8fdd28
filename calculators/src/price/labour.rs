//! Hours by task: how many, how long each, how hard the place makes it. Never by wall area.

use serde_json::json;

use crate::catalogue::works::THIS_BOOK;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step};
use crate::quantity::{Amount, Count, Physical, Units, kind};

/// House rates until a shop has its own: task, what is counted, hours for one.
pub const HOUSE_RATES: [(&str, &str, f64); 9] = [
    ("set out", "room", 1.5),
    ("fix rails", "rail", 0.4),
    ("fix boards", "board", 0.3),
    ("fix corner boards", "corner board", 0.5),
    ("cut mitres", "mitre", 0.2),
    ("work round plates", "plate", 0.4),
    ("fill", "hole", 0.5 / 60.0),
    ("caulk", "metre of edge", 1.0 / 30.48),
    ("mask", "opening", 0.6),
];

/// One line of work.
#[derive(Clone, Debug, Input)]
pub(crate) struct Line {
    /// What is done.
    #[field("Task", size(1..=40))]
    task: String,
    /// Boards, rails, holes, metres of edge.
    #[field("How many")]
    count: Physical<kind::Number, 0, 100_000_000>,
    /// As your own jobs have shown.
    #[field("Hours for one")]
    each: Physical<kind::Hours, 0, 200_000>,
    /// 1 is a plain room; a stair about 1.4, a textured wall about 1.3.
    #[field("Difficulty", usual = ["0.8", "2"])]
    difficulty: Physical<kind::Number, 100, 5_000>,
}

pub(crate) struct Labour;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Every task of the job.
    #[field("Work", size(1..=40))]
    lines: Vec<Line>,
    /// Pairs of hands.
    #[field("Crew")]
    crew: Count<1, 12>,
    /// Working hours of a day.
    #[field("Hours in a day")]
    day: Physical<kind::Hours, 4_000, 12_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Of one pair of hands.
    #[field("Hours")]
    hours: Amount<kind::Hours>,
    /// With the whole crew at it, waits not counted.
    #[field("Crew days")]
    days: Amount<kind::Days>,
    /// Task by task.
    #[field("By task")]
    tasks: Vec<Row>,
}

/// One task.
#[derive(Output)]
pub(crate) struct Row {
    /// What is done.
    #[field("Task")]
    task: String,
    /// Of one pair of hands.
    #[field("Hours")]
    hours: Amount<kind::Hours>,
}

impl Calculator for Labour {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "labour-hours",
        title: "Labour",
        question: "How many hours is it?",
        step: 5,
        search: &["hours", "estimate", "rates", "crew", "time", "day rate", "work", "long"],
        headline: &["/hours", "/days"],
        list: Some("/tasks"),
        cautions: &[],
        sources: &[Source::new(THIS_BOOK, "rates by task, to be replaced by a shop's own", Standing::HouseDefault)],
    };

    fn example(_: Units) -> Example {
        let line = |task: &str, count: f64, each: &str, difficulty: f64| json!({ "task": task, "count": count, "each": each, "difficulty": difficulty });
        Example {
            input: json!({ "lines": [line("set out", 1.0, "1.5 h", 1.0), line("fix boards", 24.0, "0.3 h", 1.0), line("fix boards up the stair", 9.0, "0.3 h", 1.4), line("fill", 300.0, "0.5 min", 1.0)], "crew": 2, "day": "8 h" }),
            expects: vec![("/result/hours/text", json!("14.98 h")), ("/result/tasks/2/hours/text", json!("3.78 h"))],
            checked_against: "by hand: 1.5 + 7.2 + 3.78 + 2.5",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let of = Amount::<kind::Hours>::of;
        let mut working = Vec::new();
        let mut tasks = Vec::new();
        let mut total = 0.0;
        for line in &input.lines {
            let hours = line.count.get() * line.each.get() * line.difficulty.get();
            total += hours;
            working.push(
                Step::new(line.task.clone())
                    .by("n * t * d")
                    .given("n", "how many", line.count)
                    .given("t", "hours for one", line.each)
                    .given("d", "difficulty", line.difficulty)
                    .gives("h", "hours", of(hours)),
            );
            tasks.push(Row { task: line.task.clone(), hours: of(hours) });
        }
        let days = total / f64::from(input.crew.get()) / input.day.get();
        working.push(
            Step::new("crew days")
                .by("H / c / d")
                .given("H", "hours", of(total))
                .given("c", "crew", input.crew.get())
                .given("d", "hours in a day", input.day)
                .gives("D", "crew days", Amount::<kind::Days>::of(days)),
        );
        let notes = vec![Note::remark("Drying is no labour: it stands in the programme, and runs at night too.")];
        Ok(Answer { result: Output { hours: of(total), days: Amount::of(days), tasks }, working, notes })
    }
}
