//! Unit systems, what a tape can show, and a value read off it.

use super::exact::Exact;
use super::length::{INCH, Length, MICROMETRE};

/// The two ways in which a shop reads its tape.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Units {
    /// Feet, inches and fractions of an inch.
    #[default]
    Imperial,
    /// Millimetres.
    Metric,
}

impl Units {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Imperial, Self::Metric];

    /// What a shop in it reads.
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Imperial => "Feet, inches and fractions of an inch.",
            Self::Metric => "Millimetres.",
        }
    }

    /// The other one.
    pub const fn other(self) -> Self {
        match self {
            Self::Imperial => Self::Metric,
            Self::Metric => Self::Imperial,
        }
    }

    /// The word used in requests, cookies and file names.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Imperial => "imperial",
            Self::Metric => "metric",
        }
    }

    /// The tape used where nobody chose one: sixteenths, or whole millimetres.
    pub const fn usual_tape(self) -> Tape {
        match self {
            Self::Imperial => Tape::Sixteenth,
            Self::Metric => Tape::Millimetre,
        }
    }
}

/// The finest mark used on a tape or a saw stop. It also says in which system the shop marks and cuts.
///
/// Common practice, no source: tape and pencil hold 1/32 in or 0.5 mm, marks are called out in 1/16 in or 1 mm.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Tape {
    /// 1/8 in.
    Eighth,
    /// 1/16 in.
    #[default]
    Sixteenth,
    /// 1/32 in.
    ThirtySecond,
    /// 1/64 in.
    SixtyFourth,
    /// 2 mm.
    TwoMillimetres,
    /// 1 mm.
    Millimetre,
    /// 0.5 mm.
    HalfMillimetre,
}

impl Tape {
    /// Every tape, the coarse before the fine.
    pub const ALL: [Self; 7] = [
        Self::Eighth,
        Self::Sixteenth,
        Self::ThirtySecond,
        Self::SixtyFourth,
        Self::TwoMillimetres,
        Self::Millimetre,
        Self::HalfMillimetre,
    ];

    /// The word used in requests.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Eighth => "1/8 in",
            Self::Sixteenth => "1/16 in",
            Self::ThirtySecond => "1/32 in",
            Self::SixtyFourth => "1/64 in",
            Self::TwoMillimetres => "2 mm",
            Self::Millimetre => "1 mm",
            Self::HalfMillimetre => "0.5 mm",
        }
    }

    /// The same as a sentence.
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Eighth => "1/8 in.",
            Self::Sixteenth => "1/16 in.",
            Self::ThirtySecond => "1/32 in.",
            Self::SixtyFourth => "1/64 in.",
            Self::TwoMillimetres => "2 mm.",
            Self::Millimetre => "1 mm.",
            Self::HalfMillimetre => "0.5 mm.",
        }
    }

    /// The distance between two marks.
    pub const fn step(self) -> Length {
        match self {
            Self::Eighth => Length::from_nm(INCH.nm() / 8),
            Self::Sixteenth => Length::from_nm(INCH.nm() / 16),
            Self::ThirtySecond => Length::from_nm(INCH.nm() / 32),
            Self::SixtyFourth => Length::from_nm(INCH.nm() / 64),
            Self::TwoMillimetres => Length::mm(2),
            Self::Millimetre => Length::mm(1),
            Self::HalfMillimetre => Length::from_nm(500 * MICROMETRE.nm()),
        }
    }

    /// The unit system the tape is printed in.
    pub const fn units(self) -> Units {
        match self {
            Self::Eighth | Self::Sixteenth | Self::ThirtySecond | Self::SixtyFourth => Units::Imperial,
            Self::TwoMillimetres | Self::Millimetre | Self::HalfMillimetre => Units::Metric,
        }
    }

    /// This tape if it is printed in the wished system, else that system's usual one; a fine tape stays fine: 1/32 in and 0.5 mm.
    pub fn in_units(self, units: Units) -> Self {
        match self {
            same if same.units() == units => same,
            Self::ThirtySecond | Self::SixtyFourth => Self::HalfMillimetre,
            Self::HalfMillimetre => Self::ThirtySecond,
            _ => units.usual_tape(),
        }
    }

    /// The reading of an exact place at the nearest mark.
    pub const fn mark(self, exact: Exact) -> Reading {
        Reading { exact, tape: self, toward: Toward::Nearest }
    }

    /// The reading at or below, for a piece that must go in.
    pub const fn short(self, exact: Exact) -> Reading {
        Reading { exact, tape: self, toward: Toward::Down }
    }

    /// The reading at or above, for leeway and for what is bought.
    pub const fn long(self, exact: Exact) -> Reading {
        Reading { exact, tape: self, toward: Toward::Up }
    }
}

/// Which way a reading is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Toward {
    /// To the nearest mark, halves upward.
    Nearest,
    /// To the mark at or below.
    Down,
    /// To the mark at or above.
    Up,
}

/// An exact place as a tape shows it: rounded once from its exact value, never stepped from its neighbour.
///
/// The error of a nearest reading is at most half a step; it stays available as [`Reading::left_over`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Reading {
    /// The exact place.
    pub exact: Exact,
    /// The tape it is read on.
    pub tape: Tape,
    /// Which way it is rounded.
    pub toward: Toward,
}

impl Reading {
    /// The mark on its own tape.
    pub fn shown(self) -> Length {
        self.shown_on(self.tape.step())
    }

    /// The mark on a tape with another step.
    pub fn shown_on(self, step: Length) -> Length {
        match self.toward {
            Toward::Nearest => self.exact.nearest(step),
            Toward::Down => self.exact.down_to(step),
            Toward::Up => self.exact.up_to(step),
        }
    }

    /// The mark in a unit system: on its own tape, or on the usual tape of the other system.
    pub fn shown_in(self, units: Units) -> Length {
        self.shown_on(self.tape.in_units(units).step())
    }

    /// Exact place less mark, signed: positive means the true place lies a little beyond the mark ("full").
    pub fn left_over(self) -> Exact {
        self.exact - self.shown()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mark_is_never_off_by_more_than_half_a_step() {
        for parts in 1..200 {
            let place = Length::mm(4_404).exact().over(parts).expect("not zero");
            let left = Tape::Sixteenth.mark(place).left_over().size();
            assert!(left <= Tape::Sixteenth.step().exact().half(), "{parts} parts: {left:?}");
        }
    }

    #[test]
    fn the_other_unit_system_reads_on_its_own_tape() {
        let place = Tape::Sixteenth.mark(Length::inches(13).exact());
        assert_eq!(place.shown_in(Units::Metric), Length::mm(330));
        assert_eq!(place.shown_in(Units::Imperial), Length::inches(13));
    }
}
