//! The whole product from outside: what the tests share.

pub mod published;
pub mod sticks;
