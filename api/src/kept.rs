//! Bytes that are served again and again: named by a tag, compressed once, kept.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::io::Write;
use std::sync::OnceLock;

use axum::body::Bytes;
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use flate2::Compression;
use flate2::write::GzEncoder;

/// What does not become smaller is sent as it is; so is what fits one packet.
const WORTH: usize = 1_400;

/// A page or a file, ready to be sent.
#[derive(Debug)]
pub struct Kept {
    media: HeaderValue,
    tag: HeaderValue,
    plain: Bytes,
    packed: OnceLock<Option<Bytes>>,
}

impl Kept {
    /// Keeps bytes of a media type.
    pub fn new(media: &'static str, bytes: impl Into<Bytes>) -> Self {
        let plain = bytes.into();
        let mut hasher = DefaultHasher::new();
        plain.hash(&mut hasher);
        // Weak, since they may come compressed.
        let tag = HeaderValue::try_from(format!("W/\"{:016x}\"", hasher.finish()));
        let tag = tag.unwrap_or_else(|_| HeaderValue::from_static("W/\"0\""));
        Self { media: HeaderValue::from_static(media), tag, plain, packed: OnceLock::new() }
    }

    /// The answer to a request: the bytes as the browser wants them, or only that it has them already.
    pub fn answer(&self, asked: &HeaderMap, vary: &'static str) -> Response {
        let mut response = if self.is_held(asked) {
            StatusCode::NOT_MODIFIED.into_response()
        } else {
            match self.packed().filter(|_| wants_gzip(asked)) {
                Some(packed) => {
                    ([(header::CONTENT_ENCODING, HeaderValue::from_static("gzip"))], packed.clone()).into_response()
                }
                None => self.plain.clone().into_response(),
            }
        };
        let headers = response.headers_mut();
        headers.insert(header::CONTENT_TYPE, self.media.clone());
        headers.insert(header::ETAG, self.tag.clone());
        headers.insert(header::CACHE_CONTROL, HeaderValue::from_static("no-cache"));
        headers.insert(header::VARY, HeaderValue::from_static(vary));
        response
    }

    /// Whether a browser that holds these bytes asks if they have changed.
    fn is_held(&self, asked: &HeaderMap) -> bool {
        let held = asked.get(header::IF_NONE_MATCH).and_then(|tags| tags.to_str().ok()).unwrap_or_default();
        let ours = self.tag.to_str().unwrap_or_default().trim_start_matches("W/");
        held.split(',').map(|tag| tag.trim().trim_start_matches("W/")).any(|tag| tag == "*" || tag == ours)
    }

    /// The bytes compressed, where that makes them smaller.
    fn packed(&self) -> Option<&Bytes> {
        let pack = || {
            let packed = gzip(&self.plain).filter(|packed| packed.len() < self.plain.len() * 9 / 10)?;
            Some(Bytes::from(packed))
        };
        self.packed.get_or_init(|| if self.plain.len() < WORTH { None } else { pack() }).as_ref()
    }
}

/// Bytes compressed as well as a kept page deserves.
fn gzip(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::with_capacity(bytes.len() / 4), Compression::best());
    encoder.write_all(bytes).ok()?;
    encoder.finish().ok()
}

/// Whether a browser takes gzip.
fn wants_gzip(asked: &HeaderMap) -> bool {
    let accepted = asked.get_all(header::ACCEPT_ENCODING).iter().filter_map(|value| value.to_str().ok());
    accepted.flat_map(|value| value.split(',')).any(|coding| {
        let mut parts = coding.split(';').map(str::trim);
        let named = parts.next().is_some_and(|name| name.eq_ignore_ascii_case("gzip") || name == "*");
        named && !parts.any(|part| part.strip_prefix("q=").is_some_and(|q| q.parse::<f32>().is_ok_and(|q| q <= 0.0)))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    fn asking(name: header::HeaderName, value: &str) -> HeaderMap {
        HeaderMap::from_iter([(name, HeaderValue::try_from(value).expect("a header"))])
    }

    async fn body(response: Response) -> Vec<u8> {
        axum::body::to_bytes(response.into_body(), usize::MAX).await.expect("a body").to_vec()
    }

    #[tokio::test]
    async fn a_browser_gets_what_it_takes_and_nothing_that_it_holds() {
        let text = "the same words over and over; ".repeat(200);
        let kept = Kept::new("text/plain", text.clone());
        let plain = kept.answer(&HeaderMap::new(), "Cookie");
        assert!(plain.headers().get(header::CONTENT_ENCODING).is_none());
        assert_eq!(body(plain).await, text.as_bytes());
        let packed = kept.answer(&asking(header::ACCEPT_ENCODING, "br, gzip;q=0.8"), "Cookie");
        assert_eq!(packed.headers()[header::CONTENT_ENCODING], "gzip");
        let tag = packed.headers()[header::ETAG].to_str().expect("text").to_owned();
        let (mut unpacked, bytes) = (String::new(), body(packed).await);
        flate2::read::GzDecoder::new(bytes.as_slice()).read_to_string(&mut unpacked).expect("gzip");
        assert_eq!(unpacked, text);
        let refused = kept.answer(&asking(header::ACCEPT_ENCODING, "gzip;q=0"), "Cookie");
        assert!(refused.headers().get(header::CONTENT_ENCODING).is_none());
        let held = kept.answer(&asking(header::IF_NONE_MATCH, &tag), "Cookie");
        assert_eq!(held.status(), StatusCode::NOT_MODIFIED);
        assert_eq!(kept.answer(&asking(header::IF_NONE_MATCH, "W/\"1\""), "Cookie").status(), StatusCode::OK);
    }

    #[test]
    fn what_is_small_or_packed_already_is_left_as_it_is() {
        assert!(Kept::new("text/plain", "short").packed().is_none());
        let noise: Vec<u8> = (0..4_000_u32).map(|n| (n.wrapping_mul(2_654_435_761) >> 13) as u8).collect();
        let packed = gzip(&noise).expect("gzip");
        assert!(Kept::new("font/woff2", packed).packed().is_none());
    }
}
