//! What the client agrees to, in words that can be signed: the look, what it does to plates and corners, the price.

use calculators::quantity::Units;
use calculators::wall::job::Job;
use calculators::wall::plan::Layout;
use calculators::wall::scheme::{Material, WallInput};
use serde::Serialize;

use super::ways::bay_range;
use crate::figure;

/// One thing agreed.
#[derive(Debug, Serialize)]
pub(super) struct AgreedView {
    label: &'static str,
    /// Empty: to be filled in by hand.
    value: String,
}

pub(super) fn agreed(input: &WallInput, layout: &Layout, units: Units) -> Vec<AgreedView> {
    let scheme = &input.scheme;
    let row = |label, value: String| AgreedView { label, value };
    let length = |length: calculators::quantity::Exact| figure::set(length, units);
    let material = match scheme.material {
        Material::Mdf => "MDF",
        Material::Solid => "solid wood",
    };
    let mut rows = vec![
        row(
            "Boards",
            format!(
                "{} along the foot, {} × {}, {material}",
                layout.boards,
                length(scheme.board_width.get().exact()),
                length(scheme.board_thickness.get().exact())
            ),
        ),
        row("Clear bays", bay_range(layout, "to", units)),
        row("Rails", rails(layout, units)),
    ];
    let done = layout.conflicts.iter().flat_map(|conflict| {
        let applied = conflict.options.iter().filter(|option| option.applied);
        applied.map(|option| figure::sentence(&option.words, units))
    });
    let done: Vec<String> = done.collect();
    rows.push(row("In the way, and settled so", if done.is_empty() { "nothing".to_owned() } else { done.join("; ") }));
    rows.extend(["Colour", "Sheen", "Not part of the work"].map(|label| row(label, String::new())));
    rows.push(row("Price before tax", price(&layout.job)));
    rows
}

/// The price, with what it leaves out; while a piece has no stick no price stands at all.
fn price(job: &Job) -> String {
    if !job.without_stick.is_empty() {
        return format!("INCOMPLETE: no stick for {}", job.without_stick.join(", "));
    }
    match job.price {
        None => String::new(),
        Some(price) if job.without_price.is_empty() => price.to_string(),
        Some(price) => format!("{price}, without {}", job.without_price.join(", ")),
    }
}

/// Heights of the rails above the high floor point, lowest first.
fn rails(layout: &Layout, units: Units) -> String {
    let edges = layout.offsets.iter().filter(|offset| offset.name.in_units(units).ends_with("top edge"));
    let heights: Vec<String> = edges
        .map(|offset| {
            let name = offset.name.in_units(units).trim_end_matches(", top edge").to_owned();
            format!("{name} up to {}", figure::set(offset.height, units))
        })
        .collect();
    if heights.is_empty() { "none".to_owned() } else { heights.join("; ") }
}
