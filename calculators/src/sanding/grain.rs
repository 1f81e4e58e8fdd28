//! Grain sizes of coated abrasives: P grades and CAMI grades are two scales with the same-looking numbers.
//!
//! A P grade is given by its median grain, a CAMI grade by its average. Above 220 the scales part fast: CAMI 400 is near P800.

use crate::catalogue::works::{ANSI_B74_18, ISO_6344};
use crate::catalogue::{Source, Standing};

/// A grade and its grain in micrometres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grain {
    /// Number on the back, without its letter.
    pub grade: u16,
    /// Median (P) or average (CAMI) grain.
    pub micrometres: f64,
}

const fn grain(grade: u16, micrometres: f64) -> Grain {
    Grain { grade, micrometres }
}

/// Where the P grades come from; decimals from P240 up are from memory.
pub const P_SOURCE: Source = Source::new(ISO_6344, "median grain sizes of P12 to P2500", Standing::Published);
/// Where the CAMI grades come from; published averages disagree by up to 5 µm.
pub const CAMI_SOURCE: Source = Source::new(ANSI_B74_18, "average grain sizes", Standing::Published);

/// P grades (FEPA 43, ISO 6344), coarse to fine.
pub const P_GRADES: [Grain; 26] = [
    grain(12, 1_815.0),
    grain(16, 1_324.0),
    grain(20, 1_000.0),
    grain(24, 764.0),
    grain(30, 642.0),
    grain(36, 538.0),
    grain(40, 425.0),
    grain(50, 336.0),
    grain(60, 269.0),
    grain(80, 201.0),
    grain(100, 162.0),
    grain(120, 125.0),
    grain(150, 100.0),
    grain(180, 82.0),
    grain(220, 68.0),
    grain(240, 58.5),
    grain(280, 52.2),
    grain(320, 46.2),
    grain(360, 40.5),
    grain(400, 35.0),
    grain(500, 30.2),
    grain(600, 25.8),
    grain(800, 21.8),
    grain(1_000, 18.3),
    grain(1_200, 15.3),
    grain(1_500, 12.6),
];
/// The finest P grades.
pub const FINEST_P_GRADES: [Grain; 2] = [grain(2_000, 10.3), grain(2_500, 8.4)];

/// CAMI grades (ANSI B74.18), coarse to fine. 180 is published as 78 or 82; 24, 30, 280, 360, 500 and from 800 on are from memory.
pub const CAMI_GRADES: [Grain; 21] = [
    grain(24, 715.0),
    grain(30, 638.0),
    grain(36, 535.0),
    grain(40, 428.0),
    grain(50, 351.0),
    grain(60, 268.0),
    grain(80, 192.0),
    grain(100, 141.0),
    grain(120, 116.0),
    grain(150, 93.0),
    grain(180, 82.0),
    grain(220, 68.0),
    grain(240, 52.0),
    grain(280, 44.0),
    grain(320, 35.0),
    grain(360, 28.8),
    grain(400, 23.6),
    grain(500, 19.7),
    grain(600, 16.0),
    grain(800, 12.2),
    grain(1_000, 9.2),
];

/// Every P grade, coarse to fine.
pub fn p_grades() -> impl DoubleEndedIterator<Item = Grain> {
    P_GRADES.into_iter().chain(FINEST_P_GRADES)
}

/// Median grain of a P grade in micrometres; `None` for a number that is no P grade.
pub fn p_median(grade: u16) -> Option<f64> {
    p_grades().find(|grain| grain.grade == grade).map(|grain| grain.micrometres)
}

/// Average grain of a CAMI grade in micrometres; `None` for a number that is not in the table.
pub fn cami_average(grade: u16) -> Option<f64> {
    CAMI_GRADES.iter().find(|grain| grain.grade == grade).map(|grain| grain.micrometres)
}

/// The P grade whose grain is nearest in proportion.
pub fn nearest_p(micrometres: f64) -> u16 {
    let apart = |grain: &Grain| libm::fabs(libm::log(grain.micrometres / micrometres));
    p_grades().min_by(|a, b| apart(a).total_cmp(&apart(b))).map_or(0, |grain| grain.grade)
}
