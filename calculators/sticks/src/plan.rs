//! The answer: which sticks to buy, what to cut from each, and how far the answer is proved.

use serde::{Deserialize, Serialize};

use super::certificate::Certificate;
use super::instance::Piece;

/// A cutting plan and its standing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Plan {
    /// How far it is proved.
    pub status: Status,
    /// The sticks, those cut alike together; none when no plan was found.
    pub sticks: Vec<CutStick>,
    /// Price of all sticks.
    pub cost: i64,
    /// Number of sticks.
    pub stick_count: u32,
    /// The longest single leftover.
    pub longest_leftover: i64,
    /// No plan of this price with as few sticks leaves a longer piece.
    pub leftover_proved: bool,
    /// The proof; none when nothing is proved.
    pub certificate: Option<Certificate>,
}

/// Sticks cut alike.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct CutStick {
    /// Length of the stick.
    pub length: i64,
    /// Price of one.
    pub price: i64,
    /// How many are cut this way.
    pub times: u32,
    /// What is cut from each, longest first.
    pub pieces: Vec<Piece>,
    /// What is left of each after the last cut; 0 when only dust is.
    pub leftover: i64,
}

/// How far a plan is proved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Status {
    /// No plan costs less, and none at this price takes fewer sticks.
    ProvedLeast,
    /// The best found before the search was stopped.
    BestFound {
        /// No plan costs less than this.
        bound: i64,
        /// A cheaper plan could save so much at most.
        could_save: i64,
    },
    /// No plan exists.
    Impossible(Reason),
    /// The search was stopped before it had found a plan or shown that there is none.
    NoneFound,
}

/// Why no plan exists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reason {
    /// A piece is longer than every stick there is.
    PieceTooLong {
        /// Length of the longest piece.
        piece: i64,
        /// Length of the longest stick; none when there is no stick at all.
        longest_stick: Option<i64>,
    },
    /// There are too few sticks.
    TooFewSticks {
        /// How many more of the longest stick it takes at least.
        short: u32,
        /// Length of that stick.
        length: i64,
    },
}

/// What is left of a stick of this length when pieces are cut from it whose lengths and kerfs, one each, sum to `sizes`:
/// slack up to one kerf wide is dust, more loses one kerf to the cut that frees the last piece.
pub(super) fn leftover_of(length: i64, sizes: i64) -> i64 {
    (length - sizes).max(0)
}
