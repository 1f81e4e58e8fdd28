//! Programme and estimating.

use calculators::price::order_quantity;
use serde_json::{Value, json};
use tests::published::Ours::By;
use tests::published::{Row, ask, number};

use crate::check;

/// The textbook's arrows: an activity from one event to another follows every activity that ends in its first event.
fn arrows(activities: &Value) -> Value {
    let list = activities.as_array().expect("activities");
    let name = |activity: &Value| format!("{}-{}", activity[0], activity[1]);
    let tasks: Vec<_> = list
        .iter()
        .map(|activity| {
            let after: Vec<_> = list
                .iter()
                .filter(|other| other[1] == activity[0])
                .map(|other| json!({ "task": name(other) }))
                .collect();
            json!({ "name": name(activity), "hours": activity[2], "after": after })
        })
        .collect();
    ask("critical-path", json!({ "tasks": tasks }))
}

fn problem_1() -> Value {
    let rows = tests::published::topic("schedule");
    let with = rows.iter().find(|row| row.inputs["activities_from_to_duration"].is_array()).expect("the network");
    arrows(&with.inputs["activities_from_to_duration"])
}

#[test]
fn schedule() {
    check(
        "schedule",
        &[
            (
                "project duration (activity on arrow)",
                By(|row| number(&arrows(&row.inputs["activities_from_to_duration"])["duration"]).into()),
            ),
            ("critical activities", By(|row| arrows(&row.inputs["activities_from_to_duration"])["critical"].clone())),
            (
                "ES, EF, LS, LF, total float",
                By(|row| {
                    let plan = problem_1();
                    let task = plan["tasks"]
                        .as_array()
                        .expect("tasks")
                        .iter()
                        .find(|task| task["task"] == row.inputs["activity"])
                        .expect("the activity");
                    let of = |name: &str| number(&task[name]);
                    json!([
                        of("earliest_start"),
                        of("earliest_finish"),
                        of("latest_start"),
                        of("latest_finish"),
                        of("float")
                    ])
                }),
            ),
            (
                "duration with drying waits as finish-to-start lags (continuous clock)",
                By(|row| {
                    let tasks = row.inputs["tasks_name_hours_[pred,lag]"].as_array().expect("tasks");
                    let tasks: Vec<_> = tasks
                        .iter()
                        .map(|task| {
                            let after: Vec<_> = task[2]
                                .as_array()
                                .expect("ties")
                                .iter()
                                .map(|tie| json!({ "task": tie[0], "wait": tie[1] }))
                                .collect();
                            json!({ "name": task[0], "hours": task[1], "after": after })
                        })
                        .collect();
                    number(&ask("critical-path", json!({ "tasks": tasks }))["duration"]).into()
                }),
            ),
            (
                "three-point expected duration",
                By(|row| {
                    let input = json!({ "best": row.number("a"), "likely": row.number("m"), "worst": row.number("b") });
                    number(&ask("expected-duration", input)["expected"]).into()
                }),
            ),
        ],
    );
}

fn order(row: &Row, of: &str) -> Value {
    number(
        &ask(
            "order-quantity",
            json!({ "net": row.number("net"), "waste": row.number("waste_pct"), "of": of, "pack": 1 }),
        )["gross"],
    )
    .into()
}

#[test]
fn estimating() {
    check(
        "estimating",
        &[
            (
                "margin from markup",
                By(|row| {
                    number(&ask("margin-of-markup", json!({ "markup": row.number("markup_pct") }))["margin"]).into()
                }),
            ),
            (
                "markup from margin",
                By(|row| {
                    number(
                        &ask("price-at-margin", json!({ "cost": 100, "margin": row.number("margin_pct") }))["markup"],
                    )
                    .into()
                }),
            ),
            (
                "price for a target margin",
                By(|row| {
                    number(
                        &ask(
                            "price-at-margin",
                            json!({ "cost": row.number("cost"), "margin": row.number("margin_pct") }),
                        )["price"],
                    )
                    .into()
                }),
            ),
            ("order quantity, waste as share of what is bought", By(|row| order(row, "what-is-bought"))),
            ("order quantity, waste added on net", By(|row| order(row, "what-is-needed"))),
            (
                "equal pieces from one stock length with saw kerf",
                By(|row| {
                    let input = json!({ "stick": row.inches("stock_in"), "kerf": row.inches("kerf_in"), "piece": row.inches("piece_in") });
                    ask("pieces-per-stick", input)["pieces"].clone()
                }),
            ),
            ("whole packs", By(|row| order_quantity::whole_packs(row.number("need"), row.number("pack")).into())),
        ],
    );
}
