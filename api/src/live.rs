//! The handbook as it is served now: the one in the binary, or a folder laid over it that is read again when a file in it changes.

use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError, RwLock};
use std::time::SystemTime;

use axum::extract::FromRef;
use book::{BookFaults, Handbook};

use crate::app::State;

/// What handlers get their state from.
#[derive(Clone)]
pub struct Live(Arc<Inner>);

struct Inner {
    now: RwLock<State>,
    folder: Option<Folder>,
}

struct Folder {
    path: PathBuf,
    seen: Mutex<Stamp>,
}

/// What changes when a file in a folder does: how many there are, how long they are together, the newest time.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Stamp {
    files: u64,
    bytes: u64,
    newest: Option<SystemTime>,
}

impl From<State> for Live {
    fn from(state: State) -> Self {
        Self(Arc::new(Inner { now: RwLock::new(state), folder: None }))
    }
}

impl Live {
    /// The built-in book with a folder laid over it.
    /// # Errors
    /// Every fault of the book, with file and line.
    pub fn of_folder(path: &Path) -> Result<Self, BookFaults> {
        let seen = stamp(path);
        let state = State::new(Handbook::load(path)?);
        let folder = Folder { path: path.to_owned(), seen: Mutex::new(seen) };
        Ok(Self(Arc::new(Inner { now: RwLock::new(state), folder: Some(folder) })))
    }

    /// The state to answer with: read again if the folder has changed. A folder with a fault in it is told on the terminal, and
    /// the book stays as it was.
    fn now(&self) -> State {
        if let Some(folder) = &self.0.folder {
            let mut seen = folder.seen.lock().unwrap_or_else(PoisonError::into_inner);
            let found = stamp(&folder.path);
            if found != *seen {
                *seen = found;
                match Handbook::load(&folder.path) {
                    Ok(book) => *self.0.now.write().unwrap_or_else(PoisonError::into_inner) = State::new(book),
                    Err(faults) => eprintln!("the book stays as it was:\n{faults}"),
                }
            }
        }
        self.0.now.read().unwrap_or_else(PoisonError::into_inner).clone()
    }
}

impl FromRef<Live> for State {
    fn from_ref(live: &Live) -> Self {
        live.now()
    }
}

fn stamp(folder: &Path) -> Stamp {
    let mut stamp = Stamp::default();
    let mut waiting = vec![folder.to_owned()];
    while let Some(folder) = waiting.pop() {
        for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
            let Ok(about) = entry.metadata() else { continue };
            if about.is_dir() {
                waiting.push(entry.path());
                continue;
            }
            stamp.files += 1;
            stamp.bytes = stamp.bytes.wrapping_add(about.len());
            stamp.newest = stamp.newest.max(about.modified().ok());
        }
    }
    stamp
}
