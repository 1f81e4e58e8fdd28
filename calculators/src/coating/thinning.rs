//! How much thinner brings a paint to a cup time: a straight line between two trials on a logarithmic scale.

use serde_json::json;

use super::flow_cup::Cup;
use crate::catalogue::works::{ASTM_D1200, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

pub(crate) struct Thinning;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// With its standard.
    #[field("Cup")]
    cup: Cup,
    /// As it comes from the tin, or already thinned a little.
    #[field("First trial: thinner")]
    first_thinner: Physical<kind::Percent, 0, 50_000>,
    /// Its time in the cup.
    #[field("First trial: time")]
    first_time: Physical<kind::Seconds, 1_000, 300_000>,
    /// With more thinner.
    #[field("Second trial: thinner")]
    second_thinner: Physical<kind::Percent, 0, 50_000>,
    /// Its time in the cup.
    #[field("Second trial: time")]
    second_time: Physical<kind::Seconds, 1_000, 300_000>,
    /// What the gun's maker or your own card asks for.
    #[field("Wanted time")]
    wanted_time: Physical<kind::Seconds, 1_000, 300_000>,
    /// The most that the data sheet allows.
    #[field("Thinner the sheet allows")]
    sheet_most: Physical<kind::Percent, 0, 50_000>,
    /// Paint in the pot, without its thinner; then the answer says how much to add.
    #[field("Paint in the pot", default)]
    pot: Option<Physical<kind::Paint, 50, 200_000>>,
    /// Already in the pot, as a share of the paint; empty means none.
    #[field("Thinner already in the pot", default)]
    pot_thinner: Option<Physical<kind::Percent, 0, 50_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// As a share of the paint's volume.
    #[field("Thinner in all")]
    thinner: Amount<kind::Percent>,
    /// From the second trial's mixture on; nothing where it already holds more.
    #[field("Further to the second trial")]
    further: Amount<kind::Percent>,
    /// To the paint in the pot.
    #[field("Add to the pot")]
    add: Option<Amount<kind::SmallVolume>>,
    /// Whether the sheet allows it.
    #[field("Within the sheet's limit")]
    allowed: bool,
}

impl Calculator for Thinning {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "thinning",
        title: "Thinning to a cup time",
        question: "How much thinner brings it to the gun?",
        step: 14,
        search: &[
            "thinner",
            "water",
            "dilute",
            "cup seconds",
            "viscosity",
            "too thick",
            "paint too thick",
            "thick for the gun",
        ],
        headline: &["/thinner", "/add"],
        list: None,
        cautions: &["solvent-vapour"],
        sources: &[
            Source::new(
                PRACTICE,
                "the logarithm of viscosity falls in a straight line between two near trials",
                Standing::CommonPractice,
            ),
            Source::new(ASTM_D1200, "equations of the cups", Standing::FromMemory),
        ],
    };

    fn example(units: Units) -> Example {
        let pot = if units == Units::Metric { "1 L" } else { "1 qt" };
        Example {
            input: json!({ "cup": "ASTM D1200, No. 4", "first_thinner": "0 %", "first_time": "80 s", "second_thinner": "5 %", "second_time": "55 s", "wanted_time": "40 s", "sheet_most": "10 %", "pot": pot }),
            expects: vec![("/result/thinner/text", json!("9.5%")), ("/result/allowed", json!(true))],
            checked_against: "by hand: 290.7, 194.5, 136.7 mm²/s; 5 x ln(290.7/136.7) / ln(290.7/194.5) = 9.38, up to the half",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let equation = input.cup.equation();
        let mut faults = Vec::new();
        let mut viscosity = |pointer: &'static str, time: f64| {
            equation.viscosity(time).map(Amount::get).unwrap_or_else(|| {
                let seconds = Amount::<kind::Seconds>::of;
                let why = Words::new("this cup's equation holds from {} to {}; take {}")
                    .with(seconds(equation.least))
                    .with(seconds(equation.most))
                    .with(input.cup.instead(time));
                faults.push(Fault::new(pointer, Words::of(seconds(time)), why, Words::of(seconds(equation.least))));
                1.0
            })
        };
        let first = viscosity("/first_time", input.first_time.get());
        let second = viscosity("/second_time", input.second_time.get());
        let wanted = viscosity("/wanted_time", input.wanted_time.get());
        if input.second_thinner.get() <= input.first_thinner.get() {
            let why =
                Words::new("the second trial must hold more thinner than the first, {}").with(input.first_thinner);
            faults.push(Fault::new("/second_thinner", Words::of(input.second_thinner), why, "5 %"));
        }
        if faults.is_empty() && second >= first {
            let why = Words::new("with more thinner the cup must run faster than the first trial's {}")
                .with(input.first_time);
            faults.push(Fault::new("/second_time", Words::of(input.second_time), why, "55 s"));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let span = input.second_thinner.get() - input.first_thinner.get();
        let raw = input.first_thinner.get() + span * libm::log(first / wanted) / libm::log(first / second);
        let thinner = libm::ceil(raw.max(0.0) * 2.0 - 1e-9) / 2.0;
        let v = Amount::<kind::Viscosity>::of;
        let working = vec![
            Step::new("from cup times to viscosities")
                .gives("v1", "first trial", v(first))
                .because(Words::new("the second trial is {}, wanted is {}").with(v(second)).with(v(wanted))),
            Step::new("along the line through both trials")
                .by("a + (b - a) * ln(p / w) / ln(p / q)")
                .given("a", "thinner of the first trial", input.first_thinner)
                .given("b", "thinner of the second trial", input.second_thinner)
                .given("p", "viscosity of the first trial", v(first))
                .given("q", "viscosity of the second trial", v(second))
                .given("w", "viscosity wanted", v(wanted))
                .gives("t", "thinner in all", Amount::<kind::Percent>::of(raw))
                .because("then up to the next half per cent"),
        ];
        let allowed = thinner <= input.sheet_most.get();
        let mut notes = Vec::new();
        let mut working = working;
        if raw <= 0.0 {
            notes.push(Note::check("It is thin enough as it comes: add nothing."));
        } else if thinner < input.second_thinner.get() {
            notes.push(Note::check("The second trial already holds more than that, and thinner cannot be taken out: begin again from paint with less in it."));
        }
        let in_the_pot = input.pot_thinner.map_or(0.0, Physical::get);
        let add = input.pot.map(|pot| {
            let add = Amount::<kind::SmallVolume>::of((pot.get() * 1_000.0 * (thinner - in_the_pot) / 100.0).max(0.0));
            working.push(
                Step::new("thinner for the pot, in mL")
                    .by("max(0, 1000 * P * (t - i) / 100)")
                    .given("P", "paint in the pot, in litres", pot)
                    .given("t", "thinner in all", Amount::<kind::Percent>::of(thinner))
                    .given("i", "thinner already in the pot", Amount::<kind::Percent>::of(in_the_pot))
                    .gives("a", "add", add),
            );
            if in_the_pot > thinner {
                let paint = Amount::<kind::Paint>::of(pot.get() * (in_the_pot / thinner.max(0.5) - 1.0));
                notes.push(Note::check(
                    Words::new("The pot already holds more thinner than that. It cannot be taken out: stir in about {} of paint that has none.").with(paint),
                ));
            }
            add
        });
        if !allowed {
            notes.push(Note::hold(
                Words::new("The data sheet allows {}: warm the paint or change the tip, do not thin further.")
                    .with(input.sheet_most),
            ));
        }
        if raw > 2.0 * input.second_thinner.get() {
            notes.push(Note::check("Far beyond the second trial: make a third one before trusting the line."));
        }
        Ok(Answer {
            result: Output {
                thinner: Amount::of(thinner),
                further: Amount::of((thinner - input.second_thinner.get()).max(0.0)),
                add,
                allowed,
            },
            working,
            notes,
        })
    }
}
