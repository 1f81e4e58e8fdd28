//! Units and light, chosen once and kept in a cookie, so that pages turn without scripts.

use axum::body::Bytes;
use axum::extract::FromRequestParts;
use axum::extract::rejection::BytesRejection;
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderName, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use book::Light;
use calculators::quantity::Units;
use std::convert::Infallible;

use crate::posted;
use crate::problem::ApiError;

const YEAR_S: u32 = 365 * 24 * 3_600;

/// What the reader chose.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Choices {
    /// The unit system of pages.
    pub units: Units,
    /// The light of pages.
    pub light: Light,
}

impl Choices {
    /// The choices in a request's cookies; what is not understood counts as not chosen.
    pub fn of(headers: &HeaderMap) -> Self {
        let mut choices = Self::default();
        let cookies = headers.get_all(header::COOKIE).into_iter().filter_map(|value| value.to_str().ok());
        for pair in cookies.flat_map(|cookies| cookies.split(';')) {
            match pair.trim().split_once('=') {
                Some(("units", word)) => choices.units = units(word).unwrap_or_default(),
                Some(("light", word)) => choices.light = light(word).unwrap_or_default(),
                _ => {}
            }
        }
        choices
    }
}

impl<S: Sync> FromRequestParts<S> for Choices {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        Ok(Self::of(&parts.headers))
    }
}

fn units(word: &str) -> Option<Units> {
    [Units::Imperial, Units::Metric].into_iter().find(|units| units.word() == word)
}

fn light(word: &str) -> Option<Light> {
    [Light::Auto, Light::Day, Light::Lamp].into_iter().find(|light| light.word() == word)
}

/// `POST /choices`: keeps what was chosen and goes back to the page it was chosen on.
pub async fn choose(body: Result<Bytes, BytesRejection>) -> Result<Response, ApiError> {
    let pairs = posted::pairs(&body.map_err(|_| ApiError::TooLarge)?);
    let mut response = StatusCode::SEE_OTHER.into_response();
    for (name, word) in &pairs {
        let known = match name.as_str() {
            "units" => units(word).map(Units::word),
            "light" => light(word).map(Light::word),
            _ => continue,
        };
        let word = known.ok_or_else(|| ApiError::Query(format!("{name} cannot be «{word}»")))?;
        cookie(response.headers_mut(), name, word);
    }
    let back = pairs.iter().find(|(name, _)| name == "back").map_or("/", |(_, back)| back.as_str());
    response.headers_mut().insert(header::LOCATION, own_path(back));
    Ok(response)
}

/// Keeps a choice for a year.
pub fn cookie(headers: &mut HeaderMap, name: &str, word: &str) {
    if let Ok(value) = HeaderValue::from_str(&format!("{name}={word}; Path=/; Max-Age={YEAR_S}; SameSite=Strict")) {
        headers.append(HeaderName::from_static("set-cookie"), value);
    }
}

/// A path on this server, or the front page for anything that could lead elsewhere.
fn own_path(back: &str) -> HeaderValue {
    let ours = back.starts_with('/')
        && !back.starts_with("//")
        && back.chars().all(|sign| sign.is_ascii_graphic() && sign != '\\');
    HeaderValue::from_str(if ours { back } else { "/" }).unwrap_or(HeaderValue::from_static("/"))
}

#[cfg(test)]
mod tests {
    use super::own_path;

    #[test]
    fn the_way_back_never_leads_elsewhere() {
        assert_eq!(own_path("/survey.html#close"), "/survey.html#close");
        for elsewhere in ["//example.org", "https://example.org", "/\\example.org", "", "/a\r\nSet-Cookie: x"] {
            assert_eq!(own_path(elsewhere), "/", "{elsewhere:?}");
        }
    }
}
