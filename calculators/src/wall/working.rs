//! How the figures of one layout were got: every bay, mark, cut length and height, line by line, as a reader would check them.
//!
//! The plan is worked out elsewhere; here its figures are taken apart again. Each line states a formula that holds for the figures
//! beside it, so that a line that does not belong to its figure is found.

use super::plan::{CutKind, Layout, Mark, MarkLine, Member, MemberKind, Offset, Position, Run, Standing};
use super::scheme::WallInput;
use crate::catalogue::{Step, Words};
use crate::quantity::{Exact, Length};

/// The bays of each run between fixed boards.
pub fn bays(layout: &Layout, input: &WallInput) -> Vec<Step> {
    let step = |(index, run): (usize, &Run)| {
        Step::new(Words::new("run {}: its bays").with(index + 1))
            .by("(R - k * b) / m")
            .given("R", "run between fixed boards", run.right - run.left)
            .given("k", "boards in it", run.boards)
            .given("b", "board width", input.scheme.board_width)
            .given("m", "bays in it", run.bays)
            .gives("g", "clear bay", run.bay)
    };
    let mut steps: Vec<Step> = layout.runs.iter().enumerate().map(step).collect();
    let widths = || layout.runs.iter().map(|run| run.bay);
    if let (Some(least), Some(most)) = (widths().min(), widths().max()) {
        steps.push(
            Step::new("how much the bays differ as divided, before a board moves for a plate")
                .by("w - n")
                .given("w", "widest bay", most)
                .given("n", "narrowest bay", least)
                .gives("d", "difference", most - least),
        );
        let built = || layout.bays.iter().map(|bay| bay.width);
        if let (true, Some(least), Some(most)) = (layout.spread != most - least, built().min(), built().max()) {
            steps.push(
                Step::new("how much the bays differ as built")
                    .by("w - n")
                    .given("w", "widest bay", most)
                    .given("n", "narrowest bay", least)
                    .gives("d", "difference", layout.spread),
            );
        }
    }
    steps
}

/// The marks along one line, each from its own exact place.
pub fn marks(line: &MarkLine, layout: &Layout, input: &WallInput) -> Vec<Step> {
    let board = input.scheme.board_width.get();
    line.marks.iter().map(|mark| left_edge(mark, layout, board)).collect()
}

fn left_edge(mark: &Mark, layout: &Layout, board: Length) -> Step {
    let what = Words::new("board {}: its left edge").with(mark.board);
    let Some(place) = layout.positions.iter().find(|place| place.number == mark.board) else {
        return Step::new(what).gives("x", "left edge", mark.left);
    };
    match place.why {
        Standing::Field => shared_out(what.clone(), mark, place, layout, board)
            .unwrap_or_else(|| Step::new(what).gives("x", "left edge", mark.left)),
        fixed => Step::new(what).gives("x", "left edge", mark.left).because(match fixed {
            Standing::End => "fixed: it stands at the end of the wall",
            Standing::Opening => "fixed: it stands tight to the opening",
            Standing::Pier => "fixed: one board takes all of the pier",
            _ => "fixed: it stands where the rail turns",
        }),
    }
}

/// A board shared out over its run: so many bays and boards from where the run starts, and what it was moved for a plate.
fn shared_out(what: Words, mark: &Mark, place: &Position, layout: &Layout, board: Length) -> Option<Step> {
    let meant = place.board_left - place.shifted;
    let nm = Length::from_nm(1).exact();
    let places = layout.runs.iter().flat_map(|run| (1..=run.boards).map(move |bays| (run, bays)));
    let (run, bays) = places.into_iter().find(|(run, bays)| {
        let count = i64::try_from(*bays).unwrap_or(0);
        (run.left + run.bay * count + board.exact() * (count - 1) - meant).size() <= nm
    })?;
    let moved = place.shifted != Exact::ZERO;
    let step = Step::new(what)
        .by(if moved { "r + m * g + (m - 1) * b + s" } else { "r + m * g + (m - 1) * b" })
        .given("r", "where its run starts", run.left)
        .given("m", "bays up to it", bays)
        .given("g", "clear bay", run.bay)
        .given("b", "board width", board);
    let step = if moved { step.given("s", "moved to clear the plate", place.shifted) } else { step };
    Some(step.gives("x", "left edge", mark.left).because("never stepped from the mark before: rounded once, here"))
}

/// The heights set out from the datum line.
pub fn offsets(layout: &Layout, input: &WallInput) -> Vec<Step> {
    let step = |offset: &Offset| {
        Step::new(offset.name.clone())
            .by("h - D")
            .given("h", "above the high floor point", offset.height)
            .given("D", "datum line above it", input.survey.datum)
            .gives("o", "from the line", offset.offset)
    };
    layout.offsets.iter().map(step).collect()
}

/// The lengths of the cut list.
pub fn lengths(layout: &Layout) -> Vec<Step> {
    let member = |label: &str| layout.members.iter().find(|member| label.split(' ').next() == Some(member.id.as_str()));
    let cuts = layout.cut_list.iter().filter_map(|cut| Some((cut, member(&cut.label)?)));
    cuts.map(|(cut, member)| length(Words::of(cut.label.clone()), member)).collect()
}

fn length(what: Words, member: &Member) -> Step {
    if member.position.is_some() { board_length(what, member) } else { rail_length(what, member) }
}

fn board_length(what: Words, member: &Member) -> Step {
    let lowest_head = member.outline.len().div_ceil(2);
    let (foot, head) = member.outline.split_at(lowest_head);
    let heights = |points: &[super::plan::Point]| -> Option<(Exact, Exact)> {
        Some((points.iter().map(|point| point.y).min()?, points.iter().map(|point| point.y).max()?))
    };
    let square = |cut: CutKind| cut == CutKind::Square;
    let (Some((foot_low, foot_high)), Some((head_low, head_high))) = (heights(foot), heights(head)) else {
        return Step::new(what).gives("l", "length", member.length);
    };
    let at_foot = if square(member.start.cut) { (foot_low + foot_high).half() } else { foot_low };
    let at_head = if square(member.end.cut) { (head_low + head_high).half() } else { head_high };
    if (at_head - at_foot - member.length.exact).size() > Length::from_nm(500).exact() {
        return Step::new(what)
            .gives("l", "length", member.length)
            .because("between the lines it meets, which turn within its width: long point to long point");
    }
    let word = |cut: CutKind, square_word, sloping_word| if square(cut) { square_word } else { sloping_word };
    Step::new(what)
        .by("h - f")
        .given("h", word(member.end.cut, "head, at the middle of the board", "head, at its highest point"), at_head)
        .given("f", word(member.start.cut, "foot, at the middle of the board", "foot, at its lowest point"), at_foot)
        .gives("l", "length", member.length)
}

fn rail_length(what: Words, member: &Member) -> Step {
    let along = || member.outline.iter().map(|point| point.x);
    let (Some(left), Some(right)) = (along().min(), along().max()) else {
        return Step::new(what).gives("l", "length", member.length);
    };
    if (right - left - member.length.exact).size() > Length::from_nm(500).exact() {
        return Step::new(what)
            .gives("l", "length", member.length)
            .because("measured along the slope, long point to long point");
    }
    let step = Step::new(what).by("r - l").given("r", "its right end", right).given("l", "its left end", left).gives(
        "w",
        "length",
        member.length,
    );
    if member.kind == MemberKind::Base { step } else { step.because("long point to long point") }
}

/// Nails and pins.
pub fn nails(layout: &Layout) -> Step {
    Step::new("nails and pins")
        .by("r + b + p")
        .given("r", "nails in rails, two at each stud", layout.nails.in_rails)
        .given("b", "nails in boards", layout.nails.in_boards)
        .given("p", "pins beside adhesive", layout.nails.pins)
        .gives("n", "nails and pins", layout.nails.in_rails + layout.nails.in_boards + layout.nails.pins)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::FromNode;
    use crate::quantity::Units;
    use crate::wall::planning::plan;
    use crate::wall::practice_room::{Wall, input};

    /// Lines that state a formula, of all lines.
    fn with_formula(steps: &[Step]) -> (usize, usize) {
        (steps.iter().filter(|step| step.formula.is_some()).count(), steps.len())
    }

    #[test]
    fn every_line_holds_for_its_figures_on_every_wall() {
        let entry = crate::catalogue::entry("wall-plan").expect("it is declared");
        for wall in Wall::ALL {
            for units in [Units::Imperial, Units::Metric] {
                let read = entry.read(&input(wall, units), units).expect("valid");
                let input = WallInput::from_node(read).expect("typed");
                for layout in plan(&input).expect("a plan").layouts {
                    let mut all = bays(&layout, &input);
                    all.extend(layout.marks.iter().flat_map(|line| marks(line, &layout, &input)));
                    all.extend(lengths(&layout));
                    all.extend(offsets(&layout, &input));
                    all.push(nails(&layout));
                    let job = crate::wall::job::working(&layout, &input.shop, units);
                    assert!(job.len() >= 14, "{wall:?}: {} lines for the job", job.len());
                    all.extend(job);
                    for step in &all {
                        step.check().unwrap_or_else(|why| panic!("{wall:?} in {units:?}: {why:?} in {step:?}"));
                    }
                    let fields = layout.positions.iter().filter(|place| place.why == Standing::Field).count();
                    let foot = layout.marks.first().expect("marks along the foot");
                    let (stated, _) = with_formula(&marks(foot, &layout, &input));
                    if wall == Wall::Plain {
                        assert_eq!(stated, fields, "every shared-out board has its formula");
                    }
                    let (stated, of) = with_formula(&lengths(&layout));
                    assert!(stated * 10 >= of * 8, "{wall:?}: {stated} of {of} lengths are taken apart");
                }
            }
        }
    }
}
