//! The built program on the command line: answers on standard output, talk on standard error, exit code 2 for bad input.

use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Output, Stdio};

fn benchleaf(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_benchleaf")).args(words).output().expect("the program starts")
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// A folder of this test's own, empty.
fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::remove_dir_all(&folder).ok();
    folder
}

#[test]
fn help_says_what_each_command_is_for() {
    let help = text(&benchleaf(&["--help"]).stdout);
    for command in ["serve", "render", "work", "wall"] {
        assert!(help.contains(command), "{help}");
        let own = benchleaf(&[command, "--help"]);
        assert!(own.status.success() && own.stdout.len() > 100, "{command}");
    }
}

#[test]
fn a_calculator_is_asked_by_fields() {
    let answer =
        benchleaf(&["work", "pieces-per-stick", "--set", "stick=96", "--set", "piece=31 7/8", "--set", "kerf=1/8"]);
    assert!(answer.status.success(), "{}", text(&answer.stderr));
    // By hand: three pieces and two cuts are 95 7/8.
    assert!(text(&answer.stdout).contains("Pieces: 3"), "{}", text(&answer.stdout));
}

#[test]
fn bad_input_ends_with_2_and_names_every_field() {
    let answer =
        benchleaf(&["work", "pieces-per-stick", "--set", "stick=3/7", "--set", "piece=x", "--set", "kerf=1/8"]);
    assert_eq!(answer.status.code(), Some(2));
    assert!(answer.stdout.is_empty());
    let said = text(&answer.stderr);
    assert!(said.contains("/stick") && said.contains("/piece") && said.contains("try"), "{said}");
    assert_eq!(benchleaf(&["work", "moon-phase"]).status.code(), Some(2));
    assert_eq!(benchleaf(&["work", "pieces-per-stick", "--set", "colour=red"]).status.code(), Some(2));
    assert_eq!(benchleaf(&["work", "pieces-per-stick", "no-such-file.json"]).status.code(), Some(2));
}

#[test]
fn json_on_standard_input_comes_back_as_json() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_benchleaf"))
        .args(["work", "pieces-per-stick", "-", "--as", "json", "--units", "metric"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("the program starts");
    child
        .stdin
        .take()
        .expect("an input")
        .write_all(br#"{"stick": 2400, "piece": 600, "kerf": 3.2}"#)
        .expect("it is read");
    let answer: serde_json::Value =
        serde_json::from_slice(&child.wait_with_output().expect("it ends").stdout).expect("JSON");
    assert_eq!(answer["result"]["pieces"], 3);
}

#[test]
fn a_wall_becomes_a_pack_of_files() {
    let out = folder("pack");
    let file = out.with_extension("json");
    let example = benchleaf(&["work", "wall-plan", "--as", "csv"]);
    assert!(example.status.success());
    let input = calculators::catalogue::entry("wall-plan")
        .expect("it is declared")
        .example(calculators::quantity::Units::Imperial)
        .input
        .clone();
    std::fs::create_dir_all(file.parent().expect("a parent")).expect("a folder");
    std::fs::write(&file, input.to_string()).expect("a file");
    let answer = benchleaf(&["wall", file.to_str().expect("a path"), "--out", out.to_str().expect("a path")]);
    assert!(answer.status.success(), "{}", text(&answer.stderr));
    for name in
        ["plan.json", "cut-list.csv", "drawing.svg", "wall.html", "marks.html", "saw.html", "theme/benchleaf.css"]
    {
        let size = std::fs::metadata(out.join(name)).unwrap_or_else(|why| panic!("{name}: {why}")).len();
        assert!(size > 300, "{name} has {size} bytes");
    }
    let drawing = std::fs::read_to_string(out.join("drawing.svg")).expect("a drawing");
    assert!(drawing.starts_with("<svg ") && drawing.contains("xmlns=") && drawing.trim_end().ends_with("</svg>"));
}

#[test]
fn the_site_is_written_only_into_an_empty_folder() {
    let out = folder("site");
    let path = out.to_str().expect("a path");
    assert!(benchleaf(&["render", path, "--units", "metric"]).status.success());
    assert!(std::fs::read_to_string(out.join("index.html")).expect("a front page").contains("data-units=\"metric\""));
    assert_eq!(benchleaf(&["render", path]).status.code(), Some(2), "the folder is not empty any more");
}
