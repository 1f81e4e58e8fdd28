//! Closing up: beads of caulk and adhesive by the cartridge, filler by the hole.

pub mod bead;
pub mod cartridge_yield;
pub mod caulk;
pub mod filler;
