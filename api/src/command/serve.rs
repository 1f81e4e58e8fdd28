//! `benchleaf serve`: the handbook and its calculators for browsers on this machine.

use std::io::Write;
use std::net::Ipv4Addr;
use std::path::PathBuf;

use clap::Args;

use super::{Failure, handbook};
use crate::app::{State, app};
use crate::live::Live;

/// Where the handbook opens unless another port is asked for.
const USUAL_PORT: u16 = 7391;

/// Serve the handbook and its calculators to browsers on this machine.
#[derive(Args)]
pub struct Serve {
    /// Port on this machine; 0 takes any free one.
    #[arg(long, default_value_t = USUAL_PORT)]
    port: u16,
    /// A folder laid over the book in the binary, file by file (`chapters/`, `cautions.toml`). An edited page is live with
    /// the next request.
    #[arg(long, value_name = "DIR")]
    book: Option<PathBuf>,
}

impl Default for Serve {
    fn default() -> Self {
        Self { port: USUAL_PORT, book: None }
    }
}

impl Serve {
    pub(super) fn run(&self) -> Result<(), Failure> {
        let live = match &self.book {
            Some(folder) => Live::of_folder(folder).map_err(|faults| Failure::Input(faults.to_string()))?,
            None => State::new(handbook()?).into(),
        };
        let runtime = tokio::runtime::Runtime::new().map_err(|why| Failure::Outside(format!("no runtime: {why}")))?;
        runtime.block_on(self.listen(live))
    }

    async fn listen(&self, live: Live) -> Result<(), Failure> {
        let at = (Ipv4Addr::LOCALHOST, self.port);
        let listener = match tokio::net::TcpListener::bind(at).await {
            // A second handbook on the same machine takes the next free port instead of failing.
            Err(why) if why.kind() == std::io::ErrorKind::AddrInUse => {
                eprintln!("port {} is taken; a free one is used", self.port);
                tokio::net::TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).await
            }
            bound => bound,
        };
        let listener =
            listener.map_err(|why| Failure::Outside(format!("port {} cannot be opened: {why}", self.port)))?;
        let address = listener.local_addr().map_err(|why| Failure::Outside(format!("no address: {why}")))?;
        println!("The handbook is open at http://{address}/");
        eprintln!("It answers this machine only. Ctrl+C closes it.");
        std::io::stdout().flush().ok();
        let closed = async {
            tokio::signal::ctrl_c().await.ok();
        };
        axum::serve(listener, app(live))
            .with_graceful_shutdown(closed)
            .await
            .map_err(|why| Failure::Outside(format!("the handbook closed: {why}")))
    }
}
