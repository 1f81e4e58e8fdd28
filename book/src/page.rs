//! A finished page, in one unit system and in no light yet.

use serde::{Deserialize, Serialize};

/// In which light the reader looks at the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Light {
    /// Nothing was chosen: the page follows the device.
    #[default]
    Auto,
    /// Dark on light.
    Day,
    /// Light on dark.
    Lamp,
}

impl Light {
    /// Every light.
    pub const ALL: [Self; 3] = [Self::Auto, Self::Day, Self::Lamp];

    /// The word used in requests, cookies and on the root element.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Auto => "auto",
            Self::Day => "day",
            Self::Lamp => "lamp",
        }
    }
}

/// What the frame prints where the light goes. It stands once on a page, in the root element.
pub(crate) const LIGHT_SLOT: &str = "@light@";

/// A page of the site.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Page {
    /// Where it stands, `survey.html`; `index.html` is the front page.
    pub path: String,
    before: String,
    after: String,
}

impl Page {
    pub(crate) fn new(path: impl Into<String>, html: &str) -> Self {
        let (before, after) = html.split_once(LIGHT_SLOT).unwrap_or((html, ""));
        Self { path: path.into(), before: before.to_owned(), after: after.to_owned() }
    }

    /// The whole document in a light.
    pub fn html(&self, light: Light) -> String {
        [&self.before, light.word(), &self.after].concat()
    }
}
