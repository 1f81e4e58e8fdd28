//! Fresh air that thins solvent vapour: for health, and for fire.

use serde_json::json;

use crate::catalogue::works::{ACGIH_VENTILATION, OSHA_SPRAY};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// Cubic feet of vapour from a pint of liquid of specific gravity 1, times its molar mass, at 70 °F.
/// # Source
/// ACGIH Industrial Ventilation: Q = 403 × SG × 10⁶ × ER × K / (MW × C).
const CUBIC_FEET_PER_PINT: f64 = 403.0;
/// A US liquid pint in litres: an eighth of a gallon.
const PINT_L: f64 = 0.473_176_473;
/// A cubic foot a minute in m³/h.
const CFM_M3_H: f64 = 1.699_010_795_5;

/// Fresh air in m³/h that keeps a vapour at a level, with a mixing factor of 1 to 10.
pub fn dilution_air(
    gravity: f64,
    litres_per_hour: f64,
    molar_mass: f64,
    ppm: f64,
    mixing: f64,
) -> Amount<kind::AirFlow> {
    let pints_per_minute = litres_per_hour / 60.0 / PINT_L;
    Amount::of(CUBIC_FEET_PER_PINT * gravity * 1e6 * pints_per_minute * mixing / (molar_mass * ppm) * CFM_M3_H)
}

/// Air volume per volume of solvent that holds its vapour at a quarter of the lower limit.
///
/// Units: any volume of vapour per volume of liquid; limit in percent. 4 (100 - LEL) v / LEL.
/// # Source
/// 29 CFR 1910.94(c)(6), from memory.
pub fn volume_to_quarter_limit(vapour_per_liquid: f64, limit_percent: f64) -> f64 {
    4.0 * (100.0 - limit_percent) * vapour_per_liquid / limit_percent
}

pub(crate) struct VapourDilution;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// That evaporates in an hour.
    #[field("Solvent in an hour")]
    solvent: Physical<kind::Paint, 1, 1_000_000>,
    /// Weight against water, from the safety data sheet.
    #[field("Specific gravity")]
    gravity: Physical<kind::Number, 300, 2_000>,
    /// From the safety data sheet, in g/mol.
    #[field("Molar mass (g/mol)")]
    molar_mass: Physical<kind::Number, 10_000, 500_000>,
    /// The exposure limit you compare with; the local one counts.
    #[field("Level to hold")]
    level: Physical<kind::Parts, 100, 5_000_000>,
    /// 1 is a room stirred without corners, 10 a dead one.
    #[field("Mixing factor")]
    mixing: Physical<kind::Number, 1_000, 10_000>,
    /// From the safety data sheet, by volume of air.
    #[field("Lower flammable limit")]
    lower_limit: Physical<kind::Percent, 100, 30_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Steadily: the greater of the two below.
    #[field("Fresh air")]
    air: Amount<kind::AirFlow>,
    /// Steadily, for the level asked.
    #[field("For the level")]
    level_air: Amount<kind::AirFlow>,
    /// In each hour, so that the room stays at or below a quarter of the flammable limit.
    #[field("Air for a quarter of the flammable limit")]
    fire_volume: Amount<kind::RoomVolume>,
}

impl Calculator for VapourDilution {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "vapour-dilution",
        title: "Fresh air against vapour",
        question: "How much fresh air does this solvent need?",
        step: 14,
        search: &["dilution", "ventilation", "solvent", "ppm", "fresh air"],
        headline: &["/air", "/level_air", "/fire_volume"],
        list: None,
        cautions: &["solvent-vapour", "respirator-limits", "flue-gas"],
        sources: &[
            Source::new(ACGIH_VENTILATION, "403 × SG × 10⁶ × ER × K / (MW × C)", Standing::Published),
            Source::new(OSHA_SPRAY, "4 (100 - LEL) v / LEL", Standing::FromMemory),
        ],
    };

    fn example(units: Units) -> Example {
        // 0.05 pint a minute is 3 pints an hour: 1.419529 L.
        let air = if units == Units::Metric { "32177 m³/h" } else { "18938 ft³/min" };
        Example {
            input: json!({ "solvent": "1.419529419 L", "gravity": 0.866, "molar_mass": 92.14, "level": "50 ppm", "mixing": 5, "lower_limit": "1.4 %" }),
            expects: vec![("/result/air/text", json!(air))],
            checked_against: "ACGIH formula by hand: 403 x 0.866 x 1e6 x 0.05 x 5 / (92.14 x 50) = 18938.5 cfm",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let level_air = dilution_air(
            input.gravity.get(),
            input.solvent.get(),
            input.molar_mass.get(),
            input.level.get(),
            input.mixing.get(),
        );
        let vapour_per_litre =
            input.gravity.get() * 1_000.0 / input.molar_mass.get() * super::solvent_vapour::MOLAR_LITRES / 1_000.0;
        let fire = volume_to_quarter_limit(vapour_per_litre * input.solvent.get(), input.lower_limit.get());
        let fire_air = Amount::<kind::AirFlow>::of(fire);
        let air = if fire_air.get() > level_air.get() { fire_air } else { level_air };
        let volume = Amount::<kind::RoomVolume>::of;
        let working = vec![
            Step::new("fresh air for the level; 403 and pints are the formula's own units")
                .by("403 * g * 1000000 * s / 60 / 0.473176473 * k / (M * c) * 1.6990107955")
                .given("g", "specific gravity", input.gravity)
                .given("s", "solvent in an hour, in litres", input.solvent)
                .given("k", "mixing factor", input.mixing)
                .given("M", "molar mass", input.molar_mass)
                .given("c", "level to hold, in ppm", input.level)
                .gives("Q", "fresh air for the level", level_air),
            Step::new("vapour of that hour, in m³ at 20 °C")
                .by("s * g * 1000 / M * 24.055 / 1000")
                .given("s", "solvent in an hour, in litres", input.solvent)
                .given("g", "specific gravity", input.gravity)
                .given("M", "molar mass", input.molar_mass)
                .gives("v", "vapour", volume(vapour_per_litre * input.solvent.get())),
            Step::new("air in that hour that holds it at a quarter of the flammable limit")
                .by("4 * (100 - L) * v / L")
                .given("L", "lower flammable limit", input.lower_limit)
                .given("v", "vapour", volume(vapour_per_litre * input.solvent.get()))
                .gives("V", "air in that hour", volume(fire)),
            Step::new("the greater of the two, for each hour")
                .by("max(Q, V)")
                .given("Q", "for the level", level_air)
                .given("V", "for the fire figure", fire_air)
                .gives("A", "fresh air", air),
        ];
        let mut notes = Vec::new();
        if fire_air.get() > level_air.get() {
            notes.push(Note::hold(
                Words::new("The fire figure decides. The {} that the level asks for would leave the room above a quarter of the flammable limit; {} is the least.")
                    .with_both(level_air, fire_air),
            ));
        }
        notes.push(Note::check(
            "A planning figure beside what you compare it with. Extraction at the source beats diluting the room; the safety data sheet and the fire officer decide.",
        ));
        Ok(Answer { result: Output { air, level_air, fire_volume: volume(fire) }, working, notes })
    }
}
