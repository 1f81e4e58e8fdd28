//! Whether the air and the wall let a coat go on: dew-point margin, humidity, the sheet's least temperature.
//!
//! One room can have two answers: an outside wall is colder than an inside one. Each rule is reported by name; the answer never
//! says that a coat will succeed, only that no rule was broken by these readings.

use serde_json::json;

use super::air;
use crate::catalogue::works::{ISO_8502_4, PRACTICE};
use crate::catalogue::{
    Answer, Calculator, Card, Cited, Example, Fault, Figure, Input, Note, Output, Source, Standing, Step, Words,
};
use crate::quantity::{Amount, Physical, Units, kind};

/// Least margin of the surface above the dew point.
pub const DEW_MARGIN_K: Cited<f64> = Cited::new(
    3.0,
    Source::new(
        ISO_8502_4,
        "3 K above the dew point; written for protective coatings on steel, used here as an outer limit",
        Standing::FromMemory,
    ),
);
/// Highest relative humidity in which a coat is put on, unless the sheet says less.
pub const HIGHEST_RH: Cited<f64> = Cited::new(
    85.0,
    Source::new(PRACTICE, "85 % RH as on many data sheets; used here as an outer limit", Standing::CommonPractice),
);

pub(crate) struct SprayClimate;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Read in the room, now.
    #[field("Air temperature", usual = ["15 °C", "28 °C"])]
    air: Physical<kind::Temperature, 0, 45_000>,
    /// In percent, read in the room, now.
    #[field("Relative humidity", usual = ["40 %", "70 %"])]
    relative_humidity: Physical<kind::Humidity, 1_000, 100_000>,
    /// The coldest painted surface, measured on it; never taken to be the air's.
    #[field("Coldest surface")]
    surface: Physical<kind::Temperature, -10_000, 45_000>,
    /// From the paint's data sheet.
    #[field("Least temperature on the sheet")]
    sheet_least: Physical<kind::Temperature, 0, 30_000>,
    /// From the paint's data sheet; 85 % is the most that is taken.
    #[field("Highest humidity on the sheet")]
    sheet_highest_humidity: Physical<kind::Humidity, 30_000, 85_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Whether any rule forbids the coat now.
    #[field("These readings")]
    verdict: Verdict,
    /// Surfaces at or below this are wet.
    #[field("Dew point")]
    dew_point: Amount<kind::Temperature>,
    /// Surface temperature less dew point.
    #[field("Margin above the dew point")]
    margin: Amount<kind::TemperatureDifference>,
    /// Humidity of the air where it touches the surface.
    #[field("Humidity at the surface")]
    humidity_at_surface: Amount<kind::Humidity>,
    /// Each rule, with what was measured and what is needed.
    #[field("Rules")]
    rules: Vec<Rule>,
}

#[derive(Clone, Copy, PartialEq, Eq, Output)]
pub(crate) enum Verdict {
    /// No rule forbids a coat at these readings.
    #[field("no rule broken")]
    NoRuleBroken,
    /// At least one rule forbids it.
    #[field("stop")]
    Stop,
}

/// One rule.
#[derive(Output)]
pub(crate) struct Rule {
    /// The rule.
    #[field("Rule")]
    rule: &'static str,
    /// What was read or worked out.
    #[field("Have")]
    have: Words,
    /// What is needed.
    #[field("Need")]
    need: Words,
    /// Whether it holds.
    #[field("Holds")]
    holds: bool,
}

impl Calculator for SprayClimate {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "spray-climate",
        title: "Air and wall before spraying",
        question: "Do these readings let me spray now?",
        step: 14,
        search: &[
            "dew point",
            "condensation",
            "cold wall",
            "humidity",
            "spray now",
            "temperature",
            "spray today",
            "may I spray",
            "too cold",
            "too damp",
            "paint",
            "cold to paint",
        ],
        headline: &["/verdict", "/margin", "/dew_point"],
        list: Some("/rules"),
        cautions: &["spray-mist", "solvent-vapour"],
        sources: &[air::SOURCE, DEW_MARGIN_K.source, HIGHEST_RH.source],
    };

    fn example(units: Units) -> Example {
        let input = match units {
            Units::Imperial => {
                json!({ "air": "64.4 °F", "relative_humidity": "70 %", "surface": "57.2 °F", "sheet_least": "50 °F", "sheet_highest_humidity": "85 %" })
            }
            Units::Metric => {
                json!({ "air": "18 °C", "relative_humidity": "70 %", "surface": "14 °C", "sheet_least": "10 °C", "sheet_highest_humidity": "85 %" })
            }
        };
        let dew = if units == Units::Metric { "12.5 °C" } else { "54.4 °F" };
        Example {
            input,
            expects: vec![("/result/verdict", json!("stop")), ("/result/dew_point/text", json!(dew))],
            checked_against: "dew point 12.45 °C by PsychroLib 2.5.0 at 18 °C and 70 %",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let dew_point = air::dew_point(input.air.get(), input.relative_humidity.get());
        let margin = input.surface.get() - dew_point;
        let apart = Amount::<kind::TemperatureDifference>::of;
        let rule = |rule, have: Figure, need: Figure, least: bool, holds| {
            let (have, need) = Figure::told_apart(have, need);
            let need = Words::new(if least { "{} or more" } else { "{} or less" }).with(need);
            Rule { rule, have: Words::of(have), need, holds }
        };
        let most_humid = input.sheet_highest_humidity.get().min(HIGHEST_RH.value);
        let rules = vec![
            rule(
                "surface above the dew point",
                apart(margin).into(),
                apart(DEW_MARGIN_K.value).into(),
                true,
                margin >= DEW_MARGIN_K.value,
            ),
            rule(
                "relative humidity",
                input.relative_humidity.into(),
                input.sheet_highest_humidity.into(),
                false,
                input.relative_humidity.get() <= most_humid,
            ),
            rule(
                "surface temperature",
                input.surface.into(),
                input.sheet_least.into(),
                true,
                input.surface.get() >= input.sheet_least.get(),
            ),
            rule(
                "air temperature",
                input.air.into(),
                input.sheet_least.into(),
                true,
                input.air.get() >= input.sheet_least.get(),
            ),
        ];
        let broken: Vec<_> = rules.iter().filter(|rule| !rule.holds).map(|rule| rule.rule).collect();
        let verdict = if broken.is_empty() { Verdict::NoRuleBroken } else { Verdict::Stop };
        let mut notes = Vec::new();
        if !broken.is_empty() {
            notes.push(Note::hold(format!(
                "No trigger: {}. Warm the wall, dry the air, or wait; then read again.",
                broken.join(", ")
            )));
        }
        notes.push(Note::remark("Measured now and here. Read again each hour; the paint's data sheet decides."));
        let working = vec![
            Step::new("vapour in the air")
                .by("r / 100 * s")
                .given("r", "relative humidity", input.relative_humidity)
                .given(
                    "s",
                    "saturation pressure at the air's temperature",
                    Amount::<kind::VapourPressure>::of(air::saturation_pa(input.air.get()) / 100.0),
                )
                .gives(
                    "e",
                    "vapour pressure",
                    Amount::<kind::VapourPressure>::of(
                        air::vapour_pa(input.air.get(), input.relative_humidity.get()) / 100.0,
                    ),
                ),
            Step::new("dew point: where this vapour saturates")
                .gives("D", "dew point", Amount::<kind::Temperature>::of(dew_point))
                .because("the handbook's equation solved backward, by halving"),
            Step::new("margin of the surface")
                .by("S - D")
                .given("S", "coldest surface", input.surface)
                .given("D", "dew point", Amount::<kind::Temperature>::of(dew_point))
                .gives("m", "margin", apart(margin)),
        ];
        Ok(Answer {
            result: Output {
                verdict,
                dew_point: Amount::of(dew_point),
                margin: apart(margin),
                humidity_at_surface: Amount::of(air::rh_at_surface(
                    input.air.get(),
                    input.relative_humidity.get(),
                    input.surface.get(),
                )),
                rules,
            },
            working,
            notes,
        })
    }
}
