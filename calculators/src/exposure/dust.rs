//! What dust is compared with: limits and what controls were measured to do.
//!
//! Inhalable, total and respirable dust are taken by different samplers and cannot be compared with one another.

use schemars::JsonSchema;
use serde::Serialize;

use crate::catalogue::works::{NIOSH_99_113, NIOSH_REL, OSHA_SILICA, OSHA_Z1};
use crate::catalogue::{Source, Standing, Work};

/// A limit of dust in air over a working day.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct DustLimit {
    /// What is limited, by whom, by which sampler.
    #[schemars(title = "Limit")]
    pub agent: &'static str,
    /// In mg/m³, mean over eight hours.
    #[schemars(title = "mg/m³")]
    pub mg_m3: f64,
}

const fn limit(agent: &'static str, mg_m3: f64) -> DustLimit {
    DustLimit { agent, mg_m3 }
}

/// Limits of wood dust and silica. The UK softwood figure is from memory.
/// # Source
/// 29 CFR 1910.1000 table Z-1; NIOSH; Directive (EU) 2017/2398; UK EH40; 29 CFR 1926.1153.
pub const DUST_LIMITS: [DustLimit; 10] = [
    limit("wood dust, OSHA PEL as PNOR, total", 15.0),
    limit("wood dust, OSHA PEL as PNOR, respirable", 5.0),
    limit("wood dust, NIOSH REL", 1.0),
    limit("wood dust, ACGIH TLV 2007", 1.0),
    limit("wood dust, ACGIH TLV 2007, western red cedar", 0.5),
    limit("hardwood dust, EU, inhalable, from 18 Jan 2023", 2.0),
    limit("hardwood dust, UK WEL, inhalable", 3.0),
    limit("softwood dust, UK WEL, inhalable", 5.0),
    limit("respirable crystalline silica, OSHA PEL", 0.05),
    limit("respirable crystalline silica, OSHA action level", 0.025),
];

/// What a control was measured to take away.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
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
pub const LIMIT_SOURCES: [Source; 4] = [
    source(OSHA_Z1, "particulates not otherwise regulated"),
    source(NIOSH_REL, "wood dust 1 mg/m³, a carcinogen per NIOSH"),
    source(OSHA_SILICA, "50 µg/m³, action level 25 µg/m³"),
    source(NIOSH_99_113, "vacuum sanding cut dust by 80 to 97 %"),
];

/// Mean over eight hours of stretches of (mg/m³, hours); the time without exposure counts as nothing.
/// # Source
/// 29 CFR 1910.1000(d): the sum is always divided by eight hours.
pub fn eight_hour_mean(stretches: &[(f64, f64)]) -> f64 {
    stretches.iter().map(|(level, hours)| level * hours).sum::<f64>() / 8.0
}
