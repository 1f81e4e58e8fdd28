//! Words that keep people from harm reach every face: the calculation's page, the chapter, the answer panel, the part a script puts
//! in, the quick look, plain text, JSON. On paper: the browser tests, which see the style sheet too.
//!
//! What must be said is taken from the card and from the answer itself; each face is read as a person reads it, by its letters.

use axum::body::Body;
use axum::http::{Request, header};
use book::{Handbook, Light, render};
use calculators::catalogue::{CATALOGUE, Entry, Kind, Shape, entry};
use calculators::quantity::Units;
use serde_json::{Value, json};
use tests::inputs::{Quantity, quantities, with};
use tests::served::{ask, get, send};

/// Letters and digits alone, marks of a page's text left out: `3 1/2"` is the same however it is set.
fn letters(text: &str) -> String {
    text.chars().filter(|sign| sign.is_alphanumeric()).collect()
}

/// The letters of a page between its marks, with the few names of signs that pages use read as their signs.
fn seen(html: &str) -> String {
    let mut inside = false;
    let text: String = html
        .chars()
        .filter(|sign| {
            let shown = !inside && *sign != '<';
            inside = if inside { *sign != '>' } else { *sign == '<' };
            shown
        })
        .collect();
    letters(
        &text
            .replace("&amp;", "")
            .replace("&lt;", "")
            .replace("&gt;", "")
            .replace("&quot;", "")
            .replace("&#39;", "")
            .replace("&#x27;", ""),
    )
}

fn text<'v>(value: &'v Value, name: &str) -> &'v str {
    value[name].as_str().unwrap_or_else(|| panic!("no {name} in {value}"))
}

/// Inputs that raise the notes of a calculator: its example, and its example with one quantity at a time made much smaller or larger.
fn asked(entry: &Entry) -> Vec<Value> {
    let example = entry.example(Units::Metric).input.clone();
    let mut inputs = vec![example.clone()];
    if entry.card().id == "wall-plan" {
        // Too long to be tried with every quantity: a vent nobody has read the label of must be settled first.
        let mut wall = example;
        wall["survey"]["keep_clear"] =
            json!([{ "kind": "vent", "left": 300, "right": 400, "bottom": 700, "top": 800 }]);
        inputs.push(wall);
        return inputs;
    }
    for (pointer, quantity) in quantities(entry, &example, Units::Metric) {
        for factor in [0.0, 0.1, 0.5, 0.8, 1.25, 2.0, 10.0] {
            let size = if matches!(quantity, Quantity::Count(_)) {
                (quantity.size() * factor).round()
            } else {
                quantity.size() * factor
            };
            inputs.push(with(&example, &[(pointer.clone(), quantity.sized(size))], Units::Metric));
        }
    }
    for (pointer, words) in choices(entry.input(), "") {
        for word in words {
            let mut input = example.clone();
            tests::inputs::put(&mut input, &pointer, word);
            inputs.push(input);
        }
    }
    inputs
}

/// Places of an input where one of a few words is chosen, with the words; and yes and no.
fn choices(shape: &Shape, at: &str) -> Vec<(String, Vec<Value>)> {
    let mut found = Vec::new();
    for field in shape.fields() {
        let place = format!("{at}/{}", field.name);
        match field.shape.kind {
            Kind::Choice(choices) => found.push((place, choices.iter().map(|choice| choice.word.into()).collect())),
            Kind::Flag => found.push((place, vec![json!(true), json!(false)])),
            _ => found.extend(choices(&field.shape, &place)),
        }
    }
    found
}

/// One input for every note that a calculator gives, with the note's level and its first words.
fn with_notes(entry: &Entry) -> Vec<Value> {
    let mut told: Vec<(String, String)> = Vec::new();
    let mut kept = Vec::new();
    for input in asked(entry) {
        let Ok(answer) = entry.answer(&input, Units::Metric) else { continue };
        let mut fresh = false;
        for note in answer["notes"].as_array().into_iter().flatten() {
            let opening: String = text(note, "words").chars().filter(|sign| sign.is_alphabetic()).take(24).collect();
            let note = (text(note, "level").to_owned(), opening);
            if !told.contains(&note) {
                (fresh, _) = (true, told.push(note));
            }
        }
        if fresh {
            kept.push(input);
        }
    }
    kept
}

/// What a form posts for an input: pointers and texts.
fn posted(value: &Value, at: &str, pairs: &mut String) {
    let plain = |text: &str| text.bytes().map(|byte| format!("%{byte:02X}")).collect::<String>();
    match value {
        Value::Null => {}
        Value::Object(fields) => fields.iter().for_each(|(name, inner)| posted(inner, &format!("{at}/{name}"), pairs)),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(n, inner)| posted(inner, &format!("{at}/{n}"), pairs));
        }
        Value::String(text) => *pairs += &format!("&{}={}", plain(at), plain(text)),
        other => *pairs += &format!("&{}={}", plain(at), plain(&other.to_string())),
    }
}

/// The faces of one answer: name, letters, and what stands before a note of each level.
async fn faces(id: &str, input: &Value) -> Vec<(&'static str, String)> {
    let body = input.to_string();
    let mut form = "do=work&units=metric".to_owned();
    posted(input, "", &mut form);
    let post = |part: bool| {
        let request =
            Request::post(format!("/work/{id}")).header(header::CONTENT_TYPE, "application/x-www-form-urlencoded");
        let request = if part { request.header("x-part", "1") } else { request };
        send(request.header(header::COOKIE, "units=metric"), form.clone())
    };
    let (page, part) = (post(false).await, post(true).await);
    assert!(page.status.is_success() && part.status.is_success(), "{id}: {} for {form}", page.status);
    vec![
        ("the calculation's page", seen(&page.text)),
        ("the part that a script puts in", seen(&part.text)),
        ("the answer panel", seen(&ask(id, &body, "text/html").await.text)),
        ("plain text", letters(&ask(id, &body, "text/plain").await.text)),
    ]
}

#[tokio::test]
async fn every_note_and_every_caution_of_an_answer_reaches_every_face() {
    let book = Handbook::built_in().expect("the book has no fault");
    let (mut holds, mut with_holds, mut checks, mut warned) = (0, 0, 0, 0);
    for entry in CATALOGUE.iter() {
        let id = entry.card().id;
        let mut held = false;
        for input in with_notes(entry).iter().chain([&entry.example(Units::Metric).input]) {
            let answer = ask(id, &input.to_string(), "application/json").await.json();
            let notes = answer["notes"].as_array().expect("notes");
            let cautions = answer["cautions"].as_array().expect("cautions");
            assert_eq!(cautions.len(), entry.card().cautions.len(), "{id}: JSON leaves a caution out");
            for (key, caution) in entry.card().cautions.iter().zip(cautions) {
                let known = book.cautions().get(key).expect("registered");
                let words = [text(caution, "hazard"), text(caution, "consequence"), text(caution, "avoid")];
                assert_eq!(words, [&known.hazard, &known.consequence, &known.avoid], "{id}: {key} in other words");
                assert_eq!(text(caution, "signal_word").to_uppercase(), known.level.word());
            }
            for (face, letters_there) in faces(id, input).await {
                for note in notes {
                    let before = match (text(note, "level"), face) {
                        (level, "plain text") => letters(&level.to_uppercase()),
                        ("hold", _) => letters("Stop here."),
                        ("check", _) => letters("Look again."),
                        _ => String::new(),
                    };
                    let words = letters(text(note, "words"));
                    let mut first = words.chars();
                    let capital: String = first.next().into_iter().flat_map(char::to_uppercase).chain(first).collect();
                    let there =
                        [words, capital].iter().any(|words| letters_there.contains(&format!("{before}{words}")));
                    assert!(there, "{id}: {face} does not say «{}» ({})", text(note, "words"), text(note, "level"));
                    holds += usize::from(note["level"] == "hold");
                    checks += usize::from(note["level"] == "check");
                    held |= note["level"] == "hold";
                }
                for caution in cautions {
                    for part in ["signal_word", "hazard", "consequence", "avoid"] {
                        let words = text(caution, part);
                        let words =
                            letters(&if part == "signal_word" { words.to_uppercase() } else { words.to_owned() });
                        assert!(
                            letters_there.contains(&words),
                            "{id}: {face} leaves out the {part} of «{}»",
                            text(caution, "hazard")
                        );
                    }
                    warned += 1;
                }
            }
        }
        with_holds += usize::from(held);
    }
    // So that the sweep keeps finding what it is for: notes that stop the work stand in some twenty calculators.
    assert!(
        with_holds >= 14 && holds > 50 && checks > 200 && warned > 200,
        "{with_holds} calculators, {holds}, {checks}, {warned}"
    );
}

#[tokio::test]
async fn every_calculation_warns_on_its_own_page_and_in_its_chapter() {
    let book = Handbook::built_in().expect("the book has no fault");
    for units in [Units::Imperial, Units::Metric] {
        let site = render(&book, units);
        // The wall plan stands on a sheet of its own, which is looked at below.
        for entry in
            CATALOGUE.iter().filter(|entry| !entry.card().cautions.is_empty() && entry.card().id != "wall-plan")
        {
            let id = entry.card().id;
            let own = seen(&get(&format!("/work/{id}")).await.text);
            let mark = format!("class=\"calculation wide\" id=\"{id}\"");
            let on = |page: &&book::Page| !page.path.starts_with("work/") && page.html(Light::Day).contains(&mark);
            let chapter =
                site.pages.iter().find(on).unwrap_or_else(|| panic!("{id} stands in no chapter")).html(Light::Day);
            // It may stand above the calculation once for the whole chapter, but not below it.
            let end = chapter.find(&mark).map_or(0, |at| at + chapter[at..].find("<form").unwrap_or(0));
            let above = seen(&chapter[..end]);
            for key in entry.card().cautions {
                let caution = book.cautions().get(key).expect("registered");
                for words in [caution.level.word(), &caution.hazard, &caution.consequence, &caution.avoid] {
                    assert!(own.contains(&letters(words)), "{id}: its page does not say «{words}»");
                    assert!(
                        above.contains(&letters(words)),
                        "{id}: its chapter does not say «{words}» before its form"
                    );
                }
            }
        }
    }
}

#[tokio::test]
async fn the_wall_sheet_warns_where_something_can_hurt() {
    let book = Handbook::built_in().expect("the book has no fault");
    let card = entry("wall-plan").expect("it is declared").card();
    let views: [(&str, &[&str]); 3] = [("sheet", card.cautions), ("numbers", card.cautions), ("saw", &["saw-blade"])];
    for (view, keys) in views {
        for wall in ["a", "b", "c"] {
            let page = send(Request::get(format!("/wall?wall={wall}&view={view}")), Body::empty()).await;
            let page = seen(&page.text);
            for key in keys.iter().copied().chain((wall == "c" && view != "saw").then_some("stair-work")) {
                let caution = book.cautions().get(key).expect("registered");
                for words in [caution.level.word(), &caution.hazard, &caution.consequence, &caution.avoid] {
                    assert!(page.contains(&letters(words)), "wall {wall}, {view}: «{words}» is left out");
                }
            }
        }
    }
}

#[tokio::test]
async fn what_is_for_machines_alone_is_printed_for_no_person() {
    let mut looked_at = 0;
    for entry in CATALOGUE.iter() {
        let id = entry.card().id;
        for field in entry.output().fields().iter().filter(|field| field.for_machines) {
            let name = field.name;
            let input = entry.example(Units::Metric).input.to_string();
            let json = ask(id, &input, "application/json").await.json();
            assert!(json["result"][name].is_object(), "{id}: a program gets its {name}");
            for media in ["text/plain", "text/html"] {
                let text = ask(id, &input, media).await.text;
                let title = field.title;
                assert!(!title.is_empty() && !text.contains(title), "{id} as {media} prints «{title}»");
                looked_at += 1;
            }
        }
    }
    assert!(looked_at > 0, "no calculator has a field for machines");
}
