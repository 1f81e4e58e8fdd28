//! The one list of works that formulas and constants are taken from.

use super::card::Work;

const fn work(title: &'static str, edition: &'static str) -> Work {
    Work { title, edition }
}

/// The trade's own practice, which nobody published.
pub const PRACTICE: Work = work("Practice of the trade", "");
/// A default or a model of this book's own.
pub const THIS_BOOK: Work = work("This book", "");
/// Plane geometry and arithmetic.
pub const GEOMETRY: Work = work("Plane geometry and arithmetic", "");
/// The inch, the pound and the gallon.
pub const HANDBOOK_44: Work =
    work("NIST Handbook 44, Specifications, Tolerances, and Other Technical Requirements", "appendix C");
/// How units are written and rounded.
pub const SP_811: Work = work("NIST Special Publication 811, Guide for the Use of the SI", "2008");
/// Dressed sizes of softwood boards.
pub const PS_20: Work = work("US Department of Commerce PS 20, American Softwood Lumber Standard", "PS 20-20");
/// Dimensioning of drawings.
pub const ISO_129: Work = work("ISO 129-1, Presentation of dimensions and tolerances", "");
/// Vapour pressure, humidity ratio, wet bulb.
pub const ASHRAE_FUNDAMENTALS: Work = work("ASHRAE Handbook, Fundamentals, chapter 1, Psychrometrics", "2017");
/// Surface preparation: condensation.
pub const ISO_8502_4: Work = work("ISO 8502-4, Guidance on the estimation of the probability of condensation", "2017");
/// Moisture content of wood in service.
pub const FPL_0268: Work = work("USDA Forest Products Laboratory, Research Note FPL-RN-0268", "1998");
/// Wood as an engineering material.
pub const WOOD_HANDBOOK: Work = work("USDA Forest Products Laboratory, Wood Handbook", "FPL-GTR-282 and earlier");
/// Fibreboard for interior use.
pub const ANSI_A208_2: Work = work("ANSI A208.2, Medium Density Fiberboard for Interior Applications", "");
/// What makers of panels publish on movement.
pub const PANEL_MAKERS: Work = work("Industry guidance on medium-density fibreboard", "");
/// Holding of nails.
pub const NDS: Work = work("National Design Specification for Wood Construction", "2018");
/// Sizes of nails.
pub const ASTM_F1667: Work = work("ASTM F1667, Driven Fasteners: Nails, Spikes, and Staples", "");
/// Safety of nailers.
pub const NIOSH_NAIL_GUN: Work = work("NIOSH and OSHA, Nail Gun Safety: A Guide for Construction Contractors", "2011");
/// Grains of coated abrasives, P grades.
pub const ISO_6344: Work = work("ISO 6344, Coated abrasives: grain size analysis (FEPA 43)", "");
/// Grains of coated abrasives, CAMI grades.
pub const ANSI_B74_18: Work = work("ANSI B74.18, Grading of certain abrasive grain on coated abrasive material", "");
/// Emission limits of surface coating.
pub const CFR_40_60: Work = work("40 CFR part 60, Standards of Performance, surface coating", "60.313 and 60.723");
/// Transfer asked of low-pressure guns.
pub const HVLP_RULES: Work = work("South Coast Air Quality Management District, rule 1136, wood products coatings", "");
/// VOC of architectural coatings.
pub const CFR_40_59: Work = work("40 CFR part 59 subpart D, architectural coatings", "59.406");
/// VOC per volume of solids.
pub const TAC_30_115: Work = work("30 Texas Administrative Code 115.423", "");
/// Flow cups with a long nozzle.
pub const ISO_2431: Work = work("ISO 2431, Determination of flow time by use of flow cups", "");
/// Flow cups with a short nozzle.
pub const ASTM_D1200: Work = work("ASTM D1200, Viscosity by Ford viscosity cup", "");
/// Dip cups.
pub const ASTM_D4212: Work = work("ASTM D4212, Viscosity by dip-type viscosity cups", "");
/// A withdrawn German cup.
pub const DIN_53211: Work = work("DIN 53211, Flow cup with 4 mm nozzle", "withdrawn 1996");
/// Notched gauges.
pub const ASTM_D4414: Work = work("ASTM D4414, Wet film thickness by notch gages", "");
/// Gloss of paint.
pub const ISO_2813: Work = work("ISO 2813, Determination of gloss value at 20, 60 and 85 degrees", "");
/// Gloss levels of architectural paint.
pub const GLOSS_LEVELS: Work = work("Master Painters Institute, gloss and sheen standard", "");
/// Colour difference.
pub const ISO_11664_6: Work = work("ISO/CIE 11664-6, Colorimetry part 6: CIEDE2000", "2014");
/// Test pairs for colour difference.
pub const CIEDE2000_NOTES: Work =
    work("The CIEDE2000 color-difference formula: implementation notes, Color Research and Application 30", "2005");
/// Colorimetry.
pub const CIE_15: Work = work("CIE 15, Colorimetry", "2004");
/// Colour on screens.
pub const IEC_61966: Work = work("IEC 61966-2-1, Default RGB colour space sRGB", "1999");
/// Contrast of text and controls.
pub const WCAG: Work = work("W3C Web Content Accessibility Guidelines", "2.2");
/// Clearing the air of a room.
pub const CDC_VENTILATION: Work =
    work("CDC Guidelines for Environmental Infection Control in Health-Care Facilities, table B.1", "2003");
/// Dilution of solvent vapour.
pub const OSHA_SPRAY: Work = work("29 CFR 1910.94(c) and 1910.107, spray finishing", "");
/// Fresh air for health.
pub const ACGIH_VENTILATION: Work = work("ACGIH Industrial Ventilation, dilution ventilation for health", "");
/// Dust limits, United States.
pub const OSHA_Z1: Work = work("29 CFR 1910.1000, table Z-1", "");
/// Respirable crystalline silica in construction.
pub const OSHA_SILICA: Work = work("29 CFR 1926.1153, Respirable crystalline silica", "");
/// Dust recommendations.
pub const NIOSH_REL: Work = work("NIOSH Pocket Guide to Chemical Hazards", "");
/// Sanding of joint compound.
pub const NIOSH_99_113: Work = work("NIOSH 99-113, Control of Drywall Sanding Dust Exposures", "1999");
/// Noise in general industry.
pub const OSHA_NOISE: Work = work("29 CFR 1910.95, Occupational noise exposure, appendix A", "");
/// Noise in construction.
pub const OSHA_NOISE_CONSTRUCTION: Work = work("29 CFR 1926.52, Occupational noise exposure, table D-2", "");
/// Noise, recommended.
pub const NIOSH_98_126: Work =
    work("NIOSH 98-126, Criteria for a Recommended Standard: Occupational Noise Exposure", "1998");
/// Noise at work, Europe.
pub const EU_NOISE: Work = work("Directive 2003/10/EC on noise; UK Control of Noise at Work Regulations 2005", "2003");
/// Wood dust and silica, Europe.
pub const EU_CARCINOGENS: Work = work("Directive 2004/37/EC as amended by (EU) 2017/2398", "2017");
/// Workplace limits, United Kingdom.
pub const EH40: Work = work("HSE EH40/2005, Workplace exposure limits", "fourth edition 2020");
/// Threshold limit values.
pub const ACGIH_TLV: Work = work("ACGIH, Threshold Limit Values", "2007");
/// Cable zones, United Kingdom.
pub const BS_7671: Work = work("BS 7671, Requirements for Electrical Installations", "2018");
/// Handrails, United States, accessible places.
pub const ADA_2010: Work = work("2010 ADA Standards for Accessible Design", "");
/// Handrails, United States, public buildings.
pub const IBC_1014: Work = work("International Building Code", "editions differ");
/// Handrails, United Kingdom.
pub const UK_STAIRS: Work = work("Guidance on stairs in the United Kingdom, from a summary", "");
/// Vibration at the hand, Europe.
pub const EU_VIBRATION: Work = work("Directive 2002/44/EC on vibration", "2002");
/// Vibration at the hand, measurement.
pub const ISO_5349: Work = work("ISO 5349-1, Measurement of human exposure to hand-transmitted vibration", "2001");
/// Electrical boxes.
pub const NFPA_70: Work = work("NFPA 70, National Electrical Code", "as quoted in public summaries");
/// Lead paint in homes.
pub const CFR_40_745: Work = work("40 CFR part 745, Lead-based paint", "745.83 and 745.103");
/// Clearance round a fireplace.
pub const IRC_R1001: Work = work("International Residential Code R1001.11, fireplace clearance", "editions differ");
/// Handrails.
pub const IRC_R311: Work = work("International Residential Code R311.7.8, handrails", "editions differ");
/// Three-point estimates.
pub const PERT: Work = work("US Navy Special Projects Office, PERT Summary Report, Phase 1", "1958");
/// The critical path.
pub const NETWORK_TEXTBOOKS: Work =
    work("Critical-Path Planning and Scheduling, Eastern Joint Computer Conference", "1959");
