//! Groups of bays: free wall between two neighbouring columns, things or ends. Cells above each other with the same sides are one
//! group and get one count of boards, so that boards line through above and below a window.

use super::{Column, Ground, Thing};
use crate::quantity::Length;
use crate::wall::defaults::SMALLEST_BAY;
use crate::wall::geometry::{DEEP, HIGH, Span, united};

/// What lies at a side of a group.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// The end of the wall.
    End,
    /// A board that cannot move.
    Column,
    /// A thing, with no board beside it.
    Thing,
}

/// A stretch of heights at which a group's wall is free.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cell {
    /// Its heights; the field may end inside it.
    pub heights: Span,
    /// The things right below and above it.
    pub things: Vec<usize>,
}

/// Cells with the same sides.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Group {
    /// From side to side.
    pub span: Span,
    /// What lies at both sides of its lowest cell.
    pub edges: (Edge, Edge),
    /// Its cells from the bottom up.
    pub cells: Vec<Cell>,
}

impl Group {
    /// A strip beside a thing too narrow for a board and a bay: it stays bare and is told.
    pub fn is_strip(&self, ground: &Ground<'_>) -> bool {
        let least = ground.board() + SMALLEST_BAY.in_units(ground.settled.units());
        (self.edges.0 == Edge::Thing || self.edges.1 == Edge::Thing) && self.span.size() < least
    }

    /// Whether boards of this group stand on the foot of the boarding.
    pub fn on_foot(&self) -> bool {
        self.cells.first().is_some_and(|cell| cell.heights.from == DEEP)
    }
}

/// Something that bays end at, over some heights.
struct Blocker {
    span: Span,
    edge: Edge,
}

/// The groups of a wall, from left to right and from the bottom up.
pub fn groups(ground: &Ground<'_>, things: &[Thing], columns: &[Column]) -> Vec<Group> {
    let wide: Vec<&Thing> = things.iter().filter(|thing| thing.wide).collect();
    let mut heights = vec![DEEP, HIGH];
    for column in columns {
        heights.extend(column.reach.iter().flat_map(|reach| [reach.from, reach.to]));
    }
    for part in wide.iter().flat_map(|thing| &thing.parts) {
        heights.extend([part.y.from, part.y.to]);
    }
    heights.extend(wide.iter().filter_map(|thing| thing.head.as_ref().map(super::Curve::springing)));
    heights.sort_unstable();
    heights.dedup();
    let mut found: Vec<Group> = Vec::new();
    for pair in heights.windows(2) {
        let slab = Span::new(pair[0], pair[1]);
        for (span, edges) in stretches(ground, &wide, columns, slab) {
            add(&mut found, ground.settled.tape.step(), span, edges, slab);
        }
    }
    for group in &mut found {
        for cell in &mut group.cells {
            cell.things = beside(things, group.span, cell.heights);
        }
    }
    found.sort_by_key(|group| (group.span, group.cells.first().map(|cell| cell.heights.from)));
    found
}

/// The free stretches at the heights of a slab, each with what lies at its sides.
fn stretches(ground: &Ground<'_>, wide: &[&Thing], columns: &[Column], slab: Span) -> Vec<(Span, (Edge, Edge))> {
    let covers = |heights: Span| heights.covers(slab);
    let mut blockers: Vec<Blocker> = columns
        .iter()
        .filter(|column| column.reach.iter().any(|reach| covers(*reach)))
        .map(|column| Blocker { span: column.span, edge: Edge::Column })
        .collect();
    for thing in wide {
        for part in thing.parts.iter().filter(|part| covers(part.y)) {
            // Beside a curve the wall is free above the springing.
            let under = thing.head.as_ref().is_none_or(|curve| slab.to <= curve.springing());
            // A horn of a stool that a column runs past, cut by it, is not a side of its own.
            let horn = *part != thing.parts[0];
            let passed = horn && columns.iter().any(|column| column.span.overlaps(part.x) && column.stands(slab));
            if under && !passed {
                blockers.push(Blocker { span: part.x, edge: Edge::Thing });
            }
        }
    }
    blockers.sort_by_key(|blocker| (blocker.span, blocker.edge == Edge::Thing));
    let seen = ground.seen();
    let (mut from, mut edge) = (seen.from, Edge::End);
    let mut free = Vec::new();
    let mut push = |span: Span, edges: (Edge, Edge)| {
        if span.is_open() && ground.field(span).overlaps(slab) {
            free.push((span, edges));
        }
    };
    for blocker in blockers {
        if from < blocker.span.from {
            push(Span::new(from, blocker.span.from.min(seen.to)), (edge, blocker.edge));
        }
        if from <= blocker.span.to {
            (from, edge) = (blocker.span.to, blocker.edge);
        }
    }
    if from < seen.to {
        push(Span::new(from, seen.to), (edge, Edge::End));
    }
    free
}

fn add(found: &mut Vec<Group>, step: Length, span: Span, edges: (Edge, Edge), slab: Span) {
    match found.iter_mut().find(|group| group.span.agrees(span, step)) {
        Some(group) => match group.cells.last_mut() {
            Some(last) if last.heights.to == slab.from => last.heights.to = slab.to,
            _ => group.cells.push(Cell { heights: slab, things: Vec::new() }),
        },
        None => found.push(Group { span, edges, cells: vec![Cell { heights: slab, things: Vec::new() }] }),
    }
}

fn beside(things: &[Thing], span: Span, heights: Span) -> Vec<usize> {
    let ends_it = |thing: &Thing| {
        thing.whole.x.overlaps(span) && (thing.heights().to == heights.from || thing.heights().from == heights.to)
    };
    (0..things.len()).filter(|n| things[*n].wide && ends_it(&things[*n])).collect()
}

/// The heights of a group's cells within the field over its span, joined where they touch.
pub(super) fn heights(group: &Group) -> Vec<Span> {
    united(group.cells.iter().map(|cell| cell.heights))
}
