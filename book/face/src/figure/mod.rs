//! A quantity as it stands on a page: stacked fraction, unit set smaller, plain text for a screen reader. Drawn from its number.

mod text;

use calculators::catalogue::{Figure, Piece, Words, capital};
use calculators::quantity::print::{self, Beside};
use calculators::quantity::{Exact, FOOT, Length, MILLIMETRE, Reading, Units};

pub use text::{in_prose, in_sentence, set as set_text};

/// Text made fit for HTML.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    push_escaped(&mut out, text);
    out
}

/// Writes text so that it is fit for HTML.
pub fn push_escaped(out: &mut String, text: &str) {
    for sign in text.chars() {
        match sign {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            other => out.push(other),
        }
    }
}

/// A quantity as a figure. With a fraction, what is drawn is hidden from the screen reader and its plain text stands beside it.
pub fn set(figure: impl Into<Figure>, units: Units) -> String {
    match figure.into() {
        Figure::Length(exact) => length("q", exact, units),
        Figure::Reading(reading) => length("q", reading.shown_in(units).exact(), units),
        Figure::Run(run) => {
            let text = run.text(units);
            match text.strip_suffix(" m") {
                Some(metres) => with_unit(metres, "m"),
                None => with_unit(&text, ""),
            }
        }
        Figure::Physical(facts, metric) => {
            let (number, unit) = (facts.number(metric, units), facts.unit(units).symbol);
            match unit {
                "°" | "%" => with_unit(&(number + unit), ""),
                unit => with_unit(&number, unit),
            }
        }
        Figure::Text(text) => set_text(&text),
        other => with_unit(&other.text(units), ""),
    }
}

/// A length: inches to the sixty-fourth with their fraction stacked, or millimetres to the tenth.
fn length(class: &str, exact: Exact, units: Units) -> String {
    let text = print::plain(exact, units);
    match (units, print::stacked(exact, print::FINEST_PARTS)) {
        (Units::Imperial, (sign, whole, Some(fraction))) => {
            stacked(class, &text, &(drawn(sign, whole, fraction) + "<span class=\"un\">in</span>"))
        }
        _ => match text.split_once(' ') {
            Some((number, unit)) => in_class(class, number, unit),
            None => in_class(class, &text, ""),
        },
    }
}

/// Inches and a fraction over its line, without a unit.
fn drawn(sign: &str, whole: i64, (top, bottom): (i64, i64)) -> String {
    let whole = if whole == 0 { String::new() } else { whole.to_string() };
    format!("{sign}{whole}<span class=\"fr\"><i>{top}</i><i>{bottom}</i></span>")
}

/// The same in words.
fn written(sign: &str, whole: i64, (top, bottom): (i64, i64)) -> String {
    if whole == 0 { format!("{sign}{top}/{bottom}") } else { format!("{sign}{whole} {top}/{bottom}") }
}

/// Inches without their unit, where the head of a column says it.
pub fn inches_alone(exact: Exact) -> String {
    match print::stacked(exact, print::FINEST_PARTS) {
        (sign, whole, Some(fraction)) => stacked("q", &written(sign, whole, fraction), &drawn(sign, whole, fraction)),
        (sign, whole, None) => with_unit(&format!("{sign}{whole}"), ""),
    }
}

/// A length as a figure in running text, where it must not spread the lines.
pub fn set_in_prose(exact: Exact, units: Units) -> String {
    length("q printed", exact, units)
}

fn stacked(class: &str, text: &str, drawn: &str) -> String {
    let text = escape(text);
    format!(
        "<span class=\"{class}\"><span class=\"unseen\">{text}</span><span aria-hidden=\"true\">{drawn}</span></span>"
    )
}

/// A number as it is written, with its unit smaller beside it where it has one.
pub fn with_unit(number: &str, unit: &str) -> String {
    in_class("q", number, unit)
}

fn in_class(class: &str, number: &str, unit: &str) -> String {
    let mut out = format!("<span class=\"{class}\">");
    push_escaped(&mut out, number);
    if !unit.is_empty() {
        out.push_str("<span class=\"un\">");
        push_escaped(&mut out, unit);
        out.push_str("</span>");
    }
    out + "</span>"
}

/// Words with the fractions of their lengths stacked, so that they do not spread the lines.
pub fn words(words: &Words, units: Units) -> String {
    joined(words, units, str::to_owned)
}

/// The same as a sentence: with a capital at its beginning.
pub fn sentence(words: &Words, units: Units) -> String {
    joined(words, units, capital)
}

fn joined(words: &Words, units: Units, first: fn(&str) -> String) -> String {
    let mut out = String::new();
    for piece in words.pieces() {
        let at_front = out.is_empty();
        let text = |text: &str| in_sentence(&if at_front { first(text) } else { text.to_owned() });
        match piece {
            Piece::Text(said) => out.push_str(&text(said)),
            Piece::Figure(Figure::Words(inner)) => out.push_str(&joined(inner, units, first)),
            Piece::Figure(Figure::Length(exact)) => out.push_str(&in_line(*exact, units)),
            Piece::Figure(Figure::Reading(reading)) => {
                out.push_str(&in_line(reading.shown_in(units).exact(), units));
            }
            Piece::Figure(figure) => out.push_str(&text(&figure.text(units))),
        }
    }
    out
}

/// A length in running text, where the figure must not spread the lines: `12 7/8 in`.
pub fn in_line(exact: Exact, units: Units) -> String {
    match (units, print::stacked(exact, print::FINEST_PARTS)) {
        (Units::Imperial, (sign, whole, Some(fraction))) => {
            stacked("q printed", &written(sign, whole, fraction), &drawn(sign, whole, fraction)) + " in"
        }
        _ => escape(&print::plain(exact, units)),
    }
}

/// How far the exact place of a reading lies beside its mark: `1/64 in full`.
pub fn left_over(reading: Reading, units: Units) -> String {
    let left = reading.exact - reading.shown_in(units);
    match print::beside(left, units) {
        Beside::On => "on the mark".to_owned(),
        Beside::Hair(side) => format!("a hair {side}"),
        Beside::By(size, side) => format!("{} {side}", in_line(size, units)),
    }
}

/// A long run in whole feet or whole metres, and its unit: what is cut from a cartridge is never told to the millimetre.
pub fn run(length: Length, units: Units) -> (String, &'static str) {
    match units {
        Units::Imperial => (print::feet_inches(length.exact().down_to(FOOT).exact(), 1), ""),
        Units::Metric => (length.whole_parts(MILLIMETRE * 1_000).to_string(), "m"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use calculators::quantity::{Amount, Money, Run, Tape, kind};

    /// What is drawn from a number is what the same text would be set as, for quantities of every kind and sign.
    #[test]
    fn a_figure_looks_as_its_text_would() {
        let mut figures: Vec<Figure> = (-40..40).map(|n| Length::sixty_fourths(n * 37).into()).collect();
        figures.extend((-40..40).map(|n| Tape::Sixteenth.mark(Length::from_nm(n * 123_456_789).exact()).into()));
        figures.extend([0.0, -3.25, 64.4].map(|n| Amount::<kind::Temperature>::of(n).into()));
        figures.extend([0.0, 12.5].map(|n| Amount::<kind::Percent>::of(n).into()));
        figures.extend([Amount::<kind::Paint>::of(1.5).into(), Amount::<kind::Angle>::of(45.0).into()]);
        figures.extend([Money::from_minor(-12_345).into(), 7_i64.into(), Run::of(Length::mm(66_667)).into()]);
        for figure in figures {
            for units in Units::ALL {
                assert_eq!(set(figure.clone(), units), set_text(&figure.text(units)), "{figure:?}");
            }
        }
    }

    #[test]
    fn a_sentence_stacks_the_fractions_of_its_lengths() {
        let said = Words::new("the last bay is {} wide").with(Length::sixty_fourths(824));
        assert_eq!(sentence(&said, Units::Imperial), in_sentence("The last bay is 12 7/8 in wide"));
        assert_eq!(words(&said, Units::Metric), "the last bay is 327 mm wide");
        let rolls = Words::new("rolls of {}").with(Run::of(Length::inches(2_160)));
        assert_eq!(words(&rolls, Units::Imperial), "rolls of 180&#39;");
        let short = Words::of(-Length::sixty_fourths(16));
        assert!(words(&short, Units::Imperial).contains("-<span class=\"fr\"><i>1</i><i>4</i></span>"));
    }

    #[test]
    fn a_run_is_told_in_whole_feet_or_metres() {
        // 304.8 mm to a foot, exactly (NIST SP 811, appendix B).
        assert_eq!(run(Length::mm(59_436), Units::Imperial), ("195'".to_owned(), ""));
        assert_eq!(run(Length::mm(66_667), Units::Metric), ("66".to_owned(), "m"));
    }
}
