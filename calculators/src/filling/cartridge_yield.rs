//! How far a cartridge goes, for any bead.

use serde_json::json;

use super::bead::{self, BeadShape};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Step, Words};
use crate::quantity::{Length, Physical, Run, Units, Within, kind};

pub(crate) struct CartridgeYield;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// What the bead looks like when cut across.
    #[field("Bead")]
    shape: BeadShape,
    /// Diameter, leg, radius, or the width of the joint.
    #[field("Size", usual = ["2 mm", "13 mm"])]
    size: Within<500, 51_000>,
    /// Of a square joint; the others leave it out.
    #[field("Depth")]
    depth: Option<Within<500, 51_000>>,
    /// As printed on it.
    #[field("Cartridge")]
    cartridge: Physical<kind::SmallVolume, 20_000, 20_000_000>,
    /// What is to be run.
    #[field("Length to run")]
    length: Within<25_000, 900_000_000>,
    /// Left in nozzle and tube, wiped off, as a share of what is BOUGHT.
    #[field("Lost", usual = ["5 %", "40 %"])]
    lost: Physical<kind::Percent, 0, 70_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Whole ones.
    #[field("Cartridges")]
    cartridges: u32,
    /// With what is lost taken off.
    #[field("One cartridge runs")]
    each: Run,
    /// With nothing lost.
    #[field("Nothing lost")]
    each_ideal: Run,
}

impl Calculator for CartridgeYield {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "cartridge-yield",
        title: "How far a cartridge goes",
        question: "How many feet or metres does one cartridge run?",
        step: 13,
        search: &["tube", "cartridge", "bead", "sealant", "nozzle"],
        headline: &["/cartridges", "/each"],
        list: None,
        cautions: &["adhesive-skin"],
        sources: &[bead::SOURCE],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "shape": "triangular-fillet", "size": "1/4 in", "cartridge": "10.1 fl oz", "length": "260 ft", "lost": "15 %" }),
                expects: vec![("/result/cartridges", json!(7)), ("/result/each_ideal/tape", json!("48' 7\""))],
                checked_against: "by hand: 18.2273 in3 / 0.03125 in2 = 583.27 in, 48 ft 7 in; 260 x 12 / 583.27 / 0.85 = 6.29",
            },
            Units::Metric => Example {
                input: json!({ "shape": "round", "size": "6 mm", "cartridge": "300 mL", "length": "40 m", "lost": "10 %" }),
                expects: vec![("/result/cartridges", json!(5)), ("/result/each_ideal/tape", json!("10.61 m"))],
                checked_against: "by hand: 300000 / (pi x 36 / 4) = 10610.3 mm; 40 / 10.6103 / 0.9 = 4.19",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        if input.shape == BeadShape::Rectangle && input.depth.is_none() {
            return Err(vec![Fault::new("/depth", "nothing", "a square joint needs its depth", Words::of(input.size))]);
        }
        let depth = input.depth.map_or(Length::ZERO, Within::get);
        let section = input.shape.section_mm2(input.size.get(), depth);
        let volume = input.cartridge.amount();
        let ideal = bead::metres_per(volume, section, 0.0);
        let each = bead::metres_per(volume, section, input.lost.get() / 100.0);
        let cartridges = bead::cartridges_for(input.length.get().in_m(), each);
        let as_length = |metres: f64| Length::nearest_mm(metres * 1_000.0);
        let mut first =
            Step::new("section of the bead, in mm²").by(input.shape.formula()).given("a", "size", input.size);
        if input.shape == BeadShape::Rectangle {
            first = first.given("c", "depth", depth);
        }
        let working = vec![
            first.gives("S", "section", section),
            Step::new("one cartridge, nothing lost")
                .by("1000 * V / S")
                .given("V", "cartridge", input.cartridge)
                .given("S", "section, in mm²", section)
                .gives("l", "runs", as_length(ideal)),
            Step::new("cartridges")
                .by("ceil(L / (l * (1 - w / 100)))")
                .given("L", "length to run", input.length)
                .given("l", "runs, nothing lost", as_length(ideal))
                .given("w", "lost", input.lost)
                .gives("n", "cartridges", cartridges)
                .because("up to whole ones, once, at the end"),
        ];
        let full = input.length.get().in_m() / each / f64::from(cartridges.max(1));
        let notes = if full > 0.95 {
            vec![Note::check("The last cartridge would be used to more than 95 %: take one more.")]
        } else {
            Vec::new()
        };
        Ok(Answer {
            result: Output { cartridges, each: Run::of(as_length(each)), each_ideal: Run::of(as_length(ideal)) },
            working,
            notes,
        })
    }
}
