//! What is sawn: every stick adds up to its length, and every length is rounded the way that was asked for.

use calculators::quantity::Units;
use calculators::wall::practice_room::{self, Wall};
use serde_json::{Value, json};

use super::{list, nm, plain, with};

/// Whole nanometres of a stick that its pieces, its cuts, its two trimmed ends and its offcut do not account for.
///
/// By hand: between n pieces lie n − 1 cuts; what is left behind the last piece is parted from it by one cut more, which eats of
/// the rest, down to nothing. So either the rest is an offcut and n cuts were made, or there is none and it was all kerf.
fn not_accounted_for(stick: &Value, kerf: i64, trim: i64) -> i64 {
    let pieces = list(stick, "pieces");
    let cuts = i64::try_from(pieces.len()).expect("few") - 1;
    let used: i64 = pieces.iter().map(|piece| nm(&piece["length"])).sum();
    let rest = nm(&stick["stick"]) - 2 * trim - used - cuts * kerf;
    rest - nm(&stick["offcut"]) - rest.min(kerf)
}

#[test]
fn pieces_cuts_trims_and_offcut_add_up_to_each_stick() {
    let mut looked_at = 0;
    for units in [Units::Imperial, Units::Metric] {
        for wall in Wall::ALL {
            for (kerf, trim) in
                [(3_200_000, 12_000_000), (3_175_000, 12_700_000), (6_400_000, 0), (1_000_000, 50_000_000)]
            {
                let mm = |nm: i64| json!(format!("{} mm", nm as f64 / 1e6));
                let asked = with(
                    practice_room::input(wall, units),
                    &[("/stock/kerf", mm(kerf)), ("/stock/end_trim", mm(trim))],
                );
                let answer = tests::published::ask("wall-plan", asked);
                for section in list(&answer, "layouts").iter().flat_map(|layout| list(layout, "sticks")) {
                    for stick in list(section, "sticks") {
                        assert_eq!(
                            not_accounted_for(stick, kerf, trim),
                            0,
                            "{wall:?}, kerf {kerf}, trim {trim}: {stick}"
                        );
                        looked_at += 1;
                    }
                }
            }
        }
    }
    assert!(looked_at > 100, "only {looked_at} sticks were looked at");
}

#[test]
fn every_piece_of_the_wall_is_sawn_once_to_its_own_length() {
    for wall in Wall::ALL {
        let answer = tests::published::ask("wall-plan", practice_room::input(wall, Units::Imperial));
        for layout in list(&answer, "layouts") {
            let pair = |piece: &Value| (piece["label"].to_string(), nm(&piece["length"]));
            let mut asked: Vec<_> = list(layout, "pieces").iter().map(pair).collect();
            let sections = list(layout, "sticks");
            let mut sawn: Vec<_> = sections
                .iter()
                .flat_map(|section| list(section, "sticks"))
                .flat_map(|stick| list(stick, "pieces"))
                .map(pair)
                .collect();
            asked.sort();
            sawn.sort();
            let without: usize = sections.iter().map(|section| list(section, "without").len()).sum();
            assert_eq!(without, 0, "{wall:?}");
            assert_eq!(sawn, asked, "{wall:?}");
        }
    }
}

#[test]
fn lengths_never_over_lie_at_or_below_and_the_others_at_the_nearest_stop() {
    // The floor falls 7.1 mm over 4 m, so that the boards' exact lengths lie between the stops.
    let falling = with(plain(), &[("/survey/stations/1/datum_to_floor", json!(1007.1))]);
    let (mut shorter, mut longer) = (0, 0);
    for (rounding, most_over) in [("nearest", 0.5), ("never-over", 0.0)] {
        let asked = with(falling.clone(), &[("/scheme/rounding", json!(rounding))]);
        for cut in list(&super::layout(&asked), "cut_list").iter().filter(|cut| cut["kind"] == "board") {
            let pair = &cut["length"]["exact_nm"];
            let exact = pair[0].as_f64().expect("a number") / pair[1].as_f64().expect("a number") / 1e6;
            let over = cut["length"]["mm"].as_f64().expect("a length") - exact;
            assert!(over <= most_over + 1e-9 && over > most_over - 1.0 - 1e-9, "{rounding}: {over} mm over in {cut}");
            (shorter, longer) = (shorter + usize::from(over < -0.5), longer + usize::from(over > 0.0));
        }
    }
    assert!(
        shorter > 0,
        "no board is more than half a stop below its exact length: the two ways were never told apart"
    );
    assert!(longer > 0, "no board was rounded up to its nearest stop");
}
