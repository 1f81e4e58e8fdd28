//! The lines that boards run between: the foot, the rails, the top.

use super::line::Line;
use super::measured::Measured;
use super::plan::MemberKind;
use super::rake::plumb_thickness;
use super::scheme::{Rails, Scheme, TopLine};
use super::survey::Survey;
use crate::quantity::{Exact, Length};

/// A rail along the whole wall, before openings interrupt it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RailLine {
    /// What it is.
    pub kind: MemberKind,
    /// Its top edge.
    pub top: Line,
    /// Its bottom edge.
    pub bottom: Line,
    /// The stretch it runs along: the whole wall, or an opening.
    pub along: Option<(Exact, Exact)>,
}

impl RailLine {
    /// A rail by its top edge.
    pub fn under(kind: MemberKind, top: Line, width: Length) -> Self {
        Self { kind, bottom: top.below(width), top, along: None }
    }

    /// Its lowest and highest point between two places.
    pub fn band(&self, left: Exact, right: Exact) -> (Exact, Exact) {
        (self.bottom.range(left, right).0, self.top.range(left, right).1)
    }
}

/// The lines of a boarding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Boarding {
    /// Where boards stand: on the base, or above the floor.
    pub foot: Line,
    /// The highest edge of the boarding.
    pub top: Line,
    /// Where the highest boards end: under the top rail, or at the top.
    pub head: Line,
    /// Rails along the wall, from the bottom up.
    pub rails: Vec<RailLine>,
}

impl Boarding {
    /// The lines of a scheme on a measured wall.
    pub fn of(survey: &Survey, scheme: &Scheme, wall: &Measured) -> Self {
        let rails = &scheme.rails;
        let width = rails.width.get();
        let relief = scheme.relief.map_or(Length::ZERO, Length::from);
        let top = top_line(rails, wall);
        let mut lines: Vec<RailLine> = between(survey, rails, wall, &top)
            .into_iter()
            .map(|line| RailLine::under(MemberKind::MidRail, line, width))
            .collect();
        let has_rail = matches!(rails.top_line, TopLine::LevelRail | TopLine::CeilingRail);
        if has_rail {
            lines.push(RailLine::under(MemberKind::TopRail, top.clone(), width));
        }
        let head = if has_rail { top.below(width) } else { top.clone() };
        Self { foot: wall.foot.raised(relief), top, head, rails: lines }
    }
}

fn top_line(rails: &Rails, wall: &Measured) -> Line {
    let follows = matches!(rails.top_line, TopLine::CeilingRail | TopLine::CeilingNoRail);
    match (&wall.ceiling, rails.top) {
        (Some(ceiling), _) if follows => ceiling.clone(),
        (_, Some(top)) => wall.line_over(top.get(), top.get()),
        (Some(ceiling), None) => {
            Line::level(ceiling.range(Exact::ZERO, wall.length.exact()).0.down_to(Length::from_nm(1)))
        }
        (None, None) => Line::level(Length::ZERO),
    }
}

/// Top edges of the rails between base and top rail.
fn between(survey: &Survey, rails: &Rails, wall: &Measured, top: &Line) -> Vec<Line> {
    let Some(rows) = rails.rows.map(i64::from).filter(|rows| *rows > 1) else {
        return rails.between.iter().map(|height| wall.line_over(height.get(), height.get())).collect();
    };
    let base = survey.base.map_or(Length::ZERO, |base| base.height.get());
    let width = rails.width.get();
    let at_top = i64::from(matches!(rails.top_line, TopLine::LevelRail | TopLine::CeilingRail));
    let low_top = rails
        .top
        .map_or_else(|| top.range(Exact::ZERO, wall.length.exact()).0.down_to(Length::from_nm(1)), Length::from);
    // Clear height of each row, over the landings and over the nosings, where a rail is plumb thicker.
    let tops = |base: Length, rail: Length| -> Vec<Length> {
        let clear = (low_top - base).exact() - rail.exact() * (rows - 1 + at_top);
        let row = clear.over(rows).unwrap_or(Exact::ZERO);
        (1..rows).map(|k| ((row + rail) * k + base).nearest(Length::from_nm(1))).collect()
    };
    let over_nosings = survey
        .stair
        .as_ref()
        .zip(wall.flight.as_ref())
        .map(|(stair, flight)| tops(stair.base_over_nosings.get(), plumb_thickness(width, flight.degrees())));
    let level = tops(base, width);
    let raked = over_nosings.unwrap_or_else(|| level.clone());
    level.into_iter().zip(raked).map(|(level, raked)| wall.line_over(level, raked)).collect()
}
