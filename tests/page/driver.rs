//! Starts the browser's driver, and leaves nothing behind.

use serde_json::json;
use std::ffi::OsStr;
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::Duration;
use thirtyfour::common::log::LoggingPrefsLogLevel;
use thirtyfour::{ChromeCapabilities, prelude::*};

static COUNT: AtomicU32 = AtomicU32::new(0);

/// A running driver with a folder of its own for all that the browser writes.
pub(crate) struct Driver {
    process: Child,
    url: String,
    scratch: PathBuf,
}

impl Driver {
    pub(crate) fn start() -> Self {
        // Short: the browser makes sockets in there, whose names have a limit.
        let count = COUNT.fetch_add(1, Ordering::Relaxed);
        let scratch = std::env::temp_dir().join(format!("sf{}-{count}", std::process::id()));
        std::fs::create_dir_all(&scratch).expect("a folder for the browser");
        let program = std::env::var_os("CHROMEDRIVER").unwrap_or_else(|| "chromedriver".into());
        // The port that it is given for one kind of address may be taken for the other: then it ends, and is started anew.
        let started = (0..5).find_map(|_| Self::try_start(&program, &scratch));
        let (process, port) = started.expect("the driver says its port");
        Self { process, url: format!("http://127.0.0.1:{port}"), scratch }
    }

    /// The driver and its port; nothing where it ends before it has one.
    fn try_start(program: &OsStr, scratch: &Path) -> Option<(Child, u16)> {
        let mut process = Command::new(program)
            .arg("--port=0")
            .env("TMPDIR", scratch)
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap_or_else(|error| panic!("{}: {error}", program.display()));
        let out = process.stdout.take().expect("the driver's words");
        let mut lines = BufReader::new(out).lines().map_while(Result::ok);
        let port = lines.find_map(|line| {
            let (_, port) = line.split_once("started successfully on port ")?;
            port.trim_end_matches('.').parse().ok()
        });
        // It stops when nobody reads on.
        std::thread::spawn(move || lines.for_each(drop));
        if port.is_none() {
            let _ = process.wait();
        }
        Some((process, port?))
    }

    /// Ends the browser as a flat battery would.
    pub(crate) fn kill_browser(&self) {
        let profile = format!("user-data-dir={}", self.scratch.join("profile").display());
        let killed = Command::new("pkill").args(["-KILL", "-f", &profile]).status();
        assert!(killed.is_ok_and(|s| s.success()), "the browser is killed");
    }

    pub(crate) fn scratch(&self) -> &Path {
        &self.scratch
    }

    /// Opens a browser window in which nobody has ever been.
    pub(crate) async fn open(&self) -> WebDriver {
        let caps = self.capabilities().expect("capabilities");
        let driver = WebDriver::builder(self.url.clone(), caps)
            .request_timeout(Duration::from_secs(120))
            .connect()
            .await
            .expect("the browser starts");
        driver.set_script_timeout(Duration::from_secs(60)).await.expect("a time limit");
        driver
    }

    fn capabilities(&self) -> WebDriverResult<ChromeCapabilities> {
        let mut caps = DesiredCapabilities::chrome();
        // Not named: the driver knows the usual places.
        if let Ok(browser) = std::env::var("CHROMIUM") {
            caps.set_binary(&browser)?;
        }
        for flag in xtask::browser::FLAGS {
            caps.add_arg(flag)?;
        }
        caps.add_arg("--window-size=1180,820")?;
        let profile = self.scratch.join("profile");
        caps.add_arg(&format!("--user-data-dir={}", profile.display()))?;
        caps.set_browser_log_level(LoggingPrefsLogLevel::All)?;
        let downloads = self.scratch.join("downloads");
        std::fs::create_dir_all(&downloads)?;
        caps.add_experimental_option(
            "prefs",
            json!({
                "download.default_directory": downloads,
                "download.prompt_for_download": false,
            }),
        )?;
        Ok(caps)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        let _ = self.process.kill();
        let _ = self.process.wait();
        // The browser may still be writing its last words.
        for _ in 0..20 {
            if std::fs::remove_dir_all(&self.scratch).is_ok() || !self.scratch.exists() {
                return;
            }
            std::thread::sleep(Duration::from_millis(50));
        }
    }
}
