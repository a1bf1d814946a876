//! The browser that the tests look at the page with: Chromium and its driver.

use crate::Failure;
use crate::command::{ask, run};
use std::path::{Path, PathBuf};
use std::process::Command;

const BROWSERS: [&str; 5] = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"];
const MAC_BROWSERS: [&str; 2] = [
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];
/// How the browser is started: without a window, by any user, in a container with little
/// shared memory, and with no requests but the page's own.
pub const FLAGS: [&str; 10] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-dev-shm-usage",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-quic",
    "--disable-sync",
    "--no-first-run",
    "--lang=en-GB",
];
const MISSING: &str = "\
The page's tests need Chromium and the driver of the same version, for only a real browser
shows whether the page works, offline too. Install them (Debian: the packages chromium and
chromium-driver; elsewhere a Chromium or Chrome with its chromedriver), or name them in
CHROMIUM and CHROMEDRIVER.";

/// A browser and its driver.
#[derive(Clone, Debug)]
pub struct Browser {
    /// The browser's program.
    pub chromium: PathBuf,
    /// The driver's program.
    pub driver: PathBuf,
}

impl Browser {
    /// What the test runner of wasm-bindgen is to ask of the driver, as JSON.
    #[must_use]
    pub fn wishes(&self) -> String {
        let flags: Vec<_> = FLAGS.iter().map(|flag| format!("{flag:?}")).collect();
        format!(
            "{{\"goog:chromeOptions\": {{\"binary\": {:?}, \"args\": [{}]}}}}",
            self.chromium.to_string_lossy(),
            flags.join(", ")
        )
    }
}

/// Finds the browser, or installs it where the system's package manager can.
///
/// # Errors
/// When it is missing and can't be installed: says what to install, and why.
pub fn ensure() -> Result<Browser, Failure> {
    if let Some(browser) = find() {
        return Ok(browser);
    }
    if ask("apt-get", &["--version"]).is_some()
        && let Err(failure) = apt_install(&["chromium", "chromium-driver"])
    {
        eprintln!("    {failure}");
    }
    find().ok_or_else(|| MISSING.into())
}

fn find() -> Option<Browser> {
    let chromium = named("CHROMIUM")
        .or_else(|| BROWSERS.iter().find_map(|name| on_path(name)))
        .or_else(|| MAC_BROWSERS.iter().map(PathBuf::from).find(|p| p.is_file()))?;
    let driver = named("CHROMEDRIVER").or_else(|| on_path("chromedriver"))?;
    Some(Browser { chromium, driver })
}

fn named(variable: &str) -> Option<PathBuf> {
    std::env::var_os(variable).map(PathBuf::from).filter(|path| path.is_file())
}

fn on_path(program: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .map(|folder| folder.join(format!("{program}{}", std::env::consts::EXE_SUFFIX)))
        .find(|file| file.is_file())
}

/// Installs packages of the system, where that is Debian's.
///
/// # Errors
/// When they can't be installed.
pub fn apt_install(packages: &[&str]) -> Result<(), Failure> {
    apt(&["update"])?;
    apt(&[&["install", "--yes", "--no-install-recommends"], packages].concat())
}

fn apt(args: &[&str]) -> Result<(), Failure> {
    let root = ask("id", &["-u"]).is_some_and(|id| id == "0");
    let mut command = if root {
        Command::new("apt-get")
    } else if Path::new("/usr/bin/sudo").exists() {
        let mut command = Command::new("sudo");
        // Never asks for a password: nobody may be there to give it.
        command.args(["-n", "apt-get"]);
        command
    } else {
        return Err("installing a package needs the administrator".into());
    };
    // Another installation may be going on.
    command.args(["-o", "DPkg::Lock::Timeout=300"]).args(args).env("DEBIAN_FRONTEND", "noninteractive");
    run(&mut command)
}
