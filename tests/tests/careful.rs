//! At a limit the careful side: what is bought is rounded up, what fits is rounded down, waits go up, permitted times go in.
//!
//! Every row is arithmetic worked by hand: a case that comes out whole, and the same a hair to either side of it, so that rounding the
//! other way, or to the nearest, comes out differently. The directions are common practice, no source.

use calculators::catalogue::entry;
use calculators::quantity::Units;
use serde_json::{Value, json};
use tests::published::ask;

/// A calculator's example with these fields changed, and what the answer has at a place: a count, a text, millimetres, a value.
fn came(id: &str, changes: &Value, place: &str) -> Value {
    let mut input = entry(id).unwrap_or_else(|| panic!("no calculator {id}")).example(Units::Metric).input.clone();
    for (name, value) in changes.as_object().expect("fields") {
        input[name] = value.clone();
    }
    let result = ask(id, input);
    let leaf = result.pointer(place).unwrap_or_else(|| panic!("{id} has nothing at {place}: {result}"));
    leaf.get("mm").or_else(|| leaf.get("value")).unwrap_or(leaf).clone()
}

fn check(id: &str, rows: &[(Value, &str, Value)]) {
    for (changes, place, wanted) in rows {
        let came = came(id, changes, place);
        let same = match (came.as_f64(), wanted.as_f64()) {
            (Some(ours), Some(theirs)) => (ours - theirs).abs() < 1e-9 * theirs.abs().max(1.0),
            _ => came == *wanted,
        };
        assert!(same, "{id} with {changes}: {place} came to {came}, by hand {wanted}");
    }
}

#[test]
fn what_is_bought_is_enough() {
    let tin = |holds: &str| json!([{ "holds": holds, "price": "10.00" }]);
    check(
        "tins",
        &[
            (json!({ "needed": "2 L", "reserve": 0, "tins": tin("1 L") }), "/tins/0/count", json!(2)),
            (json!({ "needed": "2.001 L", "reserve": 0, "tins": tin("1 L") }), "/tins/0/count", json!(3)),
            (json!({ "needed": "1.999 L", "reserve": 0, "tins": tin("1 L") }), "/tins/0/count", json!(2)),
            (json!({ "needed": "2 L", "reserve": 10, "tins": tin("1.1 L") }), "/tins/0/count", json!(2)),
            // A tin of 946 mL is not taken for 950: twenty of them hold 18.92 L and not 19.
            (json!({ "needed": "18.95 L", "reserve": 0, "tins": tin("946 mL") }), "/tins/0/count", json!(21)),
        ],
    );
    let packs = |net: f64, waste: i64, of: &str| json!({ "net": net, "waste": waste, "of": of, "pack": 12 });
    check(
        "order-quantity",
        &[
            (packs(24.0, 0, "what-is-needed"), "/packs", json!(2)),
            (packs(24.01, 0, "what-is-needed"), "/packs", json!(3)),
            (packs(23.99, 0, "what-is-bought"), "/packs", json!(2)),
            // 20 % of what is bought: 96 / 0.8 is 120, ten packs; of what is needed: 96 × 1.2 is 115.2, ten; 100 × 1.2 is 120, 100 / 0.8 is 125.
            (packs(96.0, 20, "what-is-bought"), "/packs", json!(10)),
            (packs(100.0, 20, "what-is-needed"), "/packs", json!(10)),
            (packs(100.0, 20, "what-is-bought"), "/packs", json!(11)),
        ],
    );
    let rolls = |edges: &str, cover: &str| json!({ "edges": edges, "extra": 10, "roll": "55 m", "cover": cover, "film_roll": "36 m2" });
    check(
        "masking-rolls",
        &[
            (rolls("50 m", "36 m2"), "/tape_rolls", json!(1)),
            (rolls("50.01 m", "36 m2"), "/tape_rolls", json!(2)),
            (rolls("50 m", "36 m2"), "/film_rolls", json!(1)),
            (rolls("50 m", "36.1 m2"), "/film_rolls", json!(2)),
        ],
    );
    let deepest = |deepest: f64| json!({ "deepest": deepest, "pass": 3, "dries": "2 h" });
    check(
        "filler",
        &[
            (deepest(6.0), "/passes", json!(2)),
            (deepest(6.1), "/passes", json!(3)),
            (deepest(5.9), "/passes", json!(2)),
            (deepest(6.1), "/wait", json!(6)),
        ],
    );
    // A fan of 150 and steps of 75: 150 + 17 × 75 is 1425.
    let high = |height: i64| json!({ "fan": 150, "overlap": 50, "height": height });
    check(
        "spray-passes",
        &[(high(1425), "/passes", json!(18)), (high(1426), "/passes", json!(19)), (high(150), "/passes", json!(1))],
    );
    let sanded = |area: &str| json!({ "area": area, "each": "2 m2" });
    check(
        "grit-ladder",
        &[
            (sanded("6 m2"), "/each", json!(3)),
            (sanded("6.01 m2"), "/each", json!(4)),
            (sanded("0.5 m2"), "/each", json!(1)),
        ],
    );
}

#[test]
fn what_comes_out_of_a_stick_or_a_sheet_fits_on_it() {
    // Three pieces of 797 and two cuts of 3 are 2397: the third still comes out, of 797.1 it does not.
    let stick = |piece: f64| json!({ "stick": 2397, "piece": piece, "kerf": 3 });
    check(
        "pieces-per-stick",
        &[
            (stick(797.0), "/pieces", json!(3)),
            (stick(797.0), "/left", json!(0)),
            (stick(797.1), "/pieces", json!(2)),
            (stick(797.1), "/left", json!(796.8)),
        ],
    );
    // Three strips of 64 and two cuts of 3 are 198; two pieces of 1000 and one cut are 2003. Fourteen pieces at six a sheet are three sheets.
    let sheet = |width: f64, length: f64, pieces: i64| json!({ "width": width, "length": length, "strip": 64, "piece": 1000, "pieces": pieces, "kerf": 3, "clean_up": 0 });
    check(
        "strips-from-sheet",
        &[
            (sheet(198.0, 2003.0, 12), "/strips", json!(3)),
            (sheet(197.9, 2003.0, 12), "/strips", json!(2)),
            (sheet(198.0, 2003.0, 12), "/sheets", json!(2)),
            (sheet(198.0, 2003.0, 13), "/sheets", json!(3)),
            (sheet(198.0, 2002.9, 12), "/sheets", json!(4)),
        ],
    );
    // Fifteen minutes open and four for each board: three boards, and of five minutes three too; of 5.1 only two.
    let open = |each: f64| json!({ "open_time": "15 min", "per_board": format!("{each} min") });
    check(
        "adhesive",
        &[(open(4.0), "/batch", json!(3)), (open(5.0), "/batch", json!(3)), (open(5.1), "/batch", json!(2))],
    );
}

#[test]
fn waits_are_rounded_up_and_a_window_is_rounded_inward() {
    // At 23 °C and 50 %, in the film of the sheet, the sheet's own times hold; a hair more film goes up to the next quarter.
    let film = |ratio: f64| json!({ "sheet_touch": "1 h", "sheet_recoat": "4 h", "air": "23 °C", "relative_humidity": 50, "film_ratio": ratio, "film_exponent": 1 });
    check(
        "recoat-time",
        &[
            (film(1.0), "/touch", json!(1)),
            (film(1.01), "/touch", json!(1.25)),
            (film(1.26), "/touch", json!(1.5)),
            (film(1.0), "/recoat", json!(4)),
            (film(1.01), "/recoat", json!(4.25)),
            // Never shorter than the sheet says.
            (film(0.6), "/recoat", json!(4)),
        ],
    );
    // Half of touch-dry and half of recoat are the window's ends: 10:30 and 1.3 h is 11:48, so from 12:00; 10:30 and 5.1 h is 15:36, to 15:30.
    check("tape-pull", &[(json!({}), "/open", json!("12:00")), (json!({}), "/close", json!("15:30"))]);
    // 2440 × 0.0005 × 3 is 3.66: 1.83 at each end, up to the next half millimetre; of 2000 it is 1.5 as it stands.
    let board = |size: f64| json!({ "what": "fibreboard-in-plane", "size": size, "driest": 6, "dampest": 9 });
    check(
        "board-movement",
        &[(board(2440.0), "/gap", json!(2)), (board(2000.0), "/gap", json!(1.5)), (board(2001.0), "/gap", json!(2))],
    );
}

#[test]
fn an_airless_gun_is_covered_further_round_than_one_of_low_pressure() {
    // Defaults of this book, no source: 10 ft and 5 ft (an inch is 25.4 mm).
    check(
        "overspray",
        &[(json!({ "gun": "airless" }), "/cover", json!(3048)), (json!({ "gun": "hvlp" }), "/cover", json!(1524))],
    );
}
