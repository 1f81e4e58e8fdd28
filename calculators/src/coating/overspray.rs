//! How far to cover round the gun, and how overspray comes off by its age.

use serde_json::json;

use crate::catalogue::works::{PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Physical, Units, kind};

/// What sprays.
#[derive(Clone, Copy, PartialEq, Eq, Input)]
pub(crate) enum Gun {
    /// Paint under high pressure, no air.
    Airless,
    /// Much air at low pressure.
    Hvlp,
}

/// Covered round the work: airless 10 ft, low pressure 5 ft. A default of this book; indoors cover wall to wall.
pub const REACH: (Length, Length) = (Length::mm(3_048), Length::mm(1_524));

pub(crate) struct Overspray;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// What sprayed it.
    #[field("Gun")]
    gun: Gun,
    /// Since the mist settled.
    #[field("Age of the overspray")]
    age: Physical<kind::Hours, 0, 10_000_000>,
    /// In this air: from the recoat calculation.
    #[field("Touch-dry after")]
    touch: Physical<kind::Hours, 50, 72_000>,
    /// In this air: from the recoat calculation.
    #[field("Recoat after")]
    recoat: Physical<kind::Hours, 100, 400_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// What to do, in order.
    #[field("Now")]
    method: &'static str,
    /// Round the work, next time.
    #[field("Cover next time")]
    cover: Length,
}

impl Calculator for Overspray {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "overspray",
        title: "Overspray",
        question: "There is mist on the floor: what takes it off now?",
        step: 16,
        search: &["overspray", "drift", "mist", "clean off", "cover"],
        headline: &["/method", "/cover"],
        list: None,
        cautions: &["solvent-vapour"],
        sources: &[
            Source::new(THIS_BOOK, "3 m round airless, 1.5 m round low pressure", Standing::HouseDefault),
            Source::new(PRACTICE, "damp while soft, blade when set, polish when hard", Standing::CommonPractice),
        ],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "gun": "airless", "age": "5 h", "touch": "2.6 h", "recoat": "10.2 h" }),
            expects: vec![("/result/method", json!("plastic blade, held flat, then a damp cloth"))],
            checked_against: "common practice, no source: between touch-dry and recoat it is set but not hard",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        if input.touch.get() > input.recoat.get() {
            let why = Words::new("touch-dry comes before recoat, {} here").with(input.recoat);
            return Err(vec![Fault::new("/touch", Words::of(input.touch), why, Words::of(input.recoat))]);
        }
        let age = input.age.get();
        let (method, stage) = if age < input.touch.get() {
            ("damp cloth, turned often, no rubbing", "before touch-dry it is soft")
        } else if age < input.recoat.get() {
            ("plastic blade, held flat, then a damp cloth", "between touch-dry and recoat it is set but not hard")
        } else {
            ("plastic blade, then fine polish, on a hidden test patch first", "after recoat it is hard")
        };
        let cover = if input.gun == Gun::Airless { REACH.0 } else { REACH.1 };
        let working = vec![
            Step::new("age against the drying times")
                .given("a", "age", input.age)
                .given("t", "touch-dry", input.touch)
                .given("r", "recoat", input.recoat)
                .gives("m", "now", method)
                .because(stage),
        ];
        let notes = vec![
            Note::check("No solvent on a finish that nobody knows: it can take both off."),
            Note::remark("Indoors cover wall to wall, and let the fan draw the mist away from doors."),
        ];
        Ok(Answer { result: Output { method, cover }, working, notes })
    }
}
