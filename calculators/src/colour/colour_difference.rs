//! The difference of two measured colours, by CIEDE2000, and whether a touch-up will show.
//!
//! | formula | for | price |
//! | --- | --- | --- |
//! | CIE76 | rough comparison, old documents | wrong by a factor of several in saturated colours |
//! | CIEDE2000 | near matches of paint | long; it jumps where two hues stand exactly opposite |
//!
//! The two must be measured with the same light, observer and instrument. The formula is no distance: differences do not add.

use serde_json::json;

use super::srgb::Lab;
use crate::catalogue::works::{CIEDE2000_NOTES, ISO_11664_6};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// The parts of a CIEDE2000 difference.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Difference {
    /// The difference.
    pub total: f64,
    /// Lightness difference over its weight.
    pub lightness: f64,
    /// Chroma difference over its weight.
    pub chroma: f64,
    /// Hue difference over its weight.
    pub hue: f64,
    /// Turn that joins chroma and hue in the blues.
    pub rotation: f64,
}

/// CIEDE2000 with all weights 1.
/// # Source
/// ISO/CIE 11664-6; branches as in the implementation notes of 2005.
pub fn ciede2000(one: Lab, other: Lab) -> Difference {
    let chroma_mean = (libm::hypot(one.a, one.b) + libm::hypot(other.a, other.b)) / 2.0;
    let seventh = |c: f64| libm::sqrt(libm::pow(c, 7.0) / (libm::pow(c, 7.0) + libm::pow(25.0, 7.0)));
    let g = 0.5 * (1.0 - seventh(chroma_mean));
    let (a1, a2) = ((1.0 + g) * one.a, (1.0 + g) * other.a);
    let (c1, c2) = (libm::hypot(a1, one.b), libm::hypot(a2, other.b));
    let hue =
        |a: f64, b: f64| if a == 0.0 && b == 0.0 { 0.0 } else { libm::atan2(b, a).to_degrees().rem_euclid(360.0) };
    let (h1, h2) = (hue(a1, one.b), hue(a2, other.b));
    let grey = c1 * c2 == 0.0;
    let apart = h2 - h1;
    let dh = if grey {
        0.0
    } else if apart.abs() <= 180.0 {
        apart
    } else if apart > 180.0 {
        apart - 360.0
    } else {
        apart + 360.0
    };
    let mean_h = if grey {
        h1 + h2
    } else if (h1 - h2).abs() <= 180.0 {
        (h1 + h2) / 2.0
    } else if h1 + h2 < 360.0 {
        (h1 + h2 + 360.0) / 2.0
    } else {
        (h1 + h2 - 360.0) / 2.0
    };
    let cos = |degrees: f64| libm::cos(degrees.to_radians());
    let delta_h = 2.0 * libm::sqrt(c1 * c2) * libm::sin((dh / 2.0).to_radians());
    let (mean_l, mean_c) = ((one.l + other.l) / 2.0, (c1 + c2) / 2.0);
    let t = 1.0 - 0.17 * cos(mean_h - 30.0) + 0.24 * cos(2.0 * mean_h) + 0.32 * cos(3.0 * mean_h + 6.0)
        - 0.20 * cos(4.0 * mean_h - 63.0);
    let turn = 30.0 * libm::exp(-libm::pow((mean_h - 275.0) / 25.0, 2.0));
    let rotation = -libm::sin((2.0 * turn).to_radians()) * 2.0 * seventh(mean_c);
    let from_middle = libm::pow(mean_l - 50.0, 2.0);
    let weight_l = 1.0 + 0.015 * from_middle / libm::sqrt(20.0 + from_middle);
    let (weight_c, weight_h) = (1.0 + 0.045 * mean_c, 1.0 + 0.015 * mean_c * t);
    let (lightness, chroma, hue) = ((other.l - one.l) / weight_l, (c2 - c1) / weight_c, delta_h / weight_h);
    let square = lightness * lightness + chroma * chroma + hue * hue + rotation * chroma * hue;
    Difference { total: libm::sqrt(square.max(0.0)), lightness, chroma, hue, rotation }
}

/// The older CIE76 difference: the plain distance in L*a*b*.
pub fn cie76(one: Lab, other: Lab) -> f64 {
    libm::hypot(libm::hypot(one.l - other.l, one.a - other.a), one.b - other.b)
}

/// Side by side rarely seen up to the first; at a break in the surface up to the second. From memory.
const SEEN: (f64, f64) = (1.0, 2.0);

type Coordinate = Physical<kind::Number, -200_000, 200_000>;

/// A measured colour.
#[derive(Clone, Copy, Input)]
pub(crate) struct Measured {
    /// Lightness.
    #[field("L*")]
    l: Physical<kind::Number, 0, 100_000>,
    /// Green to red.
    #[field("a*")]
    a: Coordinate,
    /// Blue to yellow.
    #[field("b*")]
    b: Coordinate,
}

impl From<Measured> for Lab {
    fn from(measured: Measured) -> Self {
        Self { l: measured.l.get(), a: measured.a.get(), b: measured.b.get() }
    }
}

pub(crate) struct ColourDifference;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// As the meter shows it, on the old coat.
    #[field("The coat that is there")]
    one: Measured,
    /// The same meter, the same light, on the dry trial patch.
    #[field("The trial patch")]
    other: Measured,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// CIEDE2000.
    #[field("Difference ΔE00")]
    difference: Amount<kind::Number>,
    /// CIE76, for comparing with old papers.
    #[field("Older formula ΔE*ab")]
    older: Amount<kind::Number>,
    /// Weighted.
    #[field("Lightness part")]
    lightness: Amount<kind::Number>,
    /// Weighted.
    #[field("Chroma part")]
    chroma: Amount<kind::Number>,
    /// Weighted.
    #[field("Hue part")]
    hue: Amount<kind::Number>,
}

impl Calculator for ColourDifference {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "colour-difference",
        title: "Colour difference",
        question: "Will the touch-up show by its colour?",
        step: 16,
        search: &["colour match", "touch-up", "delta E", "batch"],
        headline: &["/difference", "/older"],
        list: None,
        cautions: &[],
        sources: &[
            Source::new(ISO_11664_6, "CIEDE2000", Standing::FromMemory),
            Source::new(CIEDE2000_NOTES, "branches and test pairs", Standing::Published),
        ],
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "one": { "l": 90.8027, "a": -2.0831, "b": 1.441 }, "other": { "l": 91.1528, "a": -1.6435, "b": 0.0447 } }),
            expects: vec![("/result/difference/text", json!("1.444"))],
            checked_against: "two whites, test pair 31 of the implementation notes of 2005: 1.4441",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let (one, other) = (Lab::from(input.one), Lab::from(input.other));
        let parts = ciede2000(one, other);
        let older = cie76(one, other);
        let number = Amount::<kind::Number>::of;
        let working = vec![
            Step::new("weighted parts, joined")
                .by("sqrt(max(0, p ^ 2 + q ^ 2 + r ^ 2 + t * q * r))")
                .given("p", "lightness part", number(parts.lightness))
                .given("q", "chroma part", number(parts.chroma))
                .given("r", "hue part", number(parts.hue))
                .given("t", "turn in the blues", number(parts.rotation))
                .gives("E", "difference", number(parts.total))
                .because("the parts come from the standard's weights, all three factors 1"),
            Step::new("older formula: plain distance")
                .by("sqrt((L - M) ^ 2 + (a - c) ^ 2 + (b - d) ^ 2)")
                .given("L", "L* of the coat", input.one.l)
                .given("M", "L* of the patch", input.other.l)
                .given("a", "a* of the coat", input.one.a)
                .given("c", "a* of the patch", input.other.a)
                .given("b", "b* of the coat", input.one.b)
                .given("d", "b* of the patch", input.other.b)
                .gives("F", "older difference", number(older)),
        ];
        let words = if parts.total <= SEEN.0 {
            Words::new("Up to {} few people see a difference side by side (from memory).").with(number(SEEN.0))
        } else if parts.total <= SEEN.1 {
            Words::new("Up to {} passes at a break: coat the board to its ends (from memory).").with(number(SEEN.1))
        } else {
            Words::new("Over {}: coat the whole run again.").with(number(SEEN.1))
        };
        let notes = vec![
            Note::remark(words),
            Note::remark(
                "Batch, way of application and sheen show more often than colour does; let the patch cure before judging it.",
            ),
        ];
        Ok(Answer {
            result: Output {
                difference: number(parts.total),
                older: number(older),
                lightness: number(parts.lightness),
                chroma: number(parts.chroma),
                hue: number(parts.hue),
            },
            working,
            notes,
        })
    }
}
