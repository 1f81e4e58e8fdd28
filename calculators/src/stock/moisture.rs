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
    Cited::new(0.0005, Source::new(PANEL_MAKERS, "0.05 % in plane for 1 % moisture", Standing::Published));
/// Fibreboard: share of thickness for each point of moisture.
pub const MDF_THICKNESS: Cited<f64> =
    Cited::new(0.0035, Source::new(PANEL_MAKERS, "0.35 % in thickness for 1 % moisture", Standing::Published));
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

/// Coefficients of dimensional change: species, flat-sawn (tangential), quarter-sawn (radial).
/// # Source
/// Wood Handbook, table 13-5; yellow-poplar and sugar maple from memory.
pub const COEFFICIENTS: [(&str, f64, f64); 6] = [
    ("American basswood", 0.0033, 0.0023),
    ("quaking aspen", 0.002_34, 0.001_19),
    ("red oak, commercial", 0.003_69, 0.001_58),
    ("yellow-poplar", 0.002_89, 0.001_58),
    ("sugar maple", 0.003_53, 0.001_65),
    ("eastern white pine", 0.002_12, 0.000_71),
];
