//! A duration from three guesses: the best, the likely, the worst.

use serde_json::json;

use crate::catalogue::works::PERT;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// Mean and variance of a three-point guess: (a + 4m + b) / 6 and ((b − a) / 6)².
pub fn three_point(best: f64, likely: f64, worst: f64) -> (f64, f64) {
    let spread = (worst - best) / 6.0;
    ((best + 4.0 * likely + worst) / 6.0, spread * spread)
}

pub(crate) struct ExpectedDuration;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// If all goes well.
    #[field("Optimistic")]
    best: Physical<kind::Hours, 0, 10_000_000>,
    /// As it mostly goes.
    #[field("Most likely")]
    likely: Physical<kind::Hours, 0, 10_000_000>,
    /// If it goes wrong.
    #[field("Pessimistic")]
    worst: Physical<kind::Hours, 0, 10_000_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// To plan with.
    #[field("Expected")]
    expected: Amount<kind::Hours>,
    /// Two thirds of jobs lie within this of it.
    #[field("Give or take")]
    deviation: Amount<kind::Hours>,
}

impl Calculator for ExpectedDuration {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "expected-duration",
        title: "Duration from three guesses",
        question: "How long do I plan for when I am not sure?",
        step: 5,
        search: &["estimate", "three point", "duration", "risk"],
        headline: &["/expected", "/deviation"],
        list: None,
        cautions: &[],
        sources: &[Source::new(PERT, "(a + 4m + b) / 6, ((b - a) / 6)²", Standing::FromMemory)],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "best": "2 h", "likely": "4 h", "worst": "9 h" }),
            expects: vec![("/result/expected/text", json!("4.5 h"))],
            checked_against: "by hand: (2 + 16 + 9) / 6",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (best, likely, worst) = (input.best.get(), input.likely.get(), input.worst.get());
        if best > likely || likely > worst {
            let why = Words::new("must lie between the best, {}, and the worst, {}").with(input.best).with(input.worst);
            return Err(vec![Fault::new("/likely", Words::of(input.likely), why, "4 h")]);
        }
        let (mean, variance) = three_point(best, likely, worst);
        let of = Amount::<kind::Hours>::of;
        let working = vec![
            Step::new("expected")
                .by("(a + 4 * m + b) / 6")
                .given("a", "optimistic", input.best)
                .given("m", "most likely", input.likely)
                .given("b", "pessimistic", input.worst)
                .gives("t", "expected", of(mean)),
            Step::new("give or take")
                .by("(b - a) / 6")
                .given("a", "optimistic", input.best)
                .given("b", "pessimistic", input.worst)
                .gives("s", "give or take", of(libm::sqrt(variance))),
        ];
        Ok(Answer {
            result: Output { expected: of(mean), deviation: of(libm::sqrt(variance)) },
            working,
            notes: Vec::new(),
        })
    }
}
