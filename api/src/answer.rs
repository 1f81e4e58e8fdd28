//! In which form an answer goes out, and the forms that are made from its tree alone.

use axum::http::{HeaderMap, header};
use calculators::catalogue::{Answer, Entry, Figure, Node, Printed};
use calculators::quantity::Units;

use crate::problem::ApiError;

/// The forms an answer can take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// JSON for programs.
    Json,
    /// The answer panel for pages.
    Html,
    /// The drawing.
    Svg,
    /// The list for a spreadsheet.
    Csv,
    /// Plain text for a terminal.
    Text,
}

const FORMS: [(&str, Form); 5] = [
    ("application/json", Form::Json),
    ("text/html", Form::Html),
    ("image/svg+xml", Form::Svg),
    ("text/csv", Form::Csv),
    ("text/plain", Form::Text),
];

impl Form {
    /// The media type, with its charset.
    pub const fn media_type(self) -> &'static str {
        match self {
            Self::Json => "application/json",
            Self::Html => "text/html; charset=utf-8",
            Self::Svg => "image/svg+xml",
            Self::Csv => "text/csv; charset=utf-8; header=present",
            Self::Text => "text/plain; charset=utf-8",
        }
    }

    /// The form that the `Accept` header prefers; JSON where it says nothing or anything.
    ///
    /// # Errors
    /// [`ApiError::NotAcceptable`] when it names only forms that are not made here.
    pub fn accepted(headers: &HeaderMap) -> Result<Self, ApiError> {
        let Some(accept) = headers.get(header::ACCEPT).and_then(|value| value.to_str().ok()) else {
            return Ok(Self::Json);
        };
        let mut best: Option<(f32, Self)> = None;
        for range in accept.split(',') {
            let mut parts = range.split(';').map(str::trim);
            let media = parts.next().unwrap_or_default().to_ascii_lowercase();
            let weight = parts.find_map(|part| part.strip_prefix("q=")).map_or(Some(1.0), |q| q.parse().ok());
            let form = match media.as_str() {
                "*/*" | "application/*" => Some(Self::Json),
                "text/*" => Some(Self::Html),
                media => FORMS.iter().find(|(name, _)| *name == media).map(|(_, form)| *form),
            };
            if let (Some(form), Some(weight)) = (form, weight)
                && weight > best.map_or(0.0, |(weight, _)| weight)
            {
                best = Some((weight, form));
            }
        }
        best.map(|(_, form)| form).ok_or(ApiError::NotAcceptable(
            "application/json, text/html, text/plain, and where there is one image/svg+xml or text/csv",
        ))
    }
}

/// An answer as JSON, with the cautions that stand with it, which are JSON already.
pub fn json(answer: &Answer<Node>, cautions: &str, units: Units) -> String {
    let mut text = Printed(answer, units).to_json();
    if text.pop() == Some('}') {
        text.push_str(",\"cautions\":");
        text.push_str(cautions);
        text.push('}');
    }
    text
}

/// The list of an answer as CSV: one row an entry, lengths as two columns, text and millimetres.
///
/// `None` where the calculator has no list.
pub fn csv(entry: &Entry, answer: &Answer<Node>, units: Units) -> Option<String> {
    let Node::List(rows) = answer.result.at(entry.card().list?)? else { return None };
    let mut heads: Vec<String> = Vec::new();
    let cells: Vec<Vec<(String, String)>> = rows
        .iter()
        .map(|row| {
            let mut cells = Vec::new();
            flatten(row, "", units, &mut cells);
            for (head, _) in &cells {
                if !heads.contains(head) {
                    heads.push(head.clone());
                }
            }
            cells
        })
        .collect();
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(&heads).ok()?;
    for row in &cells {
        let cell = |head: &String| row.iter().find(|(name, _)| name == head).map_or("", |(_, text)| text.as_str());
        writer.write_record(heads.iter().map(cell)).ok()?;
    }
    String::from_utf8(writer.into_inner().ok()?).ok()
}

fn flatten(node: &Node, name: &str, units: Units, cells: &mut Vec<(String, String)>) {
    let joined = |part: &str| if name.is_empty() { part.to_owned() } else { format!("{name}_{part}") };
    match node {
        Node::Group(fields) => {
            fields.iter().for_each(|(part, inner)| flatten(inner, &joined(part), units, cells));
        }
        Node::List(items) => {
            let texts: Vec<String> = items.iter().map(|item| text_of(item, units)).collect();
            cells.push((name.to_owned(), defused(&texts.join("; "))));
        }
        Node::Leaf(figure) => {
            cells.push((name.to_owned(), text_of(node, units)));
            let number = |number: f64| serde_json::Number::from_f64(number).map(|number| number.to_string());
            let beside = match figure {
                Figure::Reading(reading) => number(reading.shown_in(units).in_mm()).map(|mm| (joined("mm"), mm)),
                Figure::Physical(_, metric) => number(*metric).map(|metric| (joined("metric"), metric)),
                figure => figure.length().and_then(|exact| Some((joined("mm"), number(exact.in_mm())?))),
            };
            cells.extend(beside);
        }
        other => cells.push((name.to_owned(), text_of(other, units))),
    }
}

fn text_of(node: &Node, units: Units) -> String {
    match node {
        Node::Flag(flag) => flag.to_string(),
        Node::Word(word) => defused(word),
        Node::Leaf(figure) if figure.number().is_some() => figure.text(units),
        Node::Leaf(figure) => defused(&figure.text(units)),
        _ => String::new(),
    }
}

/// Text that a spreadsheet would take for a formula gets an apostrophe in front.
fn defused(text: &str) -> String {
    let formula = text.starts_with(['=', '+', '@', '\t', '\r'])
        || text.starts_with('-')
            && text.parse::<f64>().is_err()
            && !text[1..].starts_with(|sign: char| sign.is_ascii_digit());
    if formula { format!("'{text}") } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use axum::http::HeaderValue;

    fn accepted(accept: &'static str) -> Option<Form> {
        let mut headers = HeaderMap::new();
        headers.insert(header::ACCEPT, HeaderValue::from_static(accept));
        Form::accepted(&headers).ok()
    }

    #[test]
    fn the_heaviest_known_form_wins() {
        assert_eq!(accepted("text/csv"), Some(Form::Csv));
        assert_eq!(accepted("text/html,application/xhtml+xml,*/*;q=0.8"), Some(Form::Html));
        assert_eq!(accepted("image/svg+xml;q=0.4, application/json;q=0.5"), Some(Form::Json));
        assert_eq!(accepted("image/png"), None);
        assert_eq!(Form::accepted(&HeaderMap::new()).ok(), Some(Form::Json));
    }

    #[test]
    fn a_formula_in_a_label_stays_text() {
        assert_eq!(defused("=1+1"), "'=1+1");
        assert_eq!(defused("-3/8 in"), "-3/8 in");
        assert_eq!(defused("B-7"), "B-7");
    }
}
