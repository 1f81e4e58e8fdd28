//! Lengths and other quantities as text. Printing happens once, at the edge, by one walk over an answer.

use serde_json::{Map, Value, json};

use super::exact::Exact;
use super::length::{FOOT, INCH, Length, MILLIMETRE};
use super::physical;
use super::tape::{Reading, Tape, Toward, Units};
use super::{Money, kind_named};

/// A tenth of a millimetre: the step of metric text where nothing else was asked.
pub const TENTH_MM: Length = Length::um(100);

/// The step of imperial text where nothing else was asked: 1/64 in.
const FINEST_PARTS: i64 = 64;

/// Inches and a fraction reduced, as called out from a tape: `87 1/2 in`.
///
/// `parts` is the denominator of the finest fraction: 8, 16, 32 or 64. Zero or less counts as one.
/// # Examples
/// ```
/// use quantity::{Length, print};
/// assert_eq!(print::inches(Length::um(2_222_500).exact(), 16), "87 1/2 in");
/// ```
pub fn inches(exact: Exact, parts: i64) -> String {
    let Imperial { sign, whole, fraction } = Imperial::of(exact, parts);
    format!("{sign}{} in", joined(whole, fraction))
}

/// Feet, inches and a fraction reduced: `7' 3 1/2"`. Below one foot the feet are left out.
pub fn feet_inches(exact: Exact, parts: i64) -> String {
    let Imperial { sign, whole, fraction } = Imperial::of(exact, parts);
    let twelve = FOOT.nm() / INCH.nm();
    let (feet, left) = (whole / twelve, whole % twelve);
    if feet == 0 {
        return format!("{sign}{}\"", joined(left, fraction));
    }
    if left == 0 && fraction.is_none() {
        return format!("{sign}{feet}'");
    }
    format!("{sign}{feet}' {}\"", joined(left, fraction))
}

/// A run of goods: feet and whole inches, or metres to the centimetre: `145' 9"`, `66.67 m`.
pub fn run(exact: Exact, units: Units) -> String {
    match units {
        Units::Imperial => feet_inches(exact, 1),
        Units::Metric => {
            let centimetres = exact.nearest(Length::mm(10)).nm() / Length::mm(10).nm();
            let sign = if centimetres < 0 { "-" } else { "" };
            let (whole, left) = (centimetres.unsigned_abs() / 100, centimetres.unsigned_abs() % 100);
            let decimals = format!("{left:02}");
            let decimals = decimals.trim_end_matches('0');
            if decimals.is_empty() { format!("{sign}{whole} m") } else { format!("{sign}{whole}.{decimals} m") }
        }
    }
}

/// Millimetres to a step: `2222.5 mm`. The step is a decimal fraction of a millimetre.
pub fn millimetres(exact: Exact, step: Length) -> String {
    let nm = exact.nearest(step).nm();
    let sign = if nm < 0 { "-" } else { "" };
    let (whole, left) = (nm.unsigned_abs() / 1_000_000, nm.unsigned_abs() % 1_000_000);
    if left == 0 {
        return format!("{sign}{whole} mm");
    }
    let decimals = format!("{left:06}");
    format!("{sign}{whole}.{} mm", decimals.trim_end_matches('0'))
}

/// The usual text in one unit system: inches to 1/64 in, or millimetres to 0.1 mm.
pub fn plain(exact: Exact, units: Units) -> String {
    match units {
        Units::Imperial => inches(exact, FINEST_PARTS),
        Units::Metric => millimetres(exact, TENTH_MM),
    }
}

/// Inches, numerator and denominator of a length read to `1 / parts` inch, for stacked fractions.
///
/// Answers sign, whole inches, and the reduced fraction where there is one.
pub fn stacked(exact: Exact, parts: i64) -> (&'static str, i64, Option<(i64, i64)>) {
    let Imperial { sign, whole, fraction } = Imperial::of(exact, parts);
    (sign, whole, fraction)
}

struct Imperial {
    sign: &'static str,
    whole: i64,
    fraction: Option<(i64, i64)>,
}

impl Imperial {
    fn of(exact: Exact, parts: i64) -> Self {
        let parts = parts.max(1);
        let step = Length::from_nm((INCH.nm() / parts).max(1));
        let steps = exact.nearest(step).nm() / step.nm();
        let size = steps.saturating_abs();
        let (whole, left) = (size / parts, size % parts);
        let shared = num_integer::gcd(left, parts);
        Self {
            sign: if steps < 0 { "-" } else { "" },
            whole,
            fraction: (left != 0).then(|| (left / shared, parts / shared)),
        }
    }
}

fn joined(whole: i64, fraction: Option<(i64, i64)>) -> String {
    match (whole, fraction) {
        (whole, None) => whole.to_string(),
        (0, Some((top, bottom))) => format!("{top}/{bottom}"),
        (whole, Some((top, bottom))) => format!("{whole} {top}/{bottom}"),
    }
}

/// Numerator and denominator as JSON: whole numbers where they fit, else text.
pub(super) fn nm_pair(exact: Exact) -> [Value; 2] {
    [exact.nm(), exact.parts()].map(|number| match i64::try_from(number) {
        Ok(number) => json!(number),
        Err(_) => json!(number.to_string()),
    })
}

fn from_pair(pair: &Value) -> Option<Exact> {
    let number = |value: &Value| match value {
        Value::String(text) => text.parse::<i128>().ok(),
        other => other.as_i64().map(i128::from),
    };
    Exact::of_parts(number(pair.get(0)?)?, number(pair.get(1)?)?)
}

/// The number that formulas work with behind an answer's JSON leaf, printed or not: millimetres, the kind's metric unit, major units
/// of money.
pub fn number_in(leaf: &Value) -> Option<f64> {
    match leaf {
        Value::Number(number) => number.as_f64(),
        leaf => length_in(leaf)
            .map(Exact::in_mm)
            .or_else(|| leaf.get("value").and_then(Value::as_f64))
            .or_else(|| leaf.get("minor").and_then(Value::as_f64).map(|minor| minor / 100.0)),
    }
}

/// The length behind an answer's JSON leaf, printed or not: `{"nm": [top, bottom], ...}`.
pub fn length_in(leaf: &Value) -> Option<Exact> {
    from_pair(leaf.get("nm")?)
}

/// Prints every quantity of an answer in one unit system. Everything else stays as it is.
///
/// - A length becomes `{"mm", "text", "tape", "other", "nm"}`: `text` in feet and inches or millimetres, `tape` as called out
///   from a tape, `other` in the other unit system.
/// - A run of goods is told to the inch or the centimetre in all three of them.
/// - A tape reading also has `left`: how far the exact place lies beside the mark, in words of the trade.
/// - A physical quantity becomes `{"value", "unit", "text", "other", "kind"}`, money `{"minor", "text"}`.
/// - A sentence `{"say", "with"}` becomes its text.
pub fn walk(value: Value, units: Units) -> Value {
    match value {
        Value::Array(items) => items.into_iter().map(|item| walk(item, units)).collect(),
        Value::Object(map) => leaf(&map, units).unwrap_or_else(|| {
            map.into_iter().map(|(key, item)| (key, walk(item, units))).collect::<Map<_, _>>().into()
        }),
        other => other,
    }
}

fn leaf(map: &Map<String, Value>, units: Units) -> Option<Value> {
    if let Some(exact) = map.get("nm").and_then(from_pair) {
        return Some(printed_length(exact, map, units));
    }
    if let (Some(Value::String(name)), Some(value), true) = (map.get("kind"), map.get("value"), map.len() == 2) {
        let facts = kind_named(name)?;
        let value = value.as_f64()?;
        return Some(json!({
            "value": value,
            "unit": facts.metric.symbol,
            "text": physical::text(facts, value, units),
            "other": physical::text(facts, value, units.other()),
            "kind": name,
        }));
    }
    if let (Some(Value::String(say)), Some(Value::Array(with)), 2) = (map.get("say"), map.get("with"), map.len()) {
        let printed: Vec<Value> = with.iter().map(|figure| walk(figure.clone(), units)).collect();
        return Some(filled(say, &printed).into());
    }
    if let (Some(minor), 1) = (map.get("minor").and_then(Value::as_i64), map.len()) {
        return Some(json!({ "minor": minor, "text": Money::from_minor(minor).to_string() }));
    }
    None
}

/// Fills the `{}` places of a sentence with printed quantities.
fn filled(say: &str, printed: &[Value]) -> String {
    let mut places = printed.iter();
    let mut text = String::with_capacity(say.len() + 16 * printed.len());
    let mut rest = say;
    while let Some((before, after)) = rest.split_once("{}") {
        text.push_str(before);
        text.push_str(&places.next().map(printed_text).unwrap_or_default());
        rest = after;
    }
    text + rest
}

/// The text of a printed leaf: lengths as called out from a tape.
pub fn printed_text(leaf: &Value) -> String {
    let text = leaf.get("tape").or_else(|| leaf.get("text")).unwrap_or(leaf);
    text.as_str().map_or_else(|| text.to_string(), str::to_owned)
}

fn printed_length(exact: Exact, map: &Map<String, Value>, units: Units) -> Value {
    if map.get("run") == Some(&Value::Bool(true)) {
        let text = run(exact, units);
        return json!({
            "mm": exact.in_mm(), "text": text, "tape": text, "other": run(exact, units.other()), "nm": nm_pair(exact), "run": true,
        });
    }
    let tape = map.get("tape").and_then(|tape| serde_json::from_value::<Tape>(tape.clone()).ok());
    let toward = map.get("toward").and_then(|toward| serde_json::from_value::<Toward>(toward.clone()).ok());
    let Some((tape, toward)) = tape.zip(toward) else {
        return json!({
            "mm": exact.in_mm(),
            "text": match units {
                Units::Imperial => feet_inches(exact, FINEST_PARTS),
                Units::Metric => millimetres(exact, TENTH_MM),
            },
            "tape": plain(exact, units),
            "other": plain(exact, units.other()),
            "nm": nm_pair(exact),
        });
    };
    let reading = Reading { exact, tape, toward };
    let shown = reading.shown_in(units);
    json!({
        "mm": shown.in_mm(),
        "text": match units {
            Units::Imperial => feet_inches(shown.exact(), FINEST_PARTS),
            Units::Metric => millimetres(shown.exact(), TENTH_MM),
        },
        "tape": plain(shown.exact(), units),
        "other": plain(reading.shown_in(units.other()).exact(), units.other()),
        "left": left_in_words(exact - shown, units),
        "nm": nm_pair(shown.exact()),
        "exact_nm": nm_pair(exact),
    })
}

/// How far the exact place lies beside its mark: `1/64 in full`, `0.4 mm bare`, or `on the mark`.
fn left_in_words(left: Exact, units: Units) -> String {
    let size = plain(left.size(), units);
    if left == Exact::ZERO {
        return "on the mark".to_owned();
    }
    let tiny = match units {
        Units::Imperial => size.starts_with("0 "),
        Units::Metric => left.size() < TENTH_MM.exact().half(),
    };
    let side = if left.is_positive() { "full" } else { "bare" };
    if tiny { format!("a hair {side}") } else { format!("{size} {side}") }
}

/// A length of whole millimetres as a JSON number, exact where it has no more than six decimals.
pub fn mm_number(length: Length) -> f64 {
    length.nm() as f64 / MILLIMETRE.nm() as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_forms_of_one_length() {
        let length = Length::um(2_222_500).exact();
        assert_eq!(feet_inches(length, 16), "7' 3 1/2\"");
        assert_eq!(inches(length, 16), "87 1/2 in");
        assert_eq!(millimetres(length, TENTH_MM), "2222.5 mm");
        assert_eq!(millimetres(length, Length::mm(1)), "2223 mm");
        assert_eq!(feet_inches(-length, 16), "-7' 3 1/2\"");
        assert_eq!(feet_inches(Length::inches(96).exact(), 16), "8'");
        assert_eq!(feet_inches(Exact::ZERO, 16), "0\"");
    }

    #[test]
    fn a_full_numerator_carries_into_the_inch() {
        // 2.9999 in must read 3, not 2 16/16.
        assert_eq!(inches(Length::from_nm(76_197_460).exact(), 16), "3 in");
    }

    #[test]
    fn an_answer_is_printed_throughout_and_once() {
        let raw =
            json!({ "bay": { "nm": [330_200_000, 1] }, "count": 3, "air": { "kind": "temperature", "value": 18.0 } });
        let printed = walk(raw, Units::Imperial);
        assert_eq!(printed["bay"]["text"], "1' 1\"");
        assert_eq!(printed["bay"]["other"], "330.2 mm");
        assert_eq!(printed["air"]["text"], "64.4 °F");
        assert_eq!(printed["count"], 3);
    }

    #[test]
    fn a_mark_says_what_was_left_over() {
        let place = Tape::Sixteenth.mark(Length::sixty_fourths(65).exact());
        let printed = walk(serde_json::to_value(place).expect("plain data"), Units::Imperial);
        assert_eq!(printed["tape"], "1 in");
        assert_eq!(printed["left"], "1/64 in full");
    }
}
