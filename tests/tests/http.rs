//! The API and the pages as a browser or a program meets them.

use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use book::Handbook;
use calculators::catalogue::entry;
use calculators::quantity::Units;
use serde_json::{Value, json};
use tests::served::{APP, ask, get, send};
use tower::ServiceExt;

#[tokio::test]
async fn every_calculator_answers_its_example_in_every_form_it_declares() {
    let listed = get("/api/calculators").await.json();
    let listed = listed.as_array().expect("a list");
    assert!(listed.len() > 50, "{} calculators", listed.len());
    let document = get("/api/openapi.json").await.json();
    for calculator in listed {
        let id = calculator["id"].as_str().expect("an id");
        let card = get(&format!("/api/calculators/{id}?units=metric")).await.json();
        let example = card["example"]["input"].to_string();
        let content = document
            .pointer(&format!("/paths/~1api~1calculators~1{id}/post/responses/200/content"))
            .unwrap_or_else(|| panic!("{id} is not described"));
        for form in content.as_object().expect("forms").keys() {
            let reply = ask(id, &example, form).await;
            assert_eq!(reply.status, StatusCode::OK, "{id} as {form}: {}", reply.text);
            assert!(reply.media.starts_with(form.as_str()), "{id}: asked for {form}, got {}", reply.media);
            assert!(!reply.text.is_empty(), "{id} as {form} is empty");
        }
        let answer = ask(id, &example, "application/json").await.json();
        let schema = &card["answer_schema"];
        let fields = schema["properties"]["result"]["properties"].as_object().expect("result fields");
        for name in answer["result"].as_object().expect("a result").keys() {
            assert!(fields.contains_key(name), "{id}: {name} is not in its schema");
        }
        let described =
            document["components"]["schemas"]["Caution"]["properties"].as_object().expect("a caution is described");
        for told in answer["cautions"].as_array().expect("cautions").iter().flat_map(|caution| caution.as_object()) {
            for (name, value) in told {
                assert!(described.contains_key(name) && value.is_string(), "{id}: a caution's {name} is not described");
            }
        }
        assert_eq!(
            answer["cautions"].as_array().map(Vec::len),
            card["card"]["cautions"].as_array().map(Vec::len),
            "{id}: a caution has no words"
        );
    }
}

#[tokio::test]
async fn an_answer_asked_for_in_a_form_it_has_not_is_refused() {
    for accept in ["image/png", "image/svg+xml", "text/csv"] {
        let reply = ask(
            "board-weight",
            &json!({ "width": 90, "thickness": 18, "length": 4800, "density": 750, "boards": 1 }).to_string(),
            accept,
        )
        .await;
        assert_eq!(reply.status, StatusCode::NOT_ACCEPTABLE, "{accept}");
        assert_eq!(reply.media, "application/problem+json");
    }
}

#[tokio::test]
async fn all_faults_come_back_at_once_as_problem_details() {
    let reply = ask("board-weight", &json!({ "width": "3/7", "thickness": "3,750", "length": "16' 14\"", "density": "x", "boards": 5.5, "colour": 1 }).to_string(), "*/*").await;
    assert_eq!(reply.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(reply.media, "application/problem+json");
    let problem = reply.json();
    let pointers: Vec<_> = problem["errors"]
        .as_array()
        .expect("errors")
        .iter()
        .map(|fault| fault["pointer"].as_str().expect("a pointer"))
        .collect();
    assert_eq!(pointers, ["/width", "/thickness", "/length", "/density", "/boards", "/colour"]);
    for fault in problem["errors"].as_array().expect("errors") {
        assert!(fault["said"].is_string() && fault["why"].is_string(), "{fault}");
    }
}

#[tokio::test]
async fn two_hundred_faults_at_once_are_all_told() {
    let stations: Vec<_> = (0..60)
        .map(|_| json!({ "at": "wide", "datum_to_floor": "3/7", "floor_to_ceiling": "-5", "bow": "x" }))
        .collect();
    let mut wall = get("/api/calculators/wall-plan").await.json()["example"]["input"].clone();
    wall["survey"]["stations"] = json!(stations);
    let reply = ask("wall-plan", &wall.to_string(), "*/*").await;
    assert_eq!(reply.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(reply.json()["errors"].as_array().expect("errors").len() >= 200);
}

#[tokio::test]
async fn no_body_however_odd_is_our_fault() {
    let deep = "[".repeat(5_000);
    let long = format!("{{\"width\": \"{}\"}}", "9".repeat(100_000));
    let bodies = [
        "",
        "null",
        "[]",
        "{}",
        "{\"width\":",
        "\"\\u0000\"",
        "1e999",
        &deep,
        &long,
        "{\"width\":{\"nm\":[1,0]}}",
        "{\"width\":{\"nm\":[\"x\",1]}}",
    ];
    for id in ["board-weight", "wall-plan", "programme", "tins"] {
        for body in bodies {
            let reply = ask(id, body, "*/*").await;
            assert!(reply.status.is_client_error(), "{id} with {:.40}: {}", body, reply.status);
        }
    }
    let huge = vec![b' '; api::app::LARGEST_BODY + 1];
    let reply =
        send(Request::post("/api/calculators/tins").header(header::CONTENT_TYPE, "application/json"), huge).await;
    assert_eq!(reply.status, StatusCode::PAYLOAD_TOO_LARGE);
    let reply = send(Request::post("/api/calculators/tins").header(header::CONTENT_TYPE, "image/png"), "x").await;
    assert_eq!(reply.status, StatusCode::UNSUPPORTED_MEDIA_TYPE);
    assert_eq!(get("/api/calculators/moon-phase").await.status, StatusCode::NOT_FOUND);
    assert_eq!(get("/api/calculators?units=cubits").await.status, StatusCode::OK);
    assert_eq!(get("/api/calculators/tins?units=cubits").await.status, StatusCode::BAD_REQUEST);
    assert_eq!(send(Request::delete("/api"), "").await.status, StatusCode::METHOD_NOT_ALLOWED);
}

#[tokio::test]
async fn a_posted_form_and_a_json_body_come_to_the_same_answer() {
    let form = "%2Fneeded=3.265+L&%2Freserve=5&%2Ftins%2F0%2Fholds=1+L&%2Ftins%2F0%2Fprice=24&%2Ftins%2F1%2Fholds=2.5+L&%2Ftins%2F1%2Fprice=46";
    let posted = send(
        Request::post("/api/calculators/tins?units=metric")
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded"),
        form,
    )
    .await;
    let json = json!({ "needed": "3.265 L", "reserve": 5, "tins": [{ "holds": 1, "price": 24 }, { "holds": 2.5, "price": 46 }] });
    assert_eq!(posted.json()["result"], ask("tins", &json.to_string(), "*/*").await.json()["result"]);
}

#[tokio::test]
async fn strangers_are_turned_away() {
    let foreign_host =
        Request::get("/").header(header::HOST, "handbook.example").body(Body::empty()).expect("a request");
    let reply = APP.clone().oneshot(foreign_host).await.expect("an answer");
    assert_eq!(reply.status(), StatusCode::FORBIDDEN);
    let foreign =
        send(Request::post("/choices").header(header::ORIGIN, "http://elsewhere.example"), "units=metric").await;
    assert_eq!(foreign.status, StatusCode::FORBIDDEN);
    let own = send(
        Request::post("/choices").header(header::ORIGIN, "http://127.0.0.1:7391"),
        "units=metric&back=//elsewhere.example",
    )
    .await;
    assert_eq!(own.status, StatusCode::SEE_OTHER);
    assert_eq!(own.headers[header::LOCATION], "/");
}

#[tokio::test]
async fn pages_follow_the_units_of_the_cookie_and_allow_nothing_from_elsewhere() {
    let metric =
        send(Request::get("/wall?wall=a").header(header::COOKIE, "units=metric; light=lamp"), Body::empty()).await;
    assert!(metric.text.contains("data-units=\"metric\"") && metric.text.contains("data-light=\"lamp\""));
    let policy = metric.headers[header::CONTENT_SECURITY_POLICY].to_str().expect("ascii");
    assert!(policy.starts_with("default-src 'none'") && !policy.contains("unsafe"), "{policy}");
    assert_eq!(get("/no-such-page.html").await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_file_that_a_browser_holds_is_not_sent_again() {
    let first = get("/theme/benchleaf.css").await;
    assert!(first.status == StatusCode::OK && first.text.len() > 10_000);
    let tag = first.headers[header::ETAG].clone();
    let again = send(Request::get("/theme/benchleaf.css").header(header::IF_NONE_MATCH, &tag), Body::empty()).await;
    assert_eq!((again.status, again.text.as_str()), (StatusCode::NOT_MODIFIED, ""));
    let changed = send(Request::get("/theme/mark.svg").header(header::IF_NONE_MATCH, &tag), Body::empty()).await;
    assert_eq!(changed.status, StatusCode::OK);
}

#[tokio::test]
async fn the_document_is_openapi_3_1_and_its_schemas_are_whole() {
    let document = get("/api/openapi.json").await.json();
    assert_eq!(document["openapi"], "3.1.0");
    let paths = document["paths"].as_object().expect("paths");
    for (path, item) in paths.iter().filter(|(path, _)| *path != "/api/calculators") {
        let schema = &item["post"]["requestBody"]["content"]["application/json"]["schema"];
        assert_eq!(schema["type"], "object", "{path}");
        assert!(
            !schema.to_string().contains("\"$ref\":\"#/$defs"),
            "{path}: a schema that points outside the document"
        );
    }
}

/// A folder of its own, removed when the test ends.
struct Scratch(std::path::PathBuf);

impl Scratch {
    fn new(name: &str) -> Self {
        let path = std::env::temp_dir().join(format!("benchleaf-{name}-{}", std::process::id()));
        std::fs::create_dir_all(path.join("chapters")).expect("a folder");
        Self(path)
    }

    fn write(&self, file: &str, text: &str) {
        std::fs::write(self.0.join(file), text).expect("a file");
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        std::fs::remove_dir_all(&self.0).ok();
    }
}

#[tokio::test]
async fn an_edited_page_is_live_with_the_next_request_and_a_page_may_not_lose_its_cautions() {
    let chapters = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../book/chapters");
    let year = std::fs::read_to_string(chapters.join("17-year.md")).expect("the chapter");
    let folder = Scratch::new("live");
    folder.write("chapters/17-year.md", &year);
    let app = api::app(api::live::Live::of_folder(&folder.0).expect("the book with one page replaced"));
    let page = |app: axum::Router| async move {
        let request =
            axum::http::Request::get("/year.html").header("host", "localhost").body(Body::empty()).expect("a request");
        let reply = app.oneshot(request).await.expect("an answer");
        let bytes = axum::body::to_bytes(reply.into_body(), usize::MAX).await.expect("a body");
        String::from_utf8_lossy(&bytes).into_owned()
    };
    assert!(!page(app.clone()).await.contains("a sentence nobody wrote before"));
    folder.write("chapters/17-year.md", &year.replacen("\n## ", "\nThis is a sentence nobody wrote before.\n\n## ", 1));
    assert!(page(app.clone()).await.contains("a sentence nobody wrote before"), "the edit is live");
    folder.write("chapters/17-year.md", "# Broken\n\n[nowhere](no-such-page.md)\n");
    assert!(page(app.clone()).await.contains("a sentence nobody wrote before"), "a book with a fault is not served");

    let spray = std::fs::read_to_string(chapters.join("15-spray.md")).expect("the chapter");
    let block = spray.find("```caution").expect("spraying has a caution");
    let end = spray[block..].match_indices("```").nth(1).expect("its end").0 + block + 3;
    let other = Scratch::new("cautions");
    other.write("chapters/15-spray.md", &format!("{}{}", &spray[..block], &spray[end..]));
    let told = api::live::Live::of_folder(&other.0).err().expect("a caution is missing").to_string();
    assert!(told.contains("15-spray.md") && told.contains("never removed"), "{told}");
}

/// A job of 96 lengths and odd stick prices, drawn at random, whose plan stays open: the least of all blends of patterns lies below
/// every plan, and no count of sticks is left to divide on.
const OPEN_JOB: &str = include_str!("../data/open-stick-job.json");

#[test]
fn a_stick_plan_that_is_not_proved_says_how_far_off_it_can_be_and_offers_a_longer_look() {
    // Asked without a request, which would be cut off on a busy machine.
    let entry = entry("cutting-plan").expect("it is declared");
    let asked = |patience: u32| {
        let mut job: Value = serde_json::from_str(OPEN_JOB).expect("JSON");
        job["patience"] = json!(patience);
        entry.answer(&job, Units::Metric).expect("a valid job")
    };
    let (answer, longer) = (asked(1), asked(16));
    let proof = answer["result"]["proof"].as_str().expect("a sentence");
    assert!(proof.contains("best found so far; a better one could save"), "{proof}");
    assert!(answer["result"]["certificate"].is_null(), "nothing is called proved");
    let offer = &answer["notes"][0]["offer"];
    assert_eq!((offer["field"].as_str(), offer["value"].as_str()), (Some("/patience"), Some("4")));
    let book = Handbook::built_in().expect("the book has no fault");
    let job: Value = serde_json::from_str(OPEN_JOB).expect("JSON");
    let panel = book.panel_html(entry, &entry.work(&job, Units::Metric).expect("a valid job"), Units::Metric);
    assert!(panel.contains("name=\"do\" value=\"put /patience 4\""), "a button that works without scripts");
    assert!(longer["notes"][0]["offer"].is_null(), "the longest look offers no longer one");
    let cost = |answer: &Value| answer["result"]["cost"]["minor"].as_i64().expect("a cost");
    assert!(cost(&longer) <= cost(&answer), "a longer look never comes back with worse");
}

#[tokio::test]
async fn a_stick_job_with_a_knot_a_lot_and_a_long_piece_comes_out_as_by_hand() {
    // By hand, kerf 0: the 2400 in the rack with a knot from 1000 to 1100 gives 1000 and 1300. 900 comes out of the first part, the lot of
    // 700 and 500 out of the second. The 5000 is joined at 2400 from two sticks of 3000 at 10.00 each.
    let job = json!({
        "pieces": [
            { "length": 900, "count": 1 }, { "length": 700, "count": 1, "lot": 7 }, { "length": 500, "count": 1, "lot": 7 },
            { "length": 5000, "count": 1, "joins_at": [2400] },
        ],
        "sticks": [
            { "length": 2400, "price": "0.00", "bad": [{ "from": 1000, "to": 1100 }] }, { "length": 3000, "price": "10.00" },
        ],
        "kerf": 0, "end_trim": 0, "keep": 300,
    });
    let answer = ask("cutting-plan", &job.to_string(), "application/json").await.json();
    assert_eq!(answer["result"]["cost"]["text"], "20.00");
    assert_eq!(answer["result"]["sticks"], 3);
    let rows = answer["result"]["plan"].as_array().expect("rows");
    let lot = rows.iter().find(|row| row["lots"] == json!([7])).expect("the lot");
    assert_eq!(lot["from"]["mm"], 1100.0, "beyond the knot");
    assert_eq!(answer["result"]["joined"][0]["parts"].as_array().map(Vec::len), Some(2));
    let mut unpaid = job.clone();
    unpaid["sticks"][0]["price"] = json!("9.00");
    let fault = ask("cutting-plan", &unpaid.to_string(), "application/json").await;
    assert_eq!(fault.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(fault.json()["errors"][0]["pointer"], "/sticks/0/price");
}

#[tokio::test]
async fn one_mark_at_a_time_never_steps_off_either_end() {
    let numbers = |at: String| async move {
        let page = get(&format!("/wall?wall=a&view=numbers&at={at}")).await.text;
        let head =
            page.split("id=\"one-head\"").nth(1).expect("a mark").split("</h2>").next().expect("its head").to_owned();
        let (at, of) = head.rsplit_once("mark ").and_then(|(_, count)| count.split_once(" of ")).expect("mark 3 of 12");
        let buttons = page
            .split("<p class=\"turns\">")
            .nth(1)
            .expect("two buttons")
            .split("</p>")
            .next()
            .expect("their end")
            .to_owned();
        let buttons: Vec<_> = buttons.split("<button").skip(1).map(str::to_owned).collect();
        let to = |button: &str| -> Option<usize> {
            let value = button.split("value=\"").nth(1)?.split('"').next()?.parse().ok()?;
            (!button.contains("disabled")).then_some(value)
        };
        (
            at.parse::<usize>().expect("a number"),
            of.parse::<usize>().expect("a number"),
            to(&buttons[0]),
            to(&buttons[1]),
        )
    };
    let (_, of, ..) = numbers("1".to_owned()).await;
    assert!(of > 20, "the plain wall has two lines of twelve marks");
    for (asked, at) in [("0", 1), ("1", 1), ("2", 2), ("-5", 1), ("x", 1), ("999999999999999999999", 1)] {
        assert_eq!(numbers(asked.to_owned()).await, (at, of, (at > 1).then(|| at - 1), Some(at + 1)), "at {asked}");
    }
    for asked in [of - 1, of, of + 1, of + 999] {
        let at = asked.min(of);
        assert_eq!(
            numbers(asked.to_string()).await,
            (at, of, Some(at - 1), (at < of).then_some(at + 1)),
            "at {asked} of {of}"
        );
    }
}
