//! Working as data: named quantities in, a formula, a named quantity out, so that a page prints it in any unit system.

use std::borrow::Cow;

use crate::{Figure, Words};

/// A quantity with its letter and its name.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// The letter used in the formula.
    pub symbol: Cow<'static, str>,
    /// What the letter stands for.
    pub name: Cow<'static, str>,
    /// Its value.
    pub value: Figure,
}

/// One line of working: what is worked out, by which formula, from what, to what.
///
/// The formula works on [`Figure::number`]s: lengths in millimetres, physical quantities in their metric unit, angles in
/// degrees. A test evaluates every formula of every worked example and compares it with the result that stands beside it.
/// # Examples
/// ```
/// use catalogue::Step;
/// use quantity::Length;
/// let step = Step::new("clear bay")
///     .by("(L - n * b) / m")
///     .given("L", "run", Length::mm(3660)).given("n", "boards", 9).given("b", "board width", Length::mm(64))
///     .given("m", "bays", 8)
///     .gives("g", "clear bay", Length::um(385_500));
/// assert_eq!(step.check(), Ok(()));
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What this line works out.
    pub what: Words,
    /// The formula for the result: letters of `given`, numbers, + - * / ^, brackets, functions; angles in degrees.
    pub formula: Option<Cow<'static, str>>,
    /// What goes in.
    pub given: Vec<Named>,
    /// What comes out.
    pub result: Option<Named>,
    /// The reason, or how the result was rounded.
    pub because: Option<Words>,
}

impl Step {
    /// A line of working about one thing.
    pub fn new(what: impl Into<Words>) -> Self {
        Self { what: what.into(), formula: None, given: Vec::new(), result: None, because: None }
    }

    /// Sets the formula for the result.
    #[must_use]
    pub fn by(mut self, formula: impl Into<Cow<'static, str>>) -> Self {
        self.formula = Some(formula.into());
        self
    }

    /// Adds a quantity that goes in.
    #[must_use]
    pub fn given(
        mut self,
        symbol: impl Into<Cow<'static, str>>,
        name: impl Into<Cow<'static, str>>,
        value: impl Into<Figure>,
    ) -> Self {
        self.given.push(Named { symbol: symbol.into(), name: name.into(), value: value.into() });
        self
    }

    /// Sets what comes out.
    #[must_use]
    pub fn gives(
        mut self,
        symbol: impl Into<Cow<'static, str>>,
        name: impl Into<Cow<'static, str>>,
        value: impl Into<Figure>,
    ) -> Self {
        self.result = Some(Named { symbol: symbol.into(), name: name.into(), value: value.into() });
        self
    }

    /// Says why, or how it was rounded.
    #[must_use]
    pub fn because(mut self, words: impl Into<Words>) -> Self {
        self.because = Some(words.into());
        self
    }

    /// Whether the formula, with the given numbers put in, comes to the result.
    ///
    /// The comparison allows one part in a million, or half of the last decimal of money.
    /// # Errors
    /// A sentence that says what does not hold.
    pub fn check(&self) -> Result<(), String> {
        let (Some(formula), Some(result)) = (&self.formula, &self.result) else { return Ok(()) };
        let tree = crate::formula::parse(formula).map_err(|fault| format!("{formula}: {fault}"))?;
        let number = |symbol: &str| self.given.iter().find(|named| named.symbol == symbol)?.value.number();
        let ours = tree.value(&number).map_err(|missing| format!("{formula}: no number for {missing}"))?;
        let stated = result.value.number().ok_or_else(|| format!("{formula}: the result is no number"))?;
        let slack = match result.value {
            Figure::Money(_) => 0.005_001,
            _ => 1e-6 * ours.abs().max(stated.abs()) + 1e-6,
        };
        if (ours - stated).abs() <= slack {
            Ok(())
        } else {
            Err(format!("{formula} comes to {ours}, but {stated} is stated"))
        }
    }
}
