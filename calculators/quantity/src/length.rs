//! The exact length: a whole count of nanometres.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

use super::exact::Exact;
use super::print;
use super::tape::Units;

/// An exact length in whole nanometres, signed.
///
/// Range: text and JSON are read up to 1 km either way, so that sums of millions of lengths stay far inside 64 bits.
/// # Source
/// One inch is exactly 25.4 mm: international yard and pound agreement of 1959 (NIST Handbook 44, appendix C).
/// # Examples
/// ```
/// use quantity::{Length, Units};
/// let run = Length::read("14' 5 3/8\"", Units::Imperial).unwrap();
/// assert_eq!(run.nm(), 4_403_725_000);
/// assert_eq!(run, Length::inches(173) + Length::sixty_fourths(24));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

/// One micrometre.
pub const MICROMETRE: Length = Length(1_000);
/// One millimetre.
pub const MILLIMETRE: Length = Length(1_000 * MICROMETRE.0);
/// One inch: exactly 25.4 mm (international yard and pound agreement, 1959).
pub const INCH: Length = Length(25_400 * MICROMETRE.0);
/// One foot: twelve inches.
pub const FOOT: Length = Length(12 * INCH.0);
/// One sixty-fourth of an inch, the finest mark on a tape that is a whole number of nanometres.
pub const SIXTY_FOURTH: Length = Length(INCH.0 / 64);

impl Length {
    /// No length at all.
    pub const ZERO: Self = Self(0);
    /// The longest length that text or JSON may state: 1 km.
    pub const LONGEST: Self = Self(1_000_000 * MILLIMETRE.0);

    /// A length of so many nanometres.
    pub const fn from_nm(nm: i64) -> Self {
        Self(nm)
    }

    /// A length of so many whole micrometres.
    pub const fn um(count: i64) -> Self {
        Self(count * MICROMETRE.0)
    }

    /// A length of so many whole millimetres.
    pub const fn mm(count: i64) -> Self {
        Self(count * MILLIMETRE.0)
    }

    /// A length of so many whole inches.
    pub const fn inches(count: i64) -> Self {
        Self(count * INCH.0)
    }

    /// A length of so many sixty-fourths of an inch.
    pub const fn sixty_fourths(count: i64) -> Self {
        Self(count * SIXTY_FOURTH.0)
    }

    /// The count of nanometres.
    pub const fn nm(self) -> i64 {
        self.0
    }

    /// The length in millimetres, for physics and drawings only: a float is never added to a length again.
    pub fn in_mm(self) -> f64 {
        self.0 as f64 / MILLIMETRE.0 as f64
    }

    /// The length in metres, for physics only.
    pub fn in_m(self) -> f64 {
        self.in_mm() / 1_000.0
    }

    /// The length nearest to so many millimetres, for results of physics and trigonometry.
    /// Not a number and out of range become the nearest bound, so nothing panics.
    pub fn nearest_mm(mm: f64) -> Self {
        Self(libm::round(mm * MILLIMETRE.0 as f64) as i64)
    }

    /// This length as a rational, to divide it without losing the remainder.
    pub const fn exact(self) -> Exact {
        Exact::whole(self.0)
    }

    /// How many whole `part`s lie in this length; zero when `part` is not positive.
    pub const fn whole_parts(self, part: Self) -> i64 {
        if part.0 <= 0 { 0 } else { self.0.div_euclid(part.0) }
    }

    /// The size without its sign.
    pub const fn size(self) -> Self {
        Self(self.0.abs())
    }

    /// True for lengths above zero.
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    /// True for lengths below zero.
    pub const fn is_negative(self) -> bool {
        self.0 < 0
    }
}

impl fmt::Display for Length {
    /// Inches and millimetres side by side, for messages that do not know the reader's units.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let exact = self.exact();
        write!(f, "{} ({})", print::inches(exact, 64), print::millimetres(exact, print::TENTH_MM))
    }
}

impl Length {
    /// The usual text in one unit system: inches to the sixty-fourth, or millimetres to the tenth.
    pub fn text(self, units: Units) -> String {
        print::plain(self.exact(), units)
    }
}

impl Add for Length {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Length {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Neg for Length {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl Mul<i64> for Length {
    type Output = Self;
    fn mul(self, count: i64) -> Self {
        Self(self.0 * count)
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Self) {
        self.0 += other.0;
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Self) {
        self.0 -= other.0;
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Self>>(lengths: I) -> Self {
        lengths.fold(Self::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_inch_divides_into_whole_sixty_fourths() {
        // NIST Handbook 44, appendix C: 1 in = 25.4 mm exactly, so 1/64 in = 0.396875 mm.
        assert_eq!(SIXTY_FOURTH.nm(), 396_875);
        assert_eq!(Length::sixty_fourths(64), INCH);
        assert_eq!(FOOT, Length::um(304_800));
    }

    #[test]
    fn whole_parts_count_down() {
        assert_eq!(Length::inches(49).whole_parts(Length::inches(4)), 12);
        assert_eq!(Length::inches(49).whole_parts(Length::ZERO), 0);
    }
}
