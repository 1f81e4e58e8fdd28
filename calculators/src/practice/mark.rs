//! Whether what somebody worked out is right, and if not, what they probably did.

use std::collections::BTreeMap;

use serde_json::{Value, json};
use thiserror::Error;

use super::draw::drawn;
use super::exercise::{Exercise, Mistake};
use crate::catalogue::{Entry, formula};
use crate::quantity::{INCH, Length, Money, Units, kind_named, print, read_physical};

/// An attempt, looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Marked {
    /// Whether it is right.
    pub right: bool,
    /// The likely mistake, where the attempt fits one.
    pub mistake: Option<&'static str>,
    /// The calculator's whole answer, printed: result, working and notes.
    pub answer: Value,
    /// The right answer alone, printed.
    pub expected: Value,
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
    let leaf = answer.pointer(&format!("/result{}", exercise.answer)).ok_or(AnswerFault::None)?;
    let due = print::number_in(leaf).ok_or(AnswerFault::None)?;
    let near = nearness(leaf, due, units);
    let tried = read(leaf, said, units)?;
    let right = (tried - due).abs() <= near;
    let working = answer.get("working").and_then(Value::as_array).cloned().unwrap_or_default();
    let fits = |mistake: &&Mistake| wrong(mistake, &working).is_some_and(|wrong| (tried - wrong).abs() <= near);
    let mistake = if right { None } else { exercise.mistakes.iter().find(fits).map(|mistake| mistake.words) };
    let expected = print::walk(leaf.clone(), units);
    Ok(Marked { right, mistake, answer: print::walk(answer, units), expected })
}

/// What somebody gets who makes this mistake, in millimetres, the kind's metric unit or major units of money.
pub(super) fn wrong(mistake: &Mistake, working: &[Value]) -> Option<f64> {
    let mut letters: BTreeMap<&str, f64> = BTreeMap::new();
    let first = working.get(mistake.step).into_iter();
    for step in first.chain(working) {
        let given = step.get("given").and_then(Value::as_array).into_iter().flatten();
        for named in given.chain(step.get("result")) {
            let symbol = named.get("symbol").and_then(Value::as_str);
            if let Some((symbol, value)) = symbol.zip(named.get("value").and_then(print::number_in)) {
                letters.entry(symbol).or_insert(value);
            }
        }
    }
    formula::parse(mistake.formula).ok()?.value(&|symbol| letters.get(symbol).copied()).ok()
}

/// How far an attempt may be off: half of what a tape shows, half of the inch or centimetre that a run of goods is told to, a
/// coin's half, a whole number not at all; else [`NEAR`], and never less than what the book's own print of the answer is off.
fn nearness(leaf: &Value, due: f64, units: Units) -> f64 {
    match leaf {
        _ if leaf.get("run") == Some(&Value::Bool(true)) => match units {
            Units::Imperial => INCH.exact().half().in_mm() + 1e-6,
            Units::Metric => 5.0 + 1e-6,
        },
        _ if print::length_in(leaf).is_some() => match units {
            Units::Imperial => Length::sixty_fourths(2).exact().in_mm() + 1e-6,
            Units::Metric => 0.5 + 1e-6,
        },
        Value::Number(number) if number.is_i64() || number.is_u64() => 1e-9,
        _ if leaf.get("minor").is_some() => 0.011,
        _ => {
            let printed = print::printed_text(&print::walk(leaf.clone(), units));
            let rounded = read(leaf, &printed, units).map_or(0.0, |printed| (printed - due).abs());
            (due.abs() * NEAR).max(rounded) + 1e-9
        }
    }
}

fn read(leaf: &Value, said: &str, units: Units) -> Result<f64, AnswerFault> {
    let said = said.trim();
    if print::length_in(leaf).is_some() {
        let read = Length::read(said, units).map_err(|fault| AnswerFault::Length(fault.to_string()))?;
        return Ok(read.exact().in_mm());
    }
    if let Some(facts) = leaf.get("kind").and_then(Value::as_str).and_then(kind_named) {
        let value = read_physical(facts, &json!(said.replace(',', ".")), units);
        let example = print::printed_text(&print::walk(leaf_like(leaf), units));
        return value.map_err(|fault| AnswerFault::Quantity(fault.to_string(), example));
    }
    if leaf.get("minor").is_some() {
        let money = Money::read(said).map_err(|why| AnswerFault::Quantity(why.to_owned(), "1250.40".to_owned()))?;
        return Ok(money.minor() as f64 / 100.0);
    }
    said.replace(',', ".").parse().ok().filter(|number: &f64| number.is_finite()).ok_or(AnswerFault::Number)
}

/// Another value of the same kind, so that an example does not give the answer away.
fn leaf_like(leaf: &Value) -> Value {
    let mut other = leaf.clone();
    if let Some(value) = other.get("value").and_then(Value::as_f64) {
        other["value"] = json!(libm::round(value / 2.0 + 3.0));
    }
    other
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::entry;
    use crate::practice::EXERCISES;

    const BOTH: [Units; 2] = [Units::Imperial, Units::Metric];

    /// What a person would write for a value of the answer's kind.
    fn written(leaf: &Value, metric: f64, units: Units) -> String {
        let mut other = leaf.clone();
        if print::length_in(leaf).is_some() {
            return format!("{metric:.5} mm");
        }
        if leaf.get("minor").is_some() {
            return format!("{metric:.2}");
        }
        if let Some(fields) = other.as_object_mut() {
            fields.insert("value".to_owned(), json!(metric));
            let facts = kind_named(leaf["kind"].as_str().expect("a kind")).expect("known");
            let unit = match units {
                Units::Imperial => facts.imperial,
                Units::Metric => facts.metric,
            };
            return format!("{} {}", (metric - unit.offset) / unit.factor, unit.symbol);
        }
        format!("{metric}")
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
                    let leaf = &work["result"].pointer(exercise.answer).expect("the answer").clone();
                    let due = print::number_in(leaf).expect("a number");
                    let right = marked(exercise, entry, seed, &written(leaf, due, units), units).expect("readable");
                    assert!(right.right && right.mistake.is_none(), "{} {seed} {units:?}", exercise.calculator);
                    let working = work["working"].as_array().expect("working");
                    for (n, mistake) in exercise.mistakes.iter().enumerate() {
                        let wrong = wrong(mistake, working)
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
                    let printed = print::printed_text(&expected);
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
        fn holds(value: &Value, due: f64) -> bool {
            if let Some(number) = print::number_in(value) {
                return (number - due).abs() <= due.abs() * 1e-9;
            }
            match value {
                Value::Array(items) => items.iter().any(|item| holds(item, due)),
                Value::Object(fields) => fields.values().any(|field| holds(field, due)),
                _ => false,
            }
        }
        for exercise in EXERCISES.iter() {
            let entry = entry(exercise.calculator).expect("a calculator");
            for units in BOTH {
                let told = (0..60).filter(|seed| {
                    let input = drawn(exercise, entry, *seed, units);
                    let answer = entry.work(&input, units).expect("drawn numbers can be worked with");
                    let due = print::number_in(&answer["result"].pointer(exercise.answer).expect("the answer").clone());
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
