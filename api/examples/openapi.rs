//! Writes the OpenAPI document: `cargo run -q -p api --example openapi > api/openapi.json`.

use serde::Serialize;
use serde_json::ser::{PrettyFormatter, Serializer};

fn main() {
    let mut out = Vec::new();
    let mut serializer = Serializer::with_formatter(&mut out, PrettyFormatter::with_indent(b" "));
    api::openapi::describe().serialize(&mut serializer).expect("plain data");
    println!("{}", String::from_utf8(out).expect("JSON is UTF-8"));
}
