//! One layout from its counts to everything that is set out, cut, bought and told.

use super::Base;
use super::offers::Offer;
use crate::quantity::Exact;
use crate::wall::defaults::CUT_CLEARANCE;
use crate::wall::findings::{Findings, findings};
use crate::wall::geometry::Span;
use crate::wall::job::{Job, job};
use crate::wall::joint_choice::choose_joints;
use crate::wall::layout::PlacedGroup;
use crate::wall::marking::{MarkWork, cut_list, mark_lines, offsets};
use crate::wall::members::{
    BayShape, BoardWork, board_members, caps, mitre_top_corners, mouldings, rail_members, rail_runs,
};
use crate::wall::notch::{Meeting, meeting};
use crate::wall::plan::{Bay, Layout, Member, Notch, Position, Run, Standing};
use crate::wall::sticks::stick_plans;
use crate::wall::sums::{Whole, nail_list, pieces, stud_hits, totals};
use crate::wall::survey::Agreed;

/// A board at its place, with the heights at which it may stand.
struct Placed {
    position: Position,
    within: Vec<Span>,
}

pub(super) fn layout(base: &Base<'_>, offer: Offer, rank: usize) -> Layout {
    let ground = base.ground;
    let (input, settled) = (ground.input, ground.settled);
    let work = base.board_work();
    let placed = positions(base, &offer.placed, &work);
    let cut: Vec<(Member, [bool; 2])> =
        placed.iter().flat_map(|placed| board_members(&placed.position, &placed.within, &work)).collect();
    let positions: Vec<Position> = placed.into_iter().map(|placed| placed.position).collect();
    let over: Vec<(Span, Span)> = cut.iter().filter_map(|(member, _)| member.spans()).collect();
    let mut runs = rail_runs(ground, &base.things, &base.columns, Some(&over));
    let rails = rail_members(ground, &mut runs, &base.studs);
    let (bays, shapes) = bays(base, &offer.placed, &BoardWork { rails: &runs.runs, ..work });
    let (mut members, mut ends): (Vec<Member>, Vec<[bool; 2]>) = cut.into_iter().unzip();
    let boards = members.len();
    let (frames, unframed) = mouldings(ground, &base.things, &shapes);
    for (piece, closed) in rails.into_iter().chain(caps(ground, &runs.runs)).chain(frames) {
        members.push(piece);
        ends.push(closed);
    }
    mitre_top_corners(ground, &mut members);
    notch(&mut members[..boards], base);
    choose_joints(&mut members, &ends, &input.stock, settled);
    let offsets = offsets(ground, &members);
    let marks = mark_lines(&MarkWork {
        ground,
        things: &base.things,
        positions: &positions,
        members: &members,
        runs: &runs.runs,
    });
    let pieces = pieces(&members, &ends, settled);
    let sticks = stick_plans(&pieces, &input.stock, settled);
    let found = findings(&Findings {
        ground,
        things: &base.things,
        columns: &base.columns,
        bare: &base.bare,
        strips: &base.strips,
        limits: offer.limits,
        placed: &offer.placed,
        positions: &positions,
        members: &members,
        ends: &ends,
        rails: &runs,
        unframed: &unframed,
        studs: &base.studs,
        sticks: &sticks,
    });
    let mut layout = Layout {
        rank,
        reason: offer.reason,
        boards: on_foot(base, &positions, &members),
        runs: shared_runs(base, &offer.placed),
        spread: built_spread(&bays).unwrap_or(offer.spread),
        mean_bay: offer.choice.mean,
        score: offer.score,
        bays,
        marks,
        offsets,
        cut_list: cut_list(&members, &positions, ground.wall),
        conflicts: found,
        studs: stud_hits(&positions, &base.studs, settled),
        nails: nail_list(&members, input, settled),
        sticks,
        pieces,
        totals: totals(&Whole { ground, things: &base.things, positions: &positions, members: &members }),
        positions,
        members,
        job: Job::default(),
    };
    layout.job = job(&layout, &input.shop, settled.units());
    layout
}

/// Every board that has a piece, numbered from the left; equal left edges from below.
fn positions(base: &Base<'_>, groups: &[PlacedGroup], work: &BoardWork<'_>) -> Vec<Placed> {
    let fixed = base.columns.iter().map(|column| Placed {
        position: Position {
            number: 0,
            left: column.span.from,
            right: column.span.to,
            board_left: column.board.from,
            board_right: column.board.to,
            why: column.why,
            shifted: Exact::ZERO,
        },
        within: column.reach.clone(),
    });
    let field = base.boarded.iter().zip(groups).flat_map(|(group, placed)| {
        let within: Vec<Span> = group.cells.iter().map(|cell| cell.heights).collect();
        placed.lefts.iter().zip(placed.filled.lefts()).map(move |(left, origin)| {
            let right = *left + placed.filled.board;
            Placed {
                position: Position {
                    number: 0,
                    left: *left,
                    right,
                    board_left: *left,
                    board_right: right,
                    why: Standing::Field,
                    shifted: *left - origin,
                },
                within: within.clone(),
            }
        })
    });
    let mut all: Vec<Placed> = fixed
        .chain(field)
        .filter(|placed| {
            let strip = Span::new(placed.position.board_left, placed.position.board_right);
            !work.pieces(strip, &placed.within).is_empty()
        })
        .collect();
    all.sort_by_key(|placed| {
        (placed.position.left, placed.within.first().map(|heights| heights.from), placed.position.right)
    });
    for (n, placed) in all.iter_mut().enumerate() {
        placed.position.number = n + 1;
    }
    all
}

/// Widest bay less narrowest of those that are seen.
fn built_spread(bays: &[Bay]) -> Option<Exact> {
    let widths = || bays.iter().map(|bay| bay.width);
    widths().max().zip(widths().min()).map(|(widest, narrowest)| widest - narrowest)
}

/// Boards that stand on the foot of the boarding.
fn on_foot(base: &Base<'_>, positions: &[Position], members: &[Member]) -> usize {
    let foot = &base.ground.boarding.foot;
    let stands = |position: &&Position| {
        members
            .iter()
            .filter(|member| member.position == Some(position.number))
            .any(|member| member.outline.first().is_some_and(|corner| corner.y == foot.after(position.board_left)))
    };
    positions.iter().filter(stands).count()
}

/// The groups with their boards, from left to right.
fn shared_runs(base: &Base<'_>, placed: &[PlacedGroup]) -> Vec<Run> {
    let beside = |span: Span| {
        base.things
            .iter()
            .position(|thing| thing.wide && thing.whole.x.from <= span.from && span.to <= thing.whole.x.to)
    };
    let mut runs: Vec<Run> = base
        .boarded
        .iter()
        .zip(placed)
        .map(|(group, placed)| Run {
            left: group.span.from,
            right: group.span.to,
            boards: placed.filled.boards,
            bays: placed.filled.boards + 1,
            bay: placed.filled.bay(),
            opening: beside(group.span),
        })
        .collect();
    runs.sort_by_key(|run| (run.left, run.right));
    runs
}

/// Every clear bay in every row.
fn bays(base: &Base<'_>, groups: &[PlacedGroup], work: &BoardWork<'_>) -> (Vec<Bay>, Vec<BayShape>) {
    let wide: Vec<_> = base.things.iter().filter(|thing| thing.wide).cloned().collect();
    let work = BoardWork { things: &wide, ..*work };
    let (mut bays, mut shapes) = (Vec::new(), Vec::new());
    for (group, placed) in base.boarded.iter().zip(groups) {
        let within: Vec<Span> = group.cells.iter().map(|cell| cell.heights).collect();
        let starts = [group.span.from].into_iter().chain(placed.lefts.iter().map(|left| *left + placed.filled.board));
        let stops = placed.lefts.iter().copied().chain([group.span.to]);
        for strip in starts.zip(stops).map(|(from, to)| Span::new(from, to)).filter(|strip| strip.is_open()) {
            let middle = strip.middle();
            for (n, row) in work.rows(strip, &within).iter().enumerate() {
                shapes.push(row.shape(strip, n + 1));
                let (height, width) = (row.height(middle), strip.size());
                let bottom = row.foot(middle);
                bays.push(Bay { left: strip.from, width, height, bottom, proportion: height.ratio_to(width) });
            }
        }
    }
    bays.sort_by_key(|bay| (bay.left, bay.bottom));
    shapes.sort_by_key(|shape| (shape.x, shape.row));
    (bays, shapes)
}

/// Cuts the notches that were agreed, where enough wood is left beside them.
fn notch(members: &mut [Member], base: &Base<'_>) {
    let settled = base.ground.settled;
    let clearance = CUT_CLEARANCE.in_units(settled.units());
    for plate in base.ground.input.survey.boxes.iter().filter(|plate| plate.agreed == Some(Agreed::Notch)) {
        let across = Span::new(plate.left.get().exact(), plate.right.get().exact());
        let heights = Span::new(plate.bottom.get().exact(), plate.top.get().exact());
        for member in members.iter_mut() {
            let Some((board, stands)) = member.spans() else { continue };
            if !stands.overlaps(heights) {
                continue;
            }
            let long = heights.grown(clearance);
            let Meeting::Edge { neck, from_right, .. } =
                meeting((board.from, board.to), (across.from, across.to), clearance)
            else {
                continue;
            };
            let short_enough = long.size() <= crate::wall::defaults::LONGEST_NOTCH.in_units(settled.units());
            if neck < settled.min_neck.exact() || !short_enough {
                continue;
            }
            let (from, to) =
                if from_right { (across.from - clearance, board.to) } else { (board.from, across.to + clearance) };
            member.notches.push(Notch {
                left: from,
                right: to,
                bottom: long.from,
                top: long.to,
                neck,
                radius: settled.edge_radius,
                clearance,
            });
        }
    }
}
