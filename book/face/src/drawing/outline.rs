//! The wall as a surface to draw on: its floor and ceiling, and where a place on it lies on the sheet.

use calculators::quantity::{Exact, Length};
use calculators::wall::plan::{Layout, Point};
use calculators::wall::survey::{Climbs, Stair, Survey};

use super::canvas::At;

/// From the wall to the sheet.
pub(super) struct Sheet {
    pub(super) scale: f64,
    pub(super) left: f64,
    /// Where the zero level lies on the sheet.
    pub(super) zero: f64,
    pub(super) size: At,
    /// Into how many stretches it is broken up afterwards.
    pub(super) stretches: usize,
}

impl Sheet {
    pub(super) fn x(&self, along: Exact) -> f64 {
        self.left + along.in_mm() * self.scale
    }

    pub(super) fn y(&self, up: Exact) -> f64 {
        self.zero - up.in_mm() * self.scale
    }

    pub(super) fn at(&self, point: Point) -> At {
        (self.x(point.x), self.y(point.y))
    }
}

/// Floor and ceiling of the wall as drawn, from left to right.
pub(super) struct Outline {
    pub(super) floor: Vec<(Exact, Exact)>,
    pub(super) ceiling: Vec<(Exact, Exact)>,
    pub(super) top: Exact,
    pub(super) bottom: Exact,
}

impl Outline {
    pub(super) fn of(survey: &Survey, layout: &Layout, length: Length) -> Self {
        let highest =
            layout.members.iter().flat_map(|member| &member.outline).map(|point| point.y).max().unwrap_or(Exact::ZERO);
        let heads = survey.openings.iter().map(|opening| opening.top.get().exact()).max().unwrap_or(Exact::ZERO);
        let over = highest.max(heads) + Length::mm(300);
        let mut floor = survey.stair.as_ref().map_or_else(Vec::new, |stair| stair_profile(stair, length));
        let mut ceiling = Vec::new();
        let stairs = !floor.is_empty();
        for station in &survey.stations {
            let foot = (survey.datum.get() - station.datum_to_floor.get()).exact();
            let x = station.at.get().exact();
            if !stairs {
                floor.push((x, foot));
            }
            if let Some(height) = station.floor_to_ceiling {
                ceiling.push((x, foot + height.get()));
            }
        }
        extend(&mut floor, length, Exact::ZERO);
        extend(&mut ceiling, length, over);
        let top = ceiling.iter().map(|(_, y)| *y).max().unwrap_or(over).max(over - Length::mm(200));
        let bottom = floor.iter().map(|(_, y)| *y).min().unwrap_or(Exact::ZERO).min(Exact::ZERO);
        Self { floor, ceiling, top, bottom }
    }

    pub(super) fn floor_at(&self, along: Length) -> Exact {
        let along = along.exact();
        let before = self.floor.iter().rev().find(|(x, _)| *x <= along);
        before.or(self.floor.first()).map_or(Exact::ZERO, |(_, y)| *y)
    }
}

/// Carries a line level to both ends of the wall.
pub(super) fn extend(line: &mut Vec<(Exact, Exact)>, length: Length, level: Exact) {
    let (first, last) = (line.first().map_or(level, |(_, y)| *y), line.last().map_or(level, |(_, y)| *y));
    if line.first().is_none_or(|(x, _)| x.is_positive()) {
        line.insert(0, (Exact::ZERO, first));
    }
    if line.last().is_none_or(|(x, _)| *x < length) {
        line.push((length.exact(), last));
    }
}

/// Treads and risers as far as they are known: equal steps between the measured nosings.
fn stair_profile(stair: &Stair, length: Length) -> Vec<(Exact, Exact)> {
    let (run, rise, riser) = (stair.run.get(), stair.rise.get(), stair.first_riser.get());
    let steps = (rise.in_mm() / riser.in_mm().max(1.0)).round().clamp(1.0, 60.0) as i64;
    let right = stair.climbs == Climbs::Right;
    let first = stair.first_nosing.get().exact();
    let mut profile = Vec::new();
    let mut level = Exact::ZERO;
    for step in 0..=steps {
        let Some(along) = run.exact().times(step, steps) else { continue };
        let nosing = if right { first + along } else { first - along };
        profile.push((nosing, level));
        level = rise.exact().times(step, steps).map_or(level, |up| up + riser);
        profile.push((nosing, level));
    }
    if !right {
        profile.reverse();
    }
    let (start, end) = if right { (Exact::ZERO, level) } else { (level, Exact::ZERO) };
    profile.insert(0, (Exact::ZERO, start));
    profile.push((length.exact(), end));
    profile
}
