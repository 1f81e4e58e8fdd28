//! Air, dust, noise and vibration.

use super::{draw, mistake, same, whole};
use crate::practice::exercise::Exercise;

pub(super) const EXERCISES: &[Exercise] = &[
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
        calculator: "noise-dose",
        asks: "What share of the day’s dose is that, where eight hours at 90 dB(A) are all of it and five decibels more halve the time?",
        answer: "/regulation_dose",
        empty: &[],
        draws: &[
            same("/stretches/0/level", whole(92, 102, "dB(A)")),
            same("/stretches/1/level", whole(84, 91, "dB(A)")),
            same("/stretches/1/hours", whole(2, 5, "h")),
        ],
        mistakes: &[
            mistake(
                0,
                "100 * (t1 + t2) / 8",
                "The levels were left out: five decibels more halve the time that is allowed.",
            ),
            mistake(
                0,
                "N",
                "That is the recommended dose, from 85 dB(A) and halved every three decibels. The regulation counts from 90 and by fives.",
            ),
            mistake(
                0,
                "100 * t1 * 2 ^ ((L1 - 90) / 5) / 8",
                "Only the first stretch was counted: the shares of all stretches are added up.",
            ),
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
        calculator: "vibration-dose",
        asks: "What is the daily value for these hands?",
        answer: "/daily",
        empty: &[],
        draws: &[
            same("/tools/0/level", whole(4, 9, "m/s2")),
            same("/tools/1/level", whole(2, 5, "m/s2")),
            same("/tools/1/hours", whole(2, 4, "h")),
        ],
        mistakes: &[
            mistake(
                0,
                "(a1 * t1 + a2 * t2) / 8",
                "You took the plain mean. Squares are averaged, then the root is taken: a strong tool counts more.",
            ),
            mistake(
                0,
                "sqrt((a1 ^ 2 * t1 + a2 ^ 2 * t2) / (t1 + t2))",
                "You divided by the hours worked with the tools. The value is for a day of eight hours.",
            ),
            mistake(0, "sqrt(a1 ^ 2 + a2 ^ 2)", "The hours were left out: a tool counts for as long as it runs."),
        ],
    },
];
