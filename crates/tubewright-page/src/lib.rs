//! The page: a local server over one build folder, with the page built in.
//!
//! [`Workshop`] is one open build; [`serve`] puts it on an address. By default only this machine can
//! reach it; beyond it a one-time key is needed. The folder stays the only state: every deed of a page
//! is saved at once, changes by an editor are seen, and all open pages hear of both.

pub mod api;
mod car;
mod deeds;
mod derived;
mod guard;
mod pieces;
mod playground;
mod samples;
mod steel;
mod undo;
mod view;
mod web;
mod workshop;

use core::time::Duration;
use guard::Guard;
pub use samples::Sample;
use std::io;
use std::net::{IpAddr, Ipv4Addr, SocketAddr, TcpListener, UdpSocket};
pub use workshop::{OpenError, Workshop};

/// How often the folder is looked at for changes by others.
const LOOK_EVERY: Duration = Duration::from_millis(500);
/// Bytes of the one-time key.
const KEY_BYTES: usize = 16;

/// An address that is held, before it is served.
#[derive(Debug)]
pub struct Doorway {
    listener: TcpListener,
    guard: Guard,
    /// What to open in a browser.
    pub address: String,
}

/// Why there is no address.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum DoorwayError {
    /// The system gave none.
    #[error("no address to serve the page on: {0}; try another --port")]
    Listen(#[from] io::Error),
    /// No random bytes for the key.
    #[error("the system gives no random bytes, so there is no key for the phone")]
    NoKey,
}

impl Doorway {
    /// Takes an address on this machine alone, or with `is_lan` on the local network behind a key.
    /// Port 0 takes any free one.
    ///
    /// # Errors
    /// [`DoorwayError`].
    pub fn open(port: u16, is_lan: bool) -> Result<Self, DoorwayError> {
        let ip = if is_lan {
            IpAddr::V4(Ipv4Addr::UNSPECIFIED)
        } else {
            IpAddr::V4(Ipv4Addr::LOCALHOST)
        };
        let listener = TcpListener::bind(SocketAddr::new(ip, port))?;
        listener.set_nonblocking(true)?;
        let port = listener.local_addr()?.port();
        let mut hosts = vec![format!("127.0.0.1:{port}"), format!("localhost:{port}")];
        if !is_lan {
            let address = format!("http://127.0.0.1:{port}/");
            return Ok(Self {
                listener,
                guard: Guard::new(hosts, None),
                address,
            });
        }
        let key = key()?;
        let host = format!("{}:{port}", own_address());
        let address = format!("http://{host}/?key={key}");
        hosts.push(host);
        Ok(Self {
            listener,
            guard: Guard::new(hosts, Some(key)),
            address,
        })
    }

    /// The address as a code for a phone's camera, in half blocks for a terminal.
    #[must_use]
    pub fn code(&self) -> Option<String> {
        use qrcode::render::unicode::Dense1x2;
        let code = qrcode::QrCode::new(&self.address).ok()?;
        Some(code.render::<Dense1x2>().quiet_zone(true).build())
    }
}

/// Makes the printed packet of the build in a folder: a PDF, or a sentence why there is none.
pub type Printer = fn(&std::path::Path) -> Result<Vec<u8>, String>;

/// Serves until `stop` answers true, which is asked twice a second.
///
/// # Errors
/// The system's error when the address cannot be served any more.
pub fn serve(
    workshop: Workshop,
    samples: &'static [Sample],
    printer: Printer,
    doorway: Doorway,
    stop: impl Fn() -> bool + Send + 'static,
) -> io::Result<()> {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        .enable_all()
        .build()?;
    runtime.block_on(async move {
        let listener = tokio::net::TcpListener::from_std(doorway.listener)?;
        let watcher = workshop.clone();
        let router = web::router(workshop, samples, printer, doorway.guard);
        let server = axum::serve(listener, router);
        let asked = async move {
            while !stop() {
                tokio::time::sleep(LOOK_EVERY).await;
                let watcher = watcher.clone();
                let _looked = tokio::task::spawn_blocking(move || watcher.look()).await;
            }
        };
        // Open pages hold their connection for news for ever: leaving does not wait for them.
        tokio::select! {
            served = server.into_future() => served,
            () = asked => Ok(()),
        }
    })
}

fn key() -> Result<String, DoorwayError> {
    let mut bytes = [0_u8; KEY_BYTES];
    getrandom::fill(&mut bytes).map_err(|_| DoorwayError::NoKey)?;
    Ok(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

/// The address of this machine on the local network: the one that the system would send from. No
/// packet leaves.
fn own_address() -> IpAddr {
    UdpSocket::bind((Ipv4Addr::UNSPECIFIED, 0))
        .and_then(|socket| {
            socket.connect((Ipv4Addr::new(192, 0, 2, 1), 9))?;
            socket.local_addr()
        })
        .map_or(IpAddr::V4(Ipv4Addr::LOCALHOST), |address| address.ip())
}
