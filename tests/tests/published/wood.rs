//! Moisture and movement of wood and fibreboard.

use calculators::stock::moisture;
use serde_json::{Value, json};
use tests::published::Ours::By;
use tests::published::{Row, ask, number};

use crate::check;

fn equilibrium(row: &Row) -> Value {
    number(
        &ask(
            "equilibrium-moisture",
            json!({ "air": row.number("temperature_C"), "relative_humidity": row.number("rh_pct") }),
        )["equilibrium"],
    )
    .into()
}

/// The calculator moves from dry to damp; a change the other way has the other sign.
fn moved(what: &str, size: String, change: f64) -> f64 {
    let input = json!({ "what": what, "size": size, "driest": 5, "dampest": 5.0 + change.abs() });
    number(&ask("board-movement", input)["change"]) * change.signum()
}

#[test]
fn moisture_and_movement() {
    check(
        "wood-moisture",
        &[
            ("equilibrium moisture content of solid wood", By(equilibrium)),
            ("EMC, printed table value (one decimal)", By(equilibrium)),
            (
                "change in board width with moisture",
                By(|row| {
                    let (from, to) = (row.number("mc_from_pct"), row.number("mc_to_pct"));
                    let input = json!({
                        "what": "solid-across", "size": row.inches("width_in"), "driest": from.min(to), "dampest": from.max(to), "coefficient": row.number("coefficient"),
                    });
                    (number(&ask("board-movement", input)["change"]) / 25.4 * (to - from).signum()).into()
                }),
            ),
            (
                "MDF change in length or width",
                By(|row| {
                    moved("fibreboard-in-plane", row.millimetres("length_mm"), row.number("mc_change_pct")).into()
                }),
            ),
            (
                "MDF change in thickness",
                By(|row| {
                    moved("fibreboard-thickness", row.millimetres("thickness_mm"), row.number("mc_change_pct")).into()
                }),
            ),
            (
                "upper bound of MDF linear expansion from the product-standard limit (0.33 %)",
                By(|row| {
                    let input = json!({ "what": "fibreboard-in-plane", "size": row.inches("length_in"), "driest": 5, "dampest": 6 });
                    assert!((moisture::MDF_BOUND.value - 0.0033).abs() < 1e-12);
                    (number(&ask("board-movement", input)["bound"]) / 25.4).into()
                }),
            ),
        ],
    );
}
