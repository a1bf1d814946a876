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

/// Whether visitors or developers are built for.
#[derive(clap::Args, Clone, Copy, Debug)]
pub struct SpeedArgs {
    /// Quick to build, slow to run, and without offline use.
    #[arg(long)]
    dev: bool,
}

impl SpeedArgs {
    /// How the program is compiled.
    #[must_use]
    pub fn speed(self) -> Speed {
        if self.dev { Speed::Development } else { Speed::Visitors }
    }
}

/// What `cargo xtask build` takes.
#[derive(clap::Args, Debug)]
pub struct Args {
    #[command(flatten)]
    speed: SpeedArgs,
    /// The folder to build into; `dist` at the top of the checkout where none is named.
    #[arg(long)]
    dist: Option<PathBuf>,
}

/// `cargo xtask build`.
///
/// # Errors
/// When the page can't be built.
pub fn run(args: &Args) -> Result<(), Failure> {
    let dist = match &args.dist {
        Some(named) => std::env::current_dir()?.join(named),
        None => root()?.join("dist"),
    };
    page(&tools::ensure()?, args.speed.speed(), &dist)?;
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
