//! What is asked of a stick plan: pieces, the saw's kerf, and the sticks that can be had.
//!
//! Lengths and prices are bare integers here, so that one solver serves inches in sixty-fourths, tenths of a
//! millimetre and nanometres alike; every length of one instance is in the same unit.

use serde::{Deserialize, Serialize};
use thiserror::Error;

/// Pieces of one length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Piece {
    /// Length to cut, above zero.
    pub length: i64,
    /// How many of them.
    pub count: u32,
}

/// Sticks of one length and price.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Stick {
    /// Length of the stick, above zero.
    pub length: i64,
    /// Price of one in whole minor units of money; 0 for an offcut already paid for.
    pub price: i64,
    /// How many there are; none means no limit.
    pub available: Option<u32>,
}

/// A question for the stick plan.
///
/// Shape: any number of piece lengths and stick kinds, equal ones allowed. Units: one length unit throughout.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Instance {
    /// What is to be cut.
    pub pieces: Vec<Piece>,
    /// Width of the saw's cut, lost between two pieces.
    pub kerf: i64,
    /// What it can be cut from.
    pub sticks: Vec<Stick>,
}

/// The longest length the plan works with: 2^50, over a thousand kilometres in nanometres.
pub const LONGEST: i64 = 1 << 50;
/// The most pieces one plan takes.
pub const MOST_PIECES: u64 = 50_000;
/// The largest value of price × (pieces + 1): 2^40.
pub const LARGEST_WEIGHT: i64 = 1 << 40;

/// Why an instance cannot be read as a question about sticks.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum InstanceFault {
    /// A piece has no length.
    #[error("a piece of length {0} cannot be cut; give a length above 0")]
    PieceLength(i64),
    /// A stick has no length.
    #[error("a stick of length {0} is no stick; give a length above 0")]
    StickLength(i64),
    /// A kerf below zero.
    #[error("a kerf of {0} is below 0; give the width of the saw's cut, or 0")]
    Kerf(i64),
    /// A price below zero.
    #[error("a price of {0} is below 0; give 0 for an offcut already paid for")]
    Price(i64),
    /// A length too large for exact arithmetic.
    #[error("a length of {0} is beyond {LONGEST}; give lengths in a coarser unit")]
    TooLong(i64),
    /// More pieces than one plan takes.
    #[error("{0} pieces are more than {MOST_PIECES}; divide the job")]
    TooManyPieces(u64),
    /// Prices too large for exact arithmetic.
    #[error("a price of {0} times the number of pieces is beyond {LARGEST_WEIGHT}; give prices in a coarser unit")]
    TooDear(i64),
}

impl Instance {
    /// How many pieces there are in all.
    pub fn piece_count(&self) -> u64 {
        self.pieces.iter().map(|piece| u64::from(piece.count)).sum()
    }

    /// Checks every number against its range.
    ///
    /// # Errors
    /// The first `InstanceFault` met.
    pub fn checked(&self) -> Result<(), InstanceFault> {
        if !(0..=LONGEST).contains(&self.kerf) {
            return Err(if self.kerf < 0 { InstanceFault::Kerf(self.kerf) } else { InstanceFault::TooLong(self.kerf) });
        }
        for piece in &self.pieces {
            match piece.length {
                ..=0 => return Err(InstanceFault::PieceLength(piece.length)),
                length if length > LONGEST => return Err(InstanceFault::TooLong(length)),
                _ => {}
            }
        }
        let count = self.piece_count();
        if count > MOST_PIECES {
            return Err(InstanceFault::TooManyPieces(count));
        }
        for stick in &self.sticks {
            match stick.length {
                ..=0 => return Err(InstanceFault::StickLength(stick.length)),
                length if length > LONGEST => return Err(InstanceFault::TooLong(length)),
                _ => {}
            }
            if stick.price < 0 {
                return Err(InstanceFault::Price(stick.price));
            }
            match weight_of(stick.price, count) {
                Some(weight) if weight <= LARGEST_WEIGHT => {}
                _ => return Err(InstanceFault::TooDear(stick.price)),
            }
        }
        Ok(())
    }
}

/// Price and stick count in one number: price × (pieces + 1) + 1.
///
/// No plan needs more sticks than there are pieces, so a cheaper plan always weighs less, and of two plans at one
/// price the one with fewer sticks does. None when the number does not fit.
pub fn weight_of(price: i64, pieces: u64) -> Option<i64> {
    price.checked_mul(i64::try_from(pieces).ok()?.checked_add(1)?)?.checked_add(1)
}
