//! What to buy and how to saw it, for any pieces and any sticks, with the proof beside the plan.

use serde_json::{Value, json};

use super::clear_parts::{Marked, marked_faults};
use super::on_hand::Held;
use super::plan::{Reason, Status};
use super::solve::Effort;
use super::stick_answer::{Output, answered};
use super::stick_job::{self, JobFault, StickJob, Wanted};
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Source, Standing, Words};
use crate::quantity::{Count, Length, Money, Units, Within};

/// What one request may spend before it settles for the best plan so far: most jobs are proved with a hundredth of it.
const EFFORT: Effort = Effort { cases: 3_000, leftover_cases: 200 };
/// How often the search may ask whether to go on, some 50 microseconds apart: a counted limit of about a second, so that the
/// same question gets the same answer everywhere. Patience multiplies it.
const MOST_LOOKS: u32 = 20_000;
/// Each time somebody asks for a longer look, it is so many times as long.
pub(super) const LONGER: u32 = 4;
/// The longest look, so many times the first.
pub(super) const MOST_PATIENCE: u32 = 16;

/// Pieces of one length.
#[derive(Clone, Input)]
pub(crate) struct Pieces {
    /// What the stop is set to.
    #[field("Length")]
    length: Within<1_000, 12_000_000>,
    /// How many of them.
    #[field("How many")]
    count: Count<1, 2_000>,
    /// Pieces with one number come from one stick, one after the other, so that grain and colour run on; empty where it does not matter.
    #[field("Lot", default)]
    pub(super) lot: Option<Count<1, 99>>,
    /// Where a piece longer than every stick may be joined, from its left end: the studs behind it.
    #[field("May be joined at", default, size(..=24))]
    joins_at: Vec<Within<1_000, 12_000_000>>,
}

/// Sticks of one length.
#[derive(Clone, Input)]
pub(crate) struct Sticks {
    /// Its whole length; ends are trimmed as said below.
    #[field("Length")]
    pub(super) length: Within<25_000, 12_000_000>,
    /// Of one; an offcut in the rack costs nothing.
    #[field("Price")]
    price: Money,
    /// Empty is as many as are needed.
    #[field("On hand")]
    available: Option<Count<0, 10_000>>,
    /// Knots, splits, dents that no piece may hold; what lies on either side is used. Only for sticks on hand that are paid for.
    #[field("Bad stretches", default, size(..=8))]
    pub(super) bad: Vec<Marked>,
}

pub(crate) struct StickPlan;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Of one width and thickness.
    #[field("Pieces", size(1..=120))]
    pub(super) pieces: Vec<Pieces>,
    /// That can be had; offcuts first, at no price.
    #[field("Sticks", size(1..=24))]
    pub(super) sticks: Vec<Sticks>,
    /// What one cut eats, measured.
    #[field("Kerf", usual = ["1.6 mm", "4 mm"])]
    kerf: Within<0, 6_400>,
    /// Cut off each end of every stick first.
    #[field("End trim")]
    end_trim: Within<0, 305_000>,
    /// Offcuts from this length go back into the rack.
    #[field("Keep offcuts from")]
    pub(super) keep: Within<0, 3_000_000>,
    /// How far two pieces lap where a long one is joined; empty is a butt joint.
    #[field("Lap of a joint", default)]
    lap: Option<Within<0, 305_000>>,
    /// How long the search may look for a better plan and its proof: 1 is about a second.
    #[field("Patience", default)]
    patience: Option<Count<1, MOST_PATIENCE>>,
}

impl Calculator for StickPlan {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "cutting-plan",
        title: "Cutting plan",
        question: "What do I buy, and in what order do I saw it?",
        step: 9,
        search: &[
            "sticks",
            "cutting list",
            "offcuts",
            "waste",
            "kerf",
            "lengths to buy",
            "footer",
            "how many sticks",
            "16 footers",
            "order",
            "cut list",
        ],
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
    const HEAVY: bool = true;

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
                    Words::of(stick.length),
                    why,
                    Words::of(stick.length.get() + trim),
                ));
            }
            if stick.price < Money::ZERO {
                faults.push(Fault::new(at("price"), Words::of(stick.price), "a price is not below zero", "18.00"));
            }
        }
        for (index, stick) in input.sticks.iter().enumerate().filter(|(_, stick)| !stick.bad.is_empty()) {
            faults.extend(marked_faults(&format!("/sticks/{index}"), stick.price, &stick.bad));
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
                Words::of(patience),
                "no plan was found in the time allowed; look longer, give more sticks, or fewer pieces at once",
                (patience * LONGER).min(MOST_PATIENCE),
            )]),
            _ => Ok(answered(input, &planned, patience)),
        }
    }
}

fn job(input: &Input) -> StickJob {
    let wanted = input.pieces.iter().map(|piece| Wanted {
        length: piece.length.get(),
        count: piece.count.get(),
        lot: piece.lot.map(Count::get),
        joins_at: piece.joins_at.iter().map(|at| at.get()).collect(),
    });
    let held = input
        .sticks
        .iter()
        .map(|stick| Held::told(stick.length.get(), stick.price, stick.available.map(Count::get), &stick.bad));
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
            Fault::new(format!("/pieces/{index}/lot"), Words::of(*lot), why, Value::Null)
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
            Fault::new(format!("/pieces/{index}/length"), Words::of(Length::from_nm(piece)), why, Words::of(longest))
        }
        Reason::TooFewSticks { short, length } => {
            let why = Words::new("too few: at least {} more of {} are needed")
                .with(short)
                .with(Length::from_nm(length) + trim);
            Fault::new("/sticks", "the sticks on hand", why, Value::Null)
        }
    }
}
