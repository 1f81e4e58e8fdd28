//! Reading a length as a person writes it.
//!
//! One small grammar instead of a list of patterns: an optional sign, then either a metric number with its unit, or feet, inches
//! and a fraction. What could be meant in two ways is refused, with the rule and a valid example; nothing is guessed from its size.

use serde_json::Value;
use thiserror::Error;

use super::length::{FOOT, INCH, Length, MICROMETRE, MILLIMETRE, SIXTY_FOURTH};
use super::print;
use super::tape::Units;

/// Why a text is no length. Every variant is a rule of reading; its text says the rule, [`LengthFault::valid_example`] the way out.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[allow(missing_docs)] // The message of each variant is its documentation.
pub enum LengthFault {
    #[error("nothing was written; a length is needed")]
    Empty,
    #[error("no length can be read in this; write a number with its unit")]
    NotALength,
    #[error("a comma before three figures can mean a decimal or thousands; write a point, or leave the comma out")]
    CommaInDoubt,
    #[error("a fraction's lower figure must be 2, 4, 8, 16, 32 or 64")]
    Denominator,
    #[error("a fraction must be less than one inch")]
    FractionTooLarge,
    #[error("a decimal and a fraction cannot stand together")]
    DecimalAndFraction,
    #[error("after feet, inches must be less than 12")]
    TwelveInches,
    #[error("feet must be a whole number when inches follow")]
    BrokenFeet,
    #[error("a bare decimal that is no mark on an inch tape can mean feet and inches or millimetres; write the unit")]
    DecimalInDoubt,
    #[error("a fraction without a unit is doubtful where millimetres are used; write the inch mark, or millimetres")]
    FractionInMillimetres,
    #[error("a bare number needs its unit here")]
    NoUnit,
    #[error("longer than 1 km; is there a figure too many?")]
    TooLong,
}

impl LengthFault {
    /// A text that would have been read, in the reader's units, close to the rule that was met.
    pub const fn valid_example(&self, units: Units) -> &'static str {
        match (self, units) {
            (Self::TwelveInches | Self::BrokenFeet, _) => "7' 3 1/2\"",
            (Self::DecimalInDoubt, _) => "12 5/8 in",
            (Self::CommaInDoubt, _) => "3750 mm",
            (
                Self::Denominator | Self::FractionTooLarge | Self::DecimalAndFraction | Self::FractionInMillimetres,
                _,
            ) => "87 1/2 in",
            (_, Units::Imperial) => "87 1/2 in",
            (_, Units::Metric) => "2222.5 mm",
        }
    }
}

impl Length {
    /// Reads a length; a bare number takes `units`: inches, or millimetres.
    ///
    /// What is finer than a nanometre is read as the nearest one.
    ///
    /// Forms: `7' 3 1/2"`, `7 ft 3-1/2 in`, `87 1/2`, `87.5"`, `2222.5 mm`, `2.2225 m`, `222,25 cm`, vulgar fractions, primes and
    /// typographic quotes; `full` or `strong` adds 1/64 in, `bare` or `shy` takes it off (common practice, no source).
    /// # Errors
    /// A [`LengthFault`] names the rule that was met.
    /// # Examples
    /// ```
    /// use quantity::{Length, LengthFault, Units};
    /// assert_eq!(Length::read("222,25 cm", Units::Imperial), Length::read("7 ft 3-1/2 in", Units::Metric));
    /// assert_eq!(Length::read("3,750", Units::Metric), Err(LengthFault::CommaInDoubt));
    /// ```
    pub fn read(text: &str, units: Units) -> Result<Self, LengthFault> {
        Reader::new(text, Some(units))?.length()
    }

    /// Reads a length that names its unit itself.
    /// # Errors
    /// As [`Length::read`], and [`LengthFault::NoUnit`] for a bare number.
    pub fn read_with_unit(text: &str) -> Result<Self, LengthFault> {
        Reader::new(text, None)?.length()
    }

    /// Reads a JSON leaf: text, a number of millimetres, or the object form that answers use.
    ///
    /// `units` completes a bare number in text; `None` refuses it.
    /// # Errors
    /// A [`LengthFault`] names the rule that was met.
    pub fn from_json(value: &Value, units: Option<Units>) -> Result<Self, LengthFault> {
        match value {
            Value::String(text) => Reader::new(text, units)?.length(),
            // A JSON number is a float of millimetres: the nearest nanometre is what was meant by 1219.1999999999998.
            Value::Number(number) => {
                let nm = number.as_f64().ok_or(LengthFault::NotALength)? * MILLIMETRE.nm() as f64;
                if nm.abs() > Self::LONGEST.nm() as f64 {
                    Err(LengthFault::TooLong)
                } else {
                    Ok(Self::nearest_mm(nm / 1e6))
                }
            }
            Value::Object(_) => match print::length_in(value) {
                Some(exact) if exact.parts() == 1 => bounded(exact.nm()).map(Self::from_nm),
                Some(exact) => Ok(exact.nearest(Self::from_nm(1))),
                None => Err(LengthFault::NotALength),
            },
            _ => Err(LengthFault::NotALength),
        }
    }
}

fn bounded(nm: i128) -> Result<i64, LengthFault> {
    i64::try_from(nm)
        .ok()
        .filter(|nm| nm.unsigned_abs() <= Length::LONGEST.nm().unsigned_abs())
        .ok_or(LengthFault::TooLong)
}

/// The unit systems' words. Order does not matter: a unit is a whole word.
const METRIC: [(&str, i64); 9] = [
    ("mm", MILLIMETRE.nm()),
    ("cm", 10 * MILLIMETRE.nm()),
    ("m", 1_000 * MILLIMETRE.nm()),
    ("metre", 1_000 * MILLIMETRE.nm()),
    ("metres", 1_000 * MILLIMETRE.nm()),
    ("millimetres", MILLIMETRE.nm()),
    ("um", MICROMETRE.nm()),
    ("µm", MICROMETRE.nm()),
    ("nm", 1),
];
const FEET: [&str; 4] = ["'", "ft", "foot", "feet"];
const INCHES: [&str; 5] = ["\"", "''", "in", "inch", "inches"];

#[derive(Clone, Debug, PartialEq, Eq)]
enum Token {
    /// Digits with at most one decimal point: value times ten to the power of `decimals`.
    Number {
        digits: i128,
        decimals: u32,
    },
    Slash,
    Dash,
    Word(String),
}

struct Reader {
    tokens: Vec<Token>,
    at: usize,
    units: Option<Units>,
    negative: bool,
}

impl Reader {
    fn new(text: &str, units: Option<Units>) -> Result<Self, LengthFault> {
        let mut tokens = tokens(&plain_signs(text))?;
        if tokens.is_empty() {
            return Err(LengthFault::Empty);
        }
        let negative = tokens[0] == Token::Dash;
        if negative || tokens[0] == Token::Word("+".to_owned()) {
            tokens.remove(0);
        }
        Ok(Self { tokens, at: 0, units, negative })
    }

    fn length(mut self) -> Result<Length, LengthFault> {
        let shade = self.take_shade();
        let nm = match self.metric() {
            Some(read) => read?,
            None => self.imperial()?,
        };
        if self.at < self.tokens.len() {
            return Err(LengthFault::NotALength);
        }
        let signed = if self.negative { -nm } else { nm };
        bounded(signed + i128::from(shade.nm())).map(Length::from_nm)
    }

    /// `full` and `strong` stand for one sixty-fourth more, `bare` and `shy` for one less.
    fn take_shade(&mut self) -> Length {
        let shade = match self.tokens.last() {
            Some(Token::Word(word)) if matches!(word.as_str(), "full" | "strong") => SIXTY_FOURTH,
            Some(Token::Word(word)) if matches!(word.as_str(), "bare" | "shy") => -SIXTY_FOURTH,
            _ => return Length::ZERO,
        };
        self.tokens.pop();
        shade
    }

    /// A number with a metric unit, or a bare number where millimetres are used.
    fn metric(&mut self) -> Option<Result<i128, LengthFault>> {
        let Some(Token::Number { digits, decimals }) = self.tokens.get(self.at).cloned() else { return None };
        let factor = match self.tokens.get(self.at + 1) {
            Some(Token::Word(word)) => METRIC.iter().find(|(unit, _)| unit == word).map(|(_, nm)| *nm)?,
            None if self.units == Some(Units::Metric) => MILLIMETRE.nm(),
            _ => return None,
        };
        self.at += 2;
        Some(scaled(digits, decimals, factor))
    }

    fn imperial(&mut self) -> Result<i128, LengthFault> {
        let Some((digits, decimals)) = self.number() else { return Err(LengthFault::NotALength) };
        if !self.unit(&FEET) {
            return self.inches(digits, decimals, false);
        }
        if self.at == self.tokens.len() {
            return scaled(digits, decimals, FOOT.nm());
        }
        if decimals > 0 {
            return Err(LengthFault::BrokenFeet);
        }
        self.dash();
        let feet = scaled(digits, 0, FOOT.nm())?;
        let Some((digits, decimals)) = self.number() else { return Err(LengthFault::NotALength) };
        let inches = self.inches(digits, decimals, true)?;
        if inches >= i128::from(FOOT.nm()) {
            return Err(LengthFault::TwelveInches);
        }
        Ok(feet + inches)
    }

    /// What follows the feet, or stands alone: a whole or decimal number and a fraction, and the inch mark.
    fn inches(&mut self, digits: i128, decimals: u32, after_feet: bool) -> Result<i128, LengthFault> {
        let (whole, fraction) = if self.is_slash() {
            (0, self.fraction(digits, decimals)?)
        } else {
            let whole = scaled(digits, decimals, INCH.nm())?;
            let dashed = self.dash();
            match self.number() {
                Some((top, top_decimals)) => {
                    if decimals > 0 {
                        return Err(LengthFault::DecimalAndFraction);
                    }
                    (whole, self.fraction(top, top_decimals)?)
                }
                None if dashed => return Err(LengthFault::NotALength),
                None => (whole, 0),
            }
        };
        if !self.unit(&INCHES) && !after_feet {
            match self.units {
                None => return Err(LengthFault::NoUnit),
                Some(Units::Metric) => return Err(LengthFault::FractionInMillimetres),
                Some(Units::Imperial) if whole % i128::from(SIXTY_FOURTH.nm()) != 0 => {
                    return Err(LengthFault::DecimalInDoubt);
                }
                Some(Units::Imperial) => {}
            }
        }
        Ok(whole + fraction)
    }

    /// The rest of a fraction whose upper figure was just read.
    fn fraction(&mut self, top: i128, top_decimals: u32) -> Result<i128, LengthFault> {
        if !self.is_slash() {
            return Err(LengthFault::NotALength);
        }
        self.at += 1;
        let Some((bottom, 0)) = self.number() else { return Err(LengthFault::NotALength) };
        if top_decimals > 0 {
            return Err(LengthFault::DecimalAndFraction);
        }
        if !matches!(bottom, 2 | 4 | 8 | 16 | 32 | 64) {
            return Err(LengthFault::Denominator);
        }
        if top >= bottom {
            return Err(LengthFault::FractionTooLarge);
        }
        Ok(top * (64 / bottom) * i128::from(SIXTY_FOURTH.nm()))
    }

    fn number(&mut self) -> Option<(i128, u32)> {
        match self.tokens.get(self.at) {
            Some(Token::Number { digits, decimals }) => {
                self.at += 1;
                Some((*digits, *decimals))
            }
            _ => None,
        }
    }

    fn unit(&mut self, names: &[&str]) -> bool {
        let found = matches!(self.tokens.get(self.at), Some(Token::Word(word)) if names.contains(&word.as_str()));
        self.at += usize::from(found);
        found
    }

    fn is_slash(&self) -> bool {
        self.tokens.get(self.at) == Some(&Token::Slash)
    }

    fn dash(&mut self) -> bool {
        let found = self.tokens.get(self.at) == Some(&Token::Dash);
        self.at += usize::from(found);
        found
    }
}

/// `digits / 10^decimals` times `factor`, as whole nanometres.
fn scaled(digits: i128, decimals: u32, factor: i64) -> Result<i128, LengthFault> {
    let product = digits.checked_mul(i128::from(factor)).ok_or(LengthFault::TooLong)?;
    let divisor = 10_i128.checked_pow(decimals).ok_or(LengthFault::TooLong)?;
    // Finer than a nanometre: the nearest one, halves upward.
    bounded((product + divisor / 2).div_euclid(divisor)).map(i128::from)
}

/// Typographic signs in the plain form that the grammar knows.
fn plain_signs(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '’' | '‘' | '′' | '´' | '`' => plain.push('\''),
            '”' | '“' | '″' => plain.push('"'),
            '⁄' | '∕' => plain.push('/'),
            '−' | '–' | '—' | '‑' => plain.push('-'),
            'μ' => plain.push('µ'),
            _ => match vulgar(sign) {
                Some(fraction) => {
                    plain.push(' ');
                    plain.push_str(fraction);
                }
                None => plain.extend(sign.to_lowercase()),
            },
        }
    }
    plain
}

const fn vulgar(sign: char) -> Option<&'static str> {
    Some(match sign {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        _ => return None,
    })
}

fn tokens(text: &str) -> Result<Vec<Token>, LengthFault> {
    let mut tokens = Vec::new();
    let mut rest = text.trim_start();
    while let Some(sign) = rest.chars().next() {
        let end = match sign {
            '0'..='9' | '.' | ',' => {
                rest.find(|c: char| !(c.is_ascii_digit() || c == '.' || c == ',')).unwrap_or(rest.len())
            }
            '\'' => {
                if rest.starts_with("''") {
                    2
                } else {
                    1
                }
            }
            c if c.is_alphabetic() => rest.find(|c: char| !c.is_alphabetic()).unwrap_or(rest.len()),
            c => c.len_utf8(),
        };
        let (word, after) = rest.split_at(end);
        tokens.push(match sign {
            '0'..='9' | '.' | ',' => number(word)?,
            '/' => Token::Slash,
            '-' => Token::Dash,
            '"' | '\'' | '+' => Token::Word(word.to_owned()),
            c if c.is_alphabetic() => Token::Word(word.to_owned()),
            _ => return Err(LengthFault::NotALength),
        });
        // "7 ft." and "3 in." end in a full stop that says nothing.
        let after = match tokens.last() {
            Some(Token::Word(_)) => after.strip_prefix('.').unwrap_or(after),
            _ => after,
        };
        rest = after.trim_start();
    }
    Ok(tokens)
}

fn number(word: &str) -> Result<Token, LengthFault> {
    let marks = word.matches(['.', ',']).count();
    let (before, after) = word.split_once(['.', ',']).unwrap_or((word, ""));
    if word.contains(',') && (marks > 1 || after.len() == 3) {
        return Err(LengthFault::CommaInDoubt);
    }
    if marks > 1 || before.is_empty() && after.is_empty() || marks == 1 && after.is_empty() {
        return Err(LengthFault::NotALength);
    }
    // Sixteen decimals of a foot lie far below a nanometre.
    let after = after.get(..after.len().min(16)).unwrap_or(after).trim_end_matches('0');
    let digits = format!("{before}{after}");
    let digits = digits.trim_start_matches('0');
    if digits.len() > 24 {
        return Err(LengthFault::TooLong);
    }
    let digits = if digits.is_empty() { 0 } else { digits.parse().map_err(|_| LengthFault::NotALength)? };
    Ok(Token::Number { digits, decimals: after.len() as u32 })
}

#[cfg(test)]
mod tests;
