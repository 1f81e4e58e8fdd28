//! How long a wall plan takes at three sizes. Run with `cargo bench -p calculators`; nothing here gates.

use std::hint::black_box;

use calculators::quantity::Units;
use calculators::wall::planning::plan;
use calculators::wall::practice_room::{self, Wall};
use calculators::wall::scheme::WallInput;
use criterion::{Criterion, criterion_group, criterion_main};
use serde_json::{Value, json};

fn mm(mm: i64) -> String {
    format!("{mm} mm")
}

/// A corridor with windows every few metres and a switch in every pier, as crowded as a survey may be.
fn corridor(metres: i64, bay: i64, windows: i64, switches: i64) -> WallInput {
    let length = metres * 1_000;
    let windows: Vec<Value> = (0..windows)
        .map(|n| {
            let left = length * (2 * n + 1) / (2 * windows + 1);
            json!({ "kind": "window", "left": mm(left), "right": mm(left + 1_137), "bottom": mm(762), "top": mm(2_032) })
        })
        .collect();
    let switches: Vec<Value> = (0..switches)
        .map(|n| {
            let left = length * (2 * n + 1) / (2 * switches + 1) - 200;
            json!({ "kind": "switch", "left": mm(left), "right": mm(left + 86), "bottom": mm(1_100), "top": mm(1_186) })
        })
        .filter(|switch| {
            let at = |value: &Value, edge: &str| value[edge].as_str().map(str::to_owned).unwrap_or_default();
            let number = |text: String| text.trim_end_matches(" mm").parse::<i64>().unwrap_or(0);
            let (left, right) = (number(at(switch, "left")), number(at(switch, "right")));
            !windows.iter().any(|window| number(at(window, "left")) < right && left < number(at(window, "right")))
        })
        .collect();
    let wall = json!({
        "survey": {
            "name": "X", "datum": mm(1_000), "lengths": [{ "height": mm(0), "length": mm(length) }],
            "stations": [{ "at": mm(0), "datum_to_floor": mm(1_000) }, { "at": mm(length), "datum_to_floor": mm(1_006) }],
            "base": { "height": mm(140), "thickness": mm(14) },
            "left": { "kind": "inside-first" }, "right": { "kind": "inside-second" },
            "openings": windows, "boxes": switches, "studs": { "first": mm(387), "spacing": mm(406) }
        },
        "scheme": {
            "board_width": mm(64), "board_thickness": mm(18), "target_bay": mm(bay),
            "rails": { "width": mm(90), "top": mm(1_575), "rows": 2 }, "tape": "1 mm"
        },
        "stock": { "sticks": [{ "length": mm(4_200), "price": "19.60" }, { "length": mm(4_800), "price": "31.20" }] }
    });
    calculators::catalogue::read_as(wall).expect("a wall")
}

fn walls(criterion: &mut Criterion) {
    let room = calculators::catalogue::read_as(practice_room::input(Wall::Windows, Units::Imperial)).expect("a wall");
    for (name, input) in [
        ("the practice room's windows", room),
        ("40 boards, 3 openings", corridor(16, 330, 3, 4)),
        ("300 boards, 60 m", corridor(60, 135, 0, 0)),
        ("300 boards, 12 openings, 24 switches", corridor(60, 135, 12, 24)),
    ] {
        let found = plan(&input).expect("a plan");
        println!("{name}: {} boards, {} pieces", found.layouts[0].boards, found.layouts[0].members.len());
        criterion.bench_function(name, |bencher| bencher.iter(|| plan(black_box(&input))));
    }
}

criterion_group!(benches, walls);
criterion_main!(benches);
