//! The answer of the stick plan: rows to saw from, what is joined and kept, and the proof in words, in a table and in full.

use serde_json::Value;

use super::certificate_check;
use super::instance::Instance;
use super::plan::{Plan, Status};
use super::stick_job::{self, JobPlan};
use super::stick_plan::{Input, LONGER, MOST_PATIENCE};
use super::stick_proof::{self, CASES_SHOWN, CaseRow, Worth};
use crate::catalogue::{Answer, Note, Output, Step, Words};
use crate::quantity::{Length, Money};

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Of all sticks.
    #[field("Cost")]
    cost: Money,
    /// To saw.
    #[field("Sticks")]
    sticks: u32,
    /// Whether a cheaper plan can exist.
    #[field("Proof")]
    proof: Words,
    /// The longest piece that is left over.
    #[field("Longest leftover")]
    longest_leftover: Length,
    /// Sticks that are cut alike, together.
    #[field("How to saw them")]
    plan: Vec<Row>,
    /// Pieces longer than any stick, with the parts they are joined from.
    #[field("Joined pieces")]
    joined: Vec<JoinedRow>,
    /// Back into the rack.
    #[field("Offcuts to keep")]
    kept: Vec<Length>,
    /// What the proof counts each length as worth, where one page shows it all.
    #[field("The proof, length by length")]
    worth: Vec<Worth>,
    /// What the proof shows of each case, where it goes by cases: those that come nearest to a cheaper plan.
    #[field("The proof, case by case")]
    cases: Vec<CaseRow>,
    /// The whole certificate, lengths in nanometres, for a checker.
    #[field("Certificate", for_machines)]
    certificate: Option<Value>,
}

/// A piece that is joined.
#[derive(Output)]
pub(crate) struct JoinedRow {
    /// Its whole length.
    #[field("Piece")]
    piece: Length,
    /// From the left, to their long points.
    #[field("Joined from")]
    parts: Vec<Length>,
}

/// Sticks cut alike.
#[derive(Output)]
pub(crate) struct Row {
    /// How many.
    #[field("Sticks")]
    times: u32,
    /// Whole length.
    #[field("Of")]
    stick: Length,
    /// Where the clear part begins, on a stick with a bad stretch.
    #[field("Begin at")]
    from: Option<Length>,
    /// In this order.
    #[field("Cut")]
    cut: Vec<Length>,
    /// Lots that are cut from it.
    #[field("Lot")]
    lots: Vec<u32>,
    /// After the last cut.
    #[field("Left over")]
    left: Length,
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

pub(super) fn answered(input: &Input, planned: &JobPlan, patience: u32) -> Answer<Output> {
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
    let worth = plan.certificate.as_ref().map(stick_proof::worth).unwrap_or_default();
    let (cases, rows_of_cases) = plan.certificate.as_ref().map(stick_proof::cases).unwrap_or_default();
    if cases > CASES_SHOWN {
        notes.push(Note::remark(
            Words::new("The proof goes by {} cases: the {} that come nearest to a cheaper plan are shown, all stand in the certificate.")
                .with(cases)
                .with(CASES_SHOWN),
        ));
    }
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
            .because(if cases > 1 {
                "each length is given a worth, so that no way of cutting holds more worth than its stick costs; all pieces together are worth more than the next cheaper price that sticks can add up to; where one set of worths does not show it, the plans are parted into cases by how many sticks of a kind they use, each with worths of its own"
            } else {
                "each length is given a worth, so that no way of cutting holds more worth than its stick costs; all pieces together are worth what this plan costs, so nothing cheaper can hold them"
            }),
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
            cases: rows_of_cases,
            certificate: plan.certificate.as_ref().and_then(|proof| serde_json::to_value(proof).ok()),
        },
        working,
        notes,
    }
}
