//! What is here, for people and for programs: the contents and the OpenAPI 3.1 document, both made from the catalogue.

use axum::Json;
use calculators::catalogue::{CATALOGUE, Entry};
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

/// The OpenAPI 3.1 document. JSON Schema 2020-12 is its own dialect, so the calculators' schemas stand in it as they are.
pub fn describe() -> Value {
    let mut paths = Map::new();
    paths.insert("/api/calculators".to_owned(), json!({ "get": {
        "operationId": "list-calculators", "summary": "Every calculator, in the order of the trade",
        "responses": { "200": { "description": "The list", "content": { "application/json": { "schema": { "type": "array" } } } } },
    } }));
    for entry in CATALOGUE.iter() {
        paths.insert(address(entry.card().id), path(entry));
    }
    json!({
        "openapi": "3.1.0",
        "info": {
            "title": "Benchleaf", "version": env!("CARGO_PKG_VERSION"),
            "summary": "The calculators of the handbook for decorative wall trim",
            "license": { "name": "MIT OR Apache-2.0", "identifier": "MIT OR Apache-2.0" },
        },
        "jsonSchemaDialect": "https://json-schema.org/draft/2020-12/schema",
        "paths": paths,
        "components": { "schemas": { "Problem": problem() } },
    })
}

fn path(entry: &Entry) -> Value {
    let card = entry.card();
    let mut content = json!({
        Form::Json.media_type(): { "schema": entry.answer_schema() },
        "text/html": { "schema": { "type": "string" } },
        "text/plain": { "schema": { "type": "string" } },
    });
    if card.id == WALL_PLAN {
        content["image/svg+xml"] = json!({ "schema": { "type": "string" } });
    }
    if card.list.is_some() {
        content["text/csv"] = json!({ "schema": { "type": "string" } });
    }
    let units = json!({
        "name": "units", "in": "query", "schema": { "enum": ["imperial", "metric"], "default": "imperial" },
        "description": "In which units bare numbers in text are read and answers are printed",
    });
    json!({
        "get": {
            "operationId": format!("{}-card", card.id), "summary": card.title, "parameters": [units],
            "responses": { "200": { "description": "Card, schemas and worked example", "content": { "application/json": { "schema": { "type": "object" } } } } },
        },
        "post": {
            "operationId": card.id, "summary": card.title, "description": card.question, "parameters": [units],
            "requestBody": { "required": true, "content": { "application/json": {
                "schema": entry.input_schema(), "example": entry.example(Units::Imperial).input,
            } } },
            "responses": {
                "200": { "description": "The answer with its working", "content": content },
                "default": { "description": "Why there is no answer", "content": { "application/problem+json": { "schema": { "$ref": "#/components/schemas/Problem" } } } },
            },
        },
    })
}

fn problem() -> Value {
    let text = json!({ "type": "string" });
    json!({
        "type": "object", "description": "Problem details (RFC 9457)", "required": ["type", "title", "status", "detail"],
        "properties": {
            "type": text, "title": text, "status": { "type": "integer" }, "detail": text,
            "errors": { "type": "array", "items": {
                "type": "object", "required": ["pointer", "said", "why", "try"],
                "properties": { "pointer": text, "said": text, "why": text, "try": { "description": "A value that would do" } },
            } },
        },
    })
}
