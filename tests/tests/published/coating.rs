//! Paint film, flow cups, solvent content, gloss.

use calculators::catalogue::Shaped;
use calculators::coating::flow_cup::Cup;
use calculators::coating::{film, gloss_level, solvent_content};
use calculators::quantity::Amount;
use serde_json::{Value, json};
use tests::published::Ours::{By, NotOurs};
use tests::published::{Row, ask, number};

use crate::check;

const GALLON_L: f64 = 3.785_411_784;
const FT2_GAL: f64 = 0.024_542_386_75;
const LB_GAL_G_L: f64 = 119.826_427_3;

fn paint(row: &Row, dry_film: String, area: f64, transfer: f64, coats: u32) -> Value {
    ask(
        "paint-film",
        json!({
            "dry_film": dry_film, "volume_solids": row.number("volume_solids_pct"), "thinner": 0, "thinner_most": 0,
            "area": format!("{area} ft2"), "transfer": transfer, "coats": coats, "hose": 0,
        }),
    )
}

#[test]
fn paint_film() {
    check(
        "paint-film",
        &[
            (
                "theoretical spreading rate",
                By(|row| {
                    (number(&paint(row, format!("{} mil", row.number("dft_mil")), 100.0, 100.0, 1)["spreading_rate"])
                        / FT2_GAL)
                        .into()
                }),
            ),
            (
                "theoretical spreading rate, metric",
                By(|row| {
                    number(&paint(row, format!("{} um", row.number("dft_um")), 100.0, 100.0, 1)["spreading_rate"])
                        .into()
                }),
            ),
            (
                "wet film for a dry film, thinned by volume of paint",
                By(|row| {
                    let thinner = row.number("thinner_pct_of_paint_volume") / 100.0;
                    film::wet_film(Amount::of(row.number("dft")), row.number("volume_solids_pct") / 100.0, thinner)
                        .get()
                        .into()
                }),
            ),
            (
                "dry film left by a wet film",
                By(|row| {
                    let thinner = row.number("thinner_pct_of_paint_volume") / 100.0;
                    film::dry_film(Amount::of(row.number("wft")), row.number("volume_solids_pct") / 100.0, thinner)
                        .get()
                        .into()
                }),
            ),
            (
                "paint to buy before rounding to containers",
                By(|row| {
                    let film = format!("{} mil", row.number("dft_mil_per_coat"));
                    let asked = paint(
                        row,
                        film,
                        row.number("area_ft2"),
                        row.number("transfer_efficiency_pct"),
                        row.number("coats") as u32,
                    );
                    (number(&asked["total"]) / GALLON_L).into()
                }),
            ),
            (
                "regulatory default transfer efficiency",
                By(|row| {
                    let (method, rule) = (row.text("method"), row.text("rule"));
                    let found = film::TRANSFER_IN_RULES
                        .iter()
                        .find(|row| row.method == method && rule.ends_with(row.share.source.locator));
                    found.unwrap_or_else(|| panic!("no {method}")).share.value.into()
                }),
            ),
            (
                "regulatory transfer-efficiency threshold",
                NotOurs("a purchase rule of one air district; no calculation takes it"),
            ),
        ],
    );
}

fn cup_of(standard: &str, size: f64) -> Cup {
    let number = |cup: &Cup| cup.node().as_str().expect("a word").to_owned();
    *Cup::ALL
        .iter()
        .find(|cup| number(cup).starts_with(standard) && number(cup).contains(&format!(" {size}")))
        .unwrap_or_else(|| panic!("no {standard} {size}"))
}

fn viscosity(cup: Cup, seconds: f64) -> Value {
    number(&ask("flow-cup", json!({ "cup": cup.node().as_str(), "time": seconds, "temperature": 23 }))["viscosity"])
        .into()
}

#[test]
fn flow_cups() {
    check(
        "flow-cup",
        &[
            (
                "kinematic viscosity from ISO cup time",
                By(|row| viscosity(cup_of("ISO 2431", row.number("cup_mm")), row.number("t_s"))),
            ),
            (
                "ISO cup time for a viscosity",
                By(|row| cup_of("ISO 2431", row.number("cup_mm")).equation().seconds(row.number("v_mm2_s")).into()),
            ),
            (
                "kinematic viscosity from D1200 cup time",
                By(|row| viscosity(cup_of("ASTM D1200", row.number("cup_no")), row.number("t_s"))),
            ),
            (
                "kinematic viscosity from D4212 dip cup time",
                By(|row| viscosity(cup_of("ASTM D4212", row.number("cup_no")), row.number("t_s"))),
            ),
            (
                "kinematic viscosity from the withdrawn DIN 53211 4 mm cup",
                By(|row| viscosity(Cup::Din4, row.number("t_s"))),
            ),
        ],
    );
}

fn content(row: &Row, volumes: bool) -> Value {
    let grams = |name: &str| format!("{} g", row.number(name));
    let volume = |name: &str| if volumes { row.number(name) } else { 0.0 };
    ask(
        "solvent-content",
        json!({
            "volume": row.number("Vm_L"), "volatiles": grams("Ws_g"), "water": grams("Ww_g"), "water_volume": volume("Vw_L"),
            "exempt": grams("Wec_g"), "exempt_volume": volume("Vec_L"),
        }),
    )
}

/// Five gallons with their solvent, thinned or to be thinned to a limit.
fn thinned(row: &Row) -> Value {
    let mut input = json!({
        "volume": format!("{} gal", row.number("paint_gal")), "volatiles": format!("{} lb", row.number("voc_lb")), "water": 0, "water_volume": 0,
        "thinner_density": format!("{} lb/gal", row.number("thinner_lb_per_gal")),
    });
    if let Some(thinner) = row.inputs["thinner_gal"].as_f64() {
        input["thinner"] = json!(format!("{thinner} gal"));
    }
    if let Some(limit) = row.inputs["limit_lb_per_gal"].as_f64() {
        input["limit"] = json!(format!("{limit} lb/gal"));
    }
    ask("solvent-content", input)
}

#[test]
fn solvent() {
    check(
        "voc",
        &[
            ("VOC content less water and exempt compounds", By(|row| number(&content(row, true)["less_water"]).into())),
            ("VOC actual (water included)", By(|row| number(&content(row, false)["actual"]).into())),
            ("VOC after thinning", By(|row| (number(&thinned(row)["less_water"]) / LB_GAL_G_L).into())),
            (
                "thinner to reach a VOC limit exactly",
                By(|row| (number(&thinned(row)["thinner_at_limit"]) / GALLON_L).into()),
            ),
            (
                "VOC less water from volume fractions",
                By(|row| {
                    // A hundred volumes of coating: its solvent by volume times the solvent's density, its water by volume.
                    let pounds = row.number("voc_vol_pct") * row.number("voc_lb_per_gal");
                    let content =
                        solvent_content::less_water(pounds, 0.0, 0.0, 100.0, row.number("water_vol_pct"), 0.0);
                    content.expect("some coating is left").into()
                }),
            ),
            (
                "VOC less water from totals",
                By(|row| {
                    let content = solvent_content::less_water(
                        row.number("voc_lb"),
                        0.0,
                        0.0,
                        row.number("total_gal"),
                        row.number("water_gal"),
                        0.0,
                    );
                    content.expect("some coating is left").into()
                }),
            ),
            ("VOC per volume of solids", NotOurs("a plain quotient of two given totals; no calculation asks for it")),
            (
                "VOC limit per gallon coating to per gallon solids",
                By(|row| {
                    solvent_content::per_solids(row.number("C_lb_per_gal"), row.number("D_lb_per_gal"))
                        .expect("below the density")
                        .into()
                }),
            ),
            (
                "federal architectural coating limit",
                NotOurs("a limit of one country from memory; the calculator asks for the local one"),
            ),
        ],
    );
}

#[test]
fn gloss() {
    check(
        "gloss",
        &[
            (
                "gloss level from readings",
                By(|row| {
                    ask("gloss-level", json!({ "gloss": row.inputs["gloss60"], "sheen": row.inputs["sheen85"] }))["level"].clone()
                }),
            ),
            (
                "60° range of a level",
                By(|row| {
                    let level = gloss_level::LEVELS
                        .iter()
                        .find(|level| f64::from(level.level) == row.number("level"))
                        .expect("a level");
                    json!([level.gloss_from, level.gloss_to])
                }),
            ),
        ],
    );
}
