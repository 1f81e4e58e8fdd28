//! Whether the United States rule on lead paint applies: how much painted surface one room loses or has sanded.
//!
//! The whole face of a component counts. A year that nobody knows counts as old. Other countries have other years and rules.

use serde_json::json;

use crate::catalogue::works::CFR_40_745;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Count, Units, Within, kind};

/// Homes built before this year count as lead-painted unless tested. 40 CFR 745.103, target housing.
pub const LEAD_YEAR: u32 = 1978;
/// Lead-based paint by area, mg/cm², and by weight, percent. 40 CFR 745.
pub const LEAD_BASED: (f64, f64) = (1.0, 0.5);
/// Minor work, square feet: inside, in one room; outside. 40 CFR 745.83.
pub const MINOR_FT2: (f64, f64) = (6.0, 20.0);
/// Days within which jobs in one room count together. 40 CFR 745.83.
pub const ONE_JOB_DAYS: u32 = 30;
const FT2_M2: f64 = 0.3048 * 0.3048;

/// Inside a room, or outside.
#[derive(Clone, Copy, PartialEq, Eq, Input)]
pub(crate) enum Place {
    /// One room.
    Inside,
    /// The outside of the building.
    Outside,
}

/// One kind of component.
#[derive(Input)]
pub(crate) struct Component {
    /// The whole painted face, also where only a strip is touched and the component comes off.
    #[field("Face")]
    face: Within<1_000, 3_000_000>,
    /// The whole length.
    #[field("Length")]
    length: Within<10_000, 60_000_000>,
    /// Of the same kind.
    #[field("How many")]
    count: Count<1, 500>,
}

pub(crate) struct LeadArea;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Left out where nobody knows; then it counts as old.
    #[field("Year built")]
    year: Option<Count<1000, 2200>>,
    /// Each place has its own limit.
    #[field("Where")]
    place: Place,
    /// Whatever painted surface is sanded, cut or taken off, in this room, in thirty days.
    #[field("Painted surface disturbed", size(1..=40))]
    components: Vec<Component>,
    /// Replacing a window, or tearing down a painted surface, counts whatever its area.
    #[field("Window replaced, or painted surface demolished")]
    always_counts: bool,
    /// Power sanding or planing without a HEPA vacuum, open flame or torch, or a heat gun at 1100 °F (593 °C) and over.
    #[field("A prohibited practice is used", default)]
    prohibited: bool,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Compared with the limit.
    #[field("Painted surface disturbed")]
    area: Amount<kind::Area>,
    /// For minor work.
    #[field("Limit of minor work")]
    limit: Amount<kind::Area>,
    /// What follows from these figures.
    #[field("These figures")]
    verdict: &'static str,
}

impl Calculator for LeadArea {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "lead-paint-area",
        title: "Lead paint: area disturbed (US)",
        question: "Does the United States lead rule apply to this job?",
        step: 2,
        search: &["lead", "1978", "old paint", "renovation", "scuff sanding", "lead rule"],
        headline: &["/verdict", "/area", "/limit"],
        list: None,
        cautions: &["lead-paint"],
        sources: &[Source::new(
            CFR_40_745,
            "745.83: 6 ft² a room inside, 20 ft² outside, 30 days, whole face of a component, no prohibited practice; 745.103: target housing, built before 1978",
            Standing::Published,
        )],
    };

    fn example(units: Units) -> Example {
        let (a, b, c, d) = if units == Units::Metric {
            ("64 mm", "1349 mm", "90 mm", "4404 mm")
        } else {
            ("2 1/2 in", "53 1/8 in", "3 1/2 in", "173 3/8 in")
        };
        let area = if units == Units::Metric { "1.432 m²" } else { "15.28 ft²" };
        Example {
            input: json!({ "year": 1962, "place": "inside", "components": [{ "face": a, "length": b, "count": 12 }, { "face": c, "length": d, "count": 1 }], "always_counts": false, "prohibited": false }),
            expects: vec![
                ("/result/area/text", json!(area)),
                ("/result/verdict", json!("over the limit of minor work")),
            ],
            checked_against: "by hand: 12 x 2.5 x 53.125 / 144 = 11.07 and 3.5 x 173.375 / 144 = 4.21 ft²; 12 x 0.064 x 1.349 + 0.09 x 4.404 = 1.432 m²",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let area: f64 = input
            .components
            .iter()
            .map(|part| part.face.get().in_m() * part.length.get().in_m() * f64::from(part.count.get()))
            .sum();
        let limit = FT2_M2 * if input.place == Place::Inside { MINOR_FT2.0 } else { MINOR_FT2.1 };
        let square = Amount::<kind::Area>::of;
        let mut step = Step::new("whole faces of all components, in m²");
        for (index, part) in input.components.iter().enumerate() {
            let n = index + 1;
            step = step
                .given(format!("f{n}"), format!("face {n}"), part.face)
                .given(format!("l{n}"), format!("length {n}"), part.length)
                .given(format!("n{n}"), format!("how many of {n}"), part.count.get());
        }
        let terms: Vec<_> = (1..=input.components.len()).map(|n| format!("f{n} * l{n} * n{n}")).collect();
        let working = vec![
            step.by(format!("({}) / 1000000", terms.join(" + ")))
                .gives("A", "painted surface disturbed", square(area))
                .because(Words::new("compared with {} for minor work").with(square(limit))),
        ];
        let old = input.year.is_none_or(|year| year.get() < LEAD_YEAR);
        let over = area > limit * (1.0 + 1e-12);
        let mut notes = Vec::new();
        let verdict = match (old, over || input.always_counts || input.prohibited) {
            (true, true) => {
                notes.push(Note::hold("The United States rule applies unless a test by an accepted method says otherwise: a certified renovator and lead-safe practice, before anything is sanded, cut or taken off."));
                if input.prohibited && !over && !input.always_counts {
                    notes.push(Note::hold("The exception for minor work is lost, whatever the area: it holds only where no prohibited practice is used."));
                    "no minor work: a prohibited practice is used"
                } else {
                    "over the limit of minor work"
                }
            }
            (true, false) => {
                notes.push(Note::check("Under the limit of minor work by these figures. Jobs in the same room within 30 days add up. The exception is lost if a prohibited practice is used, a window is replaced or a painted surface is demolished. Trim that breaks as it comes off can count as demolition."));
                "under the limit of minor work"
            }
            (false, _) => {
                notes.push(Note::remark("Built in 1978 or later: this rule starts with the year. Other countries, and later findings, count otherwise."));
                "outside the rule by year"
            }
        };
        if old {
            notes.push(Note::check("In assisted housing the limit inside is 2 ft² (from memory, 24 CFR 35.1350). The rules for the workers (29 CFR 1926.62) count whatever the area."));
        }
        if input.year.is_none() {
            notes.push(Note::check("Nobody knows the year: it counts as old."));
        }
        Ok(Answer { result: Output { area: square(area), limit: square(limit), verdict }, working, notes })
    }
}
