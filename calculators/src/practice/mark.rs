//! Whether what somebody worked out is right, and if not, what they probably did.

use std::collections::BTreeMap;

use thiserror::Error;

use super::draw::drawn;
use super::exercise::{Exercise, Mistake};
use crate::catalogue::{Answer, Entry, Figure, Node, Step, formula};
use crate::quantity::{INCH, Length, Money, Units, read_physical};

/// An attempt, looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Marked {
    /// Whether it is right.
    pub right: bool,
    /// The likely mistake, where the attempt fits one.
    pub mistake: Option<&'static str>,
    /// The calculator's whole answer: result, working and notes.
    pub answer: Answer<Node>,
    /// The right answer alone.
    pub expected: Figure,
}

/// Why an attempt cannot be marked.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum AnswerFault {
    /// It is no length.
    #[error("{0}")]
    Length(String),
    /// It is no such quantity.
    #[error("{0}; for example {1}")]
    Quantity(String, String),
    /// It is no plain number.
    #[error("write a number; for example 12")]
    Number,
    /// The exercise has no answer; its calculator has changed.
    #[error("this exercise has no answer")]
    None,
}

/// A float may be read off a scale or rounded on the way: one part in two hundred.
const NEAR: f64 = 0.005;

/// Marks an attempt at the question that a seed asks.
/// # Errors
/// An [`AnswerFault`] where the attempt cannot be read.
pub fn marked(exercise: &Exercise, entry: &Entry, seed: u64, said: &str, units: Units) -> Result<Marked, AnswerFault> {
    let input = drawn(exercise, entry, seed, units);
    let answer = entry.work(&input, units).map_err(|_| AnswerFault::None)?;
    let expected = answer.result.at(exercise.answer).and_then(Node::figure).cloned().ok_or(AnswerFault::None)?;
    let due = expected.number().ok_or(AnswerFault::None)?;
    let near = nearness(&expected, due, units);
    let tried = read(&expected, said, units)?;
    let right = (tried - due).abs() <= near;
    let fits = |mistake: &&Mistake| wrong(mistake, &answer.working).is_some_and(|wrong| (tried - wrong).abs() <= near);
    let mistake = if right { None } else { exercise.mistakes.iter().find(fits).map(|mistake| mistake.words) };
    Ok(Marked { right, mistake, answer, expected })
}

/// What somebody gets who makes this mistake, in millimetres, the kind's metric unit or major units of money.
pub(super) fn wrong(mistake: &Mistake, working: &[Step]) -> Option<f64> {
    let mut letters: BTreeMap<&str, f64> = BTreeMap::new();
    for step in working.get(mistake.step).into_iter().chain(working) {
        for named in step.given.iter().chain(&step.result) {
            if let Some(value) = named.value.number() {
                letters.entry(&named.symbol).or_insert(value);
            }
        }
    }
    formula::parse(mistake.formula).ok()?.value(&|symbol| letters.get(symbol).copied()).ok()
}

/// How far an attempt may be off: half of what a tape shows, half of the inch or centimetre that a run of goods is told to, a
/// coin's half, a whole number not at all; else [`NEAR`], and never less than what the book's own print of the answer is off.
fn nearness(expected: &Figure, due: f64, units: Units) -> f64 {
    match expected {
        Figure::Run(_) => match units {
            Units::Imperial => INCH.exact().half().in_mm() + 1e-6,
            Units::Metric => 5.0 + 1e-6,
        },
        Figure::Length(_) | Figure::Reading(_) => {
            let mark: f64 = match units {
                Units::Imperial => Length::sixty_fourths(2).exact().in_mm(),
                Units::Metric => 0.5,
            };
            let rounded = read(expected, &expected.text(units), units).map_or(0.0, |printed| (printed - due).abs());
            mark.max(rounded) + 1e-6
        }
        Figure::Count(_) => 1e-9,
        Figure::Money(_) => 0.011,
        _ => {
            let rounded = read(expected, &expected.text(units), units).map_or(0.0, |printed| (printed - due).abs());
            (due.abs() * NEAR).max(rounded) + 1e-9
        }
    }
}

fn read(expected: &Figure, said: &str, units: Units) -> Result<f64, AnswerFault> {
    let said = said.trim();
    match expected {
        Figure::Length(_) | Figure::Reading(_) | Figure::Run(_) => {
            let read = Length::read(said, units).map_err(|fault| AnswerFault::Length(fault.to_string()))?;
            Ok(read.exact().in_mm())
        }
        Figure::Physical(facts, metric) => {
            let value = read_physical(facts, &said.replace(',', ".").into(), units);
            // Another value of the same kind, so that the example does not give the answer away.
            let example = facts.text(libm::round(metric / 2.0 + 3.0), units);
            value.map_err(|fault| AnswerFault::Quantity(fault.to_string(), example))
        }
        Figure::Money(_) => {
            let money = Money::read(said).map_err(|why| AnswerFault::Quantity(why.to_owned(), "1250.40".to_owned()))?;
            Ok(money.minor() as f64 / 100.0)
        }
        _ => said.replace(',', ".").parse().ok().filter(|number: &f64| number.is_finite()).ok_or(AnswerFault::Number),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::entry;
    use crate::practice::EXERCISES;

    const BOTH: [Units; 2] = [Units::Imperial, Units::Metric];

    /// What a person would write for a value of the answer's kind.
    fn written(expected: &Figure, metric: f64, units: Units) -> String {
        match expected {
            Figure::Length(_) | Figure::Reading(_) | Figure::Run(_) => format!("{metric:.5} mm"),
            Figure::Money(_) => format!("{metric:.2}"),
            Figure::Physical(facts, _) => {
                let unit = facts.unit(units);
                format!("{} {}", (metric - unit.offset) / unit.factor, unit.symbol)
            }
            _ => format!("{metric}"),
        }
    }

    #[test]
    fn the_calculators_own_answer_is_right_and_every_mistake_is_told_by_its_name() {
        let mut rare = Vec::new();
        for exercise in EXERCISES.iter() {
            let entry = entry(exercise.calculator).expect("a calculator");
            for units in BOTH {
                let mut told = vec![0_u32; exercise.mistakes.len()];
                let at = exercise.calculator;
                for seed in 0..60 {
                    let input = drawn(exercise, entry, seed, units);
                    let work = entry.work(&input, units).expect("drawn numbers can be worked with");
                    let leaf = work.result.at(exercise.answer).and_then(Node::figure).expect("the answer");
                    let due = leaf.number().expect("a number");
                    let right = marked(exercise, entry, seed, &written(leaf, due, units), units).expect("readable");
                    assert!(right.right && right.mistake.is_none(), "{} {seed} {units:?}", exercise.calculator);
                    for (n, mistake) in exercise.mistakes.iter().enumerate() {
                        let wrong = wrong(mistake, &work.working)
                            .unwrap_or_else(|| panic!("{}: {}", exercise.calculator, mistake.formula));
                        let Ok(attempt) = marked(exercise, entry, seed, &written(leaf, wrong, units), units) else {
                            continue;
                        };
                        if attempt.mistake == Some(mistake.words) {
                            told[n] += 1;
                        }
                    }
                }
                for (mistake, told) in exercise.mistakes.iter().zip(told) {
                    if told < 20 {
                        rare.push(format!("{at} in {units:?}: «{}» was told {told} times of 60", mistake.formula));
                    }
                }
            }
        }
        assert!(rare.is_empty(), "{rare:#?}");
    }

    #[test]
    fn what_the_book_prints_as_right_is_taken_as_right() {
        for exercise in EXERCISES.iter() {
            let entry = entry(exercise.calculator).expect("a calculator");
            for units in BOTH {
                for seed in 0..60 {
                    let at = format!("{} {seed} {units:?}", exercise.calculator);
                    let first = marked(exercise, entry, seed, "1", units);
                    let expected = first.unwrap_or_else(|why| panic!("{at}: {why}")).expected;
                    let printed = expected.text(units);
                    let again = marked(exercise, entry, seed, &printed, units);
                    assert!(again.is_ok_and(|marked| marked.right), "{at}: {printed} is printed and refused");
                }
            }
        }
    }

    #[test]
    fn drawn_numbers_are_worked_with_and_not_given_up() {
        for exercise in EXERCISES.iter() {
            let entry = entry(exercise.calculator).expect("a calculator");
            for units in BOTH {
                let example = &entry.example(units).input;
                let as_it_was = (0..60).filter(|seed| drawn(exercise, entry, *seed, units) == *example).count();
                assert!(as_it_was < 10, "{}: {as_it_was} of 60 ask the worked example", exercise.calculator);
            }
        }
    }

    #[test]
    fn the_numbers_given_do_not_give_the_answer_away() {
        fn holds(node: &Node, due: f64) -> bool {
            node.number().is_some_and(|number| (number - due).abs() <= due.abs() * 1e-9)
                || node.items().iter().any(|item| holds(item, due))
                || node.fields().iter().any(|(_, field)| holds(field, due))
        }
        for exercise in EXERCISES.iter() {
            let entry = entry(exercise.calculator).expect("a calculator");
            for units in BOTH {
                let told = (0..60).filter(|seed| {
                    let input = drawn(exercise, entry, *seed, units);
                    let answer = entry.work(&input, units).expect("drawn numbers can be worked with");
                    let due = answer.result.at(exercise.answer).and_then(Node::number);
                    holds(&entry.read(&input, units).expect("readable"), due.expect("a number"))
                });
                // A small count may happen to stand among the numbers given.
                let told = told.count();
                assert!(told < 30, "{} in {units:?}: the answer is given in {told} of 60", exercise.calculator);
            }
        }
    }

    #[test]
    fn seeds_ask_different_questions_and_one_seed_the_same() {
        for exercise in EXERCISES.iter() {
            let entry = entry(exercise.calculator).expect("a calculator");
            for units in BOTH {
                let mut asked: Vec<String> =
                    (0..40).map(|seed| drawn(exercise, entry, seed, units).to_string()).collect();
                assert_eq!(asked[7], drawn(exercise, entry, 7, units).to_string());
                asked.sort_unstable();
                asked.dedup();
                assert!(asked.len() > 12, "{}: {} questions from 40 seeds", exercise.calculator, asked.len());
            }
        }
    }

    #[test]
    fn what_is_no_answer_is_told_with_an_example() {
        let exercise = &EXERCISES[0];
        let entry = entry(exercise.calculator).expect("a calculator");
        for said in ["", "about a foot", "12 bananas", "7' 14\""] {
            assert!(marked(exercise, entry, 1, said, Units::Imperial).is_err(), "{said}");
        }
    }
}
