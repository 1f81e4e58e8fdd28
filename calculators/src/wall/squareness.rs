//! Squareness and straightness from a tape: corner angles, skewed rectangles, arcs.

use crate::quantity::Length;

/// The angle between two legs from the length across their ends, in degrees; `None` when no triangle has these sides.
///
/// Formula: acos((a² + b² − c²) / 2ab).
/// # Source
/// Plane geometry.
pub fn corner_from_tape(leg: Length, other_leg: Length, across: Length) -> Option<f64> {
    let (a, b, c) = (leg.in_mm(), other_leg.in_mm(), across.in_mm());
    let triangle =
        across < leg + other_leg && (leg - other_leg).size() < across && leg.is_positive() && other_leg.is_positive();
    triangle.then(|| libm::acos((a * a + b * b - c * c) / (2.0 * a * b)).to_degrees())
}

/// The length across two legs that are square to each other, to the nanometre.
pub fn diagonal(side: Length, other: Length) -> Length {
    Length::nearest_mm(libm::hypot(side.in_mm(), other.in_mm()))
}

/// How far a parallelogram is out of square, in degrees, from its sides and both diagonals; `None` when they belong to none.
///
/// Formula: sin e = (D² − d²) / 4ab. Equal diagonals prove a rectangle only where opposite sides are equal.
/// # Source
/// Plane geometry.
pub fn skew(side: Length, other: Length, long: Length, short: Length) -> Option<f64> {
    let (a, b, long, short) = (side.in_mm(), other.in_mm(), long.in_mm(), short.in_mm());
    let sine = (long * long - short * short) / (4.0 * a * b);
    (a > 0.0 && b > 0.0 && sine.abs() <= 1.0).then(|| libm::asin(sine).to_degrees())
}

/// The radius of an arc from its chord and the rise in the middle, to the nanometre; `None` without a rise.
///
/// Formula: c² / 8s + s / 2.
/// # Source
/// Plane geometry.
pub fn arc_radius(chord: Length, rise: Length) -> Option<Length> {
    let (c, s) = (chord.in_mm(), rise.in_mm());
    rise.is_positive().then(|| Length::nearest_mm(c * c / (8.0 * s) + s / 2.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_corner_from_two_legs_and_across() {
        // Common practice arithmetic, worked by hand.
        let across = Length::sixty_fourths(33 * 64 + 32);
        let degrees = corner_from_tape(Length::inches(24), Length::inches(24), across).expect("a triangle");
        assert!((degrees - 88.52).abs() < 0.005);
        let metric = corner_from_tape(Length::mm(600), Length::mm(600), Length::um(837_300)).expect("a triangle");
        assert!((metric - 88.5).abs() < 0.05);
        assert_eq!(corner_from_tape(Length::mm(600), Length::mm(600), Length::mm(1_200)), None);
        assert_eq!(corner_from_tape(Length::mm(600), Length::mm(300), Length::mm(300)), None);
    }

    #[test]
    fn published_diagonals() {
        for (a, b, d) in [
            (3.0, 4.0, 5.0),
            (36.0, 48.0, 60.0),
            (1_200.0, 900.0, 1_500.0),
            (2_440.0, 1_220.0, 2_728.002_932_55),
            (40.5, 31.875, 51.538_971_905),
        ] {
            let ours = diagonal(Length::nearest_mm(a), Length::nearest_mm(b)).in_mm();
            assert!((ours - d).abs() < 1.5e-6, "{a}, {b}: {ours}");
        }
    }

    #[test]
    fn published_skews() {
        for (a, b, long, short, degrees) in [
            (96.0, 48.0, 107.705_263, 106.955_955, 0.5),
            (96.0, 48.0, 108.077_941, 106.579_354, 1.0),
            (2_440.0, 1_220.0, 2_737.508_777, 2_718.463_849, 0.5),
            (60.0, 36.0, 71.040_593, 68.885_66, 2.0),
        ] {
            let [a, b, long, short] = [a, b, long, short].map(Length::nearest_mm);
            let ours = skew(a, b, long, short).expect("a parallelogram");
            assert!((ours - degrees).abs() < 0.001, "{ours}");
        }
        assert_eq!(skew(Length::mm(1), Length::mm(1), Length::mm(9), Length::mm(1)), None);
    }

    #[test]
    fn published_arcs() {
        for (chord, rise, radius) in
            [(48.0, 0.25, 1_152.125), (96.0, 0.5, 2_304.25), (24.0, 0.125, 576.062_5), (1_200.0, 12.0, 15_006.0)]
        {
            let ours = arc_radius(Length::nearest_mm(chord), Length::nearest_mm(rise)).expect("a rise");
            assert!((ours.in_mm() - radius).abs() < 1e-6);
        }
        assert_eq!(arc_radius(Length::mm(100), Length::ZERO), None);
    }
}
