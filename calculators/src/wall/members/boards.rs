//! Boards as pieces of trim: each stands between the edges that it meets at its own place, and takes their slopes.

use super::barriers::{Barrier, Met, Side, things_across};
use super::mouldings::BayShape;
use super::rail_runs::RailRun;
use crate::fixing::studs;
use crate::quantity::{Amount, Exact, Length};
use crate::wall::defaults::{SHORTEST_BOARD, SQUARE_FALL};
use crate::wall::geometry::{DEEP, HIGH, Line, Rect, Span, TURN, left_free, united};
use crate::wall::layout::{Ground, Thing};
use crate::wall::plan::{CutKind, EndCut, LongEdges, Member, MemberKind, Point, Position, Standing};
use crate::wall::scheme::{Rounding, TopLine};
use crate::wall::survey::{End, EndKind};

/// What boards are cut between.
pub struct BoardWork<'a> {
    /// The wall, its lines and settings.
    pub ground: &'a Ground<'a>,
    /// What stands on the wall.
    pub things: &'a [Thing],
    /// Rails that end boards, as they run.
    pub rails: &'a [RailRun],
    /// Wall on which no board is to stand.
    pub bare: &'a [Rect],
    /// Stud centres.
    pub studs: &'a [Length],
}

/// One stretch of a strip of wall between two edges.
pub struct Row<'a> {
    low: Side<'a>,
    /// What it stands on.
    on: Met,
    high: Side<'a>,
    /// What ends it above.
    under: Met,
}

impl Row<'_> {
    /// Its height at a place.
    pub fn height(&self, x: Exact) -> Exact {
        self.high.at(x) - self.low.at(x)
    }

    /// Its foot at a place.
    pub fn foot(&self, x: Exact) -> Exact {
        self.low.at(x)
    }

    /// Its heights at a place.
    pub fn heights(&self, x: Exact) -> Span {
        Span::new(self.low.at(x), self.high.at(x))
    }

    /// It as a bay over a strip, in the row of this number.
    pub fn shape(&self, strip: Span, row: usize) -> BayShape {
        BayShape {
            x: strip,
            foot: (self.low.left(strip), self.low.right(strip)),
            head: (self.high.left(strip), self.high.right(strip)),
            row,
            straight: self.low.points(strip).len() == 2 && self.high.points(strip).len() == 2,
        }
    }
}

impl<'a> BoardWork<'a> {
    /// The rows over a strip of wall, from the bottom up, within some heights; things and rails left out, however low they are.
    pub fn rows(&self, strip: Span, within: &[Span]) -> Vec<Row<'a>> {
        let boarding = self.ground.boarding;
        let middle = strip.middle();
        let mut across: Vec<Barrier<'a>> = things_across(self.things, strip).collect();
        for (n, run) in self.rails.iter().enumerate().filter(|(_, run)| run.x.overlaps(strip)) {
            if run.line.kind != MemberKind::Base {
                across.push(Barrier {
                    low: Side::Line(&run.line.bottom),
                    high: Side::Line(&run.line.top),
                    met: Met::Rail(n),
                });
            }
        }
        let bare = self.bare.iter().filter(|bare| bare.x.overlaps(strip));
        across.extend(bare.map(|bare| Barrier {
            low: Side::Level(bare.y.from),
            high: Side::Level(bare.y.to),
            met: Met::Nothing,
        }));
        let outside = left_free(Span::new(DEEP, HIGH), united(within.iter().copied()));
        across.extend(outside.into_iter().map(|span| Barrier {
            low: Side::Level(span.from),
            high: Side::Level(span.to),
            met: Met::Nothing,
        }));
        across.push(Barrier { low: Side::Line(&boarding.head), high: Side::Level(HIGH), met: Met::Head });
        // A board that touches a thing or a rail at its foot says so, not that it stands in the air.
        across.sort_by_key(|barrier| (barrier.low.at(middle), barrier.met == Met::Nothing));
        let mut rows = Vec::new();
        let (mut low, mut on) = (Side::Line(&boarding.foot), Met::Foot);
        for barrier in across {
            let from = low.at(middle);
            if from < barrier.low.at(middle) {
                rows.push(Row { low: low.clone(), on, high: barrier.low, under: barrier.met });
            }
            if barrier.met == Met::Head {
                break;
            }
            let to = barrier.high.at(middle);
            if from < to || (from == to && on == Met::Nothing) {
                (low, on) = (barrier.high, barrier.met);
            }
        }
        rows
    }

    /// The rows in which a piece of a board of this width is made: not shorter than the smallest, and open over its whole width.
    pub fn pieces(&self, strip: Span, within: &[Span]) -> Vec<Row<'a>> {
        let least = SHORTEST_BOARD.in_units(self.ground.settled.units()).exact();
        let open = |row: &Row<'_>| {
            least <= row.height(strip.middle())
                && row.low.left(strip) < row.high.left(strip)
                && row.low.right(strip) < row.high.right(strip)
        };
        self.rows(strip, within).into_iter().filter(open).collect()
    }
}

/// The pieces of one board, from the bottom up; the second value of each says which of its ends meet nothing.
pub fn board_members(position: &Position, within: &[Span], work: &BoardWork<'_>) -> Vec<(Member, [bool; 2])> {
    let strip = Span::new(position.board_left, position.board_right);
    let pieces = work.pieces(strip, within);
    let several = pieces.len() > 1;
    let name = &work.ground.input.survey.name;
    pieces
        .iter()
        .enumerate()
        .map(|(n, row)| {
            let id = if several {
                format!("{name}-{}.{}", position.number, n + 1)
            } else {
                format!("{name}-{}", position.number)
            };
            (member(id, position, row, work), [row.on, row.under].map(|met| !closes(met, work)))
        })
        .collect()
}

/// Whether a board may end there: on everything but a clearance line and the air.
fn closes(met: Met, work: &BoardWork<'_>) -> bool {
    match met {
        Met::Foot | Met::Head | Met::Rail(_) => true,
        Met::Thing(n) => work.things[n].closes,
        Met::Nothing => false,
    }
}

fn member(id: String, position: &Position, row: &Row<'_>, work: &BoardWork<'_>) -> Member {
    let ground = work.ground;
    let strip = Span::new(position.board_left, position.board_right);
    let middle = strip.middle();
    let (low, high) = (&row.low, &row.high);
    let (lower, upper) = (low.points(strip), high.points(strip));
    let mut outline = lower.clone();
    outline.extend(upper.iter().rev().copied());
    let taper = scribe(&mut outline, position, ground);

    let start = end_cut(low, &lower, row.on, strip, work);
    let end = end_cut(high, &upper, row.under, strip, work);
    let top = if end.cut == CutKind::Square { high.at(middle) } else { most(&upper, true) };
    let bottom = if start.cut == CutKind::Square { low.at(middle) } else { most(&lower, false) };
    let length = top - bottom;
    let tape = ground.settled.saw_tape;
    let scheme = &ground.input.scheme;
    let to_ceiling = row.under == Met::Head && scheme.rails.top_line == TopLine::CeilingNoRail;
    Member {
        id,
        kind: kind(strip, row, work),
        position: Some(position.number),
        outline,
        width: strip.size(),
        thickness: scheme.board_thickness.get(),
        length: match scheme.rounding {
            Rounding::Nearest if !to_ceiling => tape.mark(length),
            _ => tape.short(length),
        },
        first_edge: high.left(strip) - low.left(strip),
        second_edge: high.right(strip) - low.right(strip),
        start,
        end,
        notches: Vec::new(),
        taper,
        edges: bevels(position, ground),
        joints: Vec::new(),
        joint_places: Vec::new(),
        studs: studs::between(strip.from, strip.to, work.studs),
    }
}

fn most(points: &[Point], highest: bool) -> Exact {
    let heights = points.iter().map(|point| point.y);
    if highest { heights.max() } else { heights.min() }.unwrap_or(Exact::ZERO)
}

/// How an end is cut on the edge that it meets.
fn end_cut(edge: &Side<'_>, points: &[Point], met: Met, strip: Span, work: &BoardWork<'_>) -> EndCut {
    let cut = |cut, degrees: f64| EndCut { cut, saw: Amount::of(degrees) };
    let steepest = || {
        let angles = points.windows(2).map(|pair| {
            libm::atan2((pair[1].y - pair[0].y).in_mm(), (pair[1].x - pair[0].x).in_mm()).to_degrees().abs()
        });
        angles.fold(0.0, f64::max)
    };
    if matches!(edge, Side::Curve(curve) if curve.radius().is_some()) {
        return cut(CutKind::Curve, steepest());
    }
    if turns_within(edge, met, strip, work) {
        return cut(CutKind::TwoCuts, steepest());
    }
    let (first, last) = (points[0], points[points.len() - 1]);
    let drop = (last.y - first.y).size();
    if drop <= SQUARE_FALL.in_units(work.ground.settled.units()).exact() {
        return cut(CutKind::Square, 0.0);
    }
    cut(CutKind::Rake, libm::atan2(drop.in_mm(), (last.x - first.x).in_mm()).to_degrees())
}

/// Whether a line turns, not only kinks, within the board's width.
fn turns_within(edge: &Side<'_>, met: Met, strip: Span, work: &BoardWork<'_>) -> bool {
    let boarding = work.ground.boarding;
    let inside = |x: &Exact| strip.from < *x && *x < strip.to;
    match (edge, met) {
        (Side::Line(line), Met::Rail(n)) => {
            // The bottom edge turns a little beside the top edge; a board under it meets the bottom one.
            let run = &work.rails[n];
            let under = std::ptr::eq(*line, &raw const run.line.bottom);
            let turns = if under {
                turned_bottom(&run.line.top, &run.line.bottom, &run.line.turns)
            } else {
                run.line.turns.clone()
            };
            turns.iter().any(inside)
        }
        (Side::Line(line), Met::Head) => {
            let top = boarding.rails.iter().find(|rail| rail.kind == MemberKind::TopRail);
            match top {
                Some(rail) => turned_bottom(&rail.top, line, &rail.turns).iter().any(inside),
                None => !line.turns(strip, TURN).is_empty(),
            }
        }
        (Side::Line(line), _) => !line.turns(strip, TURN).is_empty(),
        _ => false,
    }
}

/// Where the bottom edge of a rail turns: at the points that belong to the turns of its top edge.
fn turned_bottom(top: &Line, bottom: &Line, turns: &[Exact]) -> Vec<Exact> {
    let pairs = top.points().iter().zip(bottom.points());
    pairs.filter(|((x, _), _)| turns.contains(&x.exact())).map(|(_, (x, _))| x.exact()).collect()
}

fn kind(strip: Span, row: &Row<'_>, work: &BoardWork<'_>) -> MemberKind {
    let middle = strip.middle();
    let heights = row.heights(middle);
    let beside = |above: bool| {
        work.things.iter().filter(|thing| thing.wide).any(|thing| {
            let across = thing.whole.x.from < middle && middle < thing.whole.x.to;
            across && if above { heights.to <= thing.heights().from } else { thing.heights().to <= heights.from }
        })
    };
    if beside(true) {
        MemberKind::UnderBoard
    } else if beside(false) {
        MemberKind::OverBoard
    } else {
        MemberKind::Board
    }
}

/// The bevels of a board that is mitred round an outside corner: half of what the corner is short of straight.
fn bevels(position: &Position, ground: &Ground<'_>) -> LongEdges {
    let survey = &ground.input.survey;
    let seen = ground.seen();
    let bevel = |end: &End, at_end: bool| {
        let angle = end.angle.filter(|_| at_end && end.kind == EndKind::OutsideMitred)?;
        Some(Amount::of(90.0 - angle.get() / 2.0))
    };
    LongEdges {
        left: bevel(&survey.left, position.left == seen.from),
        right: bevel(&survey.right, position.right == seen.to),
    }
}

/// Lets the outer edge of an end board follow a wall that leans; answers how much it tapers.
fn scribe(outline: &mut [Point], position: &Position, ground: &Ground<'_>) -> Option<Exact> {
    if !matches!(position.why, Standing::End | Standing::Pier | Standing::WideBoard) {
        return None;
    }
    let survey = &ground.input.survey;
    let scribed = |kind| matches!(kind, EndKind::InsideFirst | EndKind::InsideSecond | EndKind::CasingBoard);
    let strip = Span::new(position.board_left, position.board_right);
    let wall = ground.wall;
    let mut taper = None;
    let reach = ground.board().exact();
    if strip.from < reach && scribed(survey.left.kind) {
        taper = follow(outline, strip.from, |height| (wall.left_at(height) + strip.from).min(strip.middle()));
    }
    let inset = wall.length.exact() - strip.to;
    if inset < reach && scribed(survey.right.kind) {
        let right = follow(outline, strip.to, |height| (wall.right_at(height) - inset).max(strip.middle()));
        taper = right.or(taper);
    }
    taper
}

fn follow(outline: &mut [Point], edge: Exact, at: impl Fn(Exact) -> Exact) -> Option<Exact> {
    let mut reach: Option<(Exact, Exact)> = None;
    for point in outline.iter_mut().filter(|point| point.x == edge) {
        point.x = at(point.y);
        reach = Some(reach.map_or((point.x, point.x), |(low, high)| (low.min(point.x), high.max(point.x))));
    }
    reach.map(|(low, high)| high - low).filter(|taper| taper.is_positive())
}
