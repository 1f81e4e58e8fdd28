//! Filler, caulk, tape and coats.

use super::{count, draw, eighths, mistake, mm, same, sixteenths, whole};
use crate::practice::exercise::{Exercise, Range};

pub(super) const EXERCISES: &[Exercise] = &[
    Exercise {
        calculator: "filler",
        asks: "How long is it from the first filling to the sanding?",
        answer: "/wait",
        empty: &[],
        draws: &[
            draw("/deepest", sixteenths(3, 14), mm(5, 22)),
            draw("/pass", sixteenths(2, 4), mm(3, 6)),
            same("/dries", Range { from: 2, to: 8, parts: 2, unit: "h" }),
        ],
        mistakes: &[
            mistake(2, "t", "That is one pass. A deep hole is filled in several, and each dries before the next."),
            mistake(1, "floor(d / p) * t", "Rounded down: what is left of the depth is a pass of its own."),
            mistake(
                1,
                "d / p * t",
                "You counted part of a pass. A thin pass dries by itself too: round the number of passes up.",
            ),
        ],
    },
    Exercise {
        calculator: "grit-ladder",
        asks: "How many discs or sheets are that in all, with no step longer than 1.8?",
        answer: "/all",
        empty: &[],
        draws: &[
            draw("/area", whole(15, 120, "ft2"), Range { from: 14, to: 110, parts: 10, unit: "m2" }),
            draw("/each", whole(15, 35, "ft2"), Range { from: 14, to: 33, parts: 10, unit: "m2" }),
        ],
        mistakes: &[
            mistake(1, "n", "Those are of one grit. Every rung of the ladder takes its own."),
            mistake(2, "2 * n", "A rung was skipped: from P120 straight to P220 is a step of 1.84. P150 goes between."),
            mistake(1, "floor(A / e) * 3", "Rounded down: a disc that is begun must be there."),
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
        calculator: "cartridge-yield",
        asks: "How many cartridges go on the list?",
        answer: "/cartridges",
        empty: &[],
        draws: &[draw("/length", whole(120, 900, "ft"), whole(20, 120, "m")), same("/lost", whole(12, 30, "%"))],
        mistakes: &[
            mistake(2, "floor(L / (l * (1 - w / 100)))", "Rounded down: a cartridge that is begun must be bought."),
            mistake(2, "ceil(L / l)", "The loss was left out: some stays in the nozzle, some on the cloth."),
        ],
    },
    Exercise {
        calculator: "masking-rolls",
        asks: "How much tape is that, laps counted?",
        answer: "/tape",
        empty: &[],
        draws: &[draw("/edges", whole(60, 400, "ft"), whole(20, 120, "m")), same("/extra", whole(8, 20, "%"))],
        mistakes: &[
            mistake(0, "E", "The laps were left out: every corner and every join takes some more."),
            mistake(0, "E / (1 - x / 100)", "You took it as a share of the tape. Here it is added to the edges."),
            mistake(0, "E * x / 100", "That is the addition alone."),
        ],
    },
    Exercise {
        calculator: "paint-area",
        asks: "How much surface takes a coat?",
        answer: "/total",
        empty: &[],
        draws: &[
            draw("/width", eighths(110, 200), mm(2800, 5000)),
            same("/boards", count(7, 14)),
            draw("/base_height", sixteenths(56, 112), mm(90, 180)),
        ],
        mistakes: &[
            mistake(3, "F", "Faces only. Boards have edges, and the base is painted as well."),
            mistake(3, "F + R + B", "The boards’ edges were left out."),
            mistake(3, "F + E + R", "The base was left out."),
            mistake(
                3,
                "F + 2 * E + R + B",
                "The boards’ edges were counted twice: each board has two, and both are in the count.",
            ),
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
    Exercise {
        calculator: "spray-passes",
        asks: "How many passes does the height take?",
        answer: "/passes",
        empty: &[],
        draws: &[
            draw("/height", eighths(40, 96), mm(1000, 2400)),
            draw("/fan", whole(6, 12, "in"), whole(150, 300, "mm")),
        ],
        mistakes: &[
            mistake(
                2,
                "ceil((H - f) / p)",
                "The first pass was forgotten: it covers a whole fan, and the others go on from there.",
            ),
            mistake(2, "ceil(H / f)", "The overlap was left out: each pass covers half of the one before."),
            mistake(
                2,
                "ceil(H / p) + 1",
                "One too many: the first pass covers a whole fan, not only the distance from pass to pass.",
            ),
        ],
    },
];
