//! Which layouts are offered: counts for every group, placed, moved off plates, and ranked by what their final bays cost.

use super::{Base, OFFERED, total};
use crate::catalogue::{Fault, Words};
use crate::quantity::{Exact, Length};
use crate::wall::defaults::{PLATE_PENALTY, SMALLEST_BAY};
use crate::wall::geometry::{DEEP, HIGH};
use crate::wall::layout::{Ask, Choice, Ground, PlacedGroup, candidates, place, taken};
use crate::wall::plan::{Score, ScoreTerm};

/// How many of the best choices are tried against the plates before the offer is made.
const TRIED: usize = 8;

/// A choice on the wall, with what it costs.
pub(super) struct Offer {
    /// Boards by group.
    pub(super) choice: Choice,
    /// The groups with their boards at their places.
    pub(super) placed: Vec<PlacedGroup>,
    /// What it costs.
    pub(super) score: Score,
    /// Widest bay less narrowest, as built.
    pub(super) spread: Exact,
    /// Narrowest and widest bay that were wished for.
    pub(super) limits: (Exact, Exact),
    /// Why it is offered.
    pub(super) reason: Words,
}

/// The layouts to offer, the one to take first.
///
/// # Errors
/// A number of boards that the wall cannot have.
pub(super) fn ranked(base: &Base<'_>) -> Result<Vec<Offer>, Vec<Fault>> {
    let scheme = &base.ground.input.scheme;
    let asked = scheme.boards.map(|boards| usize::try_from(boards.get()).unwrap_or(usize::MAX));
    let (ask, wished, choices) = choices(base, asked);
    if let (Some(asked), true) = (asked, choices.is_empty()) {
        return Err(impossible_count(base, asked));
    }
    let takes_places = taken(base.ground, &base.things);
    let mut offers: Vec<Offer> = choices
        .into_iter()
        .map(|choice| {
            let placed: Vec<PlacedGroup> = base
                .boarded
                .iter()
                .zip(&choice.counts)
                .map(|(group, boards)| place(base.ground, group, *boards, &takes_places))
                .collect();
            let spread = spread(&placed);
            let score = score(base, &choice, &ask, &placed, spread);
            Offer { choice, placed, score, spread, limits: (ask.bay_min, ask.bay_max), reason: Words::new("") }
        })
        .collect();
    let counts = |offer: &Offer| offer.choice.counts.clone();
    offers.sort_by_cached_key(|offer| {
        let other = wished.is_some_and(|wished| offer.choice.total != wished);
        (other, offer.score.total, offer.choice.total, counts(offer))
    });
    // The evenest of all is shown second, so that the price of evenness can be seen; it is first only by its own score.
    let evenest = (0..offers.len()).min_by_key(|at| (offers[*at].spread, *at));
    if let Some(at) = evenest.filter(|at| *at > 1) {
        let even = offers.remove(at);
        offers.insert(1, even);
    }
    offers.truncate(OFFERED);
    let best = offers.first().map(|offer| (offer.choice.total, offer.spread));
    let least = offers.iter().map(|offer| offer.spread).min();
    for (n, offer) in offers.iter_mut().enumerate() {
        offer.reason = reason(n, offer, &ask, best, least == Some(offer.spread), wished.is_some());
    }
    Ok(offers)
}

/// No group is left to be shared out.
fn nothing() -> Choice {
    Choice { counts: Vec::new(), bays: Vec::new(), total: 0, spread: Exact::ZERO, mean: Exact::ZERO }
}

fn ask(base: &Base<'_>, counted: bool) -> Ask {
    let scheme = &base.ground.input.scheme;
    let runs: Vec<Exact> = base.boarded.iter().map(|group| group.span.size()).collect();
    let target = scheme.target_bay.map(|bay| bay.get().exact());
    let share = |top: i64| target.and_then(|target| target.times(top, 13));
    let smallest = SMALLEST_BAY.in_units(base.ground.settled.units()).exact();
    let given = |bay: Option<crate::wall::scheme::BayWidth>| bay.map(|bay| bay.get().exact());
    Ask {
        counted: base.boarded.iter().map(|group| !counted || group.on_foot()).collect(),
        bay_min: given(scheme.bay_min).or(share(7)).unwrap_or(smallest),
        bay_max: given(scheme.bay_max).or(share(22)).unwrap_or(HIGH),
        runs,
        board: base.ground.board(),
        target,
    }
}

/// What is searched for, the boards that are left for the groups where a number was asked for, and the choices; none where that number
/// cannot be had.
fn choices(base: &Base<'_>, asked: Option<usize>) -> (Ask, Option<usize>, Vec<Choice>) {
    let ask = ask(base, asked.is_some());
    let Some(asked) = asked else {
        let choices = if ask.runs.is_empty() { vec![nothing()] } else { candidates(&ask, None, TRIED).0 };
        return (ask, None, choices);
    };
    let fixed = fixed_on_foot(base);
    // Where no board can stand on the foot at all, a number is no reason to refuse the wall.
    let wished = if fixed == 0 && !ask.counted.contains(&true) { Some(0) } else { asked.checked_sub(fixed) };
    let choices = match wished {
        None => Vec::new(),
        Some(0) if ask.runs.is_empty() => vec![nothing()],
        Some(wished) => candidates(&ask, Some(wished), OFFERED + 1).0,
    };
    (ask, wished, choices)
}

/// Boards that stand fixed along the foot.
fn fixed_on_foot(base: &Base<'_>) -> usize {
    base.columns.iter().filter(|column| column.reach.first().is_some_and(|reach| reach.from == DEEP)).count()
}

/// A number that cannot be had, and the nearest one that can: what counts as wide depends on the number, so each is tried.
fn impossible_count(base: &Base<'_>, asked: usize) -> Vec<Fault> {
    let ground = base.ground;
    let works = |boards: &usize| {
        let mut input = ground.input.clone();
        let Ok(count) = u32::try_from(*boards).map(crate::quantity::Count::new) else { return false };
        input.scheme.boards = count;
        let ground = Ground::of(&input, ground.wall, ground.boarding, ground.settled);
        input.scheme.boards.is_some() && !choices(&Base::of(&ground), Some(*boards)).2.is_empty()
    };
    let fixed = fixed_on_foot(base);
    let more = (asked + 1..=asked.max(fixed) + 40).find(works);
    let can = more.or_else(|| (1..asked).rev().find(works)).unwrap_or(fixed);
    let why = if asked < fixed {
        Words::new("{} boards stand fixed along the foot at ends and things; {} is the nearest number that can be had")
            .with(fixed)
            .with(can)
    } else {
        Words::new("so many boards leave no bays between them; with {} along the foot there are some").with(can)
    };
    vec![Fault::new("/scheme/boards", Words::of(asked), why, i64::try_from(can).unwrap_or(1))]
}

/// Widest bay less narrowest of all groups, as built.
fn spread(placed: &[PlacedGroup]) -> Exact {
    let bays = || placed.iter().flat_map(PlacedGroup::bays);
    bays().max().zip(bays().min()).map_or(Exact::ZERO, |(widest, narrowest)| widest - narrowest)
}

fn score(base: &Base<'_>, choice: &Choice, ask: &Ask, placed: &[PlacedGroup], spread: Exact) -> Score {
    let penalty: Length = PLATE_PENALTY.in_units(base.ground.settled.units());
    let left = placed.iter().map(|group| group.left_over.len()).sum::<usize>();
    let term = |name: &'static str, measure: Exact, weight: i64| ScoreTerm {
        name: Words::new(name),
        measure,
        weight,
        adds: measure * weight,
    };
    let terms = vec![
        term("widest bay less narrowest", spread, 1),
        term("mean bay off the wish", choice.off(ask.target), 1),
        term("plates left in the way", penalty.exact(), i64::try_from(left).unwrap_or(i64::MAX)),
    ];
    Score { total: total(terms.iter().map(|term| term.adds)), terms }
}

fn reason(n: usize, offer: &Offer, ask: &Ask, best: Option<(usize, Exact)>, even: bool, counted: bool) -> Words {
    let (choice, spread) = (&offer.choice, offer.spread);
    let (best, best_spread) = best.unwrap_or((choice.total, spread));
    let more = i64::try_from(choice.total).unwrap_or(0) - i64::try_from(best).unwrap_or(0);
    if n == 0 {
        return match (ask.target, counted, even) {
            (_, true, _) => Words::new("the number of boards you asked for, as even as it gets"),
            (Some(target), _, true) => Words::new("nearest to your bay of {}, and the evenest").with(target),
            (Some(target), _, false) => {
                Words::new("nearest to your bay of {}; its bays differ by {}").with(target).with(spread)
            }
            (None, false, _) => Words::new("the only way to divide this wall"),
        };
    }
    let boards = if more.abs() == 1 { "board" } else { "boards" };
    let count = if more > 0 { format!("{more} more {boards}") } else { format!("{} fewer {boards}", -more) };
    if even && spread < best_spread {
        return Words::new("the evenest of all, {} between bays, but {} with bays near {}")
            .with(spread)
            .with(count)
            .with(choice.mean);
    }
    Words::new("{} with bays near {}; they differ by {}").with(count).with(choice.mean).with(spread)
}
