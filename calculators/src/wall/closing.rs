//! Closing checks: can these numbers be trusted? Loops, sums and repeats, and what a survey gives reason to say.

use super::survey::Survey;
use crate::catalogue::{Note, Words};
use crate::quantity::{Length, Units};

/// Most a datum loop or a repeated reading may be out: 1/16 in or 1.5 mm. A default of this book.
pub fn loop_limit(units: Units) -> Length {
    match units {
        Units::Imperial => Length::sixty_fourths(4),
        Units::Metric => Length::um(1_500),
    }
}

/// Most a sum of parts may differ from the whole: 1/8 in or 3 mm. A default of this book.
pub fn sum_limit(units: Units) -> Length {
    match units {
        Units::Imperial => Length::sixty_fourths(8),
        Units::Metric => Length::mm(3),
    }
}

/// A change of the floor or between lengths that is asked about: 1 in or 25 mm. A default of this book.
fn doubtful(units: Units) -> Length {
    match units {
        Units::Imperial => Length::inches(1),
        Units::Metric => Length::mm(25),
    }
}

/// One closing check: what two readings that should agree differ by, and what they may.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Closure {
    /// How far the readings are apart.
    pub out: Length,
    /// How far they may be apart.
    pub limit: Length,
}

impl Closure {
    /// Two readings of one thing.
    pub fn repeat(first: Length, second: Length, units: Units) -> Self {
        Self { out: (second - first).size(), limit: loop_limit(units) }
    }

    /// Parts measured one by one against the whole.
    pub fn sum(parts: &[Length], whole: Length, units: Units) -> Self {
        Self { out: (parts.iter().copied().sum::<Length>() - whole).size(), limit: sum_limit(units) }
    }

    /// Whether it closes.
    pub fn closes(&self) -> bool {
        self.out <= self.limit
    }
}

/// What a survey gives reason to say before any layout is drawn.
pub fn survey_notes(survey: &Survey, units: Units) -> Vec<Note> {
    let mut notes = Vec::new();
    let most = doubtful(units);
    if survey.stations.is_empty() {
        notes.push(Note::check(
            "No station was measured: floor and base are taken as level, and all lengths with them.",
        ));
    }
    for pair in survey.stations.windows(2) {
        let change = (pair[1].datum_to_floor.get() - pair[0].datum_to_floor.get()).size();
        if most < change && pair[0].at != pair[1].at {
            let words = Words::new(
                "Between {} and {} the floor changes by {}: is there a step? Give two stations at its place.",
            );
            notes.push(Note::check(words.with(pair[0].at).with(pair[1].at).with(change)));
        }
    }
    if survey.lengths.len() == 1 {
        notes.push(Note::check("The length was read at one height only: whether the ends lean is not known."));
    }
    let lengths = || survey.lengths.iter().map(|at| at.length.get());
    if let Some(apart) =
        lengths().max().zip(lengths().min()).map(|(most, least)| most - least).filter(|apart| most < *apart)
    {
        let words =
            Words::new("The lengths at different heights are {} apart: read them again before anything is cut.");
        notes.push(Note::check(words.with(apart)));
    }
    if survey.studs.is_none() {
        notes.push(Note::remark(
            "No studs were found: boards and rails are held by adhesive and pins, and no joint can be placed.",
        ));
    }
    notes
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_of_a_wall_add_up_to_it() {
        // Common practice arithmetic, worked by hand: 34-3/4 + 42-1/2 + 35-3/8 + 59-1/2 + 44-5/8 = 216-3/4.
        let in8 = |eighths: i64| Length::sixty_fourths(eighths * 8);
        let parts = [278, 340, 283, 476, 357].map(in8);
        let closure = Closure::sum(&parts, in8(1734), Units::Imperial);
        assert_eq!(closure.out, Length::ZERO);
        assert!(closure.closes());
        assert!(!Closure::sum(&parts, in8(1736), Units::Imperial).closes());
        assert!(Closure::repeat(in8(10), Length::sixty_fourths(84), Units::Imperial).closes());
        assert!(!Closure::repeat(Length::mm(1000), Length::mm(1002), Units::Metric).closes());
    }
}
