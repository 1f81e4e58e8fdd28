//! Physical quantities: a float behind a unit, one kind per type, one table of units.
//!
//! Inside, a value always stands in its kind's metric unit; the formulas of the calculators are written for that unit.
//! A JSON number is in the metric unit; a bare number in text takes the unit of the reader's system; a text may name any unit
//! of the kind (`65 °F`, `18 C`, `1.5 mil`).

use std::marker::PhantomData;

use serde_json::Value;

use super::print;
use super::tape::Units;

/// One unit of a kind: `metric = value * factor + offset`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// How it is printed.
    pub symbol: &'static str,
    /// Other spellings that are read, in lower case.
    pub also: &'static [&'static str],
    /// What one of it is in the metric unit.
    pub factor: f64,
    /// What zero of it is in the metric unit.
    pub offset: f64,
    /// How many decimals are printed at most.
    pub decimals: u8,
}

/// All that is known about a kind of quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KindFacts {
    /// Its name in schemas and answers, kebab-case.
    pub name: &'static str,
    /// The unit in which values are kept and formulas are written.
    pub metric: Unit,
    /// The unit used where the shop reads inches.
    pub imperial: Unit,
    /// Further units that are read.
    pub others: &'static [Unit],
}

/// A marker type for one kind of quantity.
pub trait Kind: Copy + std::fmt::Debug + PartialEq + Send + Sync + 'static {
    /// The kind's units.
    const FACTS: KindFacts;
}

const fn unit(symbol: &'static str, also: &'static [&'static str], factor: f64, decimals: u8) -> Unit {
    Unit { symbol, also, factor, offset: 0.0, decimals }
}

const fn same(unit: Unit) -> (Unit, Unit) {
    (unit, unit)
}

macro_rules! kinds {
    ($($(#[$doc:meta])* $name:ident: $key:literal, $units:expr, $others:expr;)*) => {
        /// The kinds of quantities, one marker type each.
        pub mod kind {
            use super::*;
            $(
                $(#[$doc])*
                #[derive(Clone, Copy, Debug, PartialEq)]
                pub struct $name;
                impl Kind for $name {
                    const FACTS: KindFacts = KindFacts { name: $key, metric: $units.0, imperial: $units.1, others: $others };
                }
            )*
        }
        /// Every kind, for look-ups by name.
        pub const PHYSICAL_KINDS: &[KindFacts] = &[$(<kind::$name as Kind>::FACTS),*];
    };
}

// Exact definitions (NIST Handbook 44, appendix C): inch 25.4 mm, pound 0.453 592 37 kg, US gallon 231 in3.
const INCH_M: f64 = 0.0254;
const FOOT_M: f64 = 12.0 * INCH_M;
const POUND_KG: f64 = 0.453_592_37;
const GALLON_L: f64 = 231.0 * INCH_M * INCH_M * INCH_M * 1_000.0;
const FLUID_OUNCE_ML: f64 = GALLON_L * 1_000.0 / 128.0;
const CUBIC_FOOT_M3: f64 = FOOT_M * FOOT_M * FOOT_M;
const STANDARD_GRAVITY: f64 = 9.806_65;
const POUND_FORCE_N: f64 = POUND_KG * STANDARD_GRAVITY;

kinds! {
    /// A plain number.
    Number: "number", same(unit("", &[], 1.0, 4)), &[];
    /// A share of a hundred.
    Percent: "percent", same(unit("%", &["percent", "pct"], 1.0, 2)), &[];
    /// A difference of two shares of a hundred.
    Points: "percentage-points", same(unit("points", &["point", "pt"], 1.0, 1)), &[];
    /// Relative humidity of air.
    Humidity: "relative-humidity", same(unit("% RH", &["%", "rh", "%rh"], 1.0, 1)), &[];
    /// Temperature of air or a surface.
    Temperature: "temperature",
        (unit("°C", &["c", "deg c", "°c", "degc"], 1.0, 1),
         Unit { symbol: "°F", also: &["f", "deg f", "°f", "degf"], factor: 5.0 / 9.0, offset: -160.0 / 9.0, decimals: 1 }), &[];
    /// A difference of two temperatures: 5 °F apart is not 5 °F.
    TemperatureDifference: "temperature-difference",
        (unit("°C apart", &["c", "°c", "k"], 1.0, 1), unit("°F apart", &["f", "°f"], 5.0 / 9.0, 1)), &[];
    /// An angle.
    Angle: "angle", same(unit("°", &["deg", "degree", "degrees"], 1.0, 2)), &[];
    /// An area.
    Area: "area",
        (unit("m²", &["m2", "sq m"], 1.0, 3), unit("ft²", &["ft2", "sq ft", "sf"], FOOT_M * FOOT_M, 2)),
        &[unit("in²", &["in2", "sq in"], INCH_M * INCH_M, 1), unit("cm²", &["cm2"], 0.0001, 1)];
    /// A volume of paint.
    Paint: "paint-volume",
        (unit("L", &["l", "litre", "litres", "liter", "liters"], 1.0, 3), unit("US gal", &["gal", "gallon", "gallons"], GALLON_L, 3)),
        &[unit("mL", &["ml"], 0.001, 0), unit("US fl oz", &["fl oz", "floz", "oz"], FLUID_OUNCE_ML / 1_000.0, 1),
          unit("US qt", &["qt", "quart", "quarts"], GALLON_L / 4.0, 2)];
    /// A small volume: cartridges, filler, beads.
    SmallVolume: "small-volume",
        (unit("mL", &["ml", "cm3", "cm³", "cc"], 1.0, 2), unit("US fl oz", &["fl oz", "floz", "oz"], FLUID_OUNCE_ML, 2)),
        &[unit("in³", &["in3", "cu in"], INCH_M * INCH_M * INCH_M * 1e6, 2), unit("L", &["l"], 1_000.0, 3)];
    /// A volume of a box in the wall.
    BoxVolume: "box-volume",
        (unit("cm³", &["cm3", "ml"], 1.0, 1), unit("in³", &["in3", "cu in"], INCH_M * INCH_M * INCH_M * 1e6, 2)), &[];
    /// A volume of a room.
    RoomVolume: "room-volume",
        (unit("m³", &["m3", "cu m"], 1.0, 2), unit("ft³", &["ft3", "cu ft"], CUBIC_FOOT_M3, 1)), &[];
    /// Thickness of a film, wet or dry.
    Film: "film", (unit("µm", &["um", "micron", "microns"], 1.0, 1), unit("mil", &["mils"], 25.4, 2)), &[];
    /// Size of an abrasive's grain, told in micrometres everywhere.
    GrainSize: "grain-size", same(unit("µm", &["um", "micron", "microns"], 1.0, 1)), &[];
    /// Area that a volume of paint covers.
    SpreadingRate: "spreading-rate",
        (unit("m²/L", &["m2/l"], 1.0, 2), unit("ft²/US gal", &["ft2/gal", "ft²/gal", "sq ft/gal"], FOOT_M * FOOT_M / GALLON_L, 1)), &[];
    /// Flow of a liquid.
    LiquidFlow: "liquid-flow", (unit("L/min", &["l/min"], 1.0, 3), unit("US gal/min", &["gpm", "gal/min"], GALLON_L, 3)), &[];
    /// Flow of air.
    AirFlow: "air-flow",
        (unit("m³/h", &["m3/h"], 1.0, 1), unit("ft³/min", &["cfm", "ft3/min"], CUBIC_FOOT_M3 * 60.0, 1)),
        &[unit("L/s", &["l/s"], 3.6, 1)];
    /// Speed of air.
    AirSpeed: "air-speed", (unit("m/s", &[], 1.0, 2), unit("ft/min", &["fpm"], FOOT_M / 60.0, 0)), &[];
    /// Speed of a hand or a spray gun.
    HandSpeed: "hand-speed", (unit("mm/s", &[], 1.0, 0), unit("in/s", &[], 25.4, 1)), &[unit("ft/min", &["fpm"], 304.8 / 60.0, 1)];
    /// Mass.
    Mass: "mass", (unit("kg", &[], 1.0, 3), unit("lb", &["lbs"], POUND_KG, 2)),
        &[unit("g", &[], 0.001, 1), unit("oz", &[], POUND_KG / 16.0, 2)];
    /// Mass of a volume.
    Density: "density", (unit("kg/m³", &["kg/m3"], 1.0, 1), unit("lb/ft³", &["lb/ft3", "pcf"], POUND_KG / CUBIC_FOOT_M3, 2)),
        &[unit("g/L", &["g/l"], 1.0, 1), unit("g/mL", &["g/ml", "g/cm3", "kg/l", "kg/L"], 1_000.0, 4),
          unit("lb/US gal", &["lb/gal"], POUND_KG / GALLON_L * 1_000.0, 3)];
    /// Mass of solvent per volume of paint.
    SolventContent: "solvent-content",
        (unit("g/L", &["g/l"], 1.0, 1), unit("lb/US gal", &["lb/gal"], POUND_KG / GALLON_L * 1_000.0, 3)), &[];
    /// A force.
    Force: "force", (unit("N", &[], 1.0, 1), unit("lbf", &["lb"], POUND_FORCE_N, 1)), &[];
    /// A force along a length.
    LineForce: "line-force", (unit("N/mm", &[], 1.0, 3), unit("lbf/in", &["lb/in"], POUND_FORCE_N / 25.4, 1)), &[];
    /// Pressure of vapour.
    VapourPressure: "vapour-pressure",
        (unit("hPa", &["hpa", "mbar"], 1.0, 3), unit("inHg", &["inhg"], 33.863_89, 4)), &[unit("kPa", &["kpa"], 10.0, 4), unit("Pa", &["pa"], 0.01, 1)];
    /// Water in air, by volume of air.
    VapourDensity: "vapour-density", same(unit("g/m³", &["g/m3"], 1.0, 2)), &[];
    /// Dust in air, by volume of air.
    DustConcentration: "dust-concentration", same(unit("mg/m³", &["mg/m3"], 1.0, 3)), &[];
    /// Vapour in air, by parts.
    Parts: "parts-per-million", same(unit("ppm", &[], 1.0, 1)), &[];
    /// Sound level, A-weighted.
    SoundLevel: "sound-level", same(unit("dB(A)", &["db", "dba", "dB", "db(a)"], 1.0, 1)), &[];
    /// Vibration at the hand.
    Vibration: "vibration", same(unit("m/s²", &["m/s2"], 1.0, 2)), &[];
    /// Kinematic viscosity.
    Viscosity: "viscosity", same(unit("mm²/s", &["cst", "mm2/s"], 1.0, 1)), &[];
    /// Seconds.
    Seconds: "seconds", same(unit("s", &["sec", "second", "seconds"], 1.0, 1)), &[unit("min", &[], 60.0, 2)];
    /// Minutes.
    Minutes: "minutes", same(unit("min", &["minute", "minutes"], 1.0, 1)), &[unit("h", &["hour", "hours"], 60.0, 2), unit("s", &["sec"], 1.0 / 60.0, 0)];
    /// Hours.
    Hours: "hours", same(unit("h", &["hour", "hours", "hr"], 1.0, 2)), &[unit("min", &["minute", "minutes"], 1.0 / 60.0, 0), unit("d", &["day", "days"], 24.0, 2)];
    /// Hours to wait: told rounded up, so that no printed wait is shorter than the one that was worked out.
    Wait: "wait", same(unit("h", &["hour", "hours", "hr"], 1.0, 2)), &[];
    /// Minutes until something is over: told rounded up.
    ClearingTime: "clearing-time", same(unit("min", &["minute", "minutes"], 1.0, 1)), &[];
    /// Hours that a rule permits: told rounded down.
    PermittedHours: "permitted-hours", same(unit("h", &["hour", "hours", "hr"], 1.0, 2)), &[];
    /// Minutes that a rule permits: told rounded down.
    PermittedMinutes: "permitted-minutes", same(unit("min", &["minute", "minutes"], 1.0, 1)), &[];
    /// Moisture of wood, a share of a hundred that nobody reads finer than to a tenth.
    WoodMoisture: "wood-moisture", same(unit("%", &["percent", "pct"], 1.0, 1)), &[];
    /// Days.
    Days: "days", same(unit("d", &["day", "days"], 1.0, 2)), &[unit("h", &["hour", "hours"], 1.0 / 24.0, 1)];
}

/// The facts of a kind by its name.
pub fn kind_named(name: &str) -> Option<&'static KindFacts> {
    PHYSICAL_KINDS.iter().find(|facts| facts.name == name)
}

impl KindFacts {
    /// The unit used in a unit system.
    pub const fn unit(&self, units: Units) -> Unit {
        match units {
            Units::Imperial => self.imperial,
            Units::Metric => self.metric,
        }
    }

    /// The number of a value in one unit system, without its unit, trailing zeros dropped.
    pub fn number(&self, metric: f64, units: Units) -> String {
        let mut out = String::with_capacity(16);
        self.push_number(&mut out, metric, units);
        out
    }

    /// The text of a value in one unit system, trailing zeros dropped: `64.4 °F`, `0.38`.
    pub fn text(&self, metric: f64, units: Units) -> String {
        let mut out = String::with_capacity(24);
        self.push_text(&mut out, metric, units);
        out
    }

    /// Writes what [`KindFacts::text`] says.
    pub fn push_text(&self, out: &mut String, metric: f64, units: Units) {
        self.push_number(out, metric, units);
        self.push_unit(out, units);
    }

    fn push_unit(&self, out: &mut String, units: Units) {
        match self.unit(units).symbol {
            "" => {}
            symbol @ ("°" | "%") => out.push_str(symbol),
            symbol => {
                out.push(' ');
                out.push_str(symbol);
            }
        }
    }

    /// A value at its last printed decimal: waits up, what is permitted down, all else as it is, to be rounded to the nearest.
    fn on_the_careful_side(&self, value: f64, decimals: usize) -> f64 {
        let scale = POWERS[decimals];
        match self.name {
            "wait" | "clearing-time" => libm::ceil(value * scale - 1e-6) / scale,
            "permitted-hours" | "permitted-minutes" => libm::floor(value * scale + 1e-6) / scale,
            _ => value,
        }
    }

    /// The number of a value to seven figures that count, for working that is to come out again from what is printed.
    pub fn number_in_full(&self, metric: f64, units: Units) -> String {
        let unit = self.unit(units);
        let value = (metric - unit.offset) / unit.factor;
        let places = if value == 0.0 { 0.0 } else { libm::floor(libm::log10(libm::fabs(value))) };
        let mut fixed = format!("{value:.*}", (6.0 - places).clamp(0.0, 12.0) as usize);
        if fixed.contains('.') {
            fixed.truncate(fixed.trim_end_matches('0').trim_end_matches('.').len());
        }
        if fixed == "-0" { "0".to_owned() } else { fixed }
    }

    /// The text of a value to seven figures that count.
    pub fn text_in_full(&self, metric: f64, units: Units) -> String {
        let mut text = self.number_in_full(metric, units);
        self.push_unit(&mut text, units);
        text
    }

    fn push_number(&self, out: &mut String, metric: f64, units: Units) {
        let unit = self.unit(units);
        let value = (metric - unit.offset) / unit.factor;
        let places = decimals(self, unit.decimals, value);
        let value = self.on_the_careful_side(value, places);
        // Nearly always the last decimal is plain; where it is not, the digits of the float itself decide.
        let scaled = value * POWERS[places];
        let nearest = libm::round(scaled);
        if libm::fabs(libm::fabs(scaled - nearest) - 0.5) > 1e-4 && libm::fabs(scaled) < 1e11 {
            return print::push_decimal(out, nearest as i64, places as u32);
        }
        let mut fixed = format!("{value:.places$}");
        if fixed.contains('.') {
            fixed.truncate(fixed.trim_end_matches('0').trim_end_matches('.').len());
        }
        out.push_str(if fixed == "-0" { "0" } else { &fixed });
    }
}

/// Powers of ten up to the most decimals that are printed.
const POWERS: [f64; 8] = [1.0, 10.0, 100.0, 1e3, 1e4, 1e5, 1e6, 1e7];

/// Decimals of a value: as many as its unit is usually told to, but no more than make four figures that count; a small plain number
/// keeps three and the volume of a nail hole two, with seven decimals at most. Whole units are never rounded away: 32177 m³/h stays.
fn decimals(facts: &KindFacts, usual: u8, value: f64) -> usize {
    let usual = usize::from(usual);
    if value == 0.0 || !value.is_finite() {
        return usual;
    }
    let places = libm::floor(libm::log10(libm::fabs(value)));
    let counted = |figures: f64| (figures - 1.0 - places).clamp(0.0, 7.0) as usize;
    // Angles add up to 180 and 360, so they all keep the same decimals.
    if facts.name == kind::Angle::FACTS.name {
        return usual;
    }
    let least = match facts.name {
        name if name == kind::Number::FACTS.name => counted(3.0),
        name if name == kind::SmallVolume::FACTS.name || name == kind::Mass::FACTS.name => counted(2.0),
        _ => 0,
    };
    usual.min(counted(4.0)).max(least)
}

/// Why a text is no such quantity.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PhysicalFault {
    /// No number stands at the front.
    #[error("no number can be read in this; write figures with one point at most")]
    NotANumber,
    /// `1,500` can be one and a half or fifteen hundred.
    #[error("a comma before three figures can mean a decimal or thousands; write a point, or leave the comma out")]
    CommaInDoubt,
    /// The unit is not one of the kind's.
    #[error("the unit is not known here; write one of {0}")]
    Unit(String),
}

/// Reads a JSON leaf as a value in the kind's metric unit; a bare number in text takes `units`' unit.
/// # Errors
/// A [`PhysicalFault`] names the rule.
pub fn read(facts: &KindFacts, value: &Value, units: Units) -> Result<f64, PhysicalFault> {
    match value {
        Value::Number(number) => number.as_f64().filter(|number| number.is_finite()).ok_or(PhysicalFault::NotANumber),
        Value::Object(map) => map.get("value").and_then(Value::as_f64).ok_or(PhysicalFault::NotANumber),
        Value::String(text) => read_text(facts, text, units),
        _ => Err(PhysicalFault::NotANumber),
    }
}

fn read_text(facts: &KindFacts, text: &str, units: Units) -> Result<f64, PhysicalFault> {
    let text = text.trim().replace('−', "-").replace('μ', "µ").replace(['º', '˚'], "°");
    let text = with_a_point(&text).ok_or(PhysicalFault::CommaInDoubt)?;
    let end = text.find(|sign: char| !(sign.is_ascii_digit() || matches!(sign, '.' | '-' | '+'))).unwrap_or(text.len());
    let (number, word) = text.split_at(end);
    let number: f64 = number.parse().ok().filter(|number: &f64| number.is_finite()).ok_or(PhysicalFault::NotANumber)?;
    let word = word.trim();
    let usual = facts.unit(units);
    let named = |unit: &Unit| unit.symbol == word || unit.also.contains(&word.to_lowercase().as_str());
    let all = || [facts.metric, facts.imperial].into_iter().chain(facts.others.iter().copied());
    let unit = if word.is_empty() {
        usual
    } else {
        all().find(|unit| named(unit)).ok_or_else(|| {
            let mut symbols: Vec<_> = all().map(|unit| unit.symbol).filter(|symbol| !symbol.is_empty()).collect();
            symbols.dedup();
            PhysicalFault::Unit(if symbols.is_empty() {
                "a number without a unit".to_owned()
            } else {
                symbols.join(", ")
            })
        })?
    };
    Ok(number * unit.factor + unit.offset)
}

/// The text with a decimal comma written as a point; `None` where the comma may part thousands.
fn with_a_point(text: &str) -> Option<String> {
    let Some((before, after)) = text.split_once(',') else { return Some(text.to_owned()) };
    let figures = after.chars().take_while(char::is_ascii_digit).count();
    let decimal = before.ends_with(|sign: char| sign.is_ascii_digit()) && matches!(figures, 1 | 2 | 4..);
    if decimal && !after.contains(',') && !before.contains('.') {
        Some(format!("{before}.{after}"))
    } else if figures == 3 {
        None
    } else {
        Some(text.to_owned())
    }
}

/// A value of one kind between two bounds, given in thousandths of the metric unit, both allowed.
///
/// # Errors
/// Reading a value outside the bounds is an error; [`Physical::new`] answers `None`.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Physical<K: Kind, const MIN_MILLI: i64, const MAX_MILLI: i64>(f64, PhantomData<K>);

/// A value of one kind without bounds, as answers carry it.
pub type Amount<K> = Physical<K, { i64::MIN }, { i64::MAX }>;

impl<K: Kind, const MIN_MILLI: i64, const MAX_MILLI: i64> Physical<K, MIN_MILLI, MAX_MILLI> {
    /// The bounds in the metric unit; none for amounts, as answers carry them.
    pub const RANGE: Option<[f64; 2]> = match MIN_MILLI {
        i64::MIN => None,
        _ => Some([MIN_MILLI as f64 / 1_000.0, MAX_MILLI as f64 / 1_000.0]),
    };

    /// The value, in the kind's metric unit, when it is within the bounds and a number.
    pub fn new(metric: f64) -> Option<Self> {
        let (least, most) = (MIN_MILLI as f64 / 1_000.0, MAX_MILLI as f64 / 1_000.0);
        // The slack lets a bound typed in the other unit system pass after its conversion.
        let slack = 1e-9 * most.abs().max(least.abs()).min(1e9);
        (metric >= least - slack && metric <= most + slack).then_some(Self(metric, PhantomData))
    }

    /// The value in the kind's metric unit.
    pub const fn get(self) -> f64 {
        self.0
    }
}

impl<K: Kind> Amount<K> {
    /// A value in the kind's metric unit. Not-a-number and infinities become zero, so that an answer always prints.
    pub const fn of(metric: f64) -> Self {
        Self(if metric.is_finite() { metric } else { 0.0 }, PhantomData)
    }
}

impl<K: Kind, const MIN_MILLI: i64, const MAX_MILLI: i64> Physical<K, MIN_MILLI, MAX_MILLI> {
    /// The same value without bounds.
    pub const fn amount(self) -> Amount<K> {
        Amount::of(self.0)
    }

    /// The usual text in one unit system.
    pub fn text(self, units: Units) -> String {
        K::FACTS.text(self.0, units)
    }
}

impl<K: Kind> Default for Amount<K> {
    /// Nothing of it.
    fn default() -> Self {
        Self::of(0.0)
    }
}

#[cfg(test)]
mod tests;
