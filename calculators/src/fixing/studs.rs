//! Studs along a wall, and the boards that get a real fixing.
//!
//! One proved centre and a spacing give the pattern; a board counts as hit when a centre lies well inside its width. Boards
//! spaced at another pitch than the studs meet them by chance only, so most of a wall is held by adhesive and pins.

use crate::quantity::{Exact, Length};

/// Centres from one proved centre and a spacing, both ways, on a wall of this length. At most a thousand.
///
/// # Source
/// Common practice, no source: studs keep one spacing from end to end, except at openings and the last one.
pub fn centres(first: Length, spacing: Length, length: Length) -> Vec<Length> {
    if !spacing.is_positive() {
        return Vec::new();
    }
    let before = first.whole_parts(spacing).max(0);
    let start = first - spacing * before;
    (0..1_000).map(|k| start + spacing * k).take_while(|centre| *centre <= length).collect()
}

/// The first centre that lies at least `margin` inside both edges of a board.
pub fn hit(board: (Exact, Exact), centres: &[Length], margin: Length) -> Option<Length> {
    let (from, to) = (board.0 + margin, board.1 - margin);
    let at = centres.partition_point(|centre| centre.exact() < from);
    centres.get(at).copied().filter(|centre| centre.exact() <= to)
}

/// All centres between two places, ends included.
pub fn between(from: Exact, to: Exact, centres: &[Length]) -> Vec<Length> {
    centres.iter().copied().filter(|centre| from <= centre.exact() && centre.exact() <= to).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn in64(sixty_fourths: i64) -> Length {
        Length::sixty_fourths(sixty_fourths)
    }

    #[test]
    fn boards_off_the_stud_pitch_miss_most_studs() {
        // Common practice arithmetic, worked by hand: studs 15-1/4 + 16 k; twelve boards of 2-1/2 with bays of 12-79/88.
        let studs = centres(in64(976), Length::inches(16), in64(173 * 64 + 24));
        assert_eq!(studs.len(), 10);
        let bay = (in64(171 * 64 + 56) - in64(160) * 12).exact().over(11).expect("eleven bays");
        let hits: Vec<i64> = (0..12)
            .filter(|k| {
                let left = (bay + in64(160)) * *k + in64(48);
                hit((left, left + in64(160)), &studs, in64(32)).is_some()
            })
            .map(|k| k + 1)
            .collect();
        assert_eq!(hits, [5, 6]);
    }

    #[test]
    fn the_pattern_runs_both_ways_from_the_proved_centre() {
        let studs = centres(Length::mm(1000), Length::mm(400), Length::mm(1500));
        assert_eq!(studs, [200, 600, 1000, 1400].map(Length::mm));
        assert!(centres(Length::mm(1000), Length::ZERO, Length::mm(1500)).is_empty());
        assert_eq!(between(Length::mm(600).exact(), Length::mm(999).exact(), &studs), [Length::mm(600)]);
    }
}
