//! What is wrong with a book, with file and line. All faults of a book are told at once.

use std::fmt;

/// One thing that keeps the book from being rendered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BookFault {
    /// The file inside the book, `chapters/03-survey.md`.
    pub file: String,
    /// The line in it, from 1; the first when the whole file is meant.
    pub line: usize,
    /// What is wrong and what would do, in lower case.
    pub what: String,
}

impl BookFault {
    pub(crate) fn new(file: &str, line: usize, what: impl Into<String>) -> Self {
        Self { file: file.to_owned(), line: line.max(1), what: what.into() }
    }
}

impl fmt::Display for BookFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}:{}: {}", self.file, self.line, self.what)
    }
}

/// Every fault of a book, in order of file and line. Never empty.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub struct BookFaults(pub Vec<BookFault>);

impl fmt::Display for BookFaults {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, fault) in self.0.iter().enumerate() {
            if 0 < at {
                writeln!(out)?;
            }
            write!(out, "{fault}")?;
        }
        Ok(())
    }
}
