//! The files a handbook is made of: compiled in, or compiled in with a folder laid over them.
//!
//! A book must work from any folder and without a network, so everything is in the binary; a folder of the same layout
//! (`chapters/`, `cautions.toml`) replaces files one by one, which is how a chapter is written with the page open. A `theme/` in it
//! may only repeat the binary's own: templates, style and scripts carry the cautions.
//! Nothing else in this crate touches the disk.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::path::Path;

use include_dir::{Dir, include_dir};

static CHAPTERS: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/chapters");
static THEME: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/theme");
static CAUTIONS: &str = include_str!("../cautions.toml");

/// The file that registers cautions.
pub(crate) const CAUTIONS_FILE: &str = "cautions.toml";
/// The folder of the handbook's text.
pub(crate) const CHAPTERS_FOLDER: &str = "chapters/";

/// The files of a book by their path inside it, with forward slashes: `chapters/SUMMARY.md`.
#[derive(Clone, Debug, Default)]
pub struct Source {
    files: BTreeMap<String, Cow<'static, [u8]>>,
}

impl Source {
    /// The files compiled into the binary.
    pub fn built_in() -> Self {
        let mut files = BTreeMap::new();
        take(&CHAPTERS, "chapters", &mut files);
        take(&THEME, "theme", &mut files);
        files.insert(CAUTIONS_FILE.to_owned(), Cow::Borrowed(CAUTIONS.as_bytes()));
        Self { files }
    }

    /// The built-in files with a folder of the same layout laid over them, file by file.
    /// # Errors
    /// When the folder, or a file in it, cannot be read.
    pub fn with_folder(folder: &Path) -> std::io::Result<Self> {
        let mut source = Self::built_in();
        for part in ["chapters", "theme"] {
            let inside = folder.join(part);
            if inside.is_dir() {
                source.take_folder(&inside, part)?;
            }
        }
        let cautions = folder.join(CAUTIONS_FILE);
        if cautions.is_file() {
            source.files.insert(CAUTIONS_FILE.to_owned(), Cow::Owned(std::fs::read(cautions)?));
        }
        Ok(source)
    }

    /// The same files with the theme of another book.
    pub(crate) fn with_theme_of(mut self, other: &Self) -> Self {
        let of_theme = |path: &String| path.starts_with("theme/");
        self.files.retain(|path, _| !of_theme(path));
        self.files.extend(other.files.iter().filter(|(path, _)| of_theme(path)).map(|(p, b)| (p.clone(), b.clone())));
        self
    }

    fn take_folder(&mut self, folder: &Path, prefix: &str) -> std::io::Result<()> {
        for entry in std::fs::read_dir(folder)? {
            let entry = entry?;
            let name = format!("{prefix}/{}", entry.file_name().to_string_lossy());
            if entry.file_type()?.is_dir() {
                self.take_folder(&entry.path(), &name)?;
            } else {
                self.files.insert(name, Cow::Owned(std::fs::read(entry.path())?));
            }
        }
        Ok(())
    }

    /// Puts one file in, or replaces it.
    pub fn put(&mut self, path: &str, bytes: impl Into<Vec<u8>>) {
        self.files.insert(path.to_owned(), Cow::Owned(bytes.into()));
    }

    /// A file as text; `None` when it is missing or no UTF-8.
    pub fn text(&self, path: &str) -> Option<&str> {
        std::str::from_utf8(self.files.get(path)?).ok()
    }

    /// The bytes of a file.
    pub(crate) fn file(&self, path: &str) -> Option<&Cow<'static, [u8]>> {
        self.files.get(path)
    }

    /// Whether there is such a file.
    pub(crate) fn holds(&self, path: &str) -> bool {
        self.files.contains_key(path)
    }

    /// Every file below a folder, with the path cut to what lies inside it, in order of path.
    pub fn below<'a>(&'a self, folder: &'a str) -> impl Iterator<Item = (&'a str, &'a Cow<'static, [u8]>)> {
        self.files.range(folder.to_owned()..).map_while(move |(path, bytes)| Some((path.strip_prefix(folder)?, bytes)))
    }
}

fn take(folder: &Dir<'static>, prefix: &str, files: &mut BTreeMap<String, Cow<'static, [u8]>>) {
    for file in folder.files() {
        let inside: Vec<_> = file.path().iter().map(|part| part.to_string_lossy()).collect();
        files.insert(format!("{prefix}/{}", inside.join("/")), Cow::Borrowed(file.contents()));
    }
    for inner in folder.dirs() {
        take(inner, prefix, files);
    }
}
