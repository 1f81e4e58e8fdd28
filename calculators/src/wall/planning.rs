//! From a survey and a scheme to a wall plan.

mod finished;
mod offers;

use super::boarding::Boarding;
use super::check::{Broken, broken};
use super::defaults::Settled;
use super::faults::faults;
use super::layout::{Column, Ground, Group, Thing, columns, groups, things};
use super::measured::Measured;
use super::members::{BoardWork, RailRuns, rail_runs};
use super::plan::{Layout, WallPlan};
use super::scheme::WallInput;
use crate::catalogue::{Fault, Words};
use crate::fixing::studs;
use crate::quantity::{Exact, Length};
use crate::wall::geometry::{Rect, Span};

/// How many layouts are offered.
pub const OFFERED: usize = 3;

/// The plan of one wall: up to three layouts, the one to take first.
///
/// # Errors
/// Every rule that the input breaks, all at once.
pub fn plan(input: &WallInput) -> Result<WallPlan, Vec<Fault>> {
    let refused = faults(input);
    if !refused.is_empty() {
        return Err(refused);
    }
    let wall = Measured::of(&input.survey);
    let settled = Settled::of(&input.scheme, &input.stock);
    let boarding = Boarding::of(&input.survey, &input.scheme, &wall);
    let ground = Ground::of(input, &wall, &boarding, &settled);
    let base = Base::of(&ground);
    let layouts: Vec<Layout> = offers::ranked(&base)?
        .into_iter()
        .enumerate()
        .map(|(n, offer)| finished::layout(&base, offer, n + 1))
        .collect();
    let faulty: Vec<Fault> = layouts.iter().flat_map(|layout| broken(input, layout)).map(not_given).collect();
    if !faulty.is_empty() {
        return Err(faulty);
    }
    Ok(WallPlan {
        wall: input.survey.name.clone(),
        tape: settled.tape,
        length: wall.length,
        length_at: wall.length_at,
        floor_fall: wall.floor_fall(),
        notes: super::closing::survey_notes(&input.survey, settled.units()),
        layouts,
    })
}

/// A plan that breaks a rule is not given: our own fault, told plainly.
fn not_given(broken: Broken) -> Fault {
    let why = Words::new(
        "the plan that was worked out breaks a rule and is not given: {} ({}). Please report it with this survey",
    )
    .with(broken.rule)
    .with(broken.place.in_units(crate::quantity::Units::Metric));
    Fault::new("", "this wall", why, "the survey and the scheme, as they are")
}

/// What all layouts of a wall have in common.
struct Base<'a> {
    ground: &'a Ground<'a>,
    things: Vec<Thing>,
    columns: Vec<Column>,
    /// Rails that boards end on.
    rails: RailRuns,
    /// Groups that are shared out.
    boarded: Vec<Group>,
    /// Groups whose rows are all too low for boards, with those rows.
    bare: Vec<Rect>,
    /// Strips too narrow for a board and a bay.
    strips: Vec<Group>,
    studs: Vec<Length>,
}

impl<'a> Base<'a> {
    fn of(ground: &'a Ground<'a>) -> Self {
        let things = things(ground);
        let columns = columns(ground, &things);
        let rails = rail_runs(ground, &things, &columns, None);
        let mut base = Self {
            ground,
            columns,
            rails,
            boarded: Vec::new(),
            bare: Vec::new(),
            strips: Vec::new(),
            studs: stud_centres(ground.input, ground.wall),
            things,
        };
        for group in groups(ground, &base.things, &base.columns) {
            if group.is_strip(ground) {
                base.strips.push(group);
            } else if base.is_worth_boarding(&group) {
                base.boarded.push(group);
            } else {
                let bare = base.rows(&group);
                base.bare.extend(bare);
            }
        }
        base
    }

    /// What boards are cut between.
    fn board_work(&self) -> BoardWork<'_> {
        BoardWork {
            ground: self.ground,
            things: &self.things,
            rails: &self.rails.runs,
            bare: &self.rails.bare,
            studs: &self.studs,
        }
    }

    /// A row worth boarding is higher than a board is wide, at its highest place.
    fn is_worth_boarding(&self, group: &Group) -> bool {
        let board = self.ground.board();
        let heights: Vec<Span> = group.cells.iter().map(|cell| cell.heights).collect();
        let work = self.board_work();
        looks(group.span)
            .into_iter()
            .any(|strip| work.rows(strip, &heights).iter().any(|row| board.exact() < row.height(strip.middle())))
    }

    /// The rows of a group as rectangles, at its middle.
    fn rows(&self, group: &Group) -> Vec<Rect> {
        let heights: Vec<Span> = group.cells.iter().map(|cell| cell.heights).collect();
        let [_, middle, _] = looks(group.span);
        let rows = self.board_work().rows(middle, &heights);
        rows.iter().map(|row| Rect::new(group.span, row.heights(middle.middle()))).collect()
    }
}

/// Hair-thin strips at the left, in the middle and at the right of a stretch.
fn looks(span: Span) -> [Span; 3] {
    let hair = Length::um(1);
    let middle = span.middle();
    [Span::new(span.from, span.from + hair), Span::new(middle, middle + hair), Span::new(span.to - hair, span.to)]
}

fn stud_centres(input: &WallInput, wall: &Measured) -> Vec<Length> {
    let Some(found) = &input.survey.studs else { return Vec::new() };
    let mut centres: Vec<Length> = found.found.iter().map(|centre| centre.get()).collect();
    if let Some((first, spacing)) = found.first.zip(found.spacing) {
        centres.extend(studs::centres(first.get(), spacing.get(), wall.length));
    }
    centres.sort_unstable();
    centres.dedup();
    centres
}

/// All lengths of some stretches together.
fn total(lengths: impl IntoIterator<Item = Exact>) -> Exact {
    lengths.into_iter().fold(Exact::ZERO, |sum, length| sum + length)
}

#[cfg(test)]
mod tests;
