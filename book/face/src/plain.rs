//! An answer as plain text, for a terminal: figures with their labels, lists as columns, the working line by line.

use calculators::catalogue::{Answer, Entry, Field, Figure, Kind, Named, Node, Shape, Step};
use calculators::quantity::Units;

use crate::Face;
use crate::mathml::short;

impl Face {
    /// An answer in plain text, cautions first.
    pub fn plain_text(&self, entry: &Entry, answer: &Answer<Node>, units: Units) -> String {
        let mut out = format!("{}\n", entry.card().question);
        for caution in entry.card().cautions.iter().filter_map(|key| self.cautions().get(key)) {
            out += &format!("\n{}\n", caution.line());
        }
        out.push('\n');
        group(&answer.result, entry.output(), 0, units, &mut out);
        for note in &answer.notes {
            out += &format!("\n{}: {}\n", note.level.word().to_uppercase(), note.words.in_units(units));
        }
        out += "\nHow it was got\n";
        for step in &answer.working {
            out += &working(step, units);
        }
        out
    }
}

fn group(fields: &Node, shape: &Shape, depth: usize, units: Units, out: &mut String) {
    let indent = "  ".repeat(depth);
    for (field, node) in read_by_people(fields, shape) {
        let label = match (field.title, field.shape.title) {
            ("", "") => field.name.replace('_', " "),
            ("", title) | (title, _) => title.to_owned(),
        };
        match (node, field.shape.kind) {
            (Node::Nothing, _) => {}
            (Node::List(rows), Kind::List { item, .. }) if !rows.is_empty() && !item.fields().is_empty() => {
                *out += &format!("\n{indent}{label}\n");
                table(rows, item, &indent, units, out);
            }
            (Node::Group(_), _) => {
                *out += &format!("{indent}{label}\n");
                group(node, &field.shape, depth + 1, units, out);
            }
            _ => *out += &format!("{indent}{label}: {}\n", cell(node, units)),
        }
    }
}

/// The fields of a group without those that only a program reads.
fn read_by_people<'n>(group: &'n Node, shape: &Shape) -> impl Iterator<Item = (&'static Field, &'n Node)> {
    let known = shape.fields();
    group.fields().iter().filter_map(move |(name, node)| {
        let field = known.iter().find(|field| field.name == *name && !field.for_machines)?;
        Some((field, node))
    })
}

fn cell(node: &Node, units: Units) -> String {
    match node {
        Node::Nothing | Node::Data(_) => String::new(),
        Node::Flag(flag) => flag.to_string(),
        Node::Word(word) => (*word).to_owned(),
        Node::Leaf(Figure::Number(number)) => short(*number),
        Node::Leaf(figure) => figure.text(units),
        Node::List(items) => items.iter().map(|item| cell(item, units)).collect::<Vec<_>>().join(", "),
        Node::Group(fields) => {
            let cells = fields.iter().map(|(_, node)| cell(node, units)).filter(|text| !text.is_empty());
            cells.collect::<Vec<_>>().join(" ")
        }
    }
}

fn table(rows: &[Node], item: &Shape, indent: &str, units: Units, out: &mut String) {
    let heads: Vec<&Field> = item
        .fields()
        .iter()
        .filter(|field| !field.for_machines && rows.iter().any(|row| row.field(field.name).is_some()))
        .collect();
    let lines: Vec<Vec<String>> = std::iter::once(heads.iter().map(|head| head.name.replace('_', " ")).collect())
        .chain(rows.iter().map(|row| {
            let cells = heads.iter().map(|head| row.field(head.name).map(|node| cell(node, units)).unwrap_or_default());
            cells.collect()
        }))
        .collect();
    let width = |column: usize| lines.iter().map(|line: &Vec<String>| line[column].chars().count()).max().unwrap_or(0);
    let widths: Vec<_> = (0..heads.len()).map(width).collect();
    for line in &lines {
        let cells: Vec<_> = line.iter().zip(&widths).map(|(text, width)| format!("{text:<width$}")).collect();
        *out += &format!("{indent}  {}\n", cells.join("  ").trim_end());
    }
}

fn working(step: &Step, units: Units) -> String {
    let mut out = format!("- {}\n", step.what.in_units(units));
    let named = |named: &Named| format!("{} = {} ({})", named.symbol, named.value.in_full(units), named.name);
    if let Some(formula) = &step.formula {
        let symbol = step.result.as_ref().map_or("", |result| &result.symbol);
        out += &format!("    {symbol} = {formula}\n");
    }
    for given in &step.given {
        out += &format!("    {}\n", named(given));
    }
    if let Some(result) = &step.result {
        let usual = result.value.text(units);
        let read = if usual == result.value.in_full(units) { String::new() } else { format!(", read {usual}") };
        out += &format!("    gives {}{read}\n", named(result));
    }
    if let Some(because) = &step.because {
        out += &format!("    {}\n", because.in_units(units));
    }
    out
}
