//! What stands in or on the wall: outlines with clearances. Two of them never become one because they lie over each other.

use super::Ground;
use crate::quantity::{Exact, Length};
use crate::wall::defaults::SET_BACK;
use crate::wall::geometry::{DEEP, HIGH, Line, Rect, Span};
use crate::wall::scheme::Arris;
use crate::wall::survey::{Head, HeadKind, Opening};

/// What a thing is, with its index in the survey.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// An opening.
    Opening(usize),
    /// A part to be kept clear.
    KeepClear(usize),
}

/// A thing on the wall, as trim meets it.
#[derive(Clone, Debug, PartialEq)]
pub struct Thing {
    /// What it is.
    pub source: Source,
    /// Its outline grown by its clearance and cut at the ends of the wall, the tallest rectangle first.
    pub parts: Vec<Rect>,
    /// The smallest rectangle round all parts.
    pub whole: Rect,
    /// Its outline itself, without clearance.
    pub own: Rect,
    /// What lies between the two; nothing for an opening with casing.
    pub clearance: Length,
    /// True where boards and rails may end on its edge: a casing or an arris, never a clearance line.
    pub closes: bool,
    /// True where it is too wide for a bay and boards frame it.
    pub wide: bool,
    /// Its head, where that is not level.
    pub head: Option<Curve>,
}

impl Thing {
    /// Left and right edge of its tallest rectangle: where columns stand beside it.
    pub fn sides(&self) -> Span {
        self.parts[0].x
    }

    /// Its heights.
    pub fn heights(&self) -> Span {
        self.whole.y
    }

    /// The heights of a sill or a head that rails may run along; an open field end is none.
    pub fn sill(&self) -> Option<Exact> {
        (DEEP < self.whole.y.from).then_some(self.whole.y.from)
    }

    /// The height of its head; none for a curve, over which no straight rail runs.
    pub fn level_head(&self) -> Option<Exact> {
        self.head.is_none().then_some(self.whole.y.to)
    }
}

/// A head that is not level.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Curve {
    /// A part of a circle.
    Arch {
        /// Left and right springing.
        over: (Exact, Exact),
        /// Where it springs.
        springing: Length,
        /// Its radius.
        radius: f64,
        /// The height of its centre in millimetres above the zero level.
        centre: f64,
    },
    /// A straight line.
    Slope {
        /// Left end.
        from: (Exact, Exact),
        /// Right end.
        to: (Exact, Exact),
    },
}

impl Curve {
    /// The head of an opening, where it is not level.
    pub fn of_opening(opening: &Opening) -> Option<Self> {
        let across = Span::new(opening.left.get().exact(), opening.right.get().exact());
        Self::of(opening.head.as_ref()?, across, opening.top.get())
    }

    fn of(head: &Head, over: Span, top: Length) -> Option<Self> {
        match head.kind {
            HeadKind::Level => None,
            HeadKind::Round | HeadKind::Segmental => {
                let rise = (top - head.springing.get()).in_mm();
                let half = over.size().in_mm() / 2.0;
                let radius = (half * half + rise * rise) / (2.0 * rise);
                Some(Self::Arch {
                    over: (over.from, over.to),
                    springing: head.springing.get(),
                    radius,
                    centre: top.in_mm() - radius,
                })
            }
            HeadKind::Sloping => Some(Self::Slope {
                from: (over.from, head.springing.get().exact()),
                to: (over.to, head.right.map_or(top, Length::from).exact()),
            }),
        }
    }

    /// The head's height at a place, to the nanometre.
    pub fn at(&self, x: Exact) -> Exact {
        match *self {
            Self::Arch { over: (from, to), springing, radius, centre } => {
                if x <= from || to <= x {
                    return springing.exact();
                }
                let aside = x.in_mm() - (from + to).half().in_mm();
                Length::nearest_mm(centre + libm::sqrt((radius * radius - aside * aside).max(0.0))).exact()
            }
            Self::Slope { from, to } => {
                let nm = Length::from_nm(1);
                let points = vec![(from.0.nearest(nm), from.1.nearest(nm)), (to.0.nearest(nm), to.1.nearest(nm))];
                Line::through(points).at(x)
            }
        }
    }

    /// The lowest height at which the head is no longer upright at its sides.
    pub fn springing(&self) -> Exact {
        match *self {
            Self::Arch { springing, .. } => springing.exact(),
            Self::Slope { from, to } => from.1.min(to.1),
        }
    }

    /// The radius, for an arch.
    pub const fn radius(&self) -> Option<f64> {
        match self {
            Self::Arch { radius, .. } => Some(*radius),
            Self::Slope { .. } => None,
        }
    }

    /// The head over a stretch as points close enough to cut by: its ends and eighths between them.
    pub fn points(&self, over: Span) -> Vec<(Exact, Exact)> {
        let eighths = match self {
            Self::Arch { .. } => 8,
            Self::Slope { .. } => 1,
        };
        (0..=eighths)
            .map(|k| {
                let x = over.from + over.size().times(k, eighths).unwrap_or(Exact::ZERO);
                (x, self.at(x))
            })
            .collect()
    }
}

/// Everything that stands in the way of trim on this wall, from left to right.
pub fn things(ground: &Ground<'_>) -> Vec<Thing> {
    let survey = &ground.input.survey;
    let openings = survey.openings.iter().enumerate().filter_map(|(n, opening)| of_opening(n, opening, ground));
    let zones = survey.keep_clear.iter().enumerate().filter_map(|(n, zone)| {
        let own = Rect::new(
            Span::new(zone.left.get().exact(), zone.right.get().exact()),
            Span::new(zone.bottom.get().exact(), zone.top.get().exact()),
        );
        let clearance = zone.clearance.map_or(Length::ZERO, Length::from);
        thing(Source::KeepClear(n), own, vec![own], clearance, false, None, ground)
    });
    let mut found: Vec<Thing> = openings.chain(zones).collect();
    found.sort_by_key(|thing| (thing.sides().from, thing.heights().from, thing.sides().to));
    found
}

fn of_opening(n: usize, opening: &Opening, ground: &Ground<'_>) -> Option<Thing> {
    let across = Span::new(opening.left.get().exact(), opening.right.get().exact());
    let bottom = opening.bottom.map_or(DEEP, |bottom| bottom.get().exact());
    let top = opening.top.get().exact();
    let given = opening.clearance.map_or(Length::ZERO, Length::from);
    let set_back = opening.casing_projection.is_none() && ground.input.scheme.arris == Arris::SetBack;
    let clearance = if set_back && given == Length::ZERO { SET_BACK.in_units(ground.settled.units()) } else { given };
    let apron = opening.apron.map(|apron| {
        Rect::new(
            Span::new(apron.left.get().exact(), apron.right.get().exact()),
            Span::new(bottom, apron.top.get().exact()),
        )
    });
    let casing_from = apron.map_or(bottom, |apron| apron.y.to);
    let mut parts = vec![Rect::new(across, Span::new(casing_from, top))];
    parts.extend(opening.stool.map(|stool| {
        Rect::new(
            Span::new(stool.left.get().exact(), stool.right.get().exact()),
            Span::new(stool.bottom.get().exact(), stool.top.get().exact()),
        )
    }));
    parts.extend(apron);
    let own = parts.iter().copied().reduce(Rect::hull)?;
    let curve = Curve::of_opening(opening).filter(|_| clearance == Length::ZERO);
    thing(Source::Opening(n), own, parts, clearance, given == Length::ZERO, curve, ground)
}

/// A thing that stands in the field; none where trim never meets it.
fn thing(
    source: Source,
    own: Rect,
    parts: Vec<Rect>,
    clearance: Length,
    closes: bool,
    head: Option<Curve>,
    ground: &Ground<'_>,
) -> Option<Thing> {
    let wall = Span::new(ground.ends.0, ground.ends.1);
    let mut grown: Vec<Rect> = Vec::with_capacity(parts.len());
    for part in parts {
        let part = part.grown(clearance);
        let x = part.x.shared(wall);
        if !x.is_open() {
            continue;
        }
        // Where it ends below the foot or above the top of the boarding it is open to that side.
        let below = part.y.from <= ground.boarding.foot.range(x).0;
        let above = ground.boarding.top.range(x).1 <= part.y.to;
        grown.push(Rect::new(
            x,
            Span::new(if below { DEEP } else { part.y.from }, if above { HIGH } else { part.y.to }),
        ));
    }
    // A low one that no board meets still interrupts a new base.
    let base = ground.boarding.base.as_ref();
    let foot = |over: Span| {
        base.map_or(ground.boarding.foot.range(over).0, |base| base.bottom.range(over).0.min(base.band(over).from))
    };
    grown.retain(|part| part.y.overlaps(Span::new(foot(part.x), ground.boarding.top.range(part.x).1)));
    let whole = grown.iter().copied().reduce(Rect::hull)?;
    let wide = ground.bay < whole.x.size() * 2 && whole.y.overlaps(ground.field(whole.x));
    Some(Thing { source, parts: grown, whole, own, clearance, closes, wide, head })
}
