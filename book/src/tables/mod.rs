//! Reference tables of the trade, each made from the constants a calculator itself works with, and each with its source.

mod air;
mod boards;
mod finish;
mod fixings;
mod limits;

use calculators::catalogue::Source;
use calculators::quantity::{Amount, Kind, Length, Units};

use crate::reference::{Row, TableView, cell, figure_cell};
use face::figure;

/// One table: its name as chapters write it, and how it is made.
type Named = (&'static str, fn(Units) -> TableView);

const TABLES: [Named; 25] = [
    ("fractions", boards::fractions),
    ("dressed-boards", boards::dressed_boards),
    ("moisture-of-wood", boards::moisture),
    ("movement-of-wood", boards::movement),
    ("layout-rules", limits::layout_rules),
    ("saw-settings", limits::saw_settings),
    ("labour-rates", limits::labour_rates),
    ("nail-windows", fixings::nail_windows),
    ("nail-sizes", fixings::nails),
    ("wire-gauges", fixings::wires),
    ("specific-gravities", fixings::gravities),
    ("box-volumes", fixings::box_volumes),
    ("bead-runs", fixings::bead_runs),
    ("grains", finish::grains),
    ("film-and-spread", finish::film_and_spread),
    ("transfer-shares", finish::transfer_shares),
    ("flow-cups", finish::flow_cups),
    ("gloss-levels", finish::gloss_levels),
    ("dew-points", air::dew_points),
    ("slower-drying", air::slower_drying),
    ("clearing-times", air::clearing_times),
    ("dust-limits", air::dust_limits),
    ("dust-controls", air::dust_controls),
    ("noise-times", air::noise_times),
    ("vibration-times", air::vibration_times),
];

/// Names of the tables, as chapters write them.
pub(crate) fn names() -> impl Iterator<Item = &'static str> {
    TABLES.iter().map(|(name, _)| *name)
}

/// A table by its name.
pub(crate) fn table(name: &str, units: Units) -> Option<TableView> {
    TABLES.iter().find(|(known, _)| *known == name).map(|(_, make)| make(units))
}

fn view(name: &'static str, head: Vec<impl Into<String>>, rows: Vec<Row>, sources: &[Source]) -> TableView {
    TableView {
        id: String::new(),
        name,
        figured: false,
        head: head.into_iter().map(Into::into).collect(),
        rows,
        sources: sources.iter().map(Source::line).collect(),
    }
}

/// The same with columns of figures, which stay columns on a narrow page.
fn figured(name: &'static str, head: Vec<impl Into<String>>, rows: Vec<Row>, sources: &[Source]) -> TableView {
    TableView { figured: true, ..view(name, head, rows, sources) }
}

fn row<const N: usize>(texts: [String; N]) -> Row {
    Row { cells: texts.into_iter().map(cell).collect() }
}

fn length(length: Length, units: Units) -> String {
    figure::set(length, units)
}

/// A row that begins with words and goes on with lengths.
fn lengths(name: impl Into<String>, lengths: &[Length], units: Units) -> Row {
    let figures = lengths.iter().map(|one| figure_cell(length(*one, units)));
    Row { cells: std::iter::once(cell(name)).chain(figures).collect() }
}

/// A quantity whose unit stays on its line.
fn amount<K: Kind>(metric: f64, units: Units) -> String {
    Amount::<K>::of(metric).text(units).replace(' ', "\u{a0}")
}

/// A length finer than a tape shows: thousandths of an inch, or millimetres to so many places.
fn decimal(length: Length, places: usize, units: Units) -> String {
    match units {
        Units::Imperial => figure::with_unit(&format!("{:.3}", length.in_mm() / 25.4), "in"),
        Units::Metric => figure::with_unit(&format!("{:.places$}", length.in_mm()), "mm"),
    }
}

/// Room temperatures that are read off a thermometer in either unit system, in °C.
fn temperatures(units: Units) -> Vec<f64> {
    match units {
        Units::Imperial => [50.0, 60.0, 65.0, 70.0, 75.0].iter().map(|degrees| (degrees - 32.0) / 1.8).collect(),
        Units::Metric => vec![10.0, 15.0, 18.0, 21.0, 24.0],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_table_has_rows_a_source_and_a_cell_under_each_head() {
        for (name, make) in TABLES {
            for units in [Units::Imperial, Units::Metric] {
                let view = make(units);
                assert!(!view.rows.is_empty() && !view.sources.is_empty(), "{name}");
                assert!(view.rows.iter().all(|row| row.cells.len() == view.head.len()), "{name}");
            }
        }
    }

    #[test]
    fn a_row_says_what_its_source_says() {
        let check = |name: &str, units, row: usize, expected: &[&str]| {
            let view = table(name, units).expect("a table");
            let shown: Vec<_> = view.rows[row].cells.iter().map(|cell| cell.words()).collect();
            assert_eq!(shown, expected, "{name}, row {row}");
        };
        // 5/8 in is 0.625 in and, an inch being 25.4 mm exactly (NIST SP 811, appendix B), 15.875 mm.
        check("fractions", Units::Imperial, 7, &["1/8", "0.1250", "3.18", "5/8", "0.6250", "15.88"]);
        // CDC 2003, table B.1: 6 air changes remove 99 % in 46 minutes, 99.9 % in 69 minutes, mixing perfect; three times 46.05 is
        // 138.2, told up to 139.
        check("clearing-times", Units::Metric, 2, &["6", "46 min", "69 min", "139 min"]);
        // ASTM F1667, wire gauges: 15 is 0.072 in, 23 is 0.0258 in.
        check("wire-gauges", Units::Imperial, 0, &["23", "0.026 in"]);
        check("wire-gauges", Units::Metric, 8, &["15", "1.83 mm"]);
        // Two hours of a tool of 5 m/s² bring the action value (UK HSE ready reckoner; from memory).
        check("vibration-times", Units::Metric, 2, &["5\u{a0}m/s²", "120\u{a0}min", "480\u{a0}min"]);
        // 90 - 88 / 2: plane geometry.
        check("saw-settings", Units::Metric, 1, &["87°", "46.5°", "1.3 mm", "6.7 mm"]);
    }
}
