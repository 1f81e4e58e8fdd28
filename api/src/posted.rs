//! Posted forms as pairs of name and text.

/// The pairs of an `application/x-www-form-urlencoded` body, in their order. Bytes that are no UTF-8 become replacement signs.
pub fn pairs(body: &[u8]) -> Vec<(String, String)> {
    form_urlencoded::parse(body).map(|(name, text)| (name.into_owned(), text.into_owned())).collect()
}
