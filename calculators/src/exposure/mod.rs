//! What the work does to people: air, dust, vapour, noise, vibration, lead, heat.
//!
//! Nothing here clears anybody to work. A figure is set beside what it is compared with; local law, safety data sheets and
//! licensed practice decide.

pub mod air_changes;
pub mod dust;
pub mod dust_average;
pub mod dust_build_up;
pub mod handrail_clearance;
pub mod heat_clearance;
pub mod lead_area;
pub mod noise;
pub mod room_moisture;
pub mod sanding_dust;
pub mod solvent_vapour;
pub mod vapour_dilution;
pub mod vibration;
