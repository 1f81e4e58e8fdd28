//! Cutting sticks: least cost, then fewest sticks, then the longest leftover, with a proof that a slow checker can follow.
//!
//! Lengths and prices are whole numbers of any unit; kerf is lost with each cut. Nothing here knows boards or money.

pub mod instance;

pub mod plan;

pub mod certificate;

pub mod solve;

pub mod certificate_check;

pub mod rack;
