//! Abrasives, films, cups and gloss.

use calculators::catalogue::{Source, Standing, works};
use calculators::coating::film::{GAUGE_TEETH_UM, METRIC_TEETH_UM, SOURCE as FILM, TRANSFER_IN_RULES, spreading_rate};
use calculators::coating::{flow_cup::Cup, gloss_level};
use calculators::quantity::{Amount, Units, kind};
use calculators::sanding::grain;

use super::{amount, figured, row, view};
use crate::reference::TableView;

/// Shares of volume that paints keep when they have dried.
const SOLIDS: [f64; 3] = [0.30, 0.38, 0.45];

pub(super) fn grains(_: Units) -> TableView {
    let rows = grain::p_grades().map(|p| {
        let american = grain::CAMI_GRADES.iter().find(|cami| grain::nearest_p(cami.micrometres) == p.grade);
        let american = american.map_or_else(String::new, |cami| format!("{} ({} µm)", cami.grade, cami.micrometres));
        row([format!("P{}", p.grade), format!("{} µm", p.micrometres), american])
    });
    figured(
        "Grain of P and CAMI grades",
        vec!["P grade", "Median grain", "CAMI grade of nearest grain"],
        rows.collect(),
        &[grain::P_SOURCE, grain::CAMI_SOURCE],
    )
}

pub(super) fn gloss_levels(_: Units) -> TableView {
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
    figured("Gloss levels", vec!["Level", "At 60°", "At 85°"], rows.collect(), &[source])
}

pub(super) fn flow_cups(_: Units) -> TableView {
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

pub(super) fn film_and_spread(units: Units) -> TableView {
    let teeth = match units {
        Units::Imperial => GAUGE_TEETH_UM,
        Units::Metric => METRIC_TEETH_UM,
    };
    let rows = teeth.into_iter().map(|tooth| {
        let wet: Amount<kind::Film> = Amount::of(tooth);
        let [low, middle, high] = SOLIDS.map(|solids| amount::<kind::Film>(tooth * solids, units));
        row([wet.text(units), spreading_rate(wet).text(units), low, middle, high])
    });
    let mut head = vec!["Comb, wet".to_owned(), "Spread, nothing lost".to_owned()];
    head.extend(SOLIDS.iter().map(|solids| format!("Dry at {:.0} % solids", solids * 100.0)));
    figured("Wet film, spread and dry film", head, rows.collect(), &[FILM])
}

pub(super) fn transfer_shares(_: Units) -> TableView {
    let rows = TRANSFER_IN_RULES.iter().map(|transfer| {
        let section = transfer.share.source.locator;
        row([transfer.method.to_owned(), format!("{:.0} %", transfer.share.value * 100.0), section.to_owned()])
    });
    let head = vec!["Way of spraying", "Taken to reach the work", "Section"];
    view("Transfer that emission rules assume", head, rows.collect(), &[TRANSFER_IN_RULES[0].share.source])
}
