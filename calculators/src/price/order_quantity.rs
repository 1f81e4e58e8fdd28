//! How much to order when some is lost: two ways of saying a tenth, and whole packs.

use serde_json::json;

use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// What a share of waste is a share of.
#[derive(Clone, Copy, PartialEq, Eq, Input)]
pub enum WasteOf {
    /// Of all that is bought.
    WhatIsBought,
    /// Of what is needed, added on top.
    WhatIsNeeded,
}

/// What to order for a net need; waste in percent, below 100.
pub fn gross(net: f64, waste: f64, of: WasteOf) -> f64 {
    match of {
        WasteOf::WhatIsBought => net / (1.0 - waste / 100.0),
        WasteOf::WhatIsNeeded => net * (1.0 + waste / 100.0),
    }
}

/// Whole packs that hold an amount. A quotient that is whole but for the last figures of the machine counts as whole.
pub fn whole_packs(need: f64, pack: f64) -> u64 {
    let packs = need / pack;
    let near = libm::round(packs);
    let whole = if (packs - near).abs() <= 1e-9 * near.abs().max(1.0) { near } else { libm::ceil(packs) };
    whole.clamp(0.0, 1e15) as u64
}

pub(crate) struct OrderQuantity;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// In any unit, as long as the pack is in the same.
    #[field("Needed, nothing lost")]
    net: Physical<kind::Number, 0, 1_000_000_000>,
    /// Breakage, offcuts, spills.
    #[field("Waste", usual = ["0 %", "20 %"])]
    waste: Physical<kind::Percent, 0, 90_000>,
    /// Name it: on 20 % the two ways are five parts in a hundred apart.
    #[field("Waste is a share of")]
    of: WasteOf,
    /// What one pack holds.
    #[field("One pack holds")]
    pack: Physical<kind::Number, 1, 1_000_000_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Whole ones.
    #[field("Packs")]
    packs: u64,
    /// Before packs.
    #[field("To order")]
    gross: Amount<kind::Number>,
}

impl Calculator for OrderQuantity {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "order-quantity",
        title: "Waste and whole packs",
        question: "How much do I order so that enough is left?",
        step: 5,
        search: &["waste", "packs", "order", "breakage"],
        headline: &["/packs", "/gross"],
        list: None,
        cautions: &[],
        sources: &[Source::new(
            GEOMETRY,
            "net over (1 - w), or net times (1 + w); packs are rounded up once, last",
            Standing::Derived,
        )],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "net": 100, "waste": "10 %", "of": "what-is-bought", "pack": 12 }),
            expects: vec![("/result/gross/text", json!("111.1")), ("/result/packs", json!(10))],
            checked_against: "by hand: 100 / 0.9 = 111.11; / 12 = 9.26",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let amount = gross(input.net.get(), input.waste.get(), input.of);
        let packs = whole_packs(amount, input.pack.get());
        let formula = if input.of == WasteOf::WhatIsBought { "n / (1 - w / 100)" } else { "n * (1 + w / 100)" };
        let number = Amount::<kind::Number>::of;
        let working = vec![
            Step::new("to order")
                .by(formula)
                .given("n", "needed, nothing lost", input.net)
                .given("w", "waste", input.waste)
                .gives("g", "to order", number(amount)),
            Step::new("packs")
                .given("g", "to order", number(amount))
                .given("p", "one pack holds", input.pack)
                .gives("k", "packs", i64::try_from(packs).unwrap_or(i64::MAX))
                .because("up to whole packs, once, at the end"),
        ];
        let other = gross(
            input.net.get(),
            input.waste.get(),
            if input.of == WasteOf::WhatIsBought { WasteOf::WhatIsNeeded } else { WasteOf::WhatIsBought },
        );
        let notes = vec![Note::remark(Words::new("Reckoned the other way it would be {}.").with(number(other)))];
        Ok(Answer { result: Output { packs, gross: number(amount) }, working, notes })
    }
}
