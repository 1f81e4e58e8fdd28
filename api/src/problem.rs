//! What went wrong, as problem details (RFC 9457).

use axum::http::{HeaderName, StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde_json::{Value, json};

/// Why a request was not answered as it was asked.
#[derive(Debug)]
pub enum ApiError {
    /// The input breaks rules of the trade: printed faults, all at once.
    Faults(Value),
    /// The body is no JSON.
    NotJson(String),
    /// The body is larger than a wall with every list full.
    TooLarge,
    /// The body comes as something else than JSON or a form.
    MediaType,
    /// No such page, calculator or drawing.
    NotFound(String),
    /// The answer does not exist in the form that was asked for.
    NotAcceptable(&'static str),
    /// A query or choice that is not understood.
    Query(String),
    /// The method is not one of this address's.
    Method,
    /// The request came from another origin, or under another host name.
    Stranger,
    /// The work took longer than a request may.
    TooLong,
}

impl ApiError {
    /// The HTTP status.
    pub const fn status(&self) -> StatusCode {
        match self {
            Self::Faults(_) => StatusCode::UNPROCESSABLE_ENTITY,
            Self::NotJson(_) | Self::Query(_) => StatusCode::BAD_REQUEST,
            Self::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Self::MediaType => StatusCode::UNSUPPORTED_MEDIA_TYPE,
            Self::NotFound(_) => StatusCode::NOT_FOUND,
            Self::NotAcceptable(_) => StatusCode::NOT_ACCEPTABLE,
            Self::Method => StatusCode::METHOD_NOT_ALLOWED,
            Self::Stranger => StatusCode::FORBIDDEN,
            Self::TooLong => StatusCode::REQUEST_TIMEOUT,
        }
    }

    /// One sentence for a person.
    pub fn detail(&self) -> String {
        match self {
            Self::Faults(faults) => {
                let count = faults.as_array().map_or(0, Vec::len);
                let noun = if count == 1 { "value" } else { "values" };
                format!("{count} {noun} cannot be worked with; each is named with what would do")
            }
            Self::NotJson(why) => format!("the body is no JSON: {why}"),
            Self::TooLarge => format!("the body is larger than {} kB", crate::app::LARGEST_BODY / 1024),
            Self::MediaType => "the body must be application/json or application/x-www-form-urlencoded".to_owned(),
            Self::NotFound(what) => format!("there is no {what} here"),
            Self::NotAcceptable(forms) => format!("this answer can be had as {forms}"),
            Self::Query(why) => why.clone(),
            Self::Method => "this address does not take that method".to_owned(),
            Self::Stranger => "this handbook answers only its own pages, under its own address".to_owned(),
            Self::TooLong => "the work took longer than a request may; ask for less at once".to_owned(),
        }
    }

    /// The problem as JSON.
    pub fn body(&self) -> Value {
        let status = self.status();
        let mut body = json!({
            "type": "about:blank",
            "title": status.canonical_reason().unwrap_or("Problem"),
            "status": status.as_u16(),
            "detail": self.detail(),
        });
        if let Self::Faults(faults) = self {
            body["errors"] = faults.clone();
        }
        body
    }
}

impl IntoResponse for ApiError {
    fn into_response(self) -> Response {
        let headers: [(HeaderName, &str); 1] = [(header::CONTENT_TYPE, "application/problem+json")];
        (self.status(), headers, self.body().to_string()).into_response()
    }
}
