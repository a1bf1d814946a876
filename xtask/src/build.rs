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
    let mut first_on_path = tools.bindgen.clone();
    match speed {
        Speed::Visitors => {
            small(&mut command);
            first_on_path = in_two(&mut command, tools)?;
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
    with_path(&mut command, &[&first_on_path, &tools.trunk])?;
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
            "-Zunstable-options -Cpanic=immediate-abort -Zfmt-debug=none --cfg apart -Clink-arg=--emit-relocs",
        )
        // The linker's notes say what needs what; `xtask/apart` throws them away.
        .env("CARGO_PROFILE_WEB_STRIP", "false");
}

/// What a visitor sees later comes in a file of its own: `xtask/apart` stands before the bridge and parts the program.
/// Gives the folder where it is.
fn in_two(command: &mut Command, tools: &Tools) -> Result<PathBuf, Failure> {
    let target = root()?.join("target");
    let mut build = cargo(&["build", "--quiet", "--locked", "--package", "apart"])?;
    // Wherever its maker keeps what is built: this is looked for here.
    run_command(build.env("CARGO_TARGET_DIR", &target))?;
    command.env("SNUGFOLD_BINDGEN", tools.bindgen.join("wasm-bindgen")).env(precache::LATER, target.join("later"));
    // Trunk finds the bridge by its name.
    let folder = target.join("apart");
    std::fs::create_dir_all(&folder)?;
    let end = std::env::consts::EXE_SUFFIX;
    std::fs::copy(target.join(format!("debug/apart{end}")), folder.join(format!("wasm-bindgen{end}")))?;
    Ok(folder)
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
