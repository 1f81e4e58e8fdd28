//! Common practice arithmetic, worked by hand, on a wall of 100 in with boards of 2 in, 1/2 in thick.

use super::*;
use crate::wall::plan::Layout;
use crate::wall::planning::plan;
use serde_json::{Value, json};

fn layout(change: impl FnOnce(&mut Value)) -> Layout {
    let mut wall = json!({
        "survey": {
            "name": "W", "datum": "40 in", "lengths": [{ "height": "0 in", "length": "100 in" }],
            "base": { "height": "5 in", "thickness": "1/2 in" },
            "left": { "kind": "open-bay" }, "right": { "kind": "open-bay" }
        },
        "scheme": {
            "board_width": "2 in", "board_thickness": "1/2 in", "target_bay": "12 in",
            "rails": { "width": "3 in", "top": "60 in" }
        }
    });
    change(&mut wall);
    let plan = plan(&serde_json::from_value(wall).expect("a wall")).unwrap_or_else(|faults| panic!("{faults:#?}"));
    plan.layouts[0].clone()
}

fn inches(exact: Exact) -> f64 {
    exact.in_mm() / 25.4
}

#[test]
fn every_kind_of_end_begins_its_run_where_it_should() {
    for (kind, run, rip, rail) in [
        ("inside-first", 2.5, 2.5, 0.0),
        ("inside-second", 2.5, 2.0, 0.5),
        ("outside-lapping", 2.0, 2.5, -0.5),
        ("outside-lapped", 2.0, 2.0, 0.0),
        ("outside-mitred", 2.0, 2.5, -0.5),
        ("casing-board", 2.0, 2.0, 0.0),
        ("open-board", 2.0, 2.0, 0.0),
        ("casing-bay", 0.0, 0.0, 0.0),
        ("open-bay", 0.0, 0.0, 0.0),
    ] {
        let layout = layout(|wall| wall["survey"]["left"] = json!({ "kind": kind, "angle": 90 }));
        let first = &layout.positions[0];
        let ripped = if run > 0.0 { inches(first.board_right - first.board_left) } else { 0.0 };
        let top = layout.members.iter().find(|member| member.position.is_none()).expect("a top rail");
        assert!((inches(layout.runs[0].left) - run).abs() < 1e-6, "{kind}: {}", inches(layout.runs[0].left));
        assert!((ripped - rip).abs() < 1e-6, "{kind}: {ripped}");
        assert!((inches(top.outline[0].x) - rail).abs() < 1e-6, "{kind}");
        // The other end is the same end seen in a mirror.
        let other = self::layout(|wall| wall["survey"]["right"] = json!({ "kind": kind, "angle": 90 }));
        let last = other.runs.last().expect("a run");
        assert!((100.0 - inches(last.right) - run).abs() < 1e-6, "{kind} at the right");
    }
}

#[test]
fn equal_stock_shows_less_of_the_first_wall() {
    let layout = layout(|wall| {
        wall["survey"]["left"] = json!({ "kind": "inside-first" });
        wall["scheme"]["corner_boards"] = json!("equal-stock");
    });
    assert!((inches(layout.positions[0].left) - 0.5).abs() < 1e-9);
    assert!((inches(layout.positions[0].right) - 2.0).abs() < 1e-9);
}

#[test]
fn a_heater_is_framed_and_its_clearance_kept() {
    let layout = layout(|wall| {
        wall["survey"]["keep_clear"] = json!([{
            "kind": "heater", "left": "40 in", "right": "64 in", "bottom": "6 in", "top": "26 in", "clearance": "2 in"
        }]);
    });
    let at = |x: f64| layout.positions.iter().any(|board| (inches(board.left) - x).abs() < 1e-6);
    assert!(at(36.0) && at(66.0), "{:#?}", layout.positions);
    // Boards above it stand on a rail that clears the label's two inches.
    let head = layout.members.iter().find(|member| member.id == "W-head-1").expect("a rail above it");
    assert!((inches(head.outline[0].y) - 28.0).abs() < 1e-6);
    assert!(layout.conflicts.iter().all(|conflict| conflict.members.is_empty()), "{:#?}", layout.conflicts);
}

#[test]
fn a_clearance_that_nobody_read_stops_the_work() {
    use crate::wall::plan::{ConflictKind, Severity};
    let layout = layout(|wall| {
        wall["survey"]["keep_clear"] =
            json!([{ "kind": "vent", "left": "40 in", "right": "44 in", "bottom": "6 in", "top": "12 in" }]);
        wall["survey"]["openings"] =
            json!([{ "kind": "fireplace", "left": "60 in", "right": "90 in", "top": "36 in" }]);
    });
    let unread = layout
        .conflicts
        .iter()
        .filter(|conflict| conflict.what == ConflictKind::ClearanceUnknown && conflict.severity == Severity::Settle);
    assert_eq!(unread.count(), 2);
}

#[test]
fn a_fireplace_keeps_boards_at_its_clearance() {
    let layout = layout(|wall| {
        wall["survey"]["openings"] = json!([{
            "kind": "fireplace", "left": "40 in", "right": "70 in", "top": "36 in", "clearance": "6 in"
        }]);
    });
    let tight: Vec<_> = layout.positions.iter().filter(|board| board.why == Standing::Opening).collect();
    assert!((inches(tight[0].right) - 34.0).abs() < 1e-6 && (inches(tight[1].left) - 76.0).abs() < 1e-6);
}

#[test]
fn bays_to_the_casing_put_boards_inside_the_window() {
    let layout = layout(|wall| {
        wall["scheme"]["treatment"] = json!("bays-to-edges");
        wall["survey"]["openings"] = json!([{
            "kind": "window", "left": "30 in", "right": "70 in", "bottom": "30 in", "top": "80 in", "casing_projection": "1/2 in"
        }]);
    });
    let full = layout.members.iter().filter(|member| member.kind == crate::wall::plan::MemberKind::Board);
    assert!(full.clone().count() > 0);
    for board in full {
        let (left, right) = (inches(board.outline[0].x), inches(board.outline[1].x));
        assert!(right < 30.0 || left > 70.0, "{left} to {right}");
    }
    let under: Vec<_> = layout.positions.iter().filter(|board| board.why == Standing::Opening).collect();
    assert!((inches(under[0].left) - 30.0).abs() < 1e-6 && (inches(under[1].right) - 70.0).abs() < 1e-6);
}

#[test]
fn a_loft_wall_follows_its_ceiling() {
    let layout = layout(|wall| {
        wall["survey"]["stations"] = json!([
            { "at": "0 in", "datum_to_floor": "40 in", "floor_to_ceiling": "45 in" },
            { "at": "100 in", "datum_to_floor": "40 in", "floor_to_ceiling": "95 in" }
        ]);
        wall["scheme"]["rails"] = json!({ "width": "3 in", "top_line": "ceiling-no-rail" });
    });
    for board in layout.members.iter().filter(|member| member.position.is_some()) {
        let left = inches(board.outline[0].x);
        // One in two, from 40 clear above the base.
        assert!((inches(board.first_edge) - (40.0 + left / 2.0)).abs() < 1e-6, "{}", board.id);
        assert!((inches(board.second_edge - board.first_edge) - 1.0).abs() < 1e-6);
        assert!((board.end.saw.get() - 26.565).abs() < 0.001);
    }
}

#[test]
fn equal_rows_share_the_height() {
    let layout = layout(|wall| wall["scheme"]["rails"] = json!({ "width": "3 in", "top": "60 in", "rows": 2 }));
    let mids = layout.members.iter().filter(|member| member.kind == crate::wall::plan::MemberKind::MidRail);
    let mid: Vec<_> = mids.collect();
    // 60 - 5 - 2 × 3 = 49; the lower row ends at 5 + 24-1/2.
    assert_eq!(mid.len(), 1);
    assert!((inches(mid[0].outline[0].y) - 29.5).abs() < 1e-6);
    assert!(layout.bays.iter().all(|bay| (inches(bay.height) - 24.5).abs() < 1e-6));
}

#[test]
fn long_rails_are_joined_on_different_studs() {
    let layout = layout(|wall| {
        wall["survey"]["lengths"] = json!([{ "height": "0 in", "length": "267 1/2 in" }]);
        wall["survey"]["studs"] = json!({ "first": "16 in", "spacing": "16 in" });
        wall["scheme"]["rails"]["rows"] = json!(2);
        wall["stock"] = json!({ "sticks": [{ "length": "16'" }], "end_trim": "1/2 in" });
    });
    let joints: Vec<_> = layout.members.iter().flat_map(|member| &member.joints).map(|joint| joint.stud).collect();
    assert_eq!(joints.len(), 2);
    assert_ne!(joints[0], joints[1]);
    // By hand: joined in the middle, at 128 and 144, each of the four parts takes a stick of 191 clear. At 176 and 96 the parts are 176,
    // 91 1/2, 96 and 171 1/2, and the middle two come out of one: three sticks.
    assert_eq!(
        layout
            .sticks
            .iter()
            .map(|plan| plan
                .sticks
                .iter()
                .filter(|stick| stick.pieces.iter().any(|piece| piece.length > Length::inches(80)))
                .count())
            .sum::<usize>(),
        3
    );
    assert!(layout.pieces.iter().filter(|piece| piece.rail).count() == 4);
}
