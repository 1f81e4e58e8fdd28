//! Things beside and above each other: which side of which thing asks for a board, and what stands in the gap between two of them.

use super::{Ground, Thing};
use crate::quantity::{Exact, Length};
use crate::wall::defaults::{FREE_SIDE, NARROWEST_RIP, SMALLEST_BAY};
use crate::wall::geometry::{Span, left_free};
use crate::wall::scheme::Stacked;

/// The left or the right side of a thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Hand {
    /// Its left side.
    Left,
    /// Its right side.
    Right,
}

/// A side of one or more things that asks for a board.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Side {
    /// Which side.
    pub(super) hand: Hand,
    /// The edge that the board stands tight to.
    pub(super) at: Exact,
    /// The things whose side it is.
    pub(super) things: Vec<usize>,
}

/// A gap that one board takes, as wide as the gap.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pier {
    /// The gap.
    pub(super) span: Span,
    /// The things beside it.
    pub(super) things: Vec<usize>,
    /// Whether the wall's left or right end is its other side.
    pub(super) end: Option<Hand>,
}

/// What stands beside the wide things of a wall.
pub(super) fn beside(ground: &Ground<'_>, things: &[Thing]) -> (Vec<Side>, Vec<Pier>) {
    let wide: Vec<usize> = (0..things.len()).filter(|n| things[*n].wide).collect();
    let piers = piers(ground, things, &wide);
    let mut sides = Vec::new();
    for hand in [Hand::Left, Hand::Right] {
        for cluster in clusters(ground, things, &wide, hand) {
            let taken = cluster.iter().any(|n| {
                piers.iter().any(|pier| pier.things.contains(n) && touches(pier, edge(&things[*n], hand), hand))
            });
            if taken || !cluster.iter().any(|n| asks(ground, things, *n, hand)) {
                continue;
            }
            let edges = cluster.iter().map(|n| edge(&things[*n], hand));
            let at = if hand == Hand::Left { edges.min() } else { edges.max() };
            sides.extend(at.map(|at| Side { hand, at, things: cluster }));
        }
    }
    (sides, piers)
}

fn touches(pier: &Pier, edge: Exact, hand: Hand) -> bool {
    match hand {
        Hand::Left => pier.span.to == edge,
        Hand::Right => pier.span.from == edge,
    }
}

fn edge(thing: &Thing, hand: Hand) -> Exact {
    match hand {
        Hand::Left => thing.sides().from,
        Hand::Right => thing.sides().to,
    }
}

/// The strip one board wide beside a thing's side.
pub(super) fn strip(at: Exact, hand: Hand, board: Length) -> Span {
    match hand {
        Hand::Left => Span::new(at - board, at),
        Hand::Right => Span::new(at, at + board),
    }
}

/// A side asks for a board where the strip beside it is free over some of the thing's own height.
fn asks(ground: &Ground<'_>, things: &[Thing], n: usize, hand: Hand) -> bool {
    let strip = strip(edge(&things[n], hand), hand, ground.board());
    if !ground.seen().covers(strip) {
        return false;
    }
    let own = things[n].parts[0].y;
    let others = things.iter().enumerate().filter(|(other, _)| *other != n).flat_map(|(_, other)| &other.parts);
    let taken = others.filter(|part| part.x.overlaps(strip)).map(|part| part.y);
    let least = FREE_SIDE.in_units(ground.settled.units());
    left_free(own, taken).iter().any(|free| least.exact() <= free.size())
}

/// Gaps of one inch up to two boards between things that share a height, and between a thing and an end of the wall.
fn piers(ground: &Ground<'_>, things: &[Thing], wide: &[usize]) -> Vec<Pier> {
    let units = ground.settled.units();
    let (least, most) = (NARROWEST_RIP.in_units(units), ground.board() * 2);
    let one_board = |gap: Span| gap.is_open() && least.exact() <= gap.size() && gap.size() <= most;
    let seen = ground.seen();
    let mut found = Vec::new();
    for (k, left) in wide.iter().copied().enumerate() {
        for end in [Hand::Left, Hand::Right] {
            let gap = match end {
                Hand::Left => Span::new(seen.from, things[left].sides().from),
                Hand::Right => Span::new(things[left].sides().to, seen.to),
            };
            let heights = things[left].heights();
            if one_board(gap) && !stands_between(things, wide, gap, heights, &[left]) {
                found.push(Pier { span: gap, things: vec![left], end: Some(end) });
            }
        }
        for right in wide.iter().copied().skip(k + 1).chain(wide.iter().copied().take(k)) {
            let gap = Span::new(things[left].sides().to, things[right].sides().from);
            if !one_board(gap) {
                continue;
            }
            let heights = shared_heights(ground, &things[left], &things[right], gap);
            let enough = FREE_SIDE.in_units(units).exact() <= heights.size();
            if enough && !stands_between(things, wide, gap, heights, &[left, right]) {
                found.push(Pier { span: gap, things: vec![left, right], end: None });
            }
        }
    }
    found
}

fn shared_heights(ground: &Ground<'_>, one: &Thing, other: &Thing, over: Span) -> Span {
    let over = if over.is_open() { over } else { one.whole.x.hull(other.whole.x) };
    one.heights().shared(other.heights()).shared(ground.field(over))
}

fn stands_between(things: &[Thing], wide: &[usize], gap: Span, heights: Span, but: &[usize]) -> bool {
    wide.iter()
        .filter(|n| !but.contains(n))
        .flat_map(|n| &things[*n].parts)
        .any(|part| part.x.overlaps(gap) && part.y.overlaps(heights))
}

/// Things whose sides one board serves: those above each other with sides less than a board and the smallest bay apart.
fn clusters(ground: &Ground<'_>, things: &[Thing], wide: &[usize], hand: Hand) -> Vec<Vec<usize>> {
    let near = ground.board() + SMALLEST_BAY.in_units(ground.settled.units());
    let mut clusters: Vec<Vec<usize>> = Vec::new();
    for n in wide.iter().copied() {
        let serves = |other: &usize| {
            (edge(&things[n], hand) - edge(&things[*other], hand)).size() < near
                && above_each_other(ground, things, wide, n, *other)
        };
        let joined = match ground.input.scheme.stacked {
            Stacked::OuterPair => clusters.iter().position(|cluster| cluster.iter().any(serves)),
            Stacked::OwnPairs => None,
        };
        match joined {
            Some(at) => {
                clusters[at].push(n);
                // Others may have been joined through this one.
                let mut rest = at + 1;
                while rest < clusters.len() {
                    if clusters[rest].iter().any(serves) {
                        let more = clusters.remove(rest);
                        clusters[at].extend(more);
                    } else {
                        rest += 1;
                    }
                }
            }
            None => clusters.push(vec![n]),
        }
    }
    clusters
}

/// Whether two wide things share a width and stand above each other with nothing between them.
pub(super) fn above_each_other(
    ground: &Ground<'_>,
    things: &[Thing],
    wide: &[usize],
    one: usize,
    other: usize,
) -> bool {
    let (low, high) =
        if things[one].heights().from < things[other].heights().from { (one, other) } else { (other, one) };
    let across = things[low].whole.x.shared(things[high].whole.x);
    let share = shared_heights(ground, &things[low], &things[high], across);
    if !across.is_open() || FREE_SIDE.in_units(ground.settled.units()).exact() <= share.size() {
        return false;
    }
    let between = Span::new(things[low].heights().to, things[high].heights().from);
    !stands_between(things, wide, across, between, &[low, high])
}
