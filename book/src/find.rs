//! Search: every section of every chapter and every calculator, found by words.
//!
//! One list serves the page without scripts, the page with them and the tests. A book of this size needs no inverted index:
//! looking through all sections is quick enough for every letter typed.

use std::collections::{BTreeMap, HashSet};
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
    spelt: Vec<Vec<String>>,
    same: Vec<Vec<String>>,
}

impl Lexicon {
    /// Every word that stands for another.
    fn words(&self) -> impl Iterator<Item = &String> {
        self.spelt.iter().chain(&self.same).flatten()
    }
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
/// How the path of a quick question begins.
const QUESTIONS: &str = "questions.html#";

const MOST_HITS: usize = 24;
const EXCERPT: usize = 160;

/// What a word that is found counts for, beside where it stands.
const FOUND: u32 = 60;
/// What an answer counts for beside a page that speaks of it: a calculation in full, a quick question by half.
const ANSWER: u32 = 20;
/// What a title counts for that says the same, small words and all.
const SAME_TITLE: u32 = 80;
/// What a word counts for in a title, in the other words a thing is found by, in its place, in its text; a whole word twice that.
const WEIGHTS: [u32; 4] = [12, 8, 3, 2];

/// What matches a query best, best first.
///
/// A word matches words that begin with it. One that the book does not know stands for the words it knows that are spelt most like it. Rare
/// words count for more than frequent ones, a word of the query for more than another word for it, an answer for more than a page.
pub(crate) fn find(all: &[Findable], query: &str) -> Vec<Hit> {
    let said: Vec<String> = words_of(query).take(12).collect();
    let items: Vec<Read<'_>> = all.iter().map(Read::of).collect();
    let wanted = wanted(&said, &items);
    if wanted.is_empty() {
        return Vec::new();
    }
    let mut scored: Vec<(u32, &Findable)> =
        items.iter().map(|item| (score(item, &wanted, &said), item.item)).filter(|(score, _)| 0 < *score).collect();
    scored.sort_by_key(|(score, _)| std::cmp::Reverse(*score));
    let words: Vec<String> = wanted.into_iter().flat_map(|wish| [wish.own, wish.others].concat()).collect();
    scored.into_iter().take(MOST_HITS).map(|(_, item)| hit(item, &words)).collect()
}

/// A thing to be found with its words.
struct Read<'a> {
    item: &'a Findable,
    title: Vec<String>,
    /// Title, other words, place, text.
    fields: [HashSet<String>; 4],
}

impl<'a> Read<'a> {
    fn of(item: &'a Findable) -> Self {
        let title: Vec<String> = words_of(&item.title).collect();
        let fields = [&item.title, &item.also, &item.place, &item.text].map(|text| words_of(text).collect());
        Self { item, title, fields }
    }

    fn holds(&self, word: &str) -> bool {
        self.fields.iter().any(|words| fit(words, word) > 0)
    }

    fn found(&self, word: &str) -> u32 {
        self.fields.iter().zip(WEIGHTS).map(|(words, weight)| fit(words, word) * weight).sum()
    }
}

/// How well a word fits: whole, as the beginning of another, not at all.
fn fit(words: &HashSet<String>, word: &str) -> u32 {
    if words.contains(word) { 2 } else { u32::from(words.iter().any(|other| other.starts_with(word))) }
}

/// One word of a query.
struct Wish {
    /// The word, or the words it was most likely meant to be.
    own: Vec<String>,
    /// Other words for it.
    others: Vec<String>,
    /// How rare it is: one, and one more for each halving of the book.
    rarity: u32,
}

/// The query's words, each with the other words for it, figures left out. Where all count for nothing, they are taken as they are.
fn wanted(words: &[String], items: &[Read<'_>]) -> Vec<Wish> {
    // A measure tells what one has, not what one looks for: `18 mm` stands in a hundred places. A penny number such as 8d is a name.
    let measure = |word: &str| {
        let penny = word.strip_suffix('d').is_some_and(|figures| figures.chars().all(|sign| sign.is_ascii_digit()));
        word.starts_with(|sign: char| sign.is_ascii_digit()) && !penny
    };
    let told: Vec<&String> = words.iter().filter(|word| !LEXICON.ignored.contains(word) && !measure(word)).collect();
    let kept = if told.is_empty() { words.iter().collect() } else { told };
    let wish = |word: &String| {
        let known =
            items.iter().any(|item| item.holds(word)) || LEXICON.words().any(|one| one.starts_with(word.as_str()));
        let near = if known { Vec::new() } else { nearest(word, items) };
        let meant = if near.is_empty() { vec![word.clone()] } else { near };
        let pairs = LEXICON.spelt.iter().filter(|pair| pair.iter().any(|one| meant.contains(one)));
        let spelt: Vec<String> = pairs.flatten().filter(|one| !meant.contains(one)).cloned().collect();
        let own = [meant, spelt].concat();
        let groups = LEXICON.same.iter().filter(|group| group.iter().any(|one| own.contains(one)));
        let others = groups.flatten().filter(|other| !own.contains(other)).cloned().collect();
        let mut places = items.iter().filter(|item| own.iter().any(|word| item.holds(word))).count().max(1);
        let mut rarity = 1;
        while places * 2 <= items.len() {
            (places, rarity) = (places * 2, rarity + 1);
        }
        Wish { own, others, rarity }
    };
    kept.into_iter().map(wish).collect()
}

/// The words of the book, and of the list of other words, that are spelt most like a word: one letter off, two in a long word; those
/// that begin alike before others, three at most.
fn nearest(word: &str, items: &[Read<'_>]) -> Vec<String> {
    let length = word.chars().count();
    if length < 4 {
        return Vec::new();
    }
    let most = if length < 6 { 1 } else { 2 };
    let mut known: BTreeMap<&str, usize> = LEXICON.words().map(|word| (word.as_str(), 0)).collect();
    for item in items {
        for word in item.fields.iter().flatten().collect::<HashSet<_>>() {
            *known.entry(word).or_default() += 1;
        }
    }
    let near = known.into_iter().filter(|(other, _)| other.chars().count().abs_diff(length) <= most);
    let near: Vec<(usize, &str, usize)> = near
        .map(|(other, places)| (strsim::osa_distance(word, other), other, places))
        .filter(|(apart, ..)| *apart <= most)
        .collect();
    let Some(least) = near.iter().map(|(apart, ..)| *apart).min() else { return Vec::new() };
    let mut near: Vec<_> = near.into_iter().filter(|(apart, ..)| *apart == least).collect();
    if near.iter().any(|(_, other, _)| other.chars().next() == word.chars().next()) {
        near.retain(|(_, other, _)| other.chars().next() == word.chars().next());
    }
    near.sort_by(|one, other| other.2.cmp(&one.2).then(one.1.cmp(other.1)));
    near.into_iter().take(3).map(|(_, other, _)| other.to_owned()).collect()
}

fn score(item: &Read<'_>, wanted: &[Wish], said: &[String]) -> u32 {
    // The word itself counts in full, another word for it by half.
    let best = |wish: &Wish| {
        let own = wish.own.iter().map(|word| item.found(word) * 2).max().unwrap_or(0);
        own.max(wish.others.iter().map(|word| item.found(word)).max().unwrap_or(0))
    };
    let fits: u32 = wanted
        .iter()
        .map(|wish| (best(wish), wish.rarity))
        .map(|(found, rarity)| if 0 < found { (found + FOUND) * rarity } else { 0 })
        .sum();
    if fits == 0 {
        return 0;
    }
    let rarities = wanted.iter().map(|wish| wish.rarity);
    let answer = if item.item.place.starts_with(CALCULATION) {
        ANSWER
    } else if item.item.path.starts_with(QUESTIONS) {
        ANSWER / 2
    } else {
        0
    };
    let same = 1 < said.len() && item.title.windows(said.len()).any(|words| words == said);
    let title = if same { SAME_TITLE * rarities.clone().max().unwrap_or(1) } else { 0 };
    fits + answer * rarities.sum::<u32>() + title
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
    fn a_word_that_is_spelt_wrong_stands_for_the_nearest_one() {
        let all = [item("Plasterboard", ""), item("Moisture", "of wood"), item("Planer", "")];
        let first = |query: &str| find(&all, query).into_iter().next().map(|hit| hit.title);
        assert_eq!(first("plasterbord").as_deref(), Some("Plasterboard"));
        assert_eq!(first("moisure").as_deref(), Some("Moisture"));
        assert_eq!(first("moitsure").as_deref(), Some("Moisture"));
        assert_eq!(first("qqqqqq"), None);
    }

    #[test]
    fn any_query_and_any_text_is_cut_at_whole_signs() {
        let all = [item("é", &"äöü caulk ß ".repeat(60))];
        assert_eq!(find(&all, "caulk").len(), 1);
        assert!(find(&all, " \u{0} ?!").is_empty());
        assert!(find(&all, "").is_empty());
    }
}
