//! Layout and setting out.

use super::{count, draw, eighths, mistake, mm, same, sixteenths};
use crate::practice::exercise::Exercise;

pub(super) const EXERCISES: &[Exercise] = &[
    Exercise {
        calculator: "equal-bays",
        asks: "How wide is each clear bay?",
        answer: "/bay",
        empty: &["target"],
        draws: &[draw("/run", eighths(96, 200), mm(2400, 5000)), draw("/boards", count(7, 11), count(7, 11))],
        mistakes: &[
            mistake(
                0,
                "(L - n * b) / n",
                "You shared out as many bays as there are boards. Count the bays between the boards: with a board at both ends there is one bay less.",
            ),
            mistake(
                0,
                "(L - n * b) / (n + 1)",
                "You counted a bay beyond each end board. With boards at both ends there is one bay less than boards, not one more.",
            ),
            mistake(
                0,
                "L / m",
                "The boards’ own widths were left in: take all of them off the run before you share it out.",
            ),
            mistake(
                0,
                "(L - (n - 1) * b) / m",
                "One board was forgotten: as many widths come off as there are boards.",
            ),
        ],
    },
    Exercise {
        calculator: "rail-heights",
        asks: "How high is the lowest row of panels, clear between the rails?",
        answer: "/row",
        empty: &[],
        draws: &[draw("/top", eighths(60, 100), mm(1500, 2500)), draw("/base", sixteenths(64, 112), mm(90, 180))],
        mistakes: &[
            mistake(
                1,
                "(H - B) * p / q",
                "The rails’ own widths were left in: they come off before the rows are shared out.",
            ),
            mistake(1, "(H - n * w) * p / q", "The base was left in: the clear height begins on top of it."),
        ],
    },
    Exercise {
        calculator: "panel-proportion",
        asks: "How many times as high as wide is the field?",
        answer: "/proportion",
        empty: &[],
        draws: &[draw("/bay", eighths(9, 18), mm(220, 460)), draw("/row", eighths(24, 60), mm(600, 1500))],
        mistakes: &[
            mistake(0, "w / h", "That is width to height. Height goes over width."),
            mistake(
                1,
                "100 * t / c",
                "That is the share of the room that the boarding takes. The proportion is the field’s own: height over width.",
            ),
        ],
    },
    Exercise {
        calculator: "corner-boards",
        asks: "How wide is the first wall’s corner board ripped, so that both show alike?",
        answer: "/rip",
        empty: &[],
        draws: &[draw("/board", sixteenths(32, 64), mm(50, 100)), draw("/other", sixteenths(8, 18), mm(12, 28))],
        mistakes: &[
            mistake(
                0,
                "b",
                "The lap was forgotten: the second wall’s board covers the edge of the first by its own thickness.",
            ),
            mistake(0, "b - o", "You took the thickness off. The covered strip comes on top of what is to be seen."),
            mistake(0, "b + 2 * o", "You added the thickness twice: only one board covers this one."),
        ],
    },
    Exercise {
        calculator: "plate-clash",
        asks: "How much stays clear between the plate and the nearest board, with a bay at both ends of the run?",
        answer: "/clear",
        empty: &[],
        draws: &[
            draw("/plate_left", sixteenths(3271, 3276), mm(5192, 5202)),
            draw("/plate_right", sixteenths(3314, 3320), mm(5262, 5272)),
            draw("/plate_bottom", sixteenths(704, 720), mm(1100, 1140)),
        ],
        mistakes: &[
            mistake(
                1,
                "abs(c - d)",
                "That is how far the board would have to move. What is clear now is from the plate’s own edge to the board’s.",
            ),
            mistake(
                0,
                "g",
                "That is the bay. The plate stands in it: take the distance from the plate’s edge to the board’s.",
            ),
        ],
    },
    Exercise {
        calculator: "running-marks",
        asks: "Where is the right edge of the last board, from zero?",
        answer: "/last",
        empty: &[],
        draws: &[
            draw("/run", eighths(110, 190), mm(2800, 4800)),
            draw("/start", sixteenths(0, 32), mm(0, 40)),
            same("/boards", count(8, 12)),
        ],
        mistakes: &[
            mistake(1, "f + (n - 1) * (g + b)", "That is its left edge: the last board was forgotten."),
            mistake(1, "f + L - b", "That is its left edge: the last board was forgotten."),
            mistake(1, "L", "The tape does not begin at the run: add where the first board starts."),
            mistake(
                2,
                "f + (n - 1) * (k + b) + b",
                "You stepped with a block cut to the rounded bay. Its error adds up; every mark is worked out from zero.",
            ),
        ],
    },
    Exercise {
        calculator: "laser-offsets",
        asks: "How far from the datum line is the first height? Below is minus.",
        answer: "/offsets/0/offset",
        empty: &[],
        draws: &[
            draw("/datum", sixteenths(600, 700), mm(950, 1100)),
            draw("/heights/0", sixteenths(80, 1000), mm(100, 1600)),
        ],
        mistakes: &[
            mistake(0, "d - h", "The sign is turned round: the height less the datum, so that up is plus."),
            mistake(0, "h", "That is from the floor. The laser is your zero: take the datum off."),
        ],
    },
];
