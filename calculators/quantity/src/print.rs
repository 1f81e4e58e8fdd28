//! Lengths as text.

use serde_json::Value;

use super::exact::Exact;
use super::length::{FOOT, INCH, Length, MILLIMETRE};
use super::tape::{Reading, Units};

/// A tenth of a millimetre: the step of metric text where nothing else was asked.
pub const TENTH_MM: Length = Length::um(100);

/// The step of imperial text where nothing else was asked: 1/64 in.
pub const FINEST_PARTS: i64 = 64;

/// Inches and a fraction reduced, as called out from a tape: `87 1/2 in`.
///
/// `parts` is the denominator of the finest fraction: 8, 16, 32 or 64. Zero or less counts as one.
/// # Examples
/// ```
/// use quantity::{Length, print};
/// assert_eq!(print::inches(Length::um(2_222_500).exact(), 16), "87 1/2 in");
/// ```
pub fn inches(exact: Exact, parts: i64) -> String {
    written(|out| push_inches(out, exact, parts))
}

/// Writes what [`inches`] says.
pub fn push_inches(out: &mut String, exact: Exact, parts: i64) {
    let Imperial { sign, whole, fraction } = Imperial::of(exact, parts);
    out.push_str(sign);
    push_joined(out, whole, fraction);
    out.push_str(" in");
}

/// Feet, inches and a fraction reduced: `7' 3 1/2"`. Below one foot the feet are left out.
pub fn feet_inches(exact: Exact, parts: i64) -> String {
    written(|out| push_feet_inches(out, exact, parts))
}

/// Writes what [`feet_inches`] says.
pub fn push_feet_inches(out: &mut String, exact: Exact, parts: i64) {
    let Imperial { sign, whole, fraction } = Imperial::of(exact, parts);
    let twelve = FOOT.nm() / INCH.nm();
    let (feet, left) = (whole / twelve, whole % twelve);
    out.push_str(sign);
    if feet != 0 {
        push_whole(out, feet.unsigned_abs());
        out.push('\'');
        if left == 0 && fraction.is_none() {
            return;
        }
        out.push(' ');
    }
    push_joined(out, left, fraction);
    out.push('"');
}

/// A run of goods: feet and whole inches, or metres to the centimetre: `145' 9"`, `66.67 m`.
pub fn run(exact: Exact, units: Units) -> String {
    match units {
        Units::Imperial => feet_inches(exact, 1),
        Units::Metric => written(|out| {
            let centimetres = exact.nearest(Length::mm(10)).nm() / Length::mm(10).nm();
            push_decimal(out, centimetres, 2);
            out.push_str(" m");
        }),
    }
}

/// Millimetres to a step: `2222.5 mm`. The step is a decimal fraction of a millimetre.
pub fn millimetres(exact: Exact, step: Length) -> String {
    written(|out| push_millimetres(out, exact, step))
}

/// Writes what [`millimetres`] says.
pub fn push_millimetres(out: &mut String, exact: Exact, step: Length) {
    push_decimal(out, exact.nearest(step).nm(), 6);
    out.push_str(" mm");
}

/// The usual text in one unit system: inches to 1/64 in, or millimetres to 0.1 mm.
pub fn plain(exact: Exact, units: Units) -> String {
    written(|out| push_plain(out, exact, units))
}

/// Writes what [`plain`] says.
pub fn push_plain(out: &mut String, exact: Exact, units: Units) {
    match units {
        Units::Imperial if hidden(exact, Length::from_nm(INCH.nm() / FINEST_PARTS), 12_700) => {
            out.push_str(&thin(exact.in_mm() / INCH.in_mm(), "in"));
        }
        Units::Metric if hidden(exact, TENTH_MM, 1_000) => out.push_str(&thin(exact.in_mm(), "mm")),
        Units::Imperial => push_inches(out, exact, FINEST_PARTS),
        Units::Metric => push_millimetres(out, exact, TENTH_MM),
    }
}

fn written(write: impl FnOnce(&mut String)) -> String {
    let mut out = String::with_capacity(24);
    write(&mut out);
    out
}

/// A whole number in figures.
pub(crate) fn push_whole(out: &mut String, number: u64) {
    let mut figures = [b'0'; 20];
    let (mut at, mut rest) = (figures.len(), number);
    loop {
        at -= 1;
        figures[at] = b'0' + (rest % 10) as u8;
        rest /= 10;
        if rest == 0 {
            break;
        }
    }
    out.extend(figures[at..].iter().map(|figure| char::from(*figure)));
}

/// A number that is whole in units of its last decimal, trailing zeros dropped: 2222500000 with six decimals is `2222.5`.
pub(crate) fn push_decimal(out: &mut String, number: i64, decimals: u32) {
    let unit = 10_u64.pow(decimals);
    if number < 0 {
        out.push('-');
    }
    push_whole(out, number.unsigned_abs() / unit);
    let (mut left, mut places) = (number.unsigned_abs() % unit, decimals as usize);
    if left == 0 {
        return;
    }
    while left % 10 == 0 {
        (left, places) = (left / 10, places - 1);
    }
    out.push('.');
    let written = out.len();
    push_whole(out, left);
    for _ in out.len() - written..places {
        out.insert(written, '0');
    }
}

/// A length told so fully that working which is printed comes out again: in decimals where it stands on no mark of the usual text.
pub fn in_full(exact: Exact, units: Units) -> String {
    let (mark, size, unit) = match units {
        Units::Imperial => (Length::from_nm(INCH.nm() / FINEST_PARTS), INCH, "in"),
        Units::Metric => (TENTH_MM, MILLIMETRE, "mm"),
    };
    if exact == exact.nearest(mark).exact() {
        return plain(exact, units);
    }
    let number = exact.in_mm() / size.in_mm();
    let decimals = (6.0 - libm::floor(libm::log10(libm::fabs(number)))).clamp(3.0, 9.0) as usize;
    let number = format!("{number:.decimals$}");
    format!("{} {unit}", number.trim_end_matches('0').trim_end_matches('.'))
}

/// Whether a length is something, and would still be printed as nothing to this step; below `least` nanometres it is nothing.
fn hidden(exact: Exact, step: Length, least: i64) -> bool {
    exact.nearest(step) == Length::ZERO && Length::from_nm(least).exact() <= exact.size()
}

fn thin(number: f64, unit: &str) -> String {
    let text = format!("{number:.4}");
    format!("{} {unit}", text.trim_end_matches('0').trim_end_matches('.'))
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

fn push_joined(out: &mut String, whole: i64, fraction: Option<(i64, i64)>) {
    if whole != 0 || fraction.is_none() {
        push_whole(out, whole.unsigned_abs());
    }
    if let Some((top, bottom)) = fraction {
        if whole != 0 {
            out.push(' ');
        }
        push_whole(out, top.unsigned_abs());
        out.push('/');
        push_whole(out, bottom.unsigned_abs());
    }
}

fn from_pair(pair: &Value) -> Option<Exact> {
    let number = |value: &Value| match value {
        Value::String(text) => text.parse::<i128>().ok(),
        other => other.as_i64().map(i128::from),
    };
    Exact::of_parts(number(pair.get(0)?)?, number(pair.get(1)?)?)
}

/// The length behind an answer's JSON leaf, printed or not: `{"nm": [top, bottom], ...}`.
pub fn length_in(leaf: &Value) -> Option<Exact> {
    from_pair(leaf.get("nm")?)
}

/// How far the exact place of a reading lies beside its mark: `1/64 in full`, `0.4 mm bare`, or `on the mark`.
pub fn left_over(reading: Reading, units: Units) -> String {
    match beside(reading.exact - reading.shown_in(units), units) {
        Beside::On => "on the mark".to_owned(),
        Beside::Hair(side) => format!("a hair {side}"),
        Beside::By(size, side) => format!("{} {side}", plain(size, units)),
    }
}

/// Where an exact place lies beside its mark. The side is `full` beyond it, `bare` before it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Beside {
    /// Nowhere: it is the mark.
    On,
    /// By less than can be told.
    Hair(&'static str),
    /// By so much.
    By(Exact, &'static str),
}

/// Where what is left over of a reading lies.
pub fn beside(left: Exact, units: Units) -> Beside {
    let size = left.size();
    let tiny = match units {
        Units::Imperial => size.nearest(Length::from_nm(INCH.nm() / FINEST_PARTS)) == Length::ZERO,
        Units::Metric => size < TENTH_MM.exact().half(),
    };
    match (left.is_positive(), tiny) {
        _ if left == Exact::ZERO => Beside::On,
        (true, true) => Beside::Hair("full"),
        (false, true) => Beside::Hair("bare"),
        (true, false) => Beside::By(size, "full"),
        (false, false) => Beside::By(size, "bare"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Tape;

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
    fn a_mark_says_what_was_left_over() {
        let place = Tape::Sixteenth.mark(Length::sixty_fourths(65).exact());
        assert_eq!(left_over(place, Units::Imperial), "1/64 in full");
        assert_eq!(left_over(Tape::Sixteenth.mark(INCH.exact()), Units::Imperial), "on the mark");
        let hair = Tape::Sixteenth.mark(Exact::whole(INCH.nm() - 1_000));
        assert_eq!(left_over(hair, Units::Imperial), "a hair bare");
    }
}
