//! A rational length: what is left whole when a run is shared out.

use std::ops::{Add, Mul, Neg, Sub};

use num_rational::Ratio;
use num_traits::Signed;

use super::length::{Length, MILLIMETRE};
use super::print;
use super::tape::Units;

/// An exact place or size in nanometres as a fraction, so that thirteen equal bays add up to the run again.
///
/// Numerator and denominator are 128-bit; lengths of a wall shared by a few hundred boards use a third of that.
/// # Examples
/// ```
/// use quantity::{Exact, Length};
/// let bay = Length::mm(1000).exact().over(3).unwrap();
/// assert_eq!(bay * 3, Length::mm(1000).exact());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Exact(Ratio<i128>);

impl Exact {
    /// Nothing.
    pub const ZERO: Self = Self::whole(0);

    /// A whole number of nanometres.
    pub const fn whole(nm: i64) -> Self {
        Self(Ratio::new_raw(nm as i128, 1))
    }

    /// The fraction `nm / parts`; `None` for zero parts.
    pub fn of_parts(nm: i128, parts: i128) -> Option<Self> {
        (parts != 0).then(|| Self(Ratio::new(nm, parts)))
    }

    /// One of so many equal parts; `None` for zero parts.
    pub fn over(self, parts: i64) -> Option<Self> {
        (parts != 0).then(|| Self(self.0 / i128::from(parts)))
    }

    /// Half of it.
    pub fn half(self) -> Self {
        // Halving a reduced fraction takes the two from above, or puts it below.
        if self.nm() % 2 == 0 {
            Self(Ratio::new_raw(self.nm() / 2, self.parts()))
        } else {
            Self(Ratio::new_raw(self.nm(), self.parts() * 2))
        }
    }

    /// This length times `top / bottom`; `None` for a bottom of zero.
    pub fn times(self, top: i64, bottom: i64) -> Option<Self> {
        (bottom != 0).then(|| Self(self.0 * Ratio::new(i128::from(top), i128::from(bottom))))
    }

    /// Numerator in nanometres, over the denominator that [`Exact::parts`] gives.
    pub const fn nm(self) -> i128 {
        *self.0.numer()
    }

    /// The denominator, always positive.
    pub const fn parts(self) -> i128 {
        *self.0.denom()
    }

    /// The size without its sign.
    pub fn size(self) -> Self {
        Self(self.0.abs())
    }

    /// True for more than nothing.
    pub fn is_positive(self) -> bool {
        self > Self::ZERO
    }

    /// True for less than nothing.
    pub fn is_negative(self) -> bool {
        self < Self::ZERO
    }

    /// The length in millimetres for drawings, scores and physics.
    pub fn in_mm(self) -> f64 {
        self.nm() as f64 / self.parts() as f64 / MILLIMETRE.nm() as f64
    }

    /// How this compares in size with another length, as a number: 1.0 is equal. Zero when the other is nothing.
    pub fn ratio_to(self, other: Self) -> f64 {
        if other == Self::ZERO { 0.0 } else { self.in_mm() / other.in_mm() }
    }

    /// The nearest whole multiple of `step`, halves upward. A step of zero or less counts as one nanometre.
    pub fn nearest(self, step: Length) -> Length {
        self.stepped(step, |nm, unit| (2 * nm + unit).div_euclid(2 * unit))
    }

    /// The multiple of `step` at or below: for pieces that must go in.
    pub fn down_to(self, step: Length) -> Length {
        self.stepped(step, i128::div_euclid)
    }

    /// The multiple of `step` at or above: for what is bought, and for leeway.
    pub fn up_to(self, step: Length) -> Length {
        self.stepped(step, |nm, unit| -(-nm).div_euclid(unit))
    }

    /// Whole steps by `round`, which divides nanometres by the unit `parts × step`.
    fn stepped(self, step: Length, round: fn(i128, i128) -> i128) -> Length {
        let step = i128::from(step.nm().max(1));
        let nm = round(self.nm(), self.parts() * step).saturating_mul(step);
        Length::from_nm(nm.clamp(i128::from(i64::MIN), i128::from(i64::MAX)) as i64)
    }

    /// The usual text in one unit system: inches to the sixty-fourth, or millimetres to the tenth.
    pub fn text(self, units: Units) -> String {
        print::plain(self, units)
    }
}

impl From<Length> for Exact {
    fn from(length: Length) -> Self {
        length.exact()
    }
}

impl Add for Exact {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        // A whole number added to a reduced fraction leaves it reduced: no common factor has to be looked for.
        match (self.parts(), other.parts()) {
            (_, 1) => Self(Ratio::new_raw(self.nm() + other.nm() * self.parts(), self.parts())),
            (1, _) => Self(Ratio::new_raw(self.nm() * other.parts() + other.nm(), other.parts())),
            _ => Self(self.0 + other.0),
        }
    }
}

impl Sub for Exact {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Neg for Exact {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl Mul<i64> for Exact {
    type Output = Self;
    fn mul(self, count: i64) -> Self {
        Self(self.0 * i128::from(count))
    }
}

impl Add<Length> for Exact {
    type Output = Self;
    fn add(self, other: Length) -> Self {
        self + other.exact()
    }
}

impl Sub<Length> for Exact {
    type Output = Self;
    fn sub(self, other: Length) -> Self {
        self - other.exact()
    }
}

impl PartialEq<Length> for Exact {
    fn eq(&self, other: &Length) -> bool {
        *self == other.exact()
    }
}

impl PartialOrd<Length> for Exact {
    fn partial_cmp(&self, other: &Length) -> Option<std::cmp::Ordering> {
        self.partial_cmp(&other.exact())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{INCH, SIXTY_FOURTH};

    #[test]
    fn a_shared_run_adds_up_again() {
        let bay = Length::sixty_fourths(9_239).exact().over(11).expect("eleven is not zero");
        assert_eq!(bay * 11, Length::sixty_fourths(9_239));
    }

    #[test]
    fn halves_go_up_also_below_zero() {
        let half = SIXTY_FOURTH.exact().half();
        assert_eq!(half.nearest(SIXTY_FOURTH), SIXTY_FOURTH);
        assert_eq!((-half).nearest(SIXTY_FOURTH), Length::ZERO);
        assert_eq!((INCH.exact() + half).down_to(SIXTY_FOURTH), INCH);
        assert_eq!((INCH.exact() + half).up_to(SIXTY_FOURTH), INCH + SIXTY_FOURTH);
    }

    #[test]
    fn dividing_by_nothing_is_no_number() {
        assert_eq!(INCH.exact().over(0), None);
        assert_eq!(Exact::of_parts(1, 0), None);
    }
}
