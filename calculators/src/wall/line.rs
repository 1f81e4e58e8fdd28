//! A line across the elevation: floor, ceiling, the edges of rails, the edge of a leaning wall.

use super::plan::Point;
use crate::quantity::{Exact, Length};

/// Turns of less than this many radians are no kink: a floor that falls is not a stair (about half a degree).
const KINK: f64 = 0.009;

/// A line through points from left to right: straight between them, level beyond both ends.
///
/// Two points at one place are a step; the line then takes the lower-index point at that very place.
/// # Examples
/// ```
/// use calculators::quantity::Length;
/// use calculators::wall::line::Line;
/// let floor = Line::through(vec![(Length::mm(0), Length::mm(0)), (Length::mm(1000), Length::mm(-6))]);
/// assert_eq!(floor.at(Length::mm(500).exact()), Length::mm(-3).exact());
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    points: Vec<(Length, Length)>,
}

impl Line {
    /// A level line.
    pub fn level(height: Length) -> Self {
        Self { points: vec![(Length::ZERO, height)] }
    }

    /// A line through points that are sorted here by their place, keeping the order of equal places.
    pub fn through(mut points: Vec<(Length, Length)>) -> Self {
        points.sort_by_key(|(x, _)| *x);
        if points.is_empty() {
            return Self::level(Length::ZERO);
        }
        Self { points }
    }

    /// The points it goes through.
    pub fn points(&self) -> &[(Length, Length)] {
        &self.points
    }

    /// The height at a place along the wall, to the nanometre: heights are summed over walls of many slopes, and a fraction for
    /// each slope would outgrow any number.
    pub fn at(&self, x: Exact) -> Exact {
        let after = self.points.partition_point(|(at, _)| at.exact() < x);
        match (after.checked_sub(1).and_then(|before| self.points.get(before)), self.points.get(after)) {
            (Some(left), Some(right)) => between(*left, *right, x),
            (Some(end), None) | (None, Some(end)) => end.1.exact(),
            (None, None) => Exact::ZERO,
        }
    }

    /// The same line higher by so much.
    pub fn raised(&self, by: Length) -> Self {
        Self { points: self.points.iter().map(|(x, y)| (*x, *y + by)).collect() }
    }

    /// The line seen from the other side of a wall of this length.
    pub fn mirrored(&self, length: Length) -> Self {
        Self { points: self.points.iter().rev().map(|(x, y)| (length - *x, *y)).collect() }
    }

    /// The line a constant width below this one, measured square to it: the bottom edge of a rail under its top edge.
    ///
    /// A turn of the top edge by an angle moves the turn of the bottom edge sideways by width × tan(angle / 2).
    pub fn below(&self, width: Length) -> Self {
        let last = self.points.len().saturating_sub(1);
        let slope = |n: usize| {
            let ((x0, y0), (x1, y1)) = (self.points[n], self.points[n + 1]);
            libm::atan2((y1 - y0).in_mm(), (x1 - x0).in_mm())
        };
        let points = self.points.iter().enumerate().map(|(n, (x, y))| {
            let before = if n == 0 { None } else { Some(slope(n - 1)) };
            let after = if n == last { None } else { Some(slope(n)) };
            match (before, after) {
                (Some(before), Some(after)) if (after - before).abs() > 1e-12 => {
                    let (middle, half) = ((before + after) / 2.0, (after - before) / 2.0);
                    let reach = width.in_mm() / libm::cos(half);
                    let aside = Length::nearest_mm(reach * libm::sin(middle));
                    (*x + aside, *y - Length::nearest_mm(reach * libm::cos(middle)))
                }
                (Some(slope), _) | (None, Some(slope)) if slope.abs() > 0.0 => {
                    (*x, *y - Length::nearest_mm(width.in_mm() / libm::cos(slope)))
                }
                _ => (*x, *y - width),
            }
        });
        Self::through(points.collect())
    }

    /// The places strictly between two others where the line turns by more than a falling floor does.
    pub fn kinks(&self, left: Exact, right: Exact) -> Vec<Point> {
        let mut kinks = Vec::new();
        for window in 0..self.points.len() {
            let (x, y) = self.points[window];
            if x.exact() <= left || right <= x.exact() {
                continue;
            }
            let before = if window == 0 { 0.0 } else { angle(self.points[window - 1], (x, y)) };
            let after = self.points.get(window + 1).map_or(0.0, |next| angle((x, y), *next));
            if (after - before).abs() > KINK {
                kinks.push(Point { x: x.exact(), y: y.exact() });
            }
        }
        kinks
    }

    /// The angle of the line at a place, in degrees, rising to the right.
    pub fn degrees_at(&self, x: Exact) -> f64 {
        let after = self.points.partition_point(|(at, _)| at.exact() <= x);
        match (after.checked_sub(1).and_then(|before| self.points.get(before)), self.points.get(after)) {
            (Some(left), Some(right)) => angle(*left, *right).to_degrees(),
            _ => 0.0,
        }
    }

    /// The lowest and the highest point between two places, both included.
    pub fn range(&self, left: Exact, right: Exact) -> (Exact, Exact) {
        let inner = self.points.iter().filter(|(x, _)| left <= x.exact() && x.exact() <= right).map(|(_, y)| y.exact());
        let ends = [self.at(left), self.at(right)];
        let mut range = (ends[0], ends[0]);
        for height in inner.chain(ends) {
            range = (range.0.min(height), range.1.max(height));
        }
        range
    }
}

fn angle(from: (Length, Length), to: (Length, Length)) -> f64 {
    libm::atan2((to.1 - from.1).in_mm(), (to.0 - from.0).in_mm())
}

fn between(left: (Length, Length), right: (Length, Length), x: Exact) -> Exact {
    let width = right.0 - left.0;
    if !width.is_positive() {
        return left.1.exact();
    }
    let rise = i128::from((right.1 - left.1).nm());
    let along = x - left.0;
    let step = rise
        .checked_mul(along.nm())
        .zip(along.parts().checked_mul(i128::from(width.nm())))
        .and_then(|(top, bottom)| Exact::of_parts(top, bottom));
    step.map_or(left.1.exact(), |step| (step + left.1).nearest(Length::from_nm(1)).exact())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(points: &[(i64, i64)]) -> Line {
        Line::through(points.iter().map(|(x, y)| (Length::mm(*x), Length::mm(*y))).collect())
    }

    #[test]
    fn it_is_level_beyond_its_ends_and_steps_where_two_points_meet() {
        let floor = mm(&[(100, 0), (200, 0), (200, 50), (300, 50)]);
        assert_eq!(floor.at(Length::mm(0).exact()), Length::mm(0));
        assert_eq!(floor.at(Length::mm(200).exact()), Length::mm(0));
        assert_eq!(floor.at(Length::mm(201).exact()), Length::mm(50));
        assert_eq!(floor.at(Length::mm(900).exact()), Length::mm(50));
    }

    #[test]
    fn the_bottom_edge_of_a_rail_turns_beside_its_top_edge() {
        // By hand: a rail of 100 mm turning by atan(3/4): tan of half of it is 1/3, and its plumb thickness is 100 × 5/4.
        let bottom = mm(&[(0, 0), (1000, 0), (1400, 300)]).below(Length::mm(100));
        let (x, y) = bottom.points()[1];
        assert!((x.in_mm() - 1_033.333_333).abs() < 1e-5, "{x}");
        assert_eq!(y, Length::mm(-100));
        assert_eq!(bottom.points()[2].1, Length::mm(175));
    }

    #[test]
    fn a_falling_floor_is_no_kink() {
        let floor = mm(&[(0, 0), (1000, -3), (2000, 0)]);
        assert!(floor.kinks(Exact::ZERO, Length::mm(3000).exact()).is_empty());
    }
}
