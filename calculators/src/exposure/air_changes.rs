//! Air changes, and how long a fan takes to clear a room once nothing more is given off.

use serde_json::json;

use crate::catalogue::works::CDC_VENTILATION;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step};
use crate::quantity::{Amount, Physical, Units, kind};

/// Least speed of air through the make-up opening that keeps dust going one way: 100 ft/min. Common practice, no source.
const MAKE_UP_M_S: f64 = 100.0 * 0.3048 / 60.0;

/// Air changes in an hour: flow in m³/h over room volume in m³.
pub fn air_changes(flow: Amount<kind::AirFlow>, room: Amount<kind::RoomVolume>) -> f64 {
    flow.get() / room.get()
}

/// Minutes until a share of what hangs in the air is left, with mixing factor 1 (ideal) to 10 (poor).
///
/// Formula: mixing × ln(1 / left) / air changes × 60.
/// # Source
/// CDC 2003, table B.1; the table holds for perfect mixing, its note multiplies by the factor.
pub fn clearing_minutes(changes_per_hour: f64, left: f64, mixing: f64) -> f64 {
    mixing * libm::log(1.0 / left) / changes_per_hour * 60.0
}

pub(crate) struct AirChanges;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Length times width times height.
    #[field("Room")]
    room: Physical<kind::RoomVolume, 1_000, 100_000_000>,
    /// What really leaves the room: the fan's free-air figure is never reached through a hose and a filter.
    #[field("Extraction")]
    extraction: Physical<kind::AirFlow, 1_000, 1_000_000_000>,
    /// Of what hangs in the air when the work stops.
    #[field("To be cleared", usual = ["90 %", "99.9 %"])]
    cleared: Physical<kind::Percent, 10_000, 99_990>,
    /// 1 is a room stirred without corners, 10 a dead one; 1 needs a reason.
    #[field("Mixing factor", usual = ["2", "5"])]
    mixing: Physical<kind::Number, 1_000, 10_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// From the moment nothing more is given off.
    #[field("Clearing time")]
    minutes: Amount<kind::ClearingTime>,
    /// In an hour.
    #[field("Air changes an hour")]
    changes: Amount<kind::Number>,
    /// Until the share is cleared.
    #[field("Air changes needed")]
    needed: Amount<kind::Number>,
    /// If the room mixed without corners.
    #[field("With perfect mixing")]
    ideal: Amount<kind::ClearingTime>,
    /// Free area for air to come in, at 100 ft/min (0.5 m/s).
    #[field("Make-up opening")]
    opening: Amount<kind::Area>,
}

impl Calculator for AirChanges {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "air-changes",
        title: "Air changes and clearing time",
        question: "How long does the fan take to clear the room?",
        step: 7,
        search: &["extraction", "ventilation", "fan", "cfm", "mask off", "clear the air", "ACH"],
        headline: &["/minutes", "/changes"],
        list: None,
        cautions: &["respirator-limits", "sanding-dust", "flue-gas"],
        sources: &[Source::new(CDC_VENTILATION, "minutes for 99 % and 99.9 % by air changes", Standing::Published)],
    };

    fn example(units: Units) -> Example {
        let (room, flow) = if units == Units::Metric { ("59.3 m3", "850 m3/h") } else { ("2093 ft3", "500 cfm") };
        Example {
            input: json!({ "room": room, "extraction": flow, "cleared": "99 %", "mixing": 3 }),
            expects: vec![("/result/changes/text", json!("14.33")), ("/result/minutes/text", json!("57.9 min"))],
            checked_against: "by hand: 500 x 60 / 2093 = 14.33 (850 / 59.3 = 14.33); 3 x 4.605 x 60 / 14.33 = 57.84, told up to 57.9",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let changes = air_changes(input.extraction.amount(), input.room.amount());
        let left = 1.0 - input.cleared.get() / 100.0;
        let minutes = clearing_minutes(changes, left, input.mixing.get());
        let needed = input.mixing.get() * libm::log(1.0 / left);
        let number = Amount::<kind::Number>::of;
        let working = vec![
            Step::new("air changes in an hour")
                .by("Q / V")
                .given("Q", "extraction", input.extraction)
                .given("V", "room", input.room)
                .gives("n", "air changes", number(changes)),
            Step::new("air changes needed")
                .by("k * ln(1 / (1 - c / 100))")
                .given("k", "mixing factor", input.mixing)
                .given("c", "to be cleared", input.cleared)
                .gives("N", "air changes needed", number(needed)),
            Step::new("clearing time")
                .by("N / n * 60")
                .given("N", "air changes needed", number(needed))
                .given("n", "air changes", number(changes))
                .gives("t", "clearing time", Amount::<kind::Minutes>::of(minutes)),
        ];
        let mut notes = vec![Note::remark(
            "Counts from when the source has stopped. Dust on ledges is stirred up again: vacuum first. This says nothing on which mask is enough; the safety data sheet and a hygienist do.",
        )];
        if input.mixing.get() < 2.0 {
            notes.push(Note::check("A mixing factor below 2 is a room stirred into every corner: write down why."));
        }
        Ok(Answer {
            result: Output {
                minutes: Amount::of(minutes),
                changes: number(changes),
                needed: number(needed),
                ideal: Amount::of(minutes / input.mixing.get()),
                opening: Amount::of(input.extraction.get() / 3_600.0 / MAKE_UP_M_S),
            },
            working,
            notes,
        })
    }
}
