//! Nails, beads, abrasives.

use calculators::catalogue::Shaped;
use calculators::filling::bead::BeadShape;
use calculators::fixing::{nail_holding, nail_sizes};
use calculators::quantity::{Length, print};
use calculators::sanding::grain;
use serde_json::{Value, json};
use tests::published::Ours::By;
use tests::published::{Row, ask, number};

use crate::check;

fn penny(row: &Row) -> u32 {
    row.text("pennyweight").trim_end_matches('d').parse().expect("a pennyweight")
}

fn in_inches(length: Length) -> Value {
    (length.in_mm() / 25.4).into()
}

fn inch_text(length: Length) -> Value {
    print::inches(length.exact(), 16).trim_end_matches(" in").replace(' ', "-").into()
}

fn shank(list: &[nail_sizes::NailSize], row: &Row) -> Value {
    in_inches(nail_sizes::of_penny(list, penny(row)).expect("a nail of the list").shank())
}

/// Holding of a nail by the calculator; where no nail is given, one that goes an inch deep.
fn holding(row: &Row) -> Value {
    let inches = |name: &str, else_inches: f64| row.inputs[name].as_f64().unwrap_or(else_inches);
    ask(
        "nail-holding",
        json!({
            "nail": format!("{} in", inches("nail_in", 2.0)), "shank": format!("{} in", inches("shank_in", 0.131)),
            "board": format!("{} in", inches("board_in", 0.5)), "plasterboard": format!("{} in", inches("plasterboard_in", 0.5)),
            "gravity": inches("G_ovendry", 0.42),
        }),
    )
}

const LBF_IN: f64 = 0.175_126_835_2;
const LBF: f64 = 4.448_221_615;

#[test]
fn nails() {
    check(
        "nails",
        &[
            (
                "common nail length",
                By(|row| inch_text(nail_sizes::of_penny(&nail_sizes::COMMON, penny(row)).expect("a nail").length())),
            ),
            ("common nail shank diameter", By(|row| shank(&nail_sizes::COMMON, row))),
            ("box nail shank diameter", By(|row| shank(&nail_sizes::BOX, row))),
            ("finishing nail shank diameter", By(|row| shank(&nail_sizes::FINISHING, row))),
            (
                "steel wire gauge diameter",
                By(|row| in_inches(nail_sizes::wire_diameter(row.number("gauge") as u32).expect("a gauge"))),
            ),
            (
                "pennyweight length rule, 2d to 10d only",
                By(|row| in_inches(nail_sizes::length_by_rule(row.number("d") as u32).expect("in range"))),
            ),
            ("reference withdrawal per inch", By(|row| (number(&holding(row)["per_length"]) / LBF_IN).into())),
            (
                "penetration into stud through board and plasterboard, in shank diameters",
                By(|row| number(&holding(row)["diameters"]).into()),
            ),
            ("reference withdrawal of one nail", By(|row| (number(&holding(row)["allowable"]) / LBF).into())),
            (
                "average maximum (ultimate) withdrawal, metric",
                By(|row| {
                    let (shank, depth) =
                        (Length::nearest_mm(row.number("shank_mm")), Length::nearest_mm(row.number("penetration_mm")));
                    nail_holding::ultimate(row.number("G_12pct"), shank, depth).get().into()
                }),
            ),
            (
                "assigned specific gravity (oven-dry weight and volume)",
                By(|row| {
                    let species = row.text("species_combination");
                    nail_holding::GRAVITY
                        .iter()
                        .find(|(name, _)| *name == species)
                        .unwrap_or_else(|| panic!("no {species}"))
                        .1
                        .into()
                }),
            ),
            (
                "withdrawal worked example: reference value per inch",
                By(|row| (number(&holding(row)["per_length"]) / LBF_IN).into()),
            ),
            (
                "shortest nail by the three-times rule",
                By(|row| {
                    in_inches(nail_sizes::three_times(Length::nearest_mm(row.number("fastened_thickness_in") * 25.4)))
                }),
            ),
        ],
    );
}

fn shape(name: &str) -> &'static str {
    match name {
        "round" => "round",
        "half-round" | "half round" => "half-round",
        "triangular fillet" => "triangular-fillet",
        "concave fillet" => "concave-fillet",
        "rectangular" | "rectangle" => "rectangle",
        other => panic!("no bead {other}"),
    }
}

fn bead(row: &Row, size: String, cartridge: String, length: &str, lost: f64) -> Value {
    let depth = row.inputs["depth_in"]
        .as_f64()
        .map(|depth| format!("{depth} in"))
        .or_else(|| row.inputs["depth_mm"].as_f64().map(|depth| format!("{depth} mm")));
    let shape = row.inputs["shape"].as_str().map_or("rectangle", shape);
    let mut input = json!({ "shape": shape, "size": size, "cartridge": cartridge, "length": length, "lost": lost });
    if let Some(depth) = depth {
        input["depth"] = json!(depth);
    }
    ask("cartridge-yield", input)
}

fn size_inches(row: &Row) -> String {
    let name = if row.inputs["size_in"].is_null() { "width_in" } else { "size_in" };
    format!("{} in", row.number(name))
}

#[test]
fn beads() {
    assert_eq!(Some("round"), BeadShape::Round.node().as_str());
    check(
        "bead-yield",
        &[
            (
                "feet of bead per 10.1 US fl oz cartridge",
                By(|row| {
                    let asked =
                        bead(row, size_inches(row), format!("{} fl oz", row.number("cartridge_fl_oz")), "10 ft", 0.0);
                    (number(&asked["each_ideal"]) / 304.8).into()
                }),
            ),
            (
                "metres of bead per cartridge",
                By(|row| {
                    let name = if row.inputs["size_mm"].is_null() { "width_mm" } else { "size_mm" };
                    let asked =
                        bead(row, row.millimetres(name), format!("{} mL", row.number("cartridge_mL")), "10 m", 0.0);
                    (number(&asked["each_ideal"]) / 1_000.0).into()
                }),
            ),
            (
                "feet of rectangular joint per US gallon",
                By(|row| {
                    (number(&bead(row, size_inches(row), "128 fl oz".to_owned(), "10 ft", 0.0)["each_ideal"]) / 304.8)
                        .into()
                }),
            ),
            (
                "whole 10.1 fl oz cartridges for a length (waste as share of what is bought)",
                By(|row| {
                    let length = format!("{} ft", row.number("length_ft"));
                    bead(row, size_inches(row), "10.1 fl oz".to_owned(), &length, row.number("waste_pct_of_bought"))["cartridges"].clone()
                }),
            ),
            (
                "cartridge volume",
                By(|row| {
                    // A square bead of a hundred square millimetres runs a tenth of its millilitres in metres.
                    let asked = ask(
                        "cartridge-yield",
                        json!({ "shape": "rectangle", "size": "10 mm", "depth": "10 mm", "cartridge": format!("{} fl oz", row.number("fl_oz")), "length": "1 m", "lost": 0 }),
                    );
                    (number(&asked["each_ideal"]) / 10.0).into()
                }),
            ),
        ],
    );
}

fn grade(text: &str) -> u16 {
    text.trim_start_matches('P').parse().expect("a grade")
}

#[test]
fn abrasives() {
    check(
        "abrasives",
        &[
            (
                "P-grade median grain size",
                By(|row| grain::p_median(grade(row.text("grade"))).expect("a P grade").into()),
            ),
            (
                "CAMI grade average grain size",
                By(|row| grain::cami_average(grade(row.text("grade"))).expect("a CAMI grade").into()),
            ),
            (
                "grain-size ratio of a grit step",
                By(|row| {
                    let asked = ask(
                        "grit-ladder",
                        json!({
                            "scale": "P", "from": grade(row.text("from")), "to": grade(row.text("to")), "area": 1, "each": 1, "longest_step": 2.5,
                        }),
                    );
                    number(&asked["ratio"]).into()
                }),
            ),
            (
                "nearest P grade to a CAMI grade",
                By(|row| {
                    let average = grain::cami_average(grade(row.text("cami"))).expect("a CAMI grade");
                    format!("P{}", grain::nearest_p(average)).into()
                }),
            ),
        ],
    );
}
