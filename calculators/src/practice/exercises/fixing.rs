//! Fixing, plates and openings.

use super::{draw, eighths, mistake, mm, sixteenths, whole};
use crate::practice::exercise::Exercise;

pub(super) const EXERCISES: &[Exercise] = &[
    Exercise {
        calculator: "nail-choice",
        asks: "What is the shortest nail that still goes 3/4 in (19 mm) into the stud?",
        answer: "/from",
        empty: &[],
        draws: &[draw("/trim", sixteenths(8, 20), mm(12, 30)), draw("/plasterboard", sixteenths(6, 12), mm(9, 18))],
        mistakes: &[
            mistake(
                0,
                "t + d",
                "The plasterboard was forgotten: the nail goes through it first and nothing in it holds.",
            ),
            mistake(0, "t + p", "That only reaches the stud. Add the least depth in the stud."),
            mistake(
                1,
                "t + p + e",
                "That is where cables may begin: a nail stays below it. The shortest that holds was asked.",
            ),
        ],
    },
    Exercise {
        calculator: "nail-holding",
        asks: "How deep does the nail go into the stud?",
        answer: "/penetration",
        empty: &[],
        draws: &[
            draw("/nail", eighths(2, 3), mm(50, 75)),
            draw("/board", sixteenths(6, 16), mm(9, 22)),
            draw("/plasterboard", sixteenths(6, 10), mm(9, 16)),
        ],
        mistakes: &[
            mistake(
                0,
                "l - b",
                "The plasterboard was forgotten: it holds nothing, and the nail goes through it first.",
            ),
            mistake(0, "l - p", "The board was forgotten: it is what the nail holds, not what it is held by."),
            mistake(0, "l", "That is the nail. Board and plasterboard come off."),
        ],
    },
    Exercise {
        calculator: "adhesive",
        asks: "How many cartridges of adhesive go on the list?",
        answer: "/cartridges",
        empty: &[],
        draws: &[draw("/boards", whole(60, 400, "ft"), whole(20, 120, "m"))],
        mistakes: &[
            mistake(2, "floor(V / C)", "Rounded down: a cartridge that is begun must be bought."),
            mistake(
                0,
                "ceil(pi * b ^ 2 / 4 * L / 1000 / C)",
                "A straight bead without loss: the bead is laid in waves, and some stays in the nozzle.",
            ),
            mistake(
                0,
                "ceil(pi * b ^ 2 * L / 1000 * w / (1 - x / 100) / C)",
                "You took the diameter for the radius: that is four times the glue.",
            ),
        ],
    },
    Exercise {
        calculator: "notch-neck",
        asks: "How wide is the neck beside the notch, cut 1/16 in (1.5 mm) clear of the plate?",
        answer: "/neck",
        empty: &[],
        draws: &[draw("/board", sixteenths(36, 72), mm(60, 120)), draw("/overlap", sixteenths(6, 20), mm(10, 30))],
        mistakes: &[
            mistake(0, "w - o", "The clearance of the cut was forgotten: the notch is wider than the plate."),
            mistake(0, "w - o - 2 * c", "Clearance on one side only: a notch is open at the board’s edge."),
        ],
    },
    Exercise {
        calculator: "handrail-clearance",
        asks: "How far must the handrail be brought out to have 1 1/2 in (38 mm) clear?",
        answer: "/bring_out",
        empty: &[],
        draws: &[draw("/clear", sixteenths(24, 32), mm(38, 50)), draw("/projection", sixteenths(12, 18), mm(18, 28))],
        mistakes: &[
            mistake(
                1,
                "h",
                "That is the space left behind the rail. What is missing from the space asked for was the question.",
            ),
            mistake(1, "p", "You brought it out by the trim alone. Some space was to spare before, or was missing."),
            mistake(1, "r", "That is the whole space asked for. Part of it is there already."),
        ],
    },
    Exercise {
        calculator: "box-set-back",
        asks: "How deep an extension does the box need?",
        answer: "/extension",
        empty: &[],
        draws: &[draw("/set_back", sixteenths(1, 8), mm(2, 12)), draw("/added", sixteenths(6, 18), mm(9, 28))],
        mistakes: &[
            mistake(0, "t", "The set-back of today was forgotten: the box already lies behind the old wall."),
            mistake(0, "t - b", "You took the set-back off. It comes on top of the board."),
            mistake(1, "V", "That is the screw of the device."),
        ],
    },
];
