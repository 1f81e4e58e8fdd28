//! Caulk for a wall: the fillet along every edge, and what a textured wall swallows besides.

use serde_json::json;

use super::bead::{self, BeadShape};
use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Length, Physical, Run, Units, Within, kind};

/// A gap wider than this gets backer rod or a scribed strip: 3/16 in. Common practice, no source.
pub const WIDEST_GAP: Length = Length::from_nm(4_762_500);

/// Section of a caulk line in mm²: a straight fillet, and the gap behind it filled to a depth.
pub fn caulk_section_mm2(leg: Length, gap: Length, depth: Length) -> f64 {
    BeadShape::TriangularFillet.section_mm2(leg, Length::ZERO) + BeadShape::Rectangle.section_mm2(gap, depth)
}

/// Cartridges of caulk for a length of edges, one more where the last would be used to over 95 %.
pub fn caulk_cartridges(edges: Length, section_mm2: f64, cartridge: Amount<kind::SmallVolume>, lost: f64) -> u32 {
    let share = edges.in_m() / bead::metres_per(cartridge, section_mm2, lost);
    let whole = libm::ceil(share - 1e-6);
    let close = share > 0.0 && share / whole.max(1.0) > 0.95;
    (whole + f64::from(u8::from(close))).clamp(0.0, 1e6) as u32
}

pub(crate) struct Caulk;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Every edge that is run: both sides of each board, the rails, the casings; not the floor line by habit.
    #[field("Edges to run")]
    edges: Within<25_000, 900_000_000>,
    /// Of the fillet, along the wall and along the board.
    #[field("Leg of the fillet", usual = ["1/16 in", "3/16 in"])]
    leg: Within<700, 10_000>,
    /// Between wall and board, behind the fillet; zero where the board lies tight.
    #[field("Gap behind it")]
    gap: Within<0, 13_000>,
    /// How deep the caulk goes into that gap; on a textured wall, the board's thickness is not filled, only its front.
    #[field("Depth of filling")]
    depth: Within<0, 26_000>,
    /// As printed on it.
    #[field("Cartridge")]
    cartridge: Physical<kind::SmallVolume, 30_000, 1_200_000>,
    /// Nozzle, tube and cloth, as a share of what is bought.
    #[field("Lost", usual = ["5 %", "40 %"])]
    lost: Physical<kind::Percent, 0, 70_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// To take along.
    #[field("Cartridges")]
    cartridges: u32,
    /// What one really runs.
    #[field("One cartridge runs")]
    each: Run,
    /// With nothing lost.
    #[field("Nothing lost")]
    each_ideal: Run,
    /// What the arithmetic came to before rounding up.
    #[field("Cartridges before rounding")]
    share: Amount<kind::Number>,
}

impl Calculator for Caulk {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "caulk",
        title: "Caulk",
        question: "How many cartridges of caulk do I take up for this wall?",
        step: 13,
        search: &[
            "caulking",
            "tubes",
            "decorator's caulk",
            "gap",
            "texture",
            "how much",
            "sealant",
            "silicone",
            "quantity",
            "cartridge",
        ],
        headline: &["/cartridges", "/each"],
        list: None,
        cautions: &["caulk-skin"],
        sources: &[
            bead::SOURCE,
            Source::new(PRACTICE, "a quarter is lost; over 3/16 in (5 mm) a backer is used", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "edges": "144' 6\"", "leg": "1/8 in", "gap": "0 in", "depth": "0 in", "cartridge": "10.1 fl oz", "lost": "25 %" }),
                expects: vec![("/result/cartridges", json!(2)), ("/result/each_ideal/text", json!("194' 5\""))],
                checked_against: "by hand: 18.2273 / 0.0078125 = 2333.1 in, 194.4 ft; x 0.75 = 145.8 ft; 144.5 / 145.8 = 0.99, so a second one",
            },
            Units::Metric => Example {
                input: json!({ "edges": "44 m", "leg": "3 mm", "gap": "0 mm", "depth": "0 mm", "cartridge": "300 mL", "lost": "25 %" }),
                expects: vec![("/result/cartridges", json!(1)), ("/result/each/tape", json!("50 m"))],
                checked_against: "by hand: 300000 / 4.5 = 66667 mm, x 0.75 = 50000 mm",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let section = caulk_section_mm2(input.leg.get(), input.gap.get(), input.depth.get());
        let lost = input.lost.get() / 100.0;
        let ideal = bead::metres_per(input.cartridge.amount(), section, 0.0);
        let each = bead::metres_per(input.cartridge.amount(), section, lost);
        let cartridges = caulk_cartridges(input.edges.get(), section, input.cartridge.amount(), lost);
        let share = input.edges.get().in_m() / each;
        let as_length = |metres: f64| Length::nearest_mm(metres * 1_000.0);
        let working = vec![
            Step::new("section of the line, in mm²")
                .by("a ^ 2 / 2 + g * d")
                .given("a", "leg of the fillet", input.leg)
                .given("g", "gap behind it", input.gap)
                .given("d", "depth of filling", input.depth)
                .gives("S", "section", section),
            Step::new("one cartridge really runs")
                .by("1000 * V / S * (1 - w / 100)")
                .given("V", "cartridge", input.cartridge)
                .given("S", "section, in mm²", section)
                .given("w", "lost", input.lost)
                .gives("l", "one cartridge runs", as_length(each)),
            Step::new("cartridges before rounding")
                .by("E / l")
                .given("E", "edges to run", input.edges)
                .given("l", "one cartridge runs", as_length(each))
                .gives("c", "cartridges", share)
                .because("up to whole ones; one more where the last would be used to over 95 %"),
        ];
        let mut notes = Vec::new();
        if input.gap.get() > WIDEST_GAP {
            notes.push(Note::check(
                Words::new("A gap over {}: put in backer or a scribed strip, then caulk its front.").with(WIDEST_GAP),
            ));
        }
        if input.gap.get().is_positive()
            && section > 1.5 * BeadShape::TriangularFillet.section_mm2(input.leg.get(), Length::ZERO)
        {
            notes.push(Note::remark("The gap takes as much again as the fillet. Sanding the strip flat first saves it, but old texture may hold asbestos: find out before it is sanded."));
        }
        Ok(Answer {
            result: Output {
                cartridges,
                each: Run::of(as_length(each)),
                each_ideal: Run::of(as_length(ideal)),
                share: Amount::of(share),
            },
            working,
            notes,
        })
    }
}
