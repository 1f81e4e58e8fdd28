//! The router and what its handlers share.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};
use std::time::Duration;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::routing::{get, post};
use book::{Handbook, Light, Page};
use calculators::catalogue::CATALOGUE;
use calculators::quantity::Units;
use tower_http::CompressionLevel;
use tower_http::compression::CompressionLayer;
use tower_http::compression::predicate::{NotForContentType, Predicate, SizeAbove};

use crate::guard::Guarding;
use crate::kept::Kept;
use crate::live::Live;
use crate::{calculators as asked, choices, openapi, pages, practice, walls};

/// The largest body that is read: a wall with every list full takes a tenth of it.
pub const LARGEST_BODY: usize = 1024 * 1024;
/// The longest time that one request may be worked on.
pub const LONGEST_WORK: Duration = Duration::from_secs(20);

/// What the handlers share: the handbook, read once and rendered once in either unit system.
#[derive(Clone)]
pub struct State(Arc<Served>);

/// The handbook as it is served.
struct Served {
    /// The book, for pages made on request.
    book: Handbook,
    pages: HashMap<(Units, String), InEachLight>,
    assets: HashMap<String, Kept>,
    /// The cautions that stand with each calculator's answers, as JSON.
    cautions: HashMap<&'static str, String>,
    walls: Mutex<HashMap<WallKey, Arc<Kept>>>,
}

/// A page, and each of its lights as it is sent; made when it is first asked for.
struct InEachLight {
    page: Page,
    kept: [OnceLock<Kept>; Light::ALL.len()],
}

/// What a kept wall page is asked for with: wall and view, units, light.
pub type WallKey = (String, Units, Light);

/// More wall pages than the practice room has in all its views, units and lights are not kept.
const MOST_WALLS: usize = 256;

impl State {
    /// Renders a handbook for serving.
    pub fn new(book: Handbook) -> Self {
        let mut pages = HashMap::new();
        let mut assets = HashMap::new();
        for units in [Units::Imperial, Units::Metric] {
            let site = book::render(&book, units);
            pages.extend(site.pages.into_iter().map(|page| {
                ((units, page.path.clone()), InEachLight { page, kept: std::array::from_fn(|_| OnceLock::new()) })
            }));
            assets.extend(
                site.assets
                    .into_iter()
                    .map(|asset| (asset.path.clone(), Kept::new(asset.media_type, asset.bytes.into_owned()))),
            );
        }
        let cautions = CATALOGUE.iter().map(|entry| (entry.card().id, asked::cautions(&book, entry).to_string()));
        Self(Arc::new(Served { cautions: cautions.collect(), book, pages, assets, walls: Mutex::default() }))
    }

    /// The book itself.
    pub fn book(&self) -> &Handbook {
        &self.0.book
    }

    /// A page of the book, `survey.html`, in a light.
    pub fn page(&self, units: Units, path: &str, light: Light) -> Option<&Kept> {
        let page = self.0.pages.get(&(units, path.to_owned()))?;
        let kept = page.kept.get(Light::ALL.iter().position(|one| *one == light)?)?;
        Some(kept.get_or_init(|| Kept::new("text/html; charset=utf-8", page.page.html(light))))
    }

    /// A file that pages ask for.
    pub fn asset(&self, path: &str) -> Option<&Kept> {
        self.0.assets.get(path)
    }

    /// The cautions that stand with a calculator's answers, as JSON.
    pub fn cautions(&self, id: &str) -> &str {
        self.0.cautions.get(id).map_or("[]", String::as_str)
    }

    /// A page of the practice room's walls, made when it is first asked for.
    pub fn wall(&self, key: WallKey, make: impl FnOnce() -> String) -> Arc<Kept> {
        let walls = || self.0.walls.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(kept) = walls().get(&key) {
            return kept.clone();
        }
        // Not while the others wait: two who ask at once both make it.
        let kept = Arc::new(Kept::new("text/html; charset=utf-8", make()));
        let mut walls = walls();
        if walls.len() < MOST_WALLS {
            walls.insert(key, kept.clone());
        }
        kept
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
        .route("/api/practice", get(practice::exercises))
        .route("/api/practice/{id}", get(practice::numbers).post(practice::tried))
        .fallback(pages::by_path)
        .method_not_allowed_fallback(pages::method_not_allowed)
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(CompressionLayer::new().quality(CompressionLevel::Precise(6)).compress_when(worth_compressing()))
        // The answer of a calculator is small and goes to this machine: compressing it would take longer than working it out.
        .nest("/api/calculators", asked::routes())
        .layer(Guarding)
        .with_state(book.into())
}
