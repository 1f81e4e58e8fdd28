//! The sheets against the pieces: marks, labels, parts, sticks.

use std::collections::{BTreeMap, BTreeSet};

use super::Broken;
use crate::quantity::{Exact, Length};
use crate::wall::defaults::{END_TRIM, KERF};
use crate::wall::plan::Layout;
use crate::wall::scheme::WallInput;

pub(super) fn check(input: &WallInput, layout: &Layout, found: &mut Vec<Broken>) {
    marks(layout, found);
    parts(layout, found);
    sticks(input, layout, found);
}

/// Every board is marked, each mark once from its exact place.
fn marks(layout: &Layout, found: &mut Vec<Broken>) {
    let mut marked = BTreeSet::new();
    for mark in layout.marks.iter().flat_map(|line| &line.marks) {
        marked.insert(mark.board);
        let place = layout.positions.iter().find(|position| position.number == mark.board);
        let right = place.is_some_and(|place| {
            let step = mark.left.tape.step().exact();
            let near = |reading: crate::quantity::Reading, exact: Exact| {
                reading.exact == exact && (reading.shown().exact() - exact).size() * 2 <= step
            };
            near(mark.left, place.left) && near(mark.right, place.right)
        });
        if !right {
            found.push(Broken::at("a mark is its exact place rounded once", &[]));
        }
    }
    if layout.positions.iter().any(|position| !marked.contains(&position.number)) {
        found.push(Broken::at("every board is marked", &[]));
    }
}

/// Labels are used once; every piece of the plan is on the list for the saw; parts of a joined rail add up to it.
fn parts(layout: &Layout, found: &mut Vec<Broken>) {
    let labels: BTreeSet<&str> = layout.pieces.iter().map(|piece| piece.label.as_str()).collect();
    let members: BTreeSet<&str> = layout.members.iter().map(|member| member.id.as_str()).collect();
    if labels.len() != layout.pieces.len() || members.len() != layout.members.len() {
        found.push(Broken::at("every label is used once", &[]));
    }
    for member in &layout.members {
        if member.joints.is_empty() {
            if !labels.contains(member.id.as_str()) {
                found.push(Broken::at("every piece is sawn", &[&member.id]));
            }
            continue;
        }
        let own = layout.pieces.iter().filter(|piece| {
            piece
                .label
                .strip_prefix(&member.id)
                .is_some_and(|part| !part.is_empty() && part.chars().all(char::is_alphabetic))
        });
        let (count, sum) = own.fold((0_i64, Length::ZERO), |(count, sum), piece| (count + 1, sum + piece.length));
        let laps = member.joints.iter().fold(Exact::ZERO, |sum, joint| sum + joint.lap);
        let stop = member.length.tape.step() * (count + 1);
        if count != i64::try_from(member.joints.len()).unwrap_or(0) + 1
            || (sum.exact() - laps - member.length.shown()).size() > stop
        {
            found.push(Broken::at("the parts of a rail add up to it", &[&member.id]));
        }
    }
}

/// Every piece lies on one stick or is named as without one; pieces, kerfs and trims go into their stick.
fn sticks(input: &WallInput, layout: &Layout, found: &mut Vec<Broken>) {
    if input.stock.sticks.is_empty() {
        return;
    }
    let units = input.scheme.tape.units();
    let kerf = input.stock.kerf.map_or(KERF.in_units(units), Length::from);
    let trim = input.stock.end_trim.map_or(END_TRIM.in_units(units), Length::from);
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    for plan in &layout.sticks {
        for stick in &plan.sticks {
            let count = i64::try_from(stick.pieces.len()).unwrap_or(0);
            let used = stick.pieces.iter().map(|piece| piece.length).sum::<Length>() + kerf * (count - 1).max(0);
            let trims = if stick.bad.is_empty() { trim * 2 } else { Length::ZERO };
            if stick.stick < used + trims {
                found.push(Broken::at("pieces, kerfs and trims go into their stick", &[]));
            }
            for piece in &stick.pieces {
                *seen.entry(piece.label.as_str()).or_default() += 1;
            }
        }
        for label in &plan.without {
            *seen.entry(label.as_str()).or_default() += 1;
        }
    }
    let once = layout.pieces.iter().all(|piece| seen.get(piece.label.as_str()) == Some(&1));
    if !once || seen.len() != layout.pieces.len() {
        found.push(Broken::at("every piece lies on one stick", &[]));
    }
}
