//! Who may ask, and what browsers are told: host and origin checks, strict headers, no content from elsewhere.

use std::pin::Pin;
use std::task::{Context, Poll};

use axum::extract::Request;
use axum::http::{HeaderName, HeaderValue, Method, header};
use axum::response::{IntoResponse, Response};
use pin_project_lite::pin_project;
use tower::{Layer, Service};

use crate::problem::ApiError;

/// What every answer tells a browser.
static HEADERS: [(HeaderName, HeaderValue); 6] = [
    (
        header::CONTENT_SECURITY_POLICY,
        HeaderValue::from_static(
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; \
             connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
        ),
    ),
    (header::X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff")),
    (header::REFERRER_POLICY, HeaderValue::from_static("same-origin")),
    (HeaderName::from_static("cross-origin-opener-policy"), HeaderValue::from_static("same-origin")),
    (HeaderName::from_static("cross-origin-resource-policy"), HeaderValue::from_static("same-origin")),
    (
        HeaderName::from_static("permissions-policy"),
        HeaderValue::from_static("camera=(), microphone=(), geolocation=()"),
    ),
];

/// The layer that puts [`Guarded`] round a service.
#[derive(Clone, Copy, Debug)]
pub struct Guarding;

impl<S> Layer<S> for Guarding {
    type Service = Guarded<S>;
    fn layer(&self, inner: S) -> Guarded<S> {
        Guarded { inner }
    }
}

/// Lets a request through when its host names this machine and its origin, if it tells one, is the same host.
///
/// A page from elsewhere can reach a loopback port, and a foreign name can be pointed at it; both are turned away here.
#[derive(Clone, Debug)]
pub struct Guarded<S> {
    inner: S,
}

impl<S: Service<Request, Response = Response>> Service<Request> for Guarded<S> {
    type Response = Response;
    type Error = S::Error;
    type Future = Answering<S::Future>;

    fn poll_ready(&mut self, context: &mut Context<'_>) -> Poll<Result<(), S::Error>> {
        self.inner.poll_ready(context)
    }

    fn call(&mut self, request: Request) -> Self::Future {
        Answering { inner: ours(&request).then(|| self.inner.call(request)) }
    }
}

pin_project! {
    /// The answer on its way; none where the request is turned away.
    #[derive(Debug)]
    pub struct Answering<F> {
        #[pin]
        inner: Option<F>,
    }
}

impl<F: Future<Output = Result<Response, E>>, E> Future for Answering<F> {
    type Output = F::Output;

    fn poll(self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<F::Output> {
        let mut response = match self.project().inner.as_pin_mut() {
            Some(inner) => std::task::ready!(inner.poll(context))?,
            None => ApiError::Stranger.into_response(),
        };
        let headers = response.headers_mut();
        headers.reserve(HEADERS.len());
        headers.extend(HEADERS.iter().map(|(name, value)| (name.clone(), value.clone())));
        Poll::Ready(Ok(response))
    }
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
        Some(origin) => origin.strip_prefix("http://") == Some(host),
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
