//! The stair rake: from the two measured nosings, never from a nominal step.
//!
//! A line that runs level over a landing and parallel to the nosings over a flight turns where the two heights meet, which is
//! seldom at the nosing itself. The angle comes from total rise and total run; a nominal step repeated over a flight carries
//! its error to the top.

use super::geometry::Line;
use super::survey::{Climbs, Stair};
use crate::quantity::{Exact, Length};

/// A straight flight, climbing to the right: the first and the last nosing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Flight {
    /// Where the first nosing is.
    pub first: Length,
    /// Its height above the lower landing: the first riser.
    pub riser: Length,
    /// Level distance from the first nosing to the last.
    pub run: Length,
    /// Plumb distance from the first nosing to the last.
    pub rise: Length,
    /// Height of the lower landing where the first riser stands; nothing where the landing is level.
    pub start: Length,
    /// Height of the upper landing's zero level; the last nosing lies at it where that landing is level or falls away from it.
    pub landing: Length,
}

impl Flight {
    /// The flight of a stair on a wall of this length, seen so that it climbs to the right.
    pub fn of(stair: &Stair, length: Length) -> Self {
        let first = match stair.climbs {
            Climbs::Right => stair.first_nosing.get(),
            Climbs::Left => length - stair.first_nosing.get(),
        };
        let (riser, rise) = (stair.first_riser.get(), stair.rise.get());
        Self { first, riser, run: stair.run.get(), rise, start: Length::ZERO, landing: riser + rise }
    }

    /// The flight on landings that fall: the first riser stands on the lower landing as it is there, and all heights on the stair count
    /// from it; the upper landing's zero level lies above the last nosing by as much as that landing has fallen there.
    pub fn on_landings(self, start: Length, fallen: Length) -> Self {
        Self { start, landing: start + self.riser + self.rise + fallen, ..self }
    }

    /// Where the last nosing is.
    pub fn last(&self) -> Length {
        self.first + self.run
    }

    /// Height of the last nosing.
    pub fn top(&self) -> Length {
        self.start + self.riser + self.rise
    }

    /// The rake in degrees: the arc tangent of rise over run.
    pub fn degrees(&self) -> f64 {
        libm::atan2(self.rise.in_mm(), self.run.in_mm()).to_degrees()
    }

    /// Where a line level at one height over a landing meets a line raked at another height over the nosings; first over the
    /// lower landing, then over the upper one. To the nanometre.
    ///
    /// Formula: nosing + (height over landing − step to it − height over nosings) × run / rise.
    pub fn turns(&self, over_landing: Length, over_nosings: Length) -> (Length, Length) {
        let along = |height: Length| {
            height.exact().times(self.run.nm(), self.rise.nm()).map_or(Length::ZERO, |x| x.nearest(Length::from_nm(1)))
        };
        let level = over_landing - over_nosings;
        (self.first + along(level - self.start - self.riser), self.last() + along(level + self.landing - self.top()))
    }

    /// The line that runs level over both landings and rakes between them, on a wall of this length.
    pub fn line(&self, over_landing: Length, over_nosings: Length, length: Length) -> Line {
        let (lower, upper) = self.turns(over_landing, over_nosings);
        let high = over_landing + self.landing;
        let start = Length::ZERO.min(lower);
        let end = length.max(upper);
        Line::through(vec![(start, over_landing), (lower, over_landing), (upper, high), (end, high)])
    }

    /// A line this far above the nosings, drawn out past both of them to the ends of a wall of this length.
    pub fn over_nosings(&self, height: Length, length: Length) -> Line {
        let (from, to) = ((self.first, self.start + self.riser + height), (self.last(), self.top() + height));
        Line::through(vec![from, to]).drawn_out(length, length)
    }
}

/// A board on a rake, between two parallel sloping lines.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RakeBoard {
    /// Length of both long edges.
    pub edge: Exact,
    /// Shortest stock it can be cut from.
    pub stock: Exact,
}

/// A board between two lines `plumb` apart on a rake: edge and stock.
///
/// Formula: stock = edge + board width × rise / run, exact.
pub fn rake_board(plumb: Exact, board: Length, rise: Length, run: Length) -> Option<RakeBoard> {
    let drop = board.exact().times(rise.nm(), run.nm())?;
    plumb.is_positive().then(|| RakeBoard { edge: plumb, stock: plumb + drop })
}

/// The plumb thickness of a rail of this width on a slope: width over the cosine, to the nanometre.
pub fn plumb_thickness(width: Length, degrees: f64) -> Length {
    Length::nearest_mm(width.in_mm() / libm::cos(degrees.to_radians()))
}

/// A panel on a rake: a parallelogram with plumb sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RakePanel {
    /// Along the slope.
    pub on_slope: Length,
    /// The long diagonal.
    pub long_diagonal: Length,
    /// The short diagonal.
    pub short_diagonal: Length,
    /// Height square to the slope.
    pub square_height: Length,
}

/// The panel between two boards on a rake: level bay, plumb height.
///
/// Formulas: bay / cos; √(bay² + (height ± bay × tan)²); height × cos.
pub fn rake_panel(bay: Exact, height: Exact, degrees: f64) -> RakePanel {
    let (bay, height, slope) = (bay.in_mm(), height.in_mm(), degrees.to_radians());
    let rise = bay * libm::tan(slope);
    RakePanel {
        on_slope: Length::nearest_mm(bay / libm::cos(slope)),
        long_diagonal: Length::nearest_mm(libm::hypot(bay, height + rise)),
        short_diagonal: Length::nearest_mm(libm::hypot(bay, height - rise)),
        square_height: Length::nearest_mm(height * libm::cos(slope)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn in8(eighths: i64) -> Length {
        Length::sixty_fourths(eighths * 8)
    }

    /// Nine nosings: 56-1/4 up over 88-1/8, first nosing at 30, first riser 7. Common practice arithmetic, worked by hand.
    fn flight() -> Flight {
        Flight {
            first: in8(240),
            riser: in8(56),
            run: in8(705),
            rise: in8(450),
            start: Length::ZERO,
            landing: in8(506),
        }
    }

    fn inches(length: impl Into<Exact>) -> f64 {
        length.into().in_mm() / 25.4
    }

    #[test]
    fn the_rake_comes_from_the_whole_flight() {
        assert!((flight().degrees() - 32.55).abs() < 0.005);
        // Published values, plane geometry: 7.5/10, 7/11, 196/254, 178/280.
        for (rise, run, degrees) in
            [(75, 100, 36.869_898), (70, 110, 32.471_192), (196, 254, 37.655_701), (178, 280, 32.444_703)]
        {
            let flight = Flight { rise: Length::mm(rise), run: Length::mm(run), ..flight() };
            assert!((flight.degrees() - degrees).abs() < 1e-6);
        }
    }

    #[test]
    fn a_line_turns_before_the_first_nosing_and_beyond_the_last() {
        let (lower, upper) = flight().turns(in8(320), in8(320));
        assert!((inches(lower) - 19.03).abs() < 0.005);
        assert_eq!(upper, flight().last());
        let (lower, upper) = flight().turns(in8(44), in8(36));
        assert!((inches(lower) - 20.60).abs() < 0.005);
        assert!((inches(upper) - 119.69).abs() < 0.005);
        let bottom = flight().line(in8(320), in8(320), in8(1137)).below(in8(28));
        assert!((inches(bottom.points()[1].0) - 20.06).abs() < 0.006);
        assert!((inches(bottom.points()[2].0) - 119.15).abs() < 0.005);
    }

    #[test]
    fn boards_and_panels_on_the_rake() {
        let degrees = flight().degrees();
        let rail = plumb_thickness(in8(28), degrees);
        assert!((inches(rail) - 4.152).abs() < 0.0005);
        let plumb = (in8(320) - in8(36) - rail).exact();
        assert!((inches(plumb) - 31.348).abs() < 0.0005);
        let board = rake_board(plumb, in8(20), in8(450), in8(705)).expect("a board fits");
        assert!((inches(board.stock) - 32.944).abs() < 0.001);
        let bay = (in8(665) - in8(100)).exact().over(6).expect("six bays");
        let panel = rake_panel(bay, plumb, degrees);
        assert!((inches(panel.on_slope) - 13.964).abs() < 0.0006);
        assert!((inches(panel.long_diagonal) - 40.605).abs() < 0.0006);
        assert!((inches(panel.short_diagonal) - 26.583).abs() < 0.0006);
        assert!(rake_board(Exact::ZERO, in8(20), in8(450), in8(705)).is_none());
    }

    #[test]
    fn published_heights_across_a_raked_board() {
        // Plane geometry: width × rise / run.
        for (rise, run, drop) in [(75, 100, 2.625), (70, 110, 2.227_272_727_272_727)] {
            let board = rake_board(in8(80).exact(), in8(28), Length::mm(rise), Length::mm(run)).expect("a board fits");
            assert!((inches(board.stock - board.edge) - drop).abs() < 1e-6);
        }
    }
}
