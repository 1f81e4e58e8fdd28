//! Walls with every figure worked by hand: `tests/data/walls/worked.json` tells the arithmetic beside each.
//!
//! Plane geometry, and customs of the trade (common practice, no source) with defaults of this book.

use std::sync::LazyLock;

use calculators::catalogue::{FromNode, Printed, Shaped};
use calculators::quantity::{Exact, Length, Units};
use calculators::wall::plan::{Layout, Member, MemberKind, Severity, WallPlan};
use calculators::wall::planning::plan;
use calculators::wall::scheme::WallInput;
use serde_json::Value;

static WORKED: LazyLock<Value> = LazyLock::new(|| {
    serde_json::from_str(include_str!("../../data/walls/worked.json")).expect("the worked walls are JSON")
});

/// A wall of the file by its name, in the units it was worked in.
fn planned(wall: &Value) -> WallPlan {
    let units = if wall["units"] == "metric" { Units::Metric } else { Units::Imperial };
    let entry = calculators::catalogue::entry("wall-plan").expect("it is declared");
    let read = entry.read(&wall["input"], units).unwrap_or_else(|faults| panic!("{}: {faults:?}", wall["id"]));
    let input = WallInput::from_node(read).expect("typed");
    plan(&input).unwrap_or_else(|faults| panic!("{}: {faults:?}", wall["id"]))
}

/// Nanometres, whole or as a fraction.
fn nm(value: &Value) -> Exact {
    match value.as_str() {
        None => Length::from_nm(value.as_i64().expect("whole nanometres")).exact(),
        Some(text) => {
            let (top, bottom) = text.split_once('/').expect("a fraction");
            let part = |text: &str| text.parse::<i128>().expect("a number");
            Exact::of_parts(part(top), part(bottom)).expect("not over zero")
        }
    }
}

fn all(value: &Value) -> Vec<Exact> {
    value.as_array().expect("a list").iter().map(nm).collect()
}

fn near(name: &str, got: &[Exact], wanted: &[Exact], tolerance: i64) {
    let apart = |(one, other): (&Exact, &Exact)| (*one - *other).size() <= Length::from_nm(tolerance);
    let same = got.len() == wanted.len() && got.iter().zip(wanted).all(apart);
    let mm = |lengths: &[Exact]| lengths.iter().map(|length| length.in_mm()).collect::<Vec<_>>();
    assert!(same, "{name}: {:?} instead of {:?}", mm(got), mm(wanted));
}

fn boards(layout: &Layout) -> impl Iterator<Item = &Member> {
    layout.members.iter().filter(|member| member.position.is_some())
}

/// A value as answers tell it.
fn printed(value: &impl Shaped) -> Value {
    Printed(&value.node(), Units::Metric).to_value()
}

fn kind(member: &Member) -> String {
    member.kind.node().as_str().expect("a word").to_owned()
}

fn is_rail(member: &&Member) -> bool {
    use MemberKind::{HeadRail, MidRail, SillRail, TopRail};
    matches!(member.kind, TopRail | MidRail | SillRail | HeadRail)
}

fn member<'l>(layout: &'l Layout, label: &str) -> &'l Member {
    layout.members.iter().find(|member| member.id == label).unwrap_or_else(|| panic!("no {label}"))
}

fn sawn(layout: &Layout, label: &str) -> Exact {
    let piece = layout.pieces.iter().find(|piece| piece.label == label);
    piece.unwrap_or_else(|| panic!("no piece {label}")).length.exact()
}

fn unique(mut lengths: Vec<Exact>) -> Vec<Exact> {
    lengths.sort_unstable();
    lengths.dedup();
    lengths
}

fn tolerance(expect: &Value, key: &str) -> i64 {
    expect.get(key).and_then(Value::as_i64).unwrap_or(0)
}

/// One expectation of a wall; `false` for a key that is looked at with another or in a test of its own.
fn check(id: &str, key: &str, wanted: &Value, expect: &Value, layout: &Layout) -> bool {
    let at = format!("{id}, {key}");
    match key {
        "boards" => assert_eq!(Some(layout.boards as u64), wanted.as_u64(), "{at}"),
        "lefts" => {
            let lefts: Vec<Exact> = layout.positions.iter().map(|place| place.left).collect();
            near(&at, &lefts, &all(wanted), 0);
        }
        "first_left" => near(&at, &[layout.positions[0].left], &[nm(wanted)], 0),
        "runs" => near(&at, &layout.runs.iter().map(|run| run.right - run.left).collect::<Vec<_>>(), &all(wanted), 0),
        "bays" => near(&at, &unique(layout.runs.iter().map(|run| run.bay).collect()), &all(wanted), 0),
        "final_bays" => {
            let mut bays: Vec<(Exact, Exact)> = layout.bays.iter().map(|bay| (bay.left, bay.width)).collect();
            bays.sort_unstable();
            bays.dedup();
            near(&at, &bays.into_iter().map(|(_, width)| width).collect::<Vec<_>>(), &all(wanted), 0);
        }
        "spread" | "final_spread" => near(&at, &[layout.spread], &[nm(wanted)], 0),
        "best" => assert_eq!(layout.rank, 1, "{at}"),
        "lengths" => {
            let lengths: Vec<Exact> = boards(layout).map(|board| sawn(layout, &board.id)).collect();
            near(&at, &lengths, &all(wanted), 0);
        }
        "exact_lengths" => {
            near(&at, &boards(layout).map(|board| board.length.exact).collect::<Vec<_>>(), &all(wanted), 2_000);
        }
        "first_exact" => near(&at, &[boards(layout).next().expect("a board").length.exact], &[nm(wanted)], 2),
        "under_lengths" => {
            let under = boards(layout).filter(|board| board.kind == MemberKind::UnderBoard);
            near(&at, &unique(under.map(|board| sawn(layout, &board.id)).collect()), &all(wanted), 0);
        }
        "lengths_inner" => {
            let inner: Vec<Exact> = boards(layout).map(|board| sawn(layout, &board.id)).collect();
            near(&at, &inner[1..inner.len() - 1], &all(wanted), 0);
        }
        "outer_boards" => {
            let outer: Vec<&Member> = boards(layout).collect();
            for board in [outer[0], outer[outer.len() - 1]] {
                let mut edges = [board.first_edge, board.second_edge];
                edges.sort_unstable();
                edges.reverse();
                near(&at, &edges, &all(wanted), 0);
            }
        }
        "first_edges" => each(wanted, |label, edges| {
            let board = member(layout, label);
            near(&at, &[board.first_edge, board.second_edge], &all(edges), 2_000);
        }),
        "rails" => {
            each(wanted, |label, length| {
                let rail = member(layout, label);
                near(
                    &format!("{at} {label}"),
                    &[rail.length.exact],
                    &[nm(length)],
                    tolerance(expect, "rails_tolerance"),
                );
            });
            let kinds: Vec<&str> = keys(wanted).map(|label| label.rsplit_once('-').expect("a label").0).collect();
            let more = layout.members.iter().filter(is_rail).filter(|rail| {
                wanted.get(&rail.id).is_none() && kinds.contains(&rail.id.rsplit_once('-').expect("a label").0)
            });
            assert_eq!(more.map(|rail| rail.id.clone()).collect::<Vec<_>>(), Vec::<String>::new(), "{at}: more rails");
        }
        "rail_tops" => each(wanted, |word, tops| {
            let own = layout.members.iter().filter(is_rail).filter(|rail| kind(rail) == word);
            near(&format!("{at} {word}"), &unique(own.map(|rail| rail.outline[2].y).collect()), &all(tops), 0);
        }),
        "rail_cut" => each(wanted, |label, cut| near(&at, &[sawn(layout, label)], &[nm(cut)], 0)),
        "rail_not_over" => {
            for rail in layout.members.iter().filter(is_rail) {
                assert!(sawn(layout, &rail.id) <= rail.length.exact, "{at}: {}", rail.id);
            }
        }
        "rail_least" => {
            assert!(layout.members.iter().filter(is_rail).all(|rail| nm(wanted) <= rail.length.exact), "{at}");
        }
        "rail_short_point" => near(&at, &[member(layout, "V-top-1").second_edge], &[nm(wanted)], 0),
        "rail_length" => near(&at, &[layout.totals.rail_length], &[nm(wanted)], 0),
        "rail_pieces" => {
            let rails: Vec<&Member> = layout.members.iter().filter(is_rail).collect();
            assert_eq!(Some(rails.len() as u64), wanted["count"].as_u64(), "{at}");
            for rail in rails {
                near(&at, &[rail.length.exact, sawn(layout, &rail.id)], &[nm(&wanted["exact"]), nm(&wanted["cut"])], 0);
            }
        }
        "widths" => each(wanted, |label, width| {
            let own = boards(layout).filter(|board| board.id.split('.').next() == Some(label));
            for board in own {
                near(&at, &[board.width], &[nm(width)], 0);
            }
        }),
        "joint" => each(wanted, |label, studs| {
            let joints: Vec<Exact> = member(layout, label).joints.iter().map(|joint| joint.stud.exact()).collect();
            near(&at, &joints, &all(studs), 0);
        }),
        "pieces" => each(wanted, |label, length| {
            near(
                &format!("{at} {label}"),
                &[sawn(layout, label)],
                &[nm(length)],
                tolerance(expect, "pieces_tolerance"),
            );
        }),
        "kink_lower" | "kink_upper" => {
            let raked = member(layout, "V-top-2");
            let corner = if key == "kink_lower" { 3 } else { 2 };
            near(&at, &[raked.outline[corner].x], &[nm(wanted)], 2);
        }
        "mitre_degrees" => {
            let saw = member(layout, "V-top-2").start.saw.get();
            assert!((saw - wanted.as_f64().expect("degrees")).abs() < 0.001, "{at}: {saw}");
        }
        "saw" => {
            let (rail, board) = (member(layout, "V-top-1"), boards(layout).next().expect("a board"));
            for (saw, word) in [(rail.start.saw, "rail"), (rail.end.saw, "rail"), (board.end.saw, "board")] {
                assert!(
                    (saw.get() - wanted[word].as_f64().expect("degrees")).abs() < 0.001,
                    "{at}: {word} {}",
                    saw.get()
                );
            }
        }
        "cap" => {
            let caps: Vec<Exact> = layout
                .members
                .iter()
                .filter(|member| member.kind == MemberKind::Cap)
                .map(|member| member.length.exact)
                .collect();
            near(&at, &caps, &[nm(&wanted["front"]), nm(&wanted["return"]), nm(&wanted["return"])], 0);
        }
        "mouldings" => {
            let pieces: Vec<&Member> =
                layout.members.iter().filter(|member| member.kind == MemberKind::Moulding).collect();
            assert_eq!(Some(pieces.len() as u64), wanted["pieces"].as_u64(), "{at}");
            near(
                &at,
                &unique(pieces.iter().map(|piece| piece.length.exact).collect()),
                &all(&wanted["long_points"]),
                0,
            );
            near(
                &at,
                &unique(pieces.iter().map(|piece| piece.second_edge).collect()),
                &all(&wanted["short_points"]),
                0,
            );
            let total = pieces.iter().fold(Exact::ZERO, |sum, piece| sum + piece.length.exact);
            near(&at, &[total], &[nm(&wanted["total"])], 0);
            let mitres = pieces.iter().flat_map(|piece| [piece.start, piece.end]);
            let right = mitres.filter(|end| (end.saw.get() - 45.0).abs() < 1e-9).count();
            assert_eq!(Some(right as u64), wanted["mitres"].as_u64(), "{at}");
        }
        "free" | "keep_free" => {
            let zones = wanted.as_array().expect("a list");
            let zones = if zones[0].is_array() { zones.iter().map(all).collect() } else { vec![all(wanted)] };
            for (zone, member) in zones.iter().flat_map(|zone| layout.members.iter().map(move |member| (zone, member)))
            {
                let (x, y) = member.spans().expect("an outline");
                let inside = x.from < zone[2] && zone[0] < x.to && y.from < zone[3] && zone[1] < y.to;
                assert!(!inside, "{at}: {} stands inside", member.id);
            }
        }
        "no_settle" => {
            let settle: Vec<_> = layout.conflicts.iter().filter(|found| found.severity == Severity::Settle).collect();
            assert!(settle.is_empty(), "{at}: {settle:?}");
        }
        "told" => {
            for told in wanted.as_array().expect("a list") {
                let word = |found: &calculators::wall::plan::Conflict| printed(&found.what);
                let is = |found: &&calculators::wall::plan::Conflict| {
                    word(found) == told["what"]
                        && told.get("place").is_none_or(|place| found.place.to_vec() == all(place))
                        && told.get("members").is_none_or(|members| serde_json::json!(found.members) == *members)
                };
                assert_eq!(layout.conflicts.iter().filter(is).count(), 1, "{at}: {told}");
            }
        }
        "conflicts" => {
            for told in wanted.as_array().expect("a list") {
                let has = layout.conflicts.iter().any(|found| {
                    let parts = [
                        printed(&found.severity),
                        printed(&found.what),
                        printed(&found.box_index),
                        printed(&found.members),
                    ];
                    Value::from(parts.to_vec()) == *told
                });
                assert!(has, "{at}: {told}");
            }
        }
        "not_said" => {
            let text = printed(layout).to_string();
            for words in wanted.as_array().expect("a list") {
                assert!(!text.contains(words.as_str().expect("words")), "{at}: {words}");
            }
        }
        "stick_cost" => each(wanted, |width, cost| {
            let width = Length::from_nm(width.parse().expect("nanometres"));
            let own = layout.sticks.iter().filter(|plan| plan.width == width);
            assert_eq!(Some(own.map(|plan| plan.cost.minor()).sum::<i64>()), cost.as_i64(), "{at}");
        }),
        "curve_at" => {
            let opening = calculators::wall::layout::Curve::Arch {
                over: (Length::inches(30).exact(), Length::inches(70).exact()),
                springing: Length::inches(60),
                radius: Length::inches(20).in_mm(),
                centre: Length::inches(60).in_mm(),
            };
            each(wanted, |place, clear| {
                let x = Length::read(place, Units::Imperial).expect("a length");
                let head = Length::sixty_fourths(92 * 64 + 32).exact();
                near(&at, &[head - opening.at(x.exact())], &[nm(clear)], tolerance(expect, "tolerance"));
            });
            assert!(
                boards(layout).any(|board| board.end.cut == calculators::wall::plan::CutKind::Curve
                    || board.start.cut == calculators::wall::plan::CutKind::Curve),
                "{at}: a template is wanted"
            );
        }
        "adhesive" => {
            let line = layout.job.shopping.iter().find(|line| line.what == "adhesive").expect("a line");
            let count = u32::try_from(wanted.as_u64().expect("a count")).expect("few");
            assert_eq!(line.buy, calculators::catalogue::Figure::from(count), "{at}");
        }
        "price_incomplete" => {
            let missing: Vec<&str> = wanted.as_array().expect("a list").iter().filter_map(Value::as_str).collect();
            assert_eq!(layout.job.without_stick, missing, "{at}");
            assert!(layout.job.price.is_none(), "{at}: no total stands where pieces are missing");
        }
        "spread_after" | "tolerance" | "pieces_tolerance" | "rails_tolerance" => return false,
        _ => panic!("{at}: nothing looks at this"),
    }
    true
}

fn keys(value: &Value) -> impl Iterator<Item = &str> {
    value.as_object().expect("a group").keys().map(String::as_str)
}

fn each(value: &Value, look: impl Fn(&str, &Value)) {
    for (key, value) in value.as_object().expect("a group") {
        look(key, value);
    }
}

#[test]
fn every_figure_of_the_walls_worked_by_hand() {
    let mut looked = 0;
    for wall in WORKED["walls"].as_array().expect("walls") {
        let id = wall["id"].as_str().expect("a name");
        let plan = planned(wall);
        let expect = &wall["expect"];
        for (key, wanted) in expect.as_object().expect("a group") {
            looked += usize::from(check(id, key, wanted, expect, &plan.layouts[0]));
        }
    }
    assert!(looked >= 100, "only {looked} figures were looked at");
}
