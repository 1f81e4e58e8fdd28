//! What DEVELOPERS.md says of the house, held against the house itself.

use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|why| panic!("{}: {why}", path.display()))
}

/// Every source file under a folder that goes into the program: no tests, no benches, no examples.
fn sources(folder: &str) -> Vec<PathBuf> {
    let mut waiting = vec![root().join(folder)];
    let mut found = Vec::new();
    while let Some(folder) = waiting.pop() {
        for entry in std::fs::read_dir(&folder).unwrap_or_else(|why| panic!("{}: {why}", folder.display())).flatten() {
            let (path, name) = (entry.path(), entry.file_name().to_string_lossy().into_owned());
            if path.is_dir() && !["tests", "benches", "examples", "target"].contains(&name.as_str()) {
                waiting.push(path);
            } else if name.ends_with(".rs") && name != "tests.rs" {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

/// A file's lines that are code, without its comments and without the tests at its end.
fn code(path: &Path) -> Vec<String> {
    let text = read(path);
    let until = text.find("#[cfg(test)]\nmod tests {").unwrap_or(text.len());
    text[..until].lines().map(|line| line.split("//").next().unwrap_or_default().to_owned()).collect()
}

/// Places where code under a folder holds one of these words.
fn places(folder: &str, words: &[&str]) -> Vec<String> {
    let mut found = Vec::new();
    for path in sources(folder) {
        for (n, line) in code(&path).iter().enumerate() {
            if let Some(word) = words.iter().find(|word| line.contains(**word)) {
                found.push(format!("{}:{}: {word}", path.display(), n + 1));
            }
        }
    }
    found
}

#[test]
fn the_arithmetic_opens_nothing_reads_no_clock_and_keeps_nothing() {
    assert!(sources("calculators").len() > 100, "the sources were found");
    let outside = [
        "std::fs",
        "std::net",
        "std::env",
        "std::time",
        "std::thread",
        "std::process",
        "std::io",
        "SystemTime",
        "Instant::",
        "static mut",
        "thread_local!",
        "RefCell",
        "Mutex",
        "Atomic",
    ];
    let found: Vec<_> =
        places("calculators", &outside).into_iter().filter(|place| !place.contains("/derive/")).collect();
    assert!(found.is_empty(), "{}", found.join("\n"));
    let pages = ["axum", "tokio", "tera::", "pulldown_cmark", "<span", "<div", "<svg", "http://"];
    let found = places("calculators", &pages);
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn transcendental_functions_are_the_same_on_every_machine() {
    // The standard leaves their last digits to the machine: `f64`, "Unspecified precision". Square roots are exact.
    let methods = [
        ".sin()", ".cos()", ".tan()", ".asin()", ".acos()", ".atan()", ".atan2(", ".exp()", ".exp2()", ".ln()",
        ".ln_1p()", ".log10()", ".log2()", ".log(", ".powf(", ".cbrt()", ".hypot(", ".sinh()", ".tanh()",
    ];
    let found = places("calculators", &methods);
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn arrows_between_crates_run_one_way() {
    let names = |manifest: &str| -> Vec<String> {
        let text = read(&root().join(manifest).join("Cargo.toml"));
        let part =
            text.split("[dependencies]").nth(1).unwrap_or_default().split("\n[").next().unwrap_or_default().to_owned();
        part.lines()
            .filter_map(|line| Some(line.split(['.', ' ', '=']).next()?.to_owned()))
            .filter(|name| !name.is_empty())
            .collect()
    };
    let above: [(&str, &[&str]); 6] = [
        ("calculators/quantity", &["catalogue", "sticks", "calculators", "book", "api", "tests"]),
        ("calculators/sticks", &["quantity", "catalogue", "calculators", "book", "api", "tests"]),
        ("calculators/catalogue", &["sticks", "calculators", "book", "api", "tests"]),
        ("calculators", &["book", "api", "tests"]),
        ("book", &["api", "tests"]),
        ("api", &["tests"]),
    ];
    for (name, never) in above {
        let needs = names(name);
        assert!(!needs.is_empty(), "{name} needs something");
        for wrong in never {
            assert!(!needs.iter().any(|need| need == wrong), "{name} needs {wrong}");
        }
    }
}

#[test]
fn what_the_map_names_is_there() {
    let paper = read(&root().join("DEVELOPERS.md"));
    let map = paper.split("## Code map").nth(1).expect("a map").split("## ").next().expect("its end");
    let mut looked_at = 0;
    for row in map.lines().filter(|line| line.starts_with("| `")) {
        let folder = row.split('|').nth(1).expect("a folder");
        for name in folder.split('`').skip(1).step_by(2) {
            let there = [root().join(name), root().join("calculators/src").join(name)].iter().any(|path| path.exists());
            assert!(there, "the map names {name}");
            looked_at += 1;
        }
    }
    assert!(looked_at > 15, "only {looked_at} places were looked at");
    for path in paper.split('`').skip(1).step_by(2).filter(|word| word.contains('/') && word.ends_with(".rs")) {
        let there = ["", "calculators", "calculators/src", "book/src", "tests"]
            .iter()
            .any(|under| root().join(under).join(path).exists());
        assert!(there, "DEVELOPERS.md names {path}");
    }
}

#[test]
fn files_fit_one_reading() {
    // About four hundred lines, a rule of this house; a list of constants may be longer than a text.
    let long: Vec<_> = ["calculators", "book", "api", "tests/src"]
        .iter()
        .flat_map(|folder| sources(folder))
        .map(|path| (read(&path).lines().count(), path))
        .filter(|(lines, _)| *lines > 480)
        .map(|(lines, path)| format!("{}: {lines} lines", path.display()))
        .collect();
    assert!(long.is_empty(), "{}", long.join("\n"));
}
