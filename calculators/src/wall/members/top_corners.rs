//! The frame mitred at its top: outer boards and top rail meet in the plane of the wall, from the outer to the inner corner.

use crate::quantity::{Amount, Exact};
use crate::wall::geometry::Span;
use crate::wall::layout::Ground;
use crate::wall::plan::{CutKind, EndCut, Member, MemberKind, Point};
use crate::wall::scheme::RailCorners;

/// Mitres the outer boards into the top rail at both ends of the wall, where the scheme asks for it and both are there and level.
///
/// Across the board's width b the mitre rises by the rail's width w: the rail is sawn atan(b / w) off square, the board atan(w / b).
/// # Source
/// Plane geometry.
pub fn mitre_top_corners(ground: &Ground<'_>, members: &mut [Member]) {
    if ground.input.scheme.rails.corners != RailCorners::MitredInPlane {
        return;
    }
    for left in [true, false] {
        let Some((rail, board)) = corner(members, left) else { continue };
        let (wide, high) = (members[board].width, members[rail].width);
        let top = members[rail].outline[2].y;
        let cut = |tall: Exact, across: Exact| EndCut {
            cut: CutKind::Mitre,
            saw: Amount::of(libm::atan2(tall.in_mm(), across.in_mm()).to_degrees()),
        };
        let member = &mut members[rail];
        let (bottom, edge) = if left { (0, &mut member.start) } else { (1, &mut member.end) };
        *edge = cut(wide, high);
        let inner = if left { member.outline[bottom].x + wide } else { member.outline[bottom].x - wide };
        member.outline[bottom].x = inner;
        member.second_edge = member.second_edge - wide;
        let member = &mut members[board];
        member.end = cut(high, wide);
        let raised = if left { member.outline.len() - 1 } else { member.outline.len() - 2 };
        let Point { x, .. } = member.outline[raised];
        member.outline[raised] = Point { x, y: top };
        if left {
            member.first_edge = member.first_edge + high;
        } else {
            member.second_edge = member.second_edge + high;
        }
        member.length = ground.settled.saw_tape.mark(member.length.exact + high);
    }
}

/// The top rail that ends at an end of the wall and the outer board under its end, by their indexes.
fn corner(members: &[Member], left: bool) -> Option<(usize, usize)> {
    let rails = || members.iter().enumerate().filter(|(_, member)| member.kind == MemberKind::TopRail);
    let at = |span: Span| if left { span.from } else { span.to };
    let spans = |member: &Member| member.spans().map(|(x, _)| at(x));
    let (rail, member) = if left {
        rails().min_by_key(|(_, member)| spans(member))?
    } else {
        rails().max_by_key(|(_, member)| spans(member))?
    };
    let (x, y) = member.spans()?;
    let level = member.outline[2].y == member.outline[3].y && y.size() == member.width;
    let under = |other: &Member| {
        let square = other.outline.len() == 4 && other.end.cut == CutKind::Square;
        other.spans().is_some_and(|(own, heights)| square && at(own) == at(x) && heights.to == y.from)
    };
    let board = members.iter().position(|other| other.position.is_some() && under(other))?;
    level.then_some((rail, board))
}
