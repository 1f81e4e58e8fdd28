//! The critical path on a clock without nights: for what must follow what, before working hours are laid over it.

use serde_json::json;

use super::network::{self, Times};
use crate::catalogue::works::NETWORK_TEXTBOOKS;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step};
use crate::quantity::{Amount, Physical, Units, kind};

/// What a task waits for.
#[derive(Clone, Debug, Input)]
pub(crate) struct After {
    /// Name of the earlier task.
    #[field("After", size(1..=40))]
    task: String,
    /// On the clock, day and night: drying, curing.
    #[field("Wait")]
    wait: Option<Physical<kind::Hours, 0, 1_000_000>>,
}

/// One task.
#[derive(Clone, Debug, Input)]
pub(crate) struct Task {
    /// Its name.
    #[field("Task", size(1..=40))]
    name: String,
    /// Hands on.
    #[field("Takes")]
    hours: Physical<kind::Hours, 0, 1_000_000>,
    /// What comes before it.
    #[field("Comes after", default, size(..=12))]
    after: Vec<After>,
}

pub(crate) struct CriticalPath;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// In any order.
    #[field("Tasks", size(1..=60))]
    tasks: Vec<Task>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// From the first start to the last finish, on the clock.
    #[field("Takes in all")]
    duration: Amount<kind::Hours>,
    /// Tasks that move the end when they move.
    #[field("Decided by")]
    critical: Vec<String>,
    /// Every task.
    #[field("Tasks")]
    tasks: Vec<Row>,
}

/// One task.
#[derive(Output)]
pub(crate) struct Row {
    /// Its name.
    #[field("Task")]
    task: String,
    /// Hours from the start.
    #[field("Earliest start")]
    earliest_start: Amount<kind::Hours>,
    /// Hours from the start.
    #[field("Earliest finish")]
    earliest_finish: Amount<kind::Hours>,
    /// Hours from the start.
    #[field("Latest start")]
    latest_start: Amount<kind::Hours>,
    /// Hours from the start.
    #[field("Latest finish")]
    latest_finish: Amount<kind::Hours>,
    /// It may slip by this.
    #[field("Float")]
    float: Amount<kind::Hours>,
}

/// Hours as whole minutes.
pub(super) fn minutes(hours: f64) -> i64 {
    libm::round(hours * 60.0) as i64
}

pub(super) fn hours(minutes: i64) -> Amount<kind::Hours> {
    Amount::of(minutes as f64 / 60.0)
}

impl Calculator for CriticalPath {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "critical-path",
        title: "Critical path",
        question: "Which tasks decide when it is done?",
        step: 5,
        search: &["network", "float", "sequence", "programme", "schedule"],
        headline: &["/duration"],
        list: Some("/tasks"),
        cautions: &[],
        sources: &[Source::new(
            NETWORK_TEXTBOOKS,
            "forward and backward pass; finish-to-start ties with a wait",
            Standing::FromMemory,
        )],
    };

    fn example(_: Units) -> Example {
        let task = |name: &str, hours: f64, after: &[(&str, f64)]| {
            let after: Vec<_> = after.iter().map(|(task, wait)| json!({ "task": task, "wait": wait })).collect();
            json!({ "name": name, "hours": hours, "after": after })
        };
        Example {
            input: json!({ "tasks": [
                task("caulk and fill", 3.0, &[]), task("sand", 2.0, &[("caulk and fill", 2.0)]), task("mask", 1.5, &[]),
                task("first coat", 1.0, &[("sand", 0.0), ("mask", 0.0)]), task("second coat", 1.0, &[("first coat", 4.0)]), task("pull tape", 0.5, &[("second coat", 1.0)]),
            ] }),
            expects: vec![("/result/duration/text", json!("14.5 h")), ("/result/tasks/2/float/text", json!("5.5 h"))],
            checked_against: "added up by hand: 3 + 2 + 2 + 1 + 4 + 1 + 1 + 0.5; masking must end by 7",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let named: Vec<(&str, Vec<(&str, i64)>)> = input
            .tasks
            .iter()
            .map(|task| {
                let after = task
                    .after
                    .iter()
                    .map(|after| (after.task.as_str(), after.wait.map_or(0, |wait| minutes(wait.get()))));
                (task.name.as_str(), after.collect())
            })
            .collect();
        let (ties, order) = network::tied(
            &named,
            |task, after| format!("/tasks/{task}/after/{after}/task"),
            |task| format!("/tasks/{task}/name"),
        )?;
        let durations: Vec<i64> = input.tasks.iter().map(|task| minutes(task.hours.get())).collect();
        let times = network::times(&durations, &ties, &order);
        let end = times.iter().map(|times| times.earliest_finish).max().unwrap_or(0);
        let mut working = Vec::new();
        for place in &order {
            let task = &input.tasks[*place];
            let mut step = Step::new(task.name.clone()).given("t", "takes", hours(durations[*place]));
            let mut terms = vec!["0".to_owned()];
            for (index, tie) in ties[*place].iter().enumerate() {
                let n = index + 1;
                terms.push(format!("f{n} + w{n}"));
                step = step
                    .given(
                        format!("f{n}"),
                        format!("{} ends", input.tasks[tie.after].name),
                        hours(times[tie.after].earliest_finish),
                    )
                    .given(format!("w{n}"), "wait", hours(tie.wait));
            }
            working.push(step.by(format!("max({}) + t", terms.join(", "))).gives(
                "F",
                "earliest finish",
                hours(times[*place].earliest_finish),
            ));
        }
        let row = |task: &Task, times: &Times| Row {
            task: task.name.clone(),
            earliest_start: hours(times.earliest_start),
            earliest_finish: hours(times.earliest_finish),
            latest_start: hours(times.latest_start),
            latest_finish: hours(times.latest_finish),
            float: hours(times.float()),
        };
        let critical = input
            .tasks
            .iter()
            .zip(&times)
            .filter(|(_, times)| times.float() == 0)
            .map(|(task, _)| task.name.clone())
            .collect();
        let notes = vec![Note::remark("A clock without nights or working hours: the programme lays them over it.")];
        Ok(Answer {
            result: Output {
                duration: hours(end),
                critical,
                tasks: input.tasks.iter().zip(&times).map(|(task, times)| row(task, times)).collect(),
            },
            working,
            notes,
        })
    }
}
