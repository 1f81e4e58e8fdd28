//! book
