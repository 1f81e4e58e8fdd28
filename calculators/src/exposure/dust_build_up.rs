//! How a steady source fills a ventilated room, and where it levels off.

use serde_json::json;

use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step};
use crate::quantity::{Amount, Physical, Units, kind};

/// Level in a well-mixed room, mg/m³, after a time with a steady source in mg/min and a flow in m³/min.
pub fn build_up(source_mg_min: f64, flow_m3_min: f64, room_m3: f64, minutes: f64) -> f64 {
    source_mg_min / flow_m3_min * (1.0 - libm::exp(-flow_m3_min * minutes / room_m3))
}

pub(crate) struct DustBuildUp;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// That gets into the air in a minute, in mg.
    #[field("Given off in a minute (mg)")]
    source: Physical<kind::Number, 0, 1_000_000_000>,
    /// What really leaves the room.
    #[field("Extraction")]
    extraction: Physical<kind::AirFlow, 1_000, 1_000_000_000>,
    /// Length times width times height.
    #[field("Room")]
    room: Physical<kind::RoomVolume, 1_000, 100_000_000>,
    /// Since the work began.
    #[field("After")]
    after: Physical<kind::Minutes, 0, 1_440_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// At that moment.
    #[field("In the air")]
    level: Amount<kind::DustConcentration>,
    /// Where it levels off.
    #[field("Levels off at")]
    steady: Amount<kind::DustConcentration>,
}

impl Calculator for DustBuildUp {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "dust-build-up",
        title: "Dust building up",
        question: "How does the air fill while we work with the fan on?",
        step: 12,
        search: &["build-up", "steady state", "fan", "dust"],
        headline: &["/level", "/steady"],
        list: None,
        cautions: &["sanding-dust", "respirator-limits"],
        sources: &[Source::new(
            GEOMETRY,
            "a well-mixed room with a steady source: G/Q (1 - exp(-Qt/V))",
            Standing::Derived,
        )],
    };

    fn example(units: Units) -> Example {
        let (flow, room) = if units == Units::Metric { ("340 m3/h", "34 m3") } else { ("200 cfm", "1200 ft3") };
        let steady = if units == Units::Metric { "8.824 mg/m³" } else { "8.829 mg/m³" };
        Example {
            input: json!({ "source": 50, "extraction": flow, "room": room, "after": "10 min" }),
            expects: vec![("/result/steady/text", json!(steady))],
            checked_against: "by hand: 50 mg/min over 340/60 m³/min, and over 200 ft³/min = 5.663 m³/min",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let flow = input.extraction.get() / 60.0;
        let level = build_up(input.source.get(), flow, input.room.get(), input.after.get());
        let mg = Amount::<kind::DustConcentration>::of;
        let working = vec![
            Step::new("where it levels off, given off over what is drawn off")
                .by("60 * G / Q")
                .given("G", "given off in a minute", input.source)
                .given("Q", "extraction", input.extraction)
                .gives("S", "levels off at", mg(input.source.get() / flow)),
            Step::new("after this time")
                .by("S * (1 - exp(-Q / 60 * t / V))")
                .given("S", "levels off at", mg(input.source.get() / flow))
                .given("Q", "extraction", input.extraction)
                .given("t", "minutes", input.after)
                .given("V", "room", input.room)
                .gives("c", "in the air", mg(level)),
        ];
        let notes = vec![Note::remark("A mean of the room. At the tool it is many times that; capture it there.")];
        Ok(Answer { result: Output { level: mg(level), steady: mg(input.source.get() / flow) }, working, notes })
    }
}
