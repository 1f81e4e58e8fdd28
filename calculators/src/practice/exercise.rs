//! What an exercise is.

/// A question of one calculator, asked with fresh numbers.
#[derive(Clone, Copy, Debug)]
pub struct Exercise {
    /// The calculator that knows the answer.
    pub calculator: &'static str,
    /// What is asked, in one sentence.
    pub asks: &'static str,
    /// Where the answer stands in the calculator's result.
    pub answer: &'static str,
    /// Fields of the worked example that are left empty.
    pub empty: &'static [&'static str],
    /// What is drawn anew; all else stays as in the worked example.
    pub draws: &'static [Draw],
    /// Wrong ways that are often taken.
    pub mistakes: &'static [Mistake],
}

/// One field of the input that is drawn anew.
#[derive(Clone, Copy, Debug)]
pub struct Draw {
    /// The field, as a JSON pointer.
    pub field: &'static str,
    /// What it is drawn from in inches and their like.
    pub imperial: Range,
    /// What it is drawn from in millimetres and their like.
    pub metric: Range,
}

/// Evenly spaced values: `from / parts` to `to / parts` of a unit, both ends drawn too.
#[derive(Clone, Copy, Debug)]
pub struct Range {
    /// The least, in parts.
    pub from: i64,
    /// The most, in parts.
    pub to: i64,
    /// Parts to the unit: 8 for eighths of an inch, 1 for whole millimetres.
    pub parts: i64,
    /// The unit; empty for a plain count, a coin's sign `¤` for money.
    pub unit: &'static str,
}

/// A wrong way to the answer.
#[derive(Clone, Copy, Debug)]
pub struct Mistake {
    /// Which line of the working has the letters, counted from 0; letters that stand elsewhere are found as well.
    pub step: usize,
    /// What was worked out instead.
    pub formula: &'static str,
    /// What went wrong, and what would have been right.
    pub words: &'static str,
}
