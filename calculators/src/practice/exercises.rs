//! The exercises, in the order of the trade. Mistakes are common practice, no source.

use super::exercise::{Draw, Exercise, Mistake, Range};

/// The exercise of a calculator.
pub fn exercise(calculator: &str) -> Option<&'static Exercise> {
    EXERCISES.iter().find(|exercise| exercise.calculator == calculator)
}

const fn draw(field: &'static str, imperial: Range, metric: Range) -> Draw {
    Draw { field, imperial, metric }
}

/// Eighths of an inch, from and to in whole inches.
const fn eighths(from: i64, to: i64) -> Range {
    Range { from: from * 8, to: to * 8, parts: 8, unit: "in" }
}

/// Sixteenths of an inch, from and to in sixteenths.
const fn sixteenths(from: i64, to: i64) -> Range {
    Range { from, to, parts: 16, unit: "in" }
}

const fn mm(from: i64, to: i64) -> Range {
    Range { from, to, parts: 1, unit: "mm" }
}

const fn count(from: i64, to: i64) -> Range {
    Range { from, to, parts: 1, unit: "" }
}

const fn money(from: i64, to: i64) -> Range {
    Range { from: from * 100, to: to * 100, parts: 100, unit: "¤" }
}

const fn whole(from: i64, to: i64, unit: &'static str) -> Range {
    Range { from, to, parts: 1, unit }
}

/// The same in both unit systems.
const fn same(field: &'static str, range: Range) -> Draw {
    Draw { field, imperial: range, metric: range }
}

const fn mistake(step: usize, formula: &'static str, words: &'static str) -> Mistake {
    Mistake { step, formula, words }
}

/// All exercises.
pub static EXERCISES: &[Exercise] = &[
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
        calculator: "out-of-square",
        asks: "How long must the diagonal be if the corners are square?",
        answer: "/square",
        empty: &[],
        draws: &[draw("/side", eighths(34, 38), mm(1200, 1240)), draw("/other", eighths(46, 50), mm(2400, 2480))],
        mistakes: &[
            mistake(1, "a + b", "You added the sides. Add their squares, then take the root."),
            mistake(1, "(a + b) / 2", "That is the mean of the sides. Add their squares, then take the root."),
        ],
    },
    Exercise {
        calculator: "price-at-margin",
        asks: "What is the price before tax at this margin?",
        answer: "/price",
        empty: &[],
        draws: &[same("/cost", money(800, 9000)), same("/margin", whole(10, 40, "%"))],
        mistakes: &[
            mistake(
                0,
                "C * (1 + m / 100)",
                "That is a markup on the cost. A margin is a share of the price: divide the cost by one less the margin.",
            ),
            mistake(
                0,
                "C * (1 - m / 100)",
                "You took the margin off the cost. The price is above the cost: divide by one less the margin.",
            ),
        ],
    },
    Exercise {
        calculator: "margin-of-markup",
        asks: "Which margin does this markup leave?",
        answer: "/margin",
        empty: &[],
        draws: &[same("/markup", whole(8, 90, "%"))],
        mistakes: &[
            mistake(
                0,
                "u",
                "That is the markup itself. The margin is counted from the price, which is larger than the cost.",
            ),
            mistake(
                0,
                "100 * u / (100 - u)",
                "That is the markup a margin of this size would need: the other way round.",
            ),
        ],
    },
    Exercise {
        calculator: "job-cost",
        asks: "What does the job cost the shop, all told?",
        answer: "/total",
        empty: &[],
        draws: &[
            same("/hours", whole(20, 120, "h")),
            same("/materials", money(300, 2500)),
            same("/rate", money(35, 70)),
        ],
        mistakes: &[
            mistake(
                1,
                "L + M",
                "Contingency and overhead are missing: both are shares of labour and materials together.",
            ),
            mistake(1, "L + M + C", "Overhead is missing."),
            mistake(
                1,
                "(L + M + C) * (1 + o / 100)",
                "You took overhead on the contingency as well: both are shares of labour and materials.",
            ),
        ],
    },
    Exercise {
        calculator: "order-quantity",
        asks: "How many must be bought before packs are counted?",
        answer: "/gross",
        empty: &[],
        draws: &[same("/net", count(30, 400)), same("/waste", whole(5, 20, "%"))],
        mistakes: &[
            mistake(
                0,
                "n * (1 + w / 100)",
                "You added the waste on top. Here it is a share of what is bought: divide by one less the waste.",
            ),
            mistake(0, "n", "The waste was left out."),
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
        calculator: "board-movement",
        asks: "How much does it change between dampest and driest?",
        answer: "/change",
        empty: &[],
        draws: &[draw("/size", whole(8, 12, "in"), whole(1800, 4800, "mm")), same("/dampest", whole(11, 14, "%"))],
        mistakes: &[mistake(
            0,
            "s * c * M",
            "You used the moisture itself. Only the change counts: dampest less driest.",
        )],
    },
    Exercise {
        calculator: "air-changes",
        asks: "How many minutes must the extraction run until the share named is cleared?",
        answer: "/minutes",
        empty: &[],
        draws: &[
            draw("/room", whole(900, 3200, "ft3"), whole(25, 90, "m3")),
            draw("/extraction", whole(200, 900, "cfm"), whole(300, 1500, "m3/h")),
        ],
        mistakes: &[
            mistake(
                0,
                "60 / n",
                "One change of air does not clear a room: fresh and foul air mix, and what is left falls by the same share each time.",
            ),
            mistake(
                0,
                "N / k / n * 60",
                "The mixing factor was left out: corners clear later than the middle of the room.",
            ),
            mistake(0, "N / n", "That is in hours: take it times 60."),
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
        calculator: "nail-choice",
        asks: "What is the shortest nail that still holds in the stud?",
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
        ],
    },
    Exercise {
        calculator: "notch-neck",
        asks: "How wide is the neck that is left beside the notch?",
        answer: "/neck",
        empty: &[],
        draws: &[draw("/board", sixteenths(36, 72), mm(60, 120)), draw("/overlap", sixteenths(6, 20), mm(10, 30))],
        mistakes: &[
            mistake(0, "w - o", "The clearance of the cut was forgotten: the notch is wider than the plate."),
            mistake(0, "w - o - 2 * c", "Clearance on one side only: a notch is open at the board’s edge."),
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
        calculator: "dust-average",
        asks: "What is the average over an eight-hour shift?",
        answer: "/mean",
        empty: &[],
        draws: &[
            same("/stretches/0/level", whole(6, 20, "mg/m3")),
            same("/stretches/1/level", whole(1, 5, "mg/m3")),
            same("/stretches/2/hours", whole(1, 1, "h")),
        ],
        mistakes: &[
            mistake(
                0,
                "(c1 * t1 + c2 * t2 + c3 * t3) / (t1 + t2 + t3)",
                "You divided by the hours measured. The limits are set for a shift of eight hours: divide by eight.",
            ),
            mistake(0, "(c1 + c2 + c3) / 3", "You took the mean of the levels: a level counts by how long it lasted."),
        ],
    },
    Exercise {
        calculator: "caulk",
        asks: "How many cartridges of caulk go on the list, with one more where the last would be used to over 95 %?",
        answer: "/cartridges",
        empty: &[],
        draws: &[draw("/edges", whole(60, 600, "ft"), whole(20, 180, "m")), draw("/leg", sixteenths(2, 4), mm(3, 6))],
        mistakes: &[
            mistake(2, "floor(c)", "Rounded down: a cartridge that is begun must be bought."),
            mistake(2, "ceil(c * 2)", "Twice too many: a fillet is half of a square."),
        ],
    },
    Exercise {
        calculator: "paint-film",
        asks: "What must the gauge read in the wet film?",
        answer: "/wet_film",
        empty: &[],
        draws: &[
            draw("/dry_film", Range { from: 10, to: 25, parts: 10, unit: "mil" }, whole(25, 60, "µm")),
            same("/volume_solids", whole(30, 50, "%")),
            same("/thinner", whole(2, 10, "%")),
        ],
        mistakes: &[
            mistake(0, "d * s / 100", "You multiplied by the solids. The wet film is the thicker one: divide."),
            mistake(0, "d / (s / 100)", "The thinner was left out: it goes on wet with the paint and leaves no film."),
        ],
    },
];
