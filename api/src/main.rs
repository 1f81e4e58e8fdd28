//! `benchleaf`: the handbook that calculates.

use std::process::ExitCode;

fn main() -> ExitCode {
    api::command::run()
}
