//! Builds the page.

use crate::command::{run as run_command, with_path};
use crate::tools::{self, Tools};
use crate::{Failure, root};
use std::path::{Path, PathBuf};
use std::process::Command;

/// How the program is compiled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Speed {
    /// As visitors get it (the profile named in Trunk.toml).
    Visitors,
    /// Quick to build, slow to run, and without offline use.
    Development,
}

/// `cargo xtask build`.
///
/// # Errors
/// When the page can't be built.
pub fn run(args: &[String]) -> Result<(), Failure> {
    let mut speed = Speed::Visitors;
    let mut dist = root()?.join("dist");
    let mut args = args.iter();
    while let Some(arg) = args.next() {
        match arg.as_str() {
            "--dev" => speed = Speed::Development,
            "--dist" => {
                let given = args.next().ok_or("--dist needs a folder")?;
                dist = std::env::current_dir()?.join(given);
            }
            other => return Err(format!("build: what is {other}?").into()),
        }
    }
    page(&tools::ensure()?, speed, &dist)?;
    println!("built into {}", dist.display());
    Ok(())
}

/// Builds the page into `dist`.
///
/// # Errors
/// When the build fails.
pub fn page(tools: &Tools, speed: Speed, dist: &Path) -> Result<(), Failure> {
    let mut command = Command::new(tools.trunk.join("trunk"));
    command.arg("build").arg("--dist").arg(dist);
    match speed {
        Speed::Visitors => small(&mut command),
        Speed::Development => {
            command.args(["--cargo-profile", "dev"]);
        }
    }
    command
        .current_dir(root()?)
        // Trunk takes the variable's "1" for a malformed setting.
        .env_remove("NO_COLOR");
    with_path(&mut command, &[&tools.bindgen, &tools.trunk])?;
    run_command(&mut command)
}

/// The standard library compiled with the page, and a program that stops at once where it would panic: nobody reads
/// its words, the page itself tells the maker that it stopped (`style/start.js`). Saves 26 KB of what visitors
/// download. Both are options that a pinned compiler takes only when told that its user knows.
fn small(command: &mut Command) {
    command
        .env("RUSTC_BOOTSTRAP", "1")
        .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort")
        .env("CARGO_UNSTABLE_BUILD_STD_FEATURES", "optimize_for_size")
        .env(
            "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS",
            "-Zunstable-options -Cpanic=immediate-abort -Zfmt-debug=none",
        );
}

/// Where the tests keep the page that they look at: never the maker's own `dist`.
///
/// # Errors
/// When run outside a checkout.
pub fn test_dist() -> Result<PathBuf, Failure> {
    Ok(root()?.join("target/page"))
}
