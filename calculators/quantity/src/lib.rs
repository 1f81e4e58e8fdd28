//! What the trade measures, as types: exact lengths, and physical quantities with their unit in the type.
//!
//! A length is a whole count of nanometres ([`Length`]), because one inch is exactly 25 400 000 nm and both the sixty-fourth
//! of an inch and the tenth of a millimetre are whole. A quotient of lengths keeps its remainder ([`Exact`]) until a tape
//! reading is asked for ([`Reading`]). Physics (temperature, film, air flow) is floating point behind a unit ([`Physical`]).
//!
//! Only this folder converts units. Text comes in through [`Length::read`], goes out through [`mod@print`]; between the two
//! everything is exact and knows nothing of inches or millimetres.

mod exact;
mod length;
mod money;
mod physical;
pub mod print;
mod read;
mod run;
mod tape;
mod within;

pub use exact::Exact;
pub use length::{FOOT, INCH, Length, MICROMETRE, MILLIMETRE, SIXTY_FOURTH};
pub use money::Money;
pub use physical::{
    Amount, Kind, KindFacts, PHYSICAL_KINDS, Physical, PhysicalFault, Unit, kind, kind_named, read as read_physical,
};
pub use read::LengthFault;
pub use run::Run;
pub use tape::{Reading, Tape, Toward, Units};
pub use within::{Count, Within};
