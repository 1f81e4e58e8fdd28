//! Writes the site to a folder, so that it can be looked at without the server: `cargo run -p book --example site -- DIR`.
//!
//! Pages in inches go to `DIR/imperial`, pages in millimetres to `DIR/metric`; a second word `lamp` writes them in lamp light.

use std::path::{Path, PathBuf};

use book::{Handbook, Light, Site, render};
use calculators::quantity::Units;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut words = std::env::args().skip(1);
    let folder = PathBuf::from(words.next().unwrap_or_else(|| "site".to_owned()));
    let light = if words.next().as_deref() == Some("lamp") { Light::Lamp } else { Light::Day };
    let book = Handbook::load(Path::new(env!("CARGO_MANIFEST_DIR")))?;
    for units in [Units::Imperial, Units::Metric] {
        write(&render(&book, units), &folder.join(units.word()), light)?;
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
