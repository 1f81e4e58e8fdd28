//! What is in the way and what cannot be: each is said, and said with care.

use serde_json::{Value, json};

use super::{layout, list, plain, refused, with, word};

/// The findings of one kind.
fn found<'v>(layout: &'v Value, what: &str) -> Vec<&'v Value> {
    list(layout, "conflicts").iter().filter(|finding| finding["what"] == what).collect()
}

/// A wall of 6 m whose rail is longer than its sticks of 4.8 m, over a window below the rail, with studs at these places alone.
fn long_wall(window: [i64; 2], studs: &[i64]) -> Value {
    with(
        plain(),
        &[
            ("/survey/lengths/0/length", json!(6000)),
            ("/survey/stations/1/at", json!(6000)),
            (
                "/survey/openings",
                json!([{ "kind": "window", "left": window[0], "right": window[1], "bottom": 600, "top": 1300 }]),
            ),
            ("/survey/studs", json!({ "found": studs })),
        ],
    )
}

fn joints(layout: &Value) -> Vec<f64> {
    let rail = list(layout, "members").iter().find(|member| member["kind"] == "top-rail").expect("a top rail");
    list(rail, "joints").iter().map(|joint| super::mm(&joint["stud"])).collect()
}

#[test]
fn a_joint_keeps_its_distance_from_openings() {
    // A default of this book, no source: 300 mm. Of two studs on which both parts of the rail fit a stick, one stands 30 mm from a
    // window and the other 800 off: the other is taken, on whichever side it stands.
    assert_eq!(joints(&layout(&long_wall([2600, 3400], &[2570, 4200]))), [4200.0]);
    assert_eq!(joints(&layout(&long_wall([2600, 3400], &[1800, 3430]))), [1800.0]);
    // With the near one alone there is no joint, and that is said.
    for (near, allowed) in [(2570, false), (2301, false), (2299, true), (3430, false), (3701, true)] {
        let layout = layout(&long_wall([2600, 3400], &[near]));
        assert_eq!(joints(&layout).len(), usize::from(allowed), "stud at {near}");
        assert_eq!(found(&layout, "joint").is_empty(), allowed, "stud at {near}");
    }
}

/// A plate with these edges: left, right, bottom, top.
fn plate(edges: [f64; 4]) -> Value {
    json!({ "kind": "switch", "left": edges[0], "right": edges[1], "bottom": edges[2], "top": edges[3] })
}

#[test]
fn a_rail_across_a_plate_stops_the_work_and_one_beside_it_is_named() {
    // The rail runs from 1485 to 1575; a default of this book, no source: 50 mm from a plate's edge are wanted.
    let between =
        |low: f64, high: f64| layout(&with(plain(), &[("/survey/boxes", json!([plate([180.0, 250.0, low, high])]))]));
    let said = |low, high| {
        found(&between(low, high), "rail-plate")
            .iter()
            .map(|finding| word(finding, "severity").to_owned())
            .collect::<Vec<_>>()
    };
    assert_eq!(said(1440.0, 1520.0), ["settle"], "across its lower edge");
    assert_eq!(said(1500.0, 1550.0), ["settle"], "on its face");
    assert_eq!(said(1356.0, 1436.0), ["note"], "49 mm below it");
    assert_eq!(said(1354.0, 1434.0), [""; 0], "51 mm below it");
    assert_eq!(said(1624.0, 1700.0), ["note"], "49 mm above it");
    assert_eq!(said(1626.0, 1700.0), [""; 0], "51 mm above it");
}

#[test]
fn what_cannot_stand_on_one_wall_is_refused_where_it_was_typed() {
    let both = |second: [f64; 4]| {
        with(plain(), &[("/survey/boxes", json!([plate([1000.0, 1070.0, 1000.0, 1080.0]), plate(second)]))])
    };
    assert!(
        refused(&both([1060.0, 1130.0, 1000.0, 1080.0])).iter().any(|at| at.starts_with("/survey/boxes/1")),
        "plates over each other"
    );
    assert_eq!(refused(&both([1071.0, 1130.0, 1000.0, 1080.0])), [""; 0], "plates beside each other");
    assert_eq!(refused(&both([1000.0, 1070.0, 1081.0, 1160.0])), [""; 0], "plates above each other");

    let stud = |at: i64| with(plain(), &[("/survey/studs", json!({ "found": [400, at] }))]);
    assert!(refused(&stud(4001)).iter().any(|at| at == "/survey/studs/found/1"), "a stud beyond the wall");
    assert_eq!(refused(&stud(3990)), [""; 0]);

    let stair = |run: i64, rise: i64| {
        let flight =
            json!({ "first_nosing": 800, "run": run, "rise": rise, "first_riser": 178, "base_over_nosings": 114 });
        with(plain(), &[("/survey/stair", flight), ("/survey/stations", json!([])), ("/scheme/rails/top", json!(1016))])
    };
    assert!(refused(&stair(1400, 1500)).iter().any(|at| at.starts_with("/survey/stair")), "steeper than it is long");
    assert_eq!(refused(&stair(2238, 1429)), [""; 0]);
}

/// Edges of a piece of trim in millimetres: left, right, bottom, top.
fn edges(member: &Value) -> [f64; 4] {
    let points = list(member, "outline");
    let along = |axis: usize| points.iter().map(move |point| point[axis].as_f64().expect("a place") / 1e6);
    let (least, most) = (|axis| along(axis).fold(f64::MAX, f64::min), |axis| along(axis).fold(f64::MIN, f64::max));
    [least(0), most(0), least(1), most(1)]
}

#[test]
fn trim_keeps_out_of_the_clearance_of_a_part_that_gets_hot_or_must_breathe_or_is_named() {
    let board = edges(
        list(&layout(&plain()), "members").iter().find(|member| member["position"] == 4).expect("a fourth board"),
    );
    // A wide vent; a narrow part 14 beside the fourth board, on either side; a wide one and a narrow one 15 below the rail, which both
    // interrupt. Each with the clearance on its label. The rail's ends at the last one stand in mid-bay, and that is said of both.
    let parts = [
        ([1950.0, 2050.0, 700.0, 800.0], 200.0),
        ([board[1] + 14.0, board[1] + 34.0, 700.0, 800.0], 20.0),
        ([board[0] - 34.0, board[0] - 14.0, 700.0, 800.0], 20.0),
        ([1950.0, 2050.0, 1300.0, 1400.0], 100.0),
        ([1950.0, 1970.0, 1400.0, 1470.0], 20.0),
    ];
    let mut told = 0;
    for (part, clearance) in parts {
        let kept = json!({ "kind": "vent", "left": part[0], "right": part[1], "bottom": part[2], "top": part[3], "clearance": clearance });
        let layout = layout(&with(plain(), &[("/survey/keep_clear", json!([kept]))]));
        for member in list(&layout, "members") {
            let [left, right, low, high] = edges(member);
            let inside = left < part[1] + clearance - 1e-6
                && part[0] - clearance + 1e-6 < right
                && low < part[3] + clearance - 1e-6
                && part[2] - clearance + 1e-6 < high;
            let label = json!(word(member, "id"));
            let named = list(&layout, "conflicts")
                .iter()
                .filter(|finding| finding["what"] == "clearance" && finding["severity"] == "settle")
                .any(|finding| list(finding, "members").contains(&label));
            assert_eq!(inside, named, "{label} at {left} to {right}, part at {part:?} with {clearance}");
        }
        told = found(&layout, "end").iter().filter(|finding| finding["severity"] == "settle").count();
    }
    assert_eq!(told, 2, "both ends of the rail at the last part");
}

#[test]
fn work_round_a_plate_is_priced_and_a_box_that_is_moved_away_is_not() {
    let hours = |agreed: Option<&str>| {
        let mut plate = plate([200.0, 270.0, 1000.0, 1080.0]);
        if let Some(agreed) = agreed {
            plate["agreed"] = agreed.into();
        }
        let wall =
            with(plain(), &[("/survey/boxes", json!([plate])), ("/shop", json!({ "rates": { "hour": "48.00" } }))]);
        let layout = layout(&wall);
        (list(&layout["totals"], "plates").len(), layout["job"].to_string())
    };
    let (left, without) = (hours(Some("leave")), hours(Some("move-box")));
    assert_eq!((left.0, without.0), (1, 0));
    assert_ne!(left.1, without.1, "the job of a wall with a plate takes longer");
}
