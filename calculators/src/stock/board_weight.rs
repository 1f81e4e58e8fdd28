//! The weight of a board, and of a stack, so that lifting is planned before the van is opened.

use serde_json::json;

use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Count, Length, Physical, Units, Within, kind};

/// Longest board that one person is asked to carry: 2.4 m. Common practice, no source; longer ones whip and hit people.
const ONE_PERSON: Length = Length::mm(2_400);
/// Heaviest load that is passed over without a word: 15 kg. A default of this book; local rules on lifting come first.
const LIGHT_KG: f64 = 15.0;

/// The mass of a board of this section, length and density.
///
/// Units: exact lengths, kg/m³. Formula: width × thickness × length × density.
/// # Source
/// Follows from geometry.
pub fn board_mass(
    width: Length,
    thickness: Length,
    length: Length,
    density: Amount<kind::Density>,
) -> Amount<kind::Mass> {
    Amount::of(width.in_m() * thickness.in_m() * length.in_m() * density.get())
}

pub(crate) struct BoardWeight;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// As measured, not as it is called.
    #[field("Board width")]
    width: Within<12_000, 305_000>,
    /// As measured.
    #[field("Board thickness")]
    thickness: Within<3_000, 51_000>,
    /// As it is carried.
    #[field("Length")]
    length: Within<25_000, 7_000_000>,
    /// From the maker's sheet; medium-density fibreboard is near 750 kg/m³.
    #[field("Density", usual = ["350 kg/m3", "850 kg/m3"])]
    density: Physical<kind::Density, 100_000, 1_200_000>,
    /// How many of them make a load.
    #[field("Boards in the stack")]
    boards: Count<1, 500>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// One board.
    #[field("Weight of one")]
    each: Amount<kind::Mass>,
    /// All of them.
    #[field("Weight of the stack")]
    stack: Amount<kind::Mass>,
}

impl Calculator for BoardWeight {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "board-weight",
        title: "Board weight",
        question: "What does a board weigh, and do two people carry it?",
        step: 6,
        search: &["lifting", "carrying", "mass", "load", "stack"],
        headline: &["/each", "/stack"],
        list: None,
        cautions: &["lifting"],
        sources: &[
            Source::new(GEOMETRY, "volume of a prism times density", Standing::Derived),
            Source::new(PRACTICE, "two people from 2.4 m", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "width": "3 1/2 in", "thickness": "3/4 in", "length": "16'", "density": "47 lb/ft3", "boards": 9 }),
                expects: vec![("/result/each/text", json!("13.71 lb"))],
                checked_against: "by hand: 3.5 x 0.75 x 192 / 1728 = 0.29167 ft3, times 47",
            },
            Units::Metric => Example {
                input: json!({ "width": "90 mm", "thickness": "18 mm", "length": "4.8 m", "density": "750 kg/m3", "boards": 9 }),
                expects: vec![("/result/each/text", json!("5.832 kg"))],
                checked_against: "by hand: 0.09 x 0.018 x 4.8 = 0.007776 m3, times 750",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let each = board_mass(input.width.get(), input.thickness.get(), input.length.get(), input.density.amount());
        let stack = Amount::of(each.get() * f64::from(input.boards.get()));
        let working = vec![
            Step::new("weight of one board")
                .by("w * t * l * d / 1000000000")
                .given("w", "width", input.width)
                .given("t", "thickness", input.thickness)
                .given("l", "length", input.length)
                .given("d", "density", input.density)
                .gives("m", "weight of one", each)
                .because("a cubic metre is 1 000 000 000 mm³"),
            Step::new("weight of the stack")
                .by("m * n")
                .given("m", "weight of one", each)
                .given("n", "boards", input.boards.get())
                .gives("M", "weight of the stack", stack),
        ];
        let mut notes = Vec::new();
        if input.length.get() > ONE_PERSON {
            notes.push(Note::remark(
                "Longer than 2.4 m (8 ft): two people carry it, for its length and not for its weight.",
            ));
        }
        if each.get() > LIGHT_KG {
            notes.push(Note::check(
                Words::new("{} in one piece: plan the lift, and keep to the rules on lifting where you work.")
                    .with(each),
            ));
        }
        Ok(Answer { result: Output { each, stack }, working, notes })
    }
}
