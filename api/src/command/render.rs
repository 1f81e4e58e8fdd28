//! `benchleaf render DIR`: the handbook as files.

use std::path::{Path, PathBuf};

use book::Light;
use calculators::quantity::Units;
use clap::Args;

use super::{Failure, UnitsWord, handbook};

/// Write the handbook as files that need no server; its calculations then show their worked examples.
#[derive(Args)]
pub struct Render {
    /// Folder to write into; it must be empty or not there yet.
    folder: PathBuf,
    /// The unit system of the pages.
    #[arg(long, value_enum, default_value_t)]
    units: UnitsWord,
}

impl Render {
    pub(super) fn run(&self) -> Result<(), Failure> {
        let full = std::fs::read_dir(&self.folder).is_ok_and(|mut entries| entries.next().is_some());
        if full {
            let why = format!("{} is not empty; name a folder that is, or a new one", self.folder.display());
            return Err(Failure::Input(why));
        }
        let site = book::render(&handbook()?, Units::from(self.units));
        for page in &site.pages {
            put(&self.folder, &page.path, page.html(Light::Auto).as_bytes())?;
        }
        for asset in &site.assets {
            put(&self.folder, &asset.path, &asset.bytes)?;
        }
        println!("{} pages in {}", site.pages.len(), self.folder.display());
        Ok(())
    }
}

/// Writes a file below a folder, with the folders on the way.
pub(super) fn put(folder: &Path, path: &str, bytes: &[u8]) -> Result<(), Failure> {
    let file = folder.join(path);
    let written = file.parent().map_or(Ok(()), std::fs::create_dir_all).and_then(|()| std::fs::write(&file, bytes));
    written.map_err(|why| Failure::Outside(format!("{} cannot be written: {why}", file.display())))
}
