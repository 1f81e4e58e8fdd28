//! What to buy and how to saw it, for any pieces and any sticks, with the proof beside the plan.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};

use super::instance::{self, Instance};
use super::plan::{Plan, Reason, Status};
use super::solve::{self, Effort};
use super::{certificate::Branch, certificate_check};
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Note, Source, Standing, Step, Words};
use crate::quantity::{Count, Length, Money, Units, Within};

/// What one request may spend before it settles for the best plan so far: most jobs are proved with a hundredth of it.
const EFFORT: Effort = Effort { cases: 3_000, leftover_cases: 200 };
/// How often the search may ask whether to go on, some 50 microseconds apart: a counted limit of a few seconds, so that the
/// same question gets the same answer everywhere.
const MOST_LOOKS: u32 = 40_000;

/// Pieces of one length.
#[derive(Clone, Copy, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Pieces {
    /// What the stop is set to.
    #[schemars(title = "Length")]
    length: Within<1_000, 12_000_000>,
    /// How many of them.
    #[schemars(title = "How many")]
    count: Count<1, 2_000>,
}

/// Sticks of one length.
#[derive(Clone, Copy, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Sticks {
    /// Its whole length; ends are trimmed as said below.
    #[schemars(title = "Length")]
    length: Within<25_000, 12_000_000>,
    /// Of one; an offcut in the rack costs nothing.
    #[schemars(title = "Price")]
    price: Money,
    /// Empty is as many as are needed.
    #[schemars(title = "On hand")]
    available: Option<Count<0, 10_000>>,
}

pub(crate) struct StickPlan;

/// What is asked.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Input {
    /// Of one width and thickness.
    #[schemars(title = "Pieces", length(min = 1, max = 120))]
    pieces: Vec<Pieces>,
    /// That can be had; offcuts first, at no price.
    #[schemars(title = "Sticks", length(min = 1, max = 24))]
    sticks: Vec<Sticks>,
    /// What one cut eats, measured.
    #[schemars(title = "Kerf", extend("x-usual" = ["1.6 mm", "4 mm"]))]
    kerf: Within<0, 6_400>,
    /// Cut off each end of every stick first.
    #[schemars(title = "End trim")]
    end_trim: Within<0, 305_000>,
    /// Offcuts from this length go back into the rack.
    #[schemars(title = "Keep offcuts from")]
    keep: Within<0, 3_000_000>,
}

/// What is answered.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Output {
    /// Of all sticks.
    #[schemars(title = "Cost")]
    cost: Money,
    /// To saw.
    #[schemars(title = "Sticks")]
    sticks: u32,
    /// Whether a cheaper plan can exist.
    #[schemars(title = "Proof")]
    proof: Words,
    /// The longest piece that is left over.
    #[schemars(title = "Longest leftover")]
    longest_leftover: Length,
    /// Sticks that are cut alike, together.
    #[schemars(title = "How to saw them")]
    plan: Vec<Row>,
    /// Back into the rack.
    #[schemars(title = "Offcuts to keep")]
    kept: Vec<Length>,
    /// What the proof counts each length as worth, where one page shows it all.
    #[schemars(title = "The proof, length by length")]
    worth: Vec<Worth>,
    /// The whole certificate, lengths in nanometres, for a checker.
    #[schemars(title = "Certificate")]
    certificate: Option<Value>,
}

/// Sticks cut alike.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Row {
    /// How many.
    #[schemars(title = "Sticks")]
    times: u32,
    /// Whole length.
    #[schemars(title = "Of")]
    stick: Length,
    /// Longest first.
    #[schemars(title = "Cut")]
    cut: Vec<Length>,
    /// After the last cut.
    #[schemars(title = "Left over")]
    left: Length,
}

/// What one length counts for in the proof.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Worth {
    /// The length.
    #[schemars(title = "Piece")]
    piece: Length,
    /// How many are needed.
    #[schemars(title = "Needed")]
    count: u32,
    /// Its share of a stick's weight, in thousandths of the cheapest stick's.
    #[schemars(title = "Worth")]
    worth: f64,
}

impl Calculator for StickPlan {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "stick-plan",
        title: "Stick plan",
        question: "What do I buy, and in what order do I saw it?",
        step: 9,
        search: &["sticks", "cutting list", "offcuts", "waste", "kerf", "lengths to buy"],
        headline: &["/cost", "/sticks", "/longest_leftover"],
        list: Some("/plan"),
        cautions: &["saw-blade"],
        sources: &[
            Source::new(
                GEOMETRY,
                "branch and price; the proof is checked by a second program before it is shown",
                Standing::Derived,
            ),
            Source::new(PRACTICE, "least cost, then fewest sticks, then one long offcut", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        let (pieces, stick, kerf) = match units {
            Units::Imperial => (["47 1/4 in", "33 1/2 in", "61 in"], "144 in", "1/8 in"),
            Units::Metric => (["1200 mm", "850 mm", "1550 mm"], "3660 mm", "3.2 mm"),
        };
        let piece = |length: &str, count: u32| json!({ "length": length, "count": count });
        let zero = if units == Units::Metric { "0 mm" } else { "0 in" };
        let keep = if units == Units::Metric { "300 mm" } else { "12 in" };
        Example {
            input: json!({
                "pieces": [piece(pieces[0], 5), piece(pieces[1], 4), piece(pieces[2], 3)],
                "sticks": [{ "length": stick, "price": "18.00" }], "kerf": kerf, "end_trim": zero, "keep": keep,
            }),
            expects: vec![("/result/sticks", json!(4)), ("/result/cost/text", json!("72.00"))],
            checked_against: "by hand: three sticks of one of each length, one of two of the first and one of the second; longest first into the fullest stick takes five",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let trim = input.end_trim.get() * 2;
        let mut faults = Vec::new();
        for (index, stick) in input.sticks.iter().enumerate() {
            let at = |field: &str| format!("/sticks/{index}/{field}");
            if stick.length.get() <= trim {
                let why = Words::new("nothing is left of it when {} is cut off each end").with(input.end_trim);
                faults.push(Fault::new(
                    at("length"),
                    Words::new("{}").with(stick.length),
                    why,
                    Words::new("{}").with(stick.length.get() + trim),
                ));
            }
            if stick.price < Money::ZERO {
                faults.push(Fault::new(
                    at("price"),
                    Words::new("{}").with(stick.price),
                    "a price is not below zero",
                    "18.00",
                ));
            }
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let asked = Instance {
            pieces: input
                .pieces
                .iter()
                .map(|piece| instance::Piece { length: piece.length.get().nm(), count: piece.count.get() })
                .collect(),
            kerf: input.kerf.get().nm(),
            sticks: input
                .sticks
                .iter()
                .map(|stick| instance::Stick {
                    length: (stick.length.get() - trim).nm(),
                    price: stick.price.minor(),
                    available: stick.available.map(Count::get),
                })
                .collect(),
        };
        let refused = |why: String| vec![Fault::new("/pieces", "these pieces and sticks", why, Value::Null)];
        let mut looks = 0_u32;
        let mut keep_going = || {
            looks = looks.saturating_add(1);
            looks < MOST_LOOKS
        };
        let plan = solve::plan(&asked, EFFORT, &mut keep_going).map_err(|why| refused(why.to_string()))?;
        if let Status::Impossible(reason) = plan.status {
            return Err(vec![impossible(input, reason, trim)]);
        }
        if plan.status == Status::NoneFound {
            return Err(refused(
                "no plan was found in the time allowed; give more sticks, or fewer pieces at once".to_owned(),
            ));
        }
        Ok(answered(input, &asked, &plan, trim))
    }
}

fn impossible(input: &Input, reason: Reason, trim: Length) -> Fault {
    match reason {
        Reason::PieceTooLong { piece, longest_stick } => {
            let index = input.pieces.iter().position(|row| row.length.get().nm() == piece).unwrap_or(0);
            let longest = Length::from_nm(longest_stick.unwrap_or(0));
            let why = Words::new("longer than every stick, {} usable at most; join it on a stud, or buy longer sticks")
                .with(longest);
            Fault::new(
                format!("/pieces/{index}/length"),
                Words::new("{}").with(Length::from_nm(piece)),
                why,
                Words::new("{}").with(longest),
            )
        }
        Reason::TooFewSticks { short, length } => {
            let why = Words::new("too few: at least {} more of {} are needed")
                .with(short)
                .with(Length::from_nm(length) + trim);
            Fault::new("/sticks", "the sticks on hand", why, Value::Null)
        }
    }
}

fn answered(input: &Input, asked: &Instance, plan: &Plan, trim: Length) -> Answer<Output> {
    let rows: Vec<Row> = plan
        .sticks
        .iter()
        .map(|cut| Row {
            times: cut.times,
            stick: Length::from_nm(cut.length) + trim,
            cut: cut
                .pieces
                .iter()
                .flat_map(|piece| std::iter::repeat_n(Length::from_nm(piece.length), piece.count as usize))
                .collect(),
            left: Length::from_nm(cut.leftover),
        })
        .collect();
    let kept = rows.iter().filter(|row| row.left.is_positive() && input.keep.get() <= row.left);
    let kept: Vec<Length> = kept.flat_map(|row| std::iter::repeat_n(row.left, row.times as usize)).collect();
    let checked = plan.certificate.as_ref().is_some_and(|proof| certificate_check::check(asked, plan, proof).is_ok());
    let cost = Money::from_minor(plan.cost);
    let (proof, mut notes) = match plan.status {
        Status::BestFound { could_save, .. } => {
            let words =
                Words::new("best found so far; a better one could save {} at most").with(Money::from_minor(could_save));
            (words.clone(), vec![Note::check(words)])
        }
        _ if checked => (Words::new("proved: no cheaper plan exists, and none as cheap with fewer sticks"), Vec::new()),
        _ => (
            Words::new("found, but its proof did not pass the second check"),
            vec![Note::check("The proof did not pass its check: take the plan as a good one only.")],
        ),
    };
    if !plan.leftover_proved {
        notes.push(Note::remark("Whether a longer offcut could be left at the same price is not proved."));
    }
    let used = rows
        .iter()
        .map(|row| row.cut.iter().map(|piece| piece.in_mm()).sum::<f64>() * f64::from(row.times))
        .sum::<f64>();
    let bought = rows.iter().map(|row| row.stick.in_mm() * f64::from(row.times)).sum::<f64>();
    let worth = worth(plan);
    let mut working = vec![
        Step::new("share of what is bought that ends on the wall")
            .by("100 * u / b")
            .given("u", "pieces, end to end", Length::nearest_mm(used))
            .given("b", "sticks, end to end", Length::nearest_mm(bought))
            .gives("s", "share, in per cent", 100.0 * used / bought.max(1e-9)),
    ];
    let mut sum = Step::new("what it costs");
    let mut terms = Vec::new();
    for (index, cut) in plan.sticks.iter().enumerate() {
        let n = index + 1;
        terms.push(format!("n{n} * p{n}"));
        sum = sum.given(format!("n{n}"), format!("sticks cut the {n}. way"), cut.times).given(
            format!("p{n}"),
            "price of one",
            Money::from_minor(cut.price),
        );
    }
    working.push(sum.by(if terms.is_empty() { "0".to_owned() } else { terms.join(" + ") }).gives("C", "cost", cost));
    working.push(
        Step::new("why no plan costs less")
            .gives("v", "proof", if checked { "checked" } else { "not checked" })
            .because("each length is given a worth, so that no way of cutting holds more worth than its stick costs; all pieces together are worth what this plan costs, so nothing cheaper can hold them"),
    );
    Answer {
        result: Output {
            cost,
            sticks: plan.stick_count,
            proof,
            longest_leftover: Length::from_nm(plan.longest_leftover),
            plan: rows,
            kept,
            worth,
            certificate: plan.certificate.as_ref().and_then(|proof| serde_json::to_value(proof).ok()),
        },
        working,
        notes,
    }
}

/// The values of the first case, where the proof has one; a proof by many cases has a table for each, in the certificate.
fn worth(plan: &Plan) -> Vec<Worth> {
    let Some(proof) = &plan.certificate else { return Vec::new() };
    let Some(Branch::Leaf(leaf)) = proof.cases.first().filter(|_| proof.cases.len() == 1) else { return Vec::new() };
    let count: i64 = proof.pieces.iter().map(|piece| i64::from(piece.count)).sum();
    let cheapest = proof.sticks.iter().map(|stick| stick.price * (count + 1) + 1).min().unwrap_or(1).max(1);
    let share = |value: i64| 1_000.0 * value as f64 / leaf.scale.max(1) as f64 / cheapest as f64;
    let rounded = |value: f64| libm::round(value * 10.0) / 10.0;
    let rows = proof.pieces.iter().zip(&leaf.values);
    rows.map(|(piece, value)| Worth {
        piece: Length::from_nm(piece.length),
        count: piece.count,
        worth: rounded(share(*value)),
    })
    .collect()
}
