//! The router and what its handlers share.

use std::collections::HashMap;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware;
use axum::routing::{get, post};
use book::{Asset, Handbook, Page};
use calculators::quantity::Units;
use tower_http::CompressionLevel;
use tower_http::compression::CompressionLayer;
use tower_http::compression::predicate::{NotForContentType, Predicate, SizeAbove};

use crate::live::Live;
use crate::{calculators as asked, choices, guard, openapi, pages, practice, walls};

/// The largest body that is read: a wall with every list full takes a tenth of it.
pub const LARGEST_BODY: usize = 1024 * 1024;
/// The longest time that one request may be worked on.
pub const LONGEST_WORK: Duration = Duration::from_secs(20);

/// What the handlers share: the handbook, read once and rendered once in either unit system.
#[derive(Clone)]
pub struct State(Arc<Served>);

/// The handbook as it is served.
pub struct Served {
    /// The book, for pages made on request.
    pub book: Handbook,
    pages: HashMap<(Units, String), Page>,
    assets: HashMap<String, Asset>,
}

impl State {
    /// Renders a handbook for serving.
    pub fn new(book: Handbook) -> Self {
        let mut pages = HashMap::new();
        let mut assets = HashMap::new();
        for units in [Units::Imperial, Units::Metric] {
            let site = book::render(&book, units);
            pages.extend(site.pages.into_iter().map(|page| ((units, page.path.clone()), page)));
            assets.extend(site.assets.into_iter().map(|asset| (asset.path.clone(), asset)));
        }
        Self(Arc::new(Served { book, pages, assets }))
    }

    /// The book itself.
    pub fn book(&self) -> &Handbook {
        &self.0.book
    }

    /// A page of the book, `survey.html`.
    pub fn page(&self, units: Units, path: &str) -> Option<&Page> {
        self.0.pages.get(&(units, path.to_owned()))
    }

    /// A file that pages ask for.
    pub fn asset(&self, path: &str) -> Option<&Asset> {
        self.0.assets.get(path)
    }
}

/// Text beyond one packet; fonts are compressed as they are.
fn worth_compressing() -> impl Predicate {
    SizeAbove::new(1_400).and(NotForContentType::new("font/")).and(NotForContentType::new("image/png"))
}

/// The whole product as a service.
pub fn app(book: impl Into<Live>) -> Router {
    Router::<Live>::new()
        .route("/", get(pages::front))
        .route("/find", get(pages::find))
        .route("/choices", post(choices::choose))
        .route("/wall", get(walls::practice_wall).post(walls::wall))
        .route("/work/{id}", get(pages::calculator).post(pages::worked))
        .route("/practice", get(practice::list))
        .route("/practice/{id}", get(practice::question).post(practice::attempt))
        .route("/api", get(openapi::contents))
        .route("/api/openapi.json", get(openapi::document))
        .nest("/api/calculators", asked::routes())
        .route("/api/practice", get(practice::exercises))
        .route("/api/practice/{id}", get(practice::numbers).post(practice::tried))
        .fallback(pages::by_path)
        .method_not_allowed_fallback(pages::method_not_allowed)
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(CompressionLayer::new().quality(CompressionLevel::Precise(6)).compress_when(worth_compressing()))
        .layer(middleware::from_fn(guard::guard))
        .with_state(book.into())
}
