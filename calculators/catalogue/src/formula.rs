//! The small language in which working states its formulas: read into a tree, evaluated by tests, printed by pages.
//!
//! Letters stand for given quantities; numbers, `+ - * / ^`, brackets and a few functions. Angles are in degrees, so that
//! `tan(a)` means what a saw's scale means. `pi` is the circle's number.

use std::collections::BTreeSet;

use thiserror::Error;

/// A formula read into a tree.
#[derive(Clone, Debug, PartialEq)]
pub enum Formula {
    /// A plain number, as it was written.
    Number(String),
    /// A letter or name.
    Symbol(String),
    /// The same with its sign turned.
    Negative(Box<Formula>),
    /// Two formulas joined by `+`, `-`, `*`, `/` or `^`.
    Joined(Box<Formula>, char, Box<Formula>),
    /// A function of some formulas.
    Call(String, Vec<Formula>),
}

/// Why a text is no formula.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum FormulaFault {
    /// Something else was due at this place.
    #[error("at {at}: {due} is due")]
    Due {
        /// Byte offset.
        at: usize,
        /// What should stand there.
        due: &'static str,
    },
    /// The function is not one of the few.
    #[error("{0} is no function here")]
    Function(String),
    /// Brackets nest too deep.
    #[error("brackets nest too deep")]
    Deep,
}

/// The functions a formula may use, with the number of arguments: zero for any number from one.
pub const FUNCTIONS: &[(&str, usize)] = &[
    ("sqrt", 1),
    ("sin", 1),
    ("cos", 1),
    ("tan", 1),
    ("asin", 1),
    ("acos", 1),
    ("atan", 1),
    ("ln", 1),
    ("log10", 1),
    ("exp", 1),
    ("abs", 1),
    ("floor", 1),
    ("ceil", 1),
    ("round", 1),
    ("min", 0),
    ("max", 0),
    ("sum", 0),
];

const DEEPEST: usize = 40;

/// Reads a formula.
/// # Errors
/// A [`FormulaFault`] with the place.
pub fn parse(text: &str) -> Result<Formula, FormulaFault> {
    let mut parser = Parser { text, at: 0, depth: 0 };
    let tree = parser.sum()?;
    parser.space();
    if parser.at < text.len() { Err(parser.due("an operator or the end")) } else { Ok(tree) }
}

impl Formula {
    /// The value, with `number` giving each letter's.
    /// # Errors
    /// The name of a letter that has no number.
    pub fn value(&self, number: &dyn Fn(&str) -> Option<f64>) -> Result<f64, String> {
        Ok(match self {
            Self::Number(text) => text.parse().map_err(|_| text.clone())?,
            Self::Symbol(name) => match number(name) {
                Some(value) => value,
                None if name == "pi" => std::f64::consts::PI,
                None => return Err(name.clone()),
            },
            Self::Negative(inner) => -inner.value(number)?,
            Self::Joined(left, operator, right) => {
                let (left, right) = (left.value(number)?, right.value(number)?);
                match operator {
                    '+' => left + right,
                    '-' => left - right,
                    '*' => left * right,
                    '/' => left / right,
                    _ => libm::pow(left, right),
                }
            }
            Self::Call(name, arguments) => {
                let values = arguments.iter().map(|argument| argument.value(number)).collect::<Result<Vec<_>, _>>()?;
                call(name, &values)
            }
        })
    }

    /// Every letter in the formula, each once.
    pub fn symbols(&self) -> BTreeSet<&str> {
        match self {
            Self::Number(_) => BTreeSet::new(),
            Self::Symbol(name) => BTreeSet::from([name.as_str()]),
            Self::Negative(inner) => inner.symbols(),
            Self::Joined(left, _, right) => left.symbols().union(&right.symbols()).copied().collect(),
            Self::Call(_, arguments) => arguments.iter().flat_map(Self::symbols).collect(),
        }
    }
}

fn call(name: &str, values: &[f64]) -> f64 {
    let first = values.first().copied().unwrap_or(f64::NAN);
    match name {
        "sqrt" => libm::sqrt(first),
        "sin" => libm::sin(first.to_radians()),
        "cos" => libm::cos(first.to_radians()),
        "tan" => libm::tan(first.to_radians()),
        "asin" => libm::asin(first).to_degrees(),
        "acos" => libm::acos(first).to_degrees(),
        "atan" => libm::atan(first).to_degrees(),
        "ln" => libm::log(first),
        "log10" => libm::log10(first),
        "exp" => libm::exp(first),
        "abs" => first.abs(),
        "floor" => libm::floor(first),
        "ceil" => libm::ceil(first),
        "round" => libm::floor(first + 0.5),
        "min" => values.iter().copied().fold(f64::INFINITY, f64::min),
        "max" => values.iter().copied().fold(f64::NEG_INFINITY, f64::max),
        "sum" => values.iter().sum(),
        _ => f64::NAN,
    }
}

struct Parser<'t> {
    text: &'t str,
    at: usize,
    depth: usize,
}

impl Parser<'_> {
    fn sum(&mut self) -> Result<Formula, FormulaFault> {
        self.chain(&['+', '-'], Self::product)
    }

    fn product(&mut self) -> Result<Formula, FormulaFault> {
        self.chain(&['*', '/'], Self::power)
    }

    fn chain(
        &mut self,
        operators: &[char],
        part: fn(&mut Self) -> Result<Formula, FormulaFault>,
    ) -> Result<Formula, FormulaFault> {
        let mut left = part(self)?;
        while let Some(operator) = self.peek().filter(|sign| operators.contains(sign)) {
            self.at += 1;
            left = Formula::Joined(Box::new(left), operator, Box::new(part(self)?));
        }
        Ok(left)
    }

    fn power(&mut self) -> Result<Formula, FormulaFault> {
        self.depth += 1;
        if self.depth > DEEPEST {
            return Err(FormulaFault::Deep);
        }
        let tree = if self.take('-') {
            Formula::Negative(Box::new(self.power()?))
        } else {
            let base = self.atom()?;
            if self.take('^') { Formula::Joined(Box::new(base), '^', Box::new(self.power()?)) } else { base }
        };
        self.depth -= 1;
        Ok(tree)
    }

    fn atom(&mut self) -> Result<Formula, FormulaFault> {
        match self.peek() {
            Some('(') => {
                self.at += 1;
                let inner = self.sum()?;
                self.expect(')', "a closing bracket")?;
                Ok(inner)
            }
            Some(sign) if sign.is_ascii_digit() => {
                Ok(Formula::Number(self.run(|sign| sign.is_ascii_digit() || sign == '.').to_owned()))
            }
            Some(sign) if sign.is_alphabetic() => {
                let name = self.run(|sign| sign.is_alphanumeric() || sign == '_').to_owned();
                if self.take('(') { self.call(name) } else { Ok(Formula::Symbol(name)) }
            }
            _ => Err(self.due("a number, a letter or a bracket")),
        }
    }

    fn call(&mut self, name: String) -> Result<Formula, FormulaFault> {
        let mut arguments = vec![self.sum()?];
        while self.take(',') {
            arguments.push(self.sum()?);
        }
        self.expect(')', "a closing bracket")?;
        match FUNCTIONS.iter().find(|(known, _)| *known == name) {
            Some((_, count)) if *count == 0 || *count == arguments.len() => Ok(Formula::Call(name, arguments)),
            _ => Err(FormulaFault::Function(name)),
        }
    }

    fn run(&mut self, belongs: fn(char) -> bool) -> &str {
        let rest = &self.text[self.at..];
        let end = rest.find(|sign| !belongs(sign)).unwrap_or(rest.len());
        self.at += end;
        &rest[..end]
    }

    fn space(&mut self) {
        let rest = &self.text[self.at..];
        self.at += rest.len() - rest.trim_start().len();
    }

    fn peek(&mut self) -> Option<char> {
        self.space();
        self.text[self.at..].chars().next()
    }

    fn take(&mut self, sign: char) -> bool {
        let found = self.peek() == Some(sign);
        self.at += usize::from(found) * sign.len_utf8();
        found
    }

    fn expect(&mut self, sign: char, due: &'static str) -> Result<(), FormulaFault> {
        if self.take(sign) { Ok(()) } else { Err(self.due(due)) }
    }

    fn due(&self, due: &'static str) -> FormulaFault {
        FormulaFault::Due { at: self.at, due }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    fn value(text: &str) -> f64 {
        let numbers = |name: &str| match name {
            "L" => Some(120.0),
            "b" => Some(2.5),
            "n" => Some(5.0),
            _ => None,
        };
        parse(text).expect(text).value(&numbers).expect(text)
    }

    #[test]
    fn formulas_come_to_what_a_hand_gets() {
        assert_relative_eq!(value("(L - n * b) / (n - 1)"), 26.875);
        assert_relative_eq!(value("2 ^ 3 ^ 2"), 512.0);
        assert_relative_eq!(value("-b ^ 2 + 10"), 3.75);
        assert_relative_eq!(value("atan(3 / 4)"), 36.869_897_645_844, epsilon = 1e-9);
        assert_relative_eq!(value("max(1, L, n) - min(b, 3)"), 117.5);
        assert_relative_eq!(value("10 - 4 - 3"), 3.0);
    }

    #[test]
    fn what_is_no_formula_says_where() {
        assert_eq!(parse("(L - "), Err(FormulaFault::Due { at: 5, due: "a number, a letter or a bracket" }));
        assert_eq!(parse("L L"), Err(FormulaFault::Due { at: 2, due: "an operator or the end" }));
        assert_eq!(parse("nonsense(L)"), Err(FormulaFault::Function("nonsense".to_owned())));
        assert_eq!(parse(&"(".repeat(9_000)), Err(FormulaFault::Deep));
        assert_eq!(parse("x").expect("a letter").value(&|_| None), Err("x".to_owned()));
    }
}
