//! Practice over HTTP: a question with the numbers of a seed, and what came of an attempt.

use std::collections::HashMap;
use std::time::{SystemTime, UNIX_EPOCH};

use axum::Json;
use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, HeaderName, StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use book::Attempt;
use calculators::catalogue::{Entry, Printed};
use calculators::practice::{EXERCISES, Exercise, drawn, exercise, marked};
use calculators::quantity::Units;
use serde::de::Error;
use serde::{Deserialize, Deserializer};
use serde_json::{Value, json};

use crate::app::State as Shared;
use crate::calculators::{found, units_of};
use crate::choices::Choices;
use crate::posted;
use crate::problem::ApiError;

/// The header of a script that wants the exercise alone, without a page round it.
const PART: HeaderName = HeaderName::from_static("x-part");

fn asked(id: &str) -> Result<(&'static Exercise, &'static Entry), ApiError> {
    let entry = found(id)?;
    let none = || ApiError::NotFound(format!("exercise for «{}»", entry.card().id));
    Ok((exercise(entry.card().id).ok_or_else(none)?, entry))
}

/// Another seed each time: the clock's.
fn fresh() -> u64 {
    let now = SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |now| now.as_millis());
    u64::try_from(now % 9_000_000).unwrap_or(0)
}

fn next(seed: u64) -> u64 {
    seed.wrapping_add(1) % 9_000_000
}

fn page(body: String, status: StatusCode) -> Response {
    (status, [(header::CACHE_CONTROL, "no-store"), (header::VARY, "Cookie")], Html(body)).into_response()
}

/// `GET /practice`: all exercises.
pub async fn list(State(state): State<Shared>, choices: Choices) -> Response {
    page(state.book().practice_list(choices.units).html(choices.light), StatusCode::OK)
}

/// `GET /practice/{id}?seed=`: one question.
/// # Errors
/// [`ApiError::NotFound`] where there is no exercise, [`ApiError::Query`] for a seed that is no whole number.
pub async fn question(
    State(state): State<Shared>,
    choices: Choices,
    Path(id): Path<String>,
    Query(query): Query<HashMap<String, String>>,
    headers: HeaderMap,
) -> Result<Response, ApiError> {
    let (exercise, entry) = asked(&id)?;
    let seed = seed_in(&query)?;
    if headers.contains_key(PART) {
        let part = state.book().practice_part(exercise, entry, (seed, next(seed)), None, choices.units);
        return Ok(page(part, StatusCode::OK));
    }
    let shown = state.book().practice_page(exercise, entry, (seed, next(seed)), None, choices.units);
    Ok(page(shown.html(choices.light), StatusCode::OK))
}

fn seed_in(query: &HashMap<String, String>) -> Result<u64, ApiError> {
    query.get("seed").map_or_else(|| Ok(fresh()), |seed| seed_of(seed))
}

fn seed_of(text: &str) -> Result<u64, ApiError> {
    text.parse().map_err(|_| ApiError::Query("seed must be a whole number, for example 7".to_owned()))
}

/// `POST /practice/{id}`: an attempt from the page's form.
/// # Errors
/// As [`question`].
pub async fn attempt(
    State(state): State<Shared>,
    choices: Choices,
    Path(id): Path<String>,
    headers: HeaderMap,
    body: Result<Bytes, BytesRejection>,
) -> Result<Response, ApiError> {
    let (exercise, entry) = asked(&id)?;
    let pairs = posted::pairs(&body.map_err(|_| ApiError::TooLarge)?);
    let word = |name: &str| pairs.iter().find(|(other, _)| other == name).map_or("", |(_, word)| word.as_str());
    let seed = seed_of(word("seed"))?;
    let said: String = word("said").chars().take(80).collect();
    // The numbers were drawn for the units the page was printed in.
    let units = book::form::units_of(&pairs).unwrap_or(choices.units);
    let outcome = marked(exercise, entry, seed, &said, units);
    let status = if outcome.is_ok() { StatusCode::OK } else { StatusCode::UNPROCESSABLE_ENTITY };
    let attempt = Attempt { said: &said, outcome: outcome.as_ref() };
    if headers.contains_key(PART) {
        let part = state.book().practice_part(exercise, entry, (seed, next(seed)), Some(attempt), units);
        return Ok(page(part, status));
    }
    let shown = state.book().practice_page(exercise, entry, (seed, next(seed)), Some(attempt), units);
    Ok(page(shown.html(choices.light), status))
}

/// `GET /api/practice`: what can be practised.
pub async fn exercises() -> Json<Value> {
    let line = |exercise: &Exercise| json!({ "calculator": exercise.calculator, "asks": exercise.asks, "address": format!("/api/practice/{}", exercise.calculator) });
    EXERCISES.iter().map(line).collect::<Value>().into()
}

/// `GET /api/practice/{id}?seed=&units=`: the numbers of a seed.
/// # Errors
/// As [`question`].
pub async fn numbers(
    Path(id): Path<String>,
    Query(query): Query<HashMap<String, String>>,
) -> Result<Json<Value>, ApiError> {
    let (exercise, entry) = asked(&id)?;
    let seed = seed_in(&query)?;
    let input = drawn(exercise, entry, seed, units_of(&query)?);
    Ok(Json(json!({ "seed": seed, "asks": exercise.asks, "input": input })))
}

/// An attempt in JSON.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Tried {
    seed: u64,
    #[serde(default, deserialize_with = "units_word")]
    units: Units,
    answer: String,
}

fn units_word<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Units, D::Error> {
    let word = String::deserialize(deserializer)?;
    let named = Units::ALL.into_iter().find(|units| units.word() == word);
    named.ok_or_else(|| D::Error::custom("units must be imperial or metric"))
}

/// `POST /api/practice/{id}`: `{"seed": 7, "units": "metric", "answer": "313.5"}`; the answer comes with its working.
/// # Errors
/// As [`question`]; [`ApiError::NotJson`] for a body that is none; [`ApiError::Faults`] for an attempt that cannot be read.
pub async fn tried(Path(id): Path<String>, body: Result<Bytes, BytesRejection>) -> Result<Json<Value>, ApiError> {
    let (exercise, entry) = asked(&id)?;
    let body = body.map_err(|_| ApiError::TooLarge)?;
    let tried: Tried = serde_json::from_slice(&body).map_err(|why| ApiError::NotJson(why.to_string()))?;
    let marked = marked(exercise, entry, tried.seed, &tried.answer, tried.units).map_err(|fault| {
        ApiError::Faults(
            json!([{ "pointer": "/answer", "said": tried.answer, "why": fault.to_string(), "try": "12 5/16" }]),
        )
    })?;
    Ok(Json(json!({
        "right": marked.right,
        "mistake": marked.mistake,
        "expected": marked.expected.text(tried.units),
        "answer": Printed(&marked.answer, tried.units).to_value(),
    })))
}
