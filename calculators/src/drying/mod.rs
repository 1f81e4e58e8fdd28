//! Air, surfaces and waiting: dew point, recoat, cure, the window for pulling tape.

pub mod air;
pub mod air_state;
pub mod recoat;
pub mod spray_climate;
pub mod tape_pull;
