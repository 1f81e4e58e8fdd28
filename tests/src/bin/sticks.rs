//! Solves every instance of a file on one thread, has each proof checked, and compares with the stored optima.
//!
//! `cargo run --release -p tests --bin sticks -- FILE [--certificates FILE] [--seconds N]`
//! The exit code is 1 when an answer differs, is not proved, or its certificate does not hold; 2 when a file cannot be
//! read or written.

use std::process::ExitCode;
use std::time::Duration;

use calculators::stock::plan::{Reason, Status};
use serde_json::json;
use tests::sticks::{Limits, Solved, differences, questions, solved, standing};

fn main() -> ExitCode {
    match run() {
        Ok(code) => code,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}

struct Arguments {
    file: String,
    certificates: Option<String>,
    limits: Limits,
}

fn arguments() -> Result<Arguments, String> {
    const USAGE: &str = "usage: sticks FILE [--certificates FILE] [--seconds N]";
    let (mut file, mut certificates, mut seconds) = (None, None, 10.0);
    let mut words = std::env::args().skip(1);
    while let Some(word) = words.next() {
        let mut value = || words.next().ok_or(format!("{word} needs a value; {USAGE}"));
        match word.as_str() {
            "--certificates" => certificates = Some(value()?),
            "--seconds" => {
                let said = value()?;
                seconds = said
                    .parse()
                    .ok()
                    .filter(|seconds| (0.0..=86_400.0).contains(seconds))
                    .ok_or(format!("{said} is no number of seconds from 0 to 86400; {USAGE}"))?;
            }
            _ if file.is_none() && !word.starts_with("--") => file = Some(word),
            _ => return Err(format!("{word} is not known here; {USAGE}")),
        }
    }
    let limit = Duration::from_secs_f64(seconds);
    Ok(Arguments { file: file.ok_or(USAGE)?, certificates, limits: Limits { cheapest: limit, leftover: limit } })
}

fn run() -> Result<ExitCode, String> {
    let arguments = arguments()?;
    let text = std::fs::read_to_string(&arguments.file).map_err(|why| format!("{}: {why}", arguments.file))?;
    let questions = questions(&text).map_err(|why| format!("{}: {why}", arguments.file))?;
    println!(
        "{:<16} {:>9} {:>7} {:>14} {:<13} {:<12} {:>9} {:>12}  certificate",
        "instance", "cost", "sticks", "leftover", "cost, sticks", "leftover", "ms", "leftover ms"
    );
    let mut answers = Vec::with_capacity(questions.len());
    for question in &questions {
        let solved = solved(question, arguments.limits)?;
        print_line(&solved);
        answers.push(solved);
    }
    print_totals(&answers);
    if let Some(file) = &arguments.certificates {
        let all: Vec<_> = answers.iter().map(|solved| json!({ "id": solved.id, "plan": solved.plan })).collect();
        let text = serde_json::to_string(&json!({ "plans": all })).map_err(|why| why.to_string())?;
        std::fs::write(file, text).map_err(|why| format!("{file}: {why}"))?;
    }
    let differences = differences(&text, &answers).map_err(|why| format!("{}: {why}", arguments.file))?;
    if differences.is_empty() {
        println!("every answer is proved and agrees with what is stored");
        return Ok(ExitCode::SUCCESS);
    }
    for difference in &differences {
        println!("differs: {difference}");
    }
    Ok(ExitCode::from(1))
}

fn milliseconds(duration: Duration) -> f64 {
    duration.as_secs_f64() * 1e3
}

fn print_line(solved: &Solved) {
    let plan = &solved.plan;
    let certificate = match &solved.checked {
        Some(Ok(())) => "holds".to_string(),
        Some(Err(doubt)) => format!("refused: {doubt}"),
        None => "none".to_string(),
    };
    let found = !plan.sticks.is_empty() || plan.status == Status::ProvedLeast;
    let shown = |number: i64| if found { number.to_string() } else { "-".to_string() };
    let leftover = match (found, plan.leftover_proved) {
        (false, _) => "-",
        (true, true) => "proved",
        (true, false) => "not proved",
    };
    println!(
        "{:<16} {:>9} {:>7} {:>14} {:<13} {:<12} {:>9.2} {:>12.2}  {certificate}",
        solved.id,
        shown(plan.cost),
        shown(i64::from(plan.stick_count)),
        shown(plan.longest_leftover),
        standing(plan.status),
        leftover,
        milliseconds(solved.cheapest),
        milliseconds(solved.leftover),
    );
    match plan.status {
        Status::Impossible(Reason::PieceTooLong { piece, longest_stick: Some(stick) }) => {
            println!("    a piece of {piece} is longer than every stick; the longest is {stick}");
        }
        Status::Impossible(Reason::PieceTooLong { piece, longest_stick: None }) => {
            println!("    no stick at all for a piece of {piece}");
        }
        Status::Impossible(Reason::TooFewSticks { short, length }) => {
            println!("    too few sticks: at least {short} more of {length}");
        }
        Status::BestFound { bound, could_save } => {
            println!("    no plan costs less than {bound}: a cheaper one could save {could_save} at most");
        }
        Status::ProvedLeast | Status::NoneFound => {}
    }
}

fn print_totals(answers: &[Solved]) {
    let spread = |part: fn(&Solved) -> Duration| {
        let mut times: Vec<f64> = answers.iter().map(|solved| milliseconds(part(solved))).collect();
        times.sort_by(f64::total_cmp);
        (times[(times.len() - 1) / 2], times[times.len() - 1])
    };
    let proved =
        answers.iter().filter(|solved| matches!(solved.plan.status, Status::ProvedLeast | Status::Impossible(_)));
    let (median, worst) = spread(|solved| solved.cheapest);
    let (leftover_median, leftover_worst) = spread(|solved| solved.leftover);
    println!("{} instances, {} settled on cost and sticks", answers.len(), proved.count());
    println!("cost and sticks: median {median:.2} ms, worst {worst:.2} ms");
    println!("longest leftover: median {leftover_median:.2} ms, worst {leftover_worst:.2} ms");
    if let Some(peak) = peak_memory() {
        println!("memory at its highest: {peak}");
    }
}

/// What the operating system says of the most memory held, where it says so.
fn peak_memory() -> Option<String> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    status.lines().find_map(|line| line.strip_prefix("VmHWM:")).map(|rest| rest.trim().to_string())
}
