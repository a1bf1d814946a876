//! A static web server for this machine only, which tells what it was asked for and can go wrong as hosts do.

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderName, HeaderValue, Method, StatusCode, Uri, header};
use axum::response::{IntoResponse, Redirect, Response};
use std::io;
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::JoinHandle;
use tokio::sync::oneshot;
use tower_http::services::ServeDir;

/// What a host should send with every file. SECURITY.md shows them and says why (`tests/house.rs` holds the two together).
pub const HEADERS: [(&str, &str); 5] = [
    ("cache-control", "no-cache"),
    ("content-security-policy", "frame-ancestors 'none'"),
    ("cross-origin-opener-policy", "same-origin"),
    ("referrer-policy", "no-referrer"),
    ("x-content-type-options", "nosniff"),
];

/// A folder on disk, shown under a folder of the site.
#[derive(Clone, Debug)]
pub struct Folder {
    /// `/` or `/some/folder/`.
    pub at: String,
    /// Where the files are.
    pub files: PathBuf,
}

/// What a host does wrong with a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// It is not there.
    Missing,
    /// It says that the file is of another kind, or of none.
    Kind(Option<&'static str>),
    /// It sends a byte more than there are.
    Changed,
    /// It sends none of [`HEADERS`].
    Bare,
}

#[derive(Debug, Default)]
struct Shared {
    folders: Vec<Folder>,
    faults: Mutex<Vec<(String, Fault)>>,
    asked: Mutex<Vec<String>>,
}

/// A running server. It stops when told to, or when dropped.
#[derive(Debug)]
pub struct Site {
    address: SocketAddr,
    shared: Arc<Shared>,
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
}

impl Site {
    /// Serves `files` at `/`; port 0 takes any free one.
    ///
    /// # Errors
    /// When the port is taken.
    pub fn start(files: &Path, port: u16) -> io::Result<Self> {
        Self::start_with(vec![Folder { at: "/".to_owned(), files: files.to_path_buf() }], port)
    }

    /// Serves several folders side by side.
    ///
    /// # Errors
    /// When the port is taken.
    pub fn start_with(folders: Vec<Folder>, port: u16) -> io::Result<Self> {
        let listener = std::net::TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        listener.set_nonblocking(true)?;
        let address = listener.local_addr()?;
        let shared = Arc::new(Shared { folders, ..Shared::default() });
        let router = Router::new().fallback(answer).with_state(Arc::clone(&shared));
        let (stop, stopped) = oneshot::channel();
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build()?;
        let thread = std::thread::spawn(move || {
            runtime.block_on(async {
                let Ok(listener) = tokio::net::TcpListener::from_std(listener) else {
                    return;
                };
                tokio::select! {
                    _ = axum::serve(listener, router) => {}
                    _ = stopped => {}
                }
            });
            // With the runtime go the connections that browsers keep open.
        });
        Ok(Self { address, shared, stop: Some(stop), thread: Some(thread) })
    }

    /// Where the site is, with a slash at the end. By number: the name may lead to another
    /// program that listens on the same port of the other protocol.
    #[must_use]
    pub fn url(&self) -> String {
        format!("http://127.0.0.1:{}/", self.address.port())
    }

    /// The port it listens on.
    #[must_use]
    pub fn port(&self) -> u16 {
        self.address.port()
    }

    /// From now on files whose address ends like this are sent wrongly.
    pub fn go_wrong(&self, end: &str, fault: Fault) {
        unpoisoned(&self.shared.faults).push((end.to_owned(), fault));
    }

    /// From now on everything is sent as it should be.
    pub fn mend(&self) {
        unpoisoned(&self.shared.faults).clear();
    }

    /// The paths that it was asked for so far, in that order.
    #[must_use]
    pub fn asked(&self) -> Vec<String> {
        unpoisoned(&self.shared.asked).clone()
    }

    /// Stops; from now on a browser finds nobody here.
    pub fn stop(&mut self) {
        // Where the thread has ended by itself, nobody hears it.
        let _ = self.stop.take().map(|stop| stop.send(()));
        self.join();
    }

    /// Serves until the process is ended.
    pub fn wait(mut self) {
        self.join();
    }

    fn join(&mut self) {
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

impl Drop for Site {
    fn drop(&mut self) {
        self.stop();
    }
}

fn unpoisoned<T>(mutex: &Mutex<T>) -> std::sync::MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

async fn answer(State(shared): State<Arc<Shared>>, request: Request) -> Response {
    let path = request.uri().path().to_owned();
    unpoisoned(&shared.asked).push(path.clone());
    let faults: Vec<Fault> =
        unpoisoned(&shared.faults).iter().filter(|(end, _)| path.ends_with(end)).map(|(_, fault)| *fault).collect();
    let mut response = file(&shared.folders, &path, request).await;
    for (name, value) in HEADERS {
        response.headers_mut().insert(HeaderName::from_static(name), HeaderValue::from_static(value));
    }
    for fault in faults {
        response = wrong(response, fault).await;
    }
    response
}

/// The file of this path, out of the longest folder that fits: one copy may lie within another's.
async fn file(folders: &[Folder], path: &str, mut request: Request) -> Response {
    if request.method() != Method::GET && request.method() != Method::HEAD {
        return StatusCode::METHOD_NOT_ALLOWED.into_response();
    }
    if let Some(folder) = folders.iter().find(|folder| format!("{path}/") == folder.at) {
        return Redirect::permanent(&folder.at).into_response();
    }
    let folder = folders.iter().filter(|folder| path.starts_with(&folder.at)).max_by_key(|folder| folder.at.len());
    let Some(folder) = folder else {
        return StatusCode::NOT_FOUND.into_response();
    };
    let Ok(within) = format!("/{}", &path[folder.at.len()..]).parse::<Uri>() else {
        return StatusCode::NOT_FOUND.into_response();
    };
    *request.uri_mut() = within;
    // Compressed where a compressed file lies beside it, as large hosts keep them.
    let served = ServeDir::new(&folder.files).precompressed_br().try_call(request).await;
    served.map_or_else(|_| StatusCode::NOT_FOUND.into_response(), IntoResponse::into_response)
}

async fn wrong(response: Response, fault: Fault) -> Response {
    let (mut head, body) = response.into_parts();
    match fault {
        Fault::Missing => return StatusCode::NOT_FOUND.into_response(),
        Fault::Kind(None) => drop(head.headers.remove(header::CONTENT_TYPE)),
        Fault::Kind(Some(kind)) => drop(head.headers.insert(header::CONTENT_TYPE, HeaderValue::from_static(kind))),
        Fault::Bare => {
            for (name, _) in HEADERS {
                head.headers.remove(name);
            }
        }
        Fault::Changed => {
            let Ok(bytes) = to_bytes(body, usize::MAX).await else {
                return StatusCode::INTERNAL_SERVER_ERROR.into_response();
            };
            // Not taken for the file as it was.
            head.headers.remove(header::CONTENT_LENGTH);
            head.headers.remove(header::LAST_MODIFIED);
            return Response::from_parts(head, Body::from([&bytes[..], b"\n"].concat()));
        }
    }
    Response::from_parts(head, body)
}

#[cfg(test)]
mod tests {
    use super::{Fault, Folder, Site};
    use std::io::{Read, Write};
    use std::net::TcpStream;
    use std::path::{Path, PathBuf};

    fn asked(site: &Site, target: &str) -> String {
        let mut stream = TcpStream::connect(("127.0.0.1", site.port())).unwrap();
        write!(stream, "GET {target} HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n").unwrap();
        let mut said = String::new();
        stream.read_to_string(&mut said).unwrap();
        said
    }

    fn site() -> Site {
        let here = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
        let folder = |at: &str, files: &Path| Folder { at: at.to_owned(), files: files.to_path_buf() };
        Site::start_with(vec![folder("/", &here), folder("/two/", &here.join("src"))], 0).unwrap()
    }

    #[test]
    fn each_folder_shows_its_files_as_what_they_are() {
        let site = site();
        assert!(asked(&site, "/Cargo.toml?a=b").contains("[package]"));
        assert!(asked(&site, "/two/site.rs").contains("content-type: text/x-rust"));
        assert!(asked(&site, "/two").contains("location: /two/"));
        assert!(asked(&site, "/Cargo.toml").contains("content-security-policy: frame-ancestors 'none'"));
        assert_eq!(site.asked(), ["/Cargo.toml", "/two/site.rs", "/two", "/Cargo.toml"]);
    }

    #[test]
    fn no_way_leads_out_of_the_folder() {
        let site = site();
        for target in ["/two/../../Cargo.lock", "/../Cargo.lock", "/%2e%2e/Cargo.lock", "/two/%2e%2e/Cargo.toml"] {
            assert!(asked(&site, target).contains(" 404 "), "{target}");
        }
    }

    #[test]
    fn it_goes_wrong_when_told_to_and_is_mended() {
        let site = site();
        let body = |said: String| said.split_once("\r\n\r\n").unwrap().1.to_owned();
        let whole = body(asked(&site, "/Cargo.toml"));
        site.go_wrong(".toml", Fault::Missing);
        assert!(asked(&site, "/Cargo.toml").contains(" 404 "));
        site.mend();
        site.go_wrong(".toml", Fault::Changed);
        assert_eq!(body(asked(&site, "/Cargo.toml")), format!("{whole}\n"));
        site.mend();
        site.go_wrong(".toml", Fault::Kind(Some("text/plain")));
        assert!(asked(&site, "/Cargo.toml").contains("content-type: text/plain"));
    }

    #[test]
    fn a_stopped_site_answers_nobody() {
        let mut site = site();
        site.stop();
        assert!(TcpStream::connect(("127.0.0.1", site.port())).is_err());
    }
}
