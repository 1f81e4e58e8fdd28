//! The answer to a calculator as HTML: one big figure, the others as lists and tables, the working, what gives reason to speak.
//!
//! Made from the answer and its shape alone. It prints what the calculator returned and works nothing out.

use calculators::catalogue::{Answer, Entry, Field, Figure, Kind, Named, Node, Note, Shape, Step, in_words};
use calculators::quantity::{Amount, Units, kind};
use serde::Serialize;

use crate::figure;
use crate::form::Place;
use crate::mathml;
use crate::theme::Theme;

#[derive(Serialize)]
struct PanelView {
    headline: Vec<FigureView>,
    blocks: Vec<BlockView>,
    notes: Vec<NoteView>,
    working: Vec<StepView>,
}

#[derive(Serialize)]
pub(crate) struct FigureView {
    label: String,
    html: String,
    /// It is words, not a figure, and is set smaller.
    words: bool,
}

/// A stretch of the answer: figures under each other, or a table.
#[derive(Default, Serialize)]
struct BlockView {
    title: String,
    figures: Vec<FigureView>,
    head: Vec<HeadView>,
    rows: Vec<Vec<CellView>>,
}

#[derive(Serialize)]
struct HeadView {
    label: String,
    number: bool,
}

#[derive(Serialize)]
struct CellView {
    html: String,
    number: bool,
}

#[derive(Serialize)]
struct NoteView {
    level: &'static str,
    html: String,
    offer: Option<OfferView>,
}

/// A value that a button puts into a field of the form the panel stands in.
#[derive(Serialize)]
struct OfferView {
    put: String,
    action: String,
}

#[derive(Serialize)]
struct StepView {
    what: String,
    formula: Option<String>,
    /// It may be wider than a narrow page and is then slid sideways, which the keyboard must be able to do as well.
    long: bool,
    /// It may be wider than half a sheet of paper, where the working stands in two columns.
    wide: bool,
    /// The formula as it is written, where it is wider than any paper: there it stands in lines.
    plain: Option<String>,
    numbers: Option<String>,
    letters: Vec<LetterView>,
    /// What the result is, set as a figure.
    result: Option<String>,
    metric: bool,
    because: String,
}

#[derive(Serialize)]
struct LetterView {
    symbol: String,
    name: String,
    value: String,
}

/// The inside of the answer panel.
pub(crate) fn html(theme: &Theme, entry: &Entry, answer: &Answer<Node>, units: Units) -> String {
    let headline = entry.card().headline;
    let view = PanelView {
        headline: figures_at(entry, &answer.result, headline.iter().copied(), units),
        blocks: blocks(&answer.result, entry.output(), headline, units),
        notes: answer.notes.iter().map(|note| note_view(note, units)).collect(),
        working: answer.working.iter().map(|step| step_view(step, units)).collect(),
    };
    theme.fill("panel.html", &view)
}

/// The figures of an answer at these places in its result; a place that is not there is left out.
pub(crate) fn figures_at<'p>(
    entry: &Entry,
    result: &Node,
    places: impl Iterator<Item = &'p str>,
    units: Units,
) -> Vec<FigureView> {
    let figures = places.filter_map(|pointer| {
        let node = result.at(pointer).filter(|node| !node.is_null())?;
        Some(figure_view(label_at(entry.output(), pointer)?, node, units))
    });
    figures.collect()
}

/// The label of a place, with the number of its row where it stands in a list.
pub(crate) fn label_at(shape: &Shape, pointer: &str) -> Option<String> {
    let place = Place::at(shape, pointer)?;
    let name = pointer.rsplit('/').find(|part| part.parse::<usize>().is_err()).unwrap_or_default();
    let row = pointer.split('/').filter_map(|part| part.parse::<usize>().ok()).next_back();
    Some(match row {
        Some(row) => format!("{} {}", place.label(name), row + 1),
        None => place.label(name),
    })
}

#[derive(Serialize)]
struct GivenView {
    blocks: Vec<BlockView>,
}

/// An input as figures and tables, for a question that is put to somebody.
pub(crate) fn given(theme: &Theme, entry: &Entry, input: &Node, units: Units) -> String {
    theme.fill("blocks.html", &GivenView { blocks: blocks(input, entry.input(), &[], units) })
}

/// The headline in words, for the announcement after an answer came in: `Clear bay: 13 in`.
pub(crate) fn in_words_of(entry: &Entry, answer: &Answer<Node>, units: Units) -> String {
    let Some(pointer) = entry.card().headline.first() else { return String::new() };
    let label = Place::at(entry.output(), pointer)
        .map_or_else(String::new, |place| place.label(pointer.rsplit('/').next().unwrap_or_default()));
    let value = answer.result.at(pointer).map(|node| plain(node, units)).unwrap_or_default();
    format!("{label}: {value}")
}

fn figure_view(label: String, node: &Node, units: Units) -> FigureView {
    let words = matches!(node, Node::Word(_) | Node::List(_) | Node::Leaf(Figure::Text(_) | Figure::Words(_)));
    FigureView { label, html: node_html(node, units), words }
}

/// Everything of the result that is not in the headline, in its order.
fn blocks(result: &Node, shape: &Shape, headline: &[&str], units: Units) -> Vec<BlockView> {
    let mut found = Vec::new();
    let mut top = BlockView::default();
    let mut walk = Walk { headline, units, found: &mut found };
    walk.collect(result, shape, "", &mut top);
    if !top.figures.is_empty() {
        found.insert(0, top);
    }
    found
}

struct Walk<'a> {
    headline: &'a [&'a str],
    units: Units,
    found: &'a mut Vec<BlockView>,
}

impl Walk<'_> {
    fn collect(&mut self, group: &Node, shape: &Shape, at: &str, figures: &mut BlockView) {
        for (name, node) in group.fields() {
            let place = format!("{at}/{name}");
            let Some(field) = shape.fields().iter().find(|field| field.name == *name) else { continue };
            // What only a program reads stays in the answers that programs ask for.
            if field.for_machines || node.is_null() || self.headline.contains(&place.as_str()) {
                continue;
            }
            match (node, field.shape.kind) {
                (Node::List(items), _) if items.is_empty() => {}
                (Node::List(items), Kind::List { item, .. }) if matches!(item.kind, Kind::Group(_)) => {
                    self.found.push(table(field.label(), items, item, self.units));
                }
                (Node::Group(_), _) => {
                    let mut block = BlockView { title: field.label(), ..BlockView::default() };
                    let before = self.found.len();
                    self.collect(node, &field.shape, &place, &mut block);
                    if !block.figures.is_empty() {
                        self.found.insert(before, block);
                    }
                }
                _ => figures.figures.push(figure_view(field.label(), node, self.units)),
            }
        }
    }
}

fn table(title: String, items: &[Node], item: &Shape, units: Units) -> BlockView {
    let filled = |field: &&Field| items.iter().any(|row| row.field(field.name).is_some_and(|node| !node.is_null()));
    let columns: Vec<(&Field, bool)> = item
        .fields()
        .iter()
        .filter(filled)
        .map(|field| (field, items.iter().filter_map(|row| row.field(field.name)).all(is_number_or_empty)))
        .collect();
    let head = columns.iter().map(|(field, number)| HeadView { label: field.label(), number: *number });
    let rows = items.iter().map(|row| {
        let cells = columns.iter().map(|(field, number)| CellView {
            html: row.field(field.name).map(|node| node_html(node, units)).unwrap_or_default(),
            number: *number,
        });
        cells.collect()
    });
    BlockView { title, figures: Vec::new(), head: head.collect(), rows: rows.collect() }
}

/// A column of these stands to the right.
const fn is_number_or_empty(node: &Node) -> bool {
    match node {
        Node::Nothing => true,
        Node::Leaf(figure) => !matches!(figure, Figure::Text(_) | Figure::Words(_)),
        _ => false,
    }
}

/// A value as plain text.
fn plain(node: &Node, units: Units) -> String {
    match node {
        Node::Nothing | Node::Data(_) => String::new(),
        Node::Flag(true) => "yes".to_owned(),
        Node::Flag(false) => "no".to_owned(),
        Node::Word(word) => in_words(word),
        Node::Leaf(Figure::Number(number)) => Amount::<kind::Number>::of(*number).text(units),
        Node::Leaf(figure) => figure.text(units),
        Node::List(items) => items.iter().map(|item| plain(item, units)).collect::<Vec<_>>().join(", "),
        Node::Group(fields) => fields.iter().map(|(_, node)| plain(node, units)).collect::<Vec<_>>().join(" · "),
    }
}

fn node_html(node: &Node, units: Units) -> String {
    match node {
        Node::Leaf(figure) => figure_html(figure, units),
        Node::List(items) if items.iter().all(is_number_or_empty) => {
            items.iter().map(|item| node_html(item, units)).collect::<Vec<_>>().join(", ")
        }
        _ => figure::in_sentence(&plain(node, units)),
    }
}

fn figure_html(figure: &Figure, units: Units) -> String {
    match figure {
        Figure::Reading(reading) => {
            let mut html = figure::set(*reading, units);
            let shown = reading.shown_in(units).exact();
            if shown != reading.exact {
                let left = figure::left_over(*reading, units);
                html.push_str(&format!(" <small class=\"left\">{left}</small>"));
            }
            html
        }
        Figure::Number(number) => figure::set(Amount::<kind::Number>::of(*number), units),
        Figure::Text(text) => figure::in_sentence(text),
        Figure::Words(words) => figure::words(words, units),
        other => figure::set(other.clone(), units),
    }
}

fn note_view(note: &Note, units: Units) -> NoteView {
    let offer = note.offer.as_ref().map(|offer| OfferView {
        put: format!("put {} {}", offer.field, offer.value),
        action: offer.action.clone().into_owned(),
    });
    NoteView { level: note.level.word(), html: figure::sentence(&note.words, units), offer }
}

#[derive(Serialize)]
struct WorkingView {
    working: Vec<StepView>,
}

/// Lines of working as a list, for a sheet that lets its own figures be unfolded.
pub(crate) fn working_of(theme: &Theme, steps: &[Step], units: Units) -> String {
    theme.fill("working.html", &WorkingView { working: steps.iter().map(|step| step_view(step, units)).collect() })
}

/// A value that goes into a line of working, told so fully that the line comes out again.
fn in_full_html(figure: &Figure, units: Units) -> String {
    match figure {
        Figure::Text(_) | Figure::Words(_) => figure_html(figure, units),
        other => figure::set(Figure::Finely(Box::new(other.clone())), units),
    }
}

/// What comes out of a line of working: as it is read, and in full beside it where the next line takes more figures than that.
fn result_html(figure: &Figure, units: Units) -> String {
    let usual = figure_html(figure, units);
    if figure.in_full(units) == figure.text(units) {
        usual
    } else {
        format!("{usual} <small class=\"left\">{}</small>", in_full_html(figure, units))
    }
}

fn step_view(step: &Step, units: Units) -> StepView {
    let formula = step.formula.as_deref();
    let letter = step.result.as_ref().map_or("", |result| &result.symbol);
    let put_in = mathml::PutIn { given: &step.given, result: step.result.as_ref().map(|named| &named.value), units };
    let letter_view = |named: &Named| LetterView {
        symbol: format!("<math>{}</math>", mathml::symbol(&named.symbol)),
        name: named.name.clone().into_owned(),
        value: in_full_html(&named.value, units),
    };
    StepView {
        what: figure::sentence(&step.what, units),
        long: formula.is_some_and(|formula| 10 < formula.len()),
        wide: formula.is_some_and(|formula| 40 < formula.len()),
        plain: formula.filter(|formula| 120 < formula.len()).map(|formula| format!("{letter} = {formula}")),
        formula: formula.and_then(|formula| mathml::with_letters(letter, formula)),
        numbers: formula.and_then(|formula| mathml::with_numbers(formula, put_in)),
        letters: step.given.iter().map(letter_view).collect(),
        result: step.result.as_ref().map(|named| result_html(&named.value, units)),
        metric: formula.is_some_and(|formula| mathml::works_in_metric(formula, put_in)),
        because: step.because.as_ref().map(|because| figure::sentence(because, units)).unwrap_or_default(),
    }
}
