//! Reference tables of the trade, each made from the constants a calculator itself works with, and each with its source.

use calculators::catalogue::{Source, Standing, works};
use calculators::coating::{flow_cup::Cup, gloss_level};
use calculators::exposure::{dust, noise};
use calculators::fixing::{box_fill, nail_holding, nail_sizes};
use calculators::price::labour;
use calculators::quantity::{Amount, Length, Units, kind};
use calculators::sanding::grain;
use calculators::stock::dressed;

use crate::figure;
use crate::reference::{Row, TableView, cell, figure_cell};

/// Names of the tables, as chapters write them.
pub(crate) const NAMES: [&str; 11] = [
    "grains",
    "gloss-levels",
    "flow-cups",
    "dust-limits",
    "noise-times",
    "nail-sizes",
    "wire-gauges",
    "box-volumes",
    "specific-gravities",
    "labour-rates",
    "dressed-boards",
];

/// A table by its name.
pub(crate) fn table(name: &str, units: Units) -> Option<TableView> {
    match name {
        "grains" => Some(grains()),
        "gloss-levels" => Some(gloss_levels()),
        "flow-cups" => Some(flow_cups()),
        "dust-limits" => Some(dust_limits()),
        "noise-times" => Some(noise_times()),
        "nail-sizes" => Some(nails(units)),
        "wire-gauges" => Some(wires(units)),
        "box-volumes" => Some(box_volumes(units)),
        "specific-gravities" => Some(gravities()),
        "labour-rates" => Some(labour_rates()),
        "dressed-boards" => Some(dressed_boards(units)),
        _ => None,
    }
}

fn view(name: &'static str, head: Vec<&'static str>, rows: Vec<Row>, sources: &[Source]) -> TableView {
    TableView { name, head, rows, sources: sources.iter().map(Source::line).collect() }
}

fn row<const N: usize>(texts: [String; N]) -> Row {
    Row { cells: texts.into_iter().map(cell).collect() }
}

fn length(length: Length, units: Units) -> String {
    figure::set(&length.text(units))
}

fn grains() -> TableView {
    let rows = grain::p_grades().map(|p| {
        let american = grain::CAMI_GRADES.iter().find(|cami| grain::nearest_p(cami.micrometres) == p.grade);
        let american = american.map_or_else(String::new, |cami| format!("{} ({} µm)", cami.grade, cami.micrometres));
        row([format!("P{}", p.grade), format!("{} µm", p.micrometres), american])
    });
    view(
        "Grain of P and CAMI grades",
        vec!["P grade", "Median grain", "CAMI grade of nearest grain"],
        rows.collect(),
        &[grain::P_SOURCE, grain::CAMI_SOURCE],
    )
}

fn gloss_levels() -> TableView {
    let range = |from: f64, to: f64| match (from, to) {
        (from, 200.0) if from > 0.0 => format!("{from} and more"),
        (_, 200.0) => "no rule".to_owned(),
        (0.0, to) => format!("up to {to}"),
        (from, to) => format!("{from} to {to}"),
    };
    let rows = gloss_level::LEVELS.iter().map(|level| {
        row([level.level.to_string(), range(level.gloss_from, level.gloss_to), range(level.sheen_from, level.sheen_to)])
    });
    let source = Source::new(works::GLOSS_LEVELS, "readings of the seven levels", Standing::Published);
    view("Gloss levels", vec!["Level", "At 60°", "At 85°"], rows.collect(), &[source])
}

fn flow_cups() -> TableView {
    let rows = Cup::ALL.iter().map(|cup| {
        let rule = cup.equation();
        let mut formula = format!("{} t", rule.slope);
        if rule.offset > 0.0 {
            formula = format!("{} (t − {})", rule.slope, rule.offset);
        }
        if rule.curve > 0.0 {
            formula += &format!(" − {} / t", rule.curve);
        }
        let name = serde_json::to_value(cup).ok().and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_default();
        row([name, formula, format!("{} to {} s", rule.least, rule.most), format!("{} °C", rule.celsius)])
    });
    let mut sources: Vec<Source> = Vec::new();
    for cup in Cup::ALL {
        let source = Source::new(cup.equation().work, "equation and range of the cup", Standing::Published);
        if !sources.iter().any(|known| known.line() == source.line()) {
            sources.push(source);
        }
    }
    let head = vec!["Cup", "mm²/s from t seconds", "Counts from", "Tested at"];
    view("Flow cups", head, rows.collect(), &sources)
}

fn dust_limits() -> TableView {
    let rows = dust::DUST_LIMITS.iter().map(|limit| row([limit.agent.to_owned(), format!("{} mg/m³", limit.mg_m3)]));
    view("Dust limits", vec!["Limit", "Mean over eight hours"], rows.collect(), &dust::LIMIT_SOURCES)
}

fn noise_times() -> TableView {
    let rows =
        noise::CONSTRUCTION_TABLE.iter().map(|(level, hours)| row([format!("{level} dB(A)"), format!("{hours} h")]));
    let source = Source::new(works::OSHA_NOISE_CONSTRUCTION, "permissible exposures", Standing::Published);
    view("Noise in United States construction", vec!["At this level", "In a day at most"], rows.collect(), &[source])
}

fn nails(units: Units) -> TableView {
    let rows = nail_sizes::COMMON.iter().map(|common| {
        let shank = |list| {
            nail_sizes::of_penny(list, common.penny).map_or_else(String::new, |nail| length(nail.shank(), units))
        };
        let figures = [
            length(common.length(), units),
            length(common.shank(), units),
            shank(&nail_sizes::BOX),
            shank(&nail_sizes::FINISHING),
        ];
        let name = std::iter::once(cell(format!("{}d", common.penny)));
        Row { cells: name.chain(figures.into_iter().map(figure_cell)).collect() }
    });
    let head = vec!["Size", "Length", "Shank, common", "Shank, box", "Shank, finishing"];
    view("Nails", head, rows.collect(), &[nail_sizes::SOURCE])
}

fn wires(units: Units) -> TableView {
    let rows = (6..=23).rev().filter_map(|gauge| {
        let shank = length(nail_sizes::wire_diameter(gauge)?, units);
        Some(Row { cells: vec![cell(gauge.to_string()), figure_cell(shank)] })
    });
    view("Steel wire gauges", vec!["Gauge", "Diameter"], rows.collect(), &[nail_sizes::SOURCE])
}

fn box_volumes(units: Units) -> TableView {
    let rows = box_fill::CONDUCTOR_IN3.iter().map(|(gauge, cubic_inches)| {
        let volume: Amount<kind::BoxVolume> = Amount::of(cubic_inches * box_fill::IN3_CM3);
        row([gauge.to_string(), volume.text(units)])
    });
    let source = Source::new(works::NFPA_70, "table 314.16(B), as quoted in public summaries", Standing::Published);
    view("Volume of one conductor in a box (US)", vec!["Wire (AWG)", "Volume"], rows.collect(), &[source])
}

fn gravities() -> TableView {
    let rows =
        nail_holding::GRAVITY.iter().map(|(species, gravity)| row([(*species).to_owned(), format!("{gravity:.2}")]));
    let source = Source::new(works::NDS, "table 12.3.3A", Standing::Published);
    view("Specific gravity of stud timber", vec!["Species", "Specific gravity, oven-dry"], rows.collect(), &[source])
}

fn labour_rates() -> TableView {
    let rows = labour::HOUSE_RATES.iter().map(|(task, of, hours)| {
        row([(*task).to_owned(), (*of).to_owned(), Amount::<kind::Minutes>::of(hours * 60.0).text(Units::Metric)])
    });
    let source = Source::new(works::THIS_BOOK, "house rates, until a shop has its own", Standing::HouseDefault);
    view("House rates for labour", vec!["Task", "For one", "Time"], rows.collect(), &[source])
}

fn dressed_boards(units: Units) -> TableView {
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
    view("Dressed sizes of softwood boards", vec!["Of", "Nominal", "Dry, at least", "Green, at least"], rows, &sources)
}
