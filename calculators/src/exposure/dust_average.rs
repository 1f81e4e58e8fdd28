//! The eight-hour mean of dust, and the silica in it.

use serde_json::json;

use super::dust::{self, DUST_LIMITS, Dust};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

pub(crate) struct DustAverage;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// What was breathed, and for how long. One kind of sampler only.
    #[field("Stretches of the day", size(1..=24))]
    stretches: Vec<Stretch>,
    /// Crystalline silica in the dust by weight, where joint compound or plaster is sanded; only for respirable readings.
    #[field("Silica in the dust")]
    silica: Option<Physical<kind::Percent, 0, 100_000>>,
}

/// One stretch of the day.
#[derive(Input)]
pub(crate) struct Stretch {
    /// Measured in the breathing zone.
    #[field("Dust in the air")]
    level: Physical<kind::DustConcentration, 0, 10_000_000>,
    /// How long.
    #[field("For")]
    hours: Physical<kind::Hours, 0, 24_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Over eight hours, however long the day was.
    #[field("Eight-hour mean")]
    mean: Amount<kind::DustConcentration>,
    /// Of that, silica.
    #[field("Silica, eight-hour mean")]
    silica: Option<Amount<kind::DustConcentration>>,
    /// What it may be compared with, each only with its own sampler.
    #[field("Limits to compare with")]
    limits: Vec<Compared>,
}

/// A limit, and how the day stands to it.
#[derive(Output)]
pub(crate) struct Compared {
    /// What is limited, by whom, by which sampler.
    #[field("Limit")]
    agent: &'static str,
    /// Mean over eight hours.
    #[field("Limit value")]
    limit: Amount<kind::DustConcentration>,
    /// How this day's mean stands to it, were it taken with that sampler.
    #[field("This day")]
    day: Stands,
}

/// How a mean stands to a limit.
#[derive(Clone, Copy, PartialEq, Eq, Output)]
pub(crate) enum Stands {
    /// More than the limit.
    Over,
    /// Exactly the limit.
    AtTheLimit,
    /// Less than the limit.
    Under,
    /// No share of silica was given.
    NotAsked,
}

fn stands(mean: f64, limit: f64) -> Stands {
    let slack = 1e-9 * limit;
    match mean - limit {
        more if more > slack => Stands::Over,
        more if more >= -slack => Stands::AtTheLimit,
        _ => Stands::Under,
    }
}

/// The day beside every limit, and a note for each dust that reaches one.
fn compared(mean: f64, silica: Option<f64>, notes: &mut Vec<Note>) -> Vec<Compared> {
    let mg = Amount::<kind::DustConcentration>::of;
    let rows = DUST_LIMITS.iter().map(|row| {
        let of_this = if row.dust == Dust::Silica { silica } else { Some(mean) };
        let day = of_this.map_or(Stands::NotAsked, |mean| stands(mean, row.mg_m3));
        Compared { agent: row.agent, limit: mg(row.mg_m3), day }
    });
    for (dust, mean, name) in [(Dust::Wood, Some(mean), "dust"), (Dust::Silica, silica, "silica")] {
        let Some(mean) = mean else { continue };
        let reached = DUST_LIMITS.iter().filter(|row| row.dust == dust);
        let reached = reached.filter(|row| matches!(stands(mean, row.mg_m3), Stands::Over | Stands::AtTheLimit));
        // The lowest limit that is reached is told, the others stand in the table.
        if let Some(row) = reached.min_by(|one, other| one.mg_m3.total_cmp(&other.mg_m3)) {
            let words = Words::new(format!(
                "{{}} of {name} over the day is at or over {{}}: {}. Less dust, extraction and air first, then a mask of the class the assessment names.",
                row.agent
            ));
            notes.push(Note::hold(words.with_both(mg(mean), mg(row.mg_m3))));
        }
    }
    rows.collect()
}

impl Calculator for DustAverage {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "dust-average",
        title: "Dust over the day",
        question: "What does the dust come to over a working day?",
        step: 12,
        search: &["wood dust", "silica", "TWA", "exposure", "eight hours"],
        headline: &["/mean", "/silica"],
        list: Some("/limits"),
        cautions: &["sanding-dust", "respirator-limits"],
        sources: &dust::LIMIT_SOURCES,
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "stretches": [{ "level": "12 mg/m3", "hours": "2 h" }, { "level": "3 mg/m3", "hours": "4 h" }, { "level": "0 mg/m3", "hours": "2 h" }] }),
            expects: vec![("/result/mean/text", json!("4.5 mg/m³"))],
            checked_against: "29 CFR 1910.1000(d) by hand: (24 + 12 + 0) / 8",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let hours: f64 = input.stretches.iter().map(|stretch| stretch.hours.get()).sum();
        if hours > 24.0 {
            let said = Words::new("{} in all").with(Amount::<kind::Hours>::of(hours));
            return Err(vec![Fault::new("/stretches", said, "a day has 24 hours", "8 h")]);
        }
        let pairs: Vec<_> = input.stretches.iter().map(|stretch| (stretch.level.get(), stretch.hours.get())).collect();
        let mean = dust::eight_hour_mean(&pairs);
        let mg = Amount::<kind::DustConcentration>::of;
        let mut step = Step::new("each stretch, level times hours, over eight hours");
        let mut terms = Vec::new();
        for (index, stretch) in input.stretches.iter().enumerate() {
            let n = index + 1;
            terms.push(format!("c{n} * t{n}"));
            step = step.given(format!("c{n}"), format!("dust, stretch {n}"), stretch.level).given(
                format!("t{n}"),
                format!("hours, stretch {n}"),
                stretch.hours,
            );
        }
        let mut working = vec![
            step.by(format!("({}) / 8", terms.join(" + ")))
                .gives("E", "eight-hour mean", mg(mean))
                .because("always over eight hours, also after a longer or shorter day"),
        ];
        let silica = input.silica.map(|share| {
            let silica = mg(mean * share.get() / 100.0);
            working.push(
                Step::new("silica in it")
                    .by("E * s / 100")
                    .given("E", "eight-hour mean", mg(mean))
                    .given("s", "silica in the dust", share)
                    .gives("q", "silica", silica),
            );
            silica
        });
        let mut notes = Vec::new();
        let limits = compared(mean, silica.map(Amount::get), &mut notes);
        notes.push(Note::remark(
            "Compare only with a limit for the same sampler. Below a limit is a comparison and nothing more; the local limit, the safety data sheet and an occupational hygienist decide.",
        ));
        Ok(Answer { result: Output { mean: mg(mean), silica, limits }, working, notes })
    }
}
