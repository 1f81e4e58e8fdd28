//! Whether there is room left in a box: volume needed by conductors and devices. United States rules; elsewhere ask.

use serde_json::json;

use crate::catalogue::works::NFPA_70;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Count, Physical, Units, kind};

/// Volume of one conductor: wire gauge (AWG) and cubic inches.
/// # Source
/// NFPA 70, table 314.16(B), as quoted in public summaries.
pub const CONDUCTOR_IN3: [(u32, f64); 7] =
    [(18, 1.50), (16, 1.75), (14, 2.00), (12, 2.25), (10, 2.50), (8, 3.00), (6, 5.00)];
/// Cubic centimetres in a cubic inch.
pub const IN3_CM3: f64 = 16.387_064;

/// The conductors in a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fill {
    /// Insulated conductors, each counted once.
    pub conductors: u32,
    /// Devices, each yoke counted twice.
    pub devices: u32,
    /// Grounding conductors: one to four count once together, each further one a quarter.
    pub grounds: u32,
    /// Whether cable clamps are inside: once together.
    pub clamps: bool,
}

/// How many conductor volumes a fill counts for.
/// # Source
/// NFPA 70, 314.16(B)(1) to (5); the quarter for each ground beyond four is the 2020 rule, from memory.
pub fn volumes_counted(fill: Fill) -> f64 {
    let grounds = match fill.grounds {
        0 => 0.0,
        1..=4 => 1.0,
        more => 1.0 + f64::from(more - 4) / 4.0,
    };
    f64::from(fill.conductors) + 2.0 * f64::from(fill.devices) + grounds + f64::from(u8::from(fill.clamps))
}

/// Where the volumes stand.
pub const VOLUME_SOURCE: Source = Source::new(
    NFPA_70,
    "table 314.16(B) and 314.16(B)(1) to (5), as quoted in public summaries; United States",
    Standing::Published,
);

pub(crate) struct BoxFill;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// AWG of the largest conductor in the box: 18, 16, 14, 12, 10, 8 or 6.
    #[field("Largest conductor (AWG)")]
    gauge: Count<6, 18>,
    /// Each counts once; pigtails that begin and end in the box do not count.
    #[field("Insulated conductors")]
    conductors: Count<0, 60>,
    /// Switches and sockets on one yoke each.
    #[field("Devices")]
    devices: Count<0, 6>,
    /// All of them.
    #[field("Grounding conductors")]
    grounds: Count<0, 30>,
    /// Built into the box.
    #[field("Clamps inside")]
    clamps: bool,
    /// Stamped in the box.
    #[field("Box")]
    box_volume: Physical<kind::BoxVolume, 20_000, 5_000_000>,
    /// Stamped in it; an unmarked ring adds nothing.
    #[field("Extension, if marked")]
    extension: Option<Physical<kind::BoxVolume, 0, 2_000_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// By the rule as quoted.
    #[field("Needed")]
    needed: Amount<kind::BoxVolume>,
    /// Box and marked extension.
    #[field("There is")]
    there_is: Amount<kind::BoxVolume>,
    /// Conductor volumes.
    #[field("Counted")]
    counted: Amount<kind::Number>,
}

impl Calculator for BoxFill {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "box-fill",
        title: "Room in a box (US)",
        question: "Is there room left in the box?",
        step: 11,
        search: &["box fill", "conductors", "AWG", "volume", "electrician"],
        headline: &["/needed", "/there_is"],
        list: None,
        cautions: &["live-box"],
        sources: &[VOLUME_SOURCE],
    };

    fn example(units: Units) -> Example {
        let (volume, needed) = if units == Units::Metric { ("300 cm3", "262.2 cm³") } else { ("18 in3", "16 in³") };
        Example {
            input: json!({ "gauge": 14, "conductors": 4, "devices": 1, "grounds": 2, "clamps": true, "box_volume": volume }),
            expects: vec![("/result/needed/text", json!(needed)), ("/result/counted/text", json!("8"))],
            checked_against: "314.16(B) as quoted, by hand: (4 + 2 + 1 + 1) x 2.00 in³ = 16 in³ = 262.2 cm³",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let Some((_, each)) = CONDUCTOR_IN3.iter().find(|(gauge, _)| *gauge == input.gauge.get()) else {
            let known: Vec<_> = CONDUCTOR_IN3.iter().map(|(gauge, _)| gauge.to_string()).collect();
            return Err(vec![Fault::new(
                "/gauge",
                input.gauge.get().to_string(),
                format!("the table knows {}", known.join(", ")),
                14,
            )]);
        };
        let fill = Fill {
            conductors: input.conductors.get(),
            devices: input.devices.get(),
            grounds: input.grounds.get(),
            clamps: input.clamps,
        };
        let counted = volumes_counted(fill);
        let volume = Amount::<kind::BoxVolume>::of;
        let needed = volume(counted * each * IN3_CM3);
        let there_is = volume(input.box_volume.get() + input.extension.map_or(0.0, Physical::get));
        let working = vec![
            Step::new("conductor volumes counted")
                .by("n + 2 * d + g + c")
                .given("n", "insulated conductors", input.conductors.get())
                .given("d", "devices", input.devices.get())
                .given(
                    "g",
                    "grounds together",
                    counted
                        - f64::from(fill.conductors)
                        - 2.0 * f64::from(fill.devices)
                        - f64::from(u8::from(fill.clamps)),
                )
                .given("c", "clamps together", i64::from(fill.clamps))
                .gives("k", "counted", counted),
            Step::new("volume needed")
                .by("k * v")
                .given("k", "counted", counted)
                .given("v", "volume of one conductor", volume(each * IN3_CM3))
                .gives("V", "needed", needed),
        ];
        let words = Words::new("{} needed, compared with {}. A planning hint by United States rules as quoted: the electrician and the local code decide.").with(needed).with(there_is);
        let notes = vec![if needed.get() > there_is.get() + 1e-9 { Note::hold(words) } else { Note::check(words) }];
        Ok(Answer { result: Output { needed, there_is, counted: Amount::of(counted) }, working, notes })
    }
}
