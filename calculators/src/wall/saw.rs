//! What the saw is set to: mitres in corners that are not square, and mouldings laid flat.

use crate::quantity::Length;

/// The setting of a saw whose zero is a square cut, for both pieces of a corner: 90° less half the corner.
///
/// # Source
/// Plane geometry.
/// # Examples
/// ```
/// assert_eq!(calculators::wall::saw::setting(88.5), 45.75);
/// ```
pub fn setting(corner: f64) -> f64 {
    90.0 - corner / 2.0
}

/// How far a joint opens when both pieces are cut to another setting, along the cut face of one piece; to the nanometre.
///
/// The face of a cut through `depth` is depth / cos(setting) long; both pieces turn by the error, so the joint opens by twice the
/// error along it, as far as small angles go.
pub fn opening(depth: Length, cut_at: f64, corner: f64) -> Length {
    let error = (setting(corner) - cut_at).to_radians().abs();
    let face = depth.in_mm() / libm::cos(cut_at.to_radians());
    Length::nearest_mm(face * 2.0 * error)
}

/// Mitre and bevel for a moulding that leans from the wall, laid flat on the saw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CompoundCut {
    /// Table turned by, degrees from a square cut.
    pub mitre: f64,
    /// Blade tilted by, degrees.
    pub bevel: f64,
}

/// The compound cut for a spring angle from the wall and a corner.
///
/// Formulas: mitre = atan(sin s / tan(A/2)); bevel = asin(cos s · cos(A/2)).
/// # Source
/// Solid geometry; a vector derivation gives the same values.
pub fn compound(spring_from_wall: f64, corner: f64) -> CompoundCut {
    let (spring, half) = (spring_from_wall.to_radians(), (corner / 2.0).to_radians());
    CompoundCut {
        mitre: libm::atan(libm::sin(spring) / libm::tan(half)).to_degrees(),
        bevel: libm::asin(libm::cos(spring) * libm::cos(half)).to_degrees(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn settings_for_corners() {
        // Published values, plane geometry: a 92° corner sets the saw to 44°, not 46°.
        for (corner, saw) in [
            (90.0, 45.0),
            (89.0, 45.5),
            (88.0, 46.0),
            (92.5, 43.75),
            (137.0, 21.5),
            (87.3, 46.35),
            (120.0, 30.0),
            (93.6, 43.2),
            (88.5, 45.75),
            (91.2, 44.4),
            (135.0, 22.5),
        ] {
            assert!((setting(corner) - saw).abs() < 1e-9, "{corner}");
        }
    }

    #[test]
    fn the_same_corner_gives_two_verdicts() {
        // Common practice arithmetic, worked by hand: 45° cut in a corner of 88.5°, 3/4 thick and 3-1/2 wide.
        let inches = |sixty_fourths| opening(Length::sixty_fourths(sixty_fourths), 45.0, 88.5).in_mm() / 25.4;
        assert!((inches(48) - 0.028).abs() < 0.0005);
        assert!((inches(224) - 0.13).abs() < 0.0005);
        assert_eq!(opening(Length::mm(18), 45.0, 90.0), Length::ZERO);
    }

    #[test]
    fn compound_cuts() {
        // Published values, checked there by a second, vector derivation; tolerance from the source, 0.005°.
        for (spring, corner, mitre, bevel) in [
            (38.0, 90.0, 31.619_007, 33.862_914),
            (45.0, 90.0, 35.264_39, 30.0),
            (38.0, 92.0, 30.733_066, 33.188_706),
            (45.0, 88.0, 36.212_726, 30.573_952),
            (45.0, 135.0, 16.324_95, 15.699_857),
            (52.0, 135.0, 18.076_928, 13.627_197),
        ] {
            let cut = compound(spring, corner);
            assert!(
                (cut.mitre - mitre).abs() < 0.005 && (cut.bevel - bevel).abs() < 0.005,
                "{spring}, {corner}: {cut:?}"
            );
        }
    }
}
