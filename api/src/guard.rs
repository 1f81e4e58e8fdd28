//! Who may ask, and what browsers are told: host and origin checks, strict headers, no content from elsewhere.

use axum::extract::Request;
use axum::http::{HeaderName, HeaderValue, Method, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::problem::ApiError;

/// What every answer tells a browser.
const HEADERS: [(HeaderName, &str); 6] = [
    (
        header::CONTENT_SECURITY_POLICY,
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; \
         form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
    ),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::REFERRER_POLICY, "same-origin"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
    (HeaderName::from_static("permissions-policy"), "camera=(), microphone=(), geolocation=()"),
];

/// Lets a request through when its host names this machine and its origin, if it tells one, is the same host.
///
/// A page from elsewhere can reach a loopback port, and a foreign name can be pointed at it; both are turned away here.
pub async fn guard(request: Request, next: Next) -> Response {
    let mut response = if ours(&request) { next.run(request).await } else { ApiError::Stranger.into_response() };
    for (name, value) in HEADERS {
        response.headers_mut().insert(name, HeaderValue::from_static(value));
    }
    response
}

fn ours(request: &Request) -> bool {
    let header = |name: HeaderName| request.headers().get(name).map(|value| value.to_str().unwrap_or_default());
    let Some(host) = header(header::HOST).or_else(|| request.uri().authority().map(|authority| authority.as_str()))
    else {
        return false;
    };
    if !names_this_machine(host) {
        return false;
    }
    let reads_only = matches!(*request.method(), Method::GET | Method::HEAD);
    match header(header::ORIGIN) {
        Some(origin) => origin == format!("http://{host}"),
        None => {
            reads_only
                || header(HeaderName::from_static("sec-fetch-site"))
                    .is_none_or(|site| site == "same-origin" || site == "none")
        }
    }
}

fn names_this_machine(host: &str) -> bool {
    let name = match host.rsplit_once(':') {
        Some((name, port)) if port.chars().all(|sign| sign.is_ascii_digit()) => name,
        _ => host,
    };
    matches!(name, "localhost" | "127.0.0.1" | "[::1]")
}

#[cfg(test)]
mod tests {
    use super::names_this_machine;

    #[test]
    fn only_this_machines_names_pass() {
        for host in ["localhost", "localhost:7391", "127.0.0.1:80", "[::1]:7391"] {
            assert!(names_this_machine(host), "{host}");
        }
        for host in ["example.org", "localhost.example.org", "127.0.0.1.example.org:80", "", "0.0.0.0", "localhost:x"] {
            assert!(!names_this_machine(host), "{host}");
        }
    }
}
