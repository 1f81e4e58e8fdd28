//! Values published elsewhere, each worked out here through a calculator's public face and compared.
//!
//! The rows stand in `data/published`, one file a topic, with source, locator, standing and tolerance beside each. A quantity of a file
//! that is named nowhere here fails its test; so does one that is named here and missing there. What does not belong to
//! a calculation of this book is listed with the reason.

mod air;
mod coating;
mod colour;
mod exposure;
mod fixing;
mod money;
mod wall;
mod wood;

use tests::published::{Ours, compare};

/// Compares a topic and fails with every row that differs.
fn check(topic: &str, of: &[(&str, Ours)]) {
    let outcome = compare(topic, of);
    println!("{topic}: {} values compared", outcome.compared);
    assert!(outcome.compared > 0, "{topic}: nothing was compared");
    assert!(
        outcome.different.is_empty(),
        "{} of {} differ:\n{}",
        outcome.different.len(),
        outcome.compared,
        outcome.different.join("\n")
    );
}
