//! Stock: what is bought and how it moves.

use super::{count, draw, eighths, mistake, mm, same, sixteenths, whole};
use crate::practice::exercise::{Exercise, Range};

pub(super) const EXERCISES: &[Exercise] = &[
    Exercise {
        calculator: "dressed-sizes",
        asks: "How wide is the dressed board?",
        answer: "/width",
        empty: &[],
        draws: &[
            same("/width", whole(4, 12, "in")),
            same("/thickness", Range { from: 3, to: 6, parts: 4, unit: "in" }),
        ],
        mistakes: &[
            mistake(0, "n", "That is the nominal size, from before the plane. The layout needs what is left."),
            mistake(0, "n - 12.7", "Half an inch comes off up to a nominal 7; wider boards lose three quarters."),
        ],
    },
    Exercise {
        calculator: "board-feet",
        asks: "How many board feet are that in all?",
        answer: "/all",
        empty: &[],
        draws: &[
            same("/boards", count(2, 24)),
            draw("/length", whole(6, 16, "ft"), whole(6, 16, "ft")),
            draw("/width", whole(4, 12, "in"), whole(4, 12, "in")),
        ],
        mistakes: &[
            mistake(1, "f", "That is one board: take it times the number of boards."),
            mistake(
                0,
                "f * n * 12",
                "The length was taken in inches: a board foot is 144 cubic inches, so length in feet goes with a divisor of 12.",
            ),
        ],
    },
    Exercise {
        calculator: "board-weight",
        asks: "What does the whole stack weigh?",
        answer: "/stack",
        empty: &[],
        draws: &[
            draw("/width", sixteenths(32, 96), mm(50, 150)),
            draw("/length", whole(8, 16, "ft"), Range { from: 24, to: 48, parts: 10, unit: "m" }),
            same("/boards", count(4, 24)),
        ],
        mistakes: &[
            mistake(1, "m", "That is one board."),
            mistake(1, "m * (n - 1)", "One board was forgotten."),
            mistake(
                0,
                "w * t * d * n / 1000000",
                "The length was left out: that is the stack’s weight for each metre of it.",
            ),
        ],
    },
    Exercise {
        calculator: "strips-from-sheet",
        asks: "How many strips come out of one sheet’s width?",
        answer: "/strips",
        empty: &[],
        draws: &[draw("/width", eighths(47, 50), mm(1200, 1260)), draw("/strip", sixteenths(32, 64), mm(50, 100))],
        mistakes: &[
            mistake(0, "floor((W - c) / w)", "The kerf was left out: every cut turns a strip of the sheet to dust."),
            mistake(0, "n - 1", "One too few: the last strip needs no cut after it."),
            mistake(0, "n + 1", "One too many: what is left over is narrower than a strip."),
        ],
    },
    Exercise {
        calculator: "board-movement",
        asks: "How much does it change between dampest and driest?",
        answer: "/change",
        empty: &[],
        draws: &[draw("/size", whole(8, 12, "in"), whole(1800, 4800, "mm")), same("/dampest", whole(11, 14, "%"))],
        mistakes: &[
            mistake(0, "s * c * M", "You used the moisture itself. Only the change counts: dampest less driest."),
            mistake(
                0,
                "s * (M - m) / 100",
                "You took each point of moisture as one part in a hundred of the size. It moves by its coefficient only.",
            ),
        ],
    },
    Exercise {
        calculator: "pieces-per-stick",
        asks: "How many pieces come out of one stick?",
        answer: "/pieces",
        empty: &[],
        draws: &[
            draw("/stick", whole(8, 16, "ft"), whole(2400, 4800, "mm")),
            draw("/piece", eighths(8, 24), Range { from: 20, to: 60, parts: 1, unit: "cm" }),
        ],
        mistakes: &[
            mistake(
                0,
                "floor((L + k) / (p + k)) + 1",
                "One too many: every cut takes its kerf, so that the last piece no longer fits.",
            ),
            mistake(
                0,
                "floor((L + k) / (p + k)) - 1",
                "One too few: the last piece needs no cut after it if it ends with the stick.",
            ),
        ],
    },
    Exercise {
        calculator: "joint-outlook",
        asks: "By what share is the first joint’s caulk stretched?",
        answer: "/joints/0/stretch",
        empty: &[],
        draws: &[
            draw(
                "/joints/0/opens",
                Range { from: 1, to: 8, parts: 64, unit: "in" },
                Range { from: 2, to: 16, parts: 8, unit: "mm" },
            ),
            draw("/joints/0/bead", sixteenths(2, 6), mm(3, 8)),
        ],
        mistakes: &[
            mistake(0, "100 * b / o", "You put the bead over the opening. What it opens by goes over what it was."),
            mistake(
                0,
                "100 * o / (b + o)",
                "You took the share of the opened joint. Stretch is counted on the bead as it was made.",
            ),
            mistake(0, "o / b", "That is a plain number: take it times 100 for a share in per cent."),
        ],
    },
];
