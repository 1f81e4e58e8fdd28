//! The proof that no cheaper plan exists, as data.
//!
//! What it says in words: give every piece a value, so that no set of pieces that fits on a stick is worth more than
//! that stick's price. Then all pieces together are worth no more than any set of sticks that holds them, so no plan
//! costs less than the pieces are worth. Limited sticks carry a charge for being scarce; where one set of values is not
//! enough, the proof goes by cases: at most so many sticks of a kind, or more.
//!
//! How to check it, with whole numbers only:
//! - A piece has the size length + kerf, a stick the capacity length + kerf: a set of pieces fits when their sizes sum
//!   to no more than the capacity, and takes no more of a length than is asked for.
//! - A stick weighs price × (pieces + 1) + 1, so that the least weight is the least price, and fewest sticks at it.
//! - Each case has a range (at least, at most) per stick kind, from the splits above it. In a leaf, for every kind that
//!   may be used, no set that fits is worth more than weight × scale + charge, and that is not below 0.
//! - A split may count only those sticks of a kind that hold at least so many of some pieces. Each such split on the way
//!   to a leaf has a charge of its own there, and a range: at most so many in its first case, at least one more in its
//!   second. A set of pieces that counts may be worth that charge more.
//! - The leaf's bound is the worth of all pieces, less each charge above 0 times the most of its range, less each charge
//!   below 0 times the least of it, divided by the scale and rounded up.
//! - The bound may be raised to the next total that some numbers of sticks within the ranges have. Raised so, it must
//!   reach the claimed total in every leaf.

use serde::{Deserialize, Serialize};

use super::instance::{Piece, Stick};

/// A proof for one instance.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Certificate {
    /// The pieces, equal lengths merged, longest first: the order of the values.
    pub pieces: Vec<Piece>,
    /// Width of the saw's cut.
    pub kerf: i64,
    /// The sticks, equal ones merged, shortest first: the order of the charges. Of a limited kind no more than there are
    /// pieces, since every stick in use holds one. For a shortage, one unlimited kind more
    /// at the end, as long as the longest stick: the sticks that are short.
    pub sticks: Vec<Stick>,
    /// What is claimed.
    pub claim: Claim,
    /// The cases; the first is the whole question.
    pub cases: Vec<Branch>,
    /// For each stick kind that could have one, why no longer leftover exists at this price and stick count.
    pub leftovers: Vec<Leftover>,
}

/// What a certificate claims.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Claim {
    /// No plan weighs less than this.
    LeastWeight(i64),
    /// At least so many sticks are short. Here the sticks there are weigh 0, and each one more weighs 1.
    Short(u32),
}

/// Why no plan of the least weight leaves more of a stick of one kind.
///
/// The question is put again with one more stick kind at the end of the list, of which exactly one must be used: it
/// weighs what the named kind weighs, holds sizes up to `fill`, and one less of the named kind is on hand. The cases
/// show that every plan then weighs more than the least.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Leftover {
    /// Index of the stick kind.
    pub stick: usize,
    /// The sizes on it sum to no more than this: it leaves its length less this, or more.
    pub fill: i64,
    /// The cases; the first is the whole question.
    pub cases: Vec<Branch>,
}

/// One part of a proof by cases.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Branch {
    /// Two cases by the number of sticks of one kind.
    Split {
        /// Index of the stick kind.
        stick: usize,
        /// Only sticks that hold at least so many of each of these pieces are counted: (index of the piece, how many).
        /// Empty: all of the kind are.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        holds: Vec<(usize, u32)>,
        /// The first case uses at most so many of them, the second at least one more.
        at_most: u32,
        /// Where the first case is in the list: after this one.
        fewer: usize,
        /// Where the second case is in the list: after this one.
        more: usize,
    },
    /// A case that is bounded by values.
    Leaf(Leaf),
    /// A case not settled: no proof.
    Open,
}

/// Values per piece and charges per stick that bound the total of one case.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Leaf {
    /// All values and charges are counted in 1/scale of a weight.
    pub scale: i64,
    /// What one piece of each length is worth, not below 0.
    pub values: Vec<i64>,
    /// What is added to the weight of each stick kind.
    pub charges: Vec<i64>,
    /// What is added for a stick that counts in a split on pieces: one for each such split above, the first one first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub held: Vec<i64>,
}

impl Leaf {
    /// The least whole total that the values allow in a case with these ranges (least, most): of the stick kinds, and of
    /// the splits on pieces above it.
    pub fn bound(
        &self,
        need: &[u32],
        kinds: impl Iterator<Item = (u32, u32)>,
        held: impl Iterator<Item = (u32, u32)>,
    ) -> i64 {
        let worth: i128 =
            self.values.iter().zip(need).map(|(&value, &need)| i128::from(value) * i128::from(need)).sum();
        let charged: i128 = self
            .charges
            .iter()
            .zip(kinds)
            .chain(self.held.iter().zip(held))
            .map(|(&charge, (least, most))| i128::from(charge) * i128::from(if charge > 0 { most } else { least }))
            .sum();
        let scale = i128::from(self.scale.max(1));
        let total = worth - charged;
        i64::try_from(total.div_euclid(scale) + i128::from(total.rem_euclid(scale) > 0)).unwrap_or(i64::MAX)
    }
}
