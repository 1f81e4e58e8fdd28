//! Walls drawn at random, each plan held against a second look; and what must not matter to a plan.
//!
//! The same five hundred walls in every run, half in inches and half in millimetres; `BENCHLEAF_WALLS=5000 cargo test -p tests --test
//! walls` looks at more.

use calculators::catalogue::{Fault, FromNode, entry};
use calculators::quantity::Units;
use calculators::wall::plan::WallPlan;
use calculators::wall::planning::plan;
use calculators::wall::scheme::WallInput;
use fastrand::Rng;
use serde_json::{Value, json};

use super::second_look::{cuts_a_base_that_stays, faults};

/// How many walls are drawn.
fn how_many() -> u64 {
    std::env::var("BENCHLEAF_WALLS").ok().and_then(|count| count.parse().ok()).unwrap_or(500)
}

/// A place or size as it is written on a survey: whole millimetres, or sixteenths of an inch.
fn written(mm: f64, units: Units) -> Value {
    match units {
        Units::Metric => json!(format!("{} mm", libm::round(mm))),
        Units::Imperial => {
            let sixteenths = libm::round(mm / 25.4 * 16.0) as i64;
            let (whole, part) = (sixteenths.div_euclid(16), sixteenths.rem_euclid(16));
            json!(if part == 0 { format!("{whole} in") } else { format!("{whole} {part}/16 in") })
        }
    }
}

fn between(rng: &mut Rng, low: f64, high: f64) -> f64 {
    low + rng.f64() * (high - low)
}

fn one_of<'a, T: ?Sized>(rng: &mut Rng, of: &[&'a T]) -> &'a T {
    of[rng.usize(..of.len())]
}

/// One wall with what stands on it and a scheme for it.
fn wall(seed: u64) -> (Units, Value) {
    let mut rng = Rng::with_seed(seed);
    let rng = &mut rng;
    let units = if seed.is_multiple_of(2) { Units::Metric } else { Units::Imperial };
    let longest = [1_800.0, 4_500.0, 9_000.0][rng.usize(..3)];
    let length = between(rng, 400.0, longest);
    let mut survey = json!({
        "name": "W", "datum": written(1_000.0, units),
        "lengths": [{ "height": written(0.0, units), "length": written(length, units) }],
        "left": end(rng), "right": end(rng), "openings": [], "boxes": [], "keep_clear": [],
    });
    let slope = if rng.bool() { between(rng, -0.2, 0.2) } else { 0.0 };
    let ceiling = rng.bool().then(|| (between(rng, 2_100.0, 2_700.0), slope));
    let stations: Vec<Value> = [0.0, between(rng, 0.2, 0.8) * length, length]
        .into_iter()
        .map(|at| {
            let mut station =
                json!({ "at": written(at, units), "datum_to_floor": written(1_000.0 + between(rng, 0.0, 9.0), units) });
            if let Some((height, slope)) = ceiling {
                let clear = (height + slope * at + between(rng, -4.0, 4.0)).max(900.0);
                station["floor_to_ceiling"] = written(clear, units);
            }
            station
        })
        .collect();
    survey["stations"] = json!(stations);
    if rng.u8(..5) > 0 {
        let (work, line) = (one_of(rng, &["stays", "new"]), one_of(rng, &["follows-floor", "level"]));
        survey["base"] = json!({ "height": written(between(rng, 70.0, 180.0), units), "thickness": written(14.0, units), "work": work, "line": line });
    }
    let mut taken: Vec<[f64; 4]> = Vec::new();
    for _ in 0..rng.usize(..5) {
        things(rng, units, length, &mut taken, &mut survey);
    }
    for _ in 0..rng.usize(..4) {
        plate(rng, units, length, &mut taken, &mut survey);
    }
    if rng.bool() {
        survey["studs"] =
            json!({ "first": written(between(rng, 0.0, 390.0), units), "spacing": written(406.4, units) });
    }
    (units, json!({ "survey": survey, "scheme": scheme(rng, units, length, ceiling.is_some()) }))
}

fn end(rng: &mut Rng) -> Value {
    let kinds = [
        "inside-first",
        "inside-second",
        "outside-lapping",
        "outside-lapped",
        "outside-mitred",
        "casing-bay",
        "casing-board",
        "open-bay",
        "open-board",
    ];
    json!({ "kind": one_of(rng, &kinds), "angle": between(rng, 87.0, 93.0) })
}

fn things(rng: &mut Rng, units: Units, length: f64, taken: &mut Vec<[f64; 4]>, survey: &mut Value) {
    let wide = between(rng, 60.0, 1_400.0);
    let left = between(rng, 0.0, length);
    if left + wide > length {
        return;
    }
    let zone = rng.u8(..3) == 0;
    let floor = !zone && rng.u8(..3) == 0;
    let bottom = if floor { -1_000.0 } else { between(rng, 50.0, 1_500.0) };
    let top = if floor { between(rng, 800.0, 2_150.0) } else { bottom + between(rng, 60.0, 1_300.0) };
    let mut thing =
        json!({ "left": written(left, units), "right": written(left + wide, units), "top": written(top, units) });
    if !floor {
        thing["bottom"] = written(bottom, units);
    }
    if zone {
        thing["kind"] = json!(one_of(rng, &["heater", "vent", "detector", "panel"]));
        if rng.u8(..4) > 0 {
            thing["clearance"] = written(between(rng, 0.0, 150.0), units);
        }
        survey["keep_clear"].as_array_mut().expect("a list").push(thing);
        return;
    }
    let mine = [left - 1.0, left + wide + 1.0, bottom, top];
    if taken.iter().any(|other| overlap(other, &mine)) {
        return;
    }
    taken.push(mine);
    thing["kind"] = json!(if floor { one_of(rng, &["door", "fireplace"]) } else { one_of(rng, &["window", "other"]) });
    if thing["kind"] == "fireplace" {
        thing["clearance"] = written(150.0, units);
    } else if rng.bool() {
        thing["casing_projection"] = written(18.0, units);
    }
    survey["openings"].as_array_mut().expect("a list").push(thing);
}

fn overlap(one: &[f64; 4], other: &[f64; 4]) -> bool {
    one[0] < other[1] && other[0] < one[1] && one[2] < other[3] && other[2] < one[3]
}

fn plate(rng: &mut Rng, units: Units, length: f64, taken: &mut Vec<[f64; 4]>, survey: &mut Value) {
    let (left, bottom) = (between(rng, 0.0, length - 100.0), between(rng, 200.0, 1_500.0));
    let mine = [left - 2.0, left + 90.0, bottom, bottom + 86.0];
    if left < 0.0 || taken.iter().any(|other| overlap(other, &mine)) {
        return;
    }
    taken.push(mine);
    let mut plate = json!({
        "kind": "switch", "left": written(left, units), "right": written(left + 86.0, units),
        "bottom": written(bottom, units), "top": written(bottom + 86.0, units),
    });
    if rng.bool() {
        plate["agreed"] = json!(one_of(rng, &["wide-board", "notch", "move-box", "leave"]));
    }
    survey["boxes"].as_array_mut().expect("a list").push(plate);
}

fn scheme(rng: &mut Rng, units: Units, length: f64, measured: bool) -> Value {
    let lines: &[&str] = if measured {
        &["level-rail", "ceiling-rail", "level-no-rail", "ceiling-no-rail"]
    } else {
        &["level-rail", "level-no-rail"]
    };
    let line = one_of(rng, lines);
    let tape = match units {
        Units::Metric => one_of(rng, &["1 mm", "2 mm", "0.5 mm"]),
        Units::Imperial => one_of(rng, &["1/16 in", "1/32 in", "1/8 in"]),
    };
    let mut rails = json!({ "width": written(between(rng, 60.0, 120.0), units), "top_line": line });
    if line.starts_with("level") {
        rails["top"] = written(between(rng, 850.0, 1_700.0), units);
    }
    if rng.u8(..4) == 0 {
        rails["rows"] = json!(2);
    }
    rails["at_openings"] = json!(one_of(rng, &["sill-and-head", "sill-and-head", "sill", "head", "none"]));
    if rng.u8(..6) == 0 {
        rails["meeting"] = json!(one_of(rng, &["between-boards", "between-below-top"]));
    }
    let mut scheme = json!({
        "board_width": written(between(rng, 45.0, 95.0), units), "board_thickness": written(18.0, units), "rails": rails, "tape": tape,
    });
    if rng.u8(..4) > 0 {
        scheme["target_bay"] = written(between(rng, 250.0, 550.0), units);
    } else {
        scheme["boards"] = json!(2 + rng.usize(..2 + (length / 320.0) as usize));
    }
    if rng.u8(..6) == 0 {
        scheme["treatment"] = json!("bays-to-edges");
    }
    if rng.u8(..8) == 0 {
        scheme["mouldings"] =
            json!({ "width": written(25.0, units), "thickness": written(12.0, units), "margin": written(50.0, units) });
    }
    scheme
}

fn planned(units: Units, wall: &Value) -> Result<(WallInput, WallPlan), Vec<Fault>> {
    let read = entry("wall-plan").expect("it is declared").read(wall, units)?;
    let input = WallInput::from_node(read).expect("typed");
    plan(&input).map(|plan| (input, plan))
}

#[test]
fn plans_of_random_walls_stand_up_to_a_second_look() {
    let (mut given, mut refused) = (0, 0);
    for seed in 0..how_many() {
        let (units, wall) = wall(seed);
        match planned(units, &wall) {
            Ok((input, plan)) => {
                given += 1;
                for layout in &plan.layouts {
                    let found = faults(&input, layout);
                    assert!(found.is_empty(), "seed {seed}, layout {}: {found:#?}\n{wall}", layout.rank);
                    assert!(!cuts_a_base_that_stays(&input, layout), "seed {seed}");
                }
            }
            Err(told) => {
                refused += 1;
                for fault in &told {
                    assert_ne!(fault.pointer, "", "seed {seed}: a plan was made and not given: {fault:?}\n{wall}");
                }
            }
        }
    }
    assert!(refused * 5 < given, "{refused} of {} were refused", given + refused);
}

#[test]
fn what_must_not_matter_to_a_plan_does_not() {
    for seed in 0..how_many() / 5 {
        let (units, wall) = wall(seed);
        let Ok((_, plan)) = planned(units, &wall) else { continue };
        // The order in which things were written down.
        let mut turned = wall.clone();
        for list in ["openings", "boxes", "keep_clear"] {
            turned["survey"][list].as_array_mut().expect("a list").reverse();
        }
        let (_, other) = planned(units, &turned).expect("the same wall");
        let outlines = |plan: &WallPlan| {
            plan.layouts
                .iter()
                .map(|layout| layout.members.iter().map(|member| member.outline.clone()).collect())
                .collect::<Vec<Vec<_>>>()
        };
        assert_eq!(outlines(&plan), outlines(&other), "seed {seed}: the order of lists\n{wall}");
        // The units in which the answer is asked for, where every length brings its own.
        let (_, other) = planned(units.other(), &wall).expect("the same wall");
        assert_eq!(plan, other, "seed {seed}: the units asked for");
    }
}

#[test]
fn a_number_that_is_offered_can_be_had() {
    let mut offered = 0;
    for seed in 0..how_many() / 5 {
        let (units, mut wall) = wall(seed);
        wall["scheme"]["target_bay"] = Value::Null;
        for asked in [1, 200] {
            wall["scheme"]["boards"] = json!(asked);
            let Err(told) = planned(units, &wall) else { continue };
            let printed = Fault::print_all(&told, units);
            if printed[0]["pointer"] != "/scheme/boards" {
                continue;
            }
            offered += 1;
            wall["scheme"]["boards"] = printed[0]["try"].clone();
            let again = planned(units, &wall);
            assert!(again.is_ok(), "seed {seed}: {asked} asked, {} offered: {:?}", printed[0]["try"], again.err());
        }
    }
    assert!(offered > 20, "{offered} numbers were offered");
}
