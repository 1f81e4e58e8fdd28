//! Every fault of a book is told with its file and line.

use crate::handbook::Handbook;
use crate::source::Source;

/// The built-in book with one file changed, and what is told about it.
fn told(file: &str, change: impl Fn(&str) -> String) -> String {
    let mut source = Source::built_in();
    let text = change(source.text(file).unwrap_or_default());
    source.put(file, text);
    Handbook::read(&source).map_or_else(|faults| faults.to_string(), |_| String::new())
}

/// What is told of words added to the end of a chapter, and the line they begin on.
fn told_of(words: &str) -> (String, usize) {
    let lines = Source::built_in().text("chapters/17-year.md").expect("a chapter").lines().count();
    (told("chapters/17-year.md", |text| format!("{text}\n{words}\n")), lines + 2)
}

/// The line of a built-in file that holds these words.
fn line_of(file: &str, words: &str) -> usize {
    let source = Source::built_in();
    let text = source.text(file).expect("the file is there");
    text.lines().position(|line| line.contains(words)).expect("the words are there") + 1
}

/// The line that a fault is told of.
fn told_line(told: &str, file: &str, what: &str) -> usize {
    let fault = told.lines().find(|line| line.contains(what)).unwrap_or_else(|| panic!("no «{what}»\n{told}"));
    let place = fault.strip_prefix(&format!("{file}:")).unwrap_or_else(|| panic!("not of {file}: {fault}"));
    place.split(':').next().and_then(|line| line.parse().ok()).unwrap_or_else(|| panic!("no line: {fault}"))
}

#[test]
fn every_fault_names_a_line_of_its_file() {
    let faults = [
        told("chapters/SUMMARY.md", |text| text.replace("(06-stock.md)", "(18-stock.md)")),
        told("chapters/SUMMARY.md", |_| String::new()),
        told("cautions.toml", |_| String::from("[our-lift]\nlevel = \"warning\"\n")),
        told("cautions.toml", |_| String::from("level = [")),
        told("theme/templates/chapter.html", |text| format!("{text}{{% if %}}")),
        told("theme/templates/chapter.html", |text| text.replace("frame.html", "none.html")),
    ];
    for told in faults {
        assert!(!told.is_empty());
        let of_a_file =
            |line: &&str| ["chapters/", "cautions.toml", "theme/"].iter().any(|file| line.starts_with(file));
        assert!(told.lines().any(|line| of_a_file(&line)), "{told}");
        for fault in told.lines().filter(of_a_file) {
            let line = fault.split(':').nth(1).and_then(|line| line.parse::<usize>().ok());
            assert!(line.is_some_and(|line| 0 < line), "{fault}");
        }
    }
}

#[test]
fn a_template_that_cannot_be_read_is_named_with_its_line() {
    let told = told("theme/templates/fold.html", |text| format!("{text}\n{{% if %}}\n"));
    assert!(told.contains("theme/templates/fold.html:3: "), "{told}");
}

fn check(words: &str, what: &str) {
    let (told, line) = told_of(words);
    let expected = format!("chapters/17-year.md:{line}: {what}");
    assert!(told.lines().any(|one| one.starts_with(&expected)), "expected {expected}\n{told}");
}

#[test]
fn what_a_block_names_must_be_there() {
    check("```caution\nkey = \"dragons\"\n```", "there is no caution dragons in cautions.toml");
    check("```calculator\nid = \"moon-phase\"\n```", "there is no calculator moon-phase");
    check("```look\nid = \"moon-phase\"\n```", "there is no calculator moon-phase");
    check("```table\nname = \"tides\"\n```", "there is no table tides; known are calculators, ");
    check("```drawing\nname = \"dovetail\"\n```", "there is no drawing dovetail; known are ");
}

#[test]
fn what_stands_once_may_not_stand_twice() {
    check(
        "```calculator\nid = \"tins\"\n```",
        "the calculator tins already stands in 05-price.md; link to it with work:tins",
    );
    check("```table\nname = \"labour-rates\"\n```", "the table labour-rates already stands in 05-price.md");
    check("```drawing\nname = \"rake-cut\"\n```", "the drawing rake-cut already stands in 11-openings.md");
    check("## Check list", "the heading or term check-list stands twice on this page");
    let (told, line) = told_of("Once more:\n\n- [ ] {air} Again");
    let line = line + 2;
    let expected = format!("chapters/17-year.md:{line}: the check key air stands twice in this chapter");
    assert!(told.contains(&expected), "{told}");
}

#[test]
fn a_drawing_is_refused_values_its_calculation_refuses() {
    check("```drawing\nname = \"rake-cut\"\n[values]\nrise = \"no length\"\n```", "the drawing rake-cut: rise: ");
    check("```drawing\nname = \"grit-steps\"\n[values]\nfrom = \"P80\"\n```", "the drawing grit-steps takes no values");
}

#[test]
fn a_look_names_places_of_the_answer_only() {
    check("```look\nid = \"tape-pull\"\nshow = [\"/moon\"]\n```", "the answer of tape-pull has nothing at /moon");
    check(
        "```look\nid = \"saw-angle\"\nvalues = { corner = \"blunt\" }\n```",
        "the calculator saw-angle refuses corner: ",
    );
}

#[test]
fn an_exercise_that_is_not_there_is_named() {
    check("```practice\nid = \"moon-phase\"\n```", "there is no calculator moon-phase");
    check("```practice\nid = \"colour-values\"\n```", "the calculator colour-values has no exercise: ");
    check("```practice\n```", "a practice block needs id = \"equal-bays\"");
}

#[test]
fn a_link_to_nowhere_is_named() {
    check("[a](18-none.md)", "the link 18-none.md leads nowhere");
    check("[a](wall:none)", "the link wall:none leads nowhere");
    check("[a](03-survey.md#none)", "03-survey.md has no heading none");
    check("[a](work:none)", "no chapter holds the calculator none");
    check("[a](table:none)", "no chapter holds the table none");
    check("[a](drawing:none)", "no chapter holds the drawing none");
}

#[test]
fn a_calculator_that_stands_nowhere_is_named_where_it_belongs() {
    let line = line_of("chapters/06-stock.md", "id = \"board-weight\"");
    let told = told("chapters/06-stock.md", |text| text.replace("id = \"board-weight\"", "id = \"tins\""));
    let expected = format!("chapters/06-stock.md:{line}: the calculator board-weight stands in no chapter");
    assert!(told.contains(&expected), "expected {expected}\n{told}");
}

#[test]
fn a_table_or_drawing_that_stands_nowhere_is_named() {
    let without_table =
        told("chapters/sources.md", |text| text.replace("name = \"calculators\"", "name = \"sources\""));
    let line = line_of("chapters/sources.md", "name = \"calculators\"");
    let expected = format!("chapters/sources.md:{line}: the table calculators stands in no chapter");
    assert!(without_table.contains(&expected), "expected {expected}\n{without_table}");
    let without_drawing =
        told("chapters/11-openings.md", |text| text.replace("name = \"rake-cut\"", "name = \"dovetail\""));
    let line = line_of("chapters/11-openings.md", "name = \"rake-cut\"");
    let expected = format!("chapters/11-openings.md:{line}: the drawing rake-cut stands in no chapter");
    assert!(without_drawing.contains(&expected), "expected {expected}\n{without_drawing}");
}

#[test]
fn a_chapter_without_sources_is_named() {
    let without = told("chapters/17-year.md", |text| text.replace("## Sources", "## Thanks"));
    let last = Source::built_in().text("chapters/17-year.md").expect("a chapter").trim_end().lines().count();
    let line = told_line(&without, "chapters/17-year.md", "the chapter names no sources");
    assert!(line_of("chapters/17-year.md", "## Sources") <= line && line <= last, "{without}");
    let empty = told("chapters/17-year.md", |text| {
        let end = text.find("## Sources").expect("the chapter names its sources");
        format!("{}## Sources\n", &text[..end])
    });
    let line = told_line(&empty, "chapters/17-year.md", "the chapter names no sources");
    assert_eq!(line, line_of("chapters/17-year.md", "## Sources"), "{empty}");
}

#[test]
fn a_file_of_the_theme_that_nothing_asks_for_is_named() {
    for file in ["theme/fonts/odd.woff2", "theme/js/odd.js", "theme/odd.svg", "theme/fonts/odd-OFL.txt"] {
        let told = told(file, |_| String::from("x"));
        assert!(told.contains(&format!("{file}:1: nothing asks for this file")), "{told}");
    }
}

#[test]
fn a_file_that_the_style_sheet_asks_for_must_be_there() {
    let told =
        told("theme/css/1-fonts.css", |text| format!("{text}\n@font-face {{ src: url(\"fonts/none.woff2\"); }}\n"));
    let lines = Source::built_in().text("theme/css/1-fonts.css").expect("fonts are declared").lines().count();
    let expected = format!("theme/css/1-fonts.css:{}: there is no file theme/fonts/none.woff2", lines + 2);
    assert!(told.contains(&expected), "{told}");
}

#[test]
fn a_calculator_stands_in_the_chapter_of_its_step() {
    let book = Handbook::built_in().expect("the book has no fault");
    let mut found = 0;
    for leaf in &book.leaves {
        for (_, id) in leaf.calculators() {
            let step = calculators::catalogue::entry(id).expect("it is declared").card().step;
            if let Some(chapter) = leaf.listed.step {
                assert_eq!(step, chapter, "{id} says step {step}");
                found += 1;
            }
        }
    }
    assert!(found > 60, "only {found} stand in a step's chapter");
}
