//! What can be done where a plate and a board meet, ranked: leave it, shift, another count, a wide board, a notch, move the box.

use super::clash::{FilledRun, Need};
use super::defaults::{CUT_CLEARANCE, LONGEST_NOTCH, Settled};
use super::layout::{Taken, TakenBy, limits};
use super::notch::{Meeting, carrying_width, meeting};
use super::plan::{Action, Choice};
use super::scheme::Material;
use crate::catalogue::Words;
use crate::quantity::{Exact, Length};

/// A plate and the board that it meets.
#[derive(Clone, Copy, Debug)]
pub struct PlateCase<'a> {
    /// The plate.
    pub plate: &'a Taken,
    /// Left and right edge of the board.
    pub board: (Exact, Exact),
    /// The run of the board and its number in it, counted from 0; none for a board that cannot move.
    pub run: Option<(&'a FilledRun, usize)>,
    /// Narrowest and widest bay wished for.
    pub bay_limits: (Exact, Exact),
    /// What the board is made of.
    pub material: Material,
    /// Filled-in settings.
    pub settled: &'a Settled,
}

/// The ways to settle a plate that the leeway could not clear, best first.
pub fn choices(case: &PlateCase<'_>) -> Vec<Choice> {
    let mut choices = vec![leave(case)];
    match case.run {
        Some((run, board)) => {
            choices.push(shift(case, run, board));
            choices.extend([-1_i64, 1].into_iter().filter_map(|by| change_count(case, run, by)));
        }
        None => choices.push(choice(
            Action::Shift,
            false,
            Words::new("the board stands at a corner, a nosing or an opening and cannot move"),
        )),
    }
    if matches!(case.plate.what, TakenBy::Box(_)) {
        choices.push(wide_board(case));
        choices.push(notch(case));
        choices.push(choice(
            Action::MoveBox,
            true,
            Words::new("an electrician moves the box; agree it before the drawing is signed"),
        ));
    } else {
        choices.push(choice(
            Action::KeepOut,
            true,
            Words::new("leave the board out here, or stop it short of the clearance"),
        ));
    }
    choices.sort_by_key(|choice| !choice.allowed);
    choices
}

fn choice(action: Action, allowed: bool, words: Words) -> Choice {
    Choice { action, allowed, applied: false, words }
}

fn leave(case: &PlateCase<'_>) -> Choice {
    let words = match meeting(case.board, (case.plate.left, case.plate.right), Length::ZERO) {
        Meeting::Clear(gap) => {
            Words::new("only {} stays clear, where {} is wanted").with(gap).with(case.plate.clearance)
        }
        Meeting::Edge { overlap, .. } => {
            Words::new("the plate would lie half on the board, {} over its edge").with(overlap)
        }
        Meeting::Across => Words::new("the plate is wider than the board and would rock on it"),
        Meeting::Within(left) => Words::new("the plate lies within the board, {} from its edge").with(left),
    };
    let flat = matches!(meeting(case.board, (case.plate.left, case.plate.right), Length::ZERO), Meeting::Within(left)
        if case.settled.edge_radius + margin(case) <= left.down_to(Length::from_nm(1)));
    choice(Action::Leave, flat, words)
}

fn margin(case: &PlateCase<'_>) -> Length {
    CUT_CLEARANCE.in_units(case.settled.units())
}

fn shift(case: &PlateCase<'_>, run: &FilledRun, board: usize) -> Choice {
    let limits = limits(run, case.settled);
    match run.need(board, case.plate.stretch(), limits.step) {
        None => choice(Action::Shift, false, Words::new("there is no room in the run to move the board clear")),
        Some(Need { shift, change, bays }) => {
            let percent = libm::round(change.ratio_to(run.bay()) * 100.0);
            let words = Words::new("it would take {} and leave bays of {} and {}, {} % apart; allowed are {} and {}")
                .with(shift.size())
                .with(bays.0)
                .with(bays.1)
                .with(percent)
                .with(limits.shift)
                .with(limits.change);
            choice(Action::Shift, shift.size() <= limits.shift && change <= limits.change, words)
        }
    }
}

/// One board more or less in the run: allowed when the bay stays within what is wished and the plate stays clear.
fn change_count(case: &PlateCase<'_>, run: &FilledRun, by: i64) -> Option<Choice> {
    let boards = usize::try_from(i64::try_from(run.boards).ok()? + by).ok()?;
    let other = FilledRun { boards, ..*run };
    let bay = other.bay();
    if !bay.is_positive() {
        return None;
    }
    let (narrowest, widest) = case.bay_limits;
    let lefts = other.lefts();
    let stretch = case.plate.stretch();
    let hit = lefts.iter().find(|left| **left < stretch.1 && stretch.0 < **left + other.board);
    let (allowed, words) = if bay < narrowest || widest < bay {
        let words = Words::new("{} boards in this run make bays of {}, outside {} to {}");
        (false, words.with(boards).with(bay).with(narrowest).with(widest))
    } else if let Some(left) = hit {
        let words = Words::new("{} boards in this run put one at {} to {}: it meets the plate too");
        (false, words.with(boards).with(*left).with(*left + other.board))
    } else {
        let far = run.bay().half() < (bay - run.bay()).size();
        let words = if far {
            Words::new("{} boards in this run clear it, but bays of {} beside {} will show")
        } else {
            Words::new("{} boards in this run clear it, with bays of {} instead of {}")
        };
        (!far, words.with(boards).with(bay).with(run.bay()))
    };
    Some(choice(Action::ChangeCount, allowed, words))
}

fn wide_board(case: &PlateCase<'_>) -> Choice {
    let width = carrying_width(case.plate.right - case.plate.left, margin(case), case.settled.edge_radius);
    let words = Words::new("one board at least {} wide, centred on the plate, carries it flat").with(width);
    choice(Action::WideBoard, true, words)
}

fn notch(case: &PlateCase<'_>) -> Choice {
    let longest = LONGEST_NOTCH.in_units(case.settled.units());
    let long = case.plate.top - case.plate.bottom + margin(case) * 2;
    if longest.exact() < long {
        let words = Words::new("a notch {} long is more than {}").with(long).with(longest);
        return choice(Action::Notch, false, words);
    }
    match meeting(case.board, (case.plate.left, case.plate.right), margin(case)) {
        Meeting::Edge { neck, .. } if case.settled.min_neck.exact() <= neck => {
            let words = Words::new("a notch leaves a neck of {}; at least {} is wanted");
            choice(Action::Notch, true, words.with(neck).with(case.settled.min_neck))
        }
        Meeting::Edge { neck, .. } => {
            let words = Words::new("a notch would leave a neck of {}, less than {}");
            choice(Action::Notch, false, words.with(neck).with(case.settled.min_neck))
        }
        Meeting::Clear(_) => choice(Action::Notch, false, Words::new("the plate does not reach the board")),
        Meeting::Across => {
            choice(Action::Notch, false, Words::new("the plate covers the whole board: no neck is left"))
        }
        Meeting::Within(_) => choice(
            Action::Notch,
            false,
            Words::new("the plate lies within the board: cut the box opening, not a notch"),
        ),
    }
}
