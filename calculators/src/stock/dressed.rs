//! Dressed sizes of softwood boards: what a nominal size measures, and board feet.
//!
//! Softwood boards are sold by nominal size; the standard states least dressed sizes, dry (at most 19 % moisture) and green.
//! Fibreboard, plasterboard and hardwood are outside it.

use crate::catalogue::works::PS_20;
use crate::catalogue::{Cited, Source, Standing};
use crate::quantity::Length;

/// Nominal size, dressed dry, dressed green, each in thirty-seconds of an inch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Dressed {
    nominal: i64,
    dry: i64,
    green: i64,
}

impl Dressed {
    /// What the board is called.
    pub const fn nominal(self) -> Length {
        Length::sixty_fourths(2 * self.nominal)
    }

    /// What it measures at least, dry.
    pub const fn dry(self) -> Length {
        Length::sixty_fourths(2 * self.dry)
    }

    /// What it measures at least, green.
    pub const fn green(self) -> Length {
        Length::sixty_fourths(2 * self.green)
    }
}

const fn row(nominal: i64, dry: i64, green: i64, standing: Standing) -> Cited<Dressed> {
    Cited::new(Dressed { nominal, dry, green }, Source::new(PS_20, "least dressed sizes of boards", standing))
}

const READ: Standing = Standing::Published;
const MEMORY: Standing = Standing::FromMemory;

/// Where the boards' rows stand that were read.
pub const BOARDS_SOURCE: Source = Source::new(PS_20, "least dressed sizes of boards, as quoted in public tables", READ);
/// Where dimension stands, and the boards' rows that are marked so.
pub const DIMENSION_SOURCE: Source =
    Source::new(PS_20, "least dressed sizes of dimension, two inches and thicker, and some rows of boards", MEMORY);

const fn thick(nominal: i64, dry: i64, green: i64) -> Cited<Dressed> {
    Cited::new(
        Dressed { nominal, dry, green },
        Source::new(PS_20, "least dressed sizes of dimension, two inches and thicker", Standing::FromMemory),
    )
}

/// Thicknesses of boards, and from two inches on of dimension. Read in public tables that quote the standard; rows marked so are from
/// memory.
pub const THICKNESSES: [Cited<Dressed>; 12] = [
    row(12, 10, 11, READ),
    row(16, 14, 15, READ),
    row(20, 18, 19, MEMORY),
    row(24, 20, 22, READ),
    row(32, 24, 25, READ),
    row(40, 32, 33, MEMORY),
    row(48, 40, 41, READ),
    thick(64, 48, 50),
    thick(80, 64, 66),
    thick(96, 80, 82),
    thick(112, 96, 98),
    thick(128, 112, 114),
];

/// Widths of boards: the half-inch rule stops at seven.
pub const WIDTHS: [Cited<Dressed>; 13] = [
    row(64, 48, 50, READ),
    row(96, 80, 82, READ),
    row(128, 112, 114, MEMORY),
    row(160, 144, 148, READ),
    row(192, 176, 180, READ),
    row(224, 208, 212, MEMORY),
    row(256, 232, 240, READ),
    row(288, 264, 272, READ),
    row(320, 296, 304, MEMORY),
    row(352, 328, 336, READ),
    row(384, 360, 368, READ),
    row(448, 424, 432, MEMORY),
    row(512, 488, 496, READ),
];

/// The row of a nominal size.
pub fn of_nominal(table: &'static [Cited<Dressed>], nominal: Length) -> Option<&'static Cited<Dressed>> {
    table.iter().find(|row| row.value.nominal() == nominal)
}

/// Board feet from nominal thickness, nominal width and length: a foot square and an inch thick is one.
///
/// Anything thinner than one inch counts as one inch; from memory.
pub fn board_feet(thickness: Length, width: Length, length: Length) -> f64 {
    let inches = |length: Length| length.in_mm() / 25.4;
    inches(thickness).max(1.0) * inches(width) * inches(length) / 144.0
}

#[cfg(test)]
mod tests {
    use super::*;

    fn in64(whole: i64, top: i64, bottom: i64) -> Length {
        Length::sixty_fourths(whole * 64 + top * 64 / bottom)
    }

    #[test]
    fn dressed_sizes_of_the_standard() {
        // US DOC PS 20-20, as quoted in a general engineering reference; the standard itself was not opened.
        let thicknesses = [
            (in64(0, 3, 8), in64(0, 5, 16), in64(0, 11, 32)),
            (in64(0, 1, 2), in64(0, 7, 16), in64(0, 15, 32)),
            (in64(0, 3, 4), in64(0, 5, 8), in64(0, 11, 16)),
            (in64(1, 0, 1), in64(0, 3, 4), in64(0, 25, 32)),
            (in64(1, 1, 2), in64(1, 1, 4), in64(1, 9, 32)),
        ];
        let widths = [
            (2, in64(1, 1, 2), in64(1, 9, 16)),
            (3, in64(2, 1, 2), in64(2, 9, 16)),
            (5, in64(4, 1, 2), in64(4, 5, 8)),
            (6, in64(5, 1, 2), in64(5, 5, 8)),
            (8, in64(7, 1, 4), in64(7, 1, 2)),
            (9, in64(8, 1, 4), in64(8, 1, 2)),
            (11, in64(10, 1, 4), in64(10, 1, 2)),
            (12, in64(11, 1, 4), in64(11, 1, 2)),
            (16, in64(15, 1, 4), in64(15, 1, 2)),
        ];
        for (nominal, dry, green) in thicknesses {
            let row = of_nominal(&THICKNESSES, nominal).expect("in the table").value;
            assert_eq!((row.dry(), row.green()), (dry, green), "{nominal}");
        }
        for (nominal, dry, green) in widths {
            let row = of_nominal(&WIDTHS, Length::inches(nominal)).expect("in the table").value;
            assert_eq!((row.dry(), row.green()), (dry, green), "{nominal}");
        }
    }

    #[test]
    fn board_feet_from_nominal_sizes() {
        // Nominal thickness × width × feet / 12, multiplied out with another program.
        for (quarters, width, feet, expected) in
            [(4, 4, 8, 2.666_666_666_666_666_5), (4, 6, 12, 6.0), (5, 6, 8, 5.0), (4, 8, 16, 10.666_666_666_666_666)]
        {
            let ours =
                board_feet(Length::sixty_fourths(16 * quarters), Length::inches(width), Length::inches(12 * feet));
            assert!((ours - expected).abs() < 1e-9);
        }
        assert!((board_feet(in64(0, 1, 2), Length::inches(12), Length::inches(12)) - 1.0).abs() < 1e-12);
    }
}
