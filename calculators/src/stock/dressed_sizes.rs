//! Dressed sizes as a question of its own.

use serde_json::json;

use super::dressed::{self, Dressed, THICKNESSES, WIDTHS, of_nominal};
use crate::catalogue::{Answer, Calculator, Card, Cited, Example, Fault, Input, Note, Output, Standing, Step, Words};
use crate::quantity::{Length, Units, Within};

pub(crate) struct DressedSizes;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// What the board is called: the 1 in 1 by 6.
    #[field("Nominal thickness")]
    thickness: Within<9_500, 102_000>,
    /// What the board is called: the 6 in 1 by 6.
    #[field("Nominal width")]
    width: Within<50_000, 407_000>,
    /// Dry is at most 19 % moisture.
    #[field("Seasoning")]
    seasoning: Seasoning,
}

/// How moist the board was dressed.
#[derive(Clone, Copy, PartialEq, Eq, Input)]
pub(crate) enum Seasoning {
    /// At most 19 % moisture.
    Dry,
    /// More than 19 % moisture.
    Green,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// At least.
    #[field("Thickness")]
    thickness: Length,
    /// At least.
    #[field("Width")]
    width: Length,
    /// Missing from the name.
    #[field("Narrower than its name by")]
    narrower: Length,
}

fn missing(pointer: &str, given: Length, table: &[Cited<Dressed>]) -> Fault {
    let nearest = table.iter().map(|row| row.value.nominal()).min_by_key(|nominal| (*nominal - given).size());
    let nearest = nearest.unwrap_or(given);
    let why = Words::new("no such nominal size stands in the table; the nearest is {}").with(nearest);
    Fault::new(pointer, Words::of(given), why, Words::of(nearest))
}

impl Calculator for DressedSizes {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "dressed-sizes",
        title: "Dressed sizes",
        question: "What does a one by six measure?",
        step: 6,
        search: &["nominal", "actual", "softwood", "lumber", "one by", "dimension"],
        headline: &["/width", "/thickness"],
        list: None,
        cautions: &["nominal-size"],
        sources: &[dressed::BOARDS_SOURCE, dressed::DIMENSION_SOURCE],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "thickness": "1 in", "width": "6 in", "seasoning": "dry" }),
            expects: vec![
                ("/result/width/nm", json!([139_700_000, 1])),
                ("/result/thickness/nm", json!([19_050_000, 1])),
            ],
            checked_against: "PS 20 as quoted: 1 x 6 dry is 3/4 by 5 1/2 in",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let thickness = of_nominal(&THICKNESSES, input.thickness.get());
        let width = of_nominal(&WIDTHS, input.width.get());
        let (Some(thickness), Some(width)) = (thickness, width) else {
            let mut faults = Vec::new();
            if thickness.is_none() {
                faults.push(missing("/thickness", input.thickness.get(), &THICKNESSES));
            }
            if width.is_none() {
                faults.push(missing("/width", input.width.get(), &WIDTHS));
            }
            return Err(faults);
        };
        let pick = |row: Dressed| if input.seasoning == Seasoning::Dry { row.dry() } else { row.green() };
        let (t, w) = (pick(thickness.value), pick(width.value));
        let working = vec![
            Step::new("narrower than its name by")
                .by("n - w")
                .given("n", "nominal width", input.width)
                .given("w", "dressed width", w)
                .gives("d", "narrower by", input.width.get() - w),
        ];
        let mut notes = vec![Note::remark(
            "The least the standard allows: measure five delivered boards, and lay out with what you measured.",
        )];
        for (name, row) in [("thickness", thickness), ("width", width)] {
            if row.source.standing == Standing::FromMemory {
                notes.push(Note::check(
                    Words::new("This row of the table, for the {}, is quoted from memory.").with(name),
                ));
            }
        }
        let result = Output { thickness: t, width: w, narrower: input.width.get() - w };
        Ok(Answer { result, working, notes })
    }
}
