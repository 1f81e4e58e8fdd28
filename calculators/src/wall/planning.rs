//! From a survey and a scheme to a wall plan.

use super::board_members::{BoardWork, board_members, rows_at};
use super::boarding::Boarding;
use super::conflicts::{Scene, conflicts};
use super::defaults::{CUT_CLEARANCE, PLATE_PENALTY, Settled};
use super::faults::faults;
use super::frame::{Frame, frame};
use super::job::{Job, job};
use super::joint_choice::choose_joints;
use super::marking::{cut_list, mark_lines, offsets};
use super::measured::Measured;
use super::notch::{Meeting, meeting};
use super::placing::{Placed, place, widen};
use super::plan::{Bay, Layout, Member, Notch, Run, Score, ScoreTerm, WallPlan};
use super::rail_members::{RailWork, rail_members};
use super::scheme::WallInput;
use super::search::{Ask, Choice, evenest_by_total, offered};
use super::sticks::stick_plans;
use super::sums::{Whole, nail_list, pieces, stud_hits, totals};
use super::survey::Agreed;
use crate::catalogue::{Fault, Words};
use crate::fixing::studs;
use crate::quantity::{Exact, Length};

/// How many layouts are offered.
pub const OFFERED: usize = 3;
/// How many of the best choices are tried against the plates before the offer is made.
const TRIED: usize = 8;

/// The plan of one wall: up to three layouts, the one to take first.
///
/// # Errors
/// Every rule that the input breaks, all at once.
pub fn plan(input: &WallInput) -> Result<WallPlan, Vec<Fault>> {
    let broken = faults(input);
    if !broken.is_empty() {
        return Err(broken);
    }
    let wall = Measured::of(&input.survey);
    let settled = Settled::of(&input.scheme, &input.stock);
    let boarding = Boarding::of(&input.survey, &input.scheme, &wall);
    let widest = input.scheme.bay_max.or(input.scheme.target_bay).map_or(wall.length, Length::from);
    let frame = frame(&input.survey, &input.scheme, &wall, &boarding, widest.exact());
    let centres = stud_centres(input, &wall);
    let base = Base { input, wall: &wall, settled: &settled, boarding: &boarding, frame: &frame, studs: &centres };
    let (ask, choices) = choices(&base)?;
    let layouts = ranked(&base, &ask, choices)
        .into_iter()
        .enumerate()
        .map(|(n, offer)| layout(&base, &ask, offer, n + 1))
        .collect();
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

/// What all layouts of a wall have in common.
struct Base<'a> {
    input: &'a WallInput,
    wall: &'a Measured,
    settled: &'a Settled,
    boarding: &'a Boarding,
    frame: &'a Frame,
    studs: &'a [Length],
}

/// A choice on the wall, with what it costs.
struct Offer {
    choice: Choice,
    placed: Placed,
    score: Score,
    reason: Words,
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

/// What is searched for, and the evenest choice of every total; or why no bay can exist.
fn choices(base: &Base<'_>) -> Result<(Ask, Vec<Choice>), Vec<Fault>> {
    let scheme = &base.input.scheme;
    let board = scheme.board_width.get();
    let runs: Vec<Exact> = base.frame.runs.iter().map(|run| run.right - run.left).collect();
    let clear = runs.iter().fold(Exact::ZERO, |sum, run| sum + *run);
    let fixed = base.frame.fixed.len();
    let Some(longest) = runs.iter().max().copied() else {
        let why = Words::new("boards of {} at the ends and openings leave no bay on a wall of {}")
            .with(board)
            .with(base.wall.length);
        let instead = Words::new("{}").with(base.wall.length.exact().times(1, 6).unwrap_or(Exact::ZERO));
        return Err(vec![Fault::new("/scheme/board_width", Words::new("{}").with(board), why, instead)]);
    };
    let wished = scheme.boards.map(|boards| usize::try_from(boards.get()).unwrap_or(usize::MAX));
    let target = match (scheme.target_bay, wished) {
        (Some(target), _) => {
            if longest < target.get() {
                let why = Words::new("no run of this wall is that wide; the longest between fixed boards is {}")
                    .with(longest);
                let instead = Words::new("{}").with(longest.half());
                return Err(vec![Fault::new("/scheme/target_bay", Words::new("{}").with(target), why, instead)]);
            }
            target.get().exact()
        }
        (None, wished) => counted_bay(wished.unwrap_or(fixed), fixed, clear, runs.len(), board)
            .filter(|bay| *bay >= Length::mm(10))
            .ok_or_else(|| impossible_count(base, wished.unwrap_or(0), fixed, clear))?,
    };
    let share = |top: i64| target.times(top, 13).unwrap_or(target);
    let ask = Ask {
        bay_min: scheme.bay_min.map_or(share(7), |bay| bay.get().exact()),
        bay_max: scheme.bay_max.map_or(share(22), |bay| bay.get().exact()),
        runs,
        board,
        target,
    };
    let found = evenest_by_total(&ask);
    if let Some(wished) = wished.filter(|wished| !found.iter().any(|choice| choice.total + fixed == *wished)) {
        return Err(impossible_count(base, wished, fixed, clear));
    }
    Ok((ask, found))
}

/// The mean bay when so many boards stand on the wall, fixed ones included.
fn counted_bay(boards: usize, fixed: usize, clear: Exact, runs: usize, board: Length) -> Option<Exact> {
    let field = i64::try_from(boards.checked_sub(fixed)?).ok()?;
    let bays = field.checked_add(i64::try_from(runs).ok()?)?;
    (clear - board.exact() * field).over(bays)
}

fn impossible_count(base: &Base<'_>, wished: usize, fixed: usize, clear: Exact) -> Vec<Fault> {
    let board = base.input.scheme.board_width.get();
    let why = Words::new("{} boards stand fixed at ends and openings, and {} of clear wall is left for the others of {}; no even bays come of this number")
        .with(fixed)
        .with(clear)
        .with(board);
    let pitch = Length::mm(330) + board;
    let usual = clear.nearest(Length::from_nm(1)).whole_parts(pitch);
    let instead = i64::try_from(fixed).unwrap_or(0) + usual.max(1);
    vec![Fault::new("/scheme/boards", Words::new("{}").with(wished), why, instead)]
}

/// The layouts to offer, the one to take first.
fn ranked(base: &Base<'_>, ask: &Ask, choices: Vec<Choice>) -> Vec<Offer> {
    let fixed = base.frame.fixed.len();
    let wished = base.input.scheme.boards.map(|boards| usize::try_from(boards.get()).unwrap_or(usize::MAX));
    let candidates = offered(choices, ask.target, TRIED);
    let evenest = candidates.iter().min_by_key(|choice| choice.spread).map(|choice| choice.total);
    let mut offers: Vec<Offer> = candidates
        .into_iter()
        .map(|choice| {
            let placed = place(base.frame, &choice.counts, &base.input.survey, &base.input.scheme, base.settled);
            let score = score(&choice, ask, &placed, base.settled);
            Offer { choice, placed, score, reason: Words::new("") }
        })
        .collect();
    offers.sort_by_key(|offer| {
        (wished.is_some_and(|wished| offer.choice.total + fixed != wished), offer.score.total, offer.choice.total)
    });
    // The evenest of all is shown second, so that the price of evenness can be seen; it is first only by its own score.
    if let Some(at) = offers.iter().position(|offer| Some(offer.choice.total) == evenest).filter(|at| *at > 1) {
        let even = offers.remove(at);
        offers.insert(1, even);
    }
    offers.truncate(OFFERED);
    let first = offers.first().map(|offer| (offer.choice.total, offer.choice.spread));
    for (n, offer) in offers.iter_mut().enumerate() {
        offer.reason = reason(n, &offer.choice, ask, first, evenest, wished.is_some());
    }
    offers
}

fn score(choice: &Choice, ask: &Ask, placed: &Placed, settled: &Settled) -> Score {
    let penalty = PLATE_PENALTY.in_units(settled.units()).exact();
    let plates = i64::try_from(placed.left_over()).unwrap_or(i64::MAX);
    let term = |name: &'static str, measure: Exact, weight: i64| ScoreTerm {
        name: Words::new(name),
        measure,
        weight,
        adds: measure * weight,
    };
    let terms = vec![
        term("widest bay less narrowest", choice.spread, 1),
        term("mean bay off the wish", choice.off(ask.target), 1),
        term("plates left in the way", penalty, plates),
    ];
    let total = terms.iter().fold(Exact::ZERO, |total, term| total + term.adds);
    Score { terms, total }
}

fn reason(
    n: usize,
    choice: &Choice,
    ask: &Ask,
    first: Option<(usize, Exact)>,
    evenest: Option<usize>,
    counted: bool,
) -> Words {
    let even = evenest == Some(choice.total);
    let (best, best_spread) = first.unwrap_or((choice.total, choice.spread));
    let more = i64::try_from(choice.total).unwrap_or(0) - i64::try_from(best).unwrap_or(0);
    if n == 0 {
        return match (counted, even) {
            (true, _) => Words::new("the number of boards you asked for, as even as it gets"),
            (false, true) => Words::new("nearest to your bay of {}, and the evenest").with(ask.target),
            (false, false) => {
                Words::new("nearest to your bay of {}; its bays differ by {}").with(ask.target).with(choice.spread)
            }
        };
    }
    let boards = if more.abs() == 1 { "board" } else { "boards" };
    let count = if more > 0 { format!("{more} more {boards}") } else { format!("{} fewer {boards}", -more) };
    if even && choice.spread < best_spread {
        return Words::new("the evenest of all, {} between bays, but {} with bays near {}")
            .with(choice.spread)
            .with(count)
            .with(choice.mean);
    }
    Words::new("{} with bays near {}; they differ by {}").with(count).with(choice.mean).with(choice.spread)
}

fn layout(base: &Base<'_>, ask: &Ask, offer: Offer, rank: usize) -> Layout {
    let Offer { choice, placed, score, reason } = offer;
    let Placed { mut positions, runs } = placed;
    widen(&mut positions, &base.input.survey, base.settled);
    let scheme = &base.input.scheme;
    let (rails, crowded) = rail_members(&RailWork {
        input: base.input,
        wall: base.wall,
        boarding: base.boarding,
        frame: base.frame,
        settled: base.settled,
        studs: base.studs,
    });
    let work = BoardWork {
        survey: &base.input.survey,
        scheme,
        wall: base.wall,
        boarding: base.boarding,
        frame: base.frame,
        settled: base.settled,
        studs: base.studs,
        rails: &rails,
    };
    let mut members: Vec<Member> = positions.iter().flat_map(|position| board_members(position, &work)).collect();
    let bays = bays(&runs, &positions, &work);
    let offsets = offsets(base.input, base.wall, base.boarding, &rails, base.settled);
    members.extend(rails);
    notch(&mut members, base);
    choose_joints(&mut members, &base.input.stock, base.settled);
    let found = conflicts(&Scene {
        input: base.input,
        wall: base.wall,
        frame: base.frame,
        settled: base.settled,
        bay_limits: (ask.bay_min, ask.bay_max),
        positions: &positions,
        runs: &runs,
        members: &members,
        crowded: &crowded,
    });
    let pieces = pieces(&members, base.settled);
    let mut layout = Layout {
        rank,
        reason,
        boards: positions.len(),
        runs: base
            .frame
            .runs
            .iter()
            .zip(&runs)
            .map(|(run, placed)| Run {
                left: run.left,
                right: run.right,
                boards: placed.filled.boards,
                bays: placed.filled.boards + 1,
                bay: placed.filled.bay(),
                opening: run.stopper,
            })
            .collect(),
        spread: choice.spread,
        mean_bay: choice.mean,
        score,
        bays,
        marks: mark_lines(&positions, &members, base.boarding, base.frame, base.settled),
        offsets,
        cut_list: cut_list(&members, &positions, base.wall),
        conflicts: found,
        studs: stud_hits(&positions, base.studs, base.settled),
        nails: nail_list(&members, base.input, base.settled),
        sticks: stick_plans(&pieces, &base.input.stock, base.settled),
        pieces,
        totals: totals(&Whole {
            input: base.input,
            wall: base.wall,
            boarding: base.boarding,
            frame: base.frame,
            positions: &positions,
            members: &members,
        }),
        positions,
        members,
        job: Job::default(),
    };
    layout.job = job(&layout, &base.input.shop, base.settled.units());
    layout
}

/// Every clear bay in every row.
fn bays(runs: &[super::placing::PlacedRun], positions: &[super::plan::Position], work: &BoardWork<'_>) -> Vec<Bay> {
    let mut bays = Vec::new();
    for run in runs {
        // Boards widened for a plate stand wider than the run's own.
        let edges =
            positions.iter().filter(|position| run.filled.left <= position.left && position.right <= run.filled.right);
        let inside: Vec<_> = edges.filter(|position| position.why == super::plan::Standing::Field).collect();
        let starts = [run.filled.left].into_iter().chain(inside.iter().map(|position| position.right));
        let ends = inside.iter().map(|position| position.left).chain([run.filled.right]);
        for (left, right) in starts.zip(ends) {
            let width = right - left;
            if !width.is_positive() {
                continue;
            }
            let centre = (left + right).half();
            for (low, high) in rows_at(left, right, work) {
                let height = high.at(centre) - low.at(centre);
                bays.push(Bay { left, width, height, bottom: low.at(centre), proportion: height.ratio_to(width) });
            }
        }
    }
    bays.sort_by_key(|bay| (bay.left, bay.bottom));
    bays
}

/// Cuts the notches that were agreed, where enough wood is left beside them.
fn notch(members: &mut [Member], base: &Base<'_>) {
    let clearance = CUT_CLEARANCE.in_units(base.settled.units());
    for plate in base.input.survey.boxes.iter().filter(|plate| plate.agreed == Some(Agreed::Notch)) {
        let (left, right) = (plate.left.get().exact(), plate.right.get().exact());
        let (bottom, top) = (plate.bottom.get().exact(), plate.top.get().exact());
        for member in members.iter_mut().filter(|member| member.position.is_some()) {
            let heights = || member.outline.iter().map(|point| point.y);
            let stands = heights().min().zip(heights().max()).is_some_and(|(low, high)| low < top && bottom < high);
            let xs = || member.outline.iter().map(|point| point.x);
            let Some(board) = xs().min().zip(xs().max()).filter(|_| stands) else { continue };
            if let Meeting::Edge { neck, from_right, .. } = meeting(board, (left, right), clearance)
                && base.settled.min_neck.exact() <= neck
            {
                let (from, to) = if from_right { (left - clearance, board.1) } else { (board.0, right + clearance) };
                member.notches.push(Notch {
                    left: from,
                    right: to,
                    bottom: bottom - clearance,
                    top: top + clearance,
                    neck,
                    radius: base.settled.edge_radius,
                    clearance,
                });
            }
        }
    }
}

#[cfg(test)]
mod tests;
