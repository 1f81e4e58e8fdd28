//! Walls small enough to be worked by hand, asked through the calculator's public face: what is marked, sawn, joined and warned of.
//!
//! Figures are geometry and arithmetic, worked by hand beside each test; distances that a shop may change are defaults of this
//! book (common practice, no source) and are written into the wall wherever it has a field for them.

mod findings;
mod marks;
mod random;
mod second_look;
mod sticks;
mod worked;

use calculators::catalogue::{Fault, entry};
use calculators::quantity::Units;
use serde_json::{Value, json};

/// A level wall 4 m long with a base of 140, boards of 64 by 18 and a rail of 90 whose top edge is at 1575 mm: open at both ends.
fn plain() -> Value {
    json!({
        "survey": {
            "name": "X", "datum": 1000, "lengths": [{ "height": 0, "length": 4000 }],
            "stations": [{ "at": 0, "datum_to_floor": 1000 }, { "at": 4000, "datum_to_floor": 1000 }],
            "base": { "height": 140, "thickness": 18 },
            "left": { "kind": "open-bay" }, "right": { "kind": "open-bay" },
            "openings": [], "boxes": [], "keep_clear": [],
        },
        "scheme": {
            "board_width": 64, "board_thickness": 18, "target_bay": 330, "rails": { "width": 90, "top": 1575 }, "tape": "1 mm",
        },
        "stock": { "sticks": [{ "length": 4800, "price": "30.00" }], "kerf": 3.2, "end_trim": 12 },
    })
}

/// A wall with these values written into it.
fn with(mut wall: Value, values: &[(&str, Value)]) -> Value {
    for (pointer, value) in values {
        tests::inputs::put(&mut wall, pointer, value.clone());
    }
    wall
}

/// What comes of a wall: its first layout.
fn layout(wall: &Value) -> Value {
    tests::published::ask("wall-plan", wall.clone())["layouts"][0].take()
}

/// Pointers of the faults that a wall is refused for; none where it is taken.
fn refused(wall: &Value) -> Vec<String> {
    let faults: Result<_, Vec<Fault>> = entry("wall-plan").expect("it is declared").answer(wall, Units::Metric);
    faults.err().unwrap_or_default().into_iter().map(|fault| fault.pointer).collect()
}

/// The length of a printed leaf in whole nanometres: of a reading, what the tape shows.
fn nm(leaf: &Value) -> i64 {
    let pair = leaf["nm"].as_array().unwrap_or_else(|| panic!("no length: {leaf}"));
    let (top, bottom) = (pair[0].as_i64().expect("whole"), pair[1].as_i64().expect("whole"));
    assert_eq!(top % bottom, 0, "{leaf} lies between two nanometres");
    top / bottom
}

/// The length of a printed leaf in millimetres, a place that is not rounded yet too.
fn mm(leaf: &Value) -> f64 {
    leaf["mm"].as_f64().unwrap_or_else(|| panic!("no length: {leaf}"))
}

fn list<'v>(value: &'v Value, name: &str) -> &'v Vec<Value> {
    value[name].as_array().unwrap_or_else(|| panic!("no list {name}"))
}

fn word<'v>(value: &'v Value, name: &str) -> &'v str {
    value[name].as_str().unwrap_or_else(|| panic!("no word {name} in {value}"))
}
