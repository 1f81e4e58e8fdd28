//! Everything a person sees: the handbook's chapters, its forms and answer panels, its look.
//!
//! A [`Handbook`] is read once, from the files in the binary or a folder laid over them, and rendered into memory once for
//! each unit system. The crate opens no socket and knows no trade: words come from the chapters, numbers from `calculators`.
//!
//! # How a chapter is written
//! Plain Markdown without HTML, in mdBook's layout: `SUMMARY.md` lists the files, `03-survey.md` is step 3 of the trade
//! sequence, any other name is a sheet. On top of Markdown stand these conventions, all of them readable as they are:
//!
//! - One heading of the first level, then one paragraph that says what the step is for.
//! - A list whose items begin in bold (`- **Known by now**: ...`) right after it: the cells under the title. The item
//!   `**Wait after**` is not shown there; it puts a wait on the story pole.
//! - A length in backquotes follows the reader's units, and so does a pair with a bar: `` `2 1/2 in` ``,
//!   `` `1/16 in | 1.5 mm` ``, `` `65 °F | 18 °C` ``. Any other code stays code.
//! - `- [ ] {key} words` is a row of a check list. The key stays when the words change; it is how a tick is kept.
//! - A quotation that begins in bold is a note for the margin. One that begins `**Hold point: ...**` and holds a check list is a
//!   place where the work stops.
//! - `[words](09-cut.md#heading)` leads to a chapter, `[words](work:equal-bays)` to a calculator, `[words](wall:b)`
//!   to the wall sheet (`a`, `b`, `c`, `new`, `saw`).
//! - `[words](table:nail-sizes)` and `[words](drawing:rake-cut)` lead to where a table or a drawing stands.
//! - A list in which every item begins in bold (`- **Bay**: ...`), below the head of a page, is a list of terms: each is a place
//!   that a link may lead to, `glossary.md#bay`.
//! - A list of links and nothing else is a row of places to jump to.
//! - Fenced blocks with a TOML body: `calculator` (id, values), `caution` (key), `table` (name: `calculators`,
//!   `cautions`, `sources`, or one of the reference tables, such as `nail-sizes`), `drawing` (name, and values for the
//!   calculation it is drawn from), `look` (id of a calculator, values, and the places of
//!   its answer to show): its answer in one line, with the way to it; `practice` (id of a calculator that has an exercise):
//!   its question with fresh numbers, to be answered in place.
//! - Calculators, tables and drawings stand once in the book. Every page but the front ends with a heading `Sources` and a list.
//!
//! Whatever is wrong is told at once, each fault with file and line ([`BookFaults`]).

mod calculation_page;
mod cautions;
mod chapter;
mod check;
mod contents;
mod fault;
mod fence;
mod find;
mod front;
mod handbook;
mod invitation;
mod page;
mod pieces;
mod pole;
mod practice;
mod prose;
mod reference;
mod render;
mod source;
mod tables;
mod theme;
mod wall_page;

pub use face::calculation::Outcome;
pub use face::exercise::Attempt;
pub use face::wall::{WallSheet, WallView};
pub use face::{Caution, Cautions, Face, Level, drawing, form};
pub use fault::{BookFault, BookFaults};
pub use find::Hit;
pub use handbook::Handbook;
pub use page::{Light, Page};
pub use render::{Site, render};
pub use source::Source;
pub use theme::Asset;
