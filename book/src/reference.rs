//! Reference tables made from what the book and the catalogue already hold, so that none of it is written twice.

use calculators::catalogue::{CATALOGUE, Standing};
use calculators::quantity::Units;
use serde::Serialize;

use crate::handbook::Handbook;
use crate::tables;
use face::ADDED;

/// The tables a chapter may name, beside those of [`tables`].
const OF_THE_BOOK: [&str; 3] = ["calculators", "cautions", "sources"];

/// Every table a chapter may name.
pub(crate) fn known() -> impl Iterator<Item = &'static str> {
    OF_THE_BOOK.into_iter().chain(tables::names())
}

/// A table as it is printed.
#[derive(Debug, Serialize)]
pub(crate) struct TableView {
    /// Its anchor on the page, `table-nail-sizes`.
    pub(crate) id: String,
    pub(crate) name: &'static str,
    /// Its columns are figures and stay columns on a narrow page.
    pub(crate) figured: bool,
    pub(crate) head: Vec<String>,
    pub(crate) rows: Vec<Row>,
    /// Where its numbers come from, one line each.
    pub(crate) sources: Vec<String>,
}

/// One row of a table.
#[derive(Debug, Serialize)]
pub(crate) struct Row {
    pub(crate) cells: Vec<Cell>,
}

/// One cell of a table.
#[derive(Debug, Serialize)]
pub(crate) struct Cell {
    text: String,
    /// A figure already set, instead of the text.
    html: String,
    /// Where it leads, if anywhere.
    to: String,
}

impl Handbook {
    /// A generated table by its name; nothing for a name that is not [`known`].
    pub(crate) fn reference_table(&self, name: &str, units: Units) -> String {
        let mut view = match name {
            "calculators" => self.calculators_table(),
            "cautions" => self.cautions_table(),
            "sources" => sources_table(),
            _ => match tables::table(name, units) {
                Some(view) => view,
                None => return String::new(),
            },
        };
        view.id = format!("table-{name}");
        self.theme.fill("table.html", &view)
    }

    fn calculators_table(&self) -> TableView {
        let rows = CATALOGUE.iter().map(|entry| {
            let card = entry.card();
            let to = self.place_of(card.id).unwrap_or_default();
            let number = self.numbers.get(card.id).cloned().unwrap_or_default();
            Row {
                cells: vec![
                    cell(number),
                    Cell { text: card.title.to_owned(), html: String::new(), to: to.to_owned() },
                    cell(card.question),
                ],
            }
        });
        TableView {
            id: String::new(),
            figured: false,
            name: "Calculators",
            head: ["No.", "Calculation", "Question"].map(str::to_owned).to_vec(),
            rows: rows.collect(),
            sources: Vec::new(),
        }
    }

    fn cautions_table(&self) -> TableView {
        let mut cautions: Vec<_> = self.cautions.iter().map(|(_, caution)| caution).collect();
        cautions.sort_by_key(|caution| caution.level);
        let rows = cautions.into_iter().map(|caution| Row {
            cells: vec![
                cell(caution.level.word()),
                cell(&caution.hazard),
                cell(&caution.consequence),
                cell(match &caution.add {
                    Some(add) => format!("{} {ADDED} {add}", caution.avoid),
                    None => caution.avoid.clone(),
                }),
            ],
        });
        let head = ["Level", "Hazard", "What it does", "How to avoid it"].map(str::to_owned).to_vec();
        TableView {
            id: String::new(),
            figured: false,
            name: "Cautions",
            head,
            rows: rows.collect(),
            sources: Vec::new(),
        }
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
    let head = ["Work", "What was taken", "Standing", "Used by"].map(str::to_owned).to_vec();
    TableView { id: String::new(), figured: false, name: "Sources", head, rows: rows.collect(), sources: Vec::new() }
}

pub(crate) fn cell(text: impl Into<String>) -> Cell {
    Cell { text: text.into(), html: String::new(), to: String::new() }
}

/// A cell with a figure that is already set.
pub(crate) fn figure_cell(html: String) -> Cell {
    Cell { text: String::new(), html, to: String::new() }
}

#[cfg(test)]
impl Cell {
    /// What the cell says, figures as they are read out.
    pub(crate) fn words(&self) -> String {
        let Some((_, spoken)) = self.html.split_once("\"unseen\">") else {
            let plain = self.html.replace("<span class=\"un\">", " ");
            let plain = plain.rsplit_once("\">").map_or(plain.as_str(), |(_, inside)| inside);
            return if self.html.is_empty() { self.text.clone() } else { plain.replace("</span>", "") };
        };
        spoken.split('<').next().unwrap_or_default().to_owned()
    }
}
