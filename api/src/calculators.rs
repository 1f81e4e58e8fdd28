//! The calculators as a resource: the list, the cards, and the one way to ask each.

use std::collections::HashMap;

use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, header};
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use axum::{Json, Router};
use book::Handbook;
use calculators::catalogue::{self, CATALOGUE, Entry, Fault};
use calculators::quantity::Units;
use serde_json::{Value, json};

use crate::answer::{self, Form};
use crate::app::{LONGEST_WORK, State as Shared};
use crate::live::Live;
use crate::openapi;
use crate::posted;
use crate::problem::ApiError;
use crate::walls;

/// Routes under `/api/calculators`.
pub fn routes() -> Router<Live> {
    Router::new().route("/", get(list)).route("/{id}", get(card).post(work))
}

async fn list() -> Json<Value> {
    CATALOGUE.iter().map(|entry| {
        let card = entry.card();
        json!({ "id": card.id, "title": card.title, "question": card.question, "step": card.step, "address": address(card.id) })
    }).collect::<Value>().into()
}

/// The address of a calculator.
pub fn address(id: &str) -> String {
    format!("/api/calculators/{id}")
}

async fn card(Path(id): Path<String>, Query(query): Query<HashMap<String, String>>) -> Result<Json<Value>, ApiError> {
    let entry = found(&id)?;
    let example = entry.example(units_of(&query)?);
    Ok(Json(json!({
        "card": entry.card(),
        "input_schema": openapi::input_schema(entry),
        "answer_schema": openapi::answer_schema(entry),
        "example": { "input": example.input, "checked_against": example.checked_against },
    })))
}

async fn work(
    State(state): State<Shared>,
    Path(id): Path<String>,
    Query(query): Query<HashMap<String, String>>,
    headers: HeaderMap,
    body: Result<Bytes, BytesRejection>,
) -> Result<Response, ApiError> {
    let entry = found(&id)?;
    let units = units_of(&query)?;
    let form = Form::accepted(&headers)?;
    let input = input(entry, &headers, body)?;
    let work = tokio::task::spawn_blocking(move || answered(state.book(), entry, &input, units, form));
    let text = tokio::time::timeout(LONGEST_WORK, work).await.map_err(|_| ApiError::TooLong)?;
    let text = text.map_err(|_| ApiError::TooLong)??;
    Ok(([(header::CONTENT_TYPE, form.media_type()), (header::CACHE_CONTROL, "no-store")], text).into_response())
}

/// The calculator with this id.
/// # Errors
/// [`ApiError::NotFound`].
pub fn found(id: &str) -> Result<&'static Entry, ApiError> {
    catalogue::entry(id)
        .ok_or_else(|| ApiError::NotFound(format!("calculator «{}»", id.chars().take(60).collect::<String>())))
}

/// The unit system of a request's query; imperial where it says nothing.
/// # Errors
/// [`ApiError::Query`] for another word.
pub fn units_of(query: &HashMap<String, String>) -> Result<Units, ApiError> {
    match query.get("units").map(String::as_str) {
        None | Some("imperial") => Ok(Units::Imperial),
        Some("metric") => Ok(Units::Metric),
        Some(_) => Err(ApiError::Query("units must be imperial or metric".to_owned())),
    }
}

/// The input in a body: JSON as it is, or a posted form.
/// # Errors
/// The problem of the body.
pub fn input(entry: &Entry, headers: &HeaderMap, body: Result<Bytes, BytesRejection>) -> Result<Value, ApiError> {
    let body = body.map_err(|_| ApiError::TooLarge)?;
    let media = headers.get(header::CONTENT_TYPE).and_then(|value| value.to_str().ok()).unwrap_or("application/json");
    match media.split(';').next().unwrap_or_default().trim().to_ascii_lowercase().as_str() {
        "application/json" => serde_json::from_slice(&body).map_err(|why| ApiError::NotJson(why.to_string())),
        "application/x-www-form-urlencoded" => Ok(book::form::to_json(entry, &posted::pairs(&body))),
        _ => Err(ApiError::MediaType),
    }
}

/// An answer in one of its forms.
/// # Errors
/// The faults of the input, or that this calculator has no such form.
pub fn answered(book: &Handbook, entry: &Entry, input: &Value, units: Units, form: Form) -> Result<String, ApiError> {
    let answer = entry.work(input, units).map_err(|faults| ApiError::Faults(Fault::print_all(&faults, units)))?;
    match form {
        Form::Json => Ok(answer::json(&answer, &cautions(book, entry), units)),
        Form::Csv => answer::csv(entry, &answer, units)
            .ok_or(ApiError::NotAcceptable("application/json, text/html or text/plain; it has no list")),
        Form::Html => Ok(book.answer_html(entry, &answer, units)),
        Form::Text => Ok(book.plain_text(entry, &answer, units)),
        Form::Svg if entry.card().id == walls::WALL_PLAN => walls::drawing(book, entry, input, units)
            .map_err(|faults| ApiError::Faults(Fault::print_all(&faults, units))),
        Form::Svg => Err(ApiError::NotAcceptable("application/json, text/html or text/plain; it has no drawing")),
    }
}

/// The cautions that stand with an answer, in the words of the handbook.
fn cautions(book: &Handbook, entry: &Entry) -> Value {
    let keys = entry.card().cautions.iter();
    keys.filter_map(|key| {
        let caution = book.cautions().get(key)?;
        Some(json!({ "signal_word": caution.level, "hazard": caution.hazard, "consequence": caution.consequence, "avoid": caution.avoid }))
    })
    .collect()
}
