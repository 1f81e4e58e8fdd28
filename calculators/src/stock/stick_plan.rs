//! What to buy and how to saw it, for any pieces and any sticks, with the proof beside the plan.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};

use super::clear_parts::Marked;
use super::instance::Instance;
use super::on_hand::Held;
use super::plan::{Plan, Reason, Status};
use super::solve::Effort;
use super::stick_job::{self, JobFault, JobPlan, StickJob, Wanted};
use super::{certificate::Branch, certificate_check};
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Note, Source, Standing, Step, Words};
use crate::quantity::{Count, Length, Money, Units, Within};

/// What one request may spend before it settles for the best plan so far: most jobs are proved with a hundredth of it.
const EFFORT: Effort = Effort { cases: 3_000, leftover_cases: 200 };
/// How often the search may ask whether to go on, some 50 microseconds apart: a counted limit of about a second, so that the
/// same question gets the same answer everywhere. Patience multiplies it.
const MOST_LOOKS: u32 = 20_000;
/// Each time somebody asks for a longer look, it is so many times as long.
const LONGER: u32 = 4;
/// The longest look, so many times the first.
const MOST_PATIENCE: u32 = 16;

/// Pieces of one length.
#[derive(Clone, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct Pieces {
    /// What the stop is set to.
    #[schemars(title = "Length")]
    length: Within<1_000, 12_000_000>,
    /// How many of them.
    #[schemars(title = "How many")]
    count: Count<1, 2_000>,
    /// Pieces with one number come from one stick, one after the other, so that grain and colour run on; empty where it does not matter.
    #[serde(default)]
    #[schemars(title = "Lot")]
    lot: Option<Count<1, 99>>,
    /// Where a piece longer than every stick may be joined, from its left end: the studs behind it.
    #[serde(default)]
    #[schemars(title = "May be joined at", length(max = 24))]
    joins_at: Vec<Within<1_000, 12_000_000>>,
}

/// Sticks of one length.
#[derive(Clone, Deserialize, JsonSchema)]
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
    /// Knots, splits, dents that no piece may hold; what lies on either side is used. Only for sticks on hand that are paid for.
    #[serde(default)]
    #[schemars(title = "Bad stretches", length(max = 8))]
    bad: Vec<Marked>,
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
    /// How far two pieces lap where a long one is joined; empty is a butt joint.
    #[serde(default)]
    #[schemars(title = "Lap of a joint")]
    lap: Option<Within<0, 305_000>>,
    /// How long the search may look for a better plan and its proof: 1 is about a second.
    #[serde(default)]
    #[schemars(title = "Patience")]
    patience: Option<Count<1, MOST_PATIENCE>>,
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
    /// Pieces longer than any stick, with the parts they are joined from.
    #[schemars(title = "Joined pieces")]
    joined: Vec<JoinedRow>,
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

/// A piece that is joined.
#[derive(Serialize, JsonSchema)]
pub(crate) struct JoinedRow {
    /// Its whole length.
    #[schemars(title = "Piece")]
    piece: Length,
    /// From the left, to their long points.
    #[schemars(title = "Joined from")]
    parts: Vec<Length>,
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
    /// Where the clear part begins, on a stick with a bad stretch.
    #[schemars(title = "Begin at")]
    from: Option<Length>,
    /// In this order.
    #[schemars(title = "Cut")]
    cut: Vec<Length>,
    /// Lots that are cut from it.
    #[schemars(title = "Lot")]
    lots: Vec<u32>,
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
        for (index, stick) in input.sticks.iter().enumerate().filter(|(_, stick)| !stick.bad.is_empty()) {
            faults.extend(marked_faults(index, stick));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let job = job(input);
        let patience = input.patience.map_or(1, Count::get);
        let effort = Effort { cases: EFFORT.cases * patience, leftover_cases: EFFORT.leftover_cases * patience };
        let (mut looks, most) = (0_u32, MOST_LOOKS * patience);
        let mut keep_going = || {
            looks = looks.saturating_add(1);
            looks < most
        };
        let planned = stick_job::plan(&job, effort, &mut keep_going).map_err(|fault| vec![refused(input, &fault)])?;
        match planned.plan.status {
            Status::Impossible(reason) => Err(vec![impossible(input, reason, trim)]),
            Status::NoneFound => Err(vec![Fault::new(
                "/patience",
                Words::new("{}").with(patience),
                "no plan was found in the time allowed; look longer, give more sticks, or fewer pieces at once",
                (patience * LONGER).min(MOST_PATIENCE),
            )]),
            _ => Ok(answered(input, &planned, patience)),
        }
    }
}

/// Bad stretches that cannot be: on sticks that are not yet paid for, or ending before they begin.
fn marked_faults(index: usize, stick: &Sticks) -> Vec<Fault> {
    let mut faults = Vec::new();
    if stick.price != Money::ZERO {
        faults.push(Fault::new(
            format!("/sticks/{index}/price"),
            Words::new("{}").with(stick.price),
            "a stick with a bad stretch lies in the rack and is paid for: its parts are planned at no price",
            "0.00",
        ));
    }
    for (at, bad) in stick.bad.iter().enumerate().filter(|(_, bad)| bad.to.get() <= bad.from.get()) {
        faults.push(Fault::new(
            format!("/sticks/{index}/bad/{at}/to"),
            Words::new("{}").with(bad.to),
            Words::new("a bad stretch ends beyond {}, where it begins").with(bad.from),
            Words::new("{}").with(bad.from.get() + Length::inches(2)),
        ));
    }
    faults
}

fn job(input: &Input) -> StickJob {
    let wanted = input.pieces.iter().map(|piece| Wanted {
        length: piece.length.get(),
        count: piece.count.get(),
        lot: piece.lot.map(Count::get),
        joins_at: piece.joins_at.iter().map(|at| at.get()).collect(),
    });
    let held = input.sticks.iter().map(|stick| Held {
        length: stick.length.get(),
        price: stick.price.minor(),
        // A stick that was marked is one stick, unless somebody says that there are more like it.
        available: stick.available.map(Count::get).or((!stick.bad.is_empty()).then_some(1)),
        bad: stick.bad.iter().map(|bad| bad.stretch()).collect(),
    });
    StickJob {
        wanted: wanted.collect(),
        held: held.collect(),
        trim: input.end_trim.get(),
        kerf: input.kerf.get(),
        lap: input.lap.map_or(Length::ZERO, Within::get),
    }
}

fn refused(input: &Input, fault: &JobFault) -> Fault {
    match fault {
        JobFault::Instance(why) => Fault::new("/pieces", "these pieces and sticks", why.to_string(), Value::Null),
        JobFault::LotTooLong { lot, length, longest } => {
            let of_lot = |piece: &Pieces| piece.lot.is_some_and(|other| other.get() == *lot);
            let index = input.pieces.iter().position(of_lot).unwrap_or(0);
            let why = Words::new(
                "the lot is {} long with its cuts, and the longest clear part of a stick {}: make two lots of it",
            )
            .with(*length)
            .with(*longest);
            Fault::new(format!("/pieces/{index}/lot"), Words::new("{}").with(*lot), why, Value::Null)
        }
        JobFault::NoJoint { wanted, longest } => {
            let why =
                Words::new("no joint at these places leaves parts of {} or less, the longest clear part of a stick")
                    .with(*longest);
            let piece = input.pieces.get(*wanted).map(|piece| piece.length.get()).unwrap_or_default();
            let half = piece.exact().half().nearest(Length::um(1_000));
            Fault::new(format!("/pieces/{wanted}/joins_at"), "these places", why, json!([print_mm(half)]))
        }
    }
}

fn print_mm(length: Length) -> String {
    format!("{} mm", length.in_mm())
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

fn rows(input: &Input, planned: &JobPlan) -> Vec<Row> {
    let row = |part: &stick_job::SawnPart| {
        let place = planned.usable.get(part.laid.part);
        let stick = place.and_then(|place| input.sticks.get(place.held));
        let cut = &part.laid.cut;
        Row {
            times: cut.times,
            stick: stick.map_or(Length::from_nm(cut.length), |stick| stick.length.get()),
            from: stick.filter(|stick| !stick.bad.is_empty()).and(place).map(|place| place.from),
            cut: cut
                .pieces
                .iter()
                .flat_map(|piece| std::iter::repeat_n(Length::from_nm(piece.length), piece.count as usize))
                .collect(),
            lots: part.lots.clone(),
            left: Length::from_nm(cut.leftover),
        }
    };
    planned.sawn.iter().map(row).collect()
}

/// What the proof holds for, where more was asked than the plain question.
fn limits(input: &Input, planned: &JobPlan) -> Vec<Note> {
    let mut notes = Vec::new();
    if input.pieces.iter().any(|piece| piece.lot.is_some()) {
        notes.push(Note::remark(
            "The proof holds with the lots kept together; apart they might come out of fewer sticks.",
        ));
    }
    if !planned.joined.is_empty() {
        notes.push(Note::remark(if planned.joints_settled {
            "Joints were chosen together with the plan: the balanced ones, and every single joint that fits, were all tried."
        } else {
            "Joints were chosen together with the plan, but not every choice was tried: the proof holds for these joints."
        }));
    }
    if input.sticks.iter().any(|stick| !stick.bad.is_empty()) {
        notes.push(Note::remark(
            "Cut a bad stretch out first. The proof counts the parts of a stick as sticks of their own.",
        ));
    }
    notes
}

fn answered(input: &Input, planned: &JobPlan, patience: u32) -> Answer<Output> {
    let (asked, plan): (&Instance, &Plan) = (&planned.asked, &planned.plan);
    let rows = rows(input, planned);
    let kept = rows.iter().filter(|row| row.left.is_positive() && input.keep.get() <= row.left);
    let kept: Vec<Length> = kept.flat_map(|row| std::iter::repeat_n(row.left, row.times as usize)).collect();
    let checked = plan.certificate.as_ref().is_some_and(|proof| certificate_check::check(asked, plan, proof).is_ok());
    let cost = Money::from_minor(plan.cost);
    let (proof, mut notes) = match plan.status {
        Status::BestFound { could_save, .. } => {
            let words =
                Words::new("best found so far; a better one could save {} at most").with(Money::from_minor(could_save));
            let longer = (patience * LONGER).min(MOST_PATIENCE);
            let note = Note::check(words.clone());
            let offered = if longer > patience { note.offering("/patience", longer, "Look longer") } else { note };
            (words, vec![offered])
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
    notes.extend(limits(input, planned));
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
            sticks: planned.sticks,
            proof,
            longest_leftover: Length::from_nm(plan.longest_leftover),
            plan: rows,
            joined: planned
                .joined
                .iter()
                .map(|piece| JoinedRow { piece: piece.length, parts: piece.parts.clone() })
                .collect(),
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
