//! Solvent vapour against its lower flammable limit, if all of it evaporated into the room.

use serde_json::json;

use crate::catalogue::works::{GEOMETRY, OSHA_SPRAY};
use crate::catalogue::{
    Answer, Calculator, Card, Cited, Example, Fault, Input, Note, Output, Source, Standing, Step, Words,
};
use crate::quantity::{Amount, Physical, Units, kind};

/// Litres that a mole of gas fills at 20 °C and 101.325 kPa (ideal gas).
pub const MOLAR_LITRES: f64 = 24.055;
/// Share of the lower flammable limit that spray rooms stay under.
pub const SPRAY_SHARE: Cited<f64> =
    Cited::new(0.25, Source::new(OSHA_SPRAY, "25 % of the lower explosive limit", Standing::FromMemory));

/// Vapour in the room as a share of its lower flammable limit, all evaporated and evenly mixed.
///
/// Units: grams, g/mol, percent by volume, m³.
pub fn share_of_flammable_limit(grams: f64, molar_mass: f64, limit_percent: f64, room_m3: f64) -> f64 {
    let vapour_m3 = grams / molar_mass * MOLAR_LITRES / 1_000.0;
    vapour_m3 / room_m3 / (limit_percent / 100.0)
}

/// All of the air, in parts in a million.
const WHOLE: f64 = 1e6;

pub(crate) struct SolventVapour;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// All of it, thinner and cleaning too.
    #[field("Solvent")]
    solvent: Physical<kind::Mass, 1, 1_000_000>,
    /// From the safety data sheet, in g/mol.
    #[field("Molar mass (g/mol)")]
    molar_mass: Physical<kind::Number, 10_000, 500_000>,
    /// From the safety data sheet, by volume of air.
    #[field("Lower flammable limit")]
    lower_limit: Physical<kind::Percent, 100, 30_000>,
    /// Length times width times height; the smallest space it can gather in.
    #[field("Room")]
    room: Physical<kind::RoomVolume, 100, 100_000_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Of the lower flammable limit, evenly mixed.
    #[field("Of the lower flammable limit")]
    share: Amount<kind::Percent>,
    /// That it fills as gas.
    #[field("Vapour")]
    vapour: Amount<kind::RoomVolume>,
    /// In the room's air.
    #[field("In the air")]
    parts: Amount<kind::Parts>,
}

impl Calculator for SolventVapour {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "solvent-vapour",
        title: "Solvent vapour and fire",
        question: "How near does this solvent bring the room to burning?",
        step: 14,
        search: &["flammable", "LEL", "LFL", "explosion", "thinner", "vapour"],
        headline: &["/share", "/parts"],
        list: None,
        cautions: &["solvent-vapour", "respirator-limits"],
        sources: &[Source::new(GEOMETRY, "ideal gas, 24.055 L/mol at 20 °C", Standing::Derived), SPRAY_SHARE.source],
    };

    fn example(units: Units) -> Example {
        let room = if units == Units::Metric { "34 m3" } else { "1200.7 ft3" };
        Example {
            input: json!({ "solvent": "200 g", "molar_mass": 46.07, "lower_limit": "3.3 %", "room": room }),
            expects: vec![("/result/share/text", json!("9.31%"))],
            checked_against: "by hand: 200 / 46.07 x 24.055 / 1000 = 0.10443 m³; / 34 / 0.033 = 0.0931",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let grams = input.solvent.get() * 1_000.0;
        let vapour = grams / input.molar_mass.get() * MOLAR_LITRES / 1_000.0;
        let share = share_of_flammable_limit(grams, input.molar_mass.get(), input.lower_limit.get(), input.room.get());
        let volume = Amount::<kind::RoomVolume>::of;
        let percent = Amount::<kind::Percent>::of;
        let working = vec![
            Step::new("vapour at 20 °C")
                .by("1000 * m / M * 24.055 / 1000")
                .given("m", "solvent, in kg", input.solvent)
                .given("M", "molar mass", input.molar_mass)
                .gives("v", "vapour, in m³", volume(vapour)),
            Step::new("of the lower flammable limit")
                .by("100 * v / V / (L / 100)")
                .given("v", "vapour, in m³", volume(vapour))
                .given("V", "room, in m³", input.room)
                .given("L", "lower flammable limit", input.lower_limit)
                .gives("s", "share", percent(100.0 * share)),
        ];
        let words = Words::new("{} of the lower flammable limit, compared with {} under which spray rooms are kept. Vapour is heavier than air: at the floor and near the pot it is far more.")
            .with_both(percent(100.0 * share), percent(100.0 * SPRAY_SHARE.value));
        let mut notes = vec![if share >= SPRAY_SHARE.value { Note::hold(words) } else { Note::remark(words) }];
        let parts = 1e6 * vapour / input.room.get();
        if parts > WHOLE {
            notes.push(Note::hold("More vapour than the room has air. It cannot all evaporate there; the parts are told as a million in a million."));
        }
        Ok(Answer {
            result: Output {
                share: percent(100.0 * share),
                vapour: volume(vapour),
                parts: Amount::of(parts.min(WHOLE)),
            },
            working,
            notes,
        })
    }
}
