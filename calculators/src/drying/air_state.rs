//! All that one pair of readings says of the air: dew point, wet bulb, water held.

use serde_json::json;

use super::air;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

pub(crate) struct AirState;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Read at breast height, away from heaters and sun.
    #[field("Air temperature", usual = ["5 °C", "35 °C"])]
    temperature: Physical<kind::Temperature, -20_000, 60_000>,
    /// In percent, as the hygrometer shows it. Leave it out where a wet-bulb thermometer was read.
    #[field("Relative humidity")]
    relative_humidity: Option<Physical<kind::Humidity, 1_000, 100_000>>,
    /// A thermometer in a wet sock and moving air, instead of a hygrometer.
    #[field("Wet bulb")]
    wet_bulb: Option<Physical<kind::Temperature, -20_000, 60_000>>,
    /// Air pressure; at sea level 1013.25 hPa.
    #[field("Air pressure")]
    pressure: Option<Physical<kind::VapourPressure, 600_000, 1_100_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Surfaces at or below this are wet.
    #[field("Dew point")]
    dew_point: Amount<kind::Temperature>,
    /// As a hygrometer would show it.
    #[field("Relative humidity")]
    relative_humidity: Amount<kind::Humidity>,
    /// As a thermometer in a wet sock would show it.
    #[field("Wet-bulb temperature")]
    wet_bulb: Amount<kind::Temperature>,
    /// Pressure of the vapour that saturates this air.
    #[field("Saturation pressure")]
    saturation: Amount<kind::VapourPressure>,
    /// Pressure of the vapour in the air.
    #[field("Vapour pressure")]
    vapour: Amount<kind::VapourPressure>,
    /// What the air could still take up: it drives drying.
    #[field("Vapour-pressure deficit")]
    deficit: Amount<kind::VapourPressure>,
    /// Kilograms of water for each kilogram of dry air.
    #[field("Humidity ratio")]
    humidity_ratio: f64,
    /// The same if the air were saturated.
    #[field("Humidity ratio at saturation")]
    saturation_ratio: f64,
}

impl Calculator for AirState {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "air-state",
        title: "State of the air",
        question: "How much water is in this air, and when does it drop out?",
        step: 14,
        search: &["humidity", "hygrometer", "wet bulb", "dew point", "vapour", "psychrometer"],
        headline: &["/dew_point", "/relative_humidity", "/wet_bulb"],
        list: None,
        cautions: &[],
        sources: &[air::SOURCE],
    };

    fn example(units: Units) -> Example {
        let input = match units {
            Units::Imperial => json!({ "temperature": "104 °F", "wet_bulb": "68 °F" }),
            Units::Metric => json!({ "temperature": "40 °C", "wet_bulb": "20 °C" }),
        };
        Example {
            input,
            expects: vec![("/result/dew_point/text", json!(if units == Units::Metric { "7.4 °C" } else { "45.4 °F" }))],
            checked_against: "ASHRAE Fundamentals 2017, chapter 1, example 1 (7 °C read from the chart); decimals from PsychroLib 2.5.0",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let celsius = input.temperature.get();
        let pressure_pa = input.pressure.map_or(air::SEA_LEVEL_PA, |hpa| hpa.get() * 100.0);
        let saturated = air::saturation_pa(celsius);
        let (vapour, first) = match (input.relative_humidity, input.wet_bulb) {
            (Some(rh), None) => {
                let vapour = air::vapour_pa(celsius, rh.get());
                let step = Step::new("vapour pressure")
                    .by("r / 100 * s")
                    .given("r", "relative humidity", rh)
                    .given("s", "saturation pressure", hpa(saturated))
                    .gives("e", "vapour pressure", hpa(vapour));
                (vapour, step)
            }
            (None, Some(wet)) => {
                if wet.get() > celsius {
                    let said = Words::of(wet);
                    let why = Words::new("a wet bulb is never warmer than the air, {} here").with(input.temperature);
                    return Err(vec![Fault::new("/wet_bulb", said, why, Words::of(input.temperature))]);
                }
                let ratio = air::humidity_ratio_from_wet_bulb(celsius, wet.get(), pressure_pa);
                if ratio <= 0.0 {
                    let said = Words::of(wet);
                    let why = "this far below the air temperature even bone-dry air would not cool it; read again in moving air";
                    return Err(vec![Fault::new("/wet_bulb", said, why, Words::of(input.temperature))]);
                }
                let vapour = air::vapour_pa_of_ratio(ratio, pressure_pa);
                let step = Step::new("vapour pressure from the humidity ratio")
                    .by("p * W / (0.621945 + W)")
                    .given("p", "air pressure", hpa(pressure_pa))
                    .given("W", "humidity ratio from both thermometers", ratio)
                    .gives("e", "vapour pressure", hpa(vapour));
                (vapour, step)
            }
            (Some(_), Some(wet)) => {
                let said = Words::of(wet);
                return Err(vec![Fault::new(
                    "/wet_bulb",
                    said,
                    "give the hygrometer's reading or the wet bulb's, not both",
                    json!(null),
                )]);
            }
            (None, None) => {
                return Err(vec![Fault::new(
                    "/relative_humidity",
                    "nothing",
                    "a hygrometer's or a wet bulb's reading is needed",
                    "50 %",
                )]);
            }
        };
        let rh = 100.0 * vapour / saturated;
        let dew_point = air::saturated_at(vapour);
        let working = vec![
            Step::new("saturation pressure at the air's temperature")
                .gives("s", "saturation pressure", hpa(saturated))
                .because("from the handbook's equation over water, or over ice below freezing"),
            first,
            Step::new("dew point: where the same vapour saturates")
                .gives("D", "dew point", Amount::<kind::Temperature>::of(dew_point))
                .because("the equation solved backward, by halving"),
            Step::new("vapour-pressure deficit")
                .by("s - e")
                .given("s", "saturation pressure", hpa(saturated))
                .given("e", "vapour pressure", hpa(vapour))
                .gives("d", "vapour-pressure deficit", hpa(saturated - vapour)),
        ];
        let notes =
            if rh > 85.0 { vec![Note::check("Above 85 % RH water leaves a coat hardly at all.")] } else { Vec::new() };
        Ok(Answer {
            result: Output {
                dew_point: Amount::of(dew_point),
                relative_humidity: Amount::of(rh),
                wet_bulb: input
                    .wet_bulb
                    .map_or_else(|| Amount::of(air::wet_bulb(celsius, rh, pressure_pa)), |wet| wet.amount()),
                saturation: hpa(saturated),
                vapour: hpa(vapour),
                deficit: hpa(saturated - vapour),
                humidity_ratio: air::humidity_ratio(vapour, pressure_pa),
                saturation_ratio: air::humidity_ratio(saturated, pressure_pa),
            },
            working,
            notes,
        })
    }
}

fn hpa(pascal: f64) -> Amount<kind::VapourPressure> {
    Amount::of(pascal / 100.0)
}
