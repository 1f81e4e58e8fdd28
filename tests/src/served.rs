//! The API and the pages as a browser or a program meets them, without a socket.

use std::sync::LazyLock;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode, header};
use book::Handbook;
use serde_json::Value;
use tower::ServiceExt;

/// The handbook that is built in, ready to be asked.
pub static APP: LazyLock<Router> =
    LazyLock::new(|| api::app(api::State::new(Handbook::built_in().expect("the book in the binary has no fault"))));

/// What came back.
pub struct Reply {
    /// The status.
    pub status: StatusCode,
    /// The media type, or nothing.
    pub media: String,
    /// All headers.
    pub headers: HeaderMap,
    /// The body as text.
    pub text: String,
}

impl Reply {
    /// The body as JSON.
    ///
    /// # Panics
    /// When it is none.
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.text).unwrap_or_else(|why| panic!("{why}: {}", self.text))
    }
}

/// Sends one request from this machine.
pub async fn send(request: axum::http::request::Builder, body: impl Into<Body>) -> Reply {
    let request = request.header(header::HOST, "127.0.0.1:7391").body(body.into()).expect("a request");
    let reply = APP.clone().oneshot(request).await.expect("the service answers");
    let headers = reply.headers().clone();
    let media =
        headers.get(header::CONTENT_TYPE).map_or(String::new(), |value| value.to_str().expect("ascii").to_owned());
    let status = reply.status();
    let bytes = to_bytes(reply.into_body(), 64 * 1024 * 1024).await.expect("a body");
    Reply { status, media, headers, text: String::from_utf8_lossy(&bytes).into_owned() }
}

/// Asks for a page or a resource.
pub async fn get(path: &str) -> Reply {
    send(Request::get(path), Body::empty()).await
}

/// Asks a calculator, bare numbers in metric units.
pub async fn ask(id: &str, body: &str, accept: &str) -> Reply {
    let path = format!("/api/calculators/{id}?units=metric");
    send(
        Request::post(path).header(header::CONTENT_TYPE, "application/json").header(header::ACCEPT, accept),
        body.to_owned(),
    )
    .await
}
