//! How dusty sanding makes a shut room.

use serde_json::json;

use super::dust;
use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, Within, kind};

pub(crate) struct SandingDust;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// That is sanded.
    #[field("Area")]
    area: Physical<kind::Area, 10, 1_000_000>,
    /// Taken off.
    #[field("Thickness taken off", usual = ["0.02 mm", "0.5 mm"])]
    taken: Within<1, 10_000>,
    /// Of what is sanded: fibreboard near 750 kg/m³, joint compound near 1000.
    #[field("Density")]
    density: Physical<kind::Density, 100_000, 2_500_000>,
    /// Of the dust, the share that the extraction at the tool does not catch.
    #[field("Gets past the extraction", usual = ["3 %", "20 %"])]
    lost: Physical<kind::Percent, 0, 100_000>,
    /// Length times width times height.
    #[field("Room")]
    room: Physical<kind::RoomVolume, 1_000, 100_000_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// If it all hung in the air at once.
    #[field("Dust in the air")]
    level: Amount<kind::DustConcentration>,
    /// That is made.
    #[field("Dust made")]
    made: Amount<kind::Mass>,
    /// That gets past the extraction.
    #[field("Dust let go")]
    let_go: Amount<kind::Mass>,
}

impl Calculator for SandingDust {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "sanding-dust",
        title: "Dust from sanding",
        question: "How much dust does this make, and what is left in the air?",
        step: 12,
        search: &["dust", "extraction", "sander", "vacuum", "MDF dust"],
        headline: &["/level", "/made"],
        list: None,
        cautions: &["sanding-dust", "respirator-limits"],
        sources: &[
            Source::new(GEOMETRY, "area times thickness times density, over the room", Standing::Derived),
            dust::LIMIT_SOURCES[1],
            dust::LIMIT_SOURCES[3],
        ],
    };

    fn example(units: Units) -> Example {
        let input = match units {
            Units::Imperial => {
                json!({ "area": "107.64 ft2", "taken": "0.1 mm", "density": "750 kg/m3", "lost": "3 %", "room": "2093 ft3" })
            }
            Units::Metric => {
                json!({ "area": "10 m2", "taken": "0.1 mm", "density": "750 kg/m3", "lost": "3 %", "room": "59.3 m3" })
            }
        };
        let made = if units == Units::Metric { "0.75 kg" } else { "1.65 lb" };
        Example {
            input,
            expects: vec![("/result/made/text", json!(made))],
            checked_against: "by hand: 10 x 0.0001 x 750 = 0.75 kg; 22.5 g / 59.3 m³ = 379 mg/m³",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let made = input.area.get() * input.taken.get().in_m() * input.density.get();
        let let_go = made * input.lost.get() / 100.0;
        let level = let_go * 1e6 / input.room.get();
        let kg = Amount::<kind::Mass>::of;
        let mg = Amount::<kind::DustConcentration>::of;
        let working = vec![
            Step::new("dust made")
                .by("A * d / 1000 * g")
                .given("A", "area", input.area)
                .given("d", "thickness taken off", input.taken)
                .given("g", "density", input.density)
                .gives("m", "dust made", kg(made)),
            Step::new("dust let go")
                .by("m * x / 100")
                .given("m", "dust made", kg(made))
                .given("x", "gets past the extraction", input.lost)
                .gives("l", "dust let go", kg(let_go)),
            Step::new("in the air of the shut room")
                .by("l * 1000000 / V")
                .given("l", "dust let go", kg(let_go))
                .given("V", "room", input.room)
                .gives("c", "dust in the air", mg(level)),
        ];
        let recommended = dust::DUST_LIMITS[2];
        let notes = vec![Note::check(
            Words::new("{} at its worst, compared with {} over a day for {}. Most of it settles: vacuum, do not sweep; extraction at the tool and a mask chosen by the assessment.")
                .with(mg(level)).with(mg(recommended.mg_m3)).with(recommended.agent),
        )];
        Ok(Answer { result: Output { level: mg(level), made: kg(made), let_go: kg(let_go) }, working, notes })
    }
}
