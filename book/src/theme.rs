//! The theme: templates, style sheet, scripts, fonts.

use std::borrow::Cow;

use face::Theme;

use crate::fault::BookFault;
use crate::source::Source;

/// A file of the site that is no page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Asset {
    /// Where it stands, `theme/benchleaf.css`.
    pub path: String,
    /// Its media type.
    pub media_type: &'static str,
    /// Its bytes.
    pub bytes: Cow<'static, [u8]>,
}

/// The templates of the book, ready to be filled.
pub(crate) fn read(source: &Source) -> Result<Theme, BookFault> {
    let templates = source
        .below("theme/templates/")
        .filter_map(|(name, _)| Some((name.to_owned(), source.text(&format!("theme/templates/{name}"))?.to_owned())));
    Theme::new(templates.collect()).map_err(|message| template_fault(source, &message))
}

/// A template that cannot be read, with the file and line that the reader of templates names in its message.
fn template_fault(source: &Source, message: &str) -> BookFault {
    let after = |sign: &str| message.split_once(sign).map(|(_, rest)| rest);
    let named = source.below("theme/templates/").map(|(name, _)| name).find(|name| message.contains(name));
    let line = after(" --> ").map(|rest| rest.trim_start_matches(|sign: char| !sign.is_ascii_digit() && sign != '\n'));
    let line = line.and_then(|rest| rest.split(|sign: char| !sign.is_ascii_digit()).next()?.parse().ok());
    let file = named.map_or("theme/templates".to_owned(), |name| format!("theme/templates/{name}"));
    BookFault::new(&file, line.unwrap_or(1), message)
}

/// The files the pages ask for. The layers of the style sheet become one file, in order of their names.
pub(crate) fn assets(source: &Source) -> Vec<Asset> {
    let mut sheet = Vec::new();
    let mut assets = Vec::new();
    for (name, bytes) in source.below("theme/") {
        if name.starts_with("css/") {
            sheet.extend_from_slice(bytes);
            continue;
        }
        if name.starts_with("templates/") {
            continue;
        }
        assets.push(Asset { path: format!("theme/{name}"), media_type: media_type(name), bytes: bytes.clone() });
    }
    assets.push(Asset {
        path: "theme/benchleaf.css".to_owned(),
        media_type: media_type("benchleaf.css"),
        bytes: Cow::Owned(sheet),
    });
    assets
}

/// The scripts that pages ask for by name; a new one is one new word here.
const SCRIPTS: [&str; 10] = [
    "awake.js",
    "choices.js",
    "exercise.js",
    "find.js",
    "lay-out.js",
    "practice.js",
    "ticks.js",
    "turn.js",
    "wall.js",
    "work.js",
];

/// Every file of the theme is asked for by the style sheet, a template, a script or a page, and what the style sheet asks for is there.
pub(crate) fn check(source: &Source, faults: &mut Vec<BookFault>) {
    let texts = |folder: &'static str| {
        source.below(folder).filter_map(move |(name, _)| Some((name, source.text(&format!("{folder}{name}"))?)))
    };
    let mut asked: Vec<&str> = Vec::new();
    for (name, sheet) in texts("theme/css/") {
        for (line, text) in sheet.lines().enumerate() {
            for target in text.split("url(").skip(1).filter_map(|rest| rest.split(')').next()) {
                let target = target.trim_matches(['"', '\'']);
                if target.starts_with(['#', '/']) || target.contains(':') {
                    continue;
                }
                asked.push(target);
                if !source.holds(&format!("theme/{target}")) {
                    let what = format!("there is no file theme/{target}");
                    faults.push(BookFault::new(&format!("theme/css/{name}"), line + 1, what));
                }
            }
        }
    }
    let written: Vec<&str> = texts("theme/templates/").chain(texts("theme/js/")).map(|(_, text)| text).collect();
    for (name, _) in source.below("theme/") {
        let (folder, file) = name.rsplit_once('/').unwrap_or(("", name));
        let stem = file.split(['-', '.']).next().unwrap_or_default();
        let used = match folder {
            "css" | "templates" => true,
            "js" => SCRIPTS.contains(&file) || written.iter().any(|text| text.contains(&format!("/{file}"))),
            // A licence stays for as long as a face of its family does.
            _ if file.ends_with(".txt") => asked.iter().any(|asked| asked.starts_with(&format!("{folder}/{stem}"))),
            _ => asked.contains(&name) || written.iter().any(|text| text.contains(name)),
        };
        if !used {
            faults.push(BookFault::new(
                &format!("theme/{name}"),
                1,
                "nothing asks for this file; use it, or take it out",
            ));
        }
    }
}

fn media_type(name: &str) -> &'static str {
    match name.rsplit('.').next().unwrap_or_default() {
        "css" => "text/css; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "json" => "application/json",
        "svg" => "image/svg+xml",
        "woff2" => "font/woff2",
        _ => "text/plain; charset=utf-8",
    }
}
