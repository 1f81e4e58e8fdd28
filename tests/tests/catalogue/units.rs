//! One measured thing, said in inches and said in millimetres, has one answer.
//!
//! Checked against the definitions themselves: 1/64 in is 396 875 nm (international yard and pound agreement, 1959), and the
//! factors of NIST Handbook 44, appendix C. Lengths are put on sixty-fourths, so that both spellings are exact.

use std::cell::Cell;

use calculators::catalogue::{CATALOGUE, Figure, Node, Piece, Words};
use calculators::quantity::Units;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use tests::inputs::{Quantity, SIXTY_FOURTH, number, quantities, with};

/// The first place where two exact answers differ; figures count as equal to nine figures.
fn difference(one: &Node, other: &Node, at: &str) -> Option<String> {
    if let (Some(ours), Some(theirs)) = (number(one), number(other)) {
        let same = (ours - theirs).abs() <= 1e-9 * ours.abs().max(theirs.abs()).max(1.0);
        return (!same).then(|| format!("{at}: {one:?} and {other:?}"));
    }
    match (one, other) {
        (Node::Group(fields), Node::Group(others)) if fields.len() == others.len() => {
            fields.iter().find_map(|(name, inner)| match other.field(name) {
                Some(found) => difference(inner, found, &format!("{at}/{name}")),
                None => Some(format!("{at}/{name} stands on one side only")),
            })
        }
        (Node::List(items), Node::List(others)) if items.len() == others.len() => items
            .iter()
            .zip(others)
            .enumerate()
            .find_map(|(n, (inner, found))| difference(inner, found, &format!("{at}/{n}"))),
        (Node::Leaf(Figure::Words(said)), Node::Leaf(Figure::Words(other_said))) => {
            let node = |piece: Piece<'_>| match piece {
                Piece::Text(text) => Node::from(text),
                Piece::Figure(figure) => Node::Leaf(figure.clone()),
            };
            let list = |words: &Words| Node::List(words.pieces().map(node).collect());
            difference(&list(said), &list(other_said), at)
        }
        _ => (one != other).then(|| format!("{at}: {one:?} and {other:?}")),
    }
}

#[test]
fn the_same_thing_in_inches_and_in_millimetres_has_one_answer() {
    let (compared, mut answered) = (Cell::new(0_u32), 0);
    for entry in CATALOGUE.iter() {
        let id = entry.card().id;
        let cases = if id == "wall-plan" { 6 } else { 24 };
        let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
        let mut runner =
            TestRunner::new_with_rng(Config { cases, failure_persistence: None, ..Config::default() }, rng);
        let of_this = Cell::new(0_u32);
        let outcome =
            runner.run(&(0_usize..2, 44_i64..90, 0.97_f64..1.03, any::<bool>()), |(system, scale, drift, plain)| {
                let units = [Units::Imperial, Units::Metric][system];
                let example = &entry.example(units).input;
                let scale = if plain { 64 } else { scale };
                let moved: Vec<(String, Quantity)> = quantities(entry, example, units)
                    .into_iter()
                    .map(|(pointer, quantity)| {
                        let moved = match &quantity {
                            Quantity::Length(nm) => {
                                let parts = (*nm as f64 * scale as f64 / 64.0 / SIXTY_FOURTH as f64).round() as i64;
                                // What is thinner than that stays something.
                                Quantity::Length(if parts == 0 { nm.signum() } else { parts } * SIXTY_FOURTH)
                            }
                            Quantity::Physical(_, size) if !plain => quantity.sized(size * drift),
                            _ => quantity,
                        };
                        (pointer, moved)
                    })
                    .collect();
                let inches = entry.work(&with(example, &moved, Units::Imperial), Units::Imperial);
                let millimetres = entry.work(&with(example, &moved, Units::Metric), Units::Metric);
                match (inches, millimetres) {
                    (Ok(one), Ok(other)) => {
                        of_this.set(of_this.get() + 1);
                        if let Some(why) = difference(&one.result, &other.result, "") {
                            return Err(TestCaseError::fail(why));
                        }
                    }
                    (Err(one), Err(other)) => {
                        let pointers = |faults: &[calculators::catalogue::Fault]| {
                            faults.iter().map(|fault| fault.pointer.clone()).collect::<Vec<_>>()
                        };
                        prop_assert_eq!(pointers(&one), pointers(&other));
                    }
                    (one, other) => {
                        return Err(TestCaseError::fail(format!(
                            "one answers, the other not: {:?} {:?}",
                            one.err(),
                            other.err()
                        )));
                    }
                }
                compared.set(compared.get() + 1);
                Ok(())
            });
        outcome.unwrap_or_else(|why| panic!("{id}: {why}"));
        assert!(of_this.get() > 0, "{id}: not one case had an answer");
        answered += of_this.get();
    }
    let compared = compared.get();
    assert!(answered * 2 > compared, "{answered} of {compared} cases had an answer");
}

#[test]
fn a_difference_between_two_answers_is_found() {
    let entry = calculators::catalogue::entry("board-weight").expect("it is declared");
    let answer = |length: &str| {
        let mut input = entry.example(Units::Metric).input.clone();
        input["length"] = length.into();
        entry.work(&input, Units::Metric).expect("valid").result
    };
    assert_eq!(difference(&answer("4.8 m"), &answer("480 cm"), ""), None);
    assert!(difference(&answer("4.8 m"), &answer("4.801 m"), "").is_some());
}

#[test]
fn a_written_length_reads_the_same_in_both_units() {
    let entry = calculators::catalogue::entry("read-a-length").expect("it is declared");
    let read = |written: &str, units| {
        let mut input = entry.example(units).input.clone();
        input["written"] = written.into();
        input["inch_tape"] = "1/32 in".into();
        input["metric_tape"] = "1 mm".into();
        entry.work(&input, units).expect("valid").result
    };
    for (inches, millimetres) in
        [("12' 3 5/8\"", "3749.675"), ("147 5/8", "374.9675 cm"), ("1/64", "0.396875"), ("8 ft", "2.4384 m")]
    {
        let why = difference(&read(inches, Units::Imperial), &read(millimetres, Units::Metric), "");
        assert_eq!(why, None, "{inches} and {millimetres}");
    }
}
