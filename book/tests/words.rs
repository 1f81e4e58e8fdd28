//! The handbook's sentences are short enough to be read on a ladder, and its words are the trade's.
//!
//! The bound on sentences is this book's own. The words are the trade's or a standard's: LRV (BS 8493, from memory), notch gauge
//! (ASTM D4414), transfer efficiency, vapour-pressure deficit, misclosure; the others are common practice, no source.

use calculators::catalogue::{CATALOGUE, Kind, Shape};

/// Most words that a chapter's sentences may have on average.
const MOST: f64 = 16.0;

/// What the book once said, and what the trade says.
const REPLACED: [(&str, &str); 13] = [
    ("wished bay", "target bay"),
    ("stick plan", "cutting plan"),
    ("no-pin zone", "no-nail zone or cable zone"),
    ("loop error", "misclosure"),
    ("wet thermometer", "wet bulb"),
    ("reaches the work", "transfer efficiency"),
    ("light reflectance\"", "light reflectance value"),
    ("safety sheet", "safety data sheet"),
    ("saw's sheet", "cut list"),
    ("to the coin", "to the cent"),
    ("makes drunk", "makes dizzy"),
    ("is told", "is said, or a plain verb"),
    ("lower limit of burning", "lower flammable limit"),
];

fn chapters() -> impl Iterator<Item = (String, String)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/chapters");
    let files = std::fs::read_dir(folder).expect("the chapters").map(|entry| entry.expect("a file").path());
    files.filter(|path| path.extension().is_some_and(|end| end == "md") && !path.ends_with("SUMMARY.md")).map(|path| {
        let text = std::fs::read_to_string(&path).expect("a chapter");
        (path.file_name().unwrap_or_default().to_string_lossy().into_owned(), text)
    })
}

/// Running text without fences, tables and headings: one paragraph, list item or quoted line each.
fn running_text(chapter: &str) -> Vec<String> {
    let mut fenced = false;
    let lines = chapter.lines().filter(|line| {
        let fence = line.starts_with("```");
        fenced ^= fence;
        !fenced && !fence && !line.starts_with(['#', '|'])
    });
    lines.map(|line| line.trim_start_matches(['>', ' ', '-', '*']).to_owned()).filter(|line| !line.is_empty()).collect()
}

/// Words of each sentence. A sentence ends at a full stop, a question mark or an exclamation mark before a space.
fn sentences(line: &str) -> Vec<usize> {
    let words = line.split_whitespace().filter(|word| word.chars().any(char::is_alphanumeric));
    let (mut lengths, mut length) = (Vec::new(), 0);
    for word in words {
        length += 1;
        if word.trim_end_matches(['*', ')', '"', '_']).ends_with(['.', '?', '!']) && word.len() > 2 {
            lengths.push(std::mem::take(&mut length));
        }
    }
    lengths.extend((0 < length).then_some(length));
    lengths
}

#[test]
fn sentences_are_counted_as_a_reader_counts_them() {
    assert_eq!(sentences("Hook the tape at zero. Read every mark!"), [5, 3]);
    assert_eq!(sentences("1.5 mm is enough? Yes"), [4, 1]);
}

#[test]
fn every_chapter_has_short_sentences() {
    let mut looked_at = 0;
    for (file, text) in chapters() {
        let lengths: Vec<usize> = running_text(&text).iter().flat_map(|line| sentences(line)).collect();
        let mean = lengths.iter().sum::<usize>() as f64 / lengths.len().max(1) as f64;
        assert!(mean < MOST, "{file}: {mean:.1} words in a sentence on average");
        looked_at += lengths.len();
    }
    assert!(1_000 < looked_at, "only {looked_at} sentences were read");
}

#[test]
fn the_trades_own_words_stand_in_chapters_cautions_and_labels() {
    let told = |place: &str, text: &str| {
        for (old, new) in REPLACED {
            assert!(!text.to_lowercase().contains(old), "{place} says «{old}»; the trade says {new}");
        }
    };
    for (file, text) in chapters() {
        told(&file, &text);
    }
    told("cautions.toml", include_str!("../cautions.toml"));
    for entry in CATALOGUE.iter().filter(|entry| entry.card().id != "wall-plan") {
        let card = entry.card();
        told(card.id, &format!("{}\" {}\"", card.title, card.question));
        for shape in [entry.input(), entry.output()] {
            labels(shape, &mut |label| told(card.id, &format!("{label}\"")));
        }
    }
}

fn labels(shape: &Shape, each: &mut impl FnMut(&str)) {
    if let Kind::List { item, .. } = shape.kind {
        labels(item, each);
    }
    for field in shape.fields() {
        each(field.title);
        labels(&field.shape, each);
    }
}
