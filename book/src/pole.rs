//! The story pole: the trade sequence as marks on a stick, the book's only navigation.

use serde::Serialize;

/// One step as a mark.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct Mark {
    pub(crate) number: u8,
    pub(crate) name: String,
    pub(crate) path: String,
    /// Nothing can be done to the wall for a time after this step.
    pub(crate) wait: bool,
    pub(crate) here: bool,
}

/// The pole as a page shows it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct Pole {
    pub(crate) marks: Vec<Mark>,
    pub(crate) count: usize,
    pub(crate) gauge: Gauge,
}

/// The pole laid down at the foot of a narrow page.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct Gauge {
    pub(crate) width: usize,
    pub(crate) lines: Vec<Line>,
    pub(crate) pointer: Option<usize>,
    pub(crate) last: Option<Mark>,
    pub(crate) next: Option<Mark>,
}

/// A mark of the gauge: place, depth and line weight.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub(crate) struct Line {
    pub(crate) x: usize,
    pub(crate) depth: usize,
    pub(crate) class: &'static str,
}

const SPACING: usize = 20;

impl Pole {
    /// The pole with the present step pointed out, if the page is one.
    pub(crate) fn at(marks: &[Mark], step: Option<u8>) -> Self {
        let marks: Vec<Mark> =
            marks.iter().map(|mark| Mark { here: Some(mark.number) == step, ..mark.clone() }).collect();
        let here = marks.iter().position(|mark| mark.here);
        let mut lines = Vec::with_capacity(marks.len() * 2);
        for at in 0..marks.len() {
            let x = at * SPACING + SPACING / 2;
            let (depth, class) = if here == Some(at) { (30, "cut") } else { (22, "medium") };
            lines.push(Line { x, depth, class });
            lines.push(Line { x: x + SPACING / 2, depth: 9, class: "thin soft" });
        }
        let gauge = Gauge {
            width: marks.len() * SPACING,
            lines,
            pointer: here.map(|at| at * SPACING + SPACING / 2),
            last: here.and_then(|at| at.checked_sub(1)).and_then(|at| marks.get(at)).cloned(),
            next: match here {
                Some(at) => marks.get(at + 1),
                None => marks.first(),
            }
            .cloned(),
        };
        Self { count: marks.len(), marks, gauge }
    }
}
