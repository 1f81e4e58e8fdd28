//! Every figure here was worked out by hand and by another program from the survey: common practice arithmetic.

use super::*;
use crate::quantity::{Exact, INCH, Length, Reading};
use crate::wall::plan::{Action, Conflict, ConflictKind, CutKind, Layout, MemberKind, Severity, WallPlan};
use crate::wall::planning::plan;

fn planned(wall: Wall, units: Units) -> WallPlan {
    let input = crate::catalogue::read_as(input(wall, units)).expect("the room's walls can be read");
    plan(&input).unwrap_or_else(|faults| panic!("{faults:#?}"))
}

/// Readings as an inch carpenter or a metric one calls them out.
fn called(readings: impl IntoIterator<Item = Reading>) -> Vec<String> {
    readings
        .into_iter()
        .map(|reading| {
            let text = reading.shown().text(reading.tape.units());
            text.trim_end_matches(" in").trim_end_matches(" mm").to_owned()
        })
        .collect()
}

fn lefts(layout: &Layout) -> Vec<String> {
    called(layout.positions.iter().map(|position| crate::quantity::Tape::Sixteenth.mark(position.left)))
}

fn lefts_mm(layout: &Layout) -> Vec<String> {
    called(layout.positions.iter().map(|position| crate::quantity::Tape::Millimetre.mark(position.left)))
}

fn board_lengths(layout: &Layout) -> Vec<String> {
    called(layout.members.iter().filter(|member| member.position.is_some()).map(|member| member.length))
}

fn rail_lengths(layout: &Layout) -> Vec<String> {
    called(layout.members.iter().filter(|member| member.position.is_none()).map(|member| member.length))
}

fn split(words: &str) -> Vec<String> {
    words.split(", ").map(str::to_owned).collect()
}

fn counts(layout: &Layout) -> Vec<usize> {
    layout.runs.iter().map(|run| run.boards).collect()
}

fn inches(exact: Exact) -> f64 {
    exact.in_mm() / INCH.in_mm()
}

#[test]
fn the_plain_wall_in_inches() {
    let plan = planned(Wall::Plain, Units::Imperial);
    let first = &plan.layouts[0];
    assert_eq!(first.boards, 12);
    assert!((inches(first.runs[0].bay) - 12.8977).abs() < 0.00005);
    assert_eq!(
        lefts(first),
        split(
            "3/4, 16 1/8, 31 9/16, 46 15/16, 62 5/16, 77 3/4, 93 1/8, 108 9/16, 123 15/16, 139 5/16, 154 3/4, 170 1/8"
        )
    );
    let last = &first.positions[11];
    assert_eq!(last.right, Length::sixty_fourths(172 * 64 + 40));
    assert_eq!(last.board_right - last.board_left, Length::sixty_fourths(208));
    assert_eq!(
        board_lengths(first),
        split("53, 53 1/32, 53 1/16, 53 1/16, 53 3/32, 53 1/8, 53 1/8, 53 5/32, 53 3/16, 53 3/16, 53 7/32, 53 1/4")
    );
    assert!(
        first.members.iter().all(|member| member.start.cut == CutKind::Square && member.end.cut == CutKind::Square)
    );
    assert_eq!(rail_lengths(first), ["173 1/16"]);
    assert_eq!(first.studs.hits, [5, 6]);
    assert_eq!((first.nails.in_rails, first.nails.in_boards, first.nails.pins, first.nails.heads), (24, 60, 72, 156));
    assert_eq!(first.nails.rail_nail, Some(Length::inches(2)));
}

#[test]
fn the_plain_wall_leans_at_its_right_end() {
    let plan = planned(Wall::Plain, Units::Imperial);
    let last = plan.layouts[0].members.iter().find(|member| member.id == "A-12").expect("the last board");
    // 17/64 over the board's 53-1/4.
    assert_eq!(last.taper.map(|taper| taper.nearest(crate::quantity::SIXTY_FOURTH)), Some(Length::sixty_fourths(17)));
    let lean = conflict(&plan.layouts[0], ConflictKind::Lean);
    assert!(lean.options.iter().any(|option| option.action == Action::Scribe && option.applied));
}

#[test]
fn the_plain_wall_in_millimetres() {
    let plan = planned(Wall::Plain, Units::Metric);
    let first = &plan.layouts[0];
    assert_eq!(first.boards, 12);
    assert!((first.runs[0].bay.in_mm() - 327.27).abs() < 0.005);
    assert_eq!(lefts_mm(first), split("18, 409, 801, 1192, 1583, 1974, 2366, 2757, 3148, 3539, 3931, 4322"));
    assert_eq!(first.positions[11].right, Length::mm(4386));
    assert_eq!(first.positions[0].board_right - first.positions[0].board_left, Length::mm(82));
    assert_eq!(board_lengths(first), split("1345, 1346, 1347, 1347, 1347, 1348, 1348, 1349, 1350, 1350, 1351, 1351"));
    assert_eq!(first.nails.rail_nail, Some(Length::mm(50)));
}

#[test]
fn totals_of_the_plain_wall() {
    let totals = planned(Wall::Plain, Units::Imperial).layouts[0].totals.clone();
    let square_feet = |area: f64| area / 0.092_903_04;
    assert!((square_feet(totals.field.get()) - 68.18).abs() < 0.01);
    assert!((square_feet(totals.field.get() + totals.edges.get() + totals.base_face.get()) - 82.5).abs() < 0.06);
    assert!((inches(totals.caulk) / 12.0 - 144.5).abs() < 0.06, "{}", inches(totals.caulk) / 12.0);
}

#[test]
fn the_wall_with_windows_in_inches() {
    let plan = planned(Wall::Windows, Units::Imperial);
    let first = &plan.layouts[0];
    assert_eq!(first.boards, 14);
    assert_eq!(counts(first), [1, 2, 1, 3, 2]);
    let bays: Vec<_> = first.runs.iter().map(|run| run.bay.text(Units::Imperial)).collect();
    assert_eq!(bays, ["13 1/4 in", "12 1/2 in", "13 15/16 in", "13 in", "12 3/8 in"]);
    // Divided they differ by 1 9/16; the last board is moved for the switch, and 13 15/16 less 12 3/16 is left.
    assert_eq!(first.spread.text(Units::Imperial), "1 3/4 in");
    assert_eq!(
        lefts(first),
        split(
            "3/4, 16 1/2, 32 1/4, 47 1/4, 62 1/4, 77 1/4, 93 11/16, 110 1/8, 125 5/8, 141 1/8, 156 5/8, 172 1/8, 186 13/16, 201 1/2"
        )
    );
    assert_eq!(
        board_lengths(first),
        // The last board after its shift: 53 + 3/16 - (202-3/4 - 162) / 54-3/4 / 16 = 53.1410, nearer 5/32 than 1/8.
        split(
            "53 1/4, 53 1/4, 53 1/4, 21 1/4, 21 1/4, 53 7/32, 53 3/16, 53 3/16, 21 3/16, 21 3/16, 21 3/16, 53 3/16, 53 5/32, 53 5/32"
        )
    );
    assert_eq!(rail_lengths(first), split("34, 35 3/8, 44 5/8, 42 1/2, 59 1/2"));
    let evenest = &plan.layouts[1];
    assert_eq!((counts(evenest), evenest.boards), (vec![2, 3, 2, 5, 3], 20));
}

#[test]
fn the_switch_moves_two_boards_and_the_plan_says_so() {
    let plan = planned(Wall::Windows, Units::Imperial);
    let first = &plan.layouts[0];
    let plate = conflict(first, ConflictKind::Plate);
    assert_eq!(plate.severity, Severity::Note);
    assert!(plate.options[0].applied && plate.options[0].action == Action::Shift);
    let bays: Vec<_> = first.bays.iter().rev().take(3).map(|bay| bay.width.text(Units::Imperial)).collect();
    assert_eq!(bays, ["12 3/4 in", "12 3/16 in", "12 3/16 in"]);
    assert_eq!(first.positions[13].shifted.text(Units::Imperial), "-3/8 in");
}

#[test]
fn a_switch_centred_on_a_board_edge_is_never_shifted_in_silence() {
    let mut wall = input(Wall::Windows, Units::Imperial);
    wall["survey"]["boxes"][0]["left"] = json!("203 in");
    wall["survey"]["boxes"][0]["right"] = json!("205 3/4 in");
    let plan = plan(&crate::catalogue::read_as(wall.clone()).expect("a wall")).expect("a plan");
    let first = &plan.layouts[0];
    assert_eq!(lefts(first)[13], "201 7/8");
    let plate = conflict(first, ConflictKind::Plate);
    assert_eq!(plate.severity, Severity::Settle);
    let say = |action| {
        let option = plate.options.iter().find(|option| option.action == action).expect("it is weighed");
        (option.allowed, option.words.in_units(Units::Imperial))
    };
    let (shift, words) = say(Action::Shift);
    assert!(
        !shift && words.contains("1 7/8 in") && words.contains("11 7/16 in") && words.contains("14 1/4 in"),
        "{words}"
    );
    assert!(words.contains("23 %"), "{words}");
    let (notch, words) = say(Action::Notch);
    assert!(!notch && words.contains("1 1/16 in") && words.contains("1 1/4 in"), "{words}");
    let (wide, words) = say(Action::WideBoard);
    assert!(wide && words.contains("3 1/8 in"), "{words}");
    assert!(say(Action::MoveBox).0);

    wall["survey"]["boxes"][0]["agreed"] = json!("wide-board");
    let plan = crate::wall::planning::plan(&crate::catalogue::read_as(wall).expect("a wall")).expect("a plan");
    let board = &plan.layouts[0].positions[13];
    assert_eq!((board.right - board.left).text(Units::Imperial), "3 1/8 in");
    assert!(plan.layouts[0].conflicts.iter().all(|conflict| conflict.severity == Severity::Note));
}

#[test]
fn the_wall_with_windows_in_millimetres() {
    let plan = planned(Wall::Windows, Units::Metric);
    let first = &plan.layouts[0];
    assert_eq!(counts(first), [1, 2, 1, 3, 2]);
    assert_eq!(
        lefts_mm(first),
        // 418.5 and 3584.5 lie between two marks and go up.
        split("18, 419, 819, 1200, 1581, 1962, 2380, 2797, 3191, 3585, 3978, 4372, 4745, 5117")
    );
    assert_eq!(
        board_lengths(first),
        // The last board after its shift: 1345 + 5 - 2 × (5149.33 - 4115) / 1390 = 1348.51.
        split("1351, 1351, 1351, 538, 538, 1351, 1350, 1350, 537, 537, 537, 1350, 1349, 1349")
    );
    let bays: Vec<_> = first.bays.iter().rev().take(3).map(|bay| bay.width.in_mm()).collect();
    for (ours, expected) in bays.iter().zip([323.67, 308.67, 308.67]) {
        assert!((ours - expected).abs() < 0.005, "{ours}");
    }
}

#[test]
fn the_stair_in_inches() {
    let plan = planned(Wall::Stair, Units::Imperial);
    let first = &plan.layouts[0];
    assert_eq!(counts(first), [1, 5, 1]);
    assert!((inches(first.runs[1].bay) - 11.771).abs() < 0.0005);
    assert_eq!(lefts(first), split("13 3/4, 30, 44 1/4, 58 9/16, 72 13/16, 87 1/16, 101 3/8, 115 5/8, 128 7/8"));
    let boards: Vec<_> = first.members.iter().filter(|member| member.kind == MemberKind::Board).collect();
    assert_eq!(boards.len(), 9);
    for raked in &boards[1..8] {
        assert_eq!((raked.start.cut, raked.end.cut), (CutKind::Rake, CutKind::Rake), "{}", raked.id);
        assert!((raked.start.saw.get() - 32.55).abs() < 0.005);
        assert!((inches(raked.first_edge) - 31.348).abs() < 0.0005);
        assert!((inches(raked.second_edge) - 31.348).abs() < 0.0005);
        assert_eq!(called([raked.length]), ["32 15/16"]);
    }
    assert_eq!(called([boards[0].length, boards[8].length]), ["31", "31"]);
    assert_eq!(rail_lengths(first), split("20 1/16, 118 9/16, 24"));
    let mitres: Vec<_> = first.members.iter().filter(|member| member.kind == MemberKind::TopRail).collect();
    assert_eq!(mitres[0].end.cut, CutKind::Mitre);
    assert!((mitres[0].end.saw.get() - 16.3).abs() < 0.05);
    let turn = &mitres[0].outline;
    assert!((inches(turn[2].x) - 19.03).abs() < 0.005 && (inches(turn[1].x) - 20.06).abs() < 0.006);
    let turn = &mitres[1].outline;
    assert!((inches(turn[2].x) - 118.125).abs() < 0.0005 && (inches(turn[1].x) - 119.15).abs() < 0.005);
}

#[test]
fn the_stair_in_millimetres() {
    let plan = planned(Wall::Stair, Units::Metric);
    let first = &plan.layouts[0];
    assert_eq!(counts(first), [1, 5, 1]);
    assert_eq!(lefts_mm(first), split("349, 762, 1124, 1487, 1849, 2211, 2574, 2936, 3273"));
    let raked = first.members.iter().find(|member| member.id == "C-4").expect("a board on the rake");
    assert!((raked.start.saw.get() - 32.56).abs() < 0.005);
    assert!((raked.first_edge.in_mm() - 795.2).abs() < 0.05);
    assert!((raked.length.exact.in_mm() - 836.1).abs() < 0.05);
    let rails: Vec<_> = first.members.iter().filter(|member| member.kind == MemberKind::TopRail).collect();
    assert!((rails[0].outline[2].x.in_mm() - 483.2).abs() < 0.05);
    assert!((rails[0].outline[1].x.in_mm() - 509.5).abs() < 0.05, "{}", rails[0].outline[1].x.in_mm());
}

#[test]
fn a_corner_that_is_not_square_is_told_with_what_it_moves() {
    let said = |angle: f64| {
        let mut wall = input(Wall::Windows, Units::Imperial);
        wall["survey"]["left"]["angle"] = json!(angle);
        let plan = plan(&crate::catalogue::read_as(wall).expect("a wall")).expect("a plan");
        let found = plan.layouts[0].conflicts.iter().find(|conflict| conflict.what == ConflictKind::Corner);
        found.map(|conflict| conflict.said.in_units(Units::Imperial))
    };
    // By hand, boards 3/4 thick: at 88.5° the front edge meets first, 0.0199 in further in; at 90.2° nothing that a tape shows.
    assert!(said(88.5).expect("told").contains("front first"));
    assert!(said(95.0).expect("told").contains("back first"));
    assert_eq!(said(90.2), None);
}

#[test]
fn the_sticks_of_the_whole_room() {
    let (mut boards, mut rails, mut fields) = (Vec::new(), Vec::new(), 0);
    for wall in Wall::ALL {
        let plan = planned(wall, Units::Imperial);
        for piece in &plan.layouts[0].pieces {
            if piece.rail {
                rails.push(piece.clone())
            } else {
                boards.push(piece.clone())
            }
            fields += usize::from(!piece.rail && piece.width == Length::sixty_fourths(160));
        }
    }
    assert_eq!((fields, boards.len(), rails.len()), (33, 35, 9));
    let length: Length =
        boards.iter().filter(|piece| piece.width == Length::sixty_fourths(160)).map(|piece| piece.length).sum();
    assert!((length.in_mm() / 304.8 - 117.4).abs() < 0.05);
    let length: Length = rails.iter().map(|piece| piece.length).sum();
    assert!((length.in_mm() / 25.4 - 551.7).abs() < 0.05);
}

fn conflict(layout: &Layout, what: ConflictKind) -> &Conflict {
    layout.conflicts.iter().find(|conflict| conflict.what == what).unwrap_or_else(|| panic!("{:#?}", layout.conflicts))
}
