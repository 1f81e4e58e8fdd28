//! The whole product from outside: what the tests share.

pub mod inputs;
pub mod published;
#[cfg(feature = "pages")]
pub mod served;
pub mod sticks;
