//! Figures that somebody wrote into a sentence: chapters, captions, what was typed. Here, and only here, text is looked through.

use std::fmt::Write;

use calculators::quantity::{Length, Units, print};

use super::push_escaped;

/// Sets a printed quantity such as `11 15/16 in`, `7' 3 1/2"` or `303 mm` as a figure.
///
/// Fractions are stacked; a word after the last figure becomes the unit. A text without a fraction stays as it is, so that it
/// is read out as written; with one, the drawn figure is hidden from the screen reader and its plain text stands beside it.
pub fn set(text: &str) -> String {
    wrap("q", text)
}

/// The same in running text, where the figure must not spread the lines.
pub(super) fn set_in_prose(text: &str) -> String {
    wrap("q printed", text)
}

fn wrap(class: &str, text: &str) -> String {
    let (drawn, stacked) = draw(text);
    let mut out = String::with_capacity(drawn.len() + text.len() + 80);
    let _ = write!(out, "<span class=\"{class}\">");
    if stacked {
        out.push_str("<span class=\"unseen\">");
        push_escaped(&mut out, text);
        let _ = write!(out, "</span><span aria-hidden=\"true\">{drawn}</span>");
    } else {
        out.push_str(&drawn);
    }
    out.push_str("</span>");
    out
}

/// The figure's inside, and whether a fraction was stacked in it.
fn draw(text: &str) -> (String, bool) {
    let mut out = String::with_capacity(text.len() * 2);
    let mut stacked = false;
    let (body, unit) = unit_at_the_end(text);
    let mut first = true;
    for word in body.split(' ').filter(|word| !word.is_empty()) {
        let (core, tail) = word.split_at(word.trim_end_matches(['"', '\'', ',', '.', ';', ')']).len());
        let (lead, core) = core.split_at(core.len() - core.trim_start_matches(['-', '(', '+', '±', '−']).len());
        match core.split_once('/').filter(|(top, bottom)| is_number(top) && is_number(bottom)) {
            Some((top, bottom)) => {
                stacked = true;
                if !first && !lead.is_empty() {
                    out.push(' ');
                }
                push_escaped(&mut out, lead);
                let _ = write!(out, "<span class=\"fr\"><i>{top}</i><i>{bottom}</i></span>");
            }
            None => {
                if !first {
                    out.push(' ');
                }
                push_escaped(&mut out, lead);
                push_escaped(&mut out, core);
            }
        }
        push_escaped(&mut out, tail);
        first = false;
    }
    if let Some(unit) = unit {
        out.push_str("<span class=\"un\">");
        push_escaped(&mut out, unit);
        out.push_str("</span>");
    }
    (out, stacked)
}

fn is_number(text: &str) -> bool {
    !text.is_empty() && text.len() <= 6 && text.bytes().all(|byte| byte.is_ascii_digit())
}

/// Splits `303 mm` into `303` and `mm`, `0.4 US gal` into `0.4` and `US gal`; a text that is no figure stays whole.
fn unit_at_the_end(text: &str) -> (&str, Option<&str>) {
    let Some(last) = text.rfind(|sign: char| sign.is_ascii_digit()) else { return (text, None) };
    let (body, unit) = text.split_at(last + 1);
    let figures = body.starts_with(|sign: char| sign.is_ascii_digit() || matches!(sign, '-' | '−'));
    match unit.strip_prefix(' ') {
        Some(unit) if figures && !unit.is_empty() && unit.chars().count() <= 12 => (body, Some(unit)),
        _ => (text, None),
    }
}

/// A sentence with its fractions stacked: `the last bay is 12 7/8 in wide`.
pub fn in_sentence(text: &str) -> String {
    let words: Vec<&str> = text.split(' ').collect();
    let fraction = |word: &str| {
        word.trim_end_matches(['"', '.', ',', ';', ':', ')'])
            .split_once('/')
            .is_some_and(|(top, bottom)| is_number(top) && is_number(bottom))
    };
    let whole = |word: &str| is_number(word.trim_start_matches(['-', '(', '−']));
    let mut out = String::with_capacity(text.len() * 2);
    let mut at = 0;
    while let Some(word) = words.get(at) {
        if 0 < at {
            out.push(' ');
        }
        let next = words.get(at + 1).copied().unwrap_or_default();
        if fraction(word) {
            out.push_str(&set_in_prose(word));
            at += 1;
        } else if whole(word) && fraction(next) {
            out.push_str(&set_in_prose(&format!("{word} {next}")));
            at += 2;
        } else {
            push_escaped(&mut out, word);
            at += 1;
        }
    }
    out
}

/// Inline code that is a figure: a length with its unit, or a pair `1/16 in | 1.5 mm` of which the reader's side is shown.
///
/// `None` for everything else, which stays code.
pub fn in_prose(code: &str, units: Units) -> Option<String> {
    if let Some((imperial, metric)) = code.split_once(" | ") {
        return Some(set_in_prose(match units {
            Units::Imperial => imperial.trim(),
            Units::Metric => metric.trim(),
        }));
    }
    let length = Length::read_with_unit(code).ok()?;
    Some(set_in_prose(&in_units(length, code, units)))
}

/// A length written in one unit system, in the reader's: as it was written when the systems agree, else converted to the usual mark.
fn in_units(length: Length, code: &str, units: Units) -> String {
    let metric = ["mm", "cm", "m", "metre", "metres", "millimetres"].iter().any(|unit| {
        code.strip_suffix(unit).is_some_and(|front| front.ends_with(|sign: char| sign == ' ' || sign.is_ascii_digit()))
    });
    match (units, metric) {
        (Units::Imperial, false) | (Units::Metric, true) => code.to_owned(),
        (Units::Imperial, true) => print::inches(length.exact(), 16),
        (Units::Metric, false) => print::millimetres(length.exact(), Length::mm(1)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fraction_is_stacked_and_still_read_out() {
        assert_eq!(
            set("11 15/16 in"),
            "<span class=\"q\"><span class=\"unseen\">11 15/16 in</span><span aria-hidden=\"true\">11<span class=\"fr\">\
             <i>15</i><i>16</i></span><span class=\"un\">in</span></span></span>"
        );
        assert_eq!(set("303 mm"), "<span class=\"q\">303<span class=\"un\">mm</span></span>");
        assert_eq!(set("0.4 US gal"), "<span class=\"q\">0.4<span class=\"un\">US gal</span></span>");
        assert_eq!(set("inside first"), "<span class=\"q\">inside first</span>");
    }

    #[test]
    fn feet_and_inches_keep_their_marks() {
        let html = set("7' 3 1/2\"");
        assert!(html.contains("7&#39; 3<span class=\"fr\"><i>1</i><i>2</i></span>&quot;"), "{html}");
    }

    #[test]
    fn a_pair_shows_the_readers_side() {
        let imperial = in_prose("65 °F | 18 °C", Units::Imperial).expect("a pair");
        let metric = in_prose("65 °F | 18 °C", Units::Metric).expect("a pair");
        assert!(imperial.contains("65") && !imperial.contains("18"));
        assert!(metric.contains("18") && !metric.contains("65"));
    }

    #[test]
    fn a_length_follows_the_units_and_code_stays_code() {
        // 1 in is exactly 25.4 mm (NIST SP 811, appendix B): 2 1/2 in is 63.5 mm, on a millimetre tape 64.
        assert!(in_prose("2 1/2 in", Units::Metric).expect("a length").contains("64<span"));
        assert!(in_prose("900 mm", Units::Imperial).expect("a length").contains("<i>7</i><i>16</i>"));
        assert_eq!(in_prose("benchleaf render", Units::Metric), None);
        assert_eq!(in_prose("12", Units::Metric), None);
    }

    #[test]
    fn markup_cannot_get_in() {
        assert!(!set("<b>1/2</b>").contains("<b>"));
    }
}
