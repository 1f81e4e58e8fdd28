//! What a nail holds against being pulled: the allowable figure of design, and the mean at which it comes out.
//!
//! The two differ four- to fivefold and are never mixed. Plasterboard holds nothing; it only makes the nail longer. Trim nailing is
//! no structural design.

use serde_json::json;

use super::nail_sizes;
use crate::catalogue::works::{NDS, WOOD_HANDBOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Length, Physical, Units, Within, kind};

/// N for each mm of depth: 1380 lb/in² in metric.
const ALLOWABLE: f64 = 1_380.0 * 0.006_894_757_293_168;
/// N for each mm of depth: Wood Handbook, chapter 8, metric form.
const ULTIMATE: f64 = 54.12;

/// Reference withdrawal for each mm of penetration, smooth shank in side grain, by oven-dry specific gravity.
/// # Source
/// National Design Specification 2018, 12.2.3: 1380 G^2.5 D pounds per inch.
pub fn allowable_per_mm(gravity: f64, shank: Length) -> Amount<kind::LineForce> {
    Amount::of(ALLOWABLE * libm::pow(gravity, 2.5) * shank.in_mm())
}

/// Specific gravity at 12 % moisture of a wood whose oven-dry one is known.
/// # Source
/// National Design Specification, supplement 3.1.3, from memory: G / (1 + 0.009 G M), M in percent.
pub fn gravity_at_12(oven_dry: f64) -> f64 {
    oven_dry / (1.0 + 0.009 * oven_dry * 12.0)
}

/// Mean force at which a nail is pulled out, by specific gravity at 12 % moisture: see [`gravity_at_12`].
/// # Source
/// Wood Handbook, chapter 8: 54.12 G^2.5 D L newton, in mm.
pub fn ultimate(gravity: f64, shank: Length, depth: Length) -> Amount<kind::Force> {
    Amount::of(ULTIMATE * libm::pow(gravity, 2.5) * shank.in_mm() * depth.in_mm())
}

/// What is left of a nail in the stud; nothing when it does not reach it.
pub fn penetration(nail: Length, board: Length, plasterboard: Length) -> Length {
    let left = nail - board - plasterboard;
    if left.is_positive() { left } else { Length::ZERO }
}

/// Specific gravity (oven-dry) assigned to species in design.
/// # Source
/// National Design Specification 2018, table 12.3.3A.
pub const GRAVITY: [(&str, f64); 46] = [
    ("Alaska Cedar", 0.47),
    ("Alaska Hemlock", 0.46),
    ("Alaska Spruce", 0.41),
    ("Alaska Yellow Cedar", 0.46),
    ("Aspen", 0.39),
    ("Balsam Fir", 0.36),
    ("Beech-Birch-Hickory", 0.71),
    ("Coast Sitka Spruce", 0.39),
    ("Cottonwood", 0.41),
    ("Douglas Fir-Larch", 0.50),
    ("Douglas Fir-Larch (North)", 0.49),
    ("Douglas Fir-South", 0.46),
    ("Eastern Hemlock", 0.41),
    ("Eastern Hemlock-Balsam Fir", 0.36),
    ("Eastern Hemlock-Tamarack", 0.41),
    ("Eastern Hemlock-Tamarack (North)", 0.47),
    ("Eastern Softwoods", 0.36),
    ("Eastern Spruce", 0.41),
    ("Eastern White Pine", 0.36),
    ("Engelmann Spruce-Lodgepole Pine", 0.38),
    ("Hem-Fir", 0.43),
    ("Hem-Fir (North)", 0.46),
    ("Mixed Maple", 0.55),
    ("Mixed Oak", 0.68),
    ("Mixed Southern Pine", 0.51),
    ("Mountain Hemlock", 0.47),
    ("Northern Pine", 0.42),
    ("Northern Red Oak", 0.68),
    ("Northern Species", 0.35),
    ("Northern White Cedar", 0.31),
    ("Ponderosa Pine", 0.43),
    ("Red Maple", 0.58),
    ("Red Oak", 0.67),
    ("Redwood", 0.37),
    ("Sitka Spruce", 0.43),
    ("Southern Pine", 0.55),
    ("Spruce-Pine-Fir", 0.42),
    ("Spruce-Pine-Fir (South)", 0.36),
    ("Western Cedars", 0.36),
    ("Western Cedars (North)", 0.35),
    ("Western Hemlock", 0.47),
    ("Western Hemlock (North)", 0.46),
    ("Western White Pine", 0.40),
    ("Western Woods", 0.36),
    ("White Oak", 0.73),
    ("Yellow-Poplar", 0.43),
];

pub(crate) struct NailHolding;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// From head to point.
    #[field("Nail")]
    nail: Within<10_000, 150_000>,
    /// Diameter of its shank: 16 gauge is 1/16 in (1.59 mm), 18 gauge 0.0475 in (1.21 mm).
    #[field("Shank")]
    shank: Within<500, 6_500>,
    /// That it holds.
    #[field("Board")]
    board: Within<3_000, 60_000>,
    /// Holds nothing, but takes length.
    #[field("Plasterboard")]
    plasterboard: Within<0, 40_000>,
    /// Of the stud, oven-dry: 0.42 for spruce-pine-fir, 0.50 for Douglas fir-larch.
    #[field("Specific gravity of the stud", usual = ["0.35", "0.6"])]
    gravity: Physical<kind::Number, 300, 750>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// In design, dry, for normal duration.
    #[field("Allowable pull")]
    allowable: Amount<kind::Force>,
    /// Into the stud.
    #[field("Penetration")]
    penetration: Length,
    /// Penetration over shank.
    #[field("In shank diameters")]
    diameters: Amount<kind::Number>,
    /// For each length of penetration.
    #[field("Allowable for each length")]
    per_length: Amount<kind::LineForce>,
    /// Where nails come out on average: not a figure to plan with.
    #[field("Mean pull at which it comes out")]
    ultimate: Amount<kind::Force>,
}

impl Calculator for NailHolding {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "nail-holding",
        title: "What a nail holds",
        question: "Does this nail hold in the stud, and how much?",
        step: 10,
        search: &["withdrawal", "pull out", "brad", "penetration", "gauge"],
        headline: &["/allowable", "/penetration"],
        list: None,
        cautions: &["nail-gun", "hidden-services"],
        sources: &[
            Source::new(NDS, "12.2.3: W = 1380 G^2.5 D", Standing::Published),
            Source::new(WOOD_HANDBOOK, "chapter 8: p = 54.12 G^2.5 D L, G at 12 % moisture", Standing::Published),
            Source::new(NDS, "supplement 3.1.3: G at a moisture content from the oven-dry one", Standing::FromMemory),
            nail_sizes::SOURCE,
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "nail": "2 1/2 in", "shank": "1/16 in", "board": "3/4 in", "plasterboard": "1/2 in", "gravity": 0.42 }),
                expects: vec![
                    ("/result/allowable/text", json!("12.3 lbf")),
                    ("/result/penetration/tape", json!("1 1/4 in")),
                ],
                checked_against: "NDS equation 12.2-3 by hand: 1380 x 0.42^2.5 x 0.0625 x 1.25 = 12.33 lb",
            },
            Units::Metric => Example {
                input: json!({ "nail": "50 mm", "shank": "1.6 mm", "board": "18 mm", "plasterboard": "12.5 mm", "gravity": 0.42 }),
                expects: vec![
                    ("/result/penetration/tape", json!("19.5 mm")),
                    ("/result/allowable/text", json!("33.9 N")),
                ],
                checked_against: "the same equation in metric by hand: 9.515 x 0.42^2.5 x 1.6 x 19.5 = 33.9 N",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (shank, gravity) = (input.shank.get(), input.gravity.get());
        let depth = penetration(input.nail.get(), input.board.get(), input.plasterboard.get());
        let per_length = allowable_per_mm(gravity, shank);
        let allowable = Amount::<kind::Force>::of(per_length.get() * depth.in_mm());
        let diameters = depth.in_mm() / shank.in_mm();
        let mean = ultimate(gravity_at_12(gravity), shank, depth);
        let working = vec![
            Step::new("penetration into the stud")
                .by("max(0, l - b - p)")
                .given("l", "nail", input.nail)
                .given("b", "board", input.board)
                .given("p", "plasterboard", input.plasterboard)
                .gives("d", "penetration", depth),
            Step::new("allowable pull for each mm")
                .by("1380 * 0.006894757293168 * G ^ 2.5 * s")
                .given("G", "specific gravity of the stud", input.gravity)
                .given("s", "shank", input.shank)
                .gives("w", "allowable for each length", per_length)
                .because("1380 pounds per square inch, in newton and millimetres"),
            Step::new("allowable pull")
                .by("w * d")
                .given("w", "allowable for each length", per_length)
                .given("d", "penetration", depth)
                .gives("W", "allowable pull", allowable),
            Step::new("specific gravity at 12 % moisture, for the mean pull")
                .by("G / (1 + 0.009 * G * 12)")
                .given("G", "specific gravity of the stud, oven-dry", input.gravity)
                .gives("g", "specific gravity at 12 %", gravity_at_12(gravity)),
            Step::new("mean pull at which it comes out, in newton")
                .by("54.12 * g ^ 2.5 * s * d")
                .given("g", "specific gravity at 12 %", gravity_at_12(gravity))
                .given("s", "shank", input.shank)
                .given("d", "penetration", depth)
                .gives("u", "mean pull", mean),
        ];
        let mut notes = vec![Note::remark(
            "The allowable figure of design; the mean at which nails come out is four to five times that and is never planned with. Trim nailing is no structural design.",
        )];
        if depth == Length::ZERO {
            notes.push(Note::hold(
                "It does not reach the stud. Plasterboard alone holds nothing: glue, or a longer nail.",
            ));
        } else if diameters < 6.0 {
            notes.push(Note::check(
                Words::new("{} diameters deep; design rules ask for six at least (from memory).").with(diameters),
            ));
        }
        Ok(Answer {
            result: Output {
                allowable,
                penetration: depth,
                diameters: Amount::of(diameters),
                per_length,
                ultimate: mean,
            },
            working,
            notes,
        })
    }
}
