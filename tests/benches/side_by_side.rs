//! A book of 2,000 pages through our renderer and through mdBook's own HTML renderer: the same text, both written to a folder.
//!
//! mdBook's search index and its page for printing are switched off; ours writes its search list as always. Run with
//! `cargo bench -p tests --features side-by-side`; nothing here gates.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use book::{Handbook, Light, render};
use calculators::quantity::Units;
use criterion::{Criterion, criterion_group, criterion_main};
use mdbook_driver::MDBook;
use mdbook_driver::config::Config;

const PAGES: usize = 2_000;

/// A folder with our chapters and 2,000 pages of their running text beside them.
fn book_of_2000() -> PathBuf {
    let built_in = Path::new(env!("CARGO_MANIFEST_DIR")).join("../book/chapters");
    let folder = std::env::temp_dir().join(format!("benchleaf-2000-{}", std::process::id()));
    let chapters = folder.join("chapters");
    std::fs::create_dir_all(&chapters).expect("a folder");
    let mut texts = Vec::new();
    for entry in std::fs::read_dir(&built_in).expect("the chapters").flatten() {
        let text = std::fs::read_to_string(entry.path()).expect("a chapter");
        std::fs::write(chapters.join(entry.file_name()), &text).expect("a copy");
        if entry.file_name() != "SUMMARY.md" {
            texts.push(running_text(&text));
        }
    }
    texts.retain(|text| text.len() > 1_000);
    texts.sort_unstable();
    let mut summary = std::fs::read_to_string(built_in.join("SUMMARY.md")).expect("the summary");
    for page in 0..PAGES {
        let text = &texts[page % texts.len()];
        let page_text = format!(
            "# Page {page}\n\nWhat page {page} is for.\n\n## In this order\n\n{text}\n\n## Sources\n\n- Common practice, no source\n"
        );
        std::fs::write(chapters.join(format!("page-{page}.md")), page_text).expect("a page");
        let _ = writeln!(summary, "- [Page {page}](page-{page}.md)");
    }
    std::fs::write(chapters.join("SUMMARY.md"), summary).expect("the summary");
    folder
}

/// Paragraphs and lists without links, blocks and quotations.
fn running_text(chapter: &str) -> String {
    let mut fenced = false;
    let plain = chapter.lines().filter(|line| {
        if line.starts_with("```") {
            fenced = !fenced;
            return false;
        }
        !fenced
            && !line.contains("](")
            && !line.starts_with(['#', '>', '|'])
            && !line.contains("[ ]")
            && !line.starts_with("- **")
    });
    plain.collect::<Vec<_>>().join("\n")
}

fn ours(folder: &Path) -> usize {
    let book = Handbook::load(folder).unwrap_or_else(|faults| panic!("{faults}"));
    let site = render(&book, Units::Imperial);
    let out = folder.join("ours");
    for page in &site.pages {
        let file = out.join(&page.path);
        std::fs::create_dir_all(file.parent().expect("a folder")).expect("a folder");
        std::fs::write(file, page.html(Light::Auto)).expect("a page");
    }
    for asset in &site.assets {
        let file = out.join(&asset.path);
        std::fs::create_dir_all(file.parent().expect("a folder")).expect("a folder");
        std::fs::write(file, &asset.bytes).expect("a file");
    }
    site.pages.len()
}

fn theirs(folder: &Path) {
    let config = "[book]\ntitle = \"Book\"\nsrc = \"chapters\"\n[build]\nbuild-dir = \"theirs\"\ncreate-missing = false\n[output.html.search]\nenable = false\n[output.html.print]\nenable = false\n";
    let config: Config = config.parse().expect("a configuration");
    MDBook::load_with_config(folder, config).expect("a book").build().expect("a site");
}

fn side_by_side(criterion: &mut Criterion) {
    let folder = book_of_2000();
    assert!(ours(&folder) > PAGES);
    let mut group = criterion.benchmark_group("2,000 pages, read, rendered and written");
    group.sample_size(10);
    group.bench_function("ours", |bencher| bencher.iter(|| ours(&folder)));
    group.bench_function("mdBook's HTML renderer", |bencher| bencher.iter(|| theirs(&folder)));
    group.finish();
    std::fs::remove_dir_all(&folder).ok();
}

criterion_group!(benches, side_by_side);
criterion_main!(benches);
