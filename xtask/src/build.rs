//! Builds the page.

use crate::command::{cargo, run as run_command, with_path};
use crate::tools::{self, Tools};
use crate::{Failure, precache, root};
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
        Speed::Visitors => {
            command.env(precache::SIGHT, sight()?);
        }
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

/// Draws what is seen before the program has come; gives the drawing's file.
fn sight() -> Result<PathBuf, Failure> {
    let drawn = cargo(&["run", "--quiet", "--locked", "--package", "snugfold", "--example", "sight"])?.output()?;
    let svg = String::from_utf8(drawn.stdout)?;
    if !svg.starts_with("<svg") {
        return Err(format!("nothing was drawn for the page: {}", String::from_utf8_lossy(&drawn.stderr)).into());
    }
    let file = root()?.join("target/sight.svg");
    std::fs::write(&file, svg)?;
    Ok(file)
}

/// Where the tests keep the page that they look at: never the maker's own `dist`.
///
/// # Errors
/// When run outside a checkout.
pub fn test_dist() -> Result<PathBuf, Failure> {
    Ok(root()?.join("target/page"))
}
