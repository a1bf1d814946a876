//! A static web server for this machine only.

use std::fs;
use std::io::{self, BufRead, BufReader, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread::JoinHandle;
use std::time::Duration;

/// A running server. It stops when told to, or when dropped.
#[derive(Debug)]
pub struct Site {
    address: SocketAddr,
    stop: Arc<AtomicBool>,
    thread: Option<JoinHandle<()>>,
}

/// A folder on disk, shown under a folder of the site.
#[derive(Clone, Debug)]
pub struct Shelf {
    /// `/` or `/some/folder/`.
    pub at: String,
    /// Where the files are.
    pub files: PathBuf,
}

impl Site {
    /// Serves `files` at `/`; port 0 takes any free one.
    ///
    /// # Errors
    /// When the port is taken.
    pub fn start(files: &Path, port: u16) -> io::Result<Self> {
        let shelf = Shelf { at: "/".to_owned(), files: files.to_path_buf() };
        Self::start_with(vec![shelf], port)
    }

    /// Serves several folders side by side.
    ///
    /// # Errors
    /// When the port is taken.
    pub fn start_with(shelves: Vec<Shelf>, port: u16) -> io::Result<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port))?;
        let address = listener.local_addr()?;
        let stop = Arc::new(AtomicBool::new(false));
        let stopped = Arc::clone(&stop);
        let shelves = Arc::new(shelves);
        let thread = std::thread::spawn(move || {
            for stream in listener.incoming() {
                if stopped.load(Ordering::SeqCst) {
                    break;
                }
                let shelves = Arc::clone(&shelves);
                if let Ok(stream) = stream {
                    std::thread::spawn(move || {
                        // A visitor who went away is no matter.
                        let _ = answer(stream, &shelves);
                    });
                }
            }
        });
        Ok(Self { address, stop, thread: Some(thread) })
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

    /// Stops; from now on a browser finds nobody here.
    pub fn stop(&mut self) {
        let Some(thread) = self.thread.take() else {
            return;
        };
        self.stop.store(true, Ordering::SeqCst);
        // Wakes the thread that waits for a visitor.
        let _ = TcpStream::connect(self.address);
        let _ = thread.join();
    }

    /// Serves until the process is ended.
    pub fn wait(mut self) {
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

enum Answer {
    File(PathBuf),
    Moved(String),
    Nothing,
}

fn answer(stream: TcpStream, shelves: &[Shelf]) -> io::Result<()> {
    // Browsers open connections that they may never use.
    stream.set_read_timeout(Some(Duration::from_secs(10)))?;
    let mut reader = BufReader::new(stream.try_clone()?);
    let mut first = String::new();
    reader.read_line(&mut first)?;
    let mut line = String::new();
    let mut unpacks = false;
    while reader.read_line(&mut line)? > 2 {
        let lower = line.to_ascii_lowercase();
        unpacks |= lower.starts_with("accept-encoding:") && lower.contains("br");
        line.clear();
    }
    let mut words = first.split_whitespace();
    let (method, target) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    let mut stream = stream;
    if method != "GET" && method != "HEAD" {
        return send(&mut stream, "405 Method Not Allowed", &[], b"");
    }
    match find(target, shelves) {
        Answer::File(path) => match packed(&path, unpacks) {
            Ok((body, packed)) => {
                let mut headers = vec![
                    ("Content-Type", kind(&path).to_owned()),
                    // A build replaces files under the same names.
                    ("Cache-Control", "no-cache".to_owned()),
                ];
                headers.extend(packed.then(|| ("Content-Encoding", "br".to_owned())));
                let body = if method == "HEAD" { &[][..] } else { &body[..] };
                send(&mut stream, "200 OK", &headers, body)
            }
            Err(_) => send(&mut stream, "404 Not Found", &[], b"not found"),
        },
        Answer::Moved(to) => send(&mut stream, "301 Moved Permanently", &[("Location", to)], b""),
        Answer::Nothing => send(&mut stream, "404 Not Found", &[], b"not found"),
    }
}

/// A file, or what lies beside it compressed, as large hosts keep it; and whether it is that.
fn packed(path: &Path, unpacks: bool) -> io::Result<(Vec<u8>, bool)> {
    let mut name = path.as_os_str().to_owned();
    name.push(".br");
    match fs::read(name) {
        Ok(body) if unpacks => Ok((body, true)),
        _ => fs::read(path).map(|body| (body, false)),
    }
}

fn send(stream: &mut TcpStream, status: &str, headers: &[(&str, String)], body: &[u8]) -> io::Result<()> {
    let mut head = format!("HTTP/1.1 {status}\r\nContent-Length: {}\r\nConnection: close\r\n", body.len());
    for (name, value) in headers {
        head.push_str(&format!("{name}: {value}\r\n"));
    }
    head.push_str("\r\n");
    stream.write_all(head.as_bytes())?;
    stream.write_all(body)?;
    stream.flush()
}

/// Only names that a build makes are looked up: no way leads out of the folder.
fn find(target: &str, shelves: &[Shelf]) -> Answer {
    let path = target.split(['?', '#']).next().unwrap_or_default();
    let plain =
        |part: &str| !part.starts_with('.') && part.chars().all(|c| c.is_ascii_alphanumeric() || "-_.".contains(c));
    if !path.starts_with('/') || !path.split('/').all(plain) {
        return Answer::Nothing;
    }
    for shelf in shelves {
        if format!("{path}/") == shelf.at {
            return Answer::Moved(shelf.at.clone());
        }
    }
    // The longest folder that fits: one copy may lie within another's.
    let shelf = shelves.iter().filter(|shelf| path.starts_with(&shelf.at)).max_by_key(|shelf| shelf.at.len());
    let Some(shelf) = shelf else {
        return Answer::Nothing;
    };
    let rest = &path[shelf.at.len()..];
    let mut file = shelf.files.join(rest);
    if rest.is_empty() || rest.ends_with('/') {
        file.push("index.html");
    }
    Answer::File(file)
}

fn kind(path: &Path) -> &'static str {
    match path.extension().and_then(|end| end.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::{Answer, Shelf, find};
    use std::path::PathBuf;

    fn found(target: &str) -> Option<PathBuf> {
        let shelf = |at: &str, files: &str| Shelf { at: at.to_owned(), files: PathBuf::from(files) };
        let shelves = [shelf("/", "top"), shelf("/two/", "second")];
        match find(target, &shelves) {
            Answer::File(path) => Some(path),
            Answer::Moved(_) | Answer::Nothing => None,
        }
    }

    #[test]
    fn a_folder_shows_its_page() {
        assert_eq!(found("/"), Some(PathBuf::from("top/index.html")));
        assert_eq!(found("/?a=b"), Some(PathBuf::from("top/index.html")));
        assert_eq!(found("/two/"), Some(PathBuf::from("second/index.html")));
        assert_eq!(found("/two/x.js"), Some(PathBuf::from("second/x.js")));
    }

    #[test]
    fn no_way_leads_out_of_the_folder() {
        for target in ["/../x", "/two/../../x", "/.git/config", "/%2e%2e/x", "x", ""] {
            assert_eq!(found(target), None, "{target}");
        }
    }
}
