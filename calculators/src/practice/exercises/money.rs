//! Hours, cost and price.

use super::{count, mistake, money, same, whole};
use crate::practice::exercise::{Exercise, Range};

pub(super) const EXERCISES: &[Exercise] = &[
    Exercise {
        calculator: "labour-hours",
        asks: "How many days is the crew on the job?",
        answer: "/days",
        empty: &[],
        draws: &[
            same("/lines/1/count", count(12, 60)),
            same("/lines/2/count", count(4, 20)),
            same("/lines/3/count", count(20, 80)),
            same("/lines/3/each", Range { from: 5, to: 5, parts: 100, unit: "h" }),
            same("/crew", count(2, 4)),
        ],
        mistakes: &[
            mistake(4, "H / d", "The crew was left out: those are days for one person alone."),
            mistake(4, "H / c", "Those are hours for each of the crew: divide by the hours in a day."),
            mistake(4, "H * c / d", "You multiplied by the crew. More hands, fewer days: divide."),
            mistake(4, "H", "Those are the hours of all together."),
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
        calculator: "expected-duration",
        asks: "Which time do you write into the programme?",
        answer: "/expected",
        empty: &[],
        draws: &[same("/best", whole(1, 3, "h")), same("/likely", whole(4, 6, "h")), same("/worst", whole(8, 16, "h"))],
        mistakes: &[
            mistake(
                0,
                "(a + m + b) / 3",
                "You gave all three the same weight. The usual time counts four times, the two ends once each.",
            ),
            mistake(0, "(a + b) / 2", "You took the middle of best and worst. The usual time counts four times."),
            mistake(
                0,
                "m",
                "That is the usual time. A task runs over more easily than under; the three together say by how much.",
            ),
            mistake(0, "(a + 4 * m + b) / 3", "You divided by three. Weights of one, four and one make six."),
        ],
    },
    Exercise {
        calculator: "critical-path",
        asks: "After how many hours is everything done?",
        answer: "/duration",
        empty: &[],
        draws: &[
            same("/tasks/0/hours", count(2, 6)),
            same("/tasks/1/hours", count(2, 5)),
            same("/tasks/4/hours", count(1, 3)),
            same("/tasks/4/after/0/wait", count(4, 8)),
        ],
        mistakes: &[
            mistake(5, "f1 + t", "The wait before the last task was left out: coats dry though nobody works."),
            mistake(4, "f1 + w1 + t", "That is the end of the last coat. The tape still has to come off."),
            mistake(
                4,
                "f1 + t + 1.5",
                "The wait between the coats was left out: it is nobody’s work, and takes its hours all the same.",
            ),
        ],
    },
    Exercise {
        calculator: "stage-payments",
        asks: "How much is due at the first stage, tax included?",
        answer: "/stages/0/amount",
        empty: &[],
        draws: &[same("/price", money(1200, 9000)), same("/tax", whole(5, 21, "%"))],
        mistakes: &[
            mistake(2, "P * q / 100", "The tax was left out: the shares are taken of what is paid in all."),
            mistake(2, "S / 3", "You divided by the number of stages. Each stage has its own share."),
            mistake(2, "S - S * q / 100", "That is what remains after the first stage."),
        ],
    },
    Exercise {
        calculator: "change-note",
        asks: "What do you charge for the change before tax?",
        answer: "/price",
        empty: &[],
        draws: &[same("/hours", whole(1, 9, "h")), same("/materials", money(20, 300)), same("/rate", money(35, 70))],
        mistakes: &[
            mistake(
                1,
                "T * (1 + m / 100)",
                "That is a markup on the cost. A margin is a share of the price: divide the cost by one less the margin.",
            ),
            mistake(1, "T", "That is the cost. The margin comes on top."),
            mistake(
                0,
                "(L + M) / (1 - m / 100)",
                "Contingency and overhead were left out: a small change carries them as the job does.",
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
];
