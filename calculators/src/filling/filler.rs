//! Filler for nail holes and joints: how much, in how many passes.

use serde_json::json;

use crate::catalogue::works::{PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step};
use crate::quantity::{Amount, Count, Physical, Units, Within, kind};

/// Filler to mix or take, in mL, so that after shrinking the holes are full.
pub fn filler_needed(holes: u32, each_ml: f64, joints_ml: f64, shrink: f64) -> Amount<kind::SmallVolume> {
    Amount::of((f64::from(holes) * each_ml + joints_ml) / (1.0 - shrink))
}

pub(crate) struct Filler;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Heads of nails and pins; pins count too.
    #[field("Holes")]
    holes: Count<0, 20_000>,
    /// A pin near 0.02 mL, an 18 gauge nail near 0.05 mL, a screw near 0.3 mL.
    #[field("Each holds")]
    each: Physical<kind::SmallVolume, 1, 20_000>,
    /// Scarfs and butt joints together.
    #[field("Joints hold")]
    joints: Physical<kind::SmallVolume, 0, 5_000_000>,
    /// While it dries, from its sheet.
    #[field("Shrinks", usual = ["0 %", "20 %"])]
    shrink: Physical<kind::Percent, 0, 60_000>,
    /// Of the deepest place.
    #[field("Deepest place")]
    deepest: Within<100, 60_000>,
    /// In one pass, from its sheet.
    #[field("Depth of one pass")]
    pass: Within<500, 60_000>,
    /// For one pass, from its sheet.
    #[field("Dries in")]
    dries: Physical<kind::Hours, 50, 72_000>,
    /// What one tub holds; left empty, 250 mL.
    #[field("Tub", default)]
    tub: Option<Physical<kind::SmallVolume, 20_000, 20_000_000>>,
}

/// A tub where nobody says another: a default of this book, mL.
const TUB_ML: f64 = 250.0;

/// Whole tubs that hold a volume, one at least where any is needed.
pub fn tubs(needed: Amount<kind::SmallVolume>, tub_ml: f64) -> u32 {
    libm::ceil(needed.get() / tub_ml - 1e-9).clamp(0.0, f64::from(u32::MAX)) as u32
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Before waste on the knife.
    #[field("Filler")]
    filler: Amount<kind::SmallVolume>,
    /// To buy.
    #[field("Tubs")]
    tubs: u32,
    /// For the deepest place.
    #[field("Passes")]
    passes: u32,
    /// All passes, at the air of the sheet.
    #[field("Sand after")]
    wait: Amount<kind::Wait>,
}

impl Calculator for Filler {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "filler",
        title: "Filler",
        question: "How much filler, and when can I sand it?",
        step: 12,
        search: &["spackle", "nail holes", "stopping", "passes"],
        headline: &["/tubs", "/passes", "/wait"],
        list: None,
        cautions: &["silica-dust"],
        sources: &[
            Source::new(THIS_BOOK, "0.05 mL for an 18 gauge head, a tub of 250 mL", Standing::HouseDefault),
            Source::new(PRACTICE, "deep holes are filled twice", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        let (deepest, pass) = if units == Units::Metric { ("6 mm", "5 mm") } else { ("1/4 in", "3/16 in") };
        Example {
            input: json!({ "holes": 156, "each": "0.05 mL", "joints": "0 mL", "shrink": "10 %", "deepest": deepest, "pass": pass, "dries": "2 h" }),
            expects: vec![
                ("/result/tubs", json!(1)),
                ("/result/passes", json!(2)),
                ("/result/wait/text", json!("4 h")),
            ],
            checked_against: "by hand: 156 x 0.05 / 0.9 = 8.67 mL, one tub; two passes of two hours",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let filler = filler_needed(input.holes.get(), input.each.get(), input.joints.get(), input.shrink.get() / 100.0);
        let (deep, pass) = (input.deepest.get(), input.pass.get());
        let passes = u32::try_from(deep.whole_parts(pass) + i64::from(deep.nm() % pass.nm() != 0)).unwrap_or(u32::MAX);
        let wait = Amount::<kind::Hours>::of(f64::from(passes) * input.dries.get());
        let tub = Amount::<kind::SmallVolume>::of(input.tub.map_or(TUB_ML, Physical::get));
        let tubs = tubs(filler, tub.get());
        let working = vec![
            Step::new("filler")
                .by("(n * v + j) / (1 - s / 100)")
                .given("n", "holes", input.holes.get())
                .given("v", "each holds", input.each)
                .given("j", "joints hold", input.joints)
                .given("s", "shrinks", input.shrink)
                .gives("F", "filler", filler),
            Step::new("whole tubs")
                .by("ceil(F / u)")
                .given("F", "filler", filler)
                .given("u", "tub", tub)
                .gives("k", "tubs", tubs),
            Step::new("passes")
                .by("ceil(d / p)")
                .given("d", "deepest place", input.deepest)
                .given("p", "depth of one pass", input.pass)
                .gives("k", "passes", passes),
            Step::new("wait").by("k * t").given("k", "passes", passes).given("t", "dries in", input.dries).gives(
                "w",
                "sand after",
                wait,
            ),
        ];
        Ok(Answer {
            result: Output { filler, tubs, passes, wait: Amount::of(wait.get()) },
            working,
            notes: vec![Note::remark(
                "Press a thumbnail into the deepest place: soft in the middle means wait. Over a joint that moves use a flexible filler, or rake it out again next year.",
            )],
        })
    }
}
