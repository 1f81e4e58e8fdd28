//! What is in the way, what is left bare, what departs, and what to do about it, for one layout: from the outlines alone, in the order of
//! what stops work.

mod bays;
mod ends;
mod joints;
mod lines;
mod plates;
mod things;

use super::geometry::{Rect, Span};
use super::layout::{Column, Ground, Group, PlacedGroup, Thing};
use super::members::RailRuns;
use super::plan::{Action, Choice, Conflict, ConflictKind, Member, MemberKind, Position, Severity, StickPlan};
use crate::catalogue::Words;
use crate::quantity::{Exact, Length};

/// What findings are looked for in.
pub struct Findings<'a> {
    /// The wall, its lines and settings.
    pub ground: &'a Ground<'a>,
    /// What stands on the wall.
    pub things: &'a [Thing],
    /// Boards that cannot move.
    pub columns: &'a [Column],
    /// Wall whose rows are too low for boards.
    pub bare: &'a [Rect],
    /// Strips too narrow for a board and a bay.
    pub strips: &'a [Group],
    /// Narrowest and widest bay wished for.
    pub limits: (Exact, Exact),
    /// The groups with their boards.
    pub placed: &'a [PlacedGroup],
    /// Boards at their places.
    pub positions: &'a [Position],
    /// Every piece of trim.
    pub members: &'a [Member],
    /// Of each piece: for a board which end meets nothing, for a rail which end is closed.
    pub ends: &'a [[bool; 2]],
    /// Rails as they run, and what was left out.
    pub rails: &'a RailRuns,
    /// Bays that take no frame of mouldings though frames were asked for.
    pub unframed: &'a [Rect],
    /// Stud centres.
    pub studs: &'a [Length],
    /// The sticks.
    pub sticks: &'a [StickPlan],
}

/// Every finding, those to be settled first, then from left to right.
pub fn findings(scene: &Findings<'_>) -> Vec<Conflict> {
    let mut found = Vec::new();
    plates::shifted_or_left(scene, &mut found);
    plates::fixed_boards(scene, &mut found);
    plates::agreed(scene, &mut found);
    plates::rails_and_plates(scene, &mut found);
    things::clearances(scene, &mut found);
    things::ends_in_the_air(scene, &mut found);
    bays::outside_the_wish(scene, &mut found);
    bays::bare(scene, &mut found);
    bays::strips(scene, &mut found);
    lines::turns(scene, &mut found);
    lines::departures(scene, &mut found);
    lines::left_out(scene, &mut found);
    lines::unframed(scene, &mut found);
    joints::slivers(scene, &mut found);
    joints::joints(scene, &mut found);
    joints::own_stock(scene, &mut found);
    joints::without_a_stick(scene, &mut found);
    joints::rounded_down(scene, &mut found);
    ends::leans(scene, &mut found);
    ends::projections(scene, &mut found);
    ends::corners(scene, &mut found);
    found.sort_by_key(|conflict| (conflict.severity != Severity::Settle, conflict.place[0]));
    found
}

fn way(action: Action, words: Words) -> Choice {
    Choice { action, allowed: true, applied: false, words }
}

fn applied(action: Action, words: Words) -> Choice {
    Choice { action, allowed: true, applied: true, words }
}

/// A note or something to settle at a place, that concerns no box.
fn told(
    severity: Severity,
    what: ConflictKind,
    said: Words,
    options: Vec<Choice>,
    members: Vec<String>,
    place: Rect,
) -> Conflict {
    Conflict { severity, what, said, options, members, box_index: None, place: place.sides() }
}

impl Findings<'_> {
    fn pieces_of(&self, number: usize) -> impl Iterator<Item = &Member> {
        self.members.iter().filter(move |member| member.position == Some(number))
    }

    /// Labels of the pieces of a board that stand at some of these heights.
    fn labels(&self, number: usize, heights: Span) -> Vec<String> {
        self.pieces_of(number).filter(|piece| rect(piece).y.overlaps(heights)).map(|piece| piece.id.clone()).collect()
    }

    fn units(&self) -> crate::quantity::Units {
        self.ground.settled.units()
    }
}

/// Flat wood that a plate wants on each side of it.
fn carrying_margin(scene: &Findings<'_>) -> Length {
    super::defaults::CUT_CLEARANCE.in_units(scene.units()) + scene.ground.settled.edge_radius
}

/// The rectangle round a piece.
fn rect(piece: &Member) -> Rect {
    let nothing = Span::new(Exact::ZERO, Exact::ZERO);
    piece.spans().map_or(Rect::new(nothing, nothing), |(x, y)| Rect::new(x, y))
}

/// Rails and caps; a new base is no rail.
fn is_rail(member: &Member) -> bool {
    member.position.is_none() && member.kind != MemberKind::Base && member.kind != MemberKind::Moulding
}
