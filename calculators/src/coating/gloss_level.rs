//! The gloss level of a paint from its readings at 60° and 85°.
//!
//! Trade words such as eggshell or satin name no fixed reading. The levels overlap, and some pairs of readings lie in none: then
//! the answer is none, not the nearest.

use serde_json::json;

use crate::catalogue::works::{GLOSS_LEVELS, ISO_2813};
use crate::catalogue::{
    Answer, Calculator, Card, Example, Fault, Input, Kind, Node, Note, Output, Shape, Shaped, Source, Standing, Step,
    Words,
};
use crate::quantity::{Amount, Physical, Units, kind};

/// A gloss level: readings at 60° and at 85° in gloss units, from and to.
#[derive(Clone, Copy, Debug, PartialEq, Output)]
pub struct GlossLevel {
    /// 1 is the flattest, 7 the glossiest.
    #[field("Level")]
    pub level: u8,
    /// Range at 60°.
    #[field("At 60°, from")]
    pub gloss_from: f64,
    /// Range at 60°.
    #[field("At 60°, to")]
    pub gloss_to: f64,
    /// Range at 85°, where the level has one.
    #[field("At 85°, from")]
    pub sheen_from: f64,
    /// Range at 85°, where the level has one.
    #[field("At 85°, to")]
    pub sheen_to: f64,
}

const fn level(level: u8, gloss_from: f64, gloss_to: f64, sheen_from: f64, sheen_to: f64) -> GlossLevel {
    GlossLevel { level, gloss_from, gloss_to, sheen_from, sheen_to }
}

/// The seven levels. No gloss meter reads above 200; levels 5 to 7 have no rule at 85°.
/// # Source
/// Master Painters Institute, gloss and sheen standard.
pub const LEVELS: [GlossLevel; 7] = [
    level(1, 0.0, 5.0, 0.0, 10.0),
    level(2, 0.0, 10.0, 10.0, 35.0),
    level(3, 10.0, 25.0, 10.0, 35.0),
    level(4, 20.0, 35.0, 35.0, 200.0),
    level(5, 35.0, 70.0, 0.0, 200.0),
    level(6, 70.0, 85.0, 0.0, 200.0),
    level(7, 85.0, 200.0, 0.0, 200.0),
];

/// No gloss meter reads higher.
const MOST_GLOSS: f64 = 200.0;
/// From this reading at 60° on the levels have no rule at 85°.
const NO_SHEEN_RULE: f64 = 35.0;

/// The level of a pair of readings; where two levels meet, the higher. `None` where no level holds both readings.
///
/// Levels from 35 units at 60° up have no rule at 85°; without that reading only they can be found.
pub fn level_of(gloss: f64, sheen: Option<f64>) -> Option<u8> {
    levels_of(gloss, sheen).pop()
}

/// Every level that holds both readings: levels overlap.
pub fn levels_of(gloss: f64, sheen: Option<f64>) -> Vec<u8> {
    let holds = |row: &&GlossLevel| {
        (row.gloss_from..=row.gloss_to).contains(&gloss)
            && sheen.map_or(row.gloss_from >= NO_SHEEN_RULE, |sheen| (row.sheen_from..=row.sheen_to).contains(&sheen))
    };
    LEVELS.iter().filter(|row| row.level < 7 || gloss > row.gloss_from).filter(holds).map(|row| row.level).collect()
}

/// A range of readings in words: `10 to 25`, `85 and above`, `any`.
pub fn range_in_words(from: f64, to: f64) -> String {
    match (from > 0.0, to < MOST_GLOSS) {
        (false, false) => "any".to_owned(),
        (true, false) => format!("{from} and above"),
        (_, true) => format!("{from} to {to}"),
    }
}

pub(crate) struct GlossReading;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// The meter's reading at 60°.
    #[field("Gloss at 60°")]
    gloss: Physical<kind::Number, 0, 200_000>,
    /// The meter's reading at 85°; from 35 units at 60° up it is not needed.
    #[field("Sheen at 85°")]
    sheen: Option<Physical<kind::Number, 0, 200_000>>,
    /// The same wall beside it, or the touched-up patch, at 60°.
    #[field("Beside it, at 60°")]
    beside: Option<Physical<kind::Number, 0, 200_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// One to seven, or none.
    #[field("Gloss level")]
    level: Level,
    /// How far the patch beside it lies off at 60°.
    #[field("Difference to the patch")]
    difference: Option<Amount<kind::Number>>,
    /// The seven levels.
    #[field("The levels")]
    levels: Vec<LevelRow>,
}

/// A level in words.
#[derive(Output)]
pub(crate) struct LevelRow {
    /// 1 is the flattest, 7 the glossiest.
    #[field("Level")]
    level: u8,
    /// In gloss units.
    #[field("At 60°")]
    gloss: String,
    /// In gloss units.
    #[field("At 85°")]
    sheen: String,
}

/// A level or its absence, in words.
pub(crate) enum Level {
    /// The level.
    Of(u8),
    /// No level holds both readings.
    None(&'static str),
}

impl Shaped for Level {
    const SHAPE: Shape = Shape::of(Kind::Figure);
    fn node(&self) -> Node {
        match self {
            Self::Of(level) => level.node(),
            Self::None(words) => words.node(),
        }
    }
}

/// Difference in gloss units that shows on low sheen, and on semi-gloss (from 35 units at 60°). From memory, no document at hand.
const VISIBLE: (f64, f64) = (3.0, 5.0);

impl Calculator for GlossReading {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "gloss-level",
        title: "Gloss level",
        question: "Which sheen is this, and will the patch show?",
        step: 16,
        search: &["sheen", "gloss", "matt", "flat", "touch-up", "flashing"],
        headline: &["/level", "/difference"],
        list: Some("/levels"),
        cautions: &[],
        sources: &[
            Source::new(GLOSS_LEVELS, "levels 1 to 7 by readings at 60° and 85°", Standing::Published),
            Source::new(ISO_2813, "the gloss unit", Standing::FromMemory),
        ],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "gloss": 22, "sheen": 30, "beside": 26 }),
            expects: vec![("/result/level", json!(3)), ("/result/difference/text", json!("4"))],
            checked_against: "the published table: 10 to 25 at 60° with 10 to 35 at 85° is level 3",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (gloss, sheen) = (input.gloss.get(), input.sheen.map(Physical::get));
        if gloss < NO_SHEEN_RULE && sheen.is_none() {
            let why = "below 35 units at 60° the level also depends on the reading at 85°";
            return Err(vec![Fault::new("/sheen", "nothing", why, 30)]);
        }
        let found = level_of(gloss, sheen);
        let level = found.map_or(Level::None("no level"), Level::Of);
        let mut notes = Vec::new();
        let all = levels_of(gloss, sheen);
        if all.len() > 1 {
            let names: Vec<_> = all.iter().map(u8::to_string).collect();
            notes.push(Note::check(format!("Levels {} overlap and all hold these readings; the highest is told. Say both readings, not the level alone.", names.join(" and "))));
        }
        if found.is_none() {
            notes.push(Note::check("No level holds both readings. That happens; it is not rounded to the nearest."));
        }
        let difference = input.beside.map(|beside| Amount::<kind::Number>::of((gloss - beside.get()).abs()));
        let mut working = vec![
            Step::new("both readings against the table")
                .gives("l", "level", found.map_or_else(|| "no level".to_owned(), |level| level.to_string()))
                .because("where two levels meet, the higher"),
        ];
        if let (Some(difference), Some(beside)) = (difference, input.beside) {
            working.push(
                Step::new("difference to the patch")
                    .by("abs(a - b)")
                    .given("a", "gloss", input.gloss)
                    .given("b", "beside it", beside)
                    .gives("d", "difference", difference),
            );
            let limit = if gloss >= 35.0 { VISIBLE.1 } else { VISIBLE.0 };
            if difference.get() >= limit {
                let words = Words::new(
                    "{} units apart at 60° usually shows (from {} at this sheen, from memory): coat the board to its ends.",
                );
                notes.push(Note::check(words.with(difference).with(Amount::<kind::Number>::of(limit))));
            }
        }
        let rows = LEVELS.iter().map(|row| LevelRow {
            level: row.level,
            gloss: range_in_words(row.gloss_from, row.gloss_to),
            sheen: range_in_words(row.sheen_from, row.sheen_to),
        });
        Ok(Answer { result: Output { level, difference, levels: rows.collect() }, working, notes })
    }
}
