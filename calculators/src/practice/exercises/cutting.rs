//! At the saw.

use super::{count, draw, eighths, mistake, mm, same, sixteenths};
use crate::practice::exercise::{Exercise, Range};

pub(super) const EXERCISES: &[Exercise] = &[
    Exercise {
        calculator: "cut-lengths",
        asks: "How long is the longest of the boards named?",
        answer: "/longest",
        empty: &[],
        draws: &[
            draw("/rail", sixteenths(860, 980), mm(1400, 1600)),
            draw("/base", sixteenths(56, 112), mm(90, 180)),
            draw("/falls/4/fall", sixteenths(8, 24), mm(12, 40)),
        ],
        mistakes: &[
            mistake(2, "r - b - f", "The floor’s fall was left out: where the floor lies lower the board is longer."),
            mistake(
                2,
                "r + y - b - f",
                "The floor’s fall has the wrong sign: where the floor lies lower the board is longer.",
            ),
            mistake(2, "r - y - f", "The base was left in: the board stands on it."),
        ],
    },
    Exercise {
        calculator: "saw-angle",
        asks: "What is the saw set to, from a square cut?",
        answer: "/setting",
        empty: &[],
        draws: &[same("/corner", Range { from: 168, to: 192, parts: 2, unit: "°" })],
        mistakes: &[
            mistake(
                0,
                "A / 2",
                "That is half of the corner. The saw’s zero is a square cut: take half of the corner from 90°.",
            ),
            mistake(0, "45", "45° is for a corner of exactly 90°. Measure the corner and halve what it is."),
            mistake(0, "90 - A", "You took the whole corner: each of the two pieces takes half."),
        ],
    },
    Exercise {
        calculator: "compound-mitre",
        asks: "What is the saw’s mitre set to, with the moulding flat on the table?",
        answer: "/mitre",
        empty: &[],
        draws: &[same("/spring", count(33, 56)), same("/corner", count(85, 95))],
        mistakes: &[
            mistake(
                0,
                "90 - A / 2",
                "That is for a moulding that stands as on the wall. Flat on the table the spring angle counts as well.",
            ),
            mistake(
                0,
                "atan(sin(90 - s) / tan(A / 2))",
                "You measured the spring angle from the ceiling. Here it counts from the wall.",
            ),
            mistake(0, "b", "That is the bevel: the blade’s tilt. The mitre is the turn of the table."),
        ],
    },
    Exercise {
        calculator: "sloping-ceiling",
        asks: "By how much is each board’s long edge longer than its short one?",
        answer: "/differ",
        empty: &[],
        draws: &[
            draw("/left_height", eighths(30, 60), mm(800, 1500)),
            draw("/right_height", eighths(70, 96), mm(1800, 2400)),
            draw("/run", eighths(80, 120), mm(2000, 3000)),
            draw("/board", sixteenths(40, 80), mm(64, 130)),
        ],
        mistakes: &[
            mistake(2, "b * L / abs(h - k)", "You put run over rise. The height gained goes over the run."),
            mistake(
                2,
                "b * sin(a)",
                "You took the run for the slope: the board is measured level, so its width goes with the tangent.",
            ),
            mistake(2, "abs(h - k)", "That is over the whole run: only the board’s own width counts."),
        ],
    },
    Exercise {
        calculator: "scarf-joint",
        asks: "How long is the lap of the scarf, along the rail?",
        answer: "/lap",
        empty: &[],
        draws: &[draw("/thickness", sixteenths(8, 20), mm(12, 30)), same("/angle", count(22, 60))],
        mistakes: &[
            mistake(
                0,
                "t * tan(a)",
                "You measured the angle from a square cut. Here it lies between the cut and the face: divide by its tangent.",
            ),
            mistake(
                0,
                "t / sin(a)",
                "That is the length of the cut itself, through the thickness. Along the rail the lap is shorter.",
            ),
            mistake(0, "t", "The lap equals the thickness at 45° only."),
        ],
    },
    Exercise {
        calculator: "stair-rake",
        asks: "What is the angle of the rake?",
        answer: "/rake",
        empty: &[],
        draws: &[draw("/rise", eighths(54, 58), mm(1390, 1450)), draw("/run", eighths(84, 92), mm(2180, 2300))],
        mistakes: &[
            mistake(0, "atan(G / R)", "That is the angle from the plumb line: rise goes over run, not run over rise."),
            mistake(0, "asin(R / G)", "You took the run for the slope. Rise over run is a tangent."),
        ],
    },
    Exercise {
        calculator: "rail-kinks",
        asks: "How far from zero does the rail’s top edge turn at the foot of the stair?",
        answer: "/lower_top",
        empty: &[],
        draws: &[
            draw("/first_nosing", eighths(26, 40), mm(660, 1000)),
            draw("/riser", sixteenths(104, 124), mm(165, 200)),
            draw("/run", eighths(84, 92), mm(2180, 2300)),
        ],
        mistakes: &[
            mistake(
                1,
                "x",
                "You turned at the first nosing. The nosing lies one riser above the floor, so that the rake begins before it.",
            ),
            mistake(1, "x + r * G / R", "The turn was set out on the wrong side of the nosing: it comes before it."),
            mistake(
                1,
                "x - r * R / G",
                "You put rise over run. A riser is reached after a riser’s share of the run: run over rise.",
            ),
        ],
    },
];
