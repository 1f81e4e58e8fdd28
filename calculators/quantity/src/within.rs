//! Bounds that live in the type: the schema, the reader and every message ask the same place.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

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

impl<const MIN_UM: i64, const MAX_UM: i64> Serialize for Within<MIN_UM, MAX_UM> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.serialize(serializer)
    }
}

impl<'de, const MIN_UM: i64, const MAX_UM: i64> Deserialize<'de> for Within<MIN_UM, MAX_UM> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let length = Length::deserialize(deserializer)?;
        Self::new(length)
            .ok_or_else(|| de::Error::custom(format!("{length} is outside {} to {}", Self::MIN, Self::MAX)))
    }
}

impl<const MIN_UM: i64, const MAX_UM: i64> JsonSchema for Within<MIN_UM, MAX_UM> {
    fn schema_name() -> Cow<'static, str> {
        format!("LengthFrom{MIN_UM}To{MAX_UM}Micrometres").into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": ["string", "number", "object"],
            "x-length": { "min_nm": Self::MIN.nm(), "max_nm": Self::MAX.nm() },
        })
    }
}

/// A whole number between two bounds, both allowed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(transparent)]
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

impl<'de, const MIN: u32, const MAX: u32> Deserialize<'de> for Count<MIN, MAX> {
    /// Reads an integer, also when it is written as `5.0`: that is an integer to JSON Schema.
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let number = f64::deserialize(deserializer)?;
        let whole = libm::trunc(number);
        let fits = whole.total_cmp(&number).is_eq() && (f64::from(MIN)..=f64::from(MAX)).contains(&whole);
        fits.then_some(Self(whole as u32))
            .ok_or_else(|| de::Error::custom(format!("{number} is no whole number from {MIN} to {MAX}")))
    }
}

impl<const MIN: u32, const MAX: u32> JsonSchema for Count<MIN, MAX> {
    fn schema_name() -> Cow<'static, str> {
        format!("CountFrom{MIN}To{MAX}").into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "integer", "minimum": MIN, "maximum": MAX })
    }
}
