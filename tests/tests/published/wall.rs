//! Lengths, spacing, joints, dressed sizes.

use calculators::quantity::{Exact, INCH, Length, Units, kind, print, read_physical};
use calculators::quantity::{Kind, KindFacts};
use calculators::wall::bays::{self, RunEnds};
use calculators::wall::rake;
use serde_json::{Value, json};
use tests::published::Ours::By;
use tests::published::{Row, ask, number};

use crate::check;

/// A length written in inches, read by the calculator that reads lengths.
fn read(text: &str) -> Value {
    ask("read-a-length", json!({ "written": text, "inch_tape": "1/16 in", "metric_tape": "1 mm" }))["length"].clone()
}

/// The nearest fraction of an inch as the source writes it: `23-5/8`.
fn fraction(length: Exact, row: &Row) -> Value {
    print::inches(length, row.number("denominator") as i64).trim_end_matches(" in").replace(' ', "-").into()
}

fn nanometres(leaf: &Value) -> Length {
    print::length_in(leaf).expect("a length").nearest(Length::from_nm(1))
}

/// A value with its unit in another unit of the same kind.
fn converted<K: Kind>(from: &str, to_one: &str) -> f64 {
    let facts: &KindFacts = &K::FACTS;
    let metric =
        |text: &str| read_physical(facts, &json!(text), Units::Metric).unwrap_or_else(|why| panic!("{text}: {why}"));
    metric(from) / metric(to_one)
}

#[test]
fn lengths() {
    check(
        "length-conversion",
        &[
            (
                "inch fraction to millimetre",
                By(|row| (nanometres(&read(&row.inches("inch"))).nm() as f64 / 1e6).into()),
            ),
            ("inch fraction to integer nanometres", By(|row| nanometres(&read(&row.inches("inch"))).nm().into())),
            (
                "millimetre to nearest inch fraction (reduced)",
                By(|row| fraction(nanometres(&read(&row.millimetres("mm"))).exact(), row)),
            ),
            (
                "decimal inch to nearest fraction (half up)",
                By(|row| fraction(nanometres(&read(&format!("{} in", row.text("inch")))).exact(), row)),
            ),
            (
                "unit conversion",
                By(|row| {
                    let (from, to) = (row.text("from"), row.text("to"));
                    match (from, to) {
                        ("1 ft", "mm") => number(&read("1 ft")).into(),
                        ("1 mil", "um") => converted::<kind::Film>("1 mil", "1 um").into(),
                        ("1 US fl oz", "in3") => converted::<kind::SmallVolume>("1 fl oz", "1 in3").into(),
                        ("1 US fl oz", "mL") => converted::<kind::SmallVolume>("1 fl oz", "1 mL").into(),
                        ("1 ft2/US gal", "m2/L") => converted::<kind::SpreadingRate>("1 ft2/gal", "1 m2/L").into(),
                        ("1 m2/L", "ft2/US gal") => converted::<kind::SpreadingRate>("1 m2/L", "1 ft2/gal").into(),
                        ("1 lbf/in", "N/mm") => converted::<kind::LineForce>("1 lbf/in", "1 N/mm").into(),
                        ("1 ft3", "L") => (1_000.0 * converted::<kind::RoomVolume>("1 ft3", "1 m3")).into(),
                        other => panic!("no conversion of ours for {other:?}"),
                    }
                }),
            ),
        ],
    );
}

fn ends(row: &Row) -> &'static str {
    match row.inputs["ends"].as_str() {
        Some("board at both ends") => "board-both",
        _ => "bay-both",
    }
}

fn bays_of(row: &Row, boards: &Value) -> Value {
    let (run, board) = if row.inputs["run_mm"].is_null() {
        (row.inches("run_in"), row.inches("board_in"))
    } else {
        (row.millimetres("run_mm"), row.millimetres("board_mm"))
    };
    ask("equal-bays", json!({ "run": run, "board": board, "ends": ends(row), "boards": boards, "tape": "1/16 in" }))
}

#[test]
fn spacing() {
    check(
        "layout-spacing",
        &[
            ("equal clear gap", By(|row| (number(&bays_of(row, &row.inputs["boards"])["bay"]) / 25.4).into())),
            (
                "equal clear gap (metric, gap at both ends)",
                By(|row| number(&bays_of(row, &row.inputs["boards"])["bay"]).into()),
            ),
            (
                "left edge of board i from run start, nearest 1/16 (gap at both ends)",
                By(|row| {
                    let asked = bays_of(row, &row.inputs["boards"]);
                    let place = &asked["lefts"][row.number("i") as usize - 1];
                    // Asked in millimetres, a mark carries its exact place besides; the source reads it on an inch tape.
                    let pair = &place["exact_nm"];
                    let exact = Exact::of_parts(
                        pair[0].as_i64().expect("whole").into(),
                        pair[1].as_i64().expect("whole").into(),
                    )
                    .expect("a place");
                    print::inches(exact, 16).trim_end_matches(" in").replace(' ', "-").into()
                }),
            ),
            (
                "fewest boards so that no gap exceeds the limit",
                By(|row| {
                    let inches = |name: &str| Length::nearest_mm(row.number(name) * 25.4);
                    let ends = if ends(row) == "board-both" { RunEnds::BoardBoth } else { RunEnds::BayBoth };
                    bays::fewest_boards(inches("run_in").exact(), inches("board_in"), inches("max_gap_in"), ends)
                        .expect("a number")
                        .into()
                }),
            ),
            (
                "run error if the gap is rounded to 1/16 and then stepped off (n+1 times)",
                By(|row| {
                    let asked = ask(
                        "running-marks",
                        json!({
                            "start": "0 in", "run": row.inches("run_in"), "board": row.inches("board_in"), "boards": row.inputs["boards"], "ends": "bay-both", "tape": "1/16 in",
                        }),
                    );
                    (number(&asked["stepped"]) / 25.4).into()
                }),
            ),
        ],
    );
}

fn compound(row: &Row) -> Value {
    ask("compound-mitre", json!({ "spring": row.number("spring_deg_from_wall"), "corner": row.number("corner_deg") }))
}

fn rake_degrees(row: &Row) -> f64 {
    // Any unit: rise and run are taken as hundreds of millimetres.
    let length = |name: &str| Length::nearest_mm(row.number(name) * 100.0);
    let flight = rake::Flight {
        first: Length::ZERO,
        riser: Length::mm(180),
        run: length("run"),
        rise: length("rise"),
        start: Length::ZERO,
        landing: Length::mm(180) + length("rise"),
    };
    flight.degrees()
}

#[test]
fn joints() {
    check(
        "joint-geometry",
        &[
            (
                "saw setting from a square crosscut for a two-piece mitre",
                By(|row| {
                    number(
                        &ask("saw-angle", json!({ "corner": row.number("corner_deg"), "thickness": 18, "width": 90 }))
                            ["setting"],
                    )
                    .into()
                }),
            ),
            (
                "mitre angle measured from the face (long point)",
                By(|row| {
                    (90.0
                        - number(
                            &ask(
                                "saw-angle",
                                json!({ "corner": row.number("corner_deg"), "thickness": 18, "width": 90 }),
                            )["setting"],
                        ))
                    .into()
                }),
            ),
            ("compound mitre: saw mitre, moulding flat on table", By(|row| number(&compound(row)["mitre"]).into())),
            ("compound mitre: saw bevel, moulding flat on table", By(|row| number(&compound(row)["bevel"]).into())),
            (
                "scarf overlap along the run",
                By(|row| {
                    let thickness = Length::nearest_mm(row.number("thickness_in") * 25.4);
                    // Ours is asked from the face of the rail, the source from a square cut.
                    let lap =
                        calculators::stock::scarf::lap(thickness, 90.0 - row.number("saw_setting_deg_from_square"));
                    (lap.in_mm() / 25.4).into()
                }),
            ),
            (
                "scarf length for a 1:s slope",
                By(|row| {
                    let thickness = Length::nearest_mm(row.number("thickness_in") * 25.4);
                    let degrees = (1.0 / row.number("slope")).atan().to_degrees();
                    let lap = calculators::stock::scarf::lap(thickness, degrees);
                    // Exact to a nanometre; the source's is a plain product.
                    ((lap.in_mm() / 25.4 * 1e7).round() / 1e7).into()
                }),
            ),
            ("rake angle from rise and run", By(|row| rake_degrees(row).into())),
            (
                "height difference across the top of a plumb board on a rake",
                By(|row| {
                    let length = |name: &str| Length::nearest_mm(row.number(name) * 100.0);
                    let board =
                        rake::rake_board(length("board_in").exact(), length("board_in"), length("rise"), length("run"))
                            .expect("a board");
                    let differs = board.stock - length("board_in").exact();
                    (differs.in_mm() / 100.0).into()
                }),
            ),
            (
                "spacing along the rake for a level spacing",
                By(|row| {
                    let bay = Length::nearest_mm(row.number("level_spacing") * 100.0).exact();
                    let panel = rake::rake_panel(bay, bay, rake_degrees(row));
                    (panel.on_slope.in_mm() / 100.0).into()
                }),
            ),
            (
                "diagonal of a true rectangle",
                By(|row| {
                    let side = |name: &str| json!(row.number(name) * scale(row));
                    let asked = ask(
                        "out-of-square",
                        json!({ "side": side("a"), "other": side("b"), "long": square(row), "short": square(row) }),
                    );
                    (number(&asked["square"]) / scale(row)).into()
                }),
            ),
            (
                "out-of-square angle from two diagonals (sides parallel and equal)",
                By(|row| {
                    let side = |name: &str| json!(row.number(name) * scale(row));
                    let asked = ask(
                        "out-of-square",
                        json!({ "side": side("a"), "other": side("b"), "long": nearest(row.number("long_diagonal") * scale(row)), "short": nearest(row.number("short_diagonal") * scale(row)) }),
                    );
                    number(&asked["skew"]).into()
                }),
            ),
            (
                "arc radius from chord and sagitta",
                By(|row| {
                    let asked = ask(
                        "arc-radius",
                        json!({ "chord": nearest(row.number("chord") * scale(row)), "rise": nearest(row.number("sagitta") * scale(row)) }),
                    );
                    (number(&asked["radius"]) / scale(row)).into()
                }),
            ),
        ],
    );
}

/// Sides without a unit are taken large enough that a nanometre does not show, and within what a wall can be.
fn scale(row: &Row) -> f64 {
    let first = ["a", "chord"].iter().find_map(|name| row.inputs[*name].as_f64()).unwrap_or(1.0);
    if first < 10.0 {
        300.0
    } else if first < 130.0 {
        25.4
    } else {
        1.0
    }
}

fn nearest(millimetres: f64) -> String {
    format!("{} nm", Length::nearest_mm(millimetres).nm())
}

fn square(row: &Row) -> String {
    let (a, b) = (row.number("a") * scale(row), row.number("b") * scale(row));
    nearest(a.hypot(b))
}

fn dressed(row: &Row, seasoning: &str, thickness: bool) -> Value {
    let nominal = row.inches("nominal_in");
    let (other, field) = if thickness { ("width", "thickness") } else { ("thickness", "width") };
    let fixed = if thickness { "6 in" } else { "1 in" };
    let mut input = json!({ "seasoning": seasoning });
    input[field] = json!(nominal);
    input[other] = json!(fixed);
    let size = nanometres(&ask("dressed-sizes", input)[field]);
    print::inches(size.exact(), 64).trim_end_matches(" in").replace(' ', "-").into()
}

#[test]
fn stock_sizes() {
    assert_eq!(INCH.nm(), 25_400_000);
    check(
        "stock-sizes",
        &[
            ("board dressed thickness, dry", By(|row| dressed(row, "dry", true))),
            ("board dressed thickness, green", By(|row| dressed(row, "green", true))),
            ("board dressed width, dry", By(|row| dressed(row, "dry", false))),
            ("board dressed width, green", By(|row| dressed(row, "green", false))),
            (
                "board measure (board feet) from NOMINAL size",
                By(|row| {
                    let asked = ask(
                        "board-feet",
                        json!({
                            "thickness": format!("{} in", row.number("nominal_thickness_in")), "width": format!("{} in", row.number("nominal_width_in")),
                            "length": format!("{} ft", row.number("length_ft")), "boards": 1,
                        }),
                    );
                    number(&asked["each"]).into()
                }),
            ),
        ],
    );
}
