//! What is marked and cut: marks on the edges that can be seen, ends at corners of any angle, notches with air on every side.

use serde_json::{Value, json};

use super::{layout, list, mm, nm, plain, with, word};

#[test]
fn marks_show_the_edges_that_can_be_seen() {
    // By hand: in both inside corners the boards of the other walls cover 18 mm, and the corner boards show 64: 18 to 82 and 3918 to
    // 3982. The wood itself runs into the corners, 0 to 82 and 3918 to 4000.
    let corner = json!({ "kind": "inside-first", "angle": 90 });
    let wall = with(plain(), &[("/survey/left", corner.clone()), ("/survey/right", corner)]);
    let layout = layout(&wall);
    let positions = list(&layout, "positions");
    let (first, last) = (&positions[0], &positions[positions.len() - 1]);
    assert_eq!([mm(&first["left"]), mm(&first["right"]), mm(&first["board_left"])], [18.0, 82.0, 0.0]);
    assert_eq!([mm(&last["left"]), mm(&last["right"]), mm(&last["board_right"])], [3918.0, 3982.0, 4000.0]);
    for line in list(&layout, "marks") {
        for mark in list(line, "marks") {
            let place = &positions[mark["board"].as_u64().expect("a number") as usize - 1];
            for edge in ["left", "right"] {
                let apart = (mm(&mark[edge]) - mm(&place[edge])).abs();
                assert!(apart <= 0.5, "{edge} mark of board {} is {apart} mm off its edge", mark["board"]);
            }
        }
        let marks = list(line, "marks");
        assert_eq!([nm(&marks[0]["left"]), nm(&marks[marks.len() - 1]["right"])], [18_000_000, 3_982_000_000]);
        assert_eq!(nm(&line["last"]), 3_982_000_000, "what the tape shows at the last edge");
    }
}

#[test]
fn an_end_at_an_outside_corner_is_cut_to_the_complement_of_half_its_angle() {
    // Plane geometry: both boards meet on the line that halves the corner, which lies half its angle off the wall's face; the saw is
    // set from a square cut, so to 90° less that. At 90° both are 45 and nothing is shown. The long point lies thickness × tan of that
    // past the corner.
    for angle in [80.0_f64, 90.0, 100.0, 135.0] {
        let corner = json!({ "kind": "outside-mitred", "angle": angle });
        let wall = with(plain(), &[("/survey/left", corner.clone()), ("/survey/right", corner)]);
        let layout = layout(&wall);
        let rail = list(&layout, "members").iter().find(|member| member["kind"] == "top-rail").expect("a rail");
        let saw = 90.0 - angle / 2.0;
        for end in ["start", "end"] {
            assert_eq!(
                (word(&rail[end], "cut"), rail[end]["saw"]["value"].as_f64()),
                ("bevel", Some(saw)),
                "{angle}°, {end}"
            );
        }
        let long = 4000.0 + 2.0 * 18.0 * saw.to_radians().tan();
        let rail_length = mm(&rail["length"]);
        assert!((rail_length - long).abs() <= 0.5, "{angle}°: {rail_length} for {long:.2}");
        let first = &list(&layout, "positions")[0];
        let past = -mm(&first["board_left"]);
        assert!(
            (past - 18.0 * saw.to_radians().tan()).abs() < 1e-3,
            "{angle}°: the board's long point lies {past} past the corner"
        );
    }
}

/// A plate 70 wide and 80 high that reaches 20 over one edge of the third board, with a notch agreed; the plan and the board's edges.
fn notched(over_right_edge: bool) -> (Value, f64, f64) {
    let board = list(&layout(&plain()), "positions")[2].clone();
    let (left, right) = (mm(&board["left"]), mm(&board["right"]));
    let from = if over_right_edge { right - 20.0 } else { left - 50.0 };
    let plate =
        json!({ "kind": "switch", "left": from, "right": from + 70.0, "bottom": 1000, "top": 1080, "agreed": "notch" });
    (layout(&with(plain(), &[("/survey/boxes", json!([plate]))])), left, right)
}

#[test]
fn a_notch_has_air_on_every_side_of_its_plate_whichever_edge_it_comes_over() {
    // By hand: of 64, 20 are the plate's and 1.5 its air, a neck of 42.5 is left; from 998.5 to 1081.5 high.
    for over_right_edge in [true, false] {
        let (layout, left, right) = notched(over_right_edge);
        let boards = list(&layout, "members").iter().filter(|member| !list(member, "notches").is_empty());
        let boards: Vec<_> = boards.collect();
        assert_eq!(boards.len(), 1, "one board is notched");
        let notch = &boards[0]["notches"][0];
        let wanted = if over_right_edge { [right - 21.5, right] } else { [left, left + 21.5] };
        let close = |edge: &str, at: f64| (mm(&notch[edge]) - at).abs() < 1e-5;
        assert!(
            close("left", wanted[0]) && close("right", wanted[1]),
            "over the right edge {over_right_edge}: {notch}"
        );
        assert!(close("bottom", 998.5) && close("top", 1081.5) && close("neck", 42.5), "{notch}");
        let label = word(boards[0], "id");
        let cut =
            list(&layout, "cut_list").iter().find(|cut| word(cut, "label").starts_with(label)).expect("it is cut");
        let remarks = cut["remarks"].to_string();
        assert!(remarks.contains("notch 21.5 mm by 83 mm"), "the cut list leaves the notch off: {remarks}");
    }
}
