//! Forms as a browser would use them: what is printed is posted, and what is posted is read.

use book::form::{self, Posted};
use book::{Handbook, Light, Outcome};
use calculators::catalogue::{CATALOGUE, Entry, entry};
use calculators::quantity::Units;
use proptest::prelude::*;
use serde_json::{Value, json};

const BOTH: [Units; 2] = [Units::Imperial, Units::Metric];

fn book() -> Handbook {
    Handbook::built_in().unwrap_or_else(|faults| panic!("{faults}"))
}

fn attribute<'t>(tag: &'t str, name: &str) -> Option<&'t str> {
    tag.split_once(&format!(" {name}=\""))?.1.split('"').next()
}

fn plain(text: &str) -> String {
    text.replace("&quot;", "\"")
        .replace("&#x27;", "'")
        .replace("&#39;", "'")
        .replace("&#x2F;", "/")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&amp;", "&")
}

/// The pairs a browser would post: every named input, chosen radio and chosen option, in order.
fn pairs(html: &str) -> Vec<(String, String)> {
    let mut pairs = Vec::new();
    let mut select = None;
    for tag in html.split('<').skip(1).filter_map(|rest| rest.split('>').next()) {
        let kind = tag.split([' ', '\n']).next().unwrap_or_default();
        match kind {
            "select" => select = attribute(tag, "name"),
            "option" if tag.contains(" selected") => {
                pairs.extend(select.map(|name| (name.to_owned(), plain(attribute(tag, "value").unwrap_or_default()))));
            }
            "input" => {
                if tag.contains("type=\"radio\"") && !tag.contains(" checked") {
                    continue;
                }
                if let Some(name) = attribute(tag, "name") {
                    pairs.push((plain(name), plain(attribute(tag, "value").unwrap_or_default())));
                }
            }
            _ => {}
        }
    }
    pairs
}

#[test]
fn the_form_of_every_worked_example_posts_that_example() {
    let book = book();
    for entry in CATALOGUE.iter() {
        for units in BOTH {
            let input = &entry.example(units).input;
            let html = book.form_html(entry, input, &[], units);
            let posted = form::to_json(entry, &pairs(&html));
            let id = entry.card().id;
            let answer = entry.answer(&posted, units);
            assert_eq!(answer.ok(), entry.answer(input, units).ok(), "{id} in {units:?} posts {posted:#}");
        }
    }
}

fn posted(entry: &Entry, html: &str, action: &str, units: Units) -> Posted {
    let mut pairs = pairs(html);
    pairs.push((form::ACTION.to_owned(), action.to_owned()));
    form::read(entry, &pairs, units)
}

#[test]
fn small_buttons_do_what_they_say() {
    let book = book();
    let tins = entry("tins").expect("in the catalogue");
    let units = Units::Imperial;
    let html = book.form_html(tins, &tins.example(units).input, &[], units);
    let rows = tins.example(units).input["tins"].as_array().map_or(0, Vec::len);
    let more = posted(tins, &html, "add /tins", units);
    assert!(!more.work, "a row that is still empty is not worked out");
    assert_eq!(more.values["tins"].as_array().map(Vec::len), Some(rows + 1));
    let fewer = posted(tins, &html, "drop /tins/0", units);
    assert_eq!(fewer.values["tins"].as_array().map(Vec::len), Some(rows - 1));
    assert_eq!(fewer.values["tins"][0], posted(tins, &html, "work", units).values["tins"][1]);

    let weight = entry("board-weight").expect("in the catalogue");
    let html = book.form_html(weight, &json!({ "width": "3 1/2", "boards": 9 }), &[], units);
    let value = |action: &str, field: &str| posted(weight, &html, action, units).values[field].clone();
    assert_eq!(value("more /width", "width"), "3 9/16 in");
    assert_eq!(value("less /width 8", "width"), "3 in");
    assert_eq!(value("more /boards", "boards"), 10);
    assert_eq!(value("less /boards 1000", "boards"), 1, "a count stays inside its range");
    assert_eq!(value("put /width 87 1/2 in", "width"), "87 1/2 in");
}

#[test]
fn turning_the_units_changes_no_value() {
    let book = book();
    for entry in CATALOGUE.iter() {
        for units in BOTH {
            let input = &entry.example(units).input;
            let mut pairs = pairs(&book.form_html(entry, input, &[], units));
            pairs.push((form::UNITS.to_owned(), units.word().to_owned()));
            pairs.push((form::ACTION.to_owned(), format!("turn {}", units.other().word())));
            assert_eq!(form::units_of(&pairs), Some(units.other()));
            let turned = form::read(entry, &pairs, units.other()).values;
            let id = entry.card().id;
            let result = |input, units| entry.work(input, units).ok().map(|answer| answer.result);
            assert_eq!(result(&turned, units.other()), result(input, units), "{id}: {turned:#}");
        }
    }
}

#[test]
fn a_fault_stands_beside_its_field_with_what_was_typed() {
    let book = book();
    let entry = entry("board-weight").expect("in the catalogue");
    let typed = json!({ "width": "3 ft 13 <in>", "boards": 2.5 });
    let faults = entry.answer(&typed, Units::Imperial).expect_err("cannot be read");
    let html = book.calculator_page(entry, &typed, Outcome::Faults(&faults), Units::Imperial).html(Light::Day);
    assert!(html.contains("role=\"alert\""));
    assert!(html.contains("value=\"3 ft 13 &lt;in&gt;\""), "the text is kept");
    assert!(
        html.contains("aria-describedby=\"board-weight-width-fault\"")
            && html.contains("id=\"board-weight-width-fault\"")
    );
    assert!(html.contains("href=\"#board-weight-boards\""));
    assert!(!html.contains("<in>"));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    #[test]
    fn no_posted_pairs_panic(
        which in 0_usize..1_000,
        noise in prop::collection::vec(("[/a-z0-9_~]{0,24}", "\\PC{0,12}"), 0..12),
        action in "(add|drop|more|less|put|show)? ?/?[a-z0-9_/]{0,16} ?\\PC{0,8}",
        metric in any::<bool>(),
    ) {
        let entry = &CATALOGUE[which % CATALOGUE.len()];
        let units = if metric { Units::Metric } else { Units::Imperial };
        let mut pairs: Vec<(String, String)> = noise;
        for (at, name) in entry.input().fields().iter().map(|field| field.name).enumerate() {
            pairs.push((format!("/{name}/{at}/x"), "1".to_owned()));
            pairs.push((format!("/{name}"), "99999999999999999999".to_owned()));
        }
        pairs.push((form::ACTION.to_owned(), action));
        let posted = form::read(entry, &pairs, units);
        prop_assert!(posted.values.is_object());
        let faults = entry.answer(&posted.values, units).err().unwrap_or_default();
        let _: &Value = &posted.values;
        prop_assert!(!BOOK.form_html(entry, &posted.values, &faults, units).contains("could not be printed"));
    }
}

static BOOK: std::sync::LazyLock<Handbook> = std::sync::LazyLock::new(book);
