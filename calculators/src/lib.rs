//! calculators
