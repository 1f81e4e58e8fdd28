//! Flow cups: seconds through a nozzle as kinematic viscosity.
//!
//! The same nozzle width means different cups in different standards, so a cup is always named with its standard. Outside its
//! range a cup's equation is not used. Thixotropic wall paint does not flow like oil: for it a cup only repeats a shop's own setting.

use serde_json::json;

use crate::catalogue::works::{ASTM_D1200, ASTM_D4212, DIN_53211, ISO_2431};
use crate::catalogue::{
    Answer, Calculator, Card, Example, Fault, Input, Note, Output, Shaped, Source, Standing, Step, Words, Work,
};
use crate::quantity::{Amount, Physical, Units, kind};

/// A cup, by its standard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
pub enum Cup {
    /// ISO 2431, 3 mm.
    #[field("ISO 2431, 3 mm")]
    Iso3,
    /// ISO 2431, 4 mm.
    #[field("ISO 2431, 4 mm")]
    Iso4,
    /// ISO 2431, 5 mm.
    #[field("ISO 2431, 5 mm")]
    Iso5,
    /// ISO 2431, 6 mm.
    #[field("ISO 2431, 6 mm")]
    Iso6,
    /// ASTM D1200, No. 1.
    #[field("ASTM D1200, No. 1")]
    D1200No1,
    /// ASTM D1200, No. 2.
    #[field("ASTM D1200, No. 2")]
    D1200No2,
    /// ASTM D1200, No. 3.
    #[field("ASTM D1200, No. 3")]
    D1200No3,
    /// ASTM D1200, No. 4.
    #[field("ASTM D1200, No. 4")]
    D1200No4,
    /// ASTM D1200, No. 5.
    #[field("ASTM D1200, No. 5")]
    D1200No5,
    /// ASTM D4212 dip cup, No. 1.
    #[field("ASTM D4212 dip cup, No. 1")]
    D4212No1,
    /// ASTM D4212 dip cup, No. 2.
    #[field("ASTM D4212 dip cup, No. 2")]
    D4212No2,
    /// ASTM D4212 dip cup, No. 3.
    #[field("ASTM D4212 dip cup, No. 3")]
    D4212No3,
    /// ASTM D4212 dip cup, No. 4.
    #[field("ASTM D4212 dip cup, No. 4")]
    D4212No4,
    /// DIN 53211, 4 mm, withdrawn.
    #[field("DIN 53211, 4 mm (withdrawn)")]
    Din4,
}

/// A cup's equation: viscosity = slope × (time − offset) − curve / time, in mm²/s and seconds, within a range of times.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CupEquation {
    /// mm²/s for each second.
    pub slope: f64,
    /// Seconds taken off first.
    pub offset: f64,
    /// Divided by the time, taken off last.
    pub curve: f64,
    /// Shortest time that counts, seconds.
    pub least: f64,
    /// Longest time that counts, seconds.
    pub most: f64,
    /// Temperature of the test, °C.
    pub celsius: f64,
    /// Where the equation stands.
    pub work: Work,
}

const fn equation(slope: f64, offset: f64, curve: f64, least: f64, most: f64, celsius: f64, work: Work) -> CupEquation {
    CupEquation { slope, offset, curve, least, most, celsius, work }
}

impl Cup {
    /// Every cup, in the order of the standards.
    pub const ALL: [Self; 14] = [
        Self::Iso3,
        Self::Iso4,
        Self::Iso5,
        Self::Iso6,
        Self::D1200No1,
        Self::D1200No2,
        Self::D1200No3,
        Self::D1200No4,
        Self::D1200No5,
        Self::D4212No1,
        Self::D4212No2,
        Self::D4212No3,
        Self::D4212No4,
        Self::Din4,
    ];

    /// The cup's equation.
    /// # Source
    /// ISO 2431; ASTM D1200; ASTM D4212; DIN 53211. Ranges of D1200 No. 3 to 5 are 20 to 100 s.
    pub const fn equation(self) -> CupEquation {
        match self {
            Self::Iso3 => equation(0.443, 0.0, 200.0, 30.0, 100.0, 23.0, ISO_2431),
            Self::Iso4 => equation(1.37, 0.0, 200.0, 30.0, 100.0, 23.0, ISO_2431),
            Self::Iso5 => equation(3.28, 0.0, 220.0, 30.0, 100.0, 23.0, ISO_2431),
            Self::Iso6 => equation(6.90, 0.0, 570.0, 30.0, 100.0, 23.0, ISO_2431),
            Self::D1200No1 => equation(0.49, 35.0, 0.0, 55.0, 100.0, 25.0, ASTM_D1200),
            Self::D1200No2 => equation(1.44, 18.0, 0.0, 40.0, 100.0, 25.0, ASTM_D1200),
            Self::D1200No3 => equation(2.31, 6.58, 0.0, 20.0, 100.0, 25.0, ASTM_D1200),
            Self::D1200No4 => equation(3.85, 4.49, 0.0, 20.0, 100.0, 25.0, ASTM_D1200),
            Self::D1200No5 => equation(12.1, 2.0, 0.0, 20.0, 100.0, 25.0, ASTM_D1200),
            Self::D4212No1 => equation(1.1, 29.0, 0.0, 35.0, 80.0, 25.0, ASTM_D4212),
            Self::D4212No2 => equation(3.5, 14.0, 0.0, 20.0, 80.0, 25.0, ASTM_D4212),
            Self::D4212No3 => equation(11.7, 7.5, 0.0, 20.0, 80.0, 25.0, ASTM_D4212),
            Self::D4212No4 => equation(14.8, 5.0, 0.0, 20.0, 80.0, 25.0, ASTM_D4212),
            Self::Din4 => equation(4.57, 0.0, 452.0, 25.0, 150.0, 20.0, DIN_53211),
        }
    }
}

impl Cup {
    /// Its name, as forms and answers write it.
    pub fn name(self) -> String {
        self.node().as_str().unwrap_or_default().to_owned()
    }

    /// Cups in whose range a paint lies that takes a time outside this one's, of the same standard first, in words.
    pub fn instead(self, seconds: f64) -> String {
        let own = self.equation();
        let viscosity = own.slope * (seconds - own.offset) - own.curve / seconds;
        let fits = |cup: &Self| {
            let other = cup.equation();
            viscosity > 0.0 && *cup != self && (other.least..=other.most).contains(&other.seconds(viscosity))
        };
        let (same, others): (Vec<_>, Vec<_>) =
            Self::ALL.into_iter().filter(fits).partition(|cup| cup.equation().work == own.work);
        let names: Vec<String> = same.into_iter().chain(others).take(2).map(Self::name).collect();
        if names.is_empty() {
            "a cup with a smaller nozzle for a thin paint, a larger one for a thick paint".to_owned()
        } else {
            names.join(" or ")
        }
    }
}

impl CupEquation {
    /// Viscosity for a time; `None` outside the cup's range.
    pub fn viscosity(&self, seconds: f64) -> Option<Amount<kind::Viscosity>> {
        let counts = (self.least..=self.most).contains(&seconds);
        counts.then(|| Amount::of(self.slope * (seconds - self.offset) - self.curve / seconds))
    }

    /// Time for a viscosity, whether or not it is in the cup's range.
    pub fn seconds(&self, viscosity: f64) -> f64 {
        let level = viscosity + self.slope * self.offset;
        (level + libm::sqrt(level * level + 4.0 * self.slope * self.curve)) / (2.0 * self.slope)
    }
}

/// Where the cups' equations stand.
pub const SOURCES: [Source; 4] = [
    Source::new(ISO_2431, "equations of the 3, 4, 5 and 6 mm cups, 30 to 100 s", Standing::FromMemory),
    Source::new(ASTM_D1200, "equations of cups 1 to 5", Standing::FromMemory),
    Source::new(ASTM_D4212, "equations of dip cups 1 to 4", Standing::FromMemory),
    Source::new(DIN_53211, "4.57 t - 452 / t", Standing::FromMemory),
];

pub(crate) struct FlowCup;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// With its standard: a 4 mm nozzle is two different cups.
    #[field("Cup")]
    cup: Cup,
    /// From free flow to the first break of the stream.
    #[field("Time")]
    time: Physical<kind::Seconds, 1_000, 300_000>,
    /// Of the paint in the cup.
    #[field("Temperature of the paint", usual = ["20 °C", "25 °C"])]
    temperature: Physical<kind::Temperature, 1_000, 45_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Kinematic; times density gives the dynamic one.
    #[field("Kinematic viscosity")]
    viscosity: Amount<kind::Viscosity>,
    /// The same liquid in every other cup whose range it meets.
    #[field("The same in other cups")]
    others: Vec<OtherCup>,
}

/// The same liquid in another cup.
#[derive(Output)]
pub(crate) struct OtherCup {
    /// The cup.
    #[field("Cup")]
    cup: Cup,
    /// Its time.
    #[field("Time")]
    time: Amount<kind::Seconds>,
}

impl Calculator for FlowCup {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "flow-cup",
        title: "Flow cup",
        question: "How thin is it, and what would another cup say?",
        step: 14,
        search: &["viscosity", "cup seconds", "thin", "nozzle"],
        headline: &["/viscosity"],
        list: Some("/others"),
        cautions: &[],
        sources: &SOURCES,
    };

    fn example(units: Units) -> Example {
        let warm = if units == Units::Metric { "23 °C" } else { "73.4 °F" };
        Example {
            input: json!({ "cup": "ASTM D1200, No. 4", "time": "55 s", "temperature": warm }),
            expects: vec![("/result/viscosity/text", json!("194.5 mm²/s"))],
            checked_against: "by hand: 3.85 x (55 - 4.49) = 194.46",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let equation = input.cup.equation();
        let Some(viscosity) = equation.viscosity(input.time.get()) else {
            let seconds = Amount::<kind::Seconds>::of;
            let why = Words::new("this cup's equation holds from {} to {}; take {}")
                .with(seconds(equation.least))
                .with(seconds(equation.most))
                .with(input.cup.instead(input.time.get()));
            return Err(vec![Fault::new(
                "/time",
                Words::of(input.time),
                why,
                Words::of(seconds((equation.least + equation.most) / 2.0)),
            )]);
        };
        let others = Cup::ALL
            .into_iter()
            .filter(|cup| *cup != input.cup)
            .filter_map(|cup| {
                let other = cup.equation();
                let time = other.seconds(viscosity.get());
                (other.least..=other.most).contains(&time).then(|| OtherCup { cup, time: Amount::of(time) })
            })
            .collect();
        let number = Amount::<kind::Number>::of;
        let working = vec![
            Step::new("viscosity by the cup's equation")
                .by("k * (t - c) - q / t")
                .given("k", "slope of the cup", number(equation.slope))
                .given("t", "time", input.time)
                .given("c", "offset of the cup", number(equation.offset))
                .given("q", "curve of the cup", number(equation.curve))
                .gives("v", "kinematic viscosity", viscosity),
        ];
        let mut notes = vec![Note::remark(
            "Thixotropic wall paint does not flow like oil: for it the cup repeats your own setting and is no viscosity.",
        )];
        if (input.temperature.get() - equation.celsius).abs() > 2.0 {
            let words = Words::new("The cup's equation is for {}; two to three per cent shift with each degree.")
                .with(Amount::<kind::Temperature>::of(equation.celsius));
            notes.push(Note::check(words));
        }
        Ok(Answer { result: Output { viscosity, others }, working, notes })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn time_and_viscosity_are_inverse_in_every_cup() {
        for cup in Cup::ALL {
            let equation = cup.equation();
            for seconds in [equation.least, 60.0, equation.most] {
                let viscosity = equation.viscosity(seconds).expect("in range").get();
                assert_relative_eq!(equation.seconds(viscosity), seconds, max_relative = 1e-9);
            }
            assert_eq!(equation.viscosity(equation.most + 1.0), None);
        }
    }
}
