//! A shop's folder laid over the book: it may add to cautions and hold points, and weaken none of them.
//!
//! Signal words by severity: ANSI Z535.4, from memory. That nothing may be weakened is this book's own rule.

use std::path::{Path, PathBuf};

use book::{Handbook, Light, render};
use calculators::catalogue::CATALOGUE;
use calculators::quantity::Units;

/// A folder of its own for one test, taken away at its end.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Self {
        let path = std::env::temp_dir().join(format!("benchleaf-shop-{name}-{}", std::process::id()));
        let _ = std::fs::remove_dir_all(&path);
        std::fs::create_dir_all(&path).expect("a folder for the test");
        Self(path)
    }

    fn put(self, file: &str, text: &str) -> Self {
        let path = self.0.join(file);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder for the file");
        std::fs::write(path, text).expect("the file");
        self
    }

    /// A chapter of the repository with something changed in it.
    fn changed(self, file: &str, from: &str, to: &str) -> Self {
        let text =
            std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(file)).expect("a file of the book");
        assert!(text.contains(from), "{file} holds no «{from}»");
        self.put(file, &text.replacen(from, to, 1))
    }

    fn book(&self) -> Handbook {
        Handbook::load(&self.0).unwrap_or_else(|faults| panic!("{faults}"))
    }

    /// What is told of the folder, every line beginning with a file and a line.
    fn refused(&self) -> String {
        Handbook::load(&self.0)
            .map_or_else(|faults| faults.to_string(), |_| panic!("the folder was taken without a word"))
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

fn check(folder: &Folder, told: &str) {
    let faults = folder.refused();
    assert!(faults.lines().any(|fault| fault.starts_with(told)), "no fault begins «{told}»\n{faults}");
}

fn page(book: &Handbook, path: &str) -> String {
    let site = render(book, Units::Imperial);
    let page = site.pages.iter().find(|page| page.path == path).unwrap_or_else(|| panic!("there is no {path}"));
    page.html(Light::Day)
}

#[test]
fn a_level_may_be_raised_and_never_lowered() {
    let lowered = Folder::new("lowered").put("cautions.toml", "[live-conductors]\nlevel = \"notice\"\n");
    check(&lowered, "cautions.toml:1: live-conductors: the level is danger and may be raised, never lowered");
    let raised = Folder::new("raised").put("cautions.toml", "[lifting]\nlevel = \"warning\"\n");
    let html = page(&raised.book(), "stock.html");
    assert!(
        html.contains("<div class=\"signal warning\" role=\"note\" aria-label=\"WARNING: Long and heavy packs."),
        "{html}"
    );
}

#[test]
fn the_words_of_a_caution_stay_and_sentences_come_after_them() {
    let own = Handbook::built_in().unwrap_or_else(|faults| panic!("{faults}"));
    let own = own.cautions().get("live-conductors").expect("it is registered").clone();
    for part in ["hazard", "consequence", "avoid"] {
        let replaced = format!("\n[live-conductors]\n{part} = \"Nothing to see.\"\n");
        let folder = Folder::new(&format!("replaced-{part}")).put("cautions.toml", &replaced);
        check(&folder, &format!("cautions.toml:2: live-conductors: the words of {part} stay as they are"));
    }
    let further =
        format!("[live-conductors]\navoid = \"{} Ring the office first.\"\nadd = \"Ask for Jo.\"\n", own.avoid);
    let book = Folder::new("further").put("cautions.toml", &further).book();
    let laid = book.cautions().get("live-conductors").expect("it is registered");
    assert_eq!((&laid.avoid, laid.level), (&own.avoid, own.level));
    let html = page(&book, "prepare.html");
    let panel =
        html.split("class=\"signal danger\"").nth(1).expect("a panel").split("</div></div>").next().unwrap_or("");
    assert!(panel.contains("Paint and tape insulate nothing."), "{panel}");
    assert!(panel.contains("This shop adds: Ring the office first. Ask for Jo."), "{panel}");
}

#[test]
fn no_sentence_of_a_shop_says_safe() {
    let folder = Folder::new("promise").put("cautions.toml", "[live-conductors]\nadd = \"Perfectly safe to touch.\"\n");
    check(&folder, "cautions.toml:1: live-conductors: no sentence of a caution says that something is safe");
}

#[test]
fn a_register_that_is_emptied_loses_nothing() {
    let empty = Folder::new("empty").put("cautions.toml", "").book();
    let own = Handbook::built_in().unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(empty.cautions().iter().collect::<Vec<_>>(), own.cautions().iter().collect::<Vec<_>>());
    let half = Folder::new("half").put("cautions.toml", "[our-lift]\nlevel = \"warning\"\n");
    check(&half, "cautions.toml:1: our-lift: a new caution needs level, hazard, consequence and avoid");
}

#[test]
fn a_page_keeps_its_cautions_and_its_hold_points() {
    let without = Folder::new("caution").changed("chapters/10-fix.md", "```caution\nkey = \"nail-gun\"\n```\n", "");
    check(&without, "chapters/10-fix.md:");
    assert!(without.refused().contains("carries the caution nail-gun"));
    let hidden = Folder::new("quoted").changed(
        "chapters/10-fix.md",
        "```caution\nkey = \"nail-gun\"\n```\n",
        "> As in:\n>\n> ```caution\n> key = \"nail-gun\"\n> ```\n",
    );
    assert!(hidden.refused().contains("carries the caution nail-gun"));
    let no_hold = Folder::new("hold").changed(
        "chapters/15-spray.md",
        "> **Hold point: before the second coat**",
        "> **Before the second coat.**",
    );
    assert!(no_hold.refused().contains("stops the work at hold-clock"));
    let softened = Folder::new("softened").changed(
        "chapters/15-spray.md",
        "{hold-clock} The clock says so",
        "{hold-clock} Whenever you like",
    );
    assert!(softened.refused().contains(
        "stops the work at hold-clock; keep it in a hold point, its words first: - [ ] {hold-clock} The clock says so"
    ));
    let further = Folder::new("more-hold").changed(
        "chapters/15-spray.md",
        "{hold-clock} The clock says so",
        "{hold-clock} The clock says so and the foreman agrees",
    );
    assert!(page(&further.book(), "spray.html").contains("The clock says so and the foreman agrees"));
}

#[test]
fn a_page_that_is_taken_out_leaves_its_hold_points_to_another() {
    let listed = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("chapters/SUMMARY.md"))
        .expect("the summary");
    let gone =
        Folder::new("gone").put("chapters/SUMMARY.md", &listed.replace("- [Health and safety](safety.md)\n", ""));
    let told = gone.refused();
    assert!(told.contains("stops the work at hold-rags") && told.contains("carries the caution"), "{told}");
}

#[test]
fn template_style_and_script_come_from_the_program() {
    for (file, text) in [
        ("theme/templates/caution.html", ""),
        ("theme/templates/checks.html", ""),
        ("theme/templates/look.html", "{% for figure in figures %}{{ figure.html | safe }}{% endfor %}"),
        ("theme/css/z-shop.css", "@layer print { .signal { display: none } }"),
        ("theme/css/6-chapter.css", ".signal .word { visibility: hidden }"),
        ("theme/js/ticks.js", "document.querySelectorAll('.signal').forEach(one => one.remove())"),
    ] {
        let folder = Folder::new(&file.replace('/', "-")).put(file, text);
        check(&folder, &format!("{file}:1: templates, style and scripts come with the program"));
    }
    let repeated = Folder::new("repeated").changed("theme/templates/caution.html", "<div", "<div");
    assert!(page(&repeated.book(), "prepare.html").matches("class=\"signal ").count() > 7);
}

#[test]
fn every_look_stands_with_the_cautions_of_its_card() {
    let book = Handbook::built_in().unwrap_or_else(|faults| panic!("{faults}"));
    let html = page(&book, "questions.html");
    let nail_here = html.split("id=\"can-i-nail-here\"").nth(1).expect("the question is asked");
    let nail_here = nail_here.split("<h3").next().unwrap_or_default();
    let panels: Vec<&str> = nail_here.split("class=\"signal ").skip(1).collect();
    assert!(panels.iter().any(|panel| panel.contains("Cables and pipes in the fixing line")), "{nail_here}");
    assert!(panels.iter().any(|panel| panel.contains("A nailer can fire")), "{nail_here}");
    let mut looked_at = 0;
    for look in html.split("class=\"look\"").skip(1) {
        let id =
            look.split("href=\"").nth(1).and_then(|rest| rest.split('"').next()).and_then(|to| to.split('#').nth(1));
        let card = CATALOGUE.iter().map(|entry| entry.card()).find(|card| Some(card.id) == id).expect("a calculator");
        let before = html.split(look).next().unwrap_or_default();
        let asked = before.rsplit("<h3").next().unwrap_or_default();
        for key in card.cautions {
            let hazard = &book.cautions().get(key).expect("it is registered").hazard;
            assert!(asked.contains(&format!(": {hazard}")), "{}: {key} does not stand before it", card.id);
            looked_at += 1;
        }
    }
    assert!(8 < looked_at, "only {looked_at} cautions were looked for");
}
