//! Instances of the stick plan with stored optima: reading them, solving them on one thread, and comparing.
//!
//! The questions are read and answered before the stored answers are looked at.

use std::time::{Duration, Instant};

use calculators::stock::certificate_check::check;
use calculators::stock::instance::{Instance, Piece, Stick};
use calculators::stock::plan::{Plan, Reason, Status};
use calculators::stock::solve::{Effort, cheapest};
use serde::Deserialize;

#[derive(Deserialize)]
struct Questions {
    instances: Vec<Question>,
}

/// One question of a file: what is to be cut from what, and nothing of the answer.
#[derive(Clone, Debug, Deserialize)]
pub struct Question {
    /// Its name in the file.
    pub id: String,
    /// Pieces wanted.
    pub pieces: Vec<Piece>,
    /// The saw's cut.
    pub kerf: i64,
    /// Sticks that can be had.
    pub stocks: Vec<Stick>,
}

#[derive(Deserialize)]
struct StoredFile {
    instances: Vec<Stored>,
}

/// The stored answer to one question.
#[derive(Clone, Debug, Deserialize)]
pub struct Stored {
    id: String,
    status: Option<String>,
    optimum_cost: Option<i64>,
    optimum_sticks: Option<u32>,
    optimum_longest_leftover: Option<i64>,
}

/// Our answer to one question.
#[derive(Clone, Debug)]
pub struct Solved {
    /// The question's name.
    pub id: String,
    /// The plan, with its certificate.
    pub plan: Plan,
    /// Until price and stick count were settled.
    pub cheapest: Duration,
    /// From there until the longest leftover was.
    pub leftover: Duration,
    /// What the checker says of the certificate; none when there is none.
    pub checked: Option<Result<(), String>>,
}

/// How long each part may take: the clock is the caller's, the solver knows none.
#[derive(Clone, Copy, Debug)]
pub struct Limits {
    /// For price and stick count.
    pub cheapest: Duration,
    /// For the longest leftover.
    pub leftover: Duration,
}

/// The questions of a file.
///
/// # Errors
/// When the text is not of the format, or holds no question.
pub fn questions(text: &str) -> Result<Vec<Question>, String> {
    let file: Questions = serde_json::from_str(text).map_err(|why| why.to_string())?;
    if file.instances.is_empty() { Err("no instances in the file".to_string()) } else { Ok(file.instances) }
}

/// Solves one question and has its certificate checked.
///
/// # Errors
/// When the instance is refused.
pub fn solved(question: &Question, limits: Limits) -> Result<Solved, String> {
    let instance = Instance { pieces: question.pieces.clone(), kerf: question.kerf, sticks: question.stocks.clone() };
    let start = Instant::now();
    let draft = cheapest(&instance, Effort::USUAL, &mut || start.elapsed() < limits.cheapest)
        .map_err(|fault| format!("{}: {fault}", question.id))?;
    let first = start.elapsed();
    let start = Instant::now();
    let plan = draft.with_longest_leftover(Effort::USUAL, &mut || start.elapsed() < limits.leftover);
    let leftover = start.elapsed();
    let checked = plan
        .certificate
        .as_ref()
        .map(|certificate| check(&instance, &plan, certificate).map_err(|doubt| doubt.to_string()));
    Ok(Solved { id: question.id.clone(), plan, cheapest: first, leftover, checked })
}

/// Everything in which answers differ from the stored ones, in words; empty when nothing does.
///
/// A stored value of null asks for nothing. An answer that is not proved, or whose certificate does not hold, differs.
///
/// # Errors
/// When the text is not of the format.
pub fn differences(text: &str, answers: &[Solved]) -> Result<Vec<String>, String> {
    let file: StoredFile = serde_json::from_str(text).map_err(|why| why.to_string())?;
    let mut differences = Vec::new();
    for stored in &file.instances {
        let Some(solved) = answers.iter().find(|solved| solved.id == stored.id) else {
            differences.push(format!("{}: not solved", stored.id));
            continue;
        };
        let plan = &solved.plan;
        let mut differs = |what: &str, ours: String, theirs: String| {
            if ours != theirs {
                differences.push(format!("{}: {what} {ours}, stored {theirs}", solved.id));
            }
        };
        match stored.status.as_deref() {
            Some("infeasible") => differs("status", standing(plan.status).to_string(), "impossible".to_string()),
            Some("optimal") => differs("status", standing(plan.status).to_string(), "proved least".to_string()),
            _ => {}
        }
        if let Some(cost) = stored.optimum_cost {
            differs("cost", plan.cost.to_string(), cost.to_string());
        }
        if let Some(sticks) = stored.optimum_sticks {
            differs("sticks", plan.stick_count.to_string(), sticks.to_string());
        }
        if let Some(leftover) = stored.optimum_longest_leftover {
            differs("longest leftover", plan.longest_leftover.to_string(), leftover.to_string());
            differs("leftover proved", plan.leftover_proved.to_string(), "true".to_string());
        }
        match &solved.checked {
            Some(Ok(())) => {}
            Some(Err(doubt)) => differences.push(format!("{}: certificate refused: {doubt}", solved.id)),
            // A piece longer than every stick needs no proof but itself.
            None if matches!(plan.status, Status::Impossible(Reason::PieceTooLong { .. })) => {}
            None => differences.push(format!("{}: no certificate", solved.id)),
        }
    }
    Ok(differences)
}

/// The standing of a plan in two words.
pub fn standing(status: Status) -> &'static str {
    match status {
        Status::ProvedLeast => "proved least",
        Status::BestFound { .. } => "best found",
        Status::Impossible(_) => "impossible",
        Status::NoneFound => "none found",
    }
}
