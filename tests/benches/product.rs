//! How long a wall plan, a request and the whole book take. Run with `cargo bench -p tests`; nothing here gates.

use axum::Router;
use axum::body::Body;
use axum::http::{Request, header};
use axum::routing::post;
use book::Handbook;
use calculators::catalogue::{FromNode, Printed, entry};
use calculators::quantity::Units;
use calculators::wall::planning::plan;
use calculators::wall::scheme::WallInput;
use criterion::{Criterion, criterion_group, criterion_main};
use serde_json::{Value, json};
use std::hint::black_box;
use tower::ServiceExt;

/// A level wall of a length in metres, with a wished number of boards and some windows.
fn wall(metres: f64, boards: u32, windows: u32) -> WallInput {
    let length = metres * 1_000.0;
    let openings: Vec<Value> = (0..windows)
        .map(|window| {
            let left = length * f64::from(2 * window + 1) / f64::from(2 * windows + 1);
            json!({ "kind": "window", "left": left, "right": left + 1_200.0, "bottom": 762, "top": 2032, "casing_projection": 17 })
        })
        .collect();
    let value = json!({
        "survey": {
            "name": "X", "datum": 1000, "lengths": [{ "height": 0, "length": length }],
            "stations": [{ "at": 0, "datum_to_floor": 1000 }, { "at": length, "datum_to_floor": 1006 }],
            "base": { "height": 140, "thickness": 14 }, "left": { "kind": "inside-first" }, "right": { "kind": "inside-first" },
            "openings": openings, "studs": { "first": 387, "spacing": 406 },
        },
        "scheme": {
            "board_width": 64, "board_thickness": 18, "target_bay": (length / f64::from(boards) - 64.0).max(60.0),
            "rails": { "width": 90, "top": 1575 }, "tape": "1 mm",
        },
        "stock": { "sticks": [{ "length": 4200, "price": "19.60" }, { "length": 4800, "price": "31.20" }] },
    });
    let entry = entry("wall-plan").expect("it is declared");
    WallInput::from_node(entry.read(&value, Units::Metric).expect("a valid wall")).expect("a typed wall")
}

fn walls(criterion: &mut Criterion) {
    for (name, metres, boards, windows) in [("40 boards, 3 openings", 16.0, 40, 3), ("300 boards, 60 m", 60.0, 300, 0)]
    {
        let input = wall(metres, boards, windows);
        let found = plan(&input).expect("a plan").layouts[0].boards;
        println!("wall plan, {name}: {found} boards in its first layout");
        criterion.bench_function(&format!("wall plan, {name}"), |bencher| bencher.iter(|| plan(black_box(&input))));
    }
}

fn requests(criterion: &mut Criterion) {
    let runtime =
        tokio::runtime::Builder::new_multi_thread().worker_threads(1).enable_all().build().expect("a runtime");
    let app = api::app(api::State::new(Handbook::built_in().expect("the book has no fault")));
    let bare = Router::new().route("/api/calculators/pieces-per-stick", post(|body: String| async move { body }));
    let body = json!({ "stick": 2400, "piece": 600, "kerf": 3.2 }).to_string();
    let once = |router: Router, body: String| async move {
        let request = Request::post("/api/calculators/pieces-per-stick")
            .header(header::HOST, "localhost")
            .header(header::CONTENT_TYPE, "application/json")
            .body(Body::from(body))
            .expect("a request");
        router.oneshot(request).await.expect("an answer")
    };
    criterion.bench_function("request, bare handler", |bencher| {
        bencher.to_async(&runtime).iter(|| once(bare.clone(), body.clone()));
    });
    criterion.bench_function("request, calculator", |bencher| {
        bencher.to_async(&runtime).iter(|| once(app.clone(), body.clone()));
    });
    let entry = entry("pieces-per-stick").expect("it is declared");
    let input: Value = serde_json::from_str(&body).expect("JSON");
    criterion.bench_function("the same calculator without a request", |bencher| {
        bencher.iter(|| {
            entry.work(black_box(&input), Units::Metric).map(|answer| Printed(&answer, Units::Metric).to_json())
        });
    });
}

fn books(criterion: &mut Criterion) {
    let book = Handbook::built_in().expect("the book has no fault");
    criterion.bench_function("whole book, read and checked", |bencher| bencher.iter(Handbook::built_in));
    criterion.bench_function("whole book, rendered in one unit system", |bencher| {
        bencher.iter(|| book::render(black_box(&book), Units::Imperial));
    });
}

criterion_group! {
    name = product;
    config = Criterion::default().sample_size(20).warm_up_time(std::time::Duration::from_millis(500)).measurement_time(std::time::Duration::from_secs(3));
    targets = walls, requests, books
}
criterion_main!(product);
