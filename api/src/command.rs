//! The command line: one file per command, answers on standard output, talk on standard error.

pub mod render;
pub mod serve;
pub mod wall;
pub mod work;

use std::path::Path;
use std::process::ExitCode;

use book::Handbook;
use calculators::quantity::Units;
use clap::{Parser, Subcommand, ValueEnum};
use serde_json::Value;

/// The method book for decorative wall trim that calculates.
///
/// Without a command the handbook is rendered and served to browsers on this machine, and the address is printed.
#[derive(Parser)]
#[command(name = "benchleaf", version)]
struct Arguments {
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Subcommand)]
enum Command {
    Serve(serve::Serve),
    Render(render::Render),
    Work(work::Work),
    Wall(wall::Wall),
}

/// A unit system as a word on the command line.
#[derive(Clone, Copy, Debug, Default, ValueEnum)]
pub enum UnitsWord {
    /// Feet, inches and fractions.
    #[default]
    Imperial,
    /// Millimetres.
    Metric,
}

impl From<UnitsWord> for Units {
    fn from(word: UnitsWord) -> Self {
        match word {
            UnitsWord::Imperial => Self::Imperial,
            UnitsWord::Metric => Self::Metric,
        }
    }
}

/// Why a command did not do what it was asked.
#[derive(Debug)]
pub enum Failure {
    /// What was given cannot be worked with: exit code 2.
    Input(String),
    /// Something outside did not work: exit code 1.
    Outside(String),
}

/// Does what the words of the command line say.
pub fn run() -> ExitCode {
    let done = match Arguments::parse().command {
        None => serve::Serve::default().run(),
        Some(Command::Serve(serve)) => serve.run(),
        Some(Command::Render(render)) => render.run(),
        Some(Command::Work(work)) => work.run(),
        Some(Command::Wall(wall)) => wall.run(),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure::Input(why)) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
        Err(Failure::Outside(why)) => {
            eprintln!("{why}");
            ExitCode::FAILURE
        }
    }
}

/// The handbook in the binary.
fn handbook() -> Result<Handbook, Failure> {
    Handbook::built_in().map_err(|faults| Failure::Outside(faults.to_string()))
}

/// Reads a file of input, JSON or TOML by its ending; `-` is JSON on standard input.
fn read_input(file: &Path) -> Result<Value, Failure> {
    let named = file.display();
    if file == Path::new("-") {
        return serde_json::from_reader(std::io::stdin())
            .map_err(|why| Failure::Input(format!("standard input is no JSON: {why}")));
    }
    let text = std::fs::read_to_string(file).map_err(|why| Failure::Input(format!("{named} cannot be read: {why}")))?;
    if file.extension().is_some_and(|ending| ending == "toml") {
        return toml::from_str(&text).map_err(|why| Failure::Input(format!("{named} is no TOML: {why}")));
    }
    serde_json::from_str(&text).map_err(|why| Failure::Input(format!("{named} is no JSON: {why}")))
}

/// Faults as lines a person can act on.
fn told(faults: &Value) -> String {
    let mut out = String::new();
    for fault in faults.as_array().into_iter().flatten() {
        let part = |name: &str| match fault.get(name) {
            Some(Value::String(text)) => text.clone(),
            Some(other) => other.to_string(),
            None => String::new(),
        };
        let place = if part("pointer").is_empty() { "input".to_owned() } else { part("pointer") };
        out += &format!("{place}: {}: {}", part("said"), part("why"));
        if fault.get("try").is_some_and(|value| !value.is_null()) {
            out += &format!("; try {}", part("try"));
        }
        out.push('\n');
    }
    out.trim_end().to_owned()
}
