//! A colour's lightness, reflectance, and its contrast with another.

use serde_json::json;

use super::srgb;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Step};
use crate::quantity::{Amount, Physical, Units, kind};

/// Up to this lightness the curve of CIE L* is a straight line.
const LINEAR: f64 = 8.0;

pub(crate) struct ColourValues;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Six figures, as on a colour chart's web page; or leave it empty and give the lightness.
    #[field("Colour (sRGB, six figures)", default, size(..=9))]
    colour: Option<String>,
    /// L*, 0 to 100, as a colour meter reads it on the dry coat; instead of the six figures.
    #[field("Or its lightness L*", default)]
    lightness: Option<Physical<kind::Number, 0, 100_000>>,
    /// What it stands against: the wall beside it, or a rail on it.
    #[field("Beside it (sRGB, six figures)", size(..=9))]
    beside: Option<String>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Share of light that comes back.
    #[field("Light reflectance value (LRV)")]
    reflectance: Amount<kind::Percent>,
    /// CIE lightness, 0 to 100.
    #[field("L*")]
    lightness: Amount<kind::Number>,
    /// Green to red.
    #[field("a*")]
    a: Option<Amount<kind::Number>>,
    /// Blue to yellow.
    #[field("b*")]
    b: Option<Amount<kind::Number>>,
    /// Lighter over darker, 1 to 21.
    #[field("Contrast")]
    contrast: Option<Amount<kind::Number>>,
}

impl Calculator for ColourValues {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "colour-values",
        title: "LRV and contrast",
        question: "How light is this colour, and does it stand out against the other?",
        step: 4,
        search: &[
            "LRV",
            "light reflectance",
            "contrast",
            "Lab",
            "colour",
            "lightness",
            "how dark",
            "fan deck",
            "dark",
            "light",
            "white",
        ],
        headline: &["/reflectance", "/contrast"],
        list: None,
        cautions: &[],
        sources: &srgb::SOURCES,
    };

    fn example(_: Units) -> Example {
        Example {
            input: json!({ "colour": "FFFFFF", "beside": "777777" }),
            expects: vec![("/result/contrast/text", json!("4.478"))],
            checked_against: "wcag-contrast-ratio 0.9 for #777777 on white: 4.478",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let mut faults = Vec::new();
        let mut read = |pointer: &'static str, text: &String| {
            srgb::read_hex(text).unwrap_or_else(|| {
                let why = "a colour here is six figures, 0 to 9 and A to F, two each for red, green and blue";
                faults.push(Fault::new(pointer, format!("«{text}»"), why, "F4F6F2"));
                [0; 3]
            })
        };
        let colour = input.colour.as_ref().map(|text| read("/colour", text));
        let beside = input.beside.as_ref().map(|text| read("/beside", text));
        if input.colour.is_some() == input.lightness.is_some() {
            let said = if input.colour.is_some() { "both" } else { "nothing" };
            faults.push(Fault::new("/colour", said, "give the six figures or the lightness, one of the two", "F4F6F2"));
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let number = Amount::<kind::Number>::of;
        let (y, lab, step) = match (colour, input.lightness) {
            (Some(colour), _) => {
                let light = colour.map(srgb::linear);
                let step = Step::new("share of light that comes back")
                    .by("100 * (0.2126 * R + 0.7152 * G + 0.0722 * B)")
                    .given("R", "red, linear", light[0])
                    .given("G", "green, linear", light[1])
                    .given("B", "blue, linear", light[2]);
                (srgb::xyz(colour)[1], Some(srgb::lab(colour)), step)
            }
            (None, lightness) => {
                let lightness = lightness.map_or(0.0, Physical::get);
                let step = Step::new("share of light that comes back, from the lightness")
                    .by(if lightness > LINEAR { "100 * ((l + 16) / 116) ^ 3" } else { "100 * l * 27 / 24389" })
                    .given("l", "lightness L*", lightness);
                (srgb::reflectance_of_lightness(lightness) / 100.0, None, step)
            }
        };
        let mut working = vec![step.gives("Y", "light reflectance value", Amount::<kind::Percent>::of(100.0 * y))];
        let contrast = beside.map(|beside| {
            let other = srgb::xyz(beside)[1];
            let ratio = number((y.max(other) + 0.05) / (y.min(other) + 0.05));
            working.push(
                Step::new("contrast, lighter over darker")
                    .by("(max(p, q) + 0.05) / (min(p, q) + 0.05)")
                    .given("p", "LRV of the one, 0 to 1", y)
                    .given("q", "LRV of the other, 0 to 1", other)
                    .gives("c", "contrast", ratio),
            );
            ratio
        });
        let notes = vec![Note::remark("A colour on a screen is not a paint: a figure measured on the dry coat wins.")];
        Ok(Answer {
            result: Output {
                reflectance: Amount::of(100.0 * y),
                lightness: number(lab.as_ref().map_or_else(|| input.lightness.map_or(0.0, Physical::get), |lab| lab.l)),
                a: lab.as_ref().map(|lab| number(lab.a)),
                b: lab.as_ref().map(|lab| number(lab.b)),
                contrast,
            },
            working,
            notes,
        })
    }
}
