//! The measured wall: what a survey says about any place on it.
//!
//! Stations and lengths are points; between them everything is taken as straight. Heights are above the zero level, a level
//! plane through the high floor point, so a floor that falls is negative.

use super::geometry::{Line, Span};
use super::plan::HeightKnown;
use super::rake::Flight;
use super::survey::{BaseLine, Climbs, Station, Survey};
use crate::quantity::{Exact, Length};

/// A wall as it was measured.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Measured {
    /// Length on which bays are set out: the one measured lowest.
    pub length: Length,
    /// The height at which it was measured.
    pub length_at: Length,
    /// The floor.
    pub floor: Line,
    /// Top edge of the base, or the floor where there is none.
    pub foot: Line,
    /// The ceiling less the crown, point by point from left to right, where it was measured.
    pub ceiling: Option<Vec<(Length, Length)>>,
    /// The flight of a stair, seen climbing to the right.
    pub flight: Option<Flight>,
    /// Whether that flight climbs to the left in truth.
    pub mirrored: bool,
    /// Places of the stations, from left to right.
    stations: Vec<Length>,
    /// The floor at them, above the zero level.
    falls: Vec<Length>,
    /// The left end of the wall by height.
    left_end: Line,
    /// The right end of the wall by height.
    right_end: Line,
}

impl Measured {
    /// Reads a survey that has passed its checks.
    pub fn of(survey: &Survey) -> Self {
        let mut lengths = survey.lengths.clone();
        lengths.sort_by_key(|at| at.height);
        let (length, length_at) =
            lengths.first().map_or((Length::ZERO, Length::ZERO), |low| (low.length.get(), low.height.get()));
        let left_in = |at: &super::survey::LengthAt| at.left_in.map_or(Length::ZERO, Length::from);
        let left_end = Line::through(lengths.iter().map(|at| (at.height.get(), left_in(at))).collect());
        let right_end =
            Line::through(lengths.iter().map(|at| (at.height.get(), left_in(at) + at.length.get())).collect());

        let ground = Ground::of(survey, length);
        let crown = survey.top.crown_drop.map_or(Length::ZERO, Length::from);
        let heights: Vec<_> = survey
            .stations
            .iter()
            .filter_map(|station| {
                let at = station.at.get();
                Some((at, ground.at_station(survey, station, length) + station.floor_to_ceiling?.get() - crown))
            })
            .collect();
        Self {
            length,
            length_at,
            foot: ground.foot(survey, length),
            floor: ground.floor,
            ceiling: (!heights.is_empty()).then_some(heights),
            flight: ground.flight,
            mirrored: ground.mirrored,
            stations: survey.stations.iter().map(|station| station.at.get()).collect(),
            falls: survey.stations.iter().map(|station| survey.datum.get() - station.datum_to_floor.get()).collect(),
            left_end,
            right_end,
        }
    }

    /// Where the left end of the wall is at a height.
    pub fn left_at(&self, height: Exact) -> Exact {
        self.left_end.at(height)
    }

    /// Where the right end of the wall is at a height.
    pub fn right_at(&self, height: Exact) -> Exact {
        self.right_end.at(height)
    }

    /// The farthest left end and the nearest right end between two heights.
    pub fn clear_between(&self, low: Exact, high: Exact) -> (Exact, Exact) {
        (self.left_end.range(Span::new(low, high)).1, self.right_end.range(Span::new(low, high)).0)
    }

    /// Highest less lowest point of the floor, away from any stair.
    pub fn floor_fall(&self) -> Length {
        if self.flight.is_some() {
            return Length::ZERO;
        }
        let heights = || self.falls.iter().copied();
        heights().max().zip(heights().min()).map_or(Length::ZERO, |(high, low)| high - low)
    }

    /// How well the height between two places is known.
    pub fn known(&self, left: Exact, right: Exact) -> HeightKnown {
        let within = |station: &Length| left <= station.exact() && station.exact() <= right;
        let spans = self.stations.first().is_some_and(|first| first.exact() <= right)
            && self.stations.last().is_some_and(|last| left <= last.exact());
        let raked = self.flight.as_ref().is_some_and(|flight| {
            let (from, to) = self.seen(flight.first, flight.last());
            from.exact() <= left && right <= to.exact()
        });
        if self.stations.iter().any(within) {
            HeightKnown::Measured
        } else if spans || raked {
            HeightKnown::Interpolated
        } else {
            HeightKnown::NotMeasured
        }
    }

    /// Two places on the flight, given climbing to the right, as they stand on the wall.
    pub fn seen(&self, from: Length, to: Length) -> (Length, Length) {
        if self.mirrored { (self.length - to, self.length - from) } else { (from, to) }
    }

    /// A line over landings and nosings, or a level line where there is no stair.
    pub fn line_over(&self, over_landing: Length, over_nosings: Length) -> Line {
        match &self.flight {
            None => Line::level(over_landing),
            Some(flight) => {
                let line = flight.line(over_landing, over_nosings, self.length);
                if self.mirrored { line.mirrored(self.length) } else { line }
            }
        }
    }
}

/// How far a line is drawn out past an end of the wall, for what laps round a corner.
const PAST_THE_END: Length = Length::mm(250);

/// A line measured at stations from left to right; where they reach an end of the wall it goes on past it at its own slope.
pub fn past_the_ends(points: Vec<(Length, Length)>, length: Length) -> Line {
    let beyond = |reached: bool| if reached { PAST_THE_END } else { Length::ZERO };
    let left = beyond(points.first().is_some_and(|(x, _)| *x <= Length::ZERO));
    let right = beyond(points.last().is_some_and(|(x, _)| length <= *x));
    Line::through(points).drawn_out(left, right)
}

/// The floor of a wall, with its stair where it runs up one.
struct Ground {
    /// The floor as it lies on the wall.
    floor: Line,
    /// The lower and the upper landing seen climbing to the right, each drawn out level, and the flight between them.
    landings: Option<(Line, Line)>,
    flight: Option<Flight>,
    mirrored: bool,
}

impl Ground {
    fn of(survey: &Survey, length: Length) -> Self {
        let fall = |station: &Station| survey.datum.get() - station.datum_to_floor.get();
        let Some(stair) = &survey.stair else {
            let points = survey.stations.iter().map(|station| (station.at.get(), fall(station))).collect();
            return Self { floor: past_the_ends(points, length), landings: None, flight: None, mirrored: false };
        };
        let mirrored = stair.climbs == Climbs::Left;
        let flight = Flight::of(stair, length);
        let mut points: Vec<(Length, Length)> = survey
            .stations
            .iter()
            .map(|station| (if mirrored { length - station.at.get() } else { station.at.get() }, fall(station)))
            .collect();
        if mirrored {
            points.reverse();
        }
        let nm = Length::from_nm(1);
        let lower: Vec<_> = points.iter().copied().filter(|(x, _)| *x <= flight.first).collect();
        let lower = past_the_ends(lower, length);
        let upper: Vec<_> = points.into_iter().filter(|(x, _)| flight.last() <= *x).collect();
        let upper = past_the_ends(upper, length);
        let start = lower.at(flight.first.exact()).nearest(nm);
        let flight = flight.on_landings(start, -upper.after(flight.last().exact()).nearest(nm));
        let upper = upper.raised(flight.landing);
        let on = |line: &Line, from: Length, to: Length| {
            let inner = line.points().iter().copied().filter(move |(x, _)| from < *x && *x < to);
            let end = |x: Length| (x, line.at(x.exact()).nearest(nm));
            [end(from)].into_iter().chain(inner).chain([end(to)]).collect::<Vec<_>>()
        };
        let mut floor = on(&lower, Length::ZERO.min(flight.first), flight.first);
        floor.extend([(flight.first, start + flight.riser), (flight.last(), flight.top())]);
        floor.extend(on(&upper, flight.last(), length.max(flight.last())).into_iter().skip(1));
        let floor = Line::through(floor);
        let floor = if mirrored { floor.mirrored(length) } else { floor };
        Self { floor, landings: Some((lower, upper)), flight: Some(flight), mirrored }
    }

    /// The floor at a station: as it was measured, on an upper landing from that landing's own datum.
    fn at_station(&self, survey: &Survey, station: &Station, length: Length) -> Length {
        let at = station.at.get();
        let along = if self.mirrored { length - at } else { at };
        let landing = self.flight.filter(|flight| flight.last() <= along).map_or(Length::ZERO, |flight| flight.landing);
        landing + survey.datum.get() - station.datum_to_floor.get()
    }

    /// The top edge of the base, or the floor where there is none. Before a stair it follows the landing; over the flight it keeps its
    /// height above the nosings.
    fn foot(&self, survey: &Survey, length: Length) -> Line {
        let Some(base) = &survey.base else { return self.floor.clone() };
        let (height, level) = (base.height.get(), base.line == BaseLine::Level);
        let (Some(flight), Some(stair), Some((lower, upper))) = (&self.flight, &survey.stair, &self.landings) else {
            return if level { Line::level(height) } else { self.floor.raised(height) };
        };
        let (lower, upper) = if level {
            (Line::level(height), Line::level(flight.landing + height))
        } else {
            (lower.raised(height), upper.raised(height))
        };
        let rake = flight.over_nosings(stair.base_over_nosings.get(), length);
        let foot = lower.pick(&rake, true).pick(&upper, false);
        if self.mirrored { foot.mirrored(length) } else { foot }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn survey() -> Survey {
        crate::catalogue::read_as(json!({
            "name": "A", "datum": "40 in",
            "lengths": [
                { "height": "62 in", "length": "173 1/16 in" },
                { "height": "0 in", "length": "173 3/8 in" },
                { "height": "36 in", "length": "173 1/4 in" }
            ],
            "stations": [
                { "at": "0 in", "datum_to_floor": "40 in", "floor_to_ceiling": "96 1/4 in" },
                { "at": "43 in", "datum_to_floor": "40 1/16 in" },
                { "at": "173 3/8 in", "datum_to_floor": "40 1/4 in", "floor_to_ceiling": "96 1/8 in" }
            ],
            "base": { "height": "5 1/2 in", "thickness": "9/16 in" },
            "top": { "crown_drop": "3 1/4 in" },
            "left": { "kind": "inside-first" }, "right": { "kind": "inside-first" }
        }))
        .expect("a survey")
    }

    #[test]
    fn a_falling_floor_a_leaning_end_and_a_crown() {
        // Common practice arithmetic, worked by hand.
        let wall = Measured::of(&survey());
        assert_eq!(wall.length, Length::sixty_fourths(173 * 64 + 24));
        assert_eq!(wall.floor.at(Length::inches(43).exact()), Length::sixty_fourths(-4));
        assert_eq!(wall.foot.at(Exact::ZERO), Length::sixty_fourths(5 * 64 + 32));
        assert_eq!(wall.floor_fall(), Length::sixty_fourths(16));
        assert_eq!(wall.right_at(Length::inches(18).exact()), Length::sixty_fourths(173 * 64 + 20));
        assert_eq!(wall.right_at(Length::inches(90).exact()), Length::sixty_fourths(173 * 64 + 4));
        let ceiling = wall.ceiling.as_ref().expect("it was measured");
        assert_eq!(ceiling[0], (Length::ZERO, Length::inches(93)));
        assert_eq!(wall.known(Exact::ZERO, Length::inches(2).exact()), HeightKnown::Measured);
        assert_eq!(wall.known(Length::inches(3).exact(), Length::inches(5).exact()), HeightKnown::Interpolated);
    }

    #[test]
    fn a_stair_that_climbs_to_the_left_is_the_mirror_of_one_that_climbs_to_the_right() {
        let mut right = survey();
        right.lengths.truncate(1);
        right.stations.clear();
        let stair = |climbs: &str, first: &str| {
            crate::catalogue::read_as(json!({
                "climbs": climbs, "first_nosing": first, "run": "88 1/8 in", "rise": "56 1/4 in",
                "first_riser": "7 in", "base_over_nosings": "4 1/2 in"
            }))
            .expect("a stair")
        };
        let mut left = right.clone();
        right.stair = Some(stair("right", "30 in"));
        left.stair = Some(stair("left", "143 1/16 in"));
        let (right, left) = (Measured::of(&right), Measured::of(&left));
        for eighths in 0..170 {
            let x = Length::sixty_fourths(eighths * 64 + 3);
            assert_eq!(right.foot.at(x.exact()), left.foot.at((left.length - x).exact()), "{x}");
        }
    }
}
