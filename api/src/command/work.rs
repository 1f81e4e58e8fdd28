//! `benchleaf work ID`: one calculator, asked from a file or from words on the command line.

use std::io::Write;
use std::path::PathBuf;

use book::form as posted;
use calculators::catalogue::{self, CATALOGUE};
use calculators::quantity::Units;
use clap::{Args, ValueEnum};

use super::{Failure, UnitsWord, handbook, read_input, told};
use crate::answer::Form;
use crate::calculators::{answered, cautions};
use crate::problem::ApiError;

/// Ask one calculator. Without a file and without words, it answers its worked example.
#[derive(Args)]
pub struct Work {
    /// Which calculator; without one, all are listed.
    id: Option<String>,
    /// Input as JSON or TOML; `-` reads JSON from standard input.
    file: Option<PathBuf>,
    /// One field: a pointer and its value, as in `--set run='144 3/8 in'` or `--set stretches/0/level='95 dB(A)'`. May be repeated.
    #[arg(long = "set", value_name = "FIELD=VALUE", value_parser = pair)]
    fields: Vec<(String, String)>,
    /// Form of the answer.
    #[arg(long = "as", value_enum, default_value_t)]
    form: FormWord,
    /// Units of bare numbers and of the answer.
    #[arg(long, value_enum, default_value_t)]
    units: UnitsWord,
}

#[derive(Clone, Copy, Default, ValueEnum)]
enum FormWord {
    /// For a terminal.
    #[default]
    Text,
    /// For programs.
    Json,
    /// The list, for a spreadsheet.
    Csv,
    /// The drawing.
    Svg,
}

fn pair(word: &str) -> Result<(String, String), String> {
    let (field, value) = word.split_once('=').ok_or("write FIELD=VALUE")?;
    Ok((format!("/{}", field.trim_start_matches('/')), value.to_owned()))
}

impl Work {
    pub(super) fn run(&self) -> Result<(), Failure> {
        let Some(id) = &self.id else { return list() };
        let Some(entry) = catalogue::entry(id) else {
            return Err(Failure::Input(format!("there is no calculator «{id}»; `benchleaf work` lists all")));
        };
        let units = Units::from(self.units);
        let input = match (&self.file, self.fields.is_empty()) {
            (Some(file), true) => read_input(file)?,
            (Some(_), false) => return Err(Failure::Input("give a file or fields, not both".to_owned())),
            (None, false) => posted::to_json(entry, &self.fields),
            (None, true) => {
                eprintln!("no input was given: this is the worked example");
                entry.example(units).input.clone()
            }
        };
        let unknown = self.fields.iter().find(|(pointer, _)| input.pointer(pointer).is_none());
        if let Some((pointer, _)) = unknown {
            return Err(Failure::Input(format!(
                "{pointer}: there is no such field, or it was left empty; `benchleaf work {id} --as json` shows the fields at work"
            )));
        }
        let form = match self.form {
            FormWord::Text => Form::Text,
            FormWord::Json => Form::Json,
            FormWord::Csv => Form::Csv,
            FormWord::Svg => Form::Svg,
        };
        let book = handbook()?;
        let stand_with = cautions(&book, entry).to_string();
        let answer = answered(&book, &stand_with, entry, &input, units, form).map_err(|problem| {
            Failure::Input(match problem {
                ApiError::Faults(faults) => told(&faults),
                other => other.detail(),
            })
        })?;
        say(&answer)
    }
}

fn list() -> Result<(), Failure> {
    let width = CATALOGUE.iter().map(|entry| entry.card().id.len()).max().unwrap_or(0);
    let lines: Vec<_> =
        CATALOGUE.iter().map(|entry| format!("{:<width$}  {}", entry.card().id, entry.card().question)).collect();
    say(&lines.join("\n"))
}

/// Writes an answer; a reader that has closed its end is no fault of ours.
fn say(text: &str) -> Result<(), Failure> {
    let mut out = std::io::stdout().lock();
    match writeln!(out, "{}", text.trim_end()) {
        Err(why) if why.kind() != std::io::ErrorKind::BrokenPipe => {
            Err(Failure::Outside(format!("the answer cannot be written: {why}")))
        }
        _ => Ok(()),
    }
}
