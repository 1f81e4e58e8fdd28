//! The lines that boards run between: the foot, the rails along the wall, the top.

use super::geometry::{Line, Span, TURN, Taut, split_where_it_departs};
use super::measured::{Measured, past_the_ends};
use super::plan::MemberKind;
use super::rake::plumb_thickness;
use super::scheme::{Meeting, Rails, Scheme, Section, TopLine};
use super::survey::{Base, BaseLine, BaseWork, Survey};
use crate::quantity::{Exact, Length};
use crate::wall::defaults::{FLOOR_STEP, TURN_DEPARTURE};

/// A rail along the whole wall, or at a thing, before anything interrupts it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RailLine {
    /// What it is.
    pub kind: MemberKind,
    /// Its top edge.
    pub top: Line,
    /// Its bottom edge.
    pub bottom: Line,
    /// Where its top edge turns and is mitred; lesser kinks are not among them.
    pub turns: Vec<Exact>,
    /// Its width, square to its edge, and its thickness.
    pub section: Section,
}

impl RailLine {
    /// A rail by its top edge; every corner of that edge of a degree or more is a turn.
    pub fn under(kind: MemberKind, top: Line, section: Section) -> Self {
        let all = Span::new(super::geometry::DEEP, super::geometry::HIGH);
        let turns = top.turns(all, TURN);
        Self { kind, bottom: top.below(section.width), top, turns, section }
    }

    /// A rail under a taut line, which knows its own turns.
    pub fn under_taut(kind: MemberKind, taut: &Taut, section: Section) -> Self {
        let turns = taut.turns.iter().map(|x| x.exact()).collect();
        Self { kind, bottom: taut.line.below(section.width), top: taut.line.clone(), turns, section }
    }

    /// Its lowest and highest point over a stretch.
    pub fn band(&self, over: Span) -> Span {
        Span::new(self.bottom.range(over).0, self.top.range(over).1)
    }
}

/// The lines of a boarding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Boarding {
    /// Where boards stand: on the base, or above the floor.
    pub foot: Line,
    /// The highest edge of the boarding: the field ends here.
    pub top: Line,
    /// Where the highest boards end: under the top rail, or at the top.
    pub head: Line,
    /// Rails along the wall, from the bottom up.
    pub rails: Vec<RailLine>,
    /// The new base, where there is one.
    pub base: Option<RailLine>,
    /// Rails along the wall that boards pass over, from the bottom up.
    pub between: Vec<RailLine>,
}

impl Boarding {
    /// The lines of a scheme on a measured wall.
    pub fn of(survey: &Survey, scheme: &Scheme, wall: &Measured) -> Self {
        let rails = &scheme.rails;
        let relief = scheme.relief.map_or(Length::ZERO, Length::from);
        let taut = top_line(scheme, wall);
        let top = taut.line.clone();
        let mut lines: Vec<RailLine> = between(survey, scheme, wall, &top);
        let has_rail = rails.has_top_rail();
        let section = rails.top_section(scheme.board_thickness.get());
        if has_rail {
            lines.push(RailLine::under_taut(MemberKind::TopRail, &taut, section));
        }
        let passed_over = |line: &RailLine| match rails.meeting {
            Meeting::OverBoards => false,
            Meeting::BetweenBoards => true,
            Meeting::BetweenBelowTop => line.kind != MemberKind::TopRail,
        };
        let (passed, lines): (Vec<_>, Vec<_>) = lines.into_iter().partition(passed_over);
        let ends_under_rail = lines.iter().any(|line| line.kind == MemberKind::TopRail);
        let head = if ends_under_rail { top.below(section.width) } else { top.clone() };
        let base =
            survey.base.filter(|base| base.work == BaseWork::New).map(|base| new_base(base, survey, wall, scheme));
        Self { foot: wall.foot.raised(relief), top, head, rails: lines, base, between: passed }
    }
}

/// New base: straight pieces that follow the floor to within what is pressed down, or one level line.
fn new_base(base: Base, survey: &Survey, wall: &Measured, scheme: &Scheme) -> RailLine {
    let section = Section { width: base.height.get(), thickness: base.thickness.get() };
    let most = FLOOR_STEP.in_units(scheme.tape.units());
    if base.line == BaseLine::Level || wall.flight.is_some() {
        return RailLine::under(MemberKind::Base, wall.foot.clone(), section);
    }
    let measured: Vec<(Length, Length)> = survey
        .stations
        .iter()
        .map(|station| (station.at.get(), survey.datum.get() - station.datum_to_floor.get() + base.height.get()))
        .collect();
    let mut points = Vec::new();
    let mut from = 0;
    for n in 1..=measured.len() {
        if n == measured.len() || measured[n].0 == measured[n - 1].0 {
            let section = &measured[from..n];
            points.extend(split_where_it_departs(section, most, None).into_iter().map(|at| section[at]));
            from = n;
        }
    }
    let top = if points.is_empty() { wall.foot.clone() } else { past_the_ends(points, wall.length) };
    RailLine::under(MemberKind::Base, top, section)
}

fn top_line(scheme: &Scheme, wall: &Measured) -> Taut {
    let rails = &scheme.rails;
    let follows = matches!(rails.top_line, TopLine::CeilingRail | TopLine::CeilingNoRail);
    let most = TURN_DEPARTURE.in_units(scheme.tape.units());
    match (&wall.ceiling, rails.top) {
        (Some(ceiling), _) if rails.top_line == TopLine::CeilingNoRail => {
            Taut::straight(past_the_ends(ceiling.clone(), wall.length))
        }
        (Some(ceiling), _) if follows => {
            let taut = Taut::under(ceiling, most);
            Taut { line: past_the_ends(taut.line.points().to_vec(), wall.length), turns: taut.turns }
        }
        (_, Some(top)) => {
            let line = wall.line_over(top.get(), top.get());
            let turns = line.points().iter().map(|(x, _)| *x).collect();
            Taut { line, turns }
        }
        (Some(ceiling), None) => {
            let lowest = ceiling.iter().map(|(_, height)| *height).min();
            Taut::straight(Line::level(lowest.unwrap_or(Length::ZERO)))
        }
        (None, None) => Taut::straight(Line::level(Length::ZERO)),
    }
}

/// The rails between base and top rail.
fn between(survey: &Survey, scheme: &Scheme, wall: &Measured, top: &Line) -> Vec<RailLine> {
    let rails = &scheme.rails;
    let thickness = scheme.board_thickness.get();
    let line = |n: usize, top: Line| RailLine::under(MemberKind::MidRail, top, rails.mid_section(n, thickness));
    let Some(rows) = rails.rows.map(i64::from).filter(|rows| *rows > 1) else {
        let tops = rails.between.iter().map(|height| wall.line_over(height.get(), height.get()));
        return tops.enumerate().map(|(n, top)| line(n, top)).collect();
    };
    let base = survey.base.map_or(Length::ZERO, |base| base.height.get());
    let inner: Vec<Length> = (1..rows).map(|k| rails.mid_section(row(k - 1), thickness).width).collect();
    let widths = || inner.iter().copied().chain(rails.has_top_rail().then(|| rails.top_section(thickness).width));
    let low_top = rails.top.map_or_else(
        || top.range(Span::new(Exact::ZERO, wall.length.exact())).0.down_to(Length::from_nm(1)),
        Length::from,
    );
    // Clear height of each row, over the landings and over the nosings, where a rail is plumb thicker.
    let tops = |base: Length, degrees: f64| -> Vec<Length> {
        let plumb: Vec<Length> =
            widths().map(|width| if degrees == 0.0 { width } else { plumb_thickness(width, degrees) }).collect();
        let clear = low_top - base - plumb.iter().copied().sum();
        let each = clear.exact().over(rows).unwrap_or(Exact::ZERO);
        let mut height = base.exact();
        (1..rows)
            .map(|k| {
                height = height + each + plumb[row(k - 1)];
                height.nearest(Length::from_nm(1))
            })
            .collect()
    };
    let level = tops(base, 0.0);
    let raked = survey
        .stair
        .as_ref()
        .zip(wall.flight.as_ref())
        .map_or_else(|| level.clone(), |(stair, flight)| tops(stair.base_over_nosings.get(), flight.degrees()));
    let tops = level.into_iter().zip(raked).map(|(level, raked)| wall.line_over(level, raked));
    tops.enumerate().map(|(n, top)| line(n, top)).collect()
}

fn row(k: i64) -> usize {
    usize::try_from(k).unwrap_or(0)
}

impl Rails {
    /// Whether a rail runs along the top of the boarding.
    pub const fn has_top_rail(&self) -> bool {
        matches!(self.top_line, TopLine::LevelRail | TopLine::CeilingRail)
    }
}
