//! Noise over the day, by the two rules in use: they differ fourfold on the same day, so each is named.
//!
//! The regulation halves the time for every 5 dB, the recommendation for every 3 dB. What ear defenders take off is left aside.

use serde_json::json;

use crate::catalogue::works::{EU_NOISE, NIOSH_98_126, OSHA_NOISE, OSHA_NOISE_CONSTRUCTION};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// Hours allowed at a level by the 5 dB rule: 8 at 90 dB(A).
/// # Source
/// 29 CFR 1910.95, appendix A.
pub fn regulation_hours(level: f64) -> f64 {
    8.0 / libm::exp2((level - 90.0) / 5.0)
}

/// Minutes recommended at a level by the 3 dB rule: 480 at 85 dB(A).
/// # Source
/// NIOSH 98-126.
pub fn recommended_minutes(level: f64) -> f64 {
    480.0 / libm::exp2((level - 85.0) / 3.0)
}

/// The construction table: level in dB(A), hours allowed. Its steps are not the formula's: 92 has 6 h, the formula 6.06.
/// # Source
/// 29 CFR 1926.52, table D-2.
pub const CONSTRUCTION_TABLE: [(f64, f64); 9] = [
    (90.0, 8.0),
    (92.0, 6.0),
    (95.0, 4.0),
    (97.0, 3.0),
    (100.0, 2.0),
    (102.0, 1.5),
    (105.0, 1.0),
    (110.0, 0.5),
    (115.0, 0.25),
];

/// Hours in the construction table at exactly this level.
pub fn construction_hours(level: f64) -> Option<f64> {
    CONSTRUCTION_TABLE.iter().find(|(row, _)| (row - level).abs() < 1e-9).map(|(_, hours)| *hours)
}

/// Above this level the regulations permit no time at all, dB(A).
/// # Source
/// 29 CFR 1926.52, table D-2, and 29 CFR 1910.95, table G-16, both of which end here.
pub const HIGHEST: f64 = 115.0;

/// Daily exposure levels of the European rules, dB(A): lower action, upper action, limit with ear protection on.
/// # Source
/// Directive 2003/10/EC, article 3; in the United Kingdom the Control of Noise at Work Regulations 2005, from memory.
pub const EUROPEAN: (f64, f64, f64) = (80.0, 85.0, 87.0);

/// The longest time that is told, minutes: a day.
const DAY: f64 = 1_440.0;

/// Doses of a day of (level, hours): regulation and recommendation, in percent.
pub fn doses(day: &[(f64, f64)]) -> (f64, f64) {
    let regulation = day.iter().map(|(level, hours)| hours / regulation_hours(*level)).sum::<f64>() * 100.0;
    let recommended = day.iter().map(|(level, hours)| hours * 60.0 / recommended_minutes(*level)).sum::<f64>() * 100.0;
    (regulation, recommended)
}

/// The steady eight-hour level of a dose above zero: by the regulation, by the recommendation.
pub fn eight_hour_levels(regulation_dose: f64, recommended_dose: f64) -> (f64, f64) {
    (16.61 * libm::log10(regulation_dose / 100.0) + 90.0, 10.0 * libm::log10(recommended_dose / 100.0) + 85.0)
}

pub(crate) struct Noise;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// What was loud, and for how long: saw, nailer, extractor, sander.
    #[field("Stretches of the day", size(1..=24))]
    stretches: Vec<Stretch>,
}

/// One stretch of the day.
#[derive(Input)]
pub(crate) struct Stretch {
    /// At the ear, A-weighted.
    #[field("Level", usual = ["70 dB(A)", "115 dB(A)"])]
    level: Physical<kind::SoundLevel, 40_000, 140_000>,
    /// How long.
    #[field("For")]
    hours: Physical<kind::Hours, 1, 24_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// By the 3 dB rule; 100 % is a full day's.
    #[field("Recommended rule (NIOSH, 3 dB): dose")]
    recommended_dose: Amount<kind::Percent>,
    /// By the 5 dB rule; 100 % is a full day's, 50 % the action level.
    #[field("Regulation (OSHA, 5 dB): dose")]
    regulation_dose: Amount<kind::Percent>,
    /// By the 3 dB rule.
    #[field("Recommended rule: eight-hour level")]
    recommended_level: Amount<kind::SoundLevel>,
    /// By the 5 dB rule.
    #[field("Regulation: eight-hour level")]
    regulation_level: Amount<kind::SoundLevel>,
    /// By the construction table, where every level stands in it: above 1 is over.
    #[field("Construction table: exposure factor")]
    construction_factor: Option<Amount<kind::Number>>,
    /// What each stretch may last.
    #[field("Each stretch")]
    stretches: Vec<Row>,
}

/// One stretch and what it is compared with.
#[derive(Output)]
pub(crate) struct Row {
    /// At the ear.
    #[field("Level")]
    level: Amount<kind::SoundLevel>,
    /// How long it was.
    #[field("For")]
    hours: Amount<kind::Hours>,
    /// By the 3 dB rule, rounded down, a day at most.
    #[field("Recommended, at most")]
    recommended: Amount<kind::PermittedMinutes>,
    /// By the 5 dB rule, rounded down, a day at most; none above 115 dB(A).
    #[field("Regulation, at most")]
    regulation: Option<Amount<kind::PermittedHours>>,
}

impl Calculator for Noise {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "noise-dose",
        title: "Noise over the day",
        question: "What does the noise come to over the day?",
        step: 9,
        search: &["noise", "hearing", "dB", "ear defenders", "saw noise"],
        headline: &["/recommended_dose", "/regulation_dose"],
        list: Some("/stretches"),
        cautions: &["noise"],
        sources: &[
            Source::new(OSHA_NOISE, "T = 8 / 2^((L-90)/5)", Standing::Published),
            Source::new(NIOSH_98_126, "T = 480 / 2^((L-85)/3)", Standing::Published),
            Source::new(OSHA_NOISE_CONSTRUCTION, "table D-2, which ends at 115 dB(A)", Standing::Published),
            Source::new(
                EU_NOISE,
                "article 3: 80, 85 and 87 dB(A); the same in the United Kingdom, from memory",
                Standing::Published,
            ),
        ],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "stretches": [{ "level": "95 dB(A)", "hours": "2 h" }, { "level": "90 dB(A)", "hours": "4 h" }] }),
            expects: vec![
                ("/result/regulation_dose/text", json!("100%")),
                ("/result/recommended_dose/text", json!("410.7%")),
            ],
            checked_against: "both rules by hand: 2/4 + 4/8 = 1; 120/47.62 + 240/151.19 = 4.107",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let hours: f64 = input.stretches.iter().map(|stretch| stretch.hours.get()).sum();
        if hours > 24.0 {
            let said = Words::new("{} in all").with(Amount::<kind::Hours>::of(hours));
            return Err(vec![Fault::new("/stretches", said, "a day has 24 hours", "8 h")]);
        }
        let day: Vec<_> = input.stretches.iter().map(|stretch| (stretch.level.get(), stretch.hours.get())).collect();
        let (regulation, recommended) = doses(&day);
        let (regulation_level, recommended_level) = eight_hour_levels(regulation, recommended);
        let construction = day
            .iter()
            .map(|(level, hours)| construction_hours(*level).map(|allowed| hours / allowed))
            .sum::<Option<f64>>();
        let percent = Amount::<kind::Percent>::of;
        let decibel = Amount::<kind::SoundLevel>::of;
        let dose = |what: &'static str, symbol: &'static str, each: fn(usize) -> String, result: f64| {
            let mut step = Step::new(what);
            for (index, stretch) in input.stretches.iter().enumerate() {
                let n = index + 1;
                step = step.given(format!("L{n}"), format!("level, stretch {n}"), stretch.level).given(
                    format!("t{n}"),
                    format!("hours, stretch {n}"),
                    stretch.hours,
                );
            }
            let terms: Vec<_> = (1..=input.stretches.len()).map(each).collect();
            step.by(format!("100 * ({})", terms.join(" + "))).gives(symbol, "dose", percent(result))
        };
        let working = vec![
            dose(
                "dose by the regulation: hours over hours allowed",
                "D",
                |n| format!("t{n} * 2 ^ ((L{n} - 90) / 5) / 8"),
                regulation,
            ),
            dose(
                "dose by the recommendation: hours over hours recommended",
                "N",
                |n| format!("t{n} * 2 ^ ((L{n} - 85) / 3) / 8"),
                recommended,
            ),
            Step::new("eight-hour level by the regulation")
                .by("16.61 * log10(D / 100) + 90")
                .given("D", "dose", percent(regulation))
                .gives("T", "eight-hour level", decibel(regulation_level)),
            Step::new("eight-hour level by the recommendation")
                .by("10 * log10(N / 100) + 85")
                .given("N", "dose", percent(recommended))
                .gives("R", "eight-hour level", decibel(recommended_level)),
        ];
        let mut notes = Vec::new();
        let loudest = day.iter().map(|(level, _)| *level).fold(0.0, f64::max);
        if loudest > HIGHEST {
            notes.push(Note::hold(
                Words::new("{} at the ear: above {} the United States rules permit no time at all. Change the tool or the way of working.")
                    .with_both(decibel(loudest), decibel(HIGHEST)),
            ));
        }
        // The dose is compared, not the level: the rounded constant 16.61 puts a dose of one half just below 85 dB(A).
        let (half, full) = (50.0 - 1e-9, 100.0 - 1e-9);
        if regulation >= full {
            notes.push(Note::hold("At or over a whole day's dose by the United States regulation (90 dB(A) over eight hours): quieter tools, distance and less time first, ear protection after."));
        } else if regulation >= half {
            notes.push(Note::check("At or over the action level of the United States regulation: half a dose, 85 dB(A) over eight hours. A hearing-conservation programme is due."));
        }
        if recommended >= full {
            notes.push(Note::check("At or over a whole day's dose by the recommendation (85 dB(A) over eight hours)."));
        }
        let (lower, upper, limit) = EUROPEAN;
        let reached = [
            (limit, "the limit value, counted under the ear protection"),
            (upper, "the upper action value: ear protection is worn"),
            (lower, "the lower action value: ear protection is offered"),
        ];
        if let Some((value, name)) = reached.into_iter().find(|(value, _)| *value - 1e-9 <= recommended_level) {
            let words = Words::new(format!(
                "European Union and United Kingdom: a daily exposure of {{}} reaches {{}}, {name}."
            ));
            notes.push(Note::check(words.with_both(decibel(recommended_level), decibel(value))));
        }
        notes.push(Note::remark("Levels on a tool's plate are lower than at the ear in a bare room. Each rule is a comparison and promises nothing for one person's hearing."));
        let stretches = input
            .stretches
            .iter()
            .map(|stretch| Row {
                level: stretch.level.amount(),
                hours: stretch.hours.amount(),
                recommended: Amount::of(recommended_minutes(stretch.level.get()).min(DAY)),
                regulation: (stretch.level.get() <= HIGHEST)
                    .then(|| Amount::of(regulation_hours(stretch.level.get()).min(DAY / 60.0))),
            })
            .collect();
        Ok(Answer {
            result: Output {
                recommended_dose: percent(recommended),
                regulation_dose: percent(regulation),
                recommended_level: decibel(recommended_level),
                regulation_level: decibel(regulation_level),
                construction_factor: construction.map(Amount::of),
                stretches,
            },
            working,
            notes,
        })
    }
}
