//! Templates, filled with what is already words.
//!
//! Only templates and running text make HTML. A template decides nothing about numbers. File names end in `.html`, so values are
//! escaped unless a template says that they are HTML of ours.

use serde::Serialize;
use tera::{Context, Tera};

/// Templates ready to be filled.
#[derive(Debug)]
pub struct Theme {
    tera: Tera,
}

impl Theme {
    /// Reads templates, each with its name.
    /// # Errors
    /// What is wrong with the first that cannot be read, in words, with its name and line.
    pub fn new(templates: Vec<(String, String)>) -> Result<Self, String> {
        let mut tera = Tera::new();
        tera.add_raw_templates(templates).map_err(|error| full_message(&error))?;
        Ok(Self { tera })
    }

    /// Fills a template. A template that cannot be filled prints its fault in place, so that no input can stop a page.
    pub fn fill(&self, template: &str, view: &impl Serialize) -> String {
        let filled = Context::from_serialize(view).and_then(|context| self.tera.render(template, &context));
        filled.unwrap_or_else(|error| {
            format!(
                "<p>This part of the page could not be printed: {}</p>",
                crate::figure::escape(&full_message(&error))
            )
        })
    }
}

fn full_message(error: &dyn std::error::Error) -> String {
    let mut out = error.to_string();
    let mut cause = error.source();
    while let Some(inner) = cause {
        out = format!("{out}: {inner}");
        cause = inner.source();
    }
    out
}
