//! Dust, noise, vibration, lead, boxes.

use calculators::exposure::{dust, lead_area, noise, vibration};
use calculators::fixing::{box_fill, box_set_back};
use serde_json::{Value, json};
use tests::published::Ours::By;
use tests::published::{Row, ask, number};

use crate::check;

fn stretches(row: &Row, name: &str) -> Value {
    let pairs = row.inputs[name].as_array().expect("pairs");
    // A stretch of no hours adds nothing and is left out.
    let rows = pairs.iter().filter(|pair| pair[1].as_f64() != Some(0.0));
    json!({ "stretches": rows.map(|pair| json!({ "level": pair[0], "hours": pair[1] })).collect::<Vec<_>>() })
}

#[test]
fn dusts() {
    check(
        "exposure-dust",
        &[
            (
                "limit",
                By(|row| {
                    let agent = row.text("agent");
                    let found = dust::DUST_LIMITS.iter().find(|limit| limit.agent == agent);
                    let silica = agent.contains("silica");
                    found
                        .unwrap_or_else(|| panic!("no limit {agent}"))
                        .mg_m3
                        .mul_add(if silica && row.unit.contains("µg") { 1_000.0 } else { 1.0 }, 0.0)
                        .into()
                }),
            ),
            (
                "mean dust reduction with five commercial drywall-sanding controls, range",
                By(|_| {
                    let (least, most) = dust::DUST_CONTROLS[0].reduction;
                    json!([least, most])
                }),
            ),
            (
                "respirable dust reduction against a block sander",
                By(|row| {
                    let tool = row.text("tool");
                    let found = dust::DUST_CONTROLS.iter().find(|control| control.tool == tool);
                    found.unwrap_or_else(|| panic!("no control {tool}")).reduction.0.into()
                }),
            ),
            ("pole sanding exposure below hand sanding", By(|_| dust::DUST_CONTROLS[4].reduction.0.into())),
            ("silica quartz content of joint compound, high end", By(|_| dust::JOINT_COMPOUND_QUARTZ.1.into())),
            (
                "8 h time-weighted average",
                By(|row| number(&ask("dust-average", stretches(row, "segments_mg_m3_h"))["mean"]).into()),
            ),
            (
                "crystalline silica in respirable dust",
                By(|row| {
                    let day = json!([{ "level": row.number("respirable_mg_m3"), "hours": 8 }]);
                    (1_000.0 * number(&ask("dust-average", json!({ "stretches": day, "silica": row.number("silica_pct") }))["silica"])).into()
                }),
            ),
        ],
    );
}

fn day(row: &Row) -> Value {
    ask("noise-dose", stretches(row, "segments_dBA_h"))
}

/// Directive 2003/10/EC, article 3: lower and upper exposure action values and the limit, dB(A) over eight hours.
#[test]
fn european_noise_values() {
    assert_eq!(noise::EUROPEAN, (80.0, 85.0, 87.0));
}

#[test]
fn noises() {
    check(
        "exposure-noise",
        &[
            ("reference duration, OSHA", By(|row| noise::regulation_hours(row.number("L_dBA")).into())),
            ("equivalent noise exposure factor Fe", By(|row| number(&day(row)["construction_factor"]).into())),
            ("OSHA dose (5 dB, all segments counted)", By(|row| number(&day(row)["regulation_dose"]).into())),
            ("OSHA TWA", By(|row| number(&day(row)["regulation_level"]).into())),
            ("NIOSH dose (3 dB, 85 dBA)", By(|row| number(&day(row)["recommended_dose"]).into())),
            ("NIOSH TWA", By(|row| number(&day(row)["recommended_level"]).into())),
            ("recommended duration, NIOSH", By(|row| noise::recommended_minutes(row.number("L_dBA")).into())),
            (
                "action level as dose and TWA",
                By(|_| {
                    // Half a full dose: four hours at 90 dB(A).
                    let half = ask("noise-dose", json!({ "stretches": [{ "level": 90, "hours": 4 }] }));
                    json!([number(&half["regulation_dose"]), number(&half["regulation_level"]).round()])
                }),
            ),
            (
                "permissible duration, construction table",
                By(|row| noise::construction_hours(row.number("L_dBA")).expect("a row of the table").into()),
            ),
        ],
    );
}

fn tools(row: &Row) -> Value {
    let pairs = row.inputs["tools_m_s2_h"]
        .as_array()
        .cloned()
        .unwrap_or_else(|| vec![json!([row.inputs["a_m_s2"], row.inputs["h"].as_f64().unwrap_or(1.0)])]);
    let tools: Vec<_> = pairs.iter().map(|pair| json!({ "level": pair[0], "hours": pair[1] })).collect();
    ask("vibration-dose", json!({ "tools": tools }))
}

#[test]
fn vibrations() {
    check(
        "exposure-vibration",
        &[
            (
                "threshold",
                By(|row| match row.text("which") {
                    "EAV A(8)" => vibration::ACTION_VALUE.into(),
                    "ELV A(8)" => vibration::LIMIT_VALUE.into(),
                    which if which.starts_with("EAV") => vibration::points(vibration::ACTION_VALUE, 8.0).into(),
                    _ => vibration::points(vibration::LIMIT_VALUE, 8.0).into(),
                }),
            ),
            ("daily exposure A(8), one tool", By(|row| number(&tools(row)["daily"]).into())),
            ("exposure points, one tool", By(|row| number(&tools(row)["points"]).into())),
            ("daily exposure A(8), several tools", By(|row| number(&tools(row)["daily"]).into())),
            ("trigger time to the action value", By(|row| number(&tools(row)["tools"][0]["to_action"]).into())),
            ("trigger time to the limit value", By(|row| number(&tools(row)["tools"][0]["to_limit"]).into())),
        ],
    );
}

#[test]
fn boxes() {
    check(
        "electrical",
        &[
            (
                "box-fill volume per conductor",
                By(|row| {
                    let gauge = row.number("awg") as u32;
                    box_fill::CONDUCTOR_IN3
                        .iter()
                        .find(|(row, _)| *row == gauge)
                        .expect("a gauge of the table")
                        .1
                        .into()
                }),
            ),
            (
                "required box volume, one conductor size",
                By(|row| {
                    let asked = ask(
                        "box-fill",
                        json!({
                            "gauge": row.inputs["awg"], "conductors": row.inputs["insulated_conductors"], "devices": row.inputs["device_yokes"],
                            "grounds": row.inputs["grounding_conductors"], "clamps": row.inputs["internal_clamps"], "box_volume": 500,
                        }),
                    );
                    (number(&asked["needed"]) / 16.387_064).into()
                }),
            ),
            (
                "largest permitted set-back of box edge from finished surface",
                By(|row| {
                    let surround = if row.text("surface").starts_with("non") { "plaster" } else { "combustible" };
                    let asked =
                        ask("box-set-back", json!({ "set_back": 0, "added": 0, "surround": surround, "screw": 20 }));
                    (number(&asked["allowed"]) / 25.4).into()
                }),
            ),
            (
                "box extension needed when a wooden board is added round the opening",
                By(|row| {
                    let asked = ask(
                        "box-set-back",
                        json!({ "set_back": row.inches("existing_set_back_in"), "added": row.inches("board_in"), "surround": "combustible", "screw": 20 }),
                    );
                    assert!(number(&asked["extension"]) >= box_set_back::PLASTER_SET_BACK.in_mm());
                    let sixteenths = (number(&asked["extension"]) / 25.4 * 16.0).round() as u64;
                    let shared = (1..=16)
                        .rev()
                        .find(|part| sixteenths.is_multiple_of(*part) && 16_u64.is_multiple_of(*part))
                        .expect("one divides all");
                    format!("{}/{}", sixteenths / shared, 16 / shared).into()
                }),
            ),
        ],
    );
}

#[test]
fn lead() {
    check(
        "lead-paint",
        &[
            ("built before (year) triggers the rule", By(|_| lead_area::LEAD_YEAR.into())),
            ("lead-based paint, area basis", By(|_| lead_area::LEAD_BASED.0.into())),
            ("lead-based paint, weight basis", By(|_| lead_area::LEAD_BASED.1.into())),
            ("minor-work limit, interior", By(|_| lead_area::MINOR_FT2.0.into())),
            ("minor-work limit, exterior", By(|_| lead_area::MINOR_FT2.1.into())),
            ("jobs in one room counted as one within", By(|_| lead_area::ONE_JOB_DAYS.into())),
            (
                "painted area of a removed board (whole face counts)",
                By(|row| {
                    let asked = ask(
                        "lead-paint-area",
                        json!({
                            "year": 1962, "place": "inside", "always_counts": false,
                            "components": [{ "face": format!("{} in", row.number("face_in")), "length": format!("{} ft", row.number("length_ft")), "count": 1 }],
                        }),
                    );
                    (number(&asked["area"]) / (0.3048 * 0.3048)).into()
                }),
            ),
        ],
    );
}
