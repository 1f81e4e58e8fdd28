//! The handbook over HTTP: its pages, its files, its search, and calculations that come back as pages.

use std::collections::HashMap;

use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, HeaderName, StatusCode, Uri, header};
use axum::response::{Html, IntoResponse, Response};
use book::form as filled;
use book::{Outcome, Page};
use calculators::quantity::Units;

use crate::app::{LONGEST_WORK, State as Shared};
use crate::calculators::found;
use crate::choices::{Choices, cookie};
use crate::posted;
use crate::problem::ApiError;

/// Which part of a page a script asks for.
const PART: HeaderName = HeaderName::from_static("x-part");

/// `GET /`.
pub async fn front(State(state): State<Shared>, choices: Choices, asked: HeaderMap) -> Response {
    page(&state, choices, "index.html", &asked)
}

/// Everything that is no fixed address: a page of the book, or a file it asks for.
pub async fn by_path(State(state): State<Shared>, choices: Choices, uri: Uri, asked: HeaderMap) -> Response {
    let path = uri.path().trim_start_matches('/');
    if path.starts_with("api/") {
        return ApiError::NotFound(format!("address «{}»", path.chars().take(80).collect::<String>())).into_response();
    }
    match state.asset(path) {
        Some(asset) => asset.answer(&asked, "Accept-Encoding"),
        None => page(&state, choices, path, &asked),
    }
}

fn page(state: &Shared, choices: Choices, path: &str, asked: &HeaderMap) -> Response {
    match state.page(choices.units, path, choices.light) {
        Some(page) => page.answer(asked, "Cookie, Accept-Encoding"),
        None => message(state, choices, &ApiError::NotFound("such page".to_owned())),
    }
}

fn html(status: StatusCode, page: &Page, choices: Choices) -> Response {
    (status, [(header::CACHE_CONTROL, "no-cache"), (header::VARY, "Cookie")], Html(page.html(choices.light)))
        .into_response()
}

/// A problem as a page.
fn message(state: &Shared, choices: Choices, problem: &ApiError) -> Response {
    let title = problem.status().canonical_reason().unwrap_or("Problem");
    html(problem.status(), &state.book().message_page(title, &problem.detail(), choices.units), choices)
}

/// Any address asked in a way it does not take.
pub async fn method_not_allowed() -> ApiError {
    ApiError::Method
}

/// `GET /find?q=`.
pub async fn find(
    State(state): State<Shared>,
    choices: Choices,
    Query(query): Query<HashMap<String, String>>,
) -> Response {
    let words = query.get("q").map_or("", String::as_str);
    html(StatusCode::OK, &state.book().find_page(words, choices.units), choices)
}

/// `GET /work/{id}`: a calculation as a page of its own, with its worked example in it.
pub async fn calculator(State(state): State<Shared>, choices: Choices, Path(id): Path<String>) -> Response {
    let Ok(entry) = found(&id) else {
        return message(&state, choices, &ApiError::NotFound("such calculation".to_owned()));
    };
    let example = entry.example(choices.units);
    let answer = entry.work(&example.input, choices.units);
    let outcome = answer.as_ref().map_or_else(|faults| Outcome::Faults(faults), Outcome::Answer);
    html(StatusCode::OK, &state.book().calculator_page(entry, &example.input, outcome, choices.units), choices)
}

/// `POST /work/{id}`: what a form posts; the answer comes back as a page, or as the calculation alone for a script.
pub async fn worked(
    State(state): State<Shared>,
    choices: Choices,
    Path(id): Path<String>,
    headers: HeaderMap,
    body: Result<Bytes, BytesRejection>,
) -> Response {
    let Ok(entry) = found(&id) else {
        return message(&state, choices, &ApiError::NotFound("such calculation".to_owned()));
    };
    let Ok(body) = body else { return message(&state, choices, &ApiError::TooLarge) };
    let pairs = posted::pairs(&body);
    let units = filled::units_of(&pairs).unwrap_or(choices.units);
    let shared = state.clone();
    let part = headers.contains_key(PART);
    let work = tokio::task::spawn_blocking(move || {
        let form = filled::read(entry, &pairs, units);
        let answer = form.work.then(|| entry.work(&form.values, units));
        let outcome = match &answer {
            None => Outcome::Waiting,
            Some(Ok(answer)) => Outcome::Answer(answer),
            Some(Err(faults)) => Outcome::Faults(faults),
        };
        let status =
            if matches!(outcome, Outcome::Faults(_)) { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
        if part {
            let calculation = shared.book().calculation_html(entry, &form.values, outcome, units, "/");
            return (status, Html(calculation)).into_response();
        }
        html(status, &shared.book().calculator_page(entry, &form.values, outcome, units), choices)
    });
    let Ok(Ok(mut response)) = tokio::time::timeout(LONGEST_WORK, work).await else {
        return message(&state, choices, &ApiError::TooLong);
    };
    if units != choices.units {
        keep(&mut response, units);
    }
    response
}

fn keep(response: &mut Response, units: Units) {
    cookie(response.headers_mut(), "units", units.word());
}
