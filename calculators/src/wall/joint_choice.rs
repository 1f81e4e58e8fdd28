//! Joints chosen together with the stick plan: a joint moves to another stud when that saves money or a stick.

use std::convert::Infallible;

use super::defaults::Settled;
use super::members::along;
use super::plan::{Member, Piece};
use super::scheme::Stock;
use super::sticks::stick_plans;
use super::sums::pieces;
use crate::quantity::Length;
use crate::stock::long_members::{Verdict, best_choice};

/// Choices that are all tried for one wall; where there are more, joints move one after the other.
const MOST_TRIES: usize = 256;

/// Moves single joints to where the rails come out cheapest, then from fewest sticks. Where nothing is saved a joint stays where it is
/// best balanced; no two rails are joined on one stud.
pub fn choose_joints(members: &mut [Member], ends: &[[bool; 2]], stock: &Stock, settled: &Settled) {
    // The places of each joint that may move, the balanced one first.
    let places: Vec<(usize, Vec<Length>)> = members
        .iter()
        .enumerate()
        .filter_map(|(at, member)| {
            let balanced = member.joints.first()?.stud;
            let others = member.joint_places.iter().copied().filter(|&stud| stud != balanced);
            (!member.joint_places.is_empty()).then(|| (at, std::iter::once(balanced).chain(others).collect()))
        })
        .collect();
    if stock.sticks.is_empty() || places.is_empty() {
        return;
    }
    let mut best = outlay(members, ends, stock, settled);
    let ways: Vec<usize> = places.iter().map(|(_, studs)| studs.len()).collect();
    let mut tried = members.to_vec();
    let found = best_choice(&ways, MOST_TRIES, |choice| {
        choose(&mut tried, &places, choice);
        let now = if joined_apart(&tried) { outlay(&tried, ends, stock, settled) } else { best };
        let better = now < best;
        best = best.min(now);
        Ok::<_, Infallible>(if better { Verdict::Better } else { Verdict::Stays })
    });
    let Ok((choice, _)) = found;
    choose(members, &places, &choice);
}

fn choose(members: &mut [Member], places: &[(usize, Vec<Length>)], choice: &[usize]) {
    for ((member, studs), &way) in places.iter().zip(choice) {
        let stud = studs[way];
        let along = along_rail(&members[*member], stud);
        let joint = &mut members[*member].joints[0];
        (joint.stud, joint.along) = (stud, along);
    }
}

/// Where a stud lies along a rail, from its left long point.
fn along_rail(member: &Member, stud: Length) -> Length {
    let (from, to) = (member.outline[3], member.outline[2]);
    let degrees = libm::atan2((to.y - from.y).in_mm(), (to.x - from.x).in_mm()).to_degrees();
    along(member, degrees, stud)
}

/// Whether every joint has a stud of its own.
fn joined_apart(members: &[Member]) -> bool {
    let mut studs: Vec<Length> =
        members.iter().flat_map(|member| member.joints.iter().map(|joint| joint.stud)).collect();
    let joints = studs.len();
    studs.sort_unstable();
    studs.dedup();
    studs.len() == joints
}

/// Pieces without a stick, what the rails cost, and how many sticks they take.
fn outlay(members: &[Member], ends: &[[bool; 2]], stock: &Stock, settled: &Settled) -> (usize, i64, usize) {
    let rails: Vec<Piece> = pieces(members, ends, settled).into_iter().filter(|piece| piece.rail).collect();
    stick_plans(&rails, stock, settled).iter().fold((0, 0, 0), |(without, cost, sticks), plan| {
        (without + plan.without.len(), cost + plan.cost.minor(), sticks + plan.sticks.len())
    })
}

#[cfg(test)]
mod tests {
    use super::Length;
    use crate::catalogue::FromNode;
    use crate::quantity::Units;
    use crate::wall::planning::plan;
    use crate::wall::scheme::WallInput;
    use serde_json::json;

    fn rails(sticks: serde_json::Value) -> (Vec<Length>, usize) {
        let wall = json!({
            "survey": {
                "name": "J", "datum": 1000, "lengths": [{ "height": 0, "length": 5000 }],
                "stations": [{ "at": 0, "datum_to_floor": 1000 }],
                "base": { "height": 140, "thickness": 18 }, "left": { "kind": "inside-first" }, "right": { "kind": "inside-first" },
                "studs": { "first": 400, "spacing": 400 },
            },
            "scheme": { "board_width": 64, "board_thickness": 18, "target_bay": 330, "rails": { "width": 90, "top": 1200 }, "tape": "1 mm" },
            "stock": { "sticks": sticks, "kerf": 3, "end_trim": 0, "scarf_angle": 90 },
        });
        let entry = crate::catalogue::entry("wall-plan").expect("it is declared");
        let input: WallInput =
            WallInput::from_node(entry.read(&wall, Units::Metric).expect("a valid wall")).expect("typed");
        let layout = plan(&input).expect("a plan").layouts.remove(0);
        let studs = layout.members.iter().flat_map(|member| member.joints.iter().map(|joint| joint.stud)).collect();
        let sticks = layout
            .sticks
            .iter()
            .filter(|plan| plan.sticks.iter().any(|stick| stick.pieces.iter().any(|piece| piece.label.contains("top"))))
            .map(|plan| plan.sticks.len())
            .sum();
        (studs, sticks)
    }

    #[test]
    fn a_joint_leaves_the_middle_only_when_that_saves() {
        // By hand: a rail of 5000 with butt joints on studs at 400, 800, ... Two sticks of 3000 take it however it is joined: the balanced
        // joint, 2400 + 2600 or 2600 + 2400, stays. With an offcut of 2000 in the rack at no price, 3000 + 2000 saves a stick's money;
        // its joint is at 2000.
        let (balanced, _) = rails(json!([{ "length": 3000, "price": "10.00", "cut_for": "rails" }]));
        assert_eq!(balanced, [Length::mm(2_400)]);
        let rack = json!([
            { "length": 3000, "price": "10.00", "cut_for": "rails" }, { "length": 2000, "price": "0.00", "available": 1, "cut_for": "rails" },
        ]);
        let (moved, sticks) = rails(rack);
        assert_eq!((moved, sticks), (vec![Length::mm(2_000)], 2));
    }

    #[test]
    fn a_rail_is_joined_when_only_a_marked_stick_is_as_long() {
        // By hand: the 6000 in the rack has a knot from 2900 to 3100 and gives 2900 twice; the rail of 5000 needs a joint.
        let marked = json!([
            { "length": 3000, "price": "10.00", "cut_for": "rails" },
            { "length": 6000, "price": "0.00", "cut_for": "rails", "bad": [{ "from": 2900, "to": 3100 }] },
        ]);
        let (studs, sticks) = rails(marked);
        assert_eq!((studs, sticks), (vec![Length::mm(2_400)], 2));
    }
}
