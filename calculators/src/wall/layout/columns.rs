//! Boards that cannot move: at closed ends, beside wide things, at nosings and steps, and where one board carries a plate.
//!
//! Each begins beside its thing and runs up and down as far as the wall is free, through all rows, so that boards line through.

use super::neighbours::{Hand, Pier, beside, strip};
use super::{Ground, Source, Thing};
use crate::quantity::{Exact, Length};
use crate::wall::corners::{CornerBoard, corner_board};
use crate::wall::defaults::{CUT_CLEARANCE, SHORTEST_BOARD, SMALLEST_BAY};
use crate::wall::geometry::{DEEP, HIGH, Span, left_free};
use crate::wall::plan::Standing;
use crate::wall::scheme::{AtOpenings, Framing, StepBoard, Treatment};
use crate::wall::survey::{Agreed, EndKind};

/// A board that cannot move.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// What can be seen of it along the wall.
    pub span: Span,
    /// The board itself; it differs in a corner, where another board laps over it.
    pub board: Span,
    /// Why it stands there.
    pub why: Standing,
    /// The things that it stands beside.
    pub things: Vec<usize>,
    /// The heights at which it stands, from the bottom up.
    pub reach: Vec<Span>,
    /// The side that another board or bay lies on; none where both do.
    free: Option<Hand>,
    /// The only heights at which it may stand.
    within: Span,
}

impl Column {
    fn tight(span: Span, why: Standing, things: Vec<usize>, free: Option<Hand>) -> Self {
        Self { span, board: span, why, things, reach: Vec::new(), free, within: Span::new(DEEP, HIGH) }
    }

    /// Whether it passes a height: it stands just below and just above it.
    pub fn passes(&self, height: Exact) -> bool {
        self.reach.iter().any(|reach| reach.from < height && height < reach.to)
    }

    /// Whether it stands anywhere within these heights.
    pub fn stands(&self, heights: Span) -> bool {
        self.reach.iter().any(|reach| reach.overlaps(heights))
    }

    fn join(&mut self, other: &Self) {
        self.span = self.span.hull(other.span);
        self.board = self.board.hull(other.board);
        self.things.extend(&other.things);
        self.within = self.within.hull(other.within);
    }
}

/// Every board that cannot move, from left to right.
pub fn columns(ground: &Ground<'_>, things: &[Thing]) -> Vec<Column> {
    let mut found = ends(ground);
    if ground.input.scheme.treatment == Treatment::BoardsAtEdges {
        let (sides, piers) = beside(ground, things);
        for pier in piers {
            take_pier(&mut found, pier);
        }
        for side in sides {
            let free = Some(side.hand);
            let mut column =
                Column::tight(strip(side.at, side.hand, ground.board()), Standing::Opening, side.things, free);
            column.within = own_row(ground, things, &column.things);
            // A corner board may be wider than the others: where the two would overlap one board takes the whole gap.
            let corner = found.iter().position(|other| other.things.is_empty() && other.span.overlaps(column.span));
            match corner {
                Some(at) => {
                    found[at].join(&column);
                    found[at].why = Standing::Pier;
                }
                None => found.push(column),
            }
        }
    }
    let fixed = |found: &[Column], column: &Column| found.iter().position(|other| other.span.overlaps(column.span));
    for column in nosings(ground).into_iter().chain(steps(ground)) {
        match fixed(&found, &column) {
            Some(at) => found[at].join(&column),
            None => found.push(column),
        }
    }
    wide_boards(ground, things, &mut found);
    let reaches: Vec<Vec<Span>> = (0..found.len()).map(|n| reach(ground, things, &found, n)).collect();
    for (column, reach) in found.iter_mut().zip(reaches) {
        column.reach = reach;
    }
    if ground.input.scheme.treatment == Treatment::BaysToEdges {
        inside_edges(ground, things, &mut found);
    }
    found.retain(|column| !column.reach.is_empty());
    found.sort_by_key(|column| (column.span, column.reach.first().copied()));
    found
}

/// The boards at closed ends; one board as wide as the wall where there is room for no more than two.
fn ends(ground: &Ground<'_>) -> Vec<Column> {
    let (survey, scheme) = (&ground.input.survey, &ground.input.scheme);
    let length = ground.ends.1;
    let left = corner_board(&survey.left, scheme).map(|corner| at_left_end(corner, survey.left.kind));
    let right = corner_board(&survey.right, scheme).map(|corner| {
        let seen = at_left_end(corner, survey.right.kind);
        let mirrored = |span: Span| Span::new(length - span.to, length - span.from);
        Column { span: mirrored(seen.span), board: mirrored(seen.board), free: Some(Hand::Left), ..seen }
    });
    let seen = ground.seen();
    if seen.size() <= ground.board() * 2 {
        let mut whole = Column::tight(seen, Standing::Pier, Vec::new(), None);
        for end in [left, right].into_iter().flatten() {
            whole.board = whole.board.hull(end.board);
        }
        return if seen.is_open() { vec![whole] } else { Vec::new() };
    }
    left.into_iter().chain(right).collect()
}

fn at_left_end(corner: CornerBoard, kind: EndKind) -> Column {
    let start = if kind == EndKind::InsideFirst { Exact::ZERO } else { corner.start };
    let to = corner.start + corner.shows;
    Column {
        board: Span::new(start, to),
        ..Column::tight(Span::new(corner.start, to), Standing::End, Vec::new(), Some(Hand::Right))
    }
}

/// One board takes a whole gap; at an end of the wall the board there is as wide as the gap.
fn take_pier(found: &mut Vec<Column>, pier: Pier) {
    let column = Column::tight(pier.span, Standing::Pier, pier.things, None);
    let at_end = pier.end.and_then(|end| {
        found.iter().position(|other| match end {
            Hand::Left => other.span.from == column.span.from,
            Hand::Right => other.span.to == column.span.to,
        })
    });
    match at_end {
        Some(at) => {
            found[at].join(&column);
            found[at].why = Standing::Pier;
            found[at].free = None;
        }
        None if found.iter().any(|other| other.span == column.span) => {}
        None => found.push(column),
    }
}

/// Boards at the first and the last nosing, inside the flight.
fn nosings(ground: &Ground<'_>) -> Vec<Column> {
    let Some(flight) = &ground.wall.flight else { return Vec::new() };
    let board = ground.board();
    let (from, to) = ground.wall.seen(flight.first, flight.last());
    if to - from < board * 2 {
        return Vec::new();
    }
    let seen = ground.seen();
    [(from, from + board), (to - board, to)]
        .map(|(left, right)| Span::new(left.exact(), right.exact()))
        .into_iter()
        .filter(|span| seen.covers(*span))
        .map(|span| Column::tight(span, Standing::Nosing, Vec::new(), None))
        .collect()
}

/// A board tight to each step of the field, on its taller side.
fn steps(ground: &Ground<'_>) -> Vec<Column> {
    if ground.input.scheme.step_board == StepBoard::None {
        return Vec::new();
    }
    let board = ground.board();
    let seen = ground.seen();
    step_places(ground)
        .into_iter()
        .map(|at| {
            let (foot, top) = (&ground.boarding.foot, &ground.boarding.top);
            let (left, right) = (top.at(at) - foot.at(at), top.after(at) - foot.after(at));
            let hand = if right <= left { Hand::Left } else { Hand::Right };
            Column::tight(strip(at, hand, board), Standing::Step, Vec::new(), Some(hand))
        })
        .filter(|column| seen.covers(column.span))
        .collect()
}

/// Where the foot or the top of the field steps, away from the nosings of a stair.
pub(super) fn step_places(ground: &Ground<'_>) -> Vec<Exact> {
    let nosings = ground.wall.flight.map(|flight| ground.wall.seen(flight.first, flight.last()));
    let mut places: Vec<Length> = ground.boarding.foot.steps();
    places.extend(ground.boarding.top.steps());
    places.sort_unstable();
    places.dedup();
    let seen = ground.seen();
    places
        .into_iter()
        .filter(|at| nosings.is_none_or(|(first, last)| *at != first && *at != last))
        .map(Length::exact)
        .filter(|at| seen.from < *at && *at < seen.to)
        .collect()
}

/// Makes one board wide enough for each plate for which that was agreed. Two of them nearer than the smallest bay are one; one that
/// meets a board which cannot move widens that board on its free side.
fn wide_boards(ground: &Ground<'_>, things: &[Thing], found: &mut Vec<Column>) {
    let settled = ground.settled;
    let units = settled.units();
    let margin = CUT_CLEARANCE.in_units(units) + settled.edge_radius;
    let (near, board) = (SMALLEST_BAY.in_units(units), ground.board());
    let mut wanted: Vec<Span> = Vec::new();
    for plate in ground.input.survey.boxes.iter().filter(|plate| plate.agreed == Some(Agreed::WideBoard)) {
        let plain = Span::new(plate.left.get().exact(), plate.right.get().exact());
        let heights = Span::new(plate.bottom.get().exact(), plate.top.get().exact());
        if !heights.overlaps(ground.field(plain)) {
            continue;
        }
        let carrying = plain.grown(margin);
        let short = board.exact() - carrying.size();
        let carrying = if short.is_positive() {
            Span::new(carrying.from - short.half(), carrying.to + short.half())
        } else {
            carrying
        };
        // Beside a thing the board ends on its edge.
        let parts = things.iter().filter(|thing| thing.wide).flat_map(|thing| &thing.parts);
        wanted.push(parts.filter(|part| part.y.overlaps(heights)).fold(carrying, |span, part| {
            if part.x.to <= plain.from {
                Span::new(span.from.max(part.x.to), span.to)
            } else if plain.to <= part.x.from {
                Span::new(span.from, span.to.min(part.x.from))
            } else {
                span
            }
        }));
    }
    wanted.sort_unstable();
    let mut boards: Vec<Span> = Vec::new();
    for span in wanted {
        match boards.last_mut() {
            Some(last) if span.from - last.to < near.exact() => *last = last.hull(span),
            _ => boards.push(span),
        }
    }
    let seen = ground.seen();
    for span in boards {
        let span = Span::new(span.from.max(seen.from), span.to.min(seen.to));
        let mut column = Column::tight(span, Standing::WideBoard, Vec::new(), None);
        while let Some(at) = found.iter().position(|other| other.span.gap(column.span) < near.exact()) {
            let mut met = found.remove(at);
            met.join(&column);
            column = met;
        }
        found.push(column);
    }
}

/// Where the scheme frames a part to be kept clear in its own row: up and down to the next rail.
fn own_row(ground: &Ground<'_>, things: &[Thing], of: &[usize]) -> Span {
    let whole = Span::new(DEEP, HIGH);
    if ground.input.scheme.framing == Framing::AllRows {
        return whole;
    }
    let zones = of.iter().map(|n| &things[*n]);
    let Some(heights) = zones
        .map(|thing| matches!(thing.source, Source::KeepClear(_)).then(|| (thing.whole.x, thing.heights())))
        .collect::<Option<Vec<_>>>()
        .and_then(|all| all.into_iter().reduce(|one, other| (one.0.hull(other.0), one.1.hull(other.1))))
    else {
        return whole;
    };
    let (over, heights) = heights;
    let bands = ground.boarding.rails.iter().map(|rail| rail.band(over));
    bands.fold(whole, |row, band| {
        if band.to <= heights.from {
            Span::new(row.from.max(band.from), row.to)
        } else if heights.to <= band.from {
            Span::new(row.from, row.to.min(band.to))
        } else {
            row
        }
    })
}

/// The heights at which a column stands: the free wall over its strip, less where it would crowd another thing's own column.
fn reach(ground: &Ground<'_>, things: &[Thing], columns: &[Column], n: usize) -> Vec<Span> {
    let column = &columns[n];
    let mut taken: Vec<Span> = Vec::new();
    for (at, thing) in things.iter().enumerate().filter(|(_, thing)| thing.wide) {
        let own = column.things.contains(&at);
        // A horn of its own thing that is narrower than the board cuts the board, but not the column.
        let parts = thing.parts.iter().filter(|part| part.x.overlaps(column.span));
        taken.extend(parts.filter(|part| !own || part.x.covers(column.span)).map(|part| part.y));
    }
    taken.extend(crowded(ground, things, columns, n));
    let field = ground.field(column.span);
    let least = SHORTEST_BOARD.in_units(ground.settled.units()).exact();
    left_free(column.within, taken).into_iter().filter(|free| least <= free.shared(field).size()).collect()
}

/// Where another thing's column stays and this one is left out: at that thing's heights; where neither thing stands the wider thing's
/// column stays, then the lower one's, then the left one's.
fn crowded(ground: &Ground<'_>, things: &[Thing], columns: &[Column], n: usize) -> Vec<Span> {
    let column = &columns[n];
    let near = SMALLEST_BAY.in_units(ground.settled.units()).exact();
    if column.things.is_empty() {
        return Vec::new();
    }
    let heights = |column: &Column| column.things.iter().map(|at| things[*at].heights()).collect::<Vec<_>>();
    let own = heights(column);
    let mut taken = Vec::new();
    for (at, other) in columns.iter().enumerate() {
        if at == n || other.things.is_empty() || near <= other.span.gap(column.span) {
            continue;
        }
        let theirs = heights(other);
        let stays = rank(things, column, n) < rank(things, other, at);
        // Where both stand the one that stays elsewhere stays here too.
        for span in &theirs {
            if stays {
                taken.extend(left_free(*span, own.iter().copied()));
            } else {
                taken.push(*span);
            }
        }
        if !stays {
            taken.extend(left_free(Span::new(DEEP, HIGH), own.iter().chain(&theirs).copied()));
        }
    }
    taken
}

/// Smaller for the column that stays: the wider thing's, then the lower one's, then the left one's.
fn rank(things: &[Thing], column: &Column, n: usize) -> (Exact, Exact, Exact, usize) {
    let whole = column.things.iter().map(|at| things[*at].whole).reduce(crate::wall::geometry::Rect::hull);
    let width = whole.map_or(Exact::ZERO, |whole| whole.x.size());
    (-width, whole.map_or(Exact::ZERO, |whole| whole.y.from), column.span.from, n)
}

/// Where bays run up to things: the first and the last board below and above each stand just inside its edges.
fn inside_edges(ground: &Ground<'_>, things: &[Thing], found: &mut Vec<Column>) {
    let board = ground.board();
    let rails = ground.input.scheme.rails.at_openings;
    let width = ground.input.scheme.rails.opening_section(Length::ZERO).width;
    let near = SMALLEST_BAY.in_units(ground.settled.units()).exact();
    let mut by_rank: Vec<(usize, &Thing)> = things.iter().enumerate().filter(|(_, thing)| thing.wide).collect();
    // Where two would crowd each other the wider thing's board stays, then the lower one's, then the left one's.
    by_rank.sort_by_key(|(_, thing)| (-thing.whole.x.size(), thing.whole.y.from, thing.whole.x.from));
    for (n, thing) in by_rank {
        let x = thing.whole.x;
        if x.size() <= board * 2 {
            continue;
        }
        let field = ground.field(x);
        let others = things.iter().enumerate().filter(|(other, other_thing)| *other != n && other_thing.wide);
        let others: Vec<Span> =
            others.flat_map(|(_, other)| &other.parts).filter(|part| part.x.overlaps(x)).map(|part| part.y).collect();
        let free = left_free(Span::new(DEEP, HIGH), others.into_iter().chain([thing.heights()]));
        for free in free.into_iter().filter(|free| free.to == thing.heights().from || free.from == thing.heights().to) {
            let below = free.to == thing.heights().from;
            let railed = if below {
                matches!(rails, AtOpenings::SillAndHead | AtOpenings::Sill)
            } else {
                matches!(rails, AtOpenings::SillAndHead | AtOpenings::Head)
            };
            let row = free.shared(field).size() - if railed { width } else { Length::ZERO };
            if row <= board {
                continue;
            }
            for span in [Span::new(x.from, x.from + board), Span::new(x.to - board, x.to)] {
                let crowding = found.iter().filter(|other| other.span.gap(span) < near);
                let taken: Vec<Span> = crowding.flat_map(|other| other.reach.iter().copied()).collect();
                let reach: Vec<Span> = left_free(free, taken)
                    .into_iter()
                    .filter(|free| board.exact() < free.shared(field).size())
                    .collect();
                if !reach.is_empty() {
                    found.push(Column { reach, ..Column::tight(span, Standing::Opening, vec![n], None) });
                }
            }
        }
    }
}
