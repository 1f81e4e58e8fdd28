//! A line across the elevation: floor, ceiling, the edges of rails, the edge of a leaning wall.

use super::Span;
use crate::quantity::{Exact, Length};
use crate::wall::plan::Point;

/// A line that changes its direction by less than this many radians goes straight on: heights are kept to the nanometre, and a short
/// stretch drawn out of such points is off by that.
const STRAIGHT: f64 = 1e-8;

/// A line through points from left to right: straight between them, level beyond both ends.
///
/// Two points at one place are a step: the line then has a height from the left and one from the right, and nothing is averaged.
/// # Examples
/// ```
/// use calculators::quantity::Length;
/// use calculators::wall::geometry::Line;
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
        points.dedup();
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
    /// each slope would outgrow any number. At a step it is the height on its left.
    pub fn at(&self, x: Exact) -> Exact {
        let next = self.points.partition_point(|(at, _)| at.exact() < x);
        self.between_points(next, x)
    }

    /// The height just right of a place; it differs from [`Line::at`] at a step alone.
    pub fn after(&self, x: Exact) -> Exact {
        let next = self.points.partition_point(|(at, _)| at.exact() <= x);
        self.between_points(next, x)
    }

    fn between_points(&self, next: usize, x: Exact) -> Exact {
        match (next.checked_sub(1).and_then(|before| self.points.get(before)), self.points.get(next)) {
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

    /// The line with its first stretch drawn out straight to the left and its last one to the right, each by so much; a single point
    /// has no direction and stays.
    pub fn drawn_out(&self, left: Length, right: Length) -> Self {
        let mut points = self.points.clone();
        let beyond = |one: (Length, Length), other: (Length, Length), x: Length| {
            (x, between(one, other, x.exact()).nearest(Length::from_nm(1)))
        };
        if let ([first, second, ..], true) = (&self.points[..], left.is_positive())
            && first.0 < second.0
        {
            points.insert(0, beyond(*first, *second, first.0 - left));
        }
        if let ([.., before, last], true) = (&self.points[..], right.is_positive())
            && before.0 < last.0
        {
            points.push(beyond(*before, *last, last.0 + right));
        }
        Self { points }
    }

    /// The line a constant width below this one, measured square to it: the bottom edge of a rail under its top edge.
    ///
    /// A turn of the top edge by an angle moves the turn of the bottom edge sideways by width × tan(angle / 2); at a step both
    /// edges step at one place.
    pub fn below(&self, width: Length) -> Self {
        let points = (0..self.points.len()).map(|n| {
            let (x, y) = self.points[n];
            let before = n.checked_sub(1).and_then(|before| self.slope(before));
            match (before, self.slope(n)) {
                (Some(before), Some(after)) if (after - before).abs() > STRAIGHT => {
                    let (middle, half) = ((before + after) / 2.0, (after - before) / 2.0);
                    let reach = width.in_mm() / libm::cos(half);
                    let aside = Length::nearest_mm(reach * libm::sin(middle));
                    (x + aside, y - Length::nearest_mm(reach * libm::cos(middle)))
                }
                (Some(slope), _) | (None, Some(slope)) if slope.abs() > 0.0 => {
                    (x, y - Length::nearest_mm(width.in_mm() / libm::cos(slope)))
                }
                _ => (x, y - width),
            }
        });
        Self { points: points.collect() }
    }

    /// The slope from one point to the next in radians; none at a step and beyond the last point.
    fn slope(&self, n: usize) -> Option<f64> {
        let (from, to) = (self.points.get(n)?, self.points.get(n + 1)?);
        (from.0 < to.0).then(|| libm::atan2((to.1 - from.1).in_mm(), (to.0 - from.0).in_mm()))
    }

    /// Where the line changes its direction strictly between two places; a step is two points at one place.
    pub fn vertices(&self, within: Span) -> Vec<Point> {
        self.corners()
            .filter(|(n, _)| {
                let x = self.points[*n].0.exact();
                within.from < x && x < within.to
            })
            .map(|(n, _)| Point { x: self.points[n].0.exact(), y: self.points[n].1.exact() })
            .collect()
    }

    /// The places strictly between two others where the line turns by `radians` or more; steps are not among them.
    pub fn turns(&self, within: Span, radians: f64) -> Vec<Exact> {
        self.corners()
            .filter(|(_, turn)| turn.is_some_and(|turn| radians <= turn))
            .map(|(n, _)| self.points[n].0.exact())
            .filter(|x| within.from < *x && *x < within.to)
            .collect()
    }

    /// Points where the line does not go straight on, with the size of the turn; none of it at a step.
    fn corners(&self) -> impl Iterator<Item = (usize, Option<f64>)> {
        let last = self.points.len().saturating_sub(1);
        (0..self.points.len()).filter_map(move |n| {
            let step = (n > 0 && self.points[n - 1].0 == self.points[n].0)
                || (n < last && self.points[n].0 == self.points[n + 1].0);
            if step {
                return Some((n, None));
            }
            let before = n.checked_sub(1).and_then(|before| self.slope(before)).unwrap_or(0.0);
            let turn = (self.slope(n).unwrap_or(0.0) - before).abs();
            (turn > STRAIGHT).then_some((n, Some(turn)))
        })
    }

    /// Where the line steps, from left to right.
    pub fn steps(&self) -> Vec<Length> {
        self.points
            .windows(2)
            .filter(|pair| pair[0].0 == pair[1].0 && pair[0].1 != pair[1].1)
            .map(|pair| pair[0].0)
            .collect()
    }

    /// The angle of the line just left of a place, in degrees, rising to the right.
    pub fn degrees_before(&self, x: Exact) -> f64 {
        let next = self.points.partition_point(|(at, _)| at.exact() < x);
        self.degrees_to(next)
    }

    /// The angle of the line just right of a place, in degrees, rising to the right.
    pub fn degrees_after(&self, x: Exact) -> f64 {
        let next = self.points.partition_point(|(at, _)| at.exact() <= x);
        self.degrees_to(next)
    }

    fn degrees_to(&self, next: usize) -> f64 {
        next.checked_sub(1).and_then(|before| self.slope(before)).map_or(0.0, f64::to_degrees)
    }

    /// The lowest and the highest point over the inside of a stretch: at a step at its end only the height inside it counts.
    pub fn range(&self, within: Span) -> (Exact, Exact) {
        let (from, to) = (within.from, within.to);
        let ends = if from < to { [self.after(from), self.at(to)] } else { [self.at(from), self.at(from)] };
        let first = self.points.partition_point(|(x, _)| x.exact() <= from);
        let inner = self.points[first..].iter().take_while(|(x, _)| x.exact() < to).map(|(_, y)| y.exact());
        let mut range = (ends[0].min(ends[1]), ends[0].max(ends[1]));
        for height in inner {
            range = (range.0.min(height), range.1.max(height));
        }
        range
    }

    /// The lower or the higher of two lines at every place, with the places where they cross, to the nanometre.
    pub fn pick(&self, other: &Self, higher: bool) -> Self {
        let mut places: Vec<Length> = self.points.iter().chain(&other.points).map(|(x, _)| *x).collect();
        places.sort_unstable();
        places.dedup();
        let nm = Length::from_nm(1);
        let apart = |at: Length, right: bool| {
            let at = at.exact();
            if right { self.after(at) - other.after(at) } else { self.at(at) - other.at(at) }
        };
        let better = |at: Length, right: bool| {
            let at = at.exact();
            let (one, two) = if right { (self.after(at), other.after(at)) } else { (self.at(at), other.at(at)) };
            if higher { one.max(two) } else { one.min(two) }.nearest(nm)
        };
        let mut points = Vec::with_capacity(places.len() * 2);
        for (n, at) in places.iter().enumerate() {
            let (left, right) = (better(*at, false), better(*at, true));
            points.push((*at, left));
            if left != right {
                points.push((*at, right));
            }
            if let Some(next) = places.get(n + 1) {
                let (here, there) = (apart(*at, true), apart(*next, false));
                if (here.is_positive() && there.is_negative()) || (here.is_negative() && there.is_positive()) {
                    let share = here.size().in_mm() / (here.size().in_mm() + there.size().in_mm());
                    let x = *at + Length::nearest_mm((*next - *at).in_mm() * share);
                    if *at < x && x < *next {
                        points.push((x, better(x, false)));
                    }
                }
            }
        }
        Self { points }
    }
}

fn between(left: (Length, Length), right: (Length, Length), x: Exact) -> Exact {
    let width = right.0 - left.0;
    if !width.is_positive() {
        return left.1.exact();
    }
    if left.1 == right.1 {
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

    fn at(mm: i64) -> Exact {
        Length::mm(mm).exact()
    }

    #[test]
    fn it_is_level_beyond_its_ends_and_steps_where_two_points_meet() {
        let floor = mm(&[(100, 0), (200, 0), (200, 50), (300, 50)]);
        assert_eq!(floor.at(at(0)), Length::mm(0));
        assert_eq!((floor.at(at(200)), floor.after(at(200))), (at(0), at(50)));
        assert_eq!(floor.at(at(201)), Length::mm(50));
        assert_eq!(floor.at(at(900)), Length::mm(50));
        assert_eq!(floor.steps(), [Length::mm(200)]);
        // A step at the end of a stretch belongs to the other side.
        assert_eq!(floor.range(Span::new(at(200), at(300))), (at(50), at(50)));
        assert_eq!(floor.range(Span::new(at(100), at(200))), (at(0), at(0)));
        assert_eq!(floor.range(Span::new(at(150), at(250))), (at(0), at(50)));
    }

    #[test]
    fn the_bottom_edge_of_a_rail_turns_beside_its_top_edge() {
        // By hand: a rail of 100 mm turning by atan(3/4): tan of half of it is 1/3, and its plumb thickness is 100 × 5/4.
        let bottom = mm(&[(0, 0), (1000, 0), (1400, 300)]).below(Length::mm(100));
        let (x, y) = bottom.points()[1];
        assert!((x.in_mm() - 1_033.333_333).abs() < 1e-5, "{x}");
        assert_eq!(y, Length::mm(-100));
        assert_eq!(bottom.points()[2].1, Length::mm(175));
        // At a step both edges step at one place.
        assert_eq!(
            mm(&[(0, 900), (500, 900), (500, 600), (900, 600)]).below(Length::mm(90)).points()[1..3],
            [(Length::mm(500), Length::mm(810)), (Length::mm(500), Length::mm(510)),]
        );
    }

    #[test]
    fn vertices_and_turns() {
        let floor = mm(&[(0, 0), (1000, -3), (2000, 0)]);
        let whole = Span::new(Exact::ZERO, at(3000));
        assert_eq!(floor.vertices(whole).len(), 2);
        assert!(floor.turns(whole, 0.017).is_empty(), "a falling floor is no turn");
        assert_eq!(mm(&[(0, 0), (1000, 0), (1400, 300)]).turns(whole, 0.017), [at(1000), at(1400)]);
    }

    #[test]
    fn the_higher_of_two_lines_turns_where_they_cross() {
        // By hand: a level line at 50 and one that rises from 0 to 100 over 1000 cross at 500.
        let higher = mm(&[(0, 0), (1000, 100)]).pick(&mm(&[(0, 50), (1000, 50)]), true);
        assert_eq!(higher.points(), [(0, 50), (500, 50), (1000, 100)].map(|(x, y)| (Length::mm(x), Length::mm(y))));
    }

    #[test]
    fn a_slope_goes_on_past_the_end() {
        // By hand: 36 up in 96 is 3 in 8; 8 further on it is 3 higher.
        let line = mm(&[(0, 42), (96, 78)]).drawn_out(Length::mm(8), Length::mm(8));
        assert_eq!(line.points()[3], (Length::mm(104), Length::mm(81)));
        assert_eq!(line.points()[0], (Length::mm(-8), Length::mm(39)));
    }
}
