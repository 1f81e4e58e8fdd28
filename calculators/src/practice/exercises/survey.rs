//! What is asked at the survey and before it.

use super::{count, draw, eighths, mistake, mm, same, sixteenths};
use crate::practice::exercise::Exercise;

pub(super) const EXERCISES: &[Exercise] = &[
    Exercise {
        calculator: "lead-paint-area",
        asks: "How much painted surface is disturbed in this room?",
        answer: "/area",
        empty: &[],
        draws: &[
            draw("/components/0/length", eighths(40, 90), mm(1000, 2300)),
            same("/components/0/count", count(6, 16)),
            draw("/components/1/length", eighths(100, 220), mm(2500, 5600)),
        ],
        mistakes: &[
            mistake(
                0,
                "(f1 * l1 + f2 * l2) / 1000000",
                "You took one board of each kind. Every board that is rubbed down counts.",
            ),
            mistake(
                0,
                "f1 * l1 * n1 / 1000000",
                "The rail was left out: everything painted that is rubbed down in the room is added up.",
            ),
            mistake(
                0,
                "2 * (f1 * l1 * n1 + f2 * l2 * n2) / 1000000",
                "You counted two faces. Only the painted face that is disturbed counts.",
            ),
        ],
    },
    Exercise {
        calculator: "heat-clearance",
        asks: "How much is left between the heat and the face of the trim?",
        answer: "/have",
        empty: &[],
        draws: &[draw("/distance", sixteenths(24, 96), mm(40, 150)), draw("/projection", sixteenths(4, 20), mm(6, 30))],
        mistakes: &[
            mistake(0, "d", "The trim was left out: it stands out from the wall, towards the heat."),
            mistake(0, "d + p", "The trim was added. It takes its thickness off the distance."),
        ],
    },
    Exercise {
        calculator: "closing-checks",
        asks: "How far is the sum of the parts from the length of the whole wall?",
        answer: "/checks/1/out",
        empty: &[],
        draws: &[
            draw("/parts/0", sixteenths(548, 564), mm(875, 891)),
            draw("/parts/3", sixteenths(944, 960), mm(1503, 1519)),
            draw("/parts/4", sixteenths(706, 722), mm(1125, 1141)),
        ],
        mistakes: &[
            mistake(
                1,
                "abs(S - L) / 5",
                "You shared the difference out among the parts. It is not shared: one reading is wrong, and the wall is measured again.",
            ),
            mistake(1, "S", "That is the sum itself. The check is how far it lies from the length read in one go."),
            mistake(
                1,
                "2 * abs(S - L)",
                "You counted the difference once for each reading. It is one difference between two lengths.",
            ),
        ],
    },
    Exercise {
        calculator: "corner-angle",
        asks: "What is the angle of the corner?",
        answer: "/angle",
        empty: &[],
        draws: &[
            draw("/leg", eighths(22, 26), mm(550, 650)),
            draw("/other_leg", eighths(22, 26), mm(550, 650)),
            draw("/across", sixteenths(528, 554), mm(820, 870)),
        ],
        mistakes: &[
            mistake(
                0,
                "180 - acos((a ^ 2 + b ^ 2 - c ^ 2) / (2 * a * b))",
                "A sign was turned round: the diagonal’s square comes off the squares of the legs. That is the angle on the other side.",
            ),
            mistake(0, "A / 2", "That is half of the corner. The corner itself was asked."),
            mistake(0, "A * pi / 180", "The calculator stands on radians: set it to degrees."),
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
        calculator: "arc-radius",
        asks: "What is the radius of the curve?",
        answer: "/radius",
        empty: &[],
        draws: &[draw("/chord", eighths(36, 72), mm(900, 1800)), draw("/rise", sixteenths(8, 32), mm(12, 50))],
        mistakes: &[
            mistake(
                0,
                "c ^ 2 / (2 * s) + s / 2",
                "You put the whole chord where half of it belongs: the square is four times too large.",
            ),
            mistake(0, "2 * R", "That is the diameter. The radius is half of it."),
            mistake(0, "c ^ 2 / (8 * s)", "Half of the rise was forgotten at the end."),
            mistake(
                0,
                "c ^ 2 / (8 * s) - s / 2",
                "Half of the rise was taken off. That gives the distance from the middle of the circle to the chord; the radius goes on to the curve.",
            ),
        ],
    },
];
