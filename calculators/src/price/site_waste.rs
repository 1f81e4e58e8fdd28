//! What leaves the site, in which container, by which way.

use serde_json::json;

use crate::catalogue::works::PRACTICE;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step};
use crate::quantity::{Amount, Count, Physical, Units, kind};

pub(crate) struct SiteWaste;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Of all sticks that were bought.
    #[field("Weight of the sticks")]
    sticks: Physical<kind::Mass, 0, 20_000_000>,
    /// Offcuts, dust and defects, from the cutting plan.
    #[field("Of that, wasted", usual = ["3 %", "25 %"])]
    wasted: Physical<kind::Percent, 0, 100_000>,
    /// Of caulk and adhesive.
    #[field("Empty cartridges")]
    cartridges: Count<0, 2_000>,
    /// That nobody keeps for touching up.
    #[field("Waterborne paint left")]
    waterborne: Physical<kind::Paint, 0, 2_000_000>,
    /// Thinner, cleaner, solvent-borne paint.
    #[field("Solvent left")]
    solvent: Physical<kind::Paint, 0, 2_000_000>,
    /// With oil, alkyd or two-pack on them.
    #[field("Oily rags")]
    oily_rags: bool,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Offcuts and dust.
    #[field("Wood waste")]
    wood: Amount<kind::Mass>,
    /// Each kind by itself.
    #[field("What leaves how")]
    streams: Vec<Row>,
}

/// One kind of waste.
#[derive(Output)]
pub(crate) struct Row {
    /// What it is.
    #[field("Waste")]
    what: &'static str,
    /// How much.
    #[field("Container")]
    container: &'static str,
    /// Where it goes; local rules come first.
    #[field("Way")]
    way: &'static str,
}

impl Calculator for SiteWaste {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "site-waste",
        title: "Waste",
        question: "What leaves the site how?",
        step: 16,
        search: &["disposal", "offcuts", "leftover paint", "rags", "skip"],
        headline: &["/wood"],
        list: Some("/streams"),
        cautions: &["self-heating-rags"],
        sources: &[Source::new(
            PRACTICE,
            "kinds are kept apart; local rules on leftover paint differ and come first",
            Standing::CommonPractice,
        )],
    };

    fn example(units: Units) -> Example {
        let sticks = if units == Units::Metric { "35 kg" } else { "77 lb" };
        let wood = if units == Units::Metric { "3.5 kg" } else { "7.7 lb" };
        Example {
            input: json!({ "sticks": sticks, "wasted": "10 %", "cartridges": 5, "waterborne": "0.4 L", "solvent": "0 L", "oily_rags": false }),
            expects: vec![("/result/wood/text", json!(wood))],
            checked_against: "by hand: a tenth",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let wood = Amount::<kind::Mass>::of(input.sticks.get() * input.wasted.get() / 100.0);
        let row = |what, container, way| Row { what, container, way };
        let mut streams =
            vec![row("offcuts and dust", "bags, dust bags tied", "wood waste; fibreboard is no firewood")];
        if input.cartridges.get() > 0 {
            streams.push(row("cartridges", "bag", "cured and empty with site waste, half full with chemicals"));
        }
        if input.waterborne.get() > 0.0 {
            streams.push(row(
                "waterborne paint",
                "its tin, lid tight",
                "keep for touching up; else dried out where that is allowed, never down a drain",
            ));
        }
        if input.solvent.get() > 0.0 {
            streams.push(row("solvent", "its can, marked", "hazardous collection"));
        }
        if input.oily_rags {
            streams.push(row("oily rags", "covered metal container, outside", "hazardous collection, the same day"));
        }
        let working = vec![
            Step::new("wood waste")
                .by("s * w / 100")
                .given("s", "weight of the sticks", input.sticks)
                .given("w", "wasted", input.wasted)
                .gives("m", "wood waste", wood),
        ];
        let mut notes = vec![Note::remark(
            "Rules on leftover paint differ from place to place: the local waste authority decides.",
        )];
        if input.oily_rags {
            notes.push(Note::hold("Oily rags heat up by themselves and burn houses: into the covered metal container before anybody leaves the site."));
        }
        Ok(Answer { result: Output { wood, streams }, working, notes })
    }
}
