//! Fractions, boards and how wood moves.

use calculators::catalogue::{Source, Standing, works};
use calculators::quantity::{Length, Units, kind};
use calculators::stock::{dressed, moisture};

use super::{amount, decimal, figured, length, temperatures};
use crate::reference::{Row, TableView, cell, figure_cell};
use face::figure;

/// Every thirty-second and sixty-fourth of an inch, in two halves beside each other.
pub(super) fn fractions(_: Units) -> TableView {
    let one = |count: i64| {
        let exact = Length::sixty_fourths(count).exact();
        let inches = exact.in_mm() / 25.4;
        let fraction = figure_cell(figure::inches_alone(exact));
        [
            fraction,
            cell(format!("{:.4}", inches + 1e-9)),
            cell(format!("{:.2}", (exact.in_mm() * 100.0 + 1e-6).round() / 100.0)),
        ]
    };
    let rows = (1..=32).map(|count| Row { cells: one(count).into_iter().chain(one(count + 32)).collect() });
    let source = Source::new(works::SP_811, "an inch is 25.4 mm exactly", Standing::Published);
    let head = vec!["Inch", "Decimal", "mm", "Inch", "Decimal", "mm"];
    figured("Fractions of an inch", head, rows.collect(), &[source])
}

pub(super) fn dressed_boards(units: Units) -> TableView {
    let row = |what: &str, size: &dressed::Dressed| Row {
        cells: vec![
            cell(what),
            figure_cell(length(size.nominal(), units)),
            figure_cell(length(size.dry(), units)),
            figure_cell(length(size.green(), units)),
        ],
    };
    let thick = dressed::THICKNESSES.iter().map(|cited| row("thickness", &cited.value));
    let rows = thick.chain(dressed::WIDTHS.iter().map(|cited| row("width", &cited.value))).collect();
    let mut sources = vec![dressed::THICKNESSES[0].source];
    sources.extend(
        dressed::THICKNESSES
            .iter()
            .find(|cited| cited.source.standing != sources[0].standing)
            .map(|cited| cited.source),
    );
    figured(
        "Dressed sizes of softwood boards",
        vec!["Of", "Nominal", "Dry, at least", "Green, at least"],
        rows,
        &sources,
    )
}

pub(super) fn moisture(units: Units) -> TableView {
    let rows = [30.0, 40.0, 50.0, 60.0, 65.0, 75.0].into_iter().map(|humidity: f64| {
        let points = temperatures(units)
            .into_iter()
            .map(|celsius| cell(format!("{:.1}", moisture::equilibrium_moisture(celsius, humidity))));
        Row { cells: std::iter::once(cell(amount::<kind::Humidity>(humidity, units))).chain(points).collect() }
    });
    let mut head = vec!["Percent in".to_owned()];
    head.extend(temperatures(units).into_iter().map(|celsius| amount::<kind::Temperature>(celsius, units)));
    figured("Moisture that wood comes to, percent", head, rows.collect(), &[moisture::EMC_SOURCE])
}

/// Coefficients, and what they come to on a rail between a dry and a damp room.
pub(super) fn movement(units: Units) -> TableView {
    let rail = match units {
        Units::Imperial => Length::sixty_fourths(224),
        Units::Metric => Length::mm(90),
    };
    let (dry, damp) = (moisture::equilibrium_moisture(21.0, 30.0), moisture::equilibrium_moisture(21.0, 65.0));
    let moved =
        |coefficient: f64| figure_cell(decimal(moisture::width_change(rail, coefficient, damp - dry), 1, units));
    let rows = moisture::species().into_iter().map(|(species, flat, quarter, from_memory)| Row {
        cells: vec![
            cell(if from_memory { format!("{species} (from memory)") } else { species.to_owned() }),
            cell(format!("{flat:.5}")),
            moved(flat),
            cell(format!("{quarter:.5}")),
            moved(quarter),
        ],
    });
    let of = rail.text(units);
    let head = vec![
        "Wood".to_owned(),
        "Flat-sawn".to_owned(),
        format!("{of} moves"),
        "Quarter-sawn".to_owned(),
        format!("{of} moves"),
    ];
    figured("Movement across the grain, air from 30 to 65 %", head, rows.collect(), &[moisture::WIDTH_SOURCE])
}
