//! Money: whole minor units of a currency that the shop names.

use std::fmt;

use serde_json::Value;

/// An amount of money in whole minor units (cents, pence); the currency is named once, by the shop.
///
/// Read from `"48"`, `"48.5"`, `"48.00"`, or a JSON number with at most two decimals. Range: ten million million minor units.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Money(i64);

impl Money {
    /// No money.
    pub const ZERO: Self = Self(0);
    /// The largest amount that is read.
    pub const MOST: Self = Self(10_000_000_000_000);

    /// So many minor units.
    pub const fn from_minor(minor: i64) -> Self {
        Self(minor)
    }

    /// The count of minor units.
    pub const fn minor(self) -> i64 {
        self.0
    }

    /// This amount times `top / bottom`, rounded half away from zero to the minor unit; `None` for a bottom of zero or overflow.
    pub fn share(self, top: i64, bottom: i64) -> Option<Self> {
        if bottom == 0 {
            return None;
        }
        let product = i128::from(self.0) * i128::from(top) * 2;
        let (bottom, product) = (i128::from(bottom).abs(), if bottom < 0 { -product } else { product });
        let rounded = if product < 0 { (product - bottom) / (2 * bottom) } else { (product + bottom) / (2 * bottom) };
        i64::try_from(rounded).ok().map(Self)
    }

    /// The sum, unless it leaves 64 bits.
    pub fn plus(self, other: Self) -> Option<Self> {
        self.0.checked_add(other.0).map(Self)
    }

    /// The difference, unless it leaves 64 bits.
    pub fn less(self, other: Self) -> Option<Self> {
        self.0.checked_sub(other.0).map(Self)
    }

    /// So many times the amount, unless it leaves 64 bits.
    pub fn times(self, count: i64) -> Option<Self> {
        self.0.checked_mul(count).map(Self)
    }

    /// Reads an amount in major units.
    /// # Errors
    /// A sentence that names the rule.
    pub fn read(text: &str) -> Result<Self, &'static str> {
        let text = text.trim();
        let (negative, figures) = text.strip_prefix('-').map_or((false, text), |rest| (true, rest));
        let (major, minor) = figures.split_once('.').unwrap_or((figures, "0"));
        let digits = |part: &str| !part.is_empty() && part.chars().all(|sign| sign.is_ascii_digit());
        if !digits(major) || !digits(minor) {
            return Err("an amount is figures with at most one point");
        }
        if minor.len() > 2 && !minor[2..].chars().all(|sign| sign == '0') {
            return Err("an amount has at most two decimals");
        }
        let cents = format!("{minor:0<2}");
        let total = major.parse::<i64>().ok().and_then(|major| major.checked_mul(100));
        let total = total.and_then(|total| cents[..2].parse::<i64>().ok().and_then(|cents| total.checked_add(cents)));
        match total {
            Some(total) if total <= Self::MOST.0 => Ok(Self(if negative { -total } else { total })),
            _ => Err("an amount this large is not worked with"),
        }
    }
}

impl Money {
    /// Reads a JSON leaf: text or a number of major units, or the object form that answers use.
    /// # Errors
    /// A sentence that names the rule.
    pub fn from_json(value: &Value) -> Result<Self, &'static str> {
        match value {
            Value::String(text) => Self::read(text),
            Value::Number(number) => Self::read(&number.to_string()),
            Value::Object(map) => map
                .get("minor")
                .and_then(Value::as_i64)
                .filter(|minor| minor.unsigned_abs() <= Self::MOST.0.unsigned_abs())
                .map(Self)
                .ok_or("an amount is {\"minor\": count}"),
            _ => Err("an amount is a number or text"),
        }
    }
}

impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        write!(f, "{sign}{}.{:02}", self.0.unsigned_abs() / 100, self.0.unsigned_abs() % 100)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_read_to_the_minor_unit() {
        assert_eq!(Money::read("48"), Ok(Money(4_800)));
        assert_eq!(Money::read("48.5"), Ok(Money(4_850)));
        assert_eq!(Money::read("-0.07"), Ok(Money(-7)));
        assert!(Money::read("1.005").is_err());
        assert!(Money::read("99999999999999999999").is_err());
        assert!(Money::read("1,000").is_err());
    }

    #[test]
    fn shares_round_half_away_from_zero() {
        assert_eq!(Money(5).share(1, 2), Some(Money(3)));
        assert_eq!(Money(-5).share(1, 2), Some(Money(-3)));
        assert_eq!(Money(5).share(1, 0), None);
    }
}
