//! Trim near heat: what the label asks, and what a code asks round a fireplace. Never a pass.

use serde_json::json;

use crate::catalogue::works::{IRC_R1001, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{INCH, Length, Units, Within};

/// No combustible trim within this of a fireplace opening: 6 in.
/// # Source
/// International Residential Code R1001.11, from memory; published summaries disagree.
pub const FIREPLACE_LEAST: Length = Length::inches(6);
/// Within this of the opening trim may stand out by an eighth of its distance: 12 in. Same source.
pub const FIREPLACE_FAR: Length = Length::inches(12);

/// Distance from a fireplace opening that a projection needs: eight times what it stands out, at least 6 in, at most 12.
///
/// Over 1½ in of projection the rule gives 12 in.
pub fn fireplace_distance(projection: Length) -> Length {
    let eightfold = projection * 8;
    if eightfold < FIREPLACE_LEAST {
        FIREPLACE_LEAST
    } else if eightfold > FIREPLACE_FAR {
        FIREPLACE_FAR
    } else {
        eightfold
    }
}

/// What gives off the heat.
#[derive(Clone, Copy, PartialEq, Eq, Input)]
pub(crate) enum HeatSource {
    /// A heater, stove or flue with a label.
    Heater,
    /// An open fireplace.
    Fireplace,
}

pub(crate) struct HeatClearance;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// A heater has a label; a fireplace has a code.
    #[field("Heat from")]
    source: HeatSource,
    /// To combustible material, copied from its label or handbook; needed for a heater.
    #[field("Clearance on the label")]
    label: Option<Within<0, 3_000_000>>,
    /// From the heater to the bare wall, or from the opening to the nearest trim.
    #[field("Distance now")]
    distance: Within<0, 5_000_000>,
    /// Boards, rails and beads together.
    #[field("Trim stands out by")]
    projection: Within<1_000, 300_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Between heat and trim.
    #[field("Asked for")]
    required: Length,
    /// Once the trim is on.
    #[field("Left with the trim on")]
    have: Length,
    /// What follows from these figures.
    #[field("These figures")]
    verdict: &'static str,
}

impl Calculator for HeatClearance {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "heat-clearance",
        title: "Trim near heat",
        question: "Is this trim too close to the heater or the fireplace?",
        step: 2,
        search: &["heater", "fireplace", "stove", "clearance", "combustible", "mantel", "radiator", "how far from"],
        headline: &["/have", "/required", "/verdict"],
        list: None,
        cautions: &["fire-near-heat"],
        sources: &[
            Source::new(IRC_R1001, "6 in; within 12 in an eighth of the distance", Standing::FromMemory),
            Source::new(PRACTICE, "the label of the appliance decides", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        let (label, distance, projection, have) = if units == Units::Metric {
            ("50 mm", "50 mm", "18 mm", "32 mm")
        } else {
            ("2 in", "2 in", "3/4 in", "1 1/4 in")
        };
        Example {
            input: json!({ "source": "heater", "label": label, "distance": distance, "projection": projection }),
            expects: vec![("/result/have/tape", json!(have))],
            checked_against: "by hand: the board takes its own thickness off the distance",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (distance, projection) = (input.distance.get(), input.projection.get());
        let (required, have, step) = match (input.source, input.label) {
            (HeatSource::Heater, None) => {
                return Err(vec![Fault::new(
                    "/label",
                    "nothing",
                    "no default fills a missing clearance: copy it from the appliance's label",
                    Length::inches(2),
                )]);
            }
            (HeatSource::Heater, Some(label)) => {
                let have = distance - projection;
                let step = Step::new("left once the trim is on")
                    .by("d - p")
                    .given("d", "distance now", input.distance)
                    .given("p", "trim stands out by", input.projection)
                    .gives("h", "left", have);
                (label.get(), have, step)
            }
            (HeatSource::Fireplace, _) => {
                let step = Step::new("distance the code asks for this projection")
                    .by("min(304.8, max(152.4, 8 * p))")
                    .given("p", "trim stands out by", input.projection)
                    .gives("r", "asked for", fireplace_distance(projection))
                    .because(
                        Words::new("at least {}, and eight times the projection up to {}")
                            .with(FIREPLACE_LEAST)
                            .with(FIREPLACE_FAR),
                    );
                (fireplace_distance(projection), distance, step)
            }
        };
        let words = Words::new("{} left, compared with {} asked for. The label, the code in force where you work and the authority decide; this page never does.").with(have).with(required);
        let short = have < required;
        let verdict = if short { "closer than asked: stop" } else { "not closer than asked" };
        let mut notes = vec![if short { Note::hold(words) } else { Note::check(words) }];
        if input.source == HeatSource::Fireplace {
            notes.push(Note::check("Published summaries of this rule disagree: read the edition in force."));
            if projection > INCH + Length::sixty_fourths(32) {
                notes.push(Note::check("Projections over 1 1/2 in have further rules, for mantel and legs."));
            }
        }
        Ok(Answer { result: Output { required, have, verdict }, working: vec![step], notes })
    }
}
