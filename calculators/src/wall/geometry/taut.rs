//! The taut line: where a straight rail lies under a ceiling that sags, humps, steps and turns.
//!
//! Between two turns a string is pulled tight under the ceiling. Where the ceiling sags the string touches it and the rail comes in
//! two pieces that meet there; over a hump it stays straight and light is seen above it.

use super::{Line, Span};
use crate::quantity::{Exact, Length};

/// A ceiling turns where its two sides meet at this angle or more: one degree. A default of this book.
pub const TURN: f64 = std::f64::consts::PI / 180.0;

/// A line pulled tight under a measured one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taut {
    /// The tight line.
    pub line: Line,
    /// Where it turns and rails are mitred, from left to right; lesser kinks are not among them.
    pub turns: Vec<Length>,
}

impl Taut {
    /// A level line, which never turns.
    pub fn straight(line: Line) -> Self {
        Self { line, turns: Vec::new() }
    }

    /// The string under measured points from left to right; it turns where they depart by more than `most` from the chord between
    /// two neighbouring turns, steps or ends.
    pub fn under(points: &[(Length, Length)], most: Length) -> Self {
        let (mut line, mut turns) = (Vec::new(), Vec::new());
        for section in sections(points) {
            let mut at = split_where_it_departs(section, most, Some(TURN));
            let mut hull = Vec::new();
            for pair in at.windows(2) {
                let part = lower_hull(&section[pair[0]..=pair[1]]);
                hull.extend(part.into_iter().skip(usize::from(!hull.is_empty())));
            }
            if hull.is_empty() {
                hull.extend_from_slice(section);
            }
            line.extend(hull);
            at.retain(|n| 0 < *n && n + 1 < section.len());
            turns.extend(at.into_iter().map(|n| section[n].0));
        }
        Self { line: Line::through(line), turns }
    }
}

/// Points between steps.
fn sections(points: &[(Length, Length)]) -> Vec<&[(Length, Length)]> {
    let mut found = Vec::new();
    let mut from = 0;
    for n in 1..=points.len() {
        if n == points.len() || points[n].0 == points[n - 1].0 {
            found.push(&points[from..n]);
            from = n;
        }
    }
    found
}

/// Indexes at which points from left to right are divided, first and last among them, so that between two of them none departs by more
/// than `most` from the straight line; and, where it is given, none turns by `turn` radians or more. The greatest departure goes first,
/// the left one of two equal ones.
pub fn split_where_it_departs(points: &[(Length, Length)], most: Length, turn: Option<f64>) -> Vec<usize> {
    let last = points.len().saturating_sub(1);
    let mut at = vec![0];
    let mut open = vec![(0, last)];
    while let Some((from, to)) = open.pop() {
        match worst(points, (from, to), most, turn) {
            Some(n) => {
                open.push((n, to));
                open.push((from, n));
            }
            None if to > from => at.push(to),
            None => {}
        }
    }
    at
}

fn worst(points: &[(Length, Length)], (from, to): (usize, usize), most: Length, turn: Option<f64>) -> Option<usize> {
    let chord = Line::through(vec![points[from], points[to]]);
    let departs = |n: usize| (points[n].1.exact() - chord.at(points[n].0.exact())).size();
    let inner = || (from + 1)..to;
    let far = inner().filter(|n| most.exact() < departs(*n)).max_by_key(|n| (departs(*n), std::cmp::Reverse(*n)));
    far.or_else(|| {
        let line = Line::through(points[from..=to].to_vec());
        let bends = line.turns(Span::new(points[from].0.exact(), points[to].0.exact()), turn?);
        inner().filter(|n| bends.contains(&points[*n].0.exact())).max_by_key(|n| (departs(*n), std::cmp::Reverse(*n)))
    })
}

/// The lower convex hull of points from left to right.
fn lower_hull(points: &[(Length, Length)]) -> Vec<(Length, Length)> {
    let mut hull: Vec<(Length, Length)> = Vec::with_capacity(points.len());
    for point in points {
        while let [.., one, two] = hull[..] {
            // The middle one stays only where it lies below the chord.
            let chord = Line::through(vec![one, *point]).at(two.0.exact());
            if two.1.exact() < chord {
                break;
            }
            hull.pop();
        }
        hull.push(*point);
    }
    hull
}

/// How far a measured line lies above another, at the point where that is most; none where it does nowhere by more than `most`.
pub fn most_light(measured: &[(Length, Length)], line: &Line, within: Span, most: Length) -> Option<(Length, Exact)> {
    let points = measured.iter().filter(|(x, _)| within.from <= x.exact() && x.exact() <= within.to);
    points
        .map(|(x, y)| (*x, y.exact() - line.at(x.exact()).max(line.after(x.exact()))))
        .filter(|(_, light)| most.exact() < *light)
        .max_by_key(|(x, light)| (*light, std::cmp::Reverse(*x)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn in16(points: &[(i64, i64)]) -> Vec<(Length, Length)> {
        points.iter().map(|(x, y)| (Length::inches(*x), Length::sixty_fourths(*y * 4))).collect()
    }

    fn tight(points: &[(i64, i64)]) -> Taut {
        Taut::under(&in16(points), Length::sixty_fourths(32))
    }

    #[test]
    fn a_sag_is_touched_and_a_hump_is_bridged() {
        // Plane geometry, worked by hand: 97, 96-3/4, 97 touches at the sag; 98, 98-5/16, 98 is one straight piece at 98.
        let sag = tight(&[(0, 1552), (60, 1548), (120, 1552)]);
        assert_eq!(sag.line.points().len(), 3);
        assert!(sag.turns.is_empty());
        let hump = tight(&[(0, 1568), (60, 1573), (120, 1568)]);
        assert_eq!(hump.line.points(), in16(&[(0, 1568), (120, 1568)]));
        let whole = Span::new(Exact::ZERO, Length::inches(120).exact());
        let light =
            most_light(&in16(&[(0, 1568), (60, 1573), (120, 1568)]), &hump.line, whole, Length::sixty_fourths(12));
        assert_eq!(light, Some((Length::inches(60), Length::sixty_fourths(20).exact())));
    }

    #[test]
    fn a_ceiling_turns_by_its_angle_or_by_its_departure() {
        // A degree over 10 in is 0.1746 in: 3/16 in 10 turns, 2/16 in 10 does not. Half an inch of departure turns whatever the angle.
        assert_eq!(tight(&[(0, 1600), (10, 1600), (20, 1597)]).turns, [Length::inches(10)]);
        assert!(tight(&[(0, 1600), (10, 1600), (20, 1598)]).turns.is_empty());
        assert_eq!(tight(&[(0, 1600), (60, 1591), (120, 1600)]).turns, [Length::inches(60)]);
        assert!(tight(&[(0, 1600), (60, 1592), (120, 1600)]).turns.is_empty());
    }

    #[test]
    fn nothing_is_averaged_over_a_step() {
        let bulkhead = tight(&[(0, 1600), (47, 1600), (47, 1440), (118, 1440)]);
        assert_eq!(bulkhead.line.points(), in16(&[(0, 1600), (47, 1600), (47, 1440), (118, 1440)]));
        assert_eq!(bulkhead.line.steps(), [Length::inches(47)]);
    }

    #[test]
    fn a_base_is_divided_where_the_floor_leaves_its_piece() {
        // By hand: -3/16, 0 at 60, -3/16 at 131 is two pieces; within 1/16 it is one.
        let at = |points: &[(i64, i64)]| split_where_it_departs(&in16(points), Length::sixty_fourths(4), None);
        assert_eq!(at(&[(0, -3), (60, 0), (131, -3)]), [0, 1, 2]);
        assert_eq!(at(&[(0, -1), (60, 0), (131, -1)]), [0, 2]);
    }
}
