//! A stretch along one direction.

use crate::quantity::{Exact, Length};

/// From one place to another, along the wall or up it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// Where it begins.
    pub from: Exact,
    /// Where it ends.
    pub to: Exact,
}

impl Span {
    /// From one place to another.
    pub const fn new(from: Exact, to: Exact) -> Self {
        Self { from, to }
    }

    /// How long it is.
    pub fn size(self) -> Exact {
        self.to - self.from
    }

    /// Its middle.
    pub fn middle(self) -> Exact {
        (self.from + self.to).half()
    }

    /// True where it has any length.
    pub fn is_open(self) -> bool {
        self.from < self.to
    }

    /// True where the insides of the two share anything.
    pub fn overlaps(self, other: Self) -> bool {
        self.from < other.to && other.from < self.to && self.is_open() && other.is_open()
    }

    /// True where the other lies within this one, ends included.
    pub fn covers(self, other: Self) -> bool {
        self.from <= other.from && other.to <= self.to
    }

    /// What the two share; empty where they share nothing.
    pub fn shared(self, other: Self) -> Self {
        let from = self.from.max(other.from);
        Self { from, to: self.to.min(other.to).max(from) }
    }

    /// From the beginning of the first to the end of the last.
    pub fn hull(self, other: Self) -> Self {
        Self { from: self.from.min(other.from), to: self.to.max(other.to) }
    }

    /// Longer by so much at both ends.
    pub fn grown(self, by: Length) -> Self {
        Self { from: self.from - by, to: self.to + by }
    }

    /// What lies between the two; less than nothing where they overlap.
    pub fn gap(self, other: Self) -> Exact {
        (other.from - self.to).max(self.from - other.to)
    }

    /// True where both ends of the two lie within `step` of each other.
    pub fn agrees(self, other: Self, step: Length) -> bool {
        (self.from - other.from).size() <= step && (self.to - other.to).size() <= step
    }
}

/// What is left of a stretch when others are taken out of it, from its beginning on.
pub fn left_free(whole: Span, taken: impl IntoIterator<Item = Span>) -> Vec<Span> {
    let mut taken: Vec<Span> = taken.into_iter().filter(|span| span.overlaps(whole)).collect();
    taken.sort_unstable();
    let (mut free, mut from) = (Vec::new(), whole.from);
    for span in taken {
        if from < span.from {
            free.push(Span::new(from, span.from));
        }
        from = from.max(span.to);
    }
    if from < whole.to {
        free.push(Span::new(from, whole.to));
    }
    free
}

/// Stretches as few as they can be: those that overlap or touch become one.
pub fn united(spans: impl IntoIterator<Item = Span>) -> Vec<Span> {
    let mut spans: Vec<Span> = spans.into_iter().filter(|span| span.is_open()).collect();
    spans.sort_unstable();
    let mut found: Vec<Span> = Vec::with_capacity(spans.len());
    for span in spans {
        match found.last_mut() {
            Some(last) if span.from <= last.to => last.to = last.to.max(span.to),
            _ => found.push(span),
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(from: i64, to: i64) -> Span {
        Span::new(Length::mm(from).exact(), Length::mm(to).exact())
    }

    #[test]
    fn what_touches_does_not_overlap() {
        assert!(!mm(0, 10).overlaps(mm(10, 20)));
        assert!(mm(0, 11).overlaps(mm(10, 20)));
        assert_eq!(mm(0, 10).gap(mm(12, 20)), Length::mm(2));
    }

    #[test]
    fn taken_out_and_put_together() {
        // Common practice arithmetic, worked by hand.
        assert_eq!(left_free(mm(0, 100), [mm(90, 120), mm(10, 20), mm(15, 30)]), [mm(0, 10), mm(30, 90)]);
        assert_eq!(left_free(mm(0, 100), []), [mm(0, 100)]);
        assert_eq!(united([mm(5, 9), mm(0, 5), mm(20, 30)]), [mm(0, 9), mm(20, 30)]);
    }
}
