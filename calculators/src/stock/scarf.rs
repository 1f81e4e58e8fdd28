//! Scarf joints: a rail longer than any stick is joined on a stud, never in mid-air.
//!
//! The fewest joints that the sticks allow; among those the choice whose longest piece is shortest, so that the pieces are
//! balanced and no piece needs the whole of a stick.

use crate::quantity::Length;

/// A rail to be divided.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LongRail<'a> {
    /// Its left end.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// The longest piece that can be cut from a stick.
    pub usable: Length,
    /// How far two pieces lap at a joint.
    pub lap: Length,
    /// Studs on which a joint may be made, from left to right.
    pub studs: &'a [Length],
}

/// The lap of a scarf: thickness over the tangent of the angle between cut and face, to the nanometre.
pub fn lap(thickness: Length, degrees: f64) -> Length {
    let tangent = libm::tan(degrees.to_radians());
    if degrees >= 90.0 || tangent <= 0.0 { Length::ZERO } else { Length::nearest_mm(thickness.in_mm() / tangent) }
}

impl LongRail<'_> {
    /// The lengths of the pieces to their long points, for joints at these studs.
    pub fn pieces(&self, joints: &[Length]) -> Vec<Length> {
        let ends: Vec<Length> = [self.from].into_iter().chain(joints.iter().copied()).chain([self.to]).collect();
        let last = ends.len().saturating_sub(2);
        ends.windows(2)
            .enumerate()
            .map(|(n, pair)| {
                let laps = i64::from(n > 0) + i64::from(n < last);
                pair[1] - pair[0] + half(self.lap) * laps
            })
            .collect()
    }

    /// The studs on which a single joint makes two pieces that both fit.
    pub fn single_joints(&self) -> Vec<Length> {
        let fits = |stud: &Length| {
            self.from < *stud && *stud < self.to && self.pieces(&[*stud]).iter().all(|piece| *piece <= self.usable)
        };
        self.studs.iter().copied().filter(fits).collect()
    }

    /// The fewest joints, best balanced; none when one piece fits, `None` when no studs allow it.
    pub fn joints(&self) -> Option<Vec<Length>> {
        if self.to - self.from <= self.usable {
            return Some(Vec::new());
        }
        let studs: Vec<Length> =
            self.studs.iter().copied().filter(|stud| self.from < *stud && *stud < self.to).collect();
        // longest[j]: the shortest possible longest piece when the last joint so far is at stud j, with where it came from.
        let mut longest: Vec<Option<Length>> = studs
            .iter()
            .map(|stud| Some(*stud - self.from + half(self.lap)).filter(|piece| *piece <= self.usable))
            .collect();
        let mut ways: Vec<Vec<Option<usize>>> = vec![vec![None; studs.len()]];
        for _ in 0..=studs.len() {
            let ending = (0..studs.len()).filter_map(|last| {
                let piece = self.to - studs[last] + half(self.lap);
                (piece <= self.usable).then_some(())?;
                Some((longest[last]?.max(piece), last))
            });
            if let Some((_, last)) = ending.min() {
                return Some(traced(&studs, &ways, last));
            }
            let mut next = vec![None; studs.len()];
            let mut came = vec![None; studs.len()];
            for to in 0..studs.len() {
                for from in 0..to {
                    let piece = studs[to] - studs[from] + self.lap;
                    let Some(so_far) = longest[from].filter(|_| piece <= self.usable) else { continue };
                    let worst = so_far.max(piece);
                    if next[to].is_none_or(|best| worst < best) {
                        next[to] = Some(worst);
                        came[to] = Some(from);
                    }
                }
            }
            if next.iter().all(Option::is_none) {
                return None;
            }
            longest = next;
            ways.push(came);
        }
        None
    }
}

fn half(length: Length) -> Length {
    length.exact().half().nearest(Length::from_nm(1))
}

fn traced(studs: &[Length], ways: &[Vec<Option<usize>>], last: usize) -> Vec<Length> {
    let mut joints = vec![studs[last]];
    let mut at = last;
    for came in ways.iter().rev() {
        let Some(from) = came[at] else { break };
        joints.push(studs[from]);
        at = from;
    }
    joints.reverse();
    joints
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(inches: i64) -> Length {
        Length::inches(inches)
    }

    #[test]
    fn a_wall_longer_than_a_stick_is_joined_on_a_stud() {
        // Common practice arithmetic, worked by hand: wall 267-1/2, sticks of 192 with 191 usable, studs every 16.
        let studs: Vec<_> = (1..=16).map(|k| inches(16 * k)).collect();
        let lap = lap(Length::sixty_fourths(48), 45.0);
        let rail = LongRail {
            from: Length::ZERO,
            to: Length::sixty_fourths(267 * 64 + 32),
            usable: inches(191),
            lap,
            studs: &studs,
        };
        assert_eq!(rail.single_joints(), (5..=11).map(|k| inches(16 * k)).collect::<Vec<_>>());
        let joints = rail.joints().expect("a stud fits");
        assert_eq!(joints, [inches(128)]);
        let pieces = rail.pieces(&joints);
        assert_eq!(pieces, [Length::sixty_fourths(128 * 64 + 24), Length::sixty_fourths(139 * 64 + 56)]);
        assert_eq!(rail.pieces(&[inches(192)])[0], Length::sixty_fourths(192 * 64 + 24));
    }

    #[test]
    fn three_pieces_where_two_do_not_reach_and_none_without_studs() {
        let studs: Vec<_> = (1..=30).map(|k| inches(16 * k)).collect();
        let rail =
            LongRail { from: Length::ZERO, to: inches(480), usable: inches(191), lap: Length::ZERO, studs: &studs };
        let joints = rail.joints().expect("studs fit");
        assert_eq!(joints, [inches(160), inches(320)]);
        assert_eq!(LongRail { studs: &[], ..rail.clone() }.joints(), None);
        assert_eq!(LongRail { to: inches(191), studs: &[], ..rail }.joints(), Some(Vec::new()));
    }

    #[test]
    fn published_laps() {
        // Plane geometry: thickness × tan(setting from square); the setting is 90° less the angle from the face.
        for (thickness, setting, inches) in [
            (48, 45.0, 0.75),
            (48, 30.0, 0.433_012_701_892_219_3),
            (44, 45.0, 0.6875),
            (32, 30.0, 0.288_675_134_594_812_87),
        ] {
            let lap = lap(Length::sixty_fourths(thickness), 90.0 - setting);
            assert!((lap.in_mm() / 25.4 - inches).abs() < 1e-6);
        }
    }
}
