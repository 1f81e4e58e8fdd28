//! From a screen colour to the values of colorimetry. A swatch on a screen is not a paint: a measured value wins.

use crate::catalogue::works::{CIE_15, IEC_61966, WCAG};
use crate::catalogue::{Source, Standing};

/// Where the conversion comes from.
pub const SOURCES: [Source; 3] = [
    Source::new(IEC_61966, "transfer curve and primaries, D65, 2°", Standing::Published),
    Source::new(CIE_15, "L*a*b* with δ = 6/29", Standing::Published),
    Source::new(WCAG, "contrast ratio (L₁ + 0.05) / (L₂ + 0.05)", Standing::Published),
];

/// sRGB to XYZ, rows X, Y, Z: IEC 61966-2-1 in four decimals.
const TO_XYZ: [[f64; 3]; 3] = [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]];
/// White point D65, 2° observer: x = 0.3127, y = 0.3290 (CIE 15).
const WHITE: [f64; 3] = [0.3127 / 0.3290, 1.0, (1.0 - 0.3127 - 0.3290) / 0.3290];

/// A colour in CIE L*a*b*.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lab {
    /// Lightness, 0 to 100.
    pub l: f64,
    /// Green to red.
    pub a: f64,
    /// Blue to yellow.
    pub b: f64,
}

/// Reads six hexadecimal figures, with or without a hash; `None` for anything else.
pub fn read_hex(text: &str) -> Option<[u8; 3]> {
    let figures = text.trim().strip_prefix('#').unwrap_or(text.trim());
    if figures.len() != 6 || !figures.chars().all(|sign| sign.is_ascii_hexdigit()) {
        return None;
    }
    let pair = |at: usize| u8::from_str_radix(&figures[at..at + 2], 16).ok();
    Some([pair(0)?, pair(2)?, pair(4)?])
}

/// Linear light of one channel, 0 to 1.
pub fn linear(channel: u8) -> f64 {
    let share = f64::from(channel) / 255.0;
    if share <= 0.040_45 { share / 12.92 } else { libm::pow((share + 0.055) / 1.055, 2.4) }
}

/// X, Y and Z of a colour; Y of white is 1.
pub fn xyz(rgb: [u8; 3]) -> [f64; 3] {
    let light = rgb.map(linear);
    TO_XYZ.map(|row| row.iter().zip(light).map(|(weight, light)| weight * light).sum())
}

/// L*a*b* of a colour under D65.
pub fn lab(rgb: [u8; 3]) -> Lab {
    let delta: f64 = 6.0 / 29.0;
    let curve = |t: f64| if t > delta * delta * delta { libm::cbrt(t) } else { t / (3.0 * delta * delta) + 4.0 / 29.0 };
    let [x, y, z] = xyz(rgb);
    let (fx, fy, fz) = (curve(x / WHITE[0]), curve(y / WHITE[1]), curve(z / WHITE[2]));
    Lab { l: 116.0 * fy - 16.0, a: 500.0 * (fx - fy), b: 200.0 * (fy - fz) }
}

/// Light reflectance (Y, 0 to 100) of a lightness L*.
pub fn reflectance_of_lightness(l: f64) -> f64 {
    let f = (l + 16.0) / 116.0;
    let delta: f64 = 6.0 / 29.0;
    100.0 * if f > delta { f * f * f } else { 3.0 * delta * delta * (f - 4.0 / 29.0) }
}

/// Contrast of two colours, 1 to 21.
/// # Source
/// Web Content Accessibility Guidelines 2.2.
pub fn contrast(one: [u8; 3], other: [u8; 3]) -> f64 {
    let (a, b) = (xyz(one)[1], xyz(other)[1]);
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}
