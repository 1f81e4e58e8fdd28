//! Nails, wires, beads, boxes.

use calculators::catalogue::{Source, Standing, entry, works};
use calculators::filling::bead::{BeadShape, SOURCE as BEADS, metres_per};
use calculators::fixing::{box_fill, nail_holding, nail_sizes, nails};
use calculators::quantity::{Amount, Length, Units, kind};

use super::{decimal, figured, length, lengths, row, view};
use crate::reference::{Row, TableView, cell, figure_cell};
use face::figure;

pub(super) fn nails(units: Units) -> TableView {
    let rows = nail_sizes::COMMON.iter().map(|common| {
        let shank = |list| {
            nail_sizes::of_penny(list, common.penny).map_or_else(String::new, |nail| decimal(nail.shank(), 2, units))
        };
        let figures = [
            length(common.length(), units),
            decimal(common.shank(), 2, units),
            shank(&nail_sizes::BOX),
            shank(&nail_sizes::FINISHING),
        ];
        let name = std::iter::once(cell(format!("{}d", common.penny)));
        Row { cells: name.chain(figures.into_iter().map(figure_cell)).collect() }
    });
    let head = vec!["Size", "Length", "Shank, common", "Shank, box", "Shank, finishing"];
    figured("Nails", head, rows.collect(), &[nail_sizes::SOURCE])
}

pub(super) fn wires(units: Units) -> TableView {
    let rows = (6..=23).rev().filter_map(|gauge| {
        let shank = decimal(nail_sizes::wire_diameter(gauge)?, 2, units);
        Some(Row { cells: vec![cell(gauge.to_string()), figure_cell(shank)] })
    });
    figured("Steel wire gauges", vec!["Gauge", "Diameter"], rows.collect(), &[nail_sizes::SOURCE])
}

pub(super) fn box_volumes(units: Units) -> TableView {
    let rows = box_fill::CONDUCTOR_IN3.iter().map(|(gauge, cubic_inches)| {
        let volume: Amount<kind::BoxVolume> = Amount::of(cubic_inches * box_fill::IN3_CM3);
        row([gauge.to_string(), volume.text(units)])
    });
    let source = box_fill::VOLUME_SOURCE;
    figured("Volume of one conductor in a box (US)", vec!["Wire (AWG)", "Volume"], rows.collect(), &[source])
}

pub(super) fn gravities(_: Units) -> TableView {
    let rows =
        nail_holding::GRAVITY.iter().map(|(species, gravity)| row([(*species).to_owned(), format!("{gravity:.2}")]));
    let source = Source::new(works::NDS, "table 12.3.3A", Standing::Published);
    view("Specific gravity of stud timber", vec!["Species", "Specific gravity, oven-dry"], rows.collect(), &[source])
}

/// Which nail, by the thickness of the board and of the plasterboard behind it.
pub(super) fn nail_windows(units: Units) -> TableView {
    let (boards, sheets): (Vec<Length>, [Length; 2]) = match units {
        Units::Imperial => {
            ([24, 32, 40, 48, 64].map(Length::sixty_fourths).to_vec(), [32, 40].map(Length::sixty_fourths))
        }
        Units::Metric => ([9, 12, 15, 18, 22].map(Length::mm).to_vec(), [Length::um(12_500), Length::mm(15)]),
    };
    let sold = nails::sold(units);
    let pairs = boards.iter().flat_map(|board| sheets.iter().map(move |sheet| (*board, *sheet)));
    let rows = pairs.map(|(board, sheet)| {
        let window = nails::window(board, sheet, nails::penetration(units));
        let mut row = lengths("", &[board, sheet, window.from, window.below], units);
        row.cells.remove(0);
        row.cells.push(match nails::choice(window, &sold) {
            Some(nail) => figure_cell(length(nail, units)),
            None => cell("none sold"),
        });
        row.cells.push(match nails::pin(board, sheet, &sold) {
            Some(pin) => figure_cell(length(pin, units)),
            None => cell("none sold"),
        });
        row
    });
    let head = vec!["Board", "Plaster", "At least", "Under", "Nail sold", "Pin off the studs"];
    let source = Source::new(
        works::PRACTICE,
        "least hold in the stud, and the depth at which cables may run; off the studs no pin beyond the plasterboard",
        Standing::CommonPractice,
    );
    figured("Which nail, into a stud", head, rows.collect(), &[source])
}

/// How far a cartridge goes, by the size and shape of the bead.
pub(super) fn bead_runs(units: Units) -> TableView {
    let sizes: Vec<Length> = match units {
        Units::Imperial => [4, 8, 12, 16, 24].map(Length::sixty_fourths).to_vec(),
        Units::Metric => [2, 3, 4, 5, 6, 10].map(Length::mm).to_vec(),
    };
    let cartridge: Amount<kind::SmallVolume> = Amount::of(usual_cartridge(units));
    let run = |shape: BeadShape, size: Length| {
        let metres = metres_per(cartridge, shape.section_mm2(size, size), 0.0);
        let (number, unit) = figure::run(Length::nearest_mm(metres * 1_000.0), units);
        figure_cell(figure::with_unit(&number, unit))
    };
    let rows = sizes.into_iter().map(|size| Row {
        cells: vec![
            figure_cell(length(size, units)),
            run(BeadShape::TriangularFillet, size),
            run(BeadShape::ConcaveFillet, size),
            run(BeadShape::Round, size),
            run(BeadShape::Rectangle, size),
        ],
    });
    let of = cartridge.text(units);
    let head = vec![
        format!("{of}, bead of"),
        "Fillet".to_owned(),
        "Hollow".to_owned(),
        "Round".to_owned(),
        "Filled".to_owned(),
    ];
    figured("Run of one cartridge, nothing lost", head, rows.collect(), &[BEADS])
}

/// The cartridge of the caulk calculation's worked example, mL.
fn usual_cartridge(units: Units) -> f64 {
    let caulk = entry("caulk");
    let read = caulk.and_then(|caulk| caulk.read(&caulk.example(units).input, units).ok());
    read.and_then(|input| input.at("/cartridge")?.number()).unwrap_or_default()
}
