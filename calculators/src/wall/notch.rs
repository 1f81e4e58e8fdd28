//! Notches round plates: how much wood is left beside them, and how wide a board must be to carry a plate flat.

use crate::quantity::{Exact, Length};

/// How a plate lies to a board.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meeting {
    /// They do not touch; so much wall is clear between them.
    Clear(Exact),
    /// The plate cuts into one edge; so much wood is left beside a notch.
    Edge {
        /// How far the plate reaches over the board.
        overlap: Exact,
        /// What is left of the board's width beside a notch with its clearance; less than nothing when the plate is too wide.
        neck: Exact,
        /// True when the plate comes in over the right edge.
        from_right: bool,
    },
    /// The plate covers the board from edge to edge.
    Across,
    /// The plate lies within the board's width; so much is left between it and the nearer edge.
    Within(Exact),
}

/// How a plate lies to a board, both given by their left and right edges.
///
/// Formula: neck = board width − overlap − clearance.
/// # Source
/// Plane geometry.
pub fn meeting(board: (Exact, Exact), plate: (Exact, Exact), clearance: Length) -> Meeting {
    let gap = (plate.0 - board.1).max(board.0 - plate.1);
    if !gap.is_negative() {
        return Meeting::Clear(gap);
    }
    let edge = |overlap: Exact, from_right| Meeting::Edge {
        overlap,
        neck: board.1 - board.0 - overlap - clearance,
        from_right,
    };
    match (board.0 < plate.0, plate.1 < board.1) {
        (true, true) => Meeting::Within((plate.0 - board.0).min(board.1 - plate.1)),
        (true, false) => edge(board.1 - plate.0, true),
        (false, true) => edge(plate.1 - board.0, false),
        (false, false) => Meeting::Across,
    }
}

/// The narrowest board that carries a whole plate on its flat face, inside its eased edges.
///
/// Formula: plate + 2 × margin + 2 × radius.
/// # Source
/// Common practice, no source.
pub fn carrying_width(plate: Exact, margin: Length, radius: Length) -> Exact {
    plate + margin * 2 + radius * 2
}

/// The band in which the left edge of a board can stand between two plates; `None` where there is no place.
pub fn place_between(
    left_plate_end: Exact,
    right_plate_start: Exact,
    board: Length,
    clearance: Length,
) -> Option<(Exact, Exact)> {
    let (from, to) = (left_plate_end + clearance, right_plate_start - clearance - board);
    (from <= to).then_some((from, to))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn in8(eighths: i64) -> Exact {
        Length::sixty_fourths(eighths * 8).exact()
    }

    #[test]
    fn a_plate_centred_on_the_edge_leaves_too_thin_a_neck() {
        // Common practice arithmetic, worked by hand: board 201-7/8 to 204-3/8, plate 203 to 205-3/4, clearance 1/16.
        let met = meeting((in8(1615), in8(1635)), (in8(1624), in8(1646)), Length::sixty_fourths(4));
        let Meeting::Edge { overlap, neck, from_right } = met else { panic!("{met:?}") };
        assert_eq!((overlap, neck, from_right), (in8(11), Length::sixty_fourths(68).exact(), true));
        assert_eq!(carrying_width(in8(22), Length::sixty_fourths(4), Length::sixty_fourths(8)), in8(25));
        let metric = carrying_width(Length::mm(86).exact(), Length::um(1_500), Length::mm(3));
        assert_eq!(metric, Length::mm(95));
    }

    #[test]
    fn clear_across_and_within() {
        let board = (in8(80), in8(100));
        let none = Length::ZERO;
        assert_eq!(meeting(board, (in8(101), in8(120)), none), Meeting::Clear(in8(1)));
        assert_eq!(meeting(board, (in8(100), in8(120)), none), Meeting::Clear(Exact::ZERO));
        assert_eq!(meeting(board, (in8(70), in8(120)), none), Meeting::Across);
        assert_eq!(meeting(board, (in8(85), in8(99)), none), Meeting::Within(in8(1)));
    }

    #[test]
    fn two_plates_squeeze_a_bay() {
        // Common practice arithmetic, worked by hand: plates end at 22-3/4 and start at 25-1/2; a board of 2-1/2 has no place.
        let (board, clearance) = (Length::sixty_fourths(160), Length::sixty_fourths(32));
        assert_eq!(place_between(in8(182), in8(204), board, clearance), None);
        assert_eq!(place_between(in8(182), in8(212), board, clearance), Some((in8(186), in8(188))));
    }
}
