//! What the water of a coat does to a shut room.

use serde_json::json;

use crate::catalogue::works::THIS_BOOK;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::drying::air;
use crate::quantity::{Amount, Physical, Units, kind};

pub(crate) struct RoomMoisture;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Length times width times height.
    #[field("Room")]
    room: Physical<kind::RoomVolume, 1_000, 100_000_000>,
    /// Mixed, in the pot, for one coat.
    #[field("Paint sprayed")]
    paint: Physical<kind::Paint, 1, 1_000_000>,
    /// Share of water in what is sprayed.
    #[field("Water in it", usual = ["35 %", "65 %"])]
    water: Physical<kind::Percent, 0, 95_000>,
    /// In the room.
    #[field("Air temperature")]
    air: Physical<kind::Temperature, 0, 45_000>,
    /// Before the coat.
    #[field("Relative humidity now")]
    relative_humidity: Physical<kind::Humidity, 1_000, 100_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// If the room were shut and all the water stayed in its air.
    #[field("Humidity would rise by")]
    rise: Amount<kind::Humidity>,
    /// For each cubic metre of room.
    #[field("Water into the air")]
    water: Amount<kind::VapourDensity>,
    /// What this air holds when it is full.
    #[field("Full air holds")]
    full: Amount<kind::VapourDensity>,
    /// Room volumes of outside air as damp as the room's that carry it off at 10 points of rise.
    #[field("Air to carry it off")]
    air_volume: Amount<kind::RoomVolume>,
}

impl Calculator for RoomMoisture {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "room-moisture",
        title: "Water from a coat",
        question: "Will the room dry if I shut it?",
        step: 14,
        search: &["humidity", "shut room", "water", "condensation", "ventilate"],
        headline: &["/rise", "/water"],
        list: None,
        cautions: &["spray-mist"],
        sources: &[
            air::SOURCE,
            Source::new(
                THIS_BOOK,
                "half of a mixed waterborne coat is water until the sheet says",
                Standing::HouseDefault,
            ),
        ],
    };

    fn example(units: Units) -> Example {
        let input = match units {
            Units::Imperial => {
                json!({ "room": "2093 ft3", "paint": "0.404 gal", "water": "50 %", "air": "64.4 °F", "relative_humidity": "65 %" })
            }
            Units::Metric => {
                json!({ "room": "59.3 m3", "paint": "1.53 L", "water": "50 %", "air": "18 °C", "relative_humidity": "65 %" })
            }
        };
        Example {
            input,
            expects: vec![("/result/water/text", json!("12.9 g/m³"))],
            checked_against: "by hand: 1530 x 0.5 / 59.3 = 12.9 g/m³ (1.53 L is 0.404 US gal)",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let grams = input.paint.get() * 1_000.0 * input.water.get() / 100.0;
        let water = grams / input.room.get();
        let full = air::saturation_g_m3(input.air.get());
        let rise = 100.0 * water / full;
        let carried = grams / (full * 0.10);
        let density = Amount::<kind::VapourDensity>::of;
        let working = vec![
            Step::new("water into each cubic metre, at a gram to the millilitre")
                .by("1000 * P * w / 100 / V")
                .given("P", "paint sprayed, in litres", input.paint)
                .given("w", "water in it", input.water)
                .given("V", "room", input.room)
                .gives("q", "water into the air", density(water)),
            Step::new("rise of humidity in a shut room")
                .by("100 * q / f")
                .given("q", "water into the air", density(water))
                .given("f", "full air holds", density(full))
                .gives("r", "rise, in points", Amount::<kind::Humidity>::of(rise)),
        ];
        let mut notes = Vec::new();
        let carries = 100.0 - input.relative_humidity.get();
        if rise > carries {
            notes.push(Note::hold(
                Words::new(
                    "More water than this air can take up: after {} it is full, and the rest goes to walls and glass.",
                )
                .with(Amount::<kind::Points>::of(carries)),
            ));
        }
        if input.relative_humidity.get() + rise > 85.0 {
            notes.push(Note::check(
                Words::new("From {} this would pass 85 %: keep filtered air moving through the room; shutting it keeps the coat wet.").with(input.relative_humidity),
            ));
        }
        Ok(Answer {
            result: Output {
                rise: Amount::of(rise.min(100.0)),
                water: density(water),
                full: density(full),
                air_volume: Amount::of(carried),
            },
            working,
            notes,
        })
    }
}
