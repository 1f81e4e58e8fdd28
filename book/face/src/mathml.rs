//! Formulas as MathML: once with their letters, once with the numbers put in.

use calculators::catalogue::formula::{self, Formula};
use calculators::catalogue::{Figure, Named};
use calculators::quantity::{Exact, INCH, SIXTY_FOURTH, Units, print};

use crate::figure::{escape, push_escaped};

/// How tightly a formula binds, for brackets.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Binds {
    Sum,
    Product,
    Power,
    Atom,
}

/// Where in a formula something is printed.
#[derive(Clone, Copy)]
struct At {
    /// Inside a fraction, where another one is written on the line.
    deep: bool,
    /// The sign of multiplication.
    times: char,
}

/// What stands in the place of a letter: its MathML, and how tightly it binds.
type Leaf<'a> = &'a dyn Fn(&str) -> Option<(String, Binds)>;

/// What is put in for the letters of a formula, and what came of it.
#[derive(Clone, Copy)]
pub(crate) struct PutIn<'a> {
    pub(crate) given: &'a [Named],
    pub(crate) result: Option<&'a Figure>,
    pub(crate) units: Units,
}

/// `g = (L - n * b) / m` with its letters; `None` when the text is no formula.
pub(crate) fn with_letters(result: &str, text: &str) -> Option<String> {
    let tree = formula::parse(text).ok()?;
    let body = print(&tree, Binds::Sum, At { deep: false, times: '·' }, &|_| None);
    Some(format!("<math display=\"block\"><mrow>{}<mo>=</mo>{body}</mrow></math>", symbol(result)))
}

/// The right side with numbers for letters; `None` when there is none to put in.
///
/// Lengths are put in as they are read where the formula is one of lengths and counts alone, so that inches stay inches. Any
/// other formula is written for millimetres and metric units, and shows the numbers it works with.
pub(crate) fn with_numbers(text: &str, put_in: PutIn<'_>) -> Option<String> {
    let tree = formula::parse(text).ok()?;
    if put_in.given.is_empty() {
        return None;
    }
    let as_read = put_in.units == Units::Metric || stays_true(&tree, put_in);
    let leaf = |name: &str| {
        let named = put_in.given.iter().find(|named| named.symbol == name)?;
        Some(number(&named.value, as_read, put_in.units))
    };
    Some(format!(
        "<math display=\"block\"><mrow><mo>=</mo>{}</mrow></math>",
        print(&tree, Binds::Sum, At { deep: false, times: '×' }, &leaf)
    ))
}

/// Whether the numbers put in are metric although the reader's units are not.
pub(crate) fn works_in_metric(text: &str, put_in: PutIn<'_>) -> bool {
    let tree = formula::parse(text);
    put_in.units == Units::Imperial && tree.is_ok_and(|tree| !stays_true(&tree, put_in))
}

/// What a value is measured in: nothing, lengths, or a kind of quantity.
fn measure(figure: &Figure) -> Option<&'static str> {
    match figure {
        Figure::Length(_) | Figure::Reading(_) | Figure::Run(_) => Some("length"),
        Figure::Physical(facts, _) => Some(facts.name).filter(|kind| !matches!(*kind, "number" | "percent" | "angle")),
        _ => None,
    }
}

/// A formula in which one measure meets counts only holds in any unit of that measure; one with a conversion in it does not.
///
/// Temperatures never count as such: their scales do not begin at the same zero.
fn stays_true(tree: &Formula, put_in: PutIn<'_>) -> bool {
    let figures = put_in.given.iter().map(|named| &named.value).chain(put_in.result);
    let mut measures = figures.filter_map(measure);
    let Some(first) = measures.next() else { return true };
    first != "temperature" && measures.all(|other| other == first) && largest_number(tree) <= 360.0
}

fn largest_number(tree: &Formula) -> f64 {
    match tree {
        Formula::Number(text) => text.parse().unwrap_or(f64::INFINITY),
        Formula::Symbol(_) => 0.0,
        Formula::Negative(inner) => largest_number(inner),
        Formula::Joined(left, _, right) => largest_number(left).max(largest_number(right)),
        Formula::Call(_, arguments) => arguments.iter().map(largest_number).fold(0.0, f64::max),
    }
}

fn print(tree: &Formula, around: Binds, at: At, leaf: Leaf<'_>) -> String {
    let (html, binds) = match tree {
        Formula::Number(text) => (format!("<mn>{}</mn>", escape(text)), Binds::Atom),
        Formula::Symbol(name) => match leaf(name) {
            Some(put_in) => put_in,
            None => (symbol(name), Binds::Atom),
        },
        Formula::Negative(inner) => {
            (format!("<mrow><mo>−</mo>{}</mrow>", print(inner, Binds::Product, at, leaf)), Binds::Sum)
        }
        Formula::Joined(_, '/' | '*', _) => {
            let (mut above, mut below) = (Vec::new(), Vec::new());
            factors(tree, &mut above, &mut below);
            return product(&above, &below, around, at, leaf);
        }
        Formula::Joined(left, '^', right) => {
            let (base, power) = (print(left, Binds::Atom, at, leaf), print(right, Binds::Sum, at, leaf));
            (format!("<msup><mrow>{base}</mrow><mrow>{power}</mrow></msup>"), Binds::Power)
        }
        Formula::Joined(left, sign, right) => {
            let sign = if *sign == '-' { '−' } else { *sign };
            // What is taken away needs brackets when it is a sum itself.
            let right_binds = if sign == '−' { Binds::Product } else { Binds::Sum };
            let (left, right) = (print(left, Binds::Sum, at, leaf), print(right, right_binds, at, leaf));
            (format!("<mrow>{left}<mo>{sign}</mo>{right}</mrow>"), Binds::Sum)
        }
        Formula::Call(name, arguments) => call(name, arguments, at, leaf),
    };
    if binds < around { bracketed(&html) } else { html }
}

/// Takes a chain of products and quotients apart: `a * b / c / d` has `a b` above the line and `c d` below it.
fn factors<'t>(tree: &'t Formula, above: &mut Vec<&'t Formula>, below: &mut Vec<&'t Formula>) {
    match tree {
        Formula::Joined(left, '*', right) => {
            factors(left, above, below);
            above.push(right);
        }
        Formula::Joined(left, '/', right) => {
            factors(left, above, below);
            below.push(right);
        }
        other => above.push(other),
    }
}

/// A product, over another one where something is divided by: a fraction, or on the line where it already stands in one.
fn product(above: &[&Formula], below: &[&Formula], around: Binds, at: At, leaf: Leaf<'_>) -> String {
    let inner = At { deep: true, ..at };
    let html = match (below, at.deep) {
        ([], _) => format!("<mrow>{}</mrow>", multiplied(above, at, leaf)),
        (_, false) => {
            let (top, bottom) = (alone(above, inner, leaf), alone(below, inner, leaf));
            return format!("<mfrac><mrow>{top}</mrow><mrow>{bottom}</mrow></mfrac>");
        }
        (_, true) => {
            let bottom = multiplied(below, inner, leaf);
            let bottom = if below.len() == 1 { bottom } else { bracketed(&bottom) };
            format!("<mrow>{}<mo lspace=\"0\" rspace=\"0\">/</mo>{bottom}</mrow>", multiplied(above, inner, leaf))
        }
    };
    // A quotient written on the line is bracketed wherever it is a factor itself, so that nobody has to know which goes first.
    if Binds::Product < around { bracketed(&html) } else { html }
}

fn bracketed(html: &str) -> String {
    format!("<mrow><mo>(</mo>{html}<mo>)</mo></mrow>")
}

fn multiplied(parts: &[&Formula], at: At, leaf: Leaf<'_>) -> String {
    let parts = parts.iter().map(|part| print(part, Binds::Power, at, leaf));
    parts.collect::<Vec<_>>().join(&format!("<mo>{}</mo>", at.times))
}

/// What stands above or below the line of a fraction.
fn alone(parts: &[&Formula], at: At, leaf: Leaf<'_>) -> String {
    match parts {
        [one] => print(one, Binds::Sum, at, leaf),
        _ => multiplied(parts, at, leaf),
    }
}

fn call(name: &str, arguments: &[Formula], at: At, leaf: Leaf<'_>) -> (String, Binds) {
    let inside: Vec<String> = arguments.iter().map(|argument| print(argument, Binds::Sum, at, leaf)).collect();
    let between = |open: &str, close: &str| format!("<mrow><mo>{open}</mo>{}<mo>{close}</mo></mrow>", inside.concat());
    match name {
        "sqrt" => (format!("<msqrt>{}</msqrt>", inside.concat()), Binds::Atom),
        "abs" => (between("|", "|"), Binds::Atom),
        "sum" => (format!("<mrow>{}</mrow>", inside.join("<mo>+</mo>")), Binds::Sum),
        _ => {
            let word = match name {
                "asin" => "arcsin",
                "acos" => "arccos",
                "atan" => "arctan",
                "log10" => "log",
                "floor" => "round down",
                "ceil" => "round up",
                other => other,
            };
            let inside = inside.join("<mo>,</mo>");
            (format!("<mrow><mtext>{word}</mtext><mo>(</mo>{inside}<mo>)</mo></mrow>"), Binds::Atom)
        }
    }
}

/// A letter: `b_1` with its index below, `theta` as the Greek letter it names.
pub(crate) fn symbol(name: &str) -> String {
    if let Some((letter, index)) = name.split_once('_') {
        return format!("<msub>{}<mi>{}</mi></msub>", symbol(letter), escape(index));
    }
    const GREEK: [(&str, &str); 12] = [
        ("alpha", "α"),
        ("beta", "β"),
        ("gamma", "γ"),
        ("delta", "δ"),
        ("eta", "η"),
        ("theta", "θ"),
        ("lambda", "λ"),
        ("mu", "μ"),
        ("pi", "π"),
        ("rho", "ρ"),
        ("phi", "φ"),
        ("omega", "ω"),
    ];
    let letter = GREEK.iter().find(|(word, _)| *word == name).map_or(name, |(_, letter)| letter);
    format!("<mi>{}</mi>", escape(letter))
}

/// A value as a number in a formula. A negative one needs its brackets as a sum would.
fn number(figure: &Figure, as_read: bool, units: Units) -> (String, Binds) {
    let length = |exact: Exact| match units {
        Units::Imperial if as_read && exact == exact.nearest(SIXTY_FOURTH).exact() => inches(exact),
        Units::Imperial if as_read => signed(&short(exact.in_mm() / INCH.in_mm())),
        _ => signed(&short(exact.in_mm())),
    };
    match figure {
        Figure::Length(exact) => length(*exact),
        Figure::Reading(reading) => length(reading.exact),
        Figure::Run(run) => length(run.length().exact()),
        Figure::Physical(facts, metric) if as_read && measure(figure).is_some() => {
            signed(&facts.number_in_full(*metric, units))
        }
        Figure::Physical(_, number) | Figure::Number(number) => signed(&short(*number)),
        Figure::Count(count) => signed(&short(*count as f64)),
        Figure::Money(money) => signed(&money.to_string()),
        Figure::Finely(figure) => number(figure, as_read, units),
        Figure::Text(_) | Figure::Words(_) => (format!("<mtext>{}</mtext>", escape(&figure.text(units))), Binds::Atom),
    }
}

fn inches(exact: Exact) -> (String, Binds) {
    let (sign, whole, fraction) = print::stacked(exact, print::FINEST_PARTS);
    let mut out = String::from("<mrow>");
    if !sign.is_empty() {
        out.push_str("<mo>−</mo>");
    }
    if whole != 0 || fraction.is_none() {
        out.push_str(&format!("<mn>{whole}</mn>"));
    }
    if let Some((top, bottom)) = fraction {
        out.push_str(&format!("<mfrac><mn>{top}</mn><mn>{bottom}</mn></mfrac>"));
    }
    (out + "</mrow>", if sign.is_empty() { Binds::Atom } else { Binds::Sum })
}

fn signed(text: &str) -> (String, Binds) {
    match text.strip_prefix('-') {
        Some(size) => (format!("<mrow><mo>−</mo><mn>{}</mn></mrow>", escape(size)), Binds::Sum),
        None => {
            let mut out = String::from("<mn>");
            push_escaped(&mut out, text);
            (out + "</mn>", Binds::Atom)
        }
    }
}

/// Seven figures that count, trailing zeros dropped: what is put in must come to what is printed as the result.
pub(crate) fn short(number: f64) -> String {
    if number.fract() == 0.0 && number.abs() < 1e12 {
        return format!("{number:.0}");
    }
    let decimals = (6.0 - number.abs().max(1e-9).log10().floor()).clamp(0.0, 9.0) as usize;
    let text = format!("{number:.decimals$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;
    use calculators::quantity::{Amount, Length, kind};

    fn letters(text: &str) -> String {
        with_letters("g", text).expect(text).replace("<mrow>", "").replace("</mrow>", "")
    }

    #[test]
    fn a_quotient_is_a_fraction_and_needs_no_brackets() {
        assert_eq!(
            letters("(L - n * b) / m"),
            "<math display=\"block\"><mi>g</mi><mo>=</mo><mfrac><mi>L</mi><mo>−</mo><mi>n</mi><mo>·</mo><mi>b</mi><mi>m</mi>\
             </mfrac></math>"
        );
    }

    #[test]
    fn brackets_stand_where_leaving_them_out_would_change_the_value() {
        assert!(letters("a - (b + c)").contains("<mo>−</mo><mo>(</mo><mi>b</mi>"));
        assert!(letters("a * (b + c)").contains("<mo>(</mo><mi>b</mi><mo>+</mo>"));
        assert!(letters("(a + b) ^ 2").contains("<mo>(</mo><mi>a</mi>"));
        assert!(!letters("a + b - c").contains('('));
        assert!(letters("a * (b * c)").contains("<mo>(</mo><mi>b</mi>"));
        assert!(letters("a / (b - c)").ends_with("<mi>b</mi><mo>−</mo><mi>c</mi></mfrac></math>"));
    }

    #[test]
    fn a_chain_has_one_line_and_a_quotient_in_it_is_written_out() {
        let html = letters("q * 60 / p * (e / 100) / (w / 10)").replace(" lspace=\"0\" rspace=\"0\"", "");
        let above = "<mi>q</mi><mo>·</mo><mn>60</mn><mo>·</mo><mo>(</mo><mi>e</mi><mo>/</mo><mn>100</mn><mo>)</mo>";
        let below = "<mi>p</mi><mo>·</mo><mo>(</mo><mi>w</mi><mo>/</mo><mn>10</mn><mo>)</mo>";
        assert!(html.contains(&format!("<mfrac>{above}{below}</mfrac>")), "{html}");
    }

    #[test]
    fn numbers_put_in_stay_inches_only_where_the_formula_allows() {
        let named = |symbol: &'static str, value: Figure| Named { symbol: symbol.into(), name: "".into(), value };
        let (run, board) = (Length::inches(120), Length::sixty_fourths(160));
        let given = [named("L", run.into()), named("b", board.into()), named("n", 5_i64.into())];
        let (length, area) = (Figure::from(run), Figure::from(Amount::<kind::Area>::of(0.19)));
        let put_in = |result| PutIn { given: &given, result: Some(result), units: Units::Imperial };
        let inches = with_numbers("L - n * b", put_in(&length)).expect("numbers");
        assert!(inches.contains("<mn>120</mn>") && inches.contains("<mfrac><mn>1</mn><mn>2</mn></mfrac>"), "{inches}");
        assert!(!works_in_metric("L - n * b", put_in(&length)));
        assert!(works_in_metric("L * b / 1000000", put_in(&area)));
        let metric = with_numbers("L * b / 1000000", put_in(&area)).expect("numbers");
        assert!(metric.contains("<mn>3048</mn>") && metric.contains("<mn>63.5</mn>"), "{metric}");
    }

    #[test]
    fn a_negative_number_put_in_stands_in_brackets_where_it_is_a_factor() {
        let given = [Named { symbol: "a".into(), name: "".into(), value: (-3_i64).into() }];
        let put_in = PutIn { given: &given, result: None, units: Units::Metric };
        assert!(
            with_numbers("2 * a", put_in).expect("numbers").contains("<mo>(</mo><mrow><mo>−</mo><mn>3</mn></mrow>")
        );
    }
}
