//! A finished plan held against what must be true of it, before it is given.
//!
//! This knows the survey, the scheme and the pieces of the layout, and nothing of how they were found: it measures the outlines again.
//! What breaks a rule is not given as a plan.

mod outlines;
mod sheets;
mod wall;

use super::plan::Layout;
use super::scheme::WallInput;
use crate::catalogue::Words;

/// A rule that a layout breaks.
#[derive(Clone, Debug, PartialEq)]
pub struct Broken {
    /// The rule, in a few words.
    pub rule: &'static str,
    /// Where, with the pieces concerned.
    pub place: Words,
}

impl Broken {
    fn at(rule: &'static str, members: &[&str]) -> Self {
        Self { rule, place: Words::new(members.join(", ")) }
    }
}

/// Every rule that a layout breaks; empty for a plan that may be given.
pub fn broken(input: &WallInput, layout: &Layout) -> Vec<Broken> {
    let mut found = Vec::new();
    outlines::check(layout, &mut found);
    wall::check(input, layout, &mut found);
    sheets::check(input, layout, &mut found);
    found
}
