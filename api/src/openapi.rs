//! What is here, for people and for programs: the contents and the OpenAPI 3.1 document, both made from the catalogue.

use axum::Json;
use calculators::catalogue::{CATALOGUE, Entry, Schemas};
use calculators::quantity::Units;
use serde_json::{Map, Value, json};

use crate::answer::Form;
use crate::calculators::address;
use crate::walls::WALL_PLAN;

/// `GET /api`.
pub async fn contents() -> Json<Value> {
    Json(json!({
        "name": "Benchleaf",
        "version": env!("CARGO_PKG_VERSION"),
        "handbook": "/",
        "calculators": "/api/calculators",
        "description": "/api/openapi.json",
        "units": "add ?units=imperial or ?units=metric; a bare number in text is then inches or millimetres, a JSON number is always millimetres or the quantity's metric unit",
    }))
}

/// `GET /api/openapi.json`.
pub async fn document() -> Json<Value> {
    Json(describe())
}

/// Where the document keeps the schemas that several addresses share.
const SHARED: Schemas = Schemas { root: "#/components/schemas/" };
/// Where a schema that stands alone keeps them.
const ALONE: Schemas = Schemas { root: "#/$defs/" };

/// JSON Schema (2020-12) of a calculator's input, alone.
pub fn input_schema(entry: &Entry) -> Value {
    ALONE.input(entry.input())
}

/// JSON Schema (2020-12) of a calculator's answer, alone: result, working, notes and cautions.
pub fn answer_schema(entry: &Entry) -> Value {
    let mut schema = ALONE.answer(entry.output());
    schema["$defs"] = ALONE.shared().into();
    schema
}

/// The OpenAPI 3.1 document. JSON Schema 2020-12 is its own dialect; the calculators' schemas are made from their shapes.
pub fn describe() -> Value {
    let mut paths = Map::new();
    let list = json!({ "type": "array", "items": SHARED.named("Line") });
    paths.insert(
        "/api/calculators".to_owned(),
        json!({ "get": {
        "operationId": "list-calculators", "summary": "Every calculator, in the order of the trade",
        "responses": { "200": { "description": "The list", "content": { "application/json": { "schema": list } } } },
    } }),
    );
    for entry in CATALOGUE.iter() {
        paths.insert(address(entry.card().id), path(entry));
    }
    let mut schemas = SHARED.shared();
    schemas.insert("Line".to_owned(), line());
    schemas.insert("Card".to_owned(), card());
    schemas.insert("Problem".to_owned(), problem());
    json!({
        "openapi": "3.1.0",
        "info": {
            "title": "Benchleaf", "version": env!("CARGO_PKG_VERSION"),
            "summary": "The calculators of the handbook for decorative wall trim",
            "license": { "name": "MIT OR Apache-2.0", "identifier": "MIT OR Apache-2.0" },
        },
        "jsonSchemaDialect": "https://json-schema.org/draft/2020-12/schema",
        "paths": paths,
        "components": { "schemas": schemas },
    })
}

fn path(entry: &Entry) -> Value {
    let card = entry.card();
    let text = || json!({ "schema": { "type": "string" } });
    let examples = Units::ALL.map(|units| {
        let summary = format!("The worked example, {}", units.word());
        (units.word().to_owned(), json!({ "summary": summary, "value": entry.example(units).input }))
    });
    let mut content = json!({
        Form::Json.media_type(): { "schema": SHARED.answer(entry.output()) },
        "text/html": text(),
        "text/plain": text(),
    });
    if card.id == WALL_PLAN {
        content["image/svg+xml"] = text();
    }
    if card.list.is_some() {
        content["text/csv"] = text();
    }
    let units = json!({
        "name": "units", "in": "query", "schema": { "type": "string", "enum": ["imperial", "metric"], "default": "imperial" },
        "description": "In which units bare numbers in text are read and answers are printed",
    });
    let refused = json!({ "description": "Why there is no answer", "content": { "application/problem+json": { "schema": SHARED.named("Problem") } } });
    json!({
        "get": {
            "operationId": format!("{}-card", card.id), "summary": card.title,
            "description": "What is known of the calculator before a number is typed, its schemas and its worked example",
            "parameters": [units],
            "responses": {
                "200": { "description": "Card, schemas and worked example", "content": { "application/json": { "schema": SHARED.named("Card") } } },
                "default": refused,
            },
        },
        "post": {
            "operationId": card.id, "summary": card.title, "description": card.question, "parameters": [units],
            "requestBody": { "required": true, "description": "What is asked", "content": { "application/json": {
                "schema": SHARED.input(entry.input()), "examples": examples.into_iter().collect::<Map<_, _>>(),
            } } },
            "responses": {
                "200": { "description": "The answer with its working", "content": content },
                "default": refused,
            },
        },
    })
}

fn object(properties: Value) -> Value {
    let needed: Vec<_> = properties.as_object().into_iter().flat_map(Map::keys).cloned().collect();
    json!({ "type": "object", "properties": properties, "required": needed, "additionalProperties": false })
}

fn line() -> Value {
    let text = json!({ "type": "string" });
    let mut line =
        object(json!({ "id": text, "title": text, "question": text, "step": { "type": "integer" }, "address": text }));
    line["description"] = "A calculator in the list of all".into();
    line
}

fn card() -> Value {
    let example = object(json!({ "input": { "type": "object" }, "checked_against": { "type": "string" } }));
    let open = json!({ "type": "object" });
    let mut card = object(json!({ "card": open, "input_schema": open, "answer_schema": open, "example": example }));
    card["description"] = "What is known of a calculator before a number is typed".into();
    card
}

fn problem() -> Value {
    let text = json!({ "type": "string" });
    let fault = object(
        json!({ "pointer": text, "said": text, "why": text, "try": { "description": "A value that would do" } }),
    );
    json!({
        "type": "object", "description": "Problem details (RFC 9457)", "required": ["type", "title", "status", "detail"],
        "properties": {
            "type": text, "title": text, "status": { "type": "integer" }, "detail": text,
            "errors": { "type": "array", "items": fault },
        },
    })
}
