//! The tools that the page is built with: found, or installed into a cache folder outside
//! the checkout, so that a fresh clone finds them again.

use crate::command::{ask, cargo, run};
use crate::{Failure, root};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const TARGET: &str = "wasm32-unknown-unknown";

/// Builds the page around the program. The 0.22 line needs a newer compiler.
const TRUNK: &str = "0.21.14";

/// Where the tools are.
#[derive(Clone, Debug)]
pub struct Tools {
    /// The folder with `trunk`.
    pub trunk: PathBuf,
    /// The folder with `wasm-bindgen` and its test runner.
    pub bindgen: PathBuf,
}

/// Makes sure of the wasm target and both tools.
///
/// # Errors
/// When one is missing and can't be installed.
pub fn ensure() -> Result<Tools, Failure> {
    wasm_target()?;
    let bindgen = locked("wasm-bindgen")?;
    Ok(Tools {
        // Without its update check, trunk needs no TLS to build.
        trunk: tool("trunk", "trunk", TRUNK, &["--no-default-features"])?,
        bindgen: tool("wasm-bindgen-cli", "wasm-bindgen", &bindgen, &[])?,
    })
}

/// Makes sure that clippy and rustfmt are there.
///
/// # Errors
/// When one is missing and can't be installed.
pub fn components() -> Result<(), Failure> {
    for (verb, component) in [("clippy", "clippy"), ("fmt", "rustfmt")] {
        let mut asked = cargo(&[verb, "--version"])?;
        let there = asked.output().is_ok_and(|output| output.status.success());
        if !there {
            rustup(&["component", "add", component])?;
        }
    }
    Ok(())
}

/// The version of a package in Cargo.lock.
///
/// # Errors
/// When the file or the package isn't there.
pub fn locked(package: &str) -> Result<String, Failure> {
    let lock = fs::read_to_string(root()?.join("Cargo.lock"))?;
    let mut lines = lock.lines();
    let name = format!("name = \"{package}\"");
    lines
        .find(|line| *line == name)
        .and_then(|_| lines.next())
        .and_then(|line| line.strip_prefix("version = \"")?.strip_suffix('"'))
        .map(str::to_owned)
        .ok_or_else(|| format!("Cargo.lock has no {package}").into())
}

fn wasm_target() -> Result<(), Failure> {
    if sysroot()?.join(TARGET).is_dir() { Ok(()) } else { rustup(&["target", "add", TARGET]) }
}

/// Where the compiler keeps what it brought along.
fn sysroot() -> Result<PathBuf, Failure> {
    let said = Command::new("rustc").args(["--print", "sysroot"]).current_dir(root()?).output()?;
    Ok(PathBuf::from(String::from_utf8_lossy(&said.stdout).trim()).join("lib/rustlib"))
}

fn rustup(args: &[&str]) -> Result<(), Failure> {
    run(Command::new("rustup").args(args).current_dir(root()?)).map_err(|failure| {
        format!("{failure}\nThe page is compiled to WebAssembly: without rustup, install the standard library for {TARGET} (and clippy, rustfmt) for this compiler by hand").into()
    })
}

/// The folder that holds `program` of `package`, in this very version.
fn tool(package: &str, program: &str, version: &str, features: &[&str]) -> Result<PathBuf, Failure> {
    let is_it = |said: Option<String>| said.is_some_and(|said| said.split_whitespace().nth(1) == Some(version));
    // The maker of this machine may have it already.
    if is_it(ask(program, &["--version"]))
        && let Some(found) = on_path(program)
    {
        return Ok(found);
    }
    let home = cache()?.join(format!("{package}-{version}"));
    let bin = home.join("bin");
    let built = bin.join(program);
    if is_it(ask(&built.to_string_lossy(), &["--version"])) {
        return Ok(bin);
    }
    fs::create_dir_all(&home)?;
    eprintln!("Installing {package} {version} into {} (once)", home.display());
    let mut install = cargo(&["install", package, "--version", version, "--locked"])?;
    install
        .args(features)
        .arg("--root")
        .arg(&home)
        // Outside the checkout, whose settings are none of the tool's.
        .current_dir(&home)
        .env_remove("CARGO_TARGET_DIR")
        .env_remove("CARGO_BUILD_TARGET")
        // The tool runs for a second: a quick build of it counts for more.
        .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "0")
        .env("CARGO_PROFILE_RELEASE_LTO", "off")
        .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "256");
    run(&mut install)?;
    Ok(bin)
}

fn on_path(program: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    let name = format!("{program}{}", std::env::consts::EXE_SUFFIX);
    std::env::split_paths(&path).find(|folder| folder.join(&name).is_file())
}

/// A folder of the user's, outside any checkout. `SNUGFOLD_TOOLS` names another.
///
/// # Errors
/// Where there is no home.
pub fn cache() -> Result<PathBuf, Failure> {
    let folder = |name: &str| std::env::var_os(name).map(PathBuf::from).filter(|path| path.is_absolute());
    let home = |rest: &str| folder("HOME").map(|home| home.join(Path::new(rest)));
    folder("SNUGFOLD_TOOLS")
        .or_else(|| {
            let caches = if cfg!(windows) {
                folder("LOCALAPPDATA")
            } else if cfg!(target_os = "macos") {
                home("Library/Caches")
            } else {
                folder("XDG_CACHE_HOME").or_else(|| home(".cache"))
            };
            caches.map(|caches| caches.join("snugfold"))
        })
        .ok_or_else(|| "no home folder: set SNUGFOLD_TOOLS to a folder for the tools".into())
}
