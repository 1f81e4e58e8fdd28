//! The programme: which day each task starts and the job is done.

use serde_json::json;

use super::calendar::{Calendar, Weekday, moment};
use super::critical_path::{hours, minutes};
use super::network;
use super::schedule::{Job, lay};
use crate::catalogue::works::{NETWORK_TEXTBOOKS, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::drying::tape_pull::minutes_of_day;
use crate::quantity::{Amount, Count, Physical, Units, kind};

/// What a task waits for.
#[derive(Clone, Debug, Input)]
pub(crate) struct After {
    /// Name of the earlier task.
    #[field("After", size(1..=40))]
    task: String,
    /// On the clock, day and night: drying, curing.
    #[field("Wait")]
    wait: Option<Physical<kind::Hours, 0, 1_000_000>>,
    /// Latest start after it: pulling tape has a window.
    #[field("At latest")]
    at_latest: Option<Physical<kind::Hours, 100, 1_000_000>>,
}

/// One task.
#[derive(Clone, Debug, Input)]
pub(crate) struct Task {
    /// Its name.
    #[field("Task", size(1..=40))]
    name: String,
    /// Hours on the clock with the whole crew at it.
    #[field("Takes")]
    hours: Physical<kind::Hours, 0, 400_000>,
    /// A coat is not split by a night.
    #[field("Not split", default)]
    in_one_piece: bool,
    /// Who does it; each crew does one thing at a time. Empty is the first crew.
    #[field("Crew", default, size(..=24))]
    crew: String,
    /// What comes before it.
    #[field("Comes after", default, size(..=12))]
    after: Vec<After>,
}

pub(crate) struct Programme;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// In any order, rooms and crews together.
    #[field("Tasks", size(1..=60))]
    tasks: Vec<Task>,
    /// Of the first day.
    #[field("Starts on a")]
    weekday: Weekday,
    /// In a week, from Monday on.
    #[field("Days worked in a week")]
    days_a_week: Count<1, 7>,
    /// As the clock shows it.
    #[field("Work starts", size(..=5))]
    day_start: String,
    /// As the clock shows it.
    #[field("Work ends", size(..=5))]
    day_end: String,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// The last task's end.
    #[field("Done")]
    done: String,
    /// From the first start, nights and waits in it.
    #[field("Days on the calendar")]
    days: i64,
    /// Hands on, all crews.
    #[field("Working hours")]
    worked: Amount<kind::Hours>,
    /// Tasks that move the end when they move.
    #[field("Decided by")]
    critical: Vec<String>,
    /// Every task, as it starts.
    #[field("Tasks")]
    tasks: Vec<Row>,
}

/// One task.
#[derive(Output)]
pub(crate) struct Row {
    /// Its name.
    #[field("Task")]
    task: String,
    /// Who does it.
    #[field("Crew")]
    crew: String,
    /// Day and clock.
    #[field("Starts")]
    starts: String,
    /// Day and clock.
    #[field("Ends")]
    ends: String,
    /// Working hours that it may slip.
    #[field("May slip")]
    slack: Amount<kind::Hours>,
    /// Minutes from midnight of the first day.
    #[field("Start, in minutes")]
    start_minute: i64,
    /// Minutes from midnight of the first day.
    #[field("End, in minutes")]
    end_minute: i64,
}

impl Calculator for Programme {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "programme",
        title: "Programme",
        question: "Which day do we finish?",
        step: 5,
        search: &["schedule", "calendar", "drying", "overtime", "crew", "finish"],
        headline: &["/done", "/days"],
        list: Some("/tasks"),
        cautions: &[],
        sources: &[
            Source::new(
                NETWORK_TEXTBOOKS,
                "forward and backward pass; finish-to-start ties with a wait",
                Standing::FromMemory,
            ),
            Source::new(PRACTICE, "a coat is not split; drying runs day and night", Standing::CommonPractice),
        ],
    };

    fn example(_: Units) -> Example {
        let after = |task: &str, wait: &str| json!({ "task": task, "wait": wait });
        Example {
            input: json!({
                "tasks": [
                    { "name": "first coat", "hours": "2 h", "in_one_piece": true },
                    { "name": "de-nib", "hours": "1 h", "after": [after("first coat", "4 h")] },
                    { "name": "second coat", "hours": "1.5 h", "in_one_piece": true, "after": [after("de-nib", "0 h"), after("first coat", "4 h")] },
                    { "name": "pull tape", "hours": "0.5 h", "after": [{ "task": "second coat", "wait": "0.5 h", "at_latest": "2 h" }] },
                ],
                "weekday": "thursday", "days_a_week": 5, "day_start": "08:30", "day_end": "16:30",
            }),
            expects: vec![
                ("/result/tasks/1/starts", json!("day 1, 14:30")),
                ("/result/tasks/2/starts", json!("day 2, 08:30")),
                ("/result/done", json!("day 2, 11:00")),
            ],
            checked_against: "by hand: 08:30 + 2 h + 4 h = 14:30; de-nibbed 15:30; 1 h 30 does not fit before 16:30, so next morning; pulled 10:30 to 11:00",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let calendar = calendar(input)?;
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
        let mut faults = Vec::new();
        let mut crews: Vec<&str> = Vec::new();
        let mut jobs = Vec::new();
        for (place, task) in input.tasks.iter().enumerate() {
            let crew = crews.iter().position(|crew| *crew == task.crew).unwrap_or_else(|| {
                crews.push(&task.crew);
                crews.len() - 1
            });
            let length = minutes(task.hours.get());
            if task.in_one_piece && length > calendar.day_length() {
                let why = Words::new("is not split, so it must fit a day of {}").with(hours(calendar.day_length()));
                faults.push(Fault::new(
                    format!("/tasks/{place}/hours"),
                    Words::of(task.hours),
                    why,
                    Words::of(hours(calendar.day_length())),
                ));
            }
            let mut window = None;
            for (index, after) in task.after.iter().enumerate() {
                let Some(latest) = after.at_latest else { continue };
                if after.wait.is_some_and(|wait| wait.get() > latest.get()) {
                    let why = Words::new("must not be sooner than the wait, {}")
                        .with(after.wait.map_or(hours(0), |wait| wait.amount()));
                    faults.push(Fault::new(
                        format!("/tasks/{place}/after/{index}/at_latest"),
                        Words::of(latest),
                        why,
                        "5 h",
                    ));
                }
                window = ties[place].get(index).map(|tie| (tie.after, minutes(latest.get())));
            }
            jobs.push(Job { minutes: length, crew, in_one_piece: task.in_one_piece, window });
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let slots = lay(&jobs, &ties, &order, &calendar);
        let end = slots.iter().map(|slot| slot.finish).max().unwrap_or(0);
        let mut by_start: Vec<usize> = (0..jobs.len()).collect();
        by_start.sort_by_key(|place| (slots[*place].start, slots[*place].finish, *place));
        let mut working = Vec::new();
        let mut notes = Vec::new();
        for place in &by_start {
            let (task, slot) = (&input.tasks[*place], &slots[*place]);
            let mut step = Step::new(task.name.clone());
            for (tie, after) in ties[*place].iter().zip(&task.after) {
                step = step.given("e", format!("{} ends", after.task), moment(slots[tie.after].finish)).given(
                    "w",
                    "wait",
                    hours(tie.wait),
                );
            }
            let why = if task.in_one_piece {
                "in one piece, in working hours, when its crew is free"
            } else {
                "in working hours, when its crew is free"
            };
            working.push(
                step.given("t", "takes", task.hours)
                    .gives("s", "starts", moment(slot.start))
                    .because(Words::new("ends {}; {}").with(moment(slot.finish)).with(why)),
            );
            if let Some(late) = slot.late {
                let words = Words::new(
                    "{} would start {}, {} after its window has closed. Stay longer, coat earlier, or plan to cut the edge.",
                );
                notes.push(Note::hold(words.with(task.name.clone()).with(moment(slot.start)).with(hours(late))));
            }
        }
        working.push(Step::new("done").gives("E", "done", moment(end)).because("the last of them"));
        notes.push(Note::remark(
            "Waits run day and night. With more than one crew this order is a sound one, not a proved best.",
        ));
        let row = |place: &usize| Row {
            task: input.tasks[*place].name.clone(),
            crew: if input.tasks[*place].crew.is_empty() {
                "first".to_owned()
            } else {
                input.tasks[*place].crew.clone()
            },
            starts: moment(slots[*place].start),
            ends: moment(slots[*place].finish),
            slack: hours(slots[*place].slack),
            start_minute: slots[*place].start,
            end_minute: slots[*place].finish,
        };
        Ok(Answer {
            result: Output {
                done: moment(end),
                days: end.div_euclid(24 * 60) + 1,
                worked: hours(jobs.iter().map(|job| job.minutes).sum()),
                critical: by_start
                    .iter()
                    .filter(|place| slots[**place].slack == 0)
                    .map(|place| input.tasks[*place].name.clone())
                    .collect(),
                tasks: by_start.iter().map(row).collect(),
            },
            working,
            notes,
        })
    }
}

fn calendar(input: &Input) -> Result<Calendar, Vec<Fault>> {
    let mut faults = Vec::new();
    let mut time = |pointer: &str, text: &String| {
        minutes_of_day(text).unwrap_or_else(|| {
            faults.push(Fault::new(
                pointer,
                format!("«{text}»"),
                "a time of day is hours and minutes from 00:00 to 23:59",
                "08:00",
            ));
            0
        })
    };
    let (starts, ends) = (time("/day_start", &input.day_start), time("/day_end", &input.day_end));
    if faults.is_empty() && starts >= ends {
        faults.push(Fault::new(
            "/day_end",
            format!("«{}»", input.day_end),
            "the working day must end after it starts",
            "16:30",
        ));
    }
    if faults.is_empty() {
        Ok(Calendar {
            starts,
            ends,
            first_weekday: input.weekday as i64,
            days_a_week: i64::from(input.days_a_week.get()),
        })
    } else {
        Err(faults)
    }
}
