//! Vibration at the hand over the day. Points add; daily values do not.

use serde_json::json;

use crate::catalogue::works::{EU_VIBRATION, ISO_5349};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// Daily value at which an employer must act: 2.5 m/s². Directive 2002/44/EC, article 3.
pub const ACTION_VALUE: f64 = 2.5;
/// Daily value not to be passed: 5 m/s². Directive 2002/44/EC, article 3.
pub const LIMIT_VALUE: f64 = 5.0;

/// Daily value A(8) of (m/s², hours of trigger time): the root of summed squares.
/// # Source
/// ISO 5349-1; Directive 2002/44/EC.
pub fn daily_value(tools: &[(f64, f64)]) -> f64 {
    libm::sqrt(tools.iter().map(|(level, hours)| level * level * hours).sum::<f64>() / 8.0)
}

/// Points of one tool: 2 a² per hour; 100 is the action value, 400 the limit value.
pub fn points(level: f64, hours: f64) -> f64 {
    2.0 * level * level * hours
}

/// Minutes of trigger time until one tool alone brings a daily value.
pub fn minutes_to(level: f64, value: f64) -> f64 {
    480.0 * (value / level) * (value / level)
}

pub(crate) struct Vibration;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Each tool in the hand today.
    #[field("Tools", size(1..=24))]
    tools: Vec<Tool>,
}

/// One tool.
#[derive(Input)]
pub(crate) struct Tool {
    /// In use, not on the plate: declared figures are often too low.
    #[field("Vibration", usual = ["1 m/s2", "15 m/s2"])]
    level: Physical<kind::Vibration, 100, 60_000>,
    /// With the trigger pressed, not the length of the job.
    #[field("Trigger time")]
    hours: Physical<kind::Hours, 1, 24_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Over eight hours.
    #[field("Daily value A(8)")]
    daily: Amount<kind::Vibration>,
    /// 100 is the action value, 400 the limit value.
    #[field("Points")]
    points: Amount<kind::Number>,
    /// Each tool.
    #[field("Each tool")]
    tools: Vec<Row>,
}

/// One tool's share.
#[derive(Output)]
pub(crate) struct Row {
    /// In use.
    #[field("Vibration")]
    level: Amount<kind::Vibration>,
    /// Its points.
    #[field("Points")]
    points: Amount<kind::Number>,
    /// If it were the only tool.
    #[field("Alone, action value after")]
    to_action: Amount<kind::Minutes>,
    /// If it were the only tool.
    #[field("Alone, limit value after")]
    to_limit: Amount<kind::Minutes>,
}

impl Calculator for Vibration {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "vibration-dose",
        title: "Vibration at the hand",
        question: "How much shaking do the hands get today?",
        step: 12,
        search: &["hand-arm vibration", "sander", "white finger", "A(8)", "points", "numb fingers"],
        headline: &["/daily", "/points"],
        list: Some("/tools"),
        cautions: &["vibration"],
        sources: &[
            Source::new(EU_VIBRATION, "action value 2.5 m/s², limit value 5 m/s²", Standing::Published),
            Source::new(ISO_5349, "A(8) = a √(T/8)", Standing::Published),
        ],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "tools": [{ "level": "5 m/s2", "hours": "1 h" }, { "level": "3.5 m/s2", "hours": "2 h" }] }),
            expects: vec![("/result/daily/text", json!("2.49 m/s²")), ("/result/points/text", json!("99"))],
            checked_against: "by hand: √((25 x 1 + 12.25 x 2) / 8) = 2.487; 2 x 49.5 = 99",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let hours: f64 = input.tools.iter().map(|tool| tool.hours.get()).sum();
        if hours > 24.0 {
            let said = Words::new("{} in all").with(Amount::<kind::Hours>::of(hours));
            return Err(vec![Fault::new("/tools", said, "a day has 24 hours", "2 h")]);
        }
        let day: Vec<_> = input.tools.iter().map(|tool| (tool.level.get(), tool.hours.get())).collect();
        let daily = daily_value(&day);
        let total: f64 = day.iter().map(|(level, hours)| points(*level, *hours)).sum();
        let mut step = Step::new("daily value: root of summed squares over eight hours");
        for (index, tool) in input.tools.iter().enumerate() {
            let n = index + 1;
            step = step.given(format!("a{n}"), format!("vibration, tool {n}"), tool.level).given(
                format!("t{n}"),
                format!("hours, tool {n}"),
                tool.hours,
            );
        }
        let terms: Vec<_> = (1..=day.len()).map(|n| format!("a{n} ^ 2 * t{n}")).collect();
        let value = Amount::<kind::Vibration>::of;
        let working = vec![
            step.by(format!("sqrt(({}) / 8)", terms.join(" + "))).gives("A", "daily value", value(daily)),
            Step::new("points").by("100 * (A / 2.5) ^ 2").given("A", "daily value", value(daily)).gives(
                "P",
                "points",
                Amount::<kind::Number>::of(total),
            ),
        ];
        let compared = Words::new("{}, compared with {} (act) and {} (not to be passed); local law decides.")
            .with(value(daily))
            .with(value(ACTION_VALUE))
            .with(value(LIMIT_VALUE));
        let notes = vec![if daily >= LIMIT_VALUE {
            Note::hold(compared)
        } else if daily >= ACTION_VALUE {
            Note::check(compared)
        } else {
            Note::remark(compared)
        }];
        let tools = day
            .iter()
            .map(|(level, hours)| Row {
                level: value(*level),
                points: Amount::of(points(*level, *hours)),
                to_action: Amount::of(minutes_to(*level, ACTION_VALUE)),
                to_limit: Amount::of(minutes_to(*level, LIMIT_VALUE)),
            })
            .collect();
        Ok(Answer { result: Output { daily: value(daily), points: Amount::of(total), tools }, working, notes })
    }
}
