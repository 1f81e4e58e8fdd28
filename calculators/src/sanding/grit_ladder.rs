//! The ladder of grits: which steps are too long, and how many discs or sheets an area takes.
//!
//! A step is judged by the ratio of the grains. Too long a step leaves scratches that the finer grit only polishes.

use serde_json::json;

use super::grain;
use crate::catalogue::works::{PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Count, Physical, Units, kind};

/// Longest step between grits, as the ratio of their grains.
pub const LONGEST_STEP: f64 = 1.8;

/// Fewest P grades between two, both counted, so that no step is longer than `longest`; of those the most even.
///
/// `None` when either is no P grade, when the grades do not get finer, or when a single step of the scale is too long.
pub fn ladder(from: u16, to: u16, longest: f64) -> Option<Vec<u16>> {
    let grades: Vec<_> = grain::p_grades().collect();
    let start = grades.iter().position(|grain| grain.grade == from)?;
    let end = grades.iter().position(|grain| grain.grade == to)?;
    if start > end {
        return None;
    }
    // best[i]: fewest steps from `start` to grade i, the longest step on the way, and where it came from.
    let mut best: Vec<Option<(usize, f64, usize)>> = vec![None; end + 1];
    best[start] = Some((0, 1.0, start));
    for at in start + 1..=end {
        for before in start..at {
            let ratio = grades[before].micrometres / grades[at].micrometres;
            let Some((steps, worst, _)) = best[before].filter(|_| ratio <= longest) else { continue };
            let candidate = (steps + 1, worst.max(ratio), before);
            if best[at].is_none_or(|(steps, worst, _)| (candidate.0, candidate.1) < (steps, worst)) {
                best[at] = Some(candidate);
            }
        }
    }
    let mut rungs = vec![grades[end].grade];
    let mut at = end;
    while at != start {
        at = best[at]?.2;
        rungs.push(grades[at].grade);
    }
    rungs.reverse();
    Some(rungs)
}

/// The scale on the back of the paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
pub(crate) enum Scale {
    /// P before the number: FEPA, ISO 6344.
    #[field("P")]
    P,
    /// No letter, United States.
    #[field("CAMI")]
    Cami,
}

pub(crate) struct GritLadder;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// With a P before the number, or without.
    #[field("Scale")]
    scale: Scale,
    /// The coarse grit that starts.
    #[field("From grit")]
    from: Count<12, 2500>,
    /// The fine grit that ends.
    #[field("To grit")]
    to: Count<12, 2500>,
    /// Sanded with each grit.
    #[field("Area")]
    area: Physical<kind::Area, 1, 1_000_000>,
    /// Before it is dull: about 20 ft² (1.9 m²) on bare board, 35 ft² (3.3 m²) between coats.
    #[field("One disc or sheet does")]
    each: Physical<kind::Area, 50, 50_000>,
    /// Ratio of the grains of two neighbours.
    #[field("Longest step")]
    longest_step: Physical<kind::Number, 1_200, 2_500>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Discs or sheets of each grit.
    #[field("Of each grit")]
    each: u32,
    /// All together.
    #[field("Discs or sheets")]
    all: u32,
    /// Ratio of first to last grain.
    #[field("Grain, first over last")]
    ratio: Amount<kind::Number>,
    /// The ladder in P grades.
    #[field("Ladder")]
    ladder: Vec<Rung>,
}

/// One rung.
#[derive(Output)]
pub(crate) struct Rung {
    /// P grade.
    #[field("Grit")]
    grit: String,
    /// Median of its grain.
    #[field("Grain")]
    grain: Amount<kind::GrainSize>,
    /// Grain of the rung before over this one.
    #[field("Step")]
    step: Option<Amount<kind::Number>>,
}

impl Calculator for GritLadder {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "grit-ladder",
        title: "Grit ladder",
        question: "Which grit next, and how many discs?",
        step: 12,
        search: &[
            "sandpaper",
            "abrasive",
            "grit",
            "disc",
            "P180",
            "CAMI",
            "which paper",
            "next grit",
            "sheets",
            "coarse",
            "fine",
            "sanding",
        ],
        headline: &["/all", "/ratio"],
        list: Some("/ladder"),
        cautions: &["sanding-dust", "respirator-limits"],
        sources: &[
            grain::P_SOURCE,
            grain::CAMI_SOURCE,
            Source::new(PRACTICE, "no step longer than about 1.8 times the grain", Standing::CommonPractice),
            Source::new(THIS_BOOK, "20 and 35 ft² to a disc", Standing::HouseDefault),
        ],
    };

    fn example(units: Units) -> Example {
        let (area, each) = if units == Units::Metric { ("2.2 m2", "1.9 m2") } else { ("23.6 ft2", "20 ft2") };
        Example {
            input: json!({ "scale": "P", "from": 120, "to": 220, "area": area, "each": each, "longest_step": 1.8 }),
            expects: vec![
                ("/result/each", json!(2)),
                ("/result/ladder/1/grit", json!("P150")),
                ("/result/all", json!(6)),
            ],
            checked_against: "ISO 6344 medians by hand: 125 to 68 is 1.84, too long; over 100 the longer step is 1.47, over 82 it is 1.52; two discs of each of three",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let mut faults = Vec::new();
        let mut p_grade = |pointer: &'static str, grade: u16| match input.scale {
            Scale::P if grain::p_median(grade).is_some() => Some((grade, grain::p_median(grade).unwrap_or(1.0))),
            Scale::Cami if grain::cami_average(grade).is_some() => {
                let average = grain::cami_average(grade).unwrap_or(1.0);
                Some((grain::nearest_p(average), average))
            }
            Scale::P => {
                let known: Vec<_> = grain::p_grades().map(|grain| grain.grade.to_string()).collect();
                faults.push(Fault::new(
                    pointer,
                    grade.to_string(),
                    format!("is no P grade; known are {}", known.join(", ")),
                    180,
                ));
                None
            }
            Scale::Cami => {
                let known: Vec<_> = grain::CAMI_GRADES.iter().map(|grain| grain.grade.to_string()).collect();
                faults.push(Fault::new(
                    pointer,
                    grade.to_string(),
                    format!("is no CAMI grade here; known are {}", known.join(", ")),
                    180,
                ));
                None
            }
        };
        let (from, to) = (p_grade("/from", input.from.get() as u16), p_grade("/to", input.to.get() as u16));
        let (Some((from, first)), Some((to, last))) = (from, to) else { return Err(faults) };
        if last > first {
            return Err(vec![Fault::new(
                "/to",
                input.to.get().to_string(),
                format!("must be finer than the first, {}", input.from.get()),
                220,
            )]);
        }
        let Some(rungs) = ladder(from, to, input.longest_step.get()) else {
            let why = "even neighbouring grades of the scale are farther apart here";
            return Err(vec![Fault::new("/longest_step", Words::of(input.longest_step), why, 1.8)]);
        };
        let each = libm::ceil(input.area.get() / input.each.get() - 1e-9).max(1.0) as u32;
        let all = each.saturating_mul(u32::try_from(rungs.len()).unwrap_or(u32::MAX));
        let mut before: Option<f64> = None;
        let ladder: Vec<Rung> = rungs
            .iter()
            .filter_map(|grade| {
                let median = grain::p_median(*grade)?;
                let step = before.replace(median).map(|coarse| Amount::of(coarse / median));
                Some(Rung { grit: format!("P{grade}"), grain: Amount::of(median), step })
            })
            .collect();
        let um = Amount::<kind::GrainSize>::of;
        let working = vec![
            Step::new("from the first grain to the last")
                .by("a / b")
                .given("a", "first grain", um(first))
                .given("b", "last grain", um(last))
                .gives("r", "ratio", first / last)
                .because(
                    Words::new("no step may be longer than {}; the fewest rungs were taken, then the most even")
                        .with(input.longest_step),
                ),
            Step::new("discs or sheets of each grit")
                .by("ceil(A / e)")
                .given("A", "area", input.area)
                .given("e", "one does", input.each)
                .gives("n", "of each grit", each),
            Step::new("all together")
                .by("n * k")
                .given("n", "of each grit", each)
                .given("k", "rungs", rungs.len())
                .gives("N", "discs or sheets", all),
        ];
        let mut notes = Vec::new();
        if input.scale == Scale::Cami {
            notes.push(Note::remark(
                "CAMI numbers were read as the P grades nearest in grain; above 220 the two scales part fast.",
            ));
        }
        if rungs.len() > 2 {
            notes.push(Note::remark("Skipping a rung leaves scratches that the finer grit only polishes."));
        }
        Ok(Answer { result: Output { each, all, ratio: Amount::of(first / last), ladder }, working, notes })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_step_of_a_ladder_is_too_long() {
        for (from, to) in [(80, 220), (80, 180), (120, 320), (40, 400)] {
            let rungs = ladder(from, to, LONGEST_STEP).expect("a ladder");
            assert_eq!((rungs.first(), rungs.last()), (Some(&from), Some(&to)));
            for pair in rungs.windows(2) {
                let ratio = grain::p_median(pair[0]).expect("a grade") / grain::p_median(pair[1]).expect("a grade");
                assert!(ratio <= LONGEST_STEP, "{pair:?} is {ratio}");
            }
        }
        assert_eq!(ladder(220, 80, LONGEST_STEP), None);
        assert_eq!(ladder(81, 220, LONGEST_STEP), None);
    }
}
