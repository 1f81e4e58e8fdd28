//! What of a stick can be used: its ends trimmed, its bad stretches cut out.
//!
//! A stick with a knot or a dent is planned as the parts on either side of it. Each part then goes into the stick plan as a
//! stick of its own; what the marked stick cost is paid once, so its parts go in at no price.

use crate::catalogue::{Fault, Input, Words};
use crate::quantity::{Length, Money, Within};

/// A stretch of a stick that no piece may hold, measured from the stick's first end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BadStretch {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

/// A bad stretch as a shop marks it: a knot, a split, a dent, filled sapwood.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Bad stretch")]
pub struct Marked {
    /// From the stick's first end.
    #[field("From")]
    pub from: Within<0, 12_000_000>,
    /// From the same end; further along than where it begins.
    #[field("To")]
    pub to: Within<0, 12_000_000>,
}

impl Marked {
    /// The stretch itself.
    pub fn stretch(self) -> BadStretch {
        BadStretch { from: self.from.get(), to: self.to.get() }
    }
}

/// Bad stretches that cannot be, on the stick at this pointer: it is not paid for, or a stretch ends before it begins.
pub(crate) fn marked_faults(at: &str, price: Money, bad: &[Marked]) -> Vec<Fault> {
    let mut faults = Vec::new();
    if price != Money::ZERO && !bad.is_empty() {
        faults.push(Fault::new(
            format!("{at}/price"),
            Words::of(price),
            "a stick with a bad stretch lies in the rack and is paid for: its parts are planned at no price",
            "0.00",
        ));
    }
    for (n, stretch) in bad.iter().enumerate().filter(|(_, stretch)| stretch.to.get() <= stretch.from.get()) {
        faults.push(Fault::new(
            format!("{at}/bad/{n}/to"),
            Words::of(stretch.to),
            Words::new("a bad stretch ends beyond {}, where it begins").with(stretch.from),
            Words::of(stretch.from.get() + Length::inches(2)),
        ));
    }
    faults
}

/// A clear part of a stick, measured from the stick's first end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClearPart {
    /// Where it begins: the first cut has been made.
    pub from: Length,
    /// How long it is.
    pub length: Length,
}

/// The clear parts of a stick, in order from its first end.
///
/// Shape: one stick, any number of stretches in any order; they may overlap, lie in the trim, or run past the end.
/// `trim` is what is cut off each end, kerf included. The saw cuts inside a bad stretch; one narrower than the kerf
/// loses the rest of the kerf from the part after it.
/// # Source
/// Common practice, no source.
/// # Examples
/// ```
/// use calculators::quantity::Length;
/// use calculators::stock::clear_parts::{BadStretch, clear_parts};
/// let knot = BadStretch { from: Length::mm(1_000), to: Length::mm(1_100) };
/// let parts = clear_parts(Length::mm(2_400), Length::mm(12), &[knot], Length::mm(3));
/// assert_eq!(parts.iter().map(|part| part.length).collect::<Vec<_>>(), [Length::mm(988), Length::mm(1_288)]);
/// assert_eq!(parts[1].from, Length::mm(1_100));
/// ```
pub fn clear_parts(stick: Length, trim: Length, bad: &[BadStretch], kerf: Length) -> Vec<ClearPart> {
    let (start, end) = (trim, stick - trim);
    let mut stretches: Vec<BadStretch> = bad.iter().copied().filter(|stretch| stretch.from < stretch.to).collect();
    stretches.sort_by_key(|stretch| stretch.from);
    let mut parts = Vec::new();
    let mut clear_from = start;
    for BadStretch { from, to } in stretches {
        if to <= clear_from {
            continue;
        }
        let clear_to = from.min(end);
        if clear_to > clear_from {
            parts.push(ClearPart { from: clear_from, length: clear_to - clear_from });
            clear_from = to.max(from + kerf);
        } else {
            clear_from = clear_from.max(to);
        }
    }
    if end > clear_from {
        parts.push(ClearPart { from: clear_from, length: end - clear_from });
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn parts(stick: i64, trim: i64, bad: &[(i64, i64)]) -> Vec<i64> {
        let bad: Vec<_> =
            bad.iter().map(|&(from, to)| BadStretch { from: Length::mm(from), to: Length::mm(to) }).collect();
        let clear = clear_parts(Length::mm(stick), Length::mm(trim), &bad, Length::mm(4));
        clear.into_iter().map(|part| part.length.nm() / 1_000_000).collect()
    }

    #[test]
    fn a_bad_stretch_makes_two_parts() {
        assert_eq!(parts(2_400, 0, &[(800, 900)]), [800, 1_500]);
    }

    #[test]
    fn trims_come_off_both_ends() {
        assert_eq!(parts(2_400, 12, &[]), [2_376]);
        assert_eq!(parts(20, 12, &[]), [0_i64; 0]);
    }

    #[test]
    fn a_bad_end_is_cut_off_and_overlapping_stretches_are_one() {
        assert_eq!(parts(2_400, 12, &[(0, 100)]), [2_288]);
        assert_eq!(parts(2_400, 0, &[(1_000, 1_200), (900, 1_100)]), [900, 1_200]);
        assert_eq!(parts(2_400, 12, &[(2_300, 9_000)]), [2_288]);
    }

    #[test]
    fn a_nick_narrower_than_the_kerf_still_costs_a_kerf() {
        assert_eq!(parts(2_400, 0, &[(1_000, 1_001)]), [1_000, 1_396]);
    }

    proptest! {
        #[test]
        fn parts_and_bad_stretches_never_exceed_the_stick(
            stick in 0_i64..3_000, trim in 0_i64..50, bad in prop::collection::vec((0_i64..3_000, 0_i64..3_000), 0..5)
        ) {
            let clear = parts(stick, trim, &bad);
            prop_assert!(clear.iter().all(|part| *part >= 0));
            let covered: i64 = (trim..stick - trim).filter(|at| bad.iter().any(|&(from, to)| from <= *at && *at < to)).count() as i64;
            prop_assert!(clear.iter().sum::<i64>() + covered <= (stick - 2 * trim).max(0));
        }
    }
}
