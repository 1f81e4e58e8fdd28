//! Rail heights: rows of equal height, or two rows in a ratio, between base and top rail.

use serde_json::json;

use super::scheme::BoardWidth;
use super::survey::Height;
use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Count, Exact, Length, Reading, Tape, Units};

pub(crate) struct RailHeights;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Top edge of the base above the floor, or nothing.
    #[field("Top of base")]
    base: Height,
    /// Top edge of the top rail: a wished height, or the underside of ceiling or crown.
    #[field("Top of the top rail")]
    top: Height,
    /// As measured.
    #[field("Rail width")]
    rail: BoardWidth,
    /// One is boards from base to top rail.
    #[field("Rows")]
    rows: Count<1, 7>,
    /// With two rows: the lower row's share; 5 with 3 below is a split of 5 to 3. Leave both empty for equal rows.
    #[field("Lower share", default)]
    lower_share: Option<Count<1, 100>>,
    /// With two rows: the upper row's share.
    #[field("Upper share", default)]
    upper_share: Option<Count<1, 100>>,
    /// The finest mark used.
    #[field("Tape", default)]
    tape: Tape,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Clear height of the lowest row.
    #[field("Row")]
    row: Exact,
    /// Clear heights, from the bottom up.
    #[field("Rows")]
    rows: Vec<Exact>,
    /// From the bottom up, the top rail last.
    #[field("Rails")]
    rails: Vec<Rail>,
}

/// One rail.
#[derive(Output)]
pub(crate) struct Rail {
    /// Above the floor.
    #[field("Bottom edge")]
    bottom: Reading,
    /// Above the floor.
    #[field("Top edge")]
    top: Reading,
}

/// Clear heights of rows between base and top rail, from the bottom up, in proportion to their shares.
///
/// Formula: (top − base − rows × rail) × share / shares. `None` where nothing is left, or no shares are given.
pub(crate) fn row_heights(base: Length, top: Length, rail: Length, shares: &[i64]) -> Option<Vec<Exact>> {
    let rows = i64::try_from(shares.len()).ok().filter(|rows| *rows > 0)?;
    let clear = (top - base - rail * rows).exact();
    let all = shares.iter().sum();
    if !clear.is_positive() || shares.iter().any(|share| *share < 1) {
        return None;
    }
    shares.iter().map(|share| clear.times(*share, all)).collect()
}

impl Calculator for RailHeights {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "rail-heights",
        title: "Rail heights",
        question: "Where do the rails go?",
        step: 4,
        search: &["tiers", "rows", "rails", "height", "split", "ratio", "dado", "chair rail", "how high"],
        headline: &["/row"],
        list: Some("/rails"),
        cautions: &[],
        sources: &[
            Source::new(GEOMETRY, "a height shared out", Standing::Derived),
            Source::new(PRACTICE, "rails take up the lines of sills and heads first", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "base": "5 1/2 in", "top": "96 in", "rail": "3 1/2 in", "rows": 2, "lower_share": 5, "upper_share": 3, "tape": "1/16 in" }),
                expects: vec![
                    ("/result/rows/0/tape", json!("52 3/16 in")),
                    ("/result/rows/1/tape", json!("31 5/16 in")),
                ],
                checked_against: "by hand: 96 - 5 1/2 - 2 x 3 1/2 = 83 1/2, split 5 to 3",
            },
            Units::Metric => Example {
                input: json!({ "base": "140 mm", "top": "2440 mm", "rail": "90 mm", "rows": 2, "tape": "1 mm" }),
                expects: vec![("/result/row/text", json!("1060 mm")), ("/result/rails/0/top/tape", json!("1290 mm"))],
                checked_against: "by hand: (2440 - 140 - 2 x 90) / 2 = 1060; 140 + 1060 + 90",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (base, top, rail) = (input.base.get(), input.top.get(), input.rail.get());
        let rows = input.rows.get();
        let shares = match (input.lower_share, input.upper_share, rows) {
            (None, None, rows) => vec![1; usize::try_from(rows).unwrap_or(1)],
            (Some(lower), Some(upper), 2) => vec![i64::from(lower), i64::from(upper)],
            (Some(_), Some(_), _) => {
                let why = "a split into two shares needs two rows";
                return Err(vec![Fault::new("/rows", Words::of(rows), why, 2)]);
            }
            (lower, ..) => {
                let pointer = if lower.is_some() { "/upper_share" } else { "/lower_share" };
                let why = "a split needs both shares; leave both empty for equal rows";
                return Err(vec![Fault::new(pointer, "nothing", why, 3)]);
            }
        };
        let Some(heights) = row_heights(base, top, rail, &shares) else {
            let need = base + rail * i64::from(rows);
            let why = Words::new("base and {} rails take up {}: no row is left").with(rows).with(need);
            return Err(vec![Fault::new("/top", Words::of(top), why, Words::of(need + Length::inches(24)))]);
        };
        let row = heights.first().copied().unwrap_or(Exact::ZERO);
        let mut rails = Vec::new();
        let mut at = base.exact();
        for height in &heights {
            let bottom = at + *height;
            at = bottom + rail;
            rails.push(Rail { bottom: input.tape.mark(bottom), top: input.tape.mark(at) });
        }
        let clear = (top - base - rail * i64::from(rows)).exact();
        let working = vec![
            Step::new("clear height of all rows")
                .by("H - B - n * w")
                .given("H", "top of the top rail", top)
                .given("B", "top of base", base)
                .given("n", "rails", rows)
                .given("w", "rail width", rail)
                .gives("C", "clear height", clear),
            Step::new("lowest row")
                .by("C * p / q")
                .given("C", "clear height", clear)
                .given("p", "its share", shares.first().copied().unwrap_or(1))
                .given("q", "all shares", shares.iter().sum::<i64>())
                .gives("h", "row", row),
        ];
        let mut notes = vec![Note::remark(
            "Sills and heads come first: where a rail would miss one by a hand's breadth, move the rail to it.",
        )];
        if rows == 2 && (row - heights[1]).size() < rail.exact() && input.lower_share.is_some() {
            notes
                .push(Note::remark("Rows this nearly alike read as a mistake; make them equal, or clearly different."));
        }
        Ok(Answer { result: Output { row, rows: heights, rails }, working, notes })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_and_three_equal_rows() {
        // Common practice arithmetic, worked by hand: 96 in wall, base 5-1/2, rails 3-1/2.
        let in8 = |eighths: i64| Length::sixty_fourths(eighths * 8);
        let rows = |shares: &[i64]| row_heights(in8(44), in8(768), in8(28), shares).expect("rows are left");
        assert_eq!(rows(&[1, 1])[0], in8(334));
        assert!((rows(&[1, 1, 1])[0].in_mm() / 25.4 - 26.667).abs() < 0.0005);
        assert!(row_heights(in8(44), in8(60), in8(28), &[1]).is_none());
    }
}
