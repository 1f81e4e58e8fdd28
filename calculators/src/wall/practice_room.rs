//! The worked example of the whole book: three walls of an invented village band practice room, as a person would type them.
//!
//! A plain wall, a wall with two unequal windows and a switch, and a wall up a stair, each measured once in inches and once in
//! millimetres. The metric shop has metric boards, so its answers are not the others converted.

use serde_json::{Value, json};

use crate::quantity::Units;

/// The walls of the room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wall {
    /// Plain, inside corners at both ends, fitted first.
    Plain,
    /// Two unequal windows, a switch, and a door casing at the right end.
    Windows,
    /// Up a stair of nine nosings, door casings at both ends.
    Stair,
}

impl Wall {
    /// All walls, in the order of fitting.
    pub const ALL: [Self; 3] = [Self::Plain, Self::Windows, Self::Stair];
}

/// The input for one wall: survey, scheme and stock.
pub fn input(wall: Wall, units: Units) -> Value {
    json!({ "survey": survey(wall, units), "scheme": scheme(wall, units), "stock": stock(units), "shop": shop(units) })
}

fn survey(wall: Wall, units: Units) -> Value {
    match (wall, units) {
        (Wall::Plain, Units::Imperial) => json!({
            "name": "A",
            "datum": "40 in",
            "lengths": [
                { "height": "0 in", "length": "173 3/8 in" },
                { "height": "36 in", "length": "173 1/4 in" },
                { "height": "62 in", "length": "173 1/16 in" }
            ],
            "stations": [
                { "at": "0 in", "datum_to_floor": "40 in", "floor_to_ceiling": "96 1/4 in", "bow": "0 in" },
                { "at": "43 in", "datum_to_floor": "40 1/16 in", "bow": "1/16 in" },
                { "at": "86 in", "datum_to_floor": "40 1/8 in", "bow": "1/8 in" },
                { "at": "130 in", "datum_to_floor": "40 3/16 in", "bow": "1/16 in" },
                { "at": "173 3/8 in", "datum_to_floor": "40 1/4 in", "floor_to_ceiling": "96 1/8 in", "bow": "0 in" }
            ],
            "base": { "height": "5 1/2 in", "thickness": "9/16 in" },
            "left": { "kind": "inside-first", "angle": 90.2 },
            "right": { "kind": "inside-first", "angle": 88.5 },
            "studs": { "first": "15 1/4 in", "spacing": "16 in" }
        }),
        (Wall::Plain, Units::Metric) => json!({
            "name": "A",
            "datum": "1016 mm",
            "lengths": [
                { "height": "0 mm", "length": "4404 mm" },
                { "height": "914 mm", "length": "4401 mm" },
                { "height": "1575 mm", "length": "4396 mm" }
            ],
            "stations": [
                { "at": "0 mm", "datum_to_floor": "1016 mm", "floor_to_ceiling": "2445 mm", "bow": "0 mm" },
                { "at": "1092 mm", "datum_to_floor": "1018 mm", "bow": "1.5 mm" },
                { "at": "2184 mm", "datum_to_floor": "1019 mm", "bow": "3 mm" },
                { "at": "3302 mm", "datum_to_floor": "1021 mm", "bow": "1.5 mm" },
                { "at": "4404 mm", "datum_to_floor": "1022 mm", "floor_to_ceiling": "2442 mm", "bow": "0 mm" }
            ],
            "base": { "height": "140 mm", "thickness": "14 mm" },
            "left": { "kind": "inside-first", "angle": 90.2 },
            "right": { "kind": "inside-first", "angle": 88.5 },
            "studs": { "first": "387 mm", "spacing": "406 mm" }
        }),
        (Wall::Windows, Units::Imperial) => json!({
            "name": "B",
            "datum": "40 in",
            "lengths": [{ "height": "0 in", "length": "216 3/4 in" }],
            "stations": [
                { "at": "0 in", "datum_to_floor": "40 1/4 in" },
                { "at": "54 in", "datum_to_floor": "40 1/4 in" },
                { "at": "108 in", "datum_to_floor": "40 3/16 in" },
                { "at": "162 in", "datum_to_floor": "40 3/16 in" },
                { "at": "216 3/4 in", "datum_to_floor": "40 1/8 in" }
            ],
            "base": { "height": "5 1/2 in", "thickness": "9/16 in" },
            "left": { "kind": "inside-second", "angle": 88.5 },
            "right": { "kind": "casing-bay" },
            "openings": [
                { "kind": "window", "left": "34 3/4 in", "right": "77 1/4 in", "bottom": "30 in", "top": "80 in", "casing_projection": "11/16 in" },
                { "kind": "window", "left": "112 5/8 in", "right": "172 1/8 in", "bottom": "30 in", "top": "80 in", "casing_projection": "11/16 in" }
            ],
            "boxes": [
                { "kind": "switch", "left": "204 1/2 in", "right": "207 1/4 in", "bottom": "44 3/4 in", "top": "49 1/4 in" }
            ]
        }),
        (Wall::Windows, Units::Metric) => json!({
            "name": "B",
            "datum": "1016 mm",
            "lengths": [{ "height": "0 mm", "length": "5505 mm" }],
            "stations": [
                { "at": "0 mm", "datum_to_floor": "1022 mm" },
                { "at": "1372 mm", "datum_to_floor": "1022 mm" },
                { "at": "2743 mm", "datum_to_floor": "1021 mm" },
                { "at": "4115 mm", "datum_to_floor": "1021 mm" },
                { "at": "5505 mm", "datum_to_floor": "1019 mm" }
            ],
            "base": { "height": "140 mm", "thickness": "14 mm" },
            "left": { "kind": "inside-second", "angle": 88.5 },
            "right": { "kind": "casing-bay" },
            "openings": [
                { "kind": "window", "left": "883 mm", "right": "1962 mm", "bottom": "762 mm", "top": "2032 mm", "casing_projection": "17 mm" },
                { "kind": "window", "left": "2861 mm", "right": "4372 mm", "bottom": "762 mm", "top": "2032 mm", "casing_projection": "17 mm" }
            ],
            "boxes": [
                { "kind": "switch", "left": "5194 mm", "right": "5264 mm", "bottom": "1137 mm", "top": "1251 mm" }
            ]
        }),
        (Wall::Stair, Units::Imperial) => json!({
            "name": "C",
            "datum": "40 in",
            "lengths": [{ "height": "0 in", "length": "142 1/8 in" }],
            "base": { "height": "5 1/2 in", "thickness": "9/16 in" },
            "left": { "kind": "casing-bay" },
            "right": { "kind": "casing-bay" },
            "stair": {
                "climbs": "right", "first_nosing": "30 in", "run": "88 1/8 in", "rise": "56 1/4 in",
                "first_riser": "7 in", "base_over_nosings": "4 1/2 in"
            }
        }),
        (Wall::Stair, Units::Metric) => json!({
            "name": "C",
            "datum": "1016 mm",
            "lengths": [{ "height": "0 mm", "length": "3610 mm" }],
            "base": { "height": "140 mm", "thickness": "14 mm" },
            "left": { "kind": "casing-bay" },
            "right": { "kind": "casing-bay" },
            "stair": {
                "climbs": "right", "first_nosing": "762 mm", "run": "2238 mm", "rise": "1429 mm",
                "first_riser": "178 mm", "base_over_nosings": "114 mm"
            }
        }),
    }
}

fn scheme(wall: Wall, units: Units) -> Value {
    let top = match (wall, units) {
        (Wall::Stair, Units::Imperial) => "40 in",
        (Wall::Stair, Units::Metric) => "1016 mm",
        (_, Units::Imperial) => "62 in",
        (_, Units::Metric) => "1575 mm",
    };
    match units {
        Units::Imperial => json!({
            "board_width": "2 1/2 in", "board_thickness": "3/4 in", "material": "mdf", "target_bay": "13 in",
            "rails": { "width": "3 1/2 in", "top": top }, "tape": "1/16 in"
        }),
        Units::Metric => json!({
            "board_width": "64 mm", "board_thickness": "18 mm", "material": "mdf", "target_bay": "330 mm",
            "rails": { "width": "90 mm", "top": top }, "tape": "1 mm"
        }),
    }
}

fn stock(units: Units) -> Value {
    match units {
        Units::Imperial => json!({
            "sticks": [
                { "length": "14'", "price": "19.60", "cut_for": "boards" },
                { "length": "16'", "price": "31.20", "cut_for": "rails" }
            ],
            "kerf": "1/8 in", "end_trim": "1/2 in", "keep_offcut": "12 in"
        }),
        Units::Metric => json!({
            "sticks": [
                { "length": "4.2 m", "price": "19.60", "cut_for": "boards" },
                { "length": "4.8 m", "price": "31.20", "cut_for": "rails" }
            ],
            "kerf": "3.2 mm", "end_trim": "12 mm", "keep_offcut": "300 mm"
        }),
    }
}

/// The room's own figures: a waterborne coating, cool damp air, a crew of two.
fn shop(units: Units) -> Value {
    let (film, least, air, tins) = match units {
        Units::Imperial => (
            "1.5 mil",
            "50 °F",
            "64.4 °F",
            json!([{ "holds": "1 qt", "price": "24.00" }, { "holds": "1 gal", "price": "62.00" }]),
        ),
        Units::Metric => (
            "38 um",
            "10 °C",
            "18 °C",
            json!([{ "holds": "1 L", "price": "24.00" }, { "holds": "2.5 L", "price": "46.00" }, { "holds": "5 L", "price": "84.00" }]),
        ),
    };
    json!({
        "coating": {
            "dry_film": film, "volume_solids": "38 %", "coats": 2, "touch": "1 h", "recoat": "4 h", "least_temperature": least, "tins": tins
        },
        "air": { "temperature": air, "relative_humidity": "65 %" },
        "rates": { "hour": "48.00", "caulk": "6.50", "adhesive": "9.80", "sundries": "60.00" },
        "days": { "crew": 2 }
    })
}

#[cfg(test)]
mod tests;
