//! What a request costs beside a bare axum handler that sends the same JSON: both are asked over loopback in one run, by turns.
//!
//! `cargo bench -p tests --bench load`, with the number of connections after `--`; 50 where none is given. The generator is this
//! file: plain sockets that are kept open, on the same processors as the server. Nothing here gates.

use std::net::SocketAddr;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};

use axum::Router;
use axum::http::header;
use axum::routing::post;
use book::Handbook;
use calculators::catalogue::entry;
use calculators::quantity::Units;
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};

const ROUNDS: usize = 5;
const EACH: Duration = Duration::from_secs(2);

async fn served(router: Router) -> SocketAddr {
    let listener = TcpListener::bind("127.0.0.1:0").await.expect("a port");
    let address = listener.local_addr().expect("an address");
    tokio::spawn(async move { axum::serve(listener, router).await });
    address
}

fn request(address: SocketAddr, line: &str, headers: &str, body: &str) -> Arc<[u8]> {
    let length = body.len();
    let head = format!("{line} HTTP/1.1\r\nhost: {address}\r\ncontent-length: {length}\r\n{headers}\r\n");
    (head + body).into_bytes().into()
}

/// Sends a request and reads the answer; its body's length.
async fn once(stream: &mut TcpStream, request: &[u8], buffer: &mut Vec<u8>) -> usize {
    stream.write_all(request).await.expect("sent");
    buffer.clear();
    loop {
        assert!(stream.read_buf(buffer).await.expect("read") > 0, "the server has hung up");
        let Some(end) = buffer.windows(4).position(|bytes| bytes == b"\r\n\r\n") else { continue };
        let head = std::str::from_utf8(&buffer[..end]).expect("text");
        assert!(head.starts_with("HTTP/1.1 200"), "{head}");
        let length = head.lines().find_map(|line| {
            let (name, value) = line.split_once(':')?;
            name.eq_ignore_ascii_case("content-length").then(|| value.trim().parse::<usize>().ok())?
        });
        let due = end + 4 + length.expect("a length");
        while buffer.len() < due {
            assert!(stream.read_buf(buffer).await.expect("read") > 0, "the server has hung up");
        }
        return due - end - 4;
    }
}

/// Answers a second, over so many connections.
async fn pace(address: SocketAddr, request: &Arc<[u8]>, connections: usize) -> f64 {
    let (count, stop) = (Arc::new(AtomicU64::new(0)), Arc::new(AtomicBool::new(false)));
    let mut clients = Vec::new();
    for _ in 0..connections {
        let (count, stop, request) = (count.clone(), stop.clone(), request.clone());
        clients.push(tokio::spawn(async move {
            let mut stream = TcpStream::connect(address).await.expect("connected");
            stream.set_nodelay(true).expect("an option");
            let mut buffer = Vec::with_capacity(1 << 16);
            while !stop.load(Ordering::Relaxed) {
                once(&mut stream, &request, &mut buffer).await;
                count.fetch_add(1, Ordering::Relaxed);
            }
        }));
    }
    tokio::time::sleep(Duration::from_millis(200)).await;
    let (start, before) = (Instant::now(), count.load(Ordering::Relaxed));
    tokio::time::sleep(EACH).await;
    let pace = (count.load(Ordering::Relaxed) - before) as f64 / start.elapsed().as_secs_f64();
    stop.store(true, Ordering::Relaxed);
    for client in clients {
        client.await.expect("a client");
    }
    pace
}

fn middle(mut paces: Vec<f64>) -> f64 {
    paces.sort_by(f64::total_cmp);
    paces[paces.len() / 2]
}

async fn compared(connections: usize) {
    let product = served(api::app(api::State::new(Handbook::built_in().expect("the book has no fault")))).await;
    for id in ["board-weight", "pieces-per-stick", "running-marks"] {
        let input = entry(id).expect("it is declared").example(Units::Metric).input.to_string();
        let address = format!("/api/calculators/{id}");
        let asked = |at: SocketAddr, query: &str| {
            request(at, &format!("POST {address}{query}"), "content-type: application/json\r\n", &input)
        };
        let mut answer = Vec::new();
        let mut stream = TcpStream::connect(product).await.expect("connected");
        let length = once(&mut stream, &asked(product, "?units=metric"), &mut answer).await;
        let json = axum::body::Bytes::from(answer.split_off(answer.len() - length));
        let media = [(header::CONTENT_TYPE, "application/json")];
        let bare = served(Router::new().route(&address, post(move |_: String| async move { (media, json) }))).await;
        let (bare_request, ours) = (asked(bare, ""), asked(product, "?units=metric"));
        let (mut bares, mut products) = (Vec::new(), Vec::new());
        for _ in 0..ROUNDS {
            bares.push(pace(bare, &bare_request, connections).await);
            products.push(pace(product, &ours, connections).await);
        }
        let (bare, product) = (middle(bares), middle(products));
        println!(
            "{id}, {length} bytes, {connections} connections: bare {bare:.0}/s, product {product:.0}/s: {:.0} %",
            100.0 * product / bare
        );
    }
    for (line, what) in [("GET /wall", "practice wall"), ("GET /survey.html", "page of the book")] {
        let wall = request(product, line, "accept-encoding: gzip\r\n", "");
        let pace = pace(product, &wall, connections).await;
        println!("{what}, compressed, {connections} connections: {pace:.0}/s");
    }
}

fn main() {
    let connections = std::env::args().filter_map(|word| word.parse().ok()).next().unwrap_or(50);
    let runtime =
        tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build().expect("a runtime");
    runtime.block_on(compared(connections));
}
