//! Boards at their places: the counts of a layout in their groups, moved off plates as far as the leeway allows.

use super::{Ground, Group, Source, Thing, columns::step_places, groups::heights};
use crate::quantity::{Exact, Length};
use crate::wall::clash::{FilledRun, Limits};
use crate::wall::defaults::Settled;
use crate::wall::geometry::Span;

/// Something that a board must keep off, with its clearance on both sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Taken {
    /// What it is.
    pub what: TakenBy,
    /// Left edge of the thing itself.
    pub left: Exact,
    /// Right edge of the thing itself.
    pub right: Exact,
    /// Lowest edge, its clearance included.
    pub bottom: Exact,
    /// Highest edge, its clearance included.
    pub top: Exact,
    /// Clear wall that it needs on both sides.
    pub clearance: Length,
}

/// What takes a place on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TakenBy {
    /// A box, by its index in the survey.
    Box(usize),
    /// A narrow opening, by its index in the survey.
    Opening(usize),
    /// A narrow part to be kept clear, by its index in the survey.
    KeepClear(usize),
    /// A step of the floor or the ceiling.
    Step,
}

impl Taken {
    /// The stretch that no board may touch.
    pub fn stretch(&self) -> (Exact, Exact) {
        (self.left - self.clearance, self.right + self.clearance)
    }

    /// Its heights.
    pub fn heights(&self) -> Span {
        Span::new(self.bottom, self.top)
    }
}

/// One group with its boards, before and after plates were cleared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlacedGroup {
    /// The group's stretch and its count.
    pub filled: FilledRun,
    /// What takes places along it.
    pub taken: Vec<Taken>,
    /// Left edges in the end.
    pub lefts: Vec<Exact>,
    /// Indexes into `taken` of what could not be cleared.
    pub left_over: Vec<usize>,
}

impl PlacedGroup {
    /// The widths of its bays in the end, from left to right.
    pub fn bays(&self) -> Vec<Exact> {
        self.filled.bays(&self.lefts)
    }
}

/// So many boards in one group, kept off whatever stands at the heights of its cells.
pub fn place(ground: &Ground<'_>, group: &Group, boards: usize, all: &[Taken]) -> PlacedGroup {
    let filled = FilledRun { left: group.span.from, right: group.span.to, board: ground.board(), boards };
    let heights = heights(group);
    let taken: Vec<Taken> = all
        .iter()
        .filter(|taken| {
            let (from, to) = taken.stretch();
            let field = ground.field(Span::new(from.max(group.span.from), to.min(group.span.to)));
            from < group.span.to
                && group.span.from < to
                && heights.iter().any(|cell| cell.shared(field).overlaps(taken.heights()))
        })
        .copied()
        .collect();
    let stretches: Vec<(Exact, Exact)> = taken.iter().map(Taken::stretch).collect();
    let cleared = filled.cleared(&stretches, limits(&filled, ground.settled));
    PlacedGroup { filled, taken, lefts: cleared.lefts, left_over: cleared.left_over }
}

/// The leeway of one run.
pub fn limits(run: &FilledRun, settled: &Settled) -> Limits {
    Limits { shift: settled.max_shift, change: settled.change_limit(run.bay()), step: settled.tape.step() }
}

/// Everything on the wall that boards must keep off, by left edge, then bottom; boxes for which something was agreed are not among it.
pub fn taken(ground: &Ground<'_>, things: &[Thing]) -> Vec<Taken> {
    let survey = &ground.input.survey;
    let boxes = survey.boxes.iter().enumerate().filter(|(_, plate)| plate.agreed.is_none()).map(|(n, plate)| Taken {
        what: TakenBy::Box(n),
        left: plate.left.get().exact(),
        right: plate.right.get().exact(),
        bottom: plate.bottom.get().exact(),
        top: plate.top.get().exact(),
        clearance: ground.settled.clearance,
    });
    let narrow = things.iter().filter(|thing| !thing.wide).map(|thing| Taken {
        what: match thing.source {
            Source::Opening(n) => TakenBy::Opening(n),
            Source::KeepClear(n) => TakenBy::KeepClear(n),
        },
        left: thing.own.x.from,
        right: thing.own.x.to,
        bottom: thing.heights().from,
        top: thing.heights().to,
        clearance: thing.clearance,
    });
    let steps = step_places(ground).into_iter().map(|at| {
        let field = ground.field(Span::new(at - Length::mm(1), at + Length::mm(1)));
        Taken { what: TakenBy::Step, left: at, right: at, bottom: field.from, top: field.to, clearance: Length::ZERO }
    });
    let mut found: Vec<Taken> = boxes.chain(narrow).chain(steps).collect();
    found.sort_by_key(|taken| (taken.left, taken.bottom));
    found
}
