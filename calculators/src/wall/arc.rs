//! The radius of a bow or an arch from chord and rise, as a question of its own.

use serde_json::json;

use super::squareness::arc_radius;
use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Run, Units, Within};

pub(crate) struct ArcRadius;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Length of the straightedge, or width of the arch.
    #[field("Chord")]
    chord: Within<25_000, 12_000_000>,
    /// The gap in its middle.
    #[field("Rise")]
    rise: Within<100, 6_000_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Of the whole circle.
    #[field("Radius")]
    radius: Length,
    /// The same in feet or metres.
    #[field("Radius, in feet or metres")]
    radius_run: Run,
    /// From the chord to the curve, a quarter of the chord from either end: a third point to draw through.
    #[field("Gap at a quarter of the chord")]
    quarter: Length,
    /// If the rise was read half a millimetre (1/50 in) too small.
    #[field("Radius at least")]
    least: Run,
    /// If the rise was read half a millimetre (1/50 in) too large; nothing where the wall might then be straight.
    #[field("Radius at most")]
    most: Option<Run>,
}

/// How far a rise may be misread.
const MISREAD: Length = Length::um(500);
/// Beyond this radius a wall is straight for a tape.
const STRAIGHT: Length = Length::mm(500_000);

/// The gap between chord and curve at a quarter of the chord, nearest nanometre.
fn at_a_quarter(chord: Length, rise: Length, radius: Length) -> Length {
    let (r, quarter) = (radius.in_mm(), chord.in_mm() / 4.0);
    Length::nearest_mm(libm::sqrt((r * r - quarter * quarter).max(0.0)) - (r - rise.in_mm()))
}

impl Calculator for ArcRadius {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "arc-radius",
        title: "Arc from a straightedge",
        question: "What radius is this bow or arch?",
        step: 3,
        search: &["arc", "arch", "bow", "radius", "sagitta", "curve", "bowed wall", "curved wall"],
        headline: &["/radius", "/radius_run", "/quarter"],
        list: None,
        cautions: &[],
        sources: &[Source::new(GEOMETRY, "chord and rise of a circle", Standing::Derived)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "chord": "48 in", "rise": "1/4 in" }),
                expects: vec![("/result/radius/tape", json!("1152 1/8 in"))],
                checked_against: "published value: 48² / (8 x 0.25) + 0.125 = 1152.125",
            },
            Units::Metric => Example {
                input: json!({ "chord": "1200 mm", "rise": "12 mm" }),
                expects: vec![("/result/radius/tape", json!("15006 mm"))],
                checked_against: "published value: 1200² / (8 x 12) + 6 = 15006",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (chord, rise) = (input.chord.get(), input.rise.get());
        let Some(radius) = arc_radius(chord, rise).filter(|_| rise <= chord) else {
            let why = Words::new("an arc rises at most as far as its chord is long, {}").with(chord);
            return Err(vec![Fault::new("/rise", Words::of(rise), why, Words::of(chord.exact().half()))]);
        };
        let working = vec![
            Step::new("radius")
                .by("c ^ 2 / (8 * s) + s / 2")
                .given("c", "chord", chord)
                .given("s", "rise", rise)
                .gives("R", "radius", radius),
            Step::new("gap at a quarter of the chord")
                .by("sqrt(R ^ 2 - (c / 4) ^ 2) - (R - s)")
                .given("R", "radius", radius)
                .given("c", "chord", chord)
                .given("s", "rise", rise)
                .gives("q", "gap", at_a_quarter(chord, rise, radius)),
        ];
        if radius > STRAIGHT {
            let why = Words::new("with this chord the radius is over {}: that is straight for a tape")
                .with(Run::of(STRAIGHT));
            return Err(vec![Fault::new(
                "/rise",
                Words::of(rise),
                why,
                Words::of(chord.exact().over(50).unwrap_or(chord.exact())),
            )]);
        }
        let quarter = at_a_quarter(chord, rise, radius);
        let misread = |rise: Length| {
            arc_radius(chord, rise).filter(|radius| rise.is_positive() && *radius <= STRAIGHT).map(Run::of)
        };
        let (least, most) = (misread(rise + MISREAD).unwrap_or_else(|| Run::of(radius)), misread(rise - MISREAD));
        let mut notes = Vec::new();
        if radius < Length::mm(3_000) {
            notes.push(Note::check("A curve this tight is no bow: boards are kerfed, laminated or cut from the sheet. The wall plan is for straight walls."));
        }
        Ok(Answer { result: Output { radius, radius_run: Run::of(radius), quarter, least, most }, working, notes })
    }
}
