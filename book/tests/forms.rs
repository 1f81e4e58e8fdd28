//! Forms as a browser would use them: what is printed is posted, and what is posted is read.

use book::form::{self, Posted};
use book::{Handbook, Light, Outcome};
use calculators::catalogue::{CATALOGUE, Entry, Node, entry};
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
            let mut pairs = pairs(&book.form_html(entry, &entry.example(units).input, &[], units));
            pairs.push((form::UNITS.to_owned(), units.word().to_owned()));
            let as_it_stood = form::read(entry, &pairs, units).values;
            pairs.push((form::ACTION.to_owned(), format!("turn {}", units.other().word())));
            assert_eq!(form::units_of(&pairs), Some(units.other()));
            let turned = form::read(entry, &pairs, units.other()).values;
            let id = entry.card().id;
            let read = |input, units| entry.read(input, units).unwrap_or_else(|_| panic!("{id}: {input:#}"));
            let (ours, theirs) = (read(&turned, units.other()), read(&as_it_stood, units));
            assert_eq!(difference(&ours, &theirs, ""), None, "{id}: {turned:#}");
        }
    }
}

/// Where two inputs say something else, to nine figures; the tape is the one thing that a reader of other units marks otherwise.
fn difference(one: &Node, other: &Node, at: &str) -> Option<String> {
    let told = || Some(format!("{at}: {one:?} and {other:?}"));
    match (one, other) {
        (Node::Leaf(one), Node::Leaf(other)) => match (one.number(), other.number()) {
            (Some(one), Some(other)) if (one - other).abs() <= 1e-9 * one.abs().max(other.abs()) => None,
            _ if one == other => None,
            _ => told(),
        },
        (Node::Group(fields), Node::Group(others)) if fields.len() == others.len() => {
            let pairs = fields.iter().zip(others).filter(|((name, _), _)| *name != "tape");
            pairs.into_iter().find_map(|((name, one), (_, other))| difference(one, other, &format!("{at}/{name}")))
        }
        (Node::List(items), Node::List(others)) if items.len() == others.len() => {
            let pairs = items.iter().zip(others).enumerate();
            pairs.into_iter().find_map(|(n, (one, other))| difference(one, other, &format!("{at}/{n}")))
        }
        _ if one == other => None,
        _ => told(),
    }
}

#[test]
fn turning_the_units_leaves_no_tail_and_takes_a_tape_of_the_other_system() {
    let film = entry("paint-film").expect("in the catalogue");
    let turned = |name: &str, text: &str, from: Units| {
        let action = format!("turn {}", from.other().word());
        let pairs = [(form::UNITS, from.word()), (name, text), (form::ACTION, action.as_str())];
        let pairs: Vec<_> = pairs.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
        form::read(film, &pairs, from.other()).values
    };
    // 1.5 mil is 38.1 µm: NIST Handbook 44, an inch being 25.4 mm.
    assert_eq!(turned("/dry_film", "1.5 mil", Units::Imperial)["dry_film"], "38.1 µm");
    assert_eq!(turned("/dry_film", "38.1 µm", Units::Metric)["dry_film"], "1.5 mil");
    let nails = entry("nail-choice").expect("in the catalogue");
    let pairs = [(form::UNITS, "imperial"), ("/tape", "1/16 in"), (form::ACTION, "turn metric")];
    let pairs: Vec<_> = pairs.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect();
    assert_eq!(form::read(nails, &pairs, Units::Metric).values["tape"], "1 mm");
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
