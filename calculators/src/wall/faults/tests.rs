use super::*;
use crate::wall::planning::plan;
use crate::wall::practice_room::{self, Wall};
use serde_json::{Value, json};

/// The wall with windows, with some places changed, and the pointers of what is then wrong with it.
fn check(changes: &[(&str, Value)], pointers: &[&str]) {
    let mut wall = practice_room::input(Wall::Windows, Units::Imperial);
    for (pointer, value) in changes {
        match wall.pointer_mut(pointer) {
            Some(place) => *place = value.clone(),
            None => {
                let (parent, name) = pointer.rsplit_once('/').expect("a pointer");
                wall.pointer_mut(parent).expect("a parent")[name] = value.clone();
            }
        }
    }
    let input: WallInput = crate::catalogue::read_as(wall).expect("within the bounds of the fields");
    let found = plan(&input).err().unwrap_or_default();
    let found: Vec<_> = found.iter().map(|fault| fault.pointer.as_str()).collect();
    assert_eq!(found, pointers, "{changes:?}");
}

#[test]
fn every_rule_names_its_field() {
    check(&[], &[]);
    check(&[("/survey/stations/2/at", json!("50 in"))], &["/survey/stations/2/at"]);
    check(&[("/survey/stations/4/at", json!("230 in"))], &["/survey/stations/4/at"]);
    check(&[("/survey/stations/1/datum_to_floor", json!("46 in"))], &["/survey/stations/1/datum_to_floor"]);
    check(&[("/survey/openings/1/right", json!("240 in"))], &["/survey/openings/1/right", "/survey/boxes/0/left"]);
    check(&[("/survey/openings/1/left", json!("70 in"))], &["/survey/openings/1/left"]);
    check(&[("/survey/openings/0/right", json!("20 in"))], &["/survey/openings/0/right"]);
    check(&[("/survey/openings/0/top", json!("30 in"))], &["/survey/openings/0/top"]);
    check(&[("/survey/boxes/0/left", json!("170 in"))], &["/survey/boxes/0/left"]);
    check(&[("/survey/boxes/0/right", json!("204 in"))], &["/survey/boxes/0/right"]);
    check(&[("/survey/studs", json!({ "spacing": "16 in" }))], &["/survey/studs/first"]);
    check(&[("/survey/studs", json!({ "first": "300 in", "spacing": "16 in" }))], &["/survey/studs/first"]);
    check(&[("/survey/right", json!({ "kind": "outside-mitred" }))], &["/survey/right/angle"]);
    check(&[("/scheme/boards", json!(14))], &["/scheme/boards"]);
    check(&[("/scheme/target_bay", Value::Null)], &["/scheme/target_bay"]);
    check(&[("/scheme/target_bay", json!("48 in")), ("/scheme/bay_max", json!("20 in"))], &["/scheme/bay_max"]);
    check(&[("/scheme/leeway", json!({ "edge_radius": "1 in" }))], &["/scheme/leeway/edge_radius"]);
    check(&[("/scheme/rails/top", Value::Null)], &["/scheme/rails/top"]);
    check(&[("/scheme/rails/top", json!("8 in"))], &["/scheme/rails/top"]);
    check(&[("/scheme/rails/between", json!(["40 in", "30 in"]))], &["/scheme/rails/between/1"]);
    check(&[("/scheme/rails/between", json!(["60 in"]))], &["/scheme/rails/between/0"]);
    check(
        &[("/stock/sticks/0/length", json!("2 ft")), ("/stock/end_trim", json!("12 in"))],
        &["/stock/sticks/0/length"],
    );
}

#[test]
fn many_faults_come_all_at_once() {
    let mut wall = practice_room::input(Wall::Windows, Units::Imperial);
    let station = |n: usize| json!({ "at": format!("{} mm", 8_000 - n), "datum_to_floor": "60 in" });
    wall["survey"]["stations"] = (0..60).map(station).collect();
    let found = faults(&crate::catalogue::read_as(wall).expect("within the bounds of the fields"));
    // Sixty beyond the wall, fifty-nine out of order, sixty too far from the datum.
    assert_eq!(found.len(), 179);
    assert!(found.iter().all(|fault| !fault.instead.is_null()));
}
