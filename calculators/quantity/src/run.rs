//! A length of goods that run on: caulk, tape, film on a roll.

use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::{Serialize, Serializer, ser::SerializeMap};

use super::exact::Exact;
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

impl Serialize for Run {
    /// As an exact length that says what it is, for the printing walk at the edge.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(2))?;
        map.serialize_entry("nm", &print::nm_pair(self.0.exact()))?;
        map.serialize_entry("run", &true)?;
        map.end()
    }
}

impl JsonSchema for Run {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Run".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        Exact::json_schema(generator)
    }
}
