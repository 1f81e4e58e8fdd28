//! How fast the gun walks, how far apart the passes lie, and how many there are.

use serde_json::json;

use crate::catalogue::works::{GEOMETRY, PRACTICE};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Exact, Physical, Units, Within, kind};

/// Usual speed of a hand with a gun, mm/s: 8 to 30 in/s. Common practice, no source.
const USUAL_SPEED: (f64, f64) = (200.0, 760.0);

pub(crate) struct SprayPass;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Of the tip at working pressure, from its chart or by weighing the pot.
    #[field("Flow of the tip")]
    flow: Physical<kind::LiquidFlow, 20, 5_000>,
    /// On a card at working distance.
    #[field("Fan width")]
    fan: Within<25_000, 500_000>,
    /// Of each pass over the one before.
    #[field("Overlap", usual = ["40 %", "60 %"])]
    overlap: Physical<kind::Percent, 25_000, 75_000>,
    /// Of what leaves the gun, the share that stays on the work.
    #[field("Transfer efficiency", usual = ["40 %", "80 %"])]
    transfer: Physical<kind::Percent, 15_000, 95_000>,
    /// What the gauge should read after the coat.
    #[field("Wet film")]
    wet_film: Physical<kind::Film, 25_000, 500_000>,
    /// Of the field, from the lowest to the highest edge.
    #[field("Height of the field")]
    height: Within<25_000, 6_000_000>,
    /// Of the field, for the time a coat takes.
    #[field("Width of the field")]
    width: Within<25_000, 60_000_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Of the hand, steadily.
    #[field("Speed of the gun")]
    speed: Amount<kind::HandSpeed>,
    /// Over the whole height.
    #[field("Passes")]
    passes: u32,
    /// From the middle of one pass to the middle of the next.
    #[field("From pass to pass")]
    pitch: Exact,
    /// Trigger time alone, without turning and moving.
    #[field("Trigger time for the field")]
    time: Amount<kind::Minutes>,
}

impl Calculator for SprayPass {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "spray-passes",
        title: "Spray passes",
        question: "How fast do I walk, and how many passes is it?",
        step: 15,
        search: &["gun speed", "overlap", "tip", "fan", "passes", "airless", "too fast", "too slow"],
        headline: &["/speed", "/passes", "/pitch"],
        list: None,
        cautions: &["injection", "spray-mist"],
        sources: &[
            Source::new(GEOMETRY, "what leaves the gun in a second covers speed times pitch", Standing::Derived),
            Source::new(PRACTICE, "half of each pass overlaps; 200 to 760 mm/s", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "flow": "0.12 gpm", "fan": "10 in", "overlap": "50 %", "transfer": "65 %", "wet_film": "4 mil", "height": "56 1/2 in", "width": "173 3/8 in" }),
                expects: vec![
                    ("/result/passes", json!(11)),
                    ("/result/pitch/tape", json!("5 in")),
                    ("/result/speed/text", json!("15 in/s")),
                ],
                checked_against: "by hand: 0.12 x 231 x 0.65 / 0.004 / 5 / 60 = 15.0 in/s; (56.5 - 10) / 5 = 9.3, so 10 + 1",
            },
            Units::Metric => Example {
                input: json!({ "flow": "0.2 L/min", "fan": "150 mm", "overlap": "50 %", "transfer": "60 %", "wet_film": "100 um", "height": "1435 mm", "width": "4404 mm" }),
                expects: vec![("/result/passes", json!(19)), ("/result/speed/text", json!("267 mm/s"))],
                checked_against: "by hand: 200000 x 0.6 / 0.1 / 75 / 60 = 266.7 mm/s; (1435 - 150) / 75 = 17.1, so 18 + 1",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let share = 1.0 - input.overlap.get() / 100.0;
        let hundredths = libm::round(input.overlap.get() * 1_000.0) as i64;
        let pitch = input.fan.get().exact().times(100_000 - hundredths, 100_000).unwrap_or(Exact::ZERO);
        let rest = (input.height.get() - input.fan.get()).in_mm().max(0.0);
        let steps = libm::ceil(rest / pitch.in_mm() - 1e-9) as u32;
        let passes = steps + 1;
        let speed = input.flow.get() * 1e6 / 60.0 * input.transfer.get()
            / 100.0
            / (input.wet_film.get() / 1_000.0)
            / pitch.in_mm();
        let time = f64::from(passes) * input.width.get().in_mm() / speed / 60.0;
        let working = vec![
            Step::new("from pass to pass")
                .by("f * (1 - o / 100)")
                .given("f", "fan width", input.fan)
                .given("o", "overlap", input.overlap)
                .gives("p", "from pass to pass", pitch)
                .because("overlap counts once, here; the film below is reckoned over the pitch"),
            Step::new("speed of the gun")
                .by("q * 1000000 / 60 * (e / 100) / (w / 1000) / p")
                .given("q", "flow of the tip, in L/min", input.flow)
                .given("e", "transfer efficiency", input.transfer)
                .given("w", "wet film, in µm", input.wet_film)
                .given("p", "from pass to pass", pitch)
                .gives("v", "speed", Amount::<kind::HandSpeed>::of(speed)),
            Step::new("passes over the height")
                .by("ceil(max(0, H - f) / p) + 1")
                .given("H", "height of the field", input.height)
                .given("f", "fan width", input.fan)
                .given("p", "from pass to pass", pitch)
                .gives("n", "passes", passes),
        ];
        let mut notes = Vec::new();
        if speed < USUAL_SPEED.0 || speed > USUAL_SPEED.1 {
            let words = Words::new("{} is no walking speed for a hand ({} to {}): change the tip, not the walk.");
            let at = Amount::<kind::HandSpeed>::of;
            notes.push(Note::check(words.with(at(speed)).with(at(USUAL_SPEED.0)).with(at(USUAL_SPEED.1))));
        }
        if share > 0.6 {
            notes.push(Note::check("Less than two fifths of overlap leaves stripes."));
        }
        Ok(Answer {
            result: Output { speed: Amount::of(speed), passes, pitch, time: Amount::of(time) },
            working,
            notes,
        })
    }
}
