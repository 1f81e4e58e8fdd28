//! Writes the site to a folder, so that it can be looked at without the server: `cargo run -p book --example site -- DIR`.
//!
//! Pages in inches go to `DIR/imperial`, pages in millimetres to `DIR/metric`; a second word `lamp` writes them in lamp light. Pages
//! under `work` show each calculator with nothing filled in, as a form posted empty would come back.

use std::path::{Path, PathBuf};

use book::{Handbook, Light, Outcome, Site, render};
use calculators::catalogue::CATALOGUE;
use calculators::quantity::Units;
use serde_json::json;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut words = std::env::args().skip(1);
    let folder = PathBuf::from(words.next().unwrap_or_else(|| "site".to_owned()));
    let light = if words.next().as_deref() == Some("lamp") { Light::Lamp } else { Light::Day };
    let book = Handbook::load(Path::new(env!("CARGO_MANIFEST_DIR")))?;
    for units in [Units::Imperial, Units::Metric] {
        let folder = folder.join(units.word());
        write(&render(&book, units), &folder, light)?;
        for entry in CATALOGUE.iter() {
            let empty = json!({});
            let faults = entry.answer(&empty, units).err().unwrap_or_default();
            let page = book.calculator_page(entry, &empty, Outcome::Faults(&faults), units);
            put(&folder, &format!("{}.html", page.path), page.html(light).as_bytes())?;
        }
        put(&folder, "find.html", book.find_page("second coat", units).html(light).as_bytes())?;
    }
    Ok(())
}

fn write(site: &Site, folder: &Path, light: Light) -> std::io::Result<()> {
    for page in &site.pages {
        put(folder, &page.path, page.html(light).as_bytes())?;
    }
    for asset in &site.assets {
        put(folder, &asset.path, &asset.bytes)?;
    }
    Ok(())
}

fn put(folder: &Path, path: &str, bytes: &[u8]) -> std::io::Result<()> {
    let path = folder.join(path);
    if let Some(parent) = path.parent() {
        std::fs::create_dir_all(parent)?;
    }
    std::fs::write(path, bytes)
}
