//! The calculators as a resource: the list, the cards, and the one way to ask each.

use std::collections::HashMap;

use axum::body::{Body, to_bytes};
use axum::extract::{Path, Query, Request, State};
use axum::http::{HeaderMap, HeaderValue, header};
use axum::response::Response;
use axum::routing::get;
use axum::{Json, Router};
use book::Handbook;
use calculators::catalogue::{self, CATALOGUE, Entry, Fault};
use calculators::quantity::Units;
use serde_json::{Value, json};

use crate::answer::{self, Form};
use crate::app::{LARGEST_BODY, LONGEST_WORK, State as Shared};
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

/// `POST /{id}`: asked with JSON or with a form, answered as `Accept` says.
///
/// A light calculator is answered where the request came in; a heavy one on a thread of its own, within its time.
async fn work(State(state): State<Shared>, request: Request) -> Result<Response, ApiError> {
    let (parts, body) = request.into_parts();
    let entry = found(parts.uri.path().rsplit('/').next().unwrap_or_default())?;
    let units = units_in(parts.uri.query())?;
    let form = Form::accepted(&parts.headers)?;
    let body = to_bytes(body, LARGEST_BODY).await.map_err(|_| ApiError::TooLarge)?;
    let input = read(entry, &parts.headers, &body)?;
    let text = if entry.is_heavy() {
        let work = tokio::task::spawn_blocking(move || {
            answered(state.book(), state.cautions(entry.card().id), entry, &input, units, form)
        });
        let text = tokio::time::timeout(LONGEST_WORK, work).await.map_err(|_| ApiError::TooLong)?;
        text.map_err(|_| ApiError::TooLong)??
    } else {
        answered(state.book(), state.cautions(entry.card().id), entry, &input, units, form)?
    };
    let mut response = Response::new(Body::from(text));
    let headers = response.headers_mut();
    headers.insert(header::CONTENT_TYPE, HeaderValue::from_static(form.media_type()));
    headers.insert(header::CACHE_CONTROL, HeaderValue::from_static("no-store"));
    Ok(response)
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
    units_named(query.get("units").map(String::as_str))
}

/// The same, of a query that nobody has read yet.
fn units_in(query: Option<&str>) -> Result<Units, ApiError> {
    let pairs = form_urlencoded::parse(query.unwrap_or_default().as_bytes());
    units_named(pairs.filter(|(name, _)| name == "units").last().map(|(_, word)| word).as_deref())
}

fn units_named(word: Option<&str>) -> Result<Units, ApiError> {
    match word {
        None | Some("imperial") => Ok(Units::Imperial),
        Some("metric") => Ok(Units::Metric),
        Some(_) => Err(ApiError::Query("units must be imperial or metric".to_owned())),
    }
}

/// The input in a body: JSON as it is, or a posted form.
fn read(entry: &Entry, headers: &HeaderMap, body: &[u8]) -> Result<Value, ApiError> {
    let media = headers.get(header::CONTENT_TYPE).and_then(|value| value.to_str().ok()).unwrap_or("application/json");
    let media = media.split(';').next().unwrap_or_default().trim();
    if media.eq_ignore_ascii_case("application/json") {
        serde_json::from_slice(body).map_err(|why| ApiError::NotJson(why.to_string()))
    } else if media.eq_ignore_ascii_case("application/x-www-form-urlencoded") {
        Ok(book::form::to_json(entry, &posted::pairs(body)))
    } else {
        Err(ApiError::MediaType)
    }
}

/// An answer in one of its forms; `cautions` are those of the calculator's card, as JSON.
/// # Errors
/// The faults of the input, or that this calculator has no such form.
pub fn answered(
    book: &Handbook,
    cautions: &str,
    entry: &Entry,
    input: &Value,
    units: Units,
    form: Form,
) -> Result<String, ApiError> {
    let answer = entry.work(input, units).map_err(|faults| ApiError::Faults(Fault::print_all(&faults, units)))?;
    match form {
        Form::Json => Ok(answer::json(&answer, cautions, units)),
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
pub fn cautions(book: &Handbook, entry: &Entry) -> Value {
    let keys = entry.card().cautions.iter();
    keys.filter_map(|key| {
        let caution = book.cautions().get(key)?;
        let mut told = json!({ "signal_word": caution.level, "hazard": caution.hazard, "consequence": caution.consequence, "avoid": caution.avoid });
        if let Some(added) = &caution.add {
            told["added"] = added.as_str().into();
        }
        Some(told)
    })
    .collect()
}
