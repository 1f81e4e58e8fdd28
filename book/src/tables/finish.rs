//! Abrasives, films, cups and gloss.

use calculators::catalogue::{Source, Standing, works};
use calculators::coating::film::{
    GAUGE_TEETH_UM, METRIC_TEETH_UM, SOURCE as FILM, TRANSFER_BY_HAND, TRANSFER_IN_RULES, spreading_rate,
};
use calculators::coating::flow_cup::{self, Cup};
use calculators::coating::gloss_level::{self, range_in_words};
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
    let rows = gloss_level::LEVELS.iter().map(|level| {
        row([
            level.level.to_string(),
            range_in_words(level.gloss_from, level.gloss_to),
            range_in_words(level.sheen_from, level.sheen_to),
        ])
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
        row([cup.name(), formula, format!("{} to {} s", rule.least, rule.most), format!("{} °C", rule.celsius)])
    });
    let head = vec!["Cup", "mm²/s from t seconds", "Counts from", "Tested at"];
    view("Flow cups", head, rows.collect(), &flow_cup::SOURCES)
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
    let rows = TRANSFER_BY_HAND.iter().chain(&TRANSFER_IN_RULES).map(|transfer| {
        let section = transfer.share.source.locator;
        row([transfer.method.to_owned(), format!("{:.0} %", transfer.share.value * 100.0), section.to_owned()])
    });
    let head = vec!["Way of spraying", "Taken to reach the work", "Where it stands"];
    let sources =
        [TRANSFER_BY_HAND[0].share.source, TRANSFER_BY_HAND[1].share.source, TRANSFER_IN_RULES[0].share.source];
    view("Transfer efficiency", head, rows.collect(), &sources)
}
