//! Search: every section of every chapter and every calculator, found by words.
//!
//! One list serves the page without scripts, the page with them and the tests. A book of this size needs no inverted index:
//! looking through all sections is quick enough for every letter typed.

use serde::Serialize;

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

/// The list as a file for the page's own script, so that a site without a server can be searched as well.
pub(crate) fn index(all: &[Findable]) -> Asset {
    let bytes = serde_json::to_vec(all).unwrap_or_default();
    Asset { path: "find.json".to_owned(), media_type: "application/json", bytes: bytes.into() }
}

const MOST_HITS: usize = 24;
const EXCERPT: usize = 160;

/// What matches a query best, best first. A word matches words that begin with it; hits with more of the query's words come first.
pub(crate) fn find(all: &[Findable], query: &str) -> Vec<Hit> {
    let words: Vec<String> = words_of(query).take(12).collect();
    if words.is_empty() {
        return Vec::new();
    }
    let mut scored: Vec<(u32, &Findable)> =
        all.iter().map(|item| (score(item, &words), item)).filter(|(score, _)| 0 < *score).collect();
    scored.sort_by_key(|(score, _)| std::cmp::Reverse(*score));
    scored.into_iter().take(MOST_HITS).map(|(_, item)| hit(item, &words)).collect()
}

fn score(item: &Findable, words: &[String]) -> u32 {
    let weight =
        |text: &str, word: &str, each: u32| if words_of(text).any(|other| other.starts_with(word)) { each } else { 0 };
    words
        .iter()
        .map(|word| {
            let found = weight(&item.title, word, 12)
                + weight(&item.also, word, 8)
                + weight(&item.place, word, 3)
                + weight(&item.text, word, 2);
            if 0 < found { found + 100 } else { 0 }
        })
        .sum()
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
    fn any_query_and_any_text_is_cut_at_whole_signs() {
        let all = [item("é", &"äöü caulk ß ".repeat(60))];
        assert_eq!(find(&all, "caulk").len(), 1);
        assert!(find(&all, " \u{0} ?!").is_empty());
        assert!(find(&all, "").is_empty());
    }
}
