//! Sizes of nails and gauges of wire, as standards list them.
//!
//! The rule length = 1/2 in + d/4 holds from 2d to 10d only. Gauge 16 is 1/16 in in steel wire and something else in copper.

use crate::catalogue::works::ASTM_F1667;
use crate::catalogue::{Source, Standing};
use crate::quantity::Length;

/// Where the sizes come from.
pub const SOURCE: Source =
    Source::new(ASTM_F1667, "common, box and finishing nails; United States steel wire gauge", Standing::FromMemory);

/// A nail by its pennyweight: length in quarter inches, shank in ten-thousandths of an inch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NailSize {
    /// Pennyweight, the d in 8d.
    pub penny: u32,
    quarters: i64,
    shank: i64,
}

impl NailSize {
    /// Length from head to point.
    pub const fn length(self) -> Length {
        Length::sixty_fourths(16 * self.quarters)
    }

    /// Diameter of the shank.
    pub const fn shank(self) -> Length {
        Length::from_nm(self.shank * 2_540)
    }
}

const fn nail(penny: u32, quarters: i64, shank: i64) -> NailSize {
    NailSize { penny, quarters, shank }
}

/// Common nails.
pub const COMMON: [NailSize; 16] = [
    nail(2, 4, 720),
    nail(3, 5, 800),
    nail(4, 6, 990),
    nail(5, 7, 990),
    nail(6, 8, 1_130),
    nail(7, 9, 1_130),
    nail(8, 10, 1_310),
    nail(9, 11, 1_310),
    nail(10, 12, 1_480),
    nail(12, 13, 1_480),
    nail(16, 14, 1_620),
    nail(20, 16, 1_920),
    nail(30, 18, 2_070),
    nail(40, 20, 2_250),
    nail(50, 22, 2_440),
    nail(60, 24, 2_630),
];
/// Box nails.
pub const BOX: [NailSize; 12] = [
    nail(3, 5, 760),
    nail(4, 6, 800),
    nail(5, 7, 800),
    nail(6, 8, 990),
    nail(7, 9, 990),
    nail(8, 10, 1_130),
    nail(10, 12, 1_280),
    nail(12, 13, 1_280),
    nail(16, 14, 1_350),
    nail(20, 16, 1_480),
    nail(30, 18, 1_480),
    nail(40, 20, 1_620),
];
/// Finishing nails.
pub const FINISHING: [NailSize; 6] =
    [nail(3, 5, 670), nail(4, 6, 720), nail(5, 7, 720), nail(6, 8, 915), nail(8, 10, 990), nail(10, 12, 1_130)];

/// The nail of a list by its pennyweight.
pub fn of_penny(list: &[NailSize], penny: u32) -> Option<NailSize> {
    list.iter().find(|size| size.penny == penny).copied()
}

/// Steel wire gauge and its diameter in ten-thousandths of an inch.
const WIRE: [(u32, i64); 20] = [
    (25, 204),
    (24, 230),
    (23, 258),
    (22, 286),
    (21, 317),
    (20, 348),
    (19, 410),
    (18, 475),
    (17, 540),
    (16, 625),
    (15, 720),
    (14, 800),
    (13, 915),
    (12, 1_055),
    (11, 1_205),
    (10, 1_350),
    (9, 1_483),
    (8, 1_620),
    (7, 1_770),
    (6, 1_920),
];

/// Diameter of a steel wire gauge, 6 to 25.
pub fn wire_diameter(gauge: u32) -> Option<Length> {
    WIRE.iter().find(|(row, _)| *row == gauge).map(|(_, shank)| Length::from_nm(shank * 2_540))
}

/// Length by the pennyweight rule, from 2d to 10d; above it the rule fails.
pub fn length_by_rule(penny: u32) -> Option<Length> {
    (2..=10).contains(&penny).then(|| Length::sixty_fourths(32 + 16 * i64::from(penny)))
}

/// Shortest nail by the old rule: three times what it holds.
pub fn three_times(held: Length) -> Length {
    held * 3
}
