//! What dust is compared with: limits and what controls were measured to do.
//!
//! Inhalable, total and respirable dust are taken by different samplers and cannot be compared with one another.

use crate::catalogue::works::{ACGIH_TLV, EH40, EU_CARCINOGENS, NIOSH_99_113, NIOSH_REL, OSHA_SILICA, OSHA_Z1};
use crate::catalogue::{Source, Standing, Work};

/// What a limit is a limit of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dust {
    /// Wood dust, or dust that is not otherwise regulated.
    Wood,
    /// Respirable crystalline silica.
    Silica,
}

/// A limit of dust in air over a working day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DustLimit {
    /// Of what.
    pub dust: Dust,
    /// What is limited, by whom, by which sampler.
    pub agent: &'static str,
    /// In mg/m³, mean over eight hours.
    pub mg_m3: f64,
    /// Where it stands.
    pub source: Source,
}

const fn wood(agent: &'static str, mg_m3: f64, source: Source) -> DustLimit {
    DustLimit { dust: Dust::Wood, agent, mg_m3, source }
}

const fn silica(agent: &'static str, mg_m3: f64, source: Source) -> DustLimit {
    DustLimit { dust: Dust::Silica, agent, mg_m3, source }
}

/// Limits of wood dust and silica, each with where it stands. OSHA, NIOSH and ACGIH: United States; PNOR: particulates not otherwise
/// regulated; WEL: workplace exposure limit.
pub const DUST_LIMITS: [DustLimit; 13] = [
    wood("wood dust, OSHA PEL as PNOR, total", 15.0, Z1),
    wood("wood dust, OSHA PEL as PNOR, respirable", 5.0, Z1),
    wood("wood dust, NIOSH REL", 1.0, REL),
    wood("wood dust, ACGIH TLV 2007", 1.0, TLV),
    wood("wood dust, ACGIH TLV 2007, western red cedar", 0.5, TLV),
    wood("hardwood dust, EU, inhalable, from 18 Jan 2023", 2.0, EU),
    wood("hardwood dust, UK WEL, inhalable", 3.0, UK),
    wood("softwood dust, UK WEL, inhalable", 5.0, UK),
    silica("respirable crystalline silica, OSHA PEL", 0.05, SILICA),
    silica("respirable crystalline silica, OSHA action level", 0.025, SILICA),
    silica("respirable crystalline silica, EU", 0.1, EU),
    silica("respirable crystalline silica, UK WEL", 0.1, UK),
    silica("respirable crystalline silica, NIOSH REL", 0.05, REL_SILICA),
];

const Z1: Source = source(OSHA_Z1, "particulates not otherwise regulated");
const REL: Source = source(NIOSH_REL, "wood dust 1 mg/m³, a carcinogen per NIOSH");
const REL_SILICA: Source = Source::new(NIOSH_REL, "crystalline silica 0.05 mg/m³, respirable", Standing::FromMemory);
const TLV: Source = Source::new(ACGIH_TLV, "wood dust 1 mg/m³, western red cedar 0.5 mg/m³", Standing::FromMemory);
const EU: Source = Source::new(
    EU_CARCINOGENS,
    "annex III: hardwood dust 2 mg/m³ inhalable, respirable crystalline silica 0.1 mg/m³",
    Standing::FromMemory,
);
const UK: Source = Source::new(
    EH40,
    "table 1, as quoted in public summaries: hardwood dust 3 mg/m³, softwood dust 5 mg/m³, respirable crystalline silica 0.1 mg/m³",
    Standing::Published,
);
const SILICA: Source = source(OSHA_SILICA, "50 µg/m³, action level 25 µg/m³");

/// What a control was measured to take away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DustControl {
    /// The tool or way of working.
    pub tool: &'static str,
    /// Least and most reduction, percent.
    pub reduction: (f64, f64),
    /// Compared with what.
    pub against: &'static str,
}

/// Reductions measured when joint compound is sanded.
/// # Source
/// NIOSH ECTB 208-11a (1995), NIOSH 99-113; Journal of Occupational and Environmental Hygiene 6(7), 2009.
pub const DUST_CONTROLS: [DustControl; 5] = [
    DustControl {
        tool: "vacuum sanding, five commercial controls",
        reduction: (80.0, 97.0),
        against: "sanding without one",
    },
    DustControl { tool: "ventilated sander", reduction: (88.0, 88.0), against: "a block sander, respirable dust" },
    DustControl { tool: "wet sponge", reduction: (60.0, 60.0), against: "a block sander, respirable dust" },
    DustControl { tool: "pole sander", reduction: (58.0, 58.0), against: "a block sander, respirable dust" },
    DustControl { tool: "plain pole sanding", reduction: (45.0, 45.0), against: "hand sanding; almost" },
];

/// Quartz in joint compound, percent by weight, least and most on data sheets.
/// # Source
/// NIOSH engineering-control database: data sheets reviewed 0.1 to 2.5 %.
pub const JOINT_COMPOUND_QUARTZ: (f64, f64) = (0.1, 2.5);

const fn source(work: Work, locator: &'static str) -> Source {
    Source::new(work, locator, Standing::Published)
}

/// Where the limits come from.
pub const LIMIT_SOURCES: [Source; 8] =
    [Z1, REL, SILICA, EU, UK, TLV, REL_SILICA, source(NIOSH_99_113, "vacuum sanding cut dust by 80 to 97 %")];

/// Mean over eight hours of stretches of (mg/m³, hours); the time without exposure counts as nothing.
/// # Source
/// 29 CFR 1910.1000(d): the sum is always divided by eight hours.
pub fn eight_hour_mean(stretches: &[(f64, f64)]) -> f64 {
    stretches.iter().map(|(level, hours)| level * hours).sum::<f64>() / 8.0
}
