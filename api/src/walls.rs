//! The wall sheet over HTTP: a survey comes in as a form and goes out as the sheet.

use std::collections::HashMap;

use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{Query, State};
use axum::http::{HeaderMap, HeaderName, StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use book::form as filled;
use book::{Handbook, WallSheet, WallView};
use calculators::catalogue::{Entry, Fault, FromNode, entry};
use calculators::quantity::Units;
use calculators::wall::plan::WallPlan;
use calculators::wall::planning::plan;
use calculators::wall::practice_room::{self, Wall};
use calculators::wall::scheme::WallInput;
use serde_json::{Value, json};

use crate::app::{LONGEST_WORK, State as Shared};
use crate::choices::{Choices, cookie};
use crate::posted;
use crate::problem::ApiError;

/// Which part of a page a script asks for.
const PART: HeaderName = HeaderName::from_static("x-part");
/// The id of the wall plan in the catalogue.
pub const WALL_PLAN: &str = "wall-plan";

/// Reads a wall and plans it.
/// # Errors
/// All faults of the survey and the scheme.
pub fn planned(entry: &Entry, values: &Value, units: Units) -> Result<(WallInput, WallPlan), Vec<Fault>> {
    let ours = || vec![Fault::new("", "this wall", "its own type refuses what its shape has passed", Value::Null)];
    let input = WallInput::from_node(entry.read(values, units)?).ok_or_else(ours)?;
    let plan = plan(&input)?;
    Ok((input, plan))
}

/// What a request wants to see of a wall.
struct Wish {
    values: Value,
    units: Units,
    layout: usize,
    view: WallView,
    at: usize,
    open: bool,
    /// Faults are told; not while a row that was just added is still empty.
    tell: bool,
}

fn sheet<T>(entry: &Entry, wish: &Wish, print: impl FnOnce(WallSheet<'_>) -> T) -> (StatusCode, T) {
    let planned = planned(entry, &wish.values, wish.units);
    let outcome = match &planned {
        Ok((input, plan)) => Ok((input, plan)),
        Err(faults) if wish.tell => Err(faults.as_slice()),
        Err(_) => Err([].as_slice()),
    };
    let status = if outcome.is_err() && wish.tell { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    let sheet = WallSheet {
        values: &wish.values,
        outcome,
        layout: wish.layout,
        view: wish.view,
        at: wish.at,
        open: wish.open || outcome.is_err(),
    };
    (status, print(sheet))
}

fn page(book: &Handbook, entry: &Entry, wish: &Wish, choices: Choices) -> Response {
    let (status, page) = sheet(entry, wish, |sheet| book.wall_page(entry, sheet, wish.units));
    (status, [(header::CACHE_CONTROL, "no-store")], Html(page.html(choices.light))).into_response()
}

fn wall_plan() -> Result<&'static Entry, ApiError> {
    entry(WALL_PLAN).ok_or_else(|| ApiError::NotFound("wall plan".to_owned()))
}

/// The least that can be drawn, for a person to put their own wall in: a length, two inside corners, boards and one rail.
fn bare_wall(units: Units) -> Value {
    let (datum, length, board, thickness, bay, rail, top) = match units {
        Units::Imperial => ("40 in", "144 in", "2 1/2 in", "3/4 in", "13 in", "3 1/2 in", "40 in"),
        Units::Metric => ("1000 mm", "3600 mm", "64 mm", "18 mm", "330 mm", "90 mm", "1000 mm"),
    };
    json!({
        "survey": {
            "name": "1",
            "datum": datum,
            "lengths": [{ "height": if units == Units::Metric { "0 mm" } else { "0 in" }, "length": length }],
            "left": { "kind": "inside-first" },
            "right": { "kind": "inside-first" }
        },
        "scheme": {
            "board_width": board,
            "board_thickness": thickness,
            "target_bay": bay,
            "rails": { "width": rail, "top": top },
            "tape": if units == Units::Metric { "1 mm" } else { "1/16 in" }
        }
    })
}

/// `GET /wall`: one of the practice room's walls, `?wall=a`, `b` or `c`, or the least wall to begin one's own with, `new`.
///
/// # Errors
/// [`ApiError::Query`] for another wall.
pub async fn practice_wall(
    State(state): State<Shared>,
    choices: Choices,
    Query(query): Query<HashMap<String, String>>,
    headers: HeaderMap,
) -> Result<Response, ApiError> {
    let asked = query.get("wall").map(String::as_str);
    let practice = |wall| practice_room::input(wall, choices.units);
    let values = match asked {
        Some("a") => practice(Wall::Plain),
        None | Some("b") => practice(Wall::Windows),
        Some("c") => practice(Wall::Stair),
        Some("new") => bare_wall(choices.units),
        Some(_) => return Err(ApiError::Query("wall must be a, b, c or new".to_owned())),
    };
    let entry = wall_plan()?;
    let wish = Wish {
        values,
        units: choices.units,
        layout: 1,
        view: WallView::named(query.get("view").map_or("", String::as_str)),
        at: query.get("at").and_then(|word| word.parse().ok()).unwrap_or(1),
        open: asked == Some("new"),
        tell: true,
    };
    // The practice room does not change: each of its pages is made once.
    let key = (format!("{} {} {}", asked.unwrap_or("b"), wish.view.word(), wish.at), wish.units, choices.light);
    let make = move || {
        let print =
            || sheet(entry, &wish, |sheet| state.book().wall_page(entry, sheet, wish.units)).1.html(choices.light);
        state.wall(key, print)
    };
    let kept = tokio::task::spawn_blocking(make).await.map_err(|_| ApiError::TooLong)?;
    Ok(kept.answer(&headers, "Cookie, Accept-Encoding"))
}

/// `POST /wall`: the sheet's form comes in, the sheet goes out; for a script without its head.
///
/// # Errors
/// [`ApiError::TooLarge`] and [`ApiError::TooLong`].
pub async fn wall(
    State(state): State<Shared>,
    choices: Choices,
    headers: HeaderMap,
    body: Result<Bytes, BytesRejection>,
) -> Result<Response, ApiError> {
    let entry = wall_plan()?;
    let pairs = posted::pairs(&body.map_err(|_| ApiError::TooLarge)?);
    let printed_in = filled::units_of(&pairs).unwrap_or(choices.units);
    let part = headers.contains_key(PART);
    let work = tokio::task::spawn_blocking(move || {
        let turned = pairs
            .iter()
            .rev()
            .find(|(name, _)| name == "turn")
            .and_then(|(_, word)| [Units::Imperial, Units::Metric].into_iter().find(|units| units.word() == word));
        let mut pairs = pairs;
        // The unit switch says in the other units what was typed; it stands outside the form and has a name of its own.
        pairs.extend(turned.map(|units| (filled::ACTION.to_owned(), format!("turn {}", units.word()))));
        let units = turned.unwrap_or(printed_in);
        let form = filled::read(entry, &pairs, units);
        let last = |name: &str| pairs.iter().rev().find(|(one, _)| one == name).map(|(_, text)| text.as_str());
        let wish = Wish {
            values: form.values,
            units,
            layout: last("show").or_else(|| last("layout")).and_then(|word| word.parse().ok()).unwrap_or(1),
            view: WallView::named(last("view").unwrap_or_default()),
            at: last("at").and_then(|word| word.parse().ok()).unwrap_or(1),
            open: last("open").is_some() || !form.work,
            tell: form.work,
        };
        let mut response = if part {
            let (status, html) = sheet(entry, &wish, |sheet| state.book().wall_part(entry, sheet, wish.units));
            (status, Html(html)).into_response()
        } else {
            page(state.book(), entry, &wish, choices)
        };
        if wish.units != choices.units {
            cookie(response.headers_mut(), "units", wish.units.word());
        }
        response
    });
    tokio::time::timeout(LONGEST_WORK, work).await.map_err(|_| ApiError::TooLong)?.map_err(|_| ApiError::TooLong)
}

/// The drawing of a wall's first layout, as a file of its own.
/// # Errors
/// All faults of the wall.
pub fn drawing(book: &Handbook, entry: &Entry, values: &Value, units: Units) -> Result<String, Vec<Fault>> {
    let (input, plan) = planned(entry, values, units)?;
    Ok(book.wall_drawing(&input, &plan, 1, units))
}
