//! Search: every section of every chapter and every calculator, found by words.
//!
//! One list serves the page without scripts, the page with them and the tests. A book of this size needs no inverted index:
//! looking through all sections is quick enough for every letter typed.

use std::sync::LazyLock;

use serde::{Deserialize, Serialize};

use crate::theme::Asset;

/// A thing that can be found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct Findable {
    /// `survey.html#close-the-loop`.
    pub(crate) path: String,
    /// The heading, or the calculator's question.
    pub(crate) title: String,
    /// Where it stands, in words: `Step 3, Measure the wall`.
    pub(crate) place: String,
    /// Other words it should be found by.
    pub(crate) also: String,
    /// Its text.
    pub(crate) text: String,
}

/// Something found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Hit {
    /// Page and anchor, `survey.html#close-the-loop`.
    pub path: String,
    /// The heading, or the calculator's question.
    pub title: String,
    /// Where it stands, in words.
    pub place: String,
    /// A stretch of its text around the first word found.
    pub excerpt: String,
}

/// Words that count for nothing, and words that count for each other.
#[derive(Debug, Default, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
struct Lexicon {
    ignored: Vec<String>,
    same: Vec<Vec<String>>,
}

static LEXICON: LazyLock<Lexicon> = LazyLock::new(|| toml::from_str(include_str!("../words.toml")).unwrap_or_default());

#[derive(Serialize)]
struct Index<'a> {
    #[serde(flatten)]
    lexicon: &'a Lexicon,
    items: &'a [Findable],
}

/// The list as a file for the page's own script, so that a site without a server can be searched as well.
pub(crate) fn index(all: &[Findable]) -> Asset {
    let bytes = serde_json::to_vec(&Index { lexicon: &LEXICON, items: all }).unwrap_or_default();
    Asset { path: "find.json".to_owned(), media_type: "application/json", bytes: bytes.into() }
}

/// How the place of a calculator begins.
pub(crate) const CALCULATION: &str = "Calculation";

const MOST_HITS: usize = 24;
const EXCERPT: usize = 160;

/// What matches a query best, best first. A word matches words that begin with it; hits with more of the query's words come first.
pub(crate) fn find(all: &[Findable], query: &str) -> Vec<Hit> {
    let said: Vec<String> = words_of(query).take(12).collect();
    let wanted = wanted(&said);
    if wanted.is_empty() {
        return Vec::new();
    }
    let mut scored: Vec<(u32, &Findable)> =
        all.iter().map(|item| (score(item, &wanted, &said), item)).filter(|(score, _)| 0 < *score).collect();
    scored.sort_by_key(|(score, _)| std::cmp::Reverse(*score));
    let words: Vec<String> = wanted.into_iter().flatten().collect();
    scored.into_iter().take(MOST_HITS).map(|(_, item)| hit(item, &words)).collect()
}

/// The query's words, each with the other words for it behind it, figures left out. Where all count for nothing, they are taken as they are.
fn wanted(words: &[String]) -> Vec<Vec<String>> {
    // A measure tells what one has, not what one looks for: `18 mm` stands in a hundred places.
    let measure = |word: &str| word.starts_with(|sign: char| sign.is_ascii_digit());
    let told: Vec<&String> = words.iter().filter(|word| !LEXICON.ignored.contains(word) && !measure(word)).collect();
    let kept = if told.is_empty() { words.iter().collect() } else { told };
    let with_others = |word: &String| {
        let groups = LEXICON.same.iter().filter(|group| group.contains(word));
        let others = groups.flatten().filter(|other| *other != word).cloned();
        std::iter::once(word.clone()).chain(others).collect()
    };
    kept.into_iter().map(with_others).collect()
}

fn score(item: &Findable, wanted: &[Vec<String>], said: &[String]) -> u32 {
    // A whole word counts twice what the beginning of one does.
    let weight = |text: &str, word: &str, each: u32| {
        let fit = |other: String| if other == word { 2 } else { u32::from(other.starts_with(word)) };
        words_of(text).map(fit).max().unwrap_or(0) * each
    };
    let found = |word: &str| {
        weight(&item.title, word, 12)
            + weight(&item.also, word, 8)
            + weight(&item.place, word, 3)
            + weight(&item.text, word, 2)
    };
    // The word itself counts in full, another word for it by half.
    let best = |words: &[String]| {
        let own = words.first().map_or(0, |word| found(word) * 2);
        let other = words.iter().skip(1).map(|word| found(word)).max().unwrap_or(0);
        own.max(other)
    };
    let fits: u32 = wanted.iter().map(|words| best(words)).map(|found| if 0 < found { found + 400 } else { 0 }).sum();
    if fits == 0 {
        return 0;
    }
    // What works a thing out comes before what speaks of it, and a title that says the same, small words and all, before others.
    let works = if item.place.starts_with(CALCULATION) { 32 } else { 0 };
    let title: Vec<String> = words_of(&item.title).collect();
    let same = 1 < said.len() && title.windows(said.len()).any(|words| words == said);
    fits + works + if same { 80 } else { 0 }
}

/// Words in lower case, a plural's s cut off so that `boards` finds `board`.
fn words_of(text: &str) -> impl Iterator<Item = String> + '_ {
    text.split(|sign: char| !sign.is_alphanumeric()).filter(|word| !word.is_empty()).map(|word| {
        let word = word.to_lowercase();
        match word.strip_suffix('s') {
            Some(short) if 3 <= short.len() && !short.ends_with('s') => short.to_owned(),
            _ => word,
        }
    })
}

fn hit(item: &Findable, words: &[String]) -> Hit {
    let starts: Vec<usize> = item.text.char_indices().map(|(at, _)| at).collect();
    let mut from = 0;
    let mut at = 0;
    for piece in item.text.split_inclusive(|sign: char| !sign.is_alphanumeric()) {
        if words_of(piece).any(|word| words.iter().any(|wanted| word.starts_with(wanted))) {
            from = item.text.get(..at).map_or(0, |before| before.chars().count()).saturating_sub(40);
            break;
        }
        at += piece.len();
    }
    let begin = starts.get(from).copied().unwrap_or(0);
    let end = starts.get(from + EXCERPT).copied().unwrap_or(item.text.len());
    let cut = item.text.get(begin..end).unwrap_or_default();
    let cut = if 0 < begin { cut.split_once(' ').map_or(cut, |(_, rest)| rest) } else { cut };
    let cut = if end < item.text.len() { cut.rsplit_once(' ').map_or(cut, |(front, _)| front) } else { cut };
    let excerpt = match (0 < begin, end < item.text.len()) {
        (true, true) => format!("… {cut} …"),
        (true, false) => format!("… {cut}"),
        (false, true) => format!("{cut} …"),
        (false, false) => cut.to_owned(),
    };
    Hit { path: item.path.clone(), title: item.title.clone(), place: item.place.clone(), excerpt }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn item(title: &str, text: &str) -> Findable {
        Findable {
            path: String::new(),
            title: title.to_owned(),
            place: String::new(),
            also: String::new(),
            text: text.to_owned(),
        }
    }

    #[test]
    fn a_heading_counts_more_than_the_text_and_all_words_more_than_one() {
        let all = [item("Mask", "boards and caulk"), item("Boards", "cut"), item("Caulk boards", "")];
        let titles: Vec<_> = find(&all, "caulk board").into_iter().map(|hit| hit.title).collect();
        assert_eq!(titles, ["Caulk boards", "Mask", "Boards"]);
    }

    #[test]
    fn a_title_that_asks_the_same_comes_first() {
        let all = [item("Boards and more boards", "boards"), item("How many boards, and how wide?", "")];
        let titles: Vec<_> = find(&all, "How many boards?").into_iter().map(|hit| hit.title).collect();
        assert_eq!(titles, ["How many boards, and how wide?", "Boards and more boards"]);
    }

    #[test]
    fn other_words_for_it_are_found_and_small_words_count_for_nothing() {
        assert!(LEXICON.ignored.len() > 20 && LEXICON.same.len() > 20, "the list of words can be read");
        let all = [item("How do I go to the and of", ""), item("Base", "along the floor"), item("Skirting", "")];
        let titles: Vec<_> = find(&all, "how high is the skirting").into_iter().map(|hit| hit.title).collect();
        assert_eq!(titles, ["Skirting", "Base"]);
    }

    #[test]
    fn any_query_and_any_text_is_cut_at_whole_signs() {
        let all = [item("é", &"äöü caulk ß ".repeat(60))];
        assert_eq!(find(&all, "caulk").len(), 1);
        assert!(find(&all, " \u{0} ?!").is_empty());
        assert!(find(&all, "").is_empty());
    }
}
