//! The book's own rules and rates, where a shop has none yet; and settings of the saw.

use calculators::catalogue::{Source, Standing, works};
use calculators::price::labour;
use calculators::quantity::{Amount, Length, Units, kind};
use calculators::wall::{defaults, saw};

use super::{amount, figured, length, lengths, row, view};
use crate::reference::{Row, TableView, cell, figure_cell};

pub(super) fn labour_rates(_: Units) -> TableView {
    let rows = labour::HOUSE_RATES.iter().map(|(task, of, hours)| {
        row([(*task).to_owned(), (*of).to_owned(), Amount::<kind::Minutes>::of(hours * 60.0).text(Units::Metric)])
    });
    let source = Source::new(works::THIS_BOOK, "house rates, until a shop has its own", Standing::HouseDefault);
    view("House rates for labour", vec!["Task", "For one", "Time"], rows.collect(), &[source])
}

pub(super) fn layout_rules(units: Units) -> TableView {
    let rules = [
        ("clear wall between a plate and a board", "a plate must be seen to stand free", defaults::PLATE_CLEARANCE),
        ("most shift of one board", "more is seen as a mistake", defaults::MAX_SHIFT),
        (
            "most change between neighbouring bays, or 5 % of the bay if that is more",
            "the eye compares neighbours",
            defaults::MAX_CHANGE,
        ),
        ("narrowest ripped board", "less splits and throws back", defaults::NARROWEST_RIP),
        ("neck beside a notch, fibreboard", "less breaks in the hand", defaults::NECK_MDF),
        ("neck beside a notch, solid wood", "less breaks in the hand", defaults::NECK_SOLID),
        ("longest notch", "a long neck is a spring", defaults::LONGEST_NOTCH),
        ("radius of an eased edge", "paint leaves a sharp one", defaults::EDGE_RADIUS),
        ("rail to the edge of a plate", "two lines so near look like one crooked line", defaults::RAIL_TO_PLATE),
        ("stud centre inside both edges of a board", "the pin must not split the edge", defaults::STUD_MARGIN),
        ("joint from an opening or a plate", "it is looked at most there", defaults::JOINT_DISTANCE),
        ("widest gap for caulk", "a wider bead shrinks into a groove", defaults::WIDEST_CAULK),
        ("relief over a hard floor without base", "floors are washed and are never flat", defaults::FLOOR_RELIEF),
        ("kerf until it is measured", "measure it", defaults::KERF),
        ("trim off each end of a stick", "ends are split, dirty or not square", defaults::END_TRIM),
        ("offcut worth keeping", "shorter ones are never found again", defaults::KEEP_OFFCUT),
    ];
    let rows = rules.into_iter().map(|(what, why, pair)| Row {
        cells: vec![cell(what), figure_cell(length(pair.in_units(units), units)), cell(why)],
    });
    let source =
        Source::new(works::THIS_BOOK, "defaults until a shop has its own; common practice", Standing::HouseDefault);
    view("Rules the layout keeps", vec!["Rule", "Value", "Reason"], rows.collect(), &[source])
}

/// Setting for corners near square, and what 45° would leave open.
pub(super) fn saw_settings(units: Units) -> TableView {
    let (rail, cap) = match units {
        Units::Imperial => (Length::sixty_fourths(48), Length::sixty_fourths(224)),
        Units::Metric => (Length::mm(18), Length::mm(90)),
    };
    let rows = [86.0, 87.0, 88.0, 89.0, 90.0, 91.0, 92.0, 93.0, 94.0, 135.0].into_iter().map(|corner: f64| {
        let opens = [rail, cap].map(|depth| saw::opening(depth, 45.0, corner));
        let mut row = lengths("", &opens, units);
        row.cells[0] = cell(Amount::<kind::Angle>::of(corner).text(units));
        row.cells.insert(1, cell(amount::<kind::Angle>(saw::setting(corner), units)));
        row
    });
    let (rail, cap) = (rail.text(units), cap.text(units));
    let head = vec!["Corner".to_owned(), "Saw".to_owned(), format!("45° opens {rail}"), format!("45° opens {cap}")];
    let source = Source::new(works::GEOMETRY, "90° less half the corner", Standing::Derived);
    figured("Saw setting by corner", head, rows.collect(), &[source])
}
