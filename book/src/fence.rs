//! Fenced blocks: what a chapter asks for by name, with a TOML body.

use crate::cautions::line_at;
use crate::chapter::Block;

/// The blocks of this book, as they are named when something else was written.
const KINDS: &str = "calculator, caution, table, drawing, look and practice are";

/// Reads a fenced block; a fault comes with the line below the fence's own.
pub(crate) fn read(kind: &str, body: &str) -> Result<Block, (usize, String)> {
    let table: toml::Table = toml::from_str(body).map_err(|error| {
        let below = error.span().map_or(0, |span| line_at(body, span.start));
        (below, error.message().to_owned())
    })?;
    let word = |key: &str, example: &str| {
        let found = table.get(key).and_then(toml::Value::as_str).map(str::to_owned);
        found.ok_or_else(|| (0, format!("a {kind} block needs {key} = \"{example}\"")))
    };
    let values = || {
        let values = table.get("values").and_then(|values| serde_json::to_value(values).ok());
        values.unwrap_or(serde_json::Value::Null)
    };
    match kind {
        "calculator" => Ok(Block::Calculator { id: word("id", "equal-bays")?, values: values() }),
        "look" => {
            let show = table.get("show").and_then(toml::Value::as_array);
            let show = show.into_iter().flatten().filter_map(|one| one.as_str().map(str::to_owned)).collect();
            Ok(Block::Look { id: word("id", "equal-bays")?, values: values(), show })
        }
        "practice" => Ok(Block::Practice { id: word("id", "equal-bays")? }),
        "caution" => Ok(Block::Caution { key: word("key", "laser-light")? }),
        "table" => Ok(Block::Reference { table: word("name", "sources")? }),
        "drawing" => Ok(Block::Drawing { name: word("name", "rake-cut")?, values: values() }),
        _ => Err((0, format!("{kind} is no block of this book; {KINDS}"))),
    }
}
