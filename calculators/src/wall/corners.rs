//! Corner boards: who laps whom, how wide the board is ripped, and where the bays start.

use super::scheme::{CornerBoards, Scheme};
use super::survey::{End, EndKind};
use crate::quantity::{Exact, Length};

/// A board at the end of a wall, measured from the corner into the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CornerBoard {
    /// Where it begins to be seen: in from the corner, or past it when negative.
    pub start: Exact,
    /// How much of it is seen on this wall.
    pub shows: Exact,
    /// What it is ripped to, long point included.
    pub rip: Exact,
}

/// The board at one end of a wall; `None` where a bay runs up to the end.
pub fn corner_board(end: &End, scheme: &Scheme) -> Option<CornerBoard> {
    let own = scheme.board_thickness.get();
    let other = end.other_thickness.map_or(own, Length::from);
    let degrees = end.angle.map_or(90.0, |angle| angle.get());
    at_corner(end.kind, scheme.board_width.get(), own, other, degrees, scheme.corner_boards)
}

/// The board at a corner, from the kind of the corner, the board's width, its own and the other wall's thickness.
///
/// Inside: the wall fitted first runs tight into the corner and loses the other's thickness from view; the second starts at the
/// first one's face. Outside: the lapping board covers the other's edge; a mitre's long point lies thickness × tan(90° − A/2)
/// past the corner.
/// # Source
/// Plane geometry; laps are common practice, no source.
pub fn at_corner(
    kind: EndKind,
    board: Length,
    own: Length,
    other: Length,
    degrees: f64,
    wish: CornerBoards,
) -> Option<CornerBoard> {
    let (start, shows, rip) = match (kind, wish) {
        (EndKind::InsideFirst, CornerBoards::EqualReveal) => (other, board, board + other),
        (EndKind::InsideFirst, CornerBoards::EqualStock) => (other, board - other, board),
        (EndKind::InsideSecond, _) => (other, board, board),
        (EndKind::OutsideLapping, _) => (-other, board + other, board + other),
        (EndKind::OutsideMitred, _) => {
            let point = mitre_point(own, degrees);
            (-point, board + point, board + point)
        }
        (EndKind::OutsideLapped | EndKind::CasingBoard | EndKind::OpenBoard, _) => (Length::ZERO, board, board),
        (EndKind::CasingBay | EndKind::OpenBay, _) => return None,
    };
    // A lapped board no wider than the other's thickness would vanish; it then shows a hair and is told as a sliver.
    let shows = shows.max(Length::mm(1));
    Some(CornerBoard { start: start.exact(), shows: shows.exact(), rip: rip.exact() })
}

/// How far the long point of a mitred outside corner lies past the corner of the wall, to the nanometre.
pub fn mitre_point(thickness: Length, degrees: f64) -> Length {
    Length::nearest_mm(thickness.in_mm() * libm::tan((90.0 - degrees / 2.0).to_radians()))
}

/// How much further in than its square place a square-edged board meets the boards of the wall fitted first, at an inside corner
/// of another angle; to the nanometre.
///
/// Below 90° its front edge meets first: (t + b × cos A) / sin A from the corner instead of t; above, its back edge: t / sin A.
/// Here t is the other wall's thickness and b this board's.
/// # Source
/// Plane geometry.
pub fn square_edge_stands_off(own: Length, other: Length, degrees: f64) -> Length {
    let (sine, cosine) = (libm::sin(degrees.to_radians()), libm::cos(degrees.to_radians()));
    let meets = (other.in_mm() + (own.in_mm() * cosine).max(0.0)) / sine;
    Length::nearest_mm(meets) - other
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_wall_is_ripped_wider_and_the_second_starts_at_its_face() {
        // Common practice arithmetic, worked by hand: 2-1/2 wide, 3/4 thick.
        let (board, thick) = (Length::sixty_fourths(160), Length::sixty_fourths(48));
        let corner = |kind, wish| at_corner(kind, board, thick, thick, 90.0, wish).expect("a board");
        let first = corner(EndKind::InsideFirst, CornerBoards::EqualReveal);
        assert_eq!(first.rip, Length::sixty_fourths(208));
        assert_eq!((first.start, first.shows), (thick.exact(), board.exact()));
        let second = corner(EndKind::InsideSecond, CornerBoards::EqualReveal);
        assert_eq!((second.start, second.rip), (thick.exact(), board.exact()));
        let same = corner(EndKind::InsideFirst, CornerBoards::EqualStock);
        assert_eq!((same.shows, same.rip), (Length::sixty_fourths(112).exact(), board.exact()));
        let lapping = corner(EndKind::OutsideLapping, CornerBoards::EqualReveal);
        assert_eq!((lapping.start, lapping.rip), (-thick.exact(), Length::sixty_fourths(208).exact()));
        assert!(at_corner(EndKind::CasingBay, board, thick, thick, 90.0, CornerBoards::EqualReveal).is_none());
    }

    #[test]
    fn a_square_edge_stands_off_in_a_corner_that_is_not_square() {
        // By hand, boards 3/4 thick: at 88.5° (0.75 + 0.75 x 0.026177) / 0.999657 is 0.76989; at 95° 0.75 / 0.996195 is 0.75286.
        let inches = |degrees| {
            square_edge_stands_off(Length::sixty_fourths(48), Length::sixty_fourths(48), degrees).in_mm() / 25.4
        };
        assert!((inches(88.5) - 0.01989).abs() < 0.000_02, "{}", inches(88.5));
        assert!((inches(95.0) - 0.00286).abs() < 0.000_02, "{}", inches(95.0));
        assert!(inches(90.0).abs() < 1e-6);
    }

    #[test]
    fn the_long_point_of_an_outside_mitre() {
        // Common practice arithmetic, worked by hand: 3/4 thick.
        let inches = |degrees| mitre_point(Length::sixty_fourths(48), degrees).in_mm() / 25.4;
        assert!((inches(91.2) - 0.734).abs() < 0.0006);
        assert!((inches(90.0) - 0.750).abs() < 0.0001);
    }
}
