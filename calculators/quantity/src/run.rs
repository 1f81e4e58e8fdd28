//! A length of goods that run on: caulk, tape, film on a roll.

use super::length::Length;
use super::print;

/// How far a cartridge or a roll goes, or how much of it is needed: exact inside, told to the inch or the centimetre.
///
/// Common practice, no source: nobody measures caulk or tape to a mark, so it is told in feet and inches or in metres.
///
/// # Examples
/// ```
/// use quantity::{Length, Run, Units};
/// assert_eq!(Run::of(Length::mm(66_667)).text(Units::Metric), "66.67 m");
/// assert_eq!(Run::of(Length::mm(44_425)).text(Units::Imperial), "145' 9\"");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Run(Length);

impl Run {
    /// A run of this length.
    pub const fn of(length: Length) -> Self {
        Self(length)
    }

    /// Its exact length.
    pub const fn length(self) -> Length {
        self.0
    }

    /// As it is told in one unit system: feet and whole inches, or metres to the centimetre.
    pub fn text(self, units: super::Units) -> String {
        print::run(self.0.exact(), units)
    }
}
