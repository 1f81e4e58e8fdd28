//! The OpenAPI document is kept in the project, so that a change of the contract is seen as one.

#[test]
fn the_kept_document_is_what_the_server_tells() {
    let kept: serde_json::Value = serde_json::from_str(include_str!("../openapi.json")).expect("JSON");
    let told = api::openapi::describe();
    let differs = first_difference(&kept, &told, String::new());
    assert_eq!(
        differs, None,
        "the contract has changed there; if that is meant, `cargo run -q -p api --example openapi > api/openapi.json` keeps it"
    );
}

/// The first place, as a JSON pointer, at which one document is not the other.
fn first_difference(kept: &serde_json::Value, told: &serde_json::Value, at: String) -> Option<String> {
    use serde_json::Value::{Array, Object};
    match (kept, told) {
        (Object(one), Object(other)) => {
            let names = one.keys().chain(other.keys().filter(|name| !one.contains_key(*name)));
            names.into_iter().find_map(|name| {
                let place = format!("{at}/{}", name.replace('~', "~0").replace('/', "~1"));
                match (one.get(name), other.get(name)) {
                    (Some(one), Some(other)) => first_difference(one, other, place),
                    _ => Some(place),
                }
            })
        }
        (Array(one), Array(other)) if one.len() == other.len() => {
            let mut pairs = one.iter().zip(other).enumerate();
            pairs.find_map(|(n, (one, other))| first_difference(one, other, format!("{at}/{n}")))
        }
        _ => (kept != told).then_some(at),
    }
}
