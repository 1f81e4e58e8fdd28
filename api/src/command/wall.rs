//! `benchleaf wall FILE --out DIR`: a whole wall as a pack of files.

use std::path::PathBuf;

use book::{Light, WallSheet, WallView};
use calculators::catalogue::{Fault, Printed, entry};
use calculators::quantity::Units;
use clap::Args;

use super::render::put;
use super::{Failure, UnitsWord, handbook, read_input, told};
use crate::answer;
use crate::calculators::cautions;
use crate::walls::{WALL_PLAN, planned};

/// Work out a wall and write the whole pack: plan, drawing, cut list, printable pages.
#[derive(Args)]
pub struct Wall {
    /// The survey and the scheme, as JSON or TOML; `-` reads JSON from standard input.
    file: PathBuf,
    /// Folder for the pack; files of an earlier pack in it are written over.
    #[arg(long)]
    out: PathBuf,
    /// Units of bare numbers, and of the pack.
    #[arg(long, value_enum, default_value_t)]
    units: UnitsWord,
}

impl Wall {
    pub(super) fn run(&self) -> Result<(), Failure> {
        let units = Units::from(self.units);
        let entry = entry(WALL_PLAN).ok_or_else(|| Failure::Outside("the catalogue has no wall plan".to_owned()))?;
        let book = handbook()?;
        let values = read_input(&self.file)?;
        let refused = |faults: Vec<Fault>| Failure::Input(told(&Fault::print_all(&faults, units)));
        let (input, plan) = planned(entry, &values, units).map_err(refused)?;
        let answer = entry.work(&values, units).map_err(refused)?;
        let mut printed = Printed(&answer, units).to_value();
        printed["cautions"] = cautions(&book, entry);
        let mut files = vec![("plan.json".to_owned(), format!("{printed:#}\n"))];
        if let Some(cut_list) = answer::csv(entry, &answer, units) {
            files.push(("cut-list.csv".to_owned(), cut_list));
        }
        files.push(("drawing.svg".to_owned(), book.wall_drawing(&input, &plan, 1, units)));
        for view in WallView::ALL {
            let name = match view {
                WallView::Sheet => "wall.html".to_owned(),
                WallView::Numbers => "marks.html".to_owned(),
                other => format!("{}.html", other.word()),
            };
            let sheet =
                WallSheet { values: &values, outcome: Ok((&input, &plan)), layout: 1, view, at: 1, open: false };
            files.push((name, book.wall_file(entry, sheet, units).html(Light::Day)));
        }
        for (name, text) in &files {
            put(&self.out, name, text.as_bytes())?;
        }
        for asset in &book::render(&book, units).assets {
            put(&self.out, &asset.path, &asset.bytes)?;
        }
        let settle = plan.layouts.first().map_or(0, |layout| {
            layout
                .conflicts
                .iter()
                .filter(|conflict| conflict.severity == calculators::wall::plan::Severity::Settle)
                .count()
        });
        println!("wall {}: {} files in {}", plan.wall, files.len(), self.out.display());
        for caution in entry.card().cautions.iter().filter_map(|key| book.cautions().get(key)) {
            println!("{}", caution.line());
        }
        if settle > 0 {
            eprintln!("{settle} findings must be settled before anything is cut; wall.html names them");
        }
        Ok(())
    }
}
