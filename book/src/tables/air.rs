//! Air: dew, drying, clearing; and what dust, noise and vibration are compared with.

use calculators::catalogue::{Source, Standing, works};
use calculators::drying::{air, recoat};
use calculators::exposure::air_changes::clearing_minutes;
use calculators::exposure::{dust, noise, vibration};
use calculators::quantity::{Units, kind};

use super::{amount, figured, row, temperatures, view};
use crate::reference::{Row, TableView, cell};

/// Humidities of rooms that are worked in, percent.
const HUMIDITIES: [f64; 6] = [40.0, 50.0, 60.0, 70.0, 80.0, 85.0];

pub(super) fn dust_limits(_: Units) -> TableView {
    let rows = dust::DUST_LIMITS.iter().map(|limit| {
        row([limit.agent.to_owned(), format!("{} mg/m³", limit.mg_m3), limit.source.standing.words().to_owned()])
    });
    view("Dust limits", vec!["Limit", "Mean over eight hours", "Standing"], rows.collect(), &dust::LIMIT_SOURCES)
}

pub(super) fn noise_times(_: Units) -> TableView {
    let rows =
        noise::CONSTRUCTION_TABLE.iter().map(|(level, hours)| row([format!("{level} dB(A)"), format!("{hours} h")]));
    let source = Source::new(works::OSHA_NOISE_CONSTRUCTION, "permissible exposures", Standing::Published);
    figured("Noise in United States construction", vec!["At this level", "In a day at most"], rows.collect(), &[source])
}

/// A table with the air's temperature across and its humidity down.
fn by_air(
    name: &'static str,
    corner: String,
    units: Units,
    source: Source,
    value: impl Fn(f64, f64) -> String,
) -> TableView {
    let rows = HUMIDITIES.iter().map(|humidity| {
        let cells = temperatures(units).into_iter().map(|celsius| cell(value(celsius, *humidity)));
        Row { cells: std::iter::once(cell(amount::<kind::Humidity>(*humidity, units))).chain(cells).collect() }
    });
    let mut head = vec![corner];
    head.extend(temperatures(units).into_iter().map(|celsius| amount::<kind::Temperature>(celsius, units)));
    figured(name, head, rows.collect(), &[source])
}

pub(super) fn dew_points(units: Units) -> TableView {
    let source = Source::new(
        works::ASHRAE_FUNDAMENTALS,
        "saturation pressure over water; dew point found from it",
        Standing::Published,
    );
    // The unit stands over the first column and in the head; repeated in each cell it would not fit a narrow page.
    let degrees = |celsius: f64| amount::<kind::Temperature>(celsius, units);
    let unit = degrees(0.0).trim_start_matches(|sign: char| !matches!(sign, '°')).to_owned();
    by_air("Dew point", format!("{unit} in"), units, source, |celsius, humidity| {
        degrees(air::dew_point(celsius, humidity)).trim_end_matches(unit.as_str()).trim_end_matches('\u{a0}').to_owned()
    })
}

pub(super) fn slower_drying(units: Units) -> TableView {
    let source = Source::new(
        works::THIS_BOOK,
        "vapour-pressure deficit of the sheet's air over the room's, rounded up; never under 1",
        Standing::HouseDefault,
    );
    by_air("How many times the sheet's waiting time", "Times in".to_owned(), units, source, |celsius, humidity| {
        format!("{:.1}", (recoat::air_factor(celsius, humidity) * 10.0 - 1e-9).ceil() / 10.0)
    })
}

pub(super) fn clearing_times(_: Units) -> TableView {
    let minutes = |changes: f64, left: f64, mixing: f64| format!("{:.0} min", clearing_minutes(changes, left, mixing));
    let rows = [2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0].into_iter().map(|changes: f64| {
        row([
            changes.to_string(),
            minutes(changes, 0.01, 1.0),
            minutes(changes, 0.001, 1.0),
            format!("{:.0} min", (clearing_minutes(changes, 0.01, 3.0) - 1e-9).ceil()),
        ])
    });
    let head = vec!["Changes an hour", "99 % gone", "99.9 % gone", "99 %, mixing 3"];
    let source = Source::new(
        works::CDC_VENTILATION,
        "table B.1, perfect mixing, rounded to the nearest minute as that table is; last column times a mixing factor, rounded up",
        Standing::Published,
    );
    figured("Minutes until a room is clear", head, rows.collect(), &[source])
}

pub(super) fn dust_controls(_: Units) -> TableView {
    let rows = dust::DUST_CONTROLS.iter().map(|control| {
        let (least, most) = control.reduction;
        let share = if least < most { format!("{least} to {most} %") } else { format!("{most} %") };
        row([control.tool.to_owned(), share, control.against.to_owned()])
    });
    let source = Source::new(works::NIOSH_99_113, "and the studies it rests on", Standing::Published);
    view("What takes sanding dust away", vec!["Way of working", "Less dust by", "Against"], rows.collect(), &[source])
}

pub(super) fn vibration_times(units: Units) -> TableView {
    let rows = [2.5, 4.0, 5.0, 7.0, 10.0, 15.0].into_iter().map(|level: f64| {
        let until = |value: f64| amount::<kind::Minutes>(vibration::minutes_to(level, value).floor(), units);
        row([amount::<kind::Vibration>(level, units), until(vibration::ACTION_VALUE), until(vibration::LIMIT_VALUE)])
    });
    let source =
        Source::new(works::EU_VIBRATION, "article 3, action and limit value over eight hours", Standing::Published);
    figured(
        "Trigger time until a value is reached",
        vec!["Tool", "Action value", "Limit value"],
        rows.collect(),
        &[source],
    )
}
