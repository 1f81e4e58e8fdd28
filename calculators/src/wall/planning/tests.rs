use super::*;
use crate::quantity::Units;
use crate::wall::plan::Member;
use crate::wall::plan::Standing;
use crate::wall::practice_room::{self, Wall};
use proptest::prelude::*;
use serde_json::{Value, json};

fn mm(mm: i64) -> Value {
    json!(format!("{mm} mm"))
}

/// Walls of any shape within the bounds of their fields, sensible or not.
fn any_wall() -> impl Strategy<Value = Value> {
    const TOPS: [&str; 4] = ["level-rail", "ceiling-rail", "level-no-rail", "ceiling-no-rail"];
    const ENDS: [&str; 9] = [
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
    // Places are shares of the wall in thousandths, so that most of them lie on it.
    let rectangle = (0_i64..900, 5_i64..300, 0_i64..2_000, 1_i64..1_500);
    let openings = prop::collection::vec((rectangle.clone(), 0_usize..4, any::<bool>(), any::<bool>()), 0..4);
    let boxes = prop::collection::vec((rectangle.clone(), 0_usize..5), 0..4);
    let zones = prop::collection::vec((rectangle, prop::option::of(0_i64..200)), 0..2);
    let stations = prop::collection::vec((0_i64..1_000, 900_i64..1_100, prop::option::of(1_800_i64..2_800)), 0..6);
    let stair = prop::option::weighted(0.3, (0_i64..400, 100_i64..600, 200_i64..2_000, any::<bool>()));
    let scheme = (20_i64..200, 5_i64..40, prop::option::weighted(0.8, 60_i64..900), 1_i64..40, 0_usize..4, 20_i64..150);
    let rails = (prop::option::of(300_i64..2_600), prop::option::of(1_u32..4), any::<bool>(), any::<bool>());
    ((100_i64..9_000, -40_i64..40, 0_usize..9, 0_usize..9), openings, boxes, (zones, stations), stair, scheme, rails).prop_map(
        |((length, lean, left, right), openings, boxes, (zones, stations), stair, (board, thick, bay, count, line, rail), (top, rows, edges, metric))| {
            let frame = |(left, wide, low, high): (i64, i64, i64, i64)| {
                json!({ "left": mm(left * length / 1_000), "right": mm((left + wide) * length / 1_000), "bottom": mm(low), "top": mm(low + high) })
            };
            let openings: Vec<Value> = openings.into_iter().map(|(shape, kind, floor, casing)| {
                let mut opening = frame(shape);
                opening["kind"] = json!(["window", "door", "fireplace", "other"][kind]);
                if floor { opening["bottom"] = Value::Null; }
                if casing { opening["casing_projection"] = mm(15); }
                opening
            }).collect();
            let boxes: Vec<Value> = boxes.into_iter().map(|(shape, agreed)| {
                let mut plate = frame(shape);
                plate["kind"] = json!("switch");
                plate["agreed"] = [json!(null), json!("wide-board"), json!("notch"), json!("move-box"), json!("leave")][agreed].clone();
                plate
            }).collect();
            let zones: Vec<Value> = zones.into_iter().map(|(shape, clear)| {
                let mut zone = frame(shape);
                zone["kind"] = json!("heater");
                zone["clearance"] = clear.map_or(Value::Null, mm);
                zone
            }).collect();
            let mut stations: Vec<(i64, i64, Option<i64>)> = stations;
            stations.sort_unstable();
            stations.dedup_by_key(|station| station.0);
            let stations: Vec<Value> = stations.into_iter().map(|(at, down, up)| {
                json!({ "at": mm(at * length / 1_000), "datum_to_floor": mm(down), "floor_to_ceiling": up.map_or(Value::Null, mm) })
            }).collect();
            let stair = stair.map(|(first, run, rise, right)| json!({
                "climbs": if right { "right" } else { "left" }, "first_nosing": mm(first * length / 1_000), "run": mm((run * length / 1_000).max(200)), "rise": mm(rise),
                "first_riser": mm(180), "base_over_nosings": mm(110)
            }));
            json!({
                "survey": {
                    "name": "W", "datum": mm(1_000),
                    "lengths": [{ "height": mm(0), "length": mm(length) }, { "height": mm(1_500), "length": mm((length - lean).max(30)), "left_in": mm(lean / 2) }],
                    "stations": stations,
                    "base": if edges { json!({ "height": mm(140), "thickness": mm(14), "work": "new" }) } else { Value::Null },
                    "left": { "kind": ENDS[left], "angle": 91.5 }, "right": { "kind": ENDS[right], "angle": 88.0 },
                    "openings": openings, "boxes": boxes, "keep_clear": zones, "stair": stair,
                    "studs": if metric { json!({ "first": mm(90), "spacing": mm(400) }) } else { Value::Null }
                },
                "scheme": {
                    "board_width": mm(board), "board_thickness": mm(thick), "target_bay": bay.map_or(Value::Null, mm),
                    "boards": if bay.is_some() { None } else { Some(count) }, "treatment": if edges { "boards-at-edges" } else { "bays-to-edges" },
                    "rails": {
                        "width": mm(rail), "top": top.map_or(Value::Null, mm), "rows": rows,
                        "top_line": TOPS[line]
                    },
                    "tape": if metric { "1 mm" } else { "1/16 in" }
                },
                "stock": { "sticks": [{ "length": mm(2_400), "price": "9.90" }, { "length": mm(3_600), "price": "15.20", "available": 3 }] }
            })
        },
    )
}

/// Whether the middle of a piece keeps out of every opening; over a stair the middle of its corners says nothing.
fn off_openings(member: &Member, input: &WallInput) -> bool {
    if input.survey.stair.is_some() {
        return true;
    }
    let count = i64::try_from(member.outline.len()).expect("few");
    let middle = |sum: Exact| sum.over(count).expect("not zero");
    let x = middle(member.outline.iter().fold(Exact::ZERO, |sum, point| sum + point.x));
    let y = middle(member.outline.iter().fold(Exact::ZERO, |sum, point| sum + point.y));
    input.survey.openings.iter().all(|opening| {
        let beside = x < opening.left.get() || x > opening.right.get();
        beside || opening.bottom.is_some_and(|bottom| y < bottom.get()) || y > opening.top.get()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]
    #[test]
    fn any_wall_is_planned_or_refused_and_every_plan_fills_the_wall(wall in any_wall()) {
        let input: WallInput = crate::catalogue::read_as(wall).expect("within the bounds of the fields");
        let Ok(plan) = plan(&input) else { return Ok(()) };
        prop_assert!(!plan.layouts.is_empty() && plan.layouts.len() <= OFFERED);
        for layout in &plan.layouts {
            let adds = layout.score.terms.iter().fold(Exact::ZERO, |sum, term| sum + term.adds);
            prop_assert_eq!(adds, layout.score.total);
            for (n, position) in layout.positions.iter().enumerate() {
                prop_assert_eq!(position.number, n + 1);
                prop_assert!(position.left < position.right);
            }
            for run in &layout.runs {
                let boards = i64::try_from(run.boards).expect("few");
                let filled = run.bay * (boards + 1) + input.scheme.board_width.get().exact() * boards;
                prop_assert_eq!(filled, run.right - run.left);
            }
            for line in &layout.marks {
                for mark in &line.marks {
                    prop_assert!(mark.left.left_over().size() <= mark.left.tape.step().exact().half());
                }
            }
            for member in &layout.members {
                prop_assert!(member.length.exact.is_positive(), "{} has no length", member.id);
                prop_assert!(member.outline.len() >= 4);
                prop_assert!(off_openings(member, &input), "{} stands in an opening", member.id);
            }
            let totals: std::collections::BTreeSet<_> = plan
                .layouts
                .iter()
                .map(|layout| layout.runs.iter().map(|run| run.boards).collect::<Vec<_>>())
                .collect();
            prop_assert_eq!(totals.len(), plan.layouts.len(), "two layouts with one total");
            let told = crate::catalogue::Shaped::node(layout);
            prop_assert_eq!(told.at("/members").map(|list| list.items().len()), Some(layout.members.len()));
        }
    }
}

#[test]
fn a_pier_too_narrow_for_two_boards_takes_one() {
    // Common practice arithmetic, worked by hand: two casings 4-1/2 apart, boards of 2-1/2.
    let mut wall = practice_room::input(Wall::Windows, Units::Imperial);
    wall["survey"]["openings"][1]["left"] = json!("81 3/4 in");
    let plan = plan(&crate::catalogue::read_as(wall).expect("a wall")).expect("a plan");
    let piers: Vec<_> = plan.layouts[0].positions.iter().filter(|position| position.why == Standing::Pier).collect();
    assert_eq!(piers.len(), 1);
    assert_eq!((piers[0].right - piers[0].left).text(Units::Imperial), "4 1/2 in");
}

#[test]
fn a_wished_number_of_boards_is_kept_first() {
    let mut wall = practice_room::input(Wall::Windows, Units::Imperial);
    wall["scheme"]["target_bay"] = Value::Null;
    wall["scheme"]["boards"] = json!(16);
    let good = plan(&crate::catalogue::read_as(wall.clone()).expect("a wall")).expect("a plan");
    assert_eq!(good.layouts[0].boards, 16);
    // Both windows are wide beside a widest bay of 20 in: five boards stand fixed, and the number that is named can be had.
    wall["scheme"]["bay_max"] = json!("20 in");
    wall["scheme"]["boards"] = json!(3);
    let faults = plan(&crate::catalogue::read_as(wall.clone()).expect("a wall")).expect_err("five boards are fixed");
    assert_eq!(faults[0].pointer, "/scheme/boards");
    let told = crate::catalogue::Fault::print_all(&faults, Units::Imperial);
    wall["scheme"]["boards"] = told[0]["try"].clone();
    let boards = plan(&crate::catalogue::read_as(wall.clone()).expect("a wall")).expect("as told").layouts[0].boards;
    assert_eq!(json!(boards), wall["scheme"]["boards"]);
}

#[test]
fn a_wish_never_refuses_a_wall() {
    let mut wall = practice_room::input(Wall::Windows, Units::Imperial);
    wall["survey"]["lengths"] = json!([{ "height": "0 in", "length": "40 in" }]);
    for list in ["stations", "openings", "boxes"] {
        wall["survey"][list] = json!([]);
    }
    wall["scheme"]["target_bay"] = json!("48 in");
    assert!(plan(&crate::catalogue::read_as(wall.clone()).expect("a wall")).is_ok());
    // A wall no wider than two boards takes one, as wide as the wall.
    wall["survey"]["lengths"] = json!([{ "height": "0 in", "length": "5 in" }]);
    for end in ["left", "right"] {
        wall["survey"][end] = json!({ "kind": "open-board" });
    }
    let one = plan(&crate::catalogue::read_as(wall).expect("a wall")).expect("one board").layouts.remove(0);
    assert_eq!((one.positions.len(), one.positions[0].why), (1, Standing::Pier));
    assert_eq!((one.positions[0].right - one.positions[0].left).text(Units::Imperial), "5 in");
}
