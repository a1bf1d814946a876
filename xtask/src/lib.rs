//! Serves, tests and packs the page, with crates for whatever is not particular to it.
//!
//! The page's tests use [`site`] and [`precache`] too: what is tested is what is served.

pub mod axe;
pub mod browser;
pub mod build;
pub mod command;
pub mod digest;
pub mod precache;
pub mod serve;
pub mod shot;
pub mod site;
pub mod test;
pub mod tools;

use std::path::PathBuf;

/// What went wrong, in a sentence for the person at the terminal.
pub type Failure = Box<dyn std::error::Error>;

/// The top folder of the checkout.
///
/// # Errors
/// When run outside a checkout.
pub fn root() -> Result<PathBuf, Failure> {
    let start = match std::env::var_os("CARGO_MANIFEST_DIR") {
        Some(folder) => PathBuf::from(folder),
        None => std::env::current_dir()?,
    };
    start
        .ancestors()
        .find(|folder| folder.join("Trunk.toml").is_file())
        .map(std::path::Path::to_path_buf)
        .ok_or_else(|| "run this inside the checkout: no Trunk.toml was found".into())
}
