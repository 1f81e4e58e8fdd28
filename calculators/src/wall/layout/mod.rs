//! How the boards of a wall are divided: things on it, boards that cannot move beside them, groups of bays between those, and how many
//! boards go into each.

mod columns;
mod groups;
mod neighbours;
mod placing;
mod search;
mod things;

pub use columns::{Column, columns};
pub use groups::{Cell, Edge, Group, groups};
pub use placing::{PlacedGroup, Taken, TakenBy, limits, place, taken};
pub use search::{Ask, Choice, candidates, evenest_by_total, offered};
pub use things::{Curve, Source, Thing, things};

use super::boarding::Boarding;
use super::corners::corner_board;
use super::defaults::Settled;
use super::geometry::Span;
use super::measured::Measured;
use super::scheme::WallInput;
use super::survey::EndKind;
use crate::quantity::{Exact, Length};

/// What is settled before anything is divided: the measured wall, its lines, and the wish.
#[derive(Clone, Copy)]
pub struct Ground<'a> {
    /// The whole input.
    pub input: &'a WallInput,
    /// The measured wall.
    pub wall: &'a Measured,
    /// The lines of the boarding.
    pub boarding: &'a Boarding,
    /// Filled-in settings.
    pub settled: &'a Settled,
    /// Where the wall begins and ends along the foot.
    pub ends: (Exact, Exact),
    /// The bay that decides which things are wide: the widest one that is wished, the wished one, or the one that a number of boards
    /// leaves on the bare wall.
    pub bay: Exact,
}

impl<'a> Ground<'a> {
    /// The ground of a wall.
    pub fn of(input: &'a WallInput, wall: &'a Measured, boarding: &'a Boarding, settled: &'a Settled) -> Self {
        let scheme = &input.scheme;
        let length = wall.length.exact();
        let given = scheme.bay_max.or(scheme.target_bay).map(|bay| bay.get().exact());
        let bay = given.unwrap_or_else(|| implied_bay(length, scheme.board_width.get(), scheme.boards.map(i64::from)));
        Self { input, wall, boarding, settled, ends: (Exact::ZERO, length), bay }
    }

    /// The width of a board.
    pub fn board(&self) -> Length {
        self.input.scheme.board_width.get()
    }

    /// Where boarding can be seen: from what another wall's boards leave at the left end to the same at the right one.
    pub fn seen(&self) -> Span {
        let start = |end| corner_board(end, &self.input.scheme).map_or(Exact::ZERO, |corner| corner.start);
        let survey = &self.input.survey;
        Span::new(self.ends.0 + start(&survey.left), self.ends.1 - start(&survey.right))
    }

    /// Whether a board stands at this kind of end.
    pub const fn takes_board(kind: EndKind) -> bool {
        !matches!(kind, EndKind::CasingBay | EndKind::OpenBay)
    }

    /// The heights of the field over a stretch: the lowest point of its foot and the highest of its top.
    pub fn field(&self, over: Span) -> Span {
        Span::new(self.boarding.foot.range(over).0, self.boarding.top.range(over).1)
    }
}

/// The bay that so many boards leave on the bare wall, between two end boards; with one board half of what it leaves.
fn implied_bay(length: Exact, board: Length, boards: Option<i64>) -> Exact {
    let boards = boards.unwrap_or(2).max(1);
    let left = length - board.exact() * boards;
    left.over((boards - 1).max(if boards == 1 { 2 } else { 1 })).unwrap_or(Exact::ZERO)
}
