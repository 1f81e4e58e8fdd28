//! What moisture wood takes on in a room.

use serde_json::json;

use super::moisture;
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

pub(crate) struct Equilibrium;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// In the room, day and night.
    #[field("Air temperature", usual = ["15 °C", "28 °C"])]
    air: Physical<kind::Temperature, -2_000, 45_000>,
    /// In the room, day and night.
    #[field("Relative humidity", usual = ["30 %", "65 %"])]
    relative_humidity: Physical<kind::Humidity, 1_000, 95_000>,
    /// Read in the board, the meter set for the species.
    #[field("Moisture read in the board")]
    read: Option<Physical<kind::Percent, 0, 60_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Solid wood, when it has had time.
    #[field("Equilibrium moisture")]
    equilibrium: Amount<kind::WoodMoisture>,
    /// Read less equilibrium.
    #[field("Board against it")]
    apart: Option<Amount<kind::Points>>,
}

impl Calculator for Equilibrium {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "equilibrium-moisture",
        title: "Moisture of wood in a room",
        question: "Have the boards settled in this room?",
        step: 6,
        search: &["EMC", "moisture content", "acclimatise", "humidity", "meter"],
        headline: &["/equilibrium", "/apart"],
        list: None,
        cautions: &[],
        sources: &[
            moisture::EMC_SOURCE,
            Source::new(
                PRACTICE,
                "two to three days in the room, or two equal readings a day apart",
                Standing::CommonPractice,
            ),
        ],
    };

    fn example(units: Units) -> Example {
        let air = if units == Units::Metric { "21.1 °C" } else { "69.98 °F" };
        Example {
            input: json!({ "air": air, "relative_humidity": "50 %", "read": "10.5 %" }),
            expects: vec![("/result/equilibrium/text", json!("9.2%"))],
            checked_against: "the equation put in by a spreadsheet; Wood Handbook table 4-2 prints 9.2 % at 21.1 °C and 50 %",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let moisture = moisture::equilibrium_moisture(input.air.get(), input.relative_humidity.get());
        let percent = Amount::<kind::Percent>::of;
        let apart = input.read.map(|read| Amount::<kind::Points>::of(read.get() - moisture));
        let working = vec![
            Step::new("equilibrium moisture, with constants that follow the temperature")
                .by("1800 / (349 + 1.29 * T + 0.0135 * T ^ 2) * ((0.805 + 0.000736 * T - 0.00000273 * T ^ 2) * h / 100 / (1 - (0.805 + 0.000736 * T - 0.00000273 * T ^ 2) * h / 100) + ((6.27 - 0.00938 * T - 0.000303 * T ^ 2) * (0.805 + 0.000736 * T - 0.00000273 * T ^ 2) * h / 100 + 2 * (6.27 - 0.00938 * T - 0.000303 * T ^ 2) * (1.91 + 0.0407 * T - 0.000293 * T ^ 2) * ((0.805 + 0.000736 * T - 0.00000273 * T ^ 2) * h / 100) ^ 2) / (1 + (6.27 - 0.00938 * T - 0.000303 * T ^ 2) * (0.805 + 0.000736 * T - 0.00000273 * T ^ 2) * h / 100 + (6.27 - 0.00938 * T - 0.000303 * T ^ 2) * (1.91 + 0.0407 * T - 0.000293 * T ^ 2) * ((0.805 + 0.000736 * T - 0.00000273 * T ^ 2) * h / 100) ^ 2))")
                .given("T", "air temperature in °C", input.air)
                .given("h", "relative humidity", input.relative_humidity)
                .gives("M", "equilibrium moisture", percent(moisture)),
        ];
        let mut notes = vec![Note::remark(
            "For solid wood; fibreboard settles a point or two lower. One decimal is all this equation is good for.",
        )];
        if let Some(apart) = apart.filter(|apart| apart.get().abs() > 2.0) {
            notes.push(Note::hold(
                Words::new("The board is {} from the room: leave it on stickers and read again tomorrow.")
                    .with(Amount::<kind::Points>::of(apart.get().abs())),
            ));
        }
        let rh = input.relative_humidity.get();
        if !(35.0..=65.0).contains(&rh) {
            notes.push(Note::hold(
                "Outside 35 to 65 % humidity nothing is cut: bring the room to where it will be lived in first.",
            ));
        }
        let equilibrium = Amount::<kind::WoodMoisture>::of(moisture);
        Ok(Answer { result: Output { equilibrium, apart }, working, notes })
    }
}
