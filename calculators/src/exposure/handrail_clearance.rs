//! The handrail over new boards: the clear space behind it shrinks by the board.

use serde_json::json;

use crate::catalogue::works::{ADA_2010, IBC_1014, IRC_R311, UK_STAIRS};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Units, Within};

/// Clear space between rail and wall in the United States: 1½ in.
/// # Source
/// 2010 ADA Standards, 505.5.
pub const UNITED_STATES: Length = Length::um(38_100);

pub(crate) struct HandrailClearance;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// From the back of the rail to the bare wall, as it hangs.
    #[field("Clear space now")]
    clear: Within<0, 300_000>,
    /// Boards and beads behind the rail.
    #[field("Trim stands out by")]
    projection: Within<1_000, 100_000>,
    /// By the code where the stair stands; there is no default. United States: 1 1/2 in. Guidance in the United Kingdom: 50 to 75 mm, from a
    /// summary.
    #[field("Local code asks for")]
    required: Within<25_000, 200_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// For the hand, boards on.
    #[field("Clear space with boards")]
    have: Length,
    /// For the hand.
    #[field("Asked for")]
    required: Length,
    /// Brackets must bring the rail out by this.
    #[field("Longer brackets by")]
    bring_out: Length,
}

impl Calculator for HandrailClearance {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "handrail-clearance",
        title: "Hand space behind a rail",
        question: "Does a hand still fit behind the handrail?",
        step: 11,
        search: &["handrail", "stairs", "bracket", "clearance", "bannister", "banister", "too close"],
        headline: &["/have", "/required", "/bring_out"],
        list: None,
        cautions: &["handrail-loss", "stair-work"],
        sources: &[
            Source::new(ADA_2010, "505.5: 1½ in clear, United States", Standing::Published),
            Source::new(IBC_1014, "1014.7: 1½ in clear, United States", Standing::FromMemory),
            Source::new(UK_STAIRS, "50 to 75 mm clear", Standing::FromMemory),
            Source::new(IRC_R311, "height 34 to 38 in over the nosing line", Standing::FromMemory),
        ],
    };

    fn example(units: Units) -> Example {
        let (clear, projection, required, have) = if units == Units::Metric {
            ("65 mm", "18 mm", "50 mm", "47 mm")
        } else {
            ("1 3/4 in", "3/4 in", "1 1/2 in", "1 in")
        };
        Example {
            input: json!({ "clear": clear, "projection": projection, "required": required }),
            expects: vec![("/result/have/tape", json!(have))],
            checked_against: "by hand: clear space less board",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let required = input.required.get();
        let have = input.clear.get() - input.projection.get();
        let bring_out = if have < required { required - have } else { Length::ZERO };
        let working = vec![
            Step::new("clear space with boards")
                .by("c - p")
                .given("c", "clear space now", input.clear)
                .given("p", "trim stands out by", input.projection)
                .gives("h", "clear space", have),
            Step::new("longer brackets")
                .by("max(0, r - h)")
                .given("r", "asked for", required)
                .given("h", "clear space", have)
                .gives("b", "bring out by", bring_out),
        ];
        let words =
            Words::new("{} clear, compared with {}. A stair is not used without its rail; building control decides.")
                .with_both(have, required);
        let mut notes = vec![if have < required { Note::hold(words) } else { Note::check(words) }];
        if required < UNITED_STATES {
            notes.push(Note::check(
                Words::new("{} is less than any code known to this book: read the code again.").with(required),
            ));
        }
        Ok(Answer { result: Output { have, required, bring_out }, working, notes })
    }
}
