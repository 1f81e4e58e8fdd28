//! Bounds that live in the type: the schema, the reader and every message ask the same place.

use super::length::Length;

/// A length between two bounds, both in micrometres and both allowed.
///
/// # Errors
/// [`Within::new`] and reading answer `None` or an error outside the bounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Within<const MIN_UM: i64, const MAX_UM: i64>(Length);

impl<const MIN_UM: i64, const MAX_UM: i64> Within<MIN_UM, MAX_UM> {
    /// The shortest allowed.
    pub const MIN: Length = Length::um(MIN_UM);
    /// The longest allowed.
    pub const MAX: Length = Length::um(MAX_UM);

    /// The length, when it is within the bounds.
    pub fn new(length: Length) -> Option<Self> {
        (Self::MIN <= length && length <= Self::MAX).then_some(Self(length))
    }

    /// The length itself.
    pub const fn get(self) -> Length {
        self.0
    }
}

impl<const MIN_UM: i64, const MAX_UM: i64> From<Within<MIN_UM, MAX_UM>> for Length {
    fn from(within: Within<MIN_UM, MAX_UM>) -> Self {
        within.0
    }
}

/// A whole number between two bounds, both allowed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Count<const MIN: u32, const MAX: u32>(u32);

impl<const MIN: u32, const MAX: u32> Count<MIN, MAX> {
    /// The count, when it is within the bounds.
    pub const fn new(count: u32) -> Option<Self> {
        if MIN <= count && count <= MAX { Some(Self(count)) } else { None }
    }

    /// The count itself.
    pub const fn get(self) -> u32 {
        self.0
    }
}

impl<const MIN: u32, const MAX: u32> From<Count<MIN, MAX>> for i64 {
    fn from(count: Count<MIN, MAX>) -> Self {
        Self::from(count.0)
    }
}
