//! Solvent in a coating (VOC): as regulations reckon it, as it leaves the tin, and after thinning.
//!
//! Regulations reckon without the water, so adding water changes nothing there; adding solvent does. Limits differ by place and by
//! product; the local rule and the product's sheet decide.

use serde_json::json;

use crate::catalogue::works::{CFR_40_59, TAC_30_115};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// Density of solvent by which rules turn a content per coating into one per solids: 7.36 lb/US gal.
/// # Source
/// 30 Texas Administrative Code 115.423.
pub const RULE_DENSITY_G_L: f64 = 7.36 * 119.826_427;

/// Solvent per volume of coating without its water and exempt solvents, in g/L; `None` when nothing but water is left.
///
/// Units: grams and litres. `volatiles` counts everything that leaves, water included.
/// # Source
/// 40 CFR 59.406, equation 5.
pub fn less_water(
    volatiles: f64,
    water: f64,
    exempt: f64,
    volume: f64,
    water_volume: f64,
    exempt_volume: f64,
) -> Option<f64> {
    let rest = volume - water_volume - exempt_volume;
    (rest > 0.0).then(|| (volatiles - water - exempt) / rest)
}

/// Solvent per volume of solids from solvent per volume of coating, in one unit; `None` at or above the solvent's own density.
/// # Source
/// 30 Texas Administrative Code 115.423: C / (1 - C/D).
pub fn per_solids(content: f64, density: f64) -> Option<f64> {
    (content < density).then(|| content / (1.0 - content / density))
}

pub(crate) struct SolventContent;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// The coating before thinning.
    #[field("Volume of coating")]
    volume: Physical<kind::Paint, 1, 10_000_000>,
    /// All that leaves while it dries, WATER INCLUDED.
    #[field("Volatiles in it")]
    volatiles: Physical<kind::Mass, 0, 20_000_000>,
    /// Water among the volatiles.
    #[field("Water in it, by weight")]
    water: Physical<kind::Mass, 0, 20_000_000>,
    /// The same water, by volume.
    #[field("Water in it, by volume")]
    water_volume: Physical<kind::Paint, 0, 10_000_000>,
    /// Solvents that the rule does not count, by weight.
    #[field("Exempt solvent, by weight")]
    exempt: Option<Physical<kind::Mass, 0, 20_000_000>>,
    /// Solvents that the rule does not count, by volume.
    #[field("Exempt solvent, by volume")]
    exempt_volume: Option<Physical<kind::Paint, 0, 10_000_000>>,
    /// Solvent thinner added; water does not count here.
    #[field("Solvent thinner added")]
    thinner: Option<Physical<kind::Paint, 0, 10_000_000>>,
    /// From the thinner's sheet.
    #[field("Density of the thinner")]
    thinner_density: Option<Physical<kind::Density, 500_000, 1_800_000>>,
    /// What the local rule allows for this kind of coating, without water.
    #[field("Limit to compare with")]
    limit: Option<Physical<kind::SolventContent, 0, 900_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// What rules are written in: without water and exempt solvents.
    #[field("Without water, as rules reckon")]
    less_water: Amount<kind::SolventContent>,
    /// What the room gets.
    #[field("Actual, water included")]
    actual: Amount<kind::SolventContent>,
    /// Solvent for each volume of what stays on the wall.
    #[field("For each volume of solids")]
    per_solids: Option<Amount<kind::SolventContent>>,
    /// Solvent that goes into the air.
    #[field("Solvent in all")]
    solvent: Amount<kind::Mass>,
    /// How much of this thinner reaches the limit exactly.
    #[field("Thinner that reaches the limit")]
    thinner_at_limit: Option<Amount<kind::Paint>>,
}

impl Calculator for SolventContent {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "solvent-content",
        title: "Solvent content (VOC)",
        question: "How much solvent is in it, before and after thinning?",
        step: 14,
        search: &["VOC", "solvent", "thinner", "limit", "emission"],
        headline: &["/less_water", "/actual"],
        list: None,
        cautions: &["solvent-vapour"],
        sources: &[
            Source::new(CFR_40_59, "equations 5 and 6", Standing::Published),
            Source::new(TAC_30_115, "per volume of solids, with 7.36 lb/US gal", Standing::Published),
        ],
    };

    fn example(units: Units) -> Example {
        let (without, actual) = match units {
            Units::Imperial => ("1.001 lb/US gal", "0.501 lb/US gal"),
            Units::Metric => ("120 g/L", "60 g/L"),
        };
        Example {
            input: json!({ "volume": "1 L", "volatiles": "560 g", "water": "500 g", "water_volume": "0.5 L" }),
            expects: vec![("/result/less_water/text", json!(without)), ("/result/actual/text", json!(actual))],
            checked_against: "40 CFR 59.406, equations 5 and 6, put in by hand: 60 / 0.5 and 60 / 1 g/L; 1 lb/US gal is 119.826 g/L",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let exempt = input.exempt.map_or(0.0, Physical::get);
        let exempt_volume = input.exempt_volume.map_or(0.0, Physical::get);
        let mut faults = Vec::new();
        let mass = Amount::<kind::Mass>::of;
        let litres = Amount::<kind::Paint>::of;
        if input.water.get() + exempt > input.volatiles.get() {
            let why = Words::new("water and exempt solvent are part of the volatiles, {}").with(input.volatiles);
            faults.push(Fault::new("/water", Words::of(mass(input.water.get() + exempt)), why, "500 g"));
        }
        if input.water_volume.get() + exempt_volume >= input.volume.get() {
            let why = Words::new("water and exempt solvent must be less than the coating, {}").with(input.volume);
            faults.push(Fault::new(
                "/water_volume",
                Words::of(litres(input.water_volume.get() + exempt_volume)),
                why,
                "0.5 L",
            ));
        }
        if input.thinner.is_some() && input.thinner_density.is_none() {
            faults.push(Fault::new(
                "/thinner_density",
                "nothing",
                "with thinner its density is needed; it stands on the thinner's sheet",
                "767 g/L",
            ));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let added = input.thinner.map_or(0.0, Physical::get);
        let density = input.thinner_density.map_or(0.0, Physical::get);
        let solvent_g = 1_000.0 * (input.volatiles.get() - input.water.get() - exempt) + added * density;
        let counted = input.volume.get() + added - input.water_volume.get() - exempt_volume;
        let whole = input.volume.get() + added;
        let (without, actual) = (solvent_g / counted, solvent_g / whole);
        let content = Amount::<kind::SolventContent>::of;
        let mut working = vec![
            Step::new("solvent in all, in kg")
                .by("s - w - x + a * d / 1000")
                .given("s", "volatiles", input.volatiles)
                .given("w", "water", input.water)
                .given("x", "exempt solvent", mass(exempt))
                .given("a", "thinner added, in litres", litres(added))
                .given("d", "density of the thinner, in g/L", Amount::<kind::Density>::of(density))
                .gives("m", "solvent in all", mass(solvent_g / 1_000.0)),
            Step::new("without water, as rules reckon")
                .by("1000 * m / (V + a - v - y)")
                .given("m", "solvent in all", mass(solvent_g / 1_000.0))
                .given("V", "coating", input.volume)
                .given("a", "thinner added", litres(added))
                .given("v", "water by volume", input.water_volume)
                .given("y", "exempt solvent by volume", litres(exempt_volume))
                .gives("C", "solvent content", content(without)),
            Step::new("actual, water included")
                .by("1000 * m / (V + a)")
                .given("m", "solvent in all", mass(solvent_g / 1_000.0))
                .given("V", "coating", input.volume)
                .given("a", "thinner added", litres(added))
                .gives("c", "actual content", content(actual)),
        ];
        let thinner_at_limit = input.limit.zip(input.thinner_density).and_then(|(limit, density)| {
            let base_g = 1_000.0 * (input.volatiles.get() - input.water.get() - exempt);
            let base_l = input.volume.get() - input.water_volume.get() - exempt_volume;
            let room = density.get() - limit.get();
            let litres_more = (limit.get() * base_l - base_g) / room;
            if room <= 0.0 || litres_more < 0.0 {
                return None;
            }
            working.push(
                Step::new("thinner that reaches the limit exactly")
                    .by("(g * b - 1000 * m) / (d - g)")
                    .given("g", "limit", limit)
                    .given("b", "coating without water, in litres", litres(base_l))
                    .given("m", "solvent before thinning", mass(base_g / 1_000.0))
                    .given("d", "density of the thinner", density)
                    .gives("a", "thinner", litres(litres_more)),
            );
            Some(litres(litres_more))
        });
        let mut notes = vec![Note::remark(
            "Limits differ by place and by kind of coating: the local rule and the product's sheet decide.",
        )];
        if let Some(limit) = input.limit {
            let side = if without > limit.get() { Note::hold } else { Note::remark };
            notes.push(side(
                Words::new("{} without water, compared with the limit of {} that you gave.")
                    .with(content(without))
                    .with(limit),
            ));
        }
        Ok(Answer {
            result: Output {
                less_water: content(without),
                actual: content(actual),
                per_solids: per_solids(without, RULE_DENSITY_G_L).map(content),
                solvent: mass(solvent_g / 1_000.0),
                thinner_at_limit,
            },
            working,
            notes,
        })
    }
}
