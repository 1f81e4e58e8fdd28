//! Wood and panel in damp and dry air: equilibrium moisture, and how far a board moves.
//!
//! | for | method | leaves out |
//! | --- | --- | --- |
//! | moisture of solid wood | two-hydrate sorption equation | species, hysteresis; print one decimal |
//! | width of solid wood | coefficient × width × change, 6 to 14 % | lengthways, which is taken as nothing |
//! | fibreboard | a share of its length or thickness for each point | paint, which slows it |

use crate::catalogue::works::{ANSI_A208_2, FPL_0268, PANEL_MAKERS, WOOD_HANDBOOK};
use crate::catalogue::{Cited, Source, Standing};
use crate::quantity::Length;

/// Where the moisture equation comes from.
pub const EMC_SOURCE: Source = Source::new(
    FPL_0268,
    "equation for equilibrium moisture content, °C form; also Wood Handbook chapter 4",
    Standing::Published,
);
/// Where the width equation comes from.
pub const WIDTH_SOURCE: Source =
    Source::new(WOOD_HANDBOOK, "table 13-5, ΔD = D C ΔM, 6 to 14 % moisture", Standing::Published);
/// Fibreboard: share of length or width for each point of moisture.
pub const MDF_IN_PLANE: Cited<f64> =
    Cited::new(0.0005, Source::new(PANEL_MAKERS, "0.05 % in plane for 1 % moisture", Standing::FromMemory));
/// Fibreboard: share of thickness for each point of moisture.
pub const MDF_THICKNESS: Cited<f64> =
    Cited::new(0.0035, Source::new(PANEL_MAKERS, "0.35 % in thickness for 1 % moisture", Standing::FromMemory));
/// Fibreboard: upper bound of linear expansion in the product standard's test.
pub const MDF_BOUND: Cited<f64> = Cited::new(
    0.0033,
    Source::new(
        ANSI_A208_2,
        "linear expansion under 0.33 %; humidity interval of the test not confirmed",
        Standing::Published,
    ),
);

/// Equilibrium moisture content of solid wood, percent, in air of -1 to 132 °C and 0 to 99 % RH.
/// # Source
/// USDA FPL-RN-0268: two-hydrate sorption, constants for °C.
pub fn equilibrium_moisture(celsius: f64, rh_percent: f64) -> f64 {
    let (t, h) = (celsius, rh_percent / 100.0);
    let w = 349.0 + 1.29 * t + 0.0135 * t * t;
    let k = 0.805 + 0.000_736 * t - 0.000_002_73 * t * t;
    let k1 = 6.27 - 0.009_38 * t - 0.000_303 * t * t;
    let k2 = 1.91 + 0.0407 * t - 0.000_293 * t * t;
    let kh = k * h;
    1_800.0 / w * (kh / (1.0 - kh) + (k1 * kh + 2.0 * k1 * k2 * kh * kh) / (1.0 + k1 * kh + k1 * k2 * kh * kh))
}

/// Change of a board's width for a change of moisture in points, by its coefficient.
pub fn width_change(width: Length, coefficient: f64, points: f64) -> Length {
    Length::nearest_mm(width.in_mm() * coefficient * points)
}

/// Coefficients of dimensional change within 6 to 14 % of moisture: species, flat-sawn (tangential), quarter-sawn (radial).
/// # Source
/// Wood Handbook FPL-GTR-190, table 13-5, as a public copy of that page prints it.
pub const COEFFICIENTS: [(&str, f64, f64); 55] = [
    ("Alder, red", 0.002_56, 0.001_51),
    ("Honeylocust", 0.002_30, 0.001_44),
    ("Apple", 0.003_76, 0.002_05),
    ("Locust, black", 0.002_52, 0.001_58),
    ("Ash, black", 0.002_74, 0.001_72),
    ("Madrone, Pacific", 0.004_51, 0.001_94),
    ("Ash, Oregon", 0.002_85, 0.001_41),
    ("Magnolia, cucumbertree", 0.003_12, 0.001_80),
    ("Ash, pumpkin", 0.002_19, 0.001_26),
    ("Magnolia, southern", 0.002_30, 0.001_87),
    ("Ash, white", 0.002_74, 0.001_69),
    ("Magnolia, sweetbay", 0.002_93, 0.001_62),
    ("Ash, green", 0.002_74, 0.001_69),
    ("Maple, bigleaf", 0.002_48, 0.001_26),
    ("Aspen, quaking", 0.002_34, 0.001_19),
    ("Maple, red", 0.002_89, 0.001_37),
    ("Basswood, American", 0.003_30, 0.002_30),
    ("Maple, silver", 0.002_52, 0.001_02),
    ("Beech, American", 0.004_31, 0.001_90),
    ("Maple, black", 0.003_53, 0.001_65),
    ("Birch, paper", 0.003_04, 0.002_19),
    ("Maple, sugar", 0.003_53, 0.001_65),
    ("Birch, river", 0.003_27, 0.001_62),
    ("Birch, yellow", 0.003_38, 0.002_56),
    ("Red oak, commercial", 0.003_69, 0.001_58),
    ("Birch, sweet", 0.003_38, 0.002_56),
    ("Red oak, California", 0.002_30, 0.001_23),
    ("Buckeye, yellow", 0.002_85, 0.001_23),
    ("Red oak: water, laurel, willow", 0.003_50, 0.001_51),
    ("Butternut", 0.002_23, 0.001_16),
    ("White oak, commercial", 0.003_65, 0.001_80),
    ("Catalpa, northern", 0.001_69, 0.000_85),
    ("White oak, live", 0.003_38, 0.002_30),
    ("Cherry, black", 0.002_48, 0.001_26),
    ("White oak, Oregon white", 0.003_27, 0.001_44),
    ("Chestnut, American", 0.002_34, 0.001_16),
    ("White oak, overcup", 0.004_62, 0.001_83),
    ("Cottonwood, black", 0.003_04, 0.001_23),
    ("Persimmon, common", 0.004_03, 0.002_78),
    ("Cottonwood, eastern", 0.003_27, 0.001_33),
    ("Sassafras", 0.002_16, 0.001_37),
    ("Elm, American", 0.003_38, 0.001_44),
    ("Sweetgum", 0.003_65, 0.001_83),
    ("Elm, rock", 0.002_85, 0.001_65),
    ("Sycamore, American", 0.002_96, 0.001_72),
    ("Elm, slippery", 0.003_15, 0.001_69),
    ("Tanoak", 0.004_23, 0.001_69),
    ("Elm, winged", 0.004_19, 0.001_83),
    ("Tupelo, black", 0.003_08, 0.001_76),
    ("Elm, cedar", 0.004_19, 0.001_83),
    ("Tupelo, water", 0.002_67, 0.001_44),
    ("Hackberry", 0.003_15, 0.001_65),
    ("Walnut, black", 0.002_74, 0.001_90),
    ("Hickory, pecan", 0.003_15, 0.001_69),
    ("Pine, eastern white", 0.002_12, 0.000_71),
];

/// Further rows of the same table.
/// # Source
/// Wood Handbook, table 13-5, from memory: to be read again before anything depends on one of them.
pub const COEFFICIENTS_FROM_MEMORY: [(&str, f64, f64); 36] = [
    ("Hickory, true", 0.004_11, 0.002_59),
    ("Willow, black", 0.003_08, 0.001_12),
    ("Yellow-poplar", 0.002_89, 0.001_58),
    ("Baldcypress", 0.002_16, 0.001_30),
    ("Cedar, Atlantic white", 0.001_87, 0.000_99),
    ("Cedar, eastern redcedar", 0.001_62, 0.001_06),
    ("Cedar, incense", 0.001_80, 0.001_12),
    ("Cedar, northern white", 0.002_29, 0.001_01),
    ("Cedar, Port-Orford", 0.002_41, 0.001_58),
    ("Cedar, western redcedar", 0.002_34, 0.001_11),
    ("Douglas-fir, coast", 0.002_67, 0.001_65),
    ("Douglas-fir, interior north", 0.002_41, 0.001_30),
    ("Douglas-fir, interior west", 0.002_63, 0.001_65),
    ("Fir, balsam", 0.002_41, 0.000_99),
    ("Fir, California red", 0.002_78, 0.001_55),
    ("Fir, noble", 0.002_93, 0.001_48),
    ("Fir, white", 0.002_45, 0.001_12),
    ("Hemlock, eastern", 0.002_37, 0.001_02),
    ("Hemlock, western", 0.002_74, 0.001_44),
    ("Larch, western", 0.003_23, 0.001_55),
    ("Pine, loblolly", 0.002_59, 0.001_65),
    ("Pine, lodgepole", 0.002_34, 0.001_48),
    ("Pine, longleaf", 0.002_63, 0.001_76),
    ("Pine, ponderosa", 0.002_16, 0.001_33),
    ("Pine, red", 0.002_52, 0.001_30),
    ("Pine, shortleaf", 0.002_71, 0.001_58),
    ("Pine, slash", 0.002_67, 0.001_87),
    ("Pine, sugar", 0.001_94, 0.000_99),
    ("Pine, western white", 0.002_59, 0.001_41),
    ("Redwood, old growth", 0.002_05, 0.001_20),
    ("Redwood, second growth", 0.002_29, 0.001_01),
    ("Spruce, black", 0.002_37, 0.001_41),
    ("Spruce, Engelmann", 0.002_48, 0.001_30),
    ("Spruce, red and white", 0.002_74, 0.001_30),
    ("Spruce, Sitka", 0.002_63, 0.001_48),
    ("Tamarack", 0.002_59, 0.001_26),
];

/// Every species of both lists by name, with whether its row is from memory.
pub fn species() -> Vec<(&'static str, f64, f64, bool)> {
    let known = COEFFICIENTS.iter().map(|(name, flat, quarter)| (*name, *flat, *quarter, false));
    let mut all: Vec<_> = known
        .chain(COEFFICIENTS_FROM_MEMORY.iter().map(|(name, flat, quarter)| (*name, *flat, *quarter, true)))
        .collect();
    all.sort_by_key(|(name, ..)| *name);
    all
}
