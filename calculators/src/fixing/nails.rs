//! The nail: long enough to hold in the stud, short enough to stay off what runs behind it; and how many.

use crate::quantity::{Length, Units};

/// Least and most penetration into the stud. Least: common practice, no source. Most: the depth at which electrical codes
/// expect cables to begin behind the face of a stud, 1-1/4 in; from memory (NEC 300.4), so nails stay shorter than it.
pub const PENETRATION: [(Units, Length, Length); 2] = [
    (Units::Imperial, Length::sixty_fourths(48), Length::sixty_fourths(80)),
    (Units::Metric, Length::mm(19), Length::mm(32)),
];

/// Nail lengths sold, inches in quarters: common practice, no source.
const INCH_QUARTERS: std::ops::RangeInclusive<i64> = 3..=14;
/// Nail lengths sold, millimetres: common practice, no source.
const MILLIMETRES: [i64; 13] = [15, 20, 25, 30, 32, 35, 38, 40, 45, 50, 55, 60, 64];

/// The lengths a nail may have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Window {
    /// At least this long.
    pub from: Length,
    /// Shorter than this.
    pub below: Length,
}

/// The window for nails through trim and plasterboard into a stud.
///
/// Formula: thickness + plasterboard + penetration; the upper end is not reached.
pub fn window(trim: Length, plasterboard: Length, penetration: (Length, Length)) -> Window {
    Window { from: trim + plasterboard + penetration.0, below: trim + plasterboard + penetration.1 }
}

/// Least and most penetration in one unit system.
pub fn penetration(units: Units) -> (Length, Length) {
    PENETRATION.iter().find(|row| row.0 == units).map_or((Length::ZERO, Length::ZERO), |row| (row.1, row.2))
}

/// The lengths sold in one unit system, shortest first.
pub fn sold(units: Units) -> Vec<Length> {
    match units {
        Units::Imperial => INCH_QUARTERS.map(|quarters| Length::sixty_fourths(quarters * 16)).collect(),
        Units::Metric => MILLIMETRES.map(Length::mm).to_vec(),
    }
}

/// The shortest nail sold inside a window; `None` where the window lies between two lengths.
pub fn choice(window: Window, sold: &[Length]) -> Option<Length> {
    sold.iter().copied().find(|nail| window.from <= *nail && *nail < window.below)
}

/// The longest pin sold that goes through trim and plasterboard and no further, for where there is no stud: behind the plasterboard hang cables
/// and pipes. `None` where none is short enough. Common practice, no source.
pub fn pin(trim: Length, plasterboard: Length, sold: &[Length]) -> Option<Length> {
    sold.iter().copied().filter(|pin| trim < *pin && *pin <= trim + plasterboard).max()
}

/// What thickness of nail goes where: common practice, no source.
pub const GAUGES: &str = "15 or 16 gauge for rails into studs, 18 for boards, 23 for pins";

/// Nails in a rail: two at each stud it crosses, two at each end of each piece. Common practice, no source.
pub const fn in_rail(studs: usize, pieces: usize) -> usize {
    2 * studs + 4 * pieces
}

/// Nails in a board, into base and rail: two at each end, and one more for every 30 in (760 mm). A default of this book.
pub fn in_board(length: Length, units: Units) -> usize {
    4 + counted(length.whole_parts(in_units(units, 30 * 64, 760)))
}

/// Pins beside the adhesive of a board: a pair for every started 18 in (460 mm). A default of this book.
pub fn pins(length: Length, units: Units) -> usize {
    let pitch = in_units(units, 18 * 64, 460);
    2 * counted((length + pitch - Length::from_nm(1)).whole_parts(pitch))
}

fn in_units(units: Units, sixty_fourths: i64, mm: i64) -> Length {
    match units {
        Units::Imperial => Length::sixty_fourths(sixty_fourths),
        Units::Metric => Length::mm(mm),
    }
}

fn counted(parts: i64) -> usize {
    usize::try_from(parts).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn in8(eighths: i64) -> Length {
        Length::sixty_fourths(eighths * 8)
    }

    #[test]
    fn the_shortest_nail_in_the_window() {
        // Common practice arithmetic, worked by hand.
        for (trim, plasterboard, from, below, nail) in [(6, 4, 16, 20, 16), (6, 5, 17, 21, 18)] {
            let window = window(in8(trim), in8(plasterboard), penetration(Units::Imperial));
            assert_eq!((window.from, window.below), (in8(from), in8(below)));
            assert_eq!(choice(window, &sold(Units::Imperial)), Some(in8(nail)));
        }
        let metric = window(Length::mm(18), Length::um(12_500), penetration(Units::Metric));
        assert_eq!((metric.from, metric.below), (Length::um(49_500), Length::um(62_500)));
        assert_eq!(choice(metric, &sold(Units::Metric)), Some(Length::mm(50)));
        assert_eq!(choice(metric, &[Length::mm(49), Length::um(62_500)]), None);
    }

    #[test]
    fn a_pin_off_the_studs_ends_in_the_plasterboard() {
        // By hand: 3/4 + 1/2 is 1 1/4 in; 18 + 12.5 is 30.5 mm, and 30 mm is sold.
        assert_eq!(pin(in8(6), in8(4), &sold(Units::Imperial)), Some(in8(10)));
        assert_eq!(pin(Length::mm(18), Length::um(12_500), &sold(Units::Metric)), Some(Length::mm(30)));
        assert_eq!(pin(Length::mm(60), Length::mm(3), &sold(Units::Metric)), None);
    }

    #[test]
    fn counts_of_a_plain_wall() {
        // Common practice arithmetic, worked by hand: ten studs behind one rail; twelve boards of 53 in.
        assert_eq!(in_rail(10, 1), 24);
        assert_eq!(12 * in_board(Length::inches(53), Units::Imperial), 60);
        assert_eq!(12 * pins(Length::inches(53), Units::Imperial), 72);
        assert_eq!(12 * pins(Length::mm(1_351), Units::Metric), 72);
    }
}
