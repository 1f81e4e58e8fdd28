//! Reference tables made from what the book and the catalogue already hold, so that none of it is written twice.

use calculators::catalogue::{CATALOGUE, Standing};
use serde::Serialize;

use crate::handbook::Handbook;

/// The tables a chapter may name.
pub(crate) const TABLES: [&str; 3] = ["calculators", "cautions", "sources"];

#[derive(Serialize)]
struct TableView {
    name: &'static str,
    head: Vec<&'static str>,
    rows: Vec<Row>,
}

#[derive(Serialize)]
struct Row {
    cells: Vec<Cell>,
}

#[derive(Serialize)]
struct Cell {
    text: String,
    /// Where it leads, if anywhere.
    to: String,
}

impl Handbook {
    /// A generated table by its name; nothing for a name that is none of [`TABLES`].
    pub(crate) fn reference_table(&self, name: &str) -> String {
        let view = match name {
            "calculators" => self.calculators_table(),
            "cautions" => self.cautions_table(),
            "sources" => sources_table(),
            _ => return String::new(),
        };
        self.theme.fill("table.html", &view)
    }

    fn calculators_table(&self) -> TableView {
        let rows = CATALOGUE.iter().map(|entry| {
            let card = entry.card();
            let to = self.place_of(card.id).unwrap_or_default();
            let number = self.numbers.get(card.id).cloned().unwrap_or_default();
            Row {
                cells: vec![cell(number), Cell { text: card.title.to_owned(), to: to.to_owned() }, cell(card.question)],
            }
        });
        TableView { name: "Calculators", head: vec!["No.", "Calculation", "Question"], rows: rows.collect() }
    }

    fn cautions_table(&self) -> TableView {
        let mut cautions: Vec<_> = self.cautions.iter().map(|(_, caution)| caution).collect();
        cautions.sort_by_key(|caution| caution.level);
        let rows = cautions.into_iter().map(|caution| Row {
            cells: vec![
                cell(caution.level.word()),
                cell(&caution.hazard),
                cell(&caution.consequence),
                cell(&caution.avoid),
            ],
        });
        let head = vec!["Level", "Hazard", "What it does", "How to avoid it"];
        TableView { name: "Cautions", head, rows: rows.collect() }
    }
}

/// Every work a calculator draws on, with what was taken and how far it can be relied on.
fn sources_table() -> TableView {
    let mut lines: Vec<(Standing, String, &str, Vec<&str>)> = Vec::new();
    for entry in CATALOGUE.iter() {
        let card = entry.card();
        for source in card.sources {
            let edition =
                if source.work.edition.is_empty() { String::new() } else { format!(", {}", source.work.edition) };
            let work = format!("{}{edition}", source.work.title);
            let known = lines.iter_mut().find(|(standing, title, locator, _)| {
                (*standing, title.as_str(), *locator) == (source.standing, work.as_str(), source.locator)
            });
            match known {
                Some((.., users)) => users.push(card.title),
                None => lines.push((source.standing, work, source.locator, vec![card.title])),
            }
        }
    }
    lines.sort_by(|one, other| (&one.1, one.2).cmp(&(&other.1, other.2)));
    let rows = lines.into_iter().map(|(standing, work, locator, users)| Row {
        cells: vec![cell(work), cell(locator), cell(standing.words()), cell(users.join(", "))],
    });
    let head = vec!["Work", "What was taken", "Standing", "Used by"];
    TableView { name: "Sources", head, rows: rows.collect() }
}

fn cell(text: impl Into<String>) -> Cell {
    Cell { text: text.into(), to: String::new() }
}
