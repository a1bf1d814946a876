//! axe-core, which looks for what shuts people out of a page: fetched from npm into the cache folder, never part of the
//! page.

use crate::command::{ask, run};
use crate::{Failure, browser, digest, tools};
use std::path::PathBuf;
use std::process::Command;

/// Its version, and the SHA-256 of the one file of it that is used.
const VERSION: &str = "4.14.1";
const HASH: &str = "29348999450cdf2849a8e70b7912fc2da85a849da39c0d0d5394f51d4a9ed95c";

/// The file, fetched where it is not there yet.
///
/// # Errors
/// When it is missing and can't be fetched, or is not what it was: says what to install, and why.
pub fn ensure() -> Result<PathBuf, Failure> {
    let home = tools::cache()?.join(format!("axe-core-{VERSION}"));
    let file = home.join("package/axe.min.js");
    if !file.is_file() {
        std::fs::create_dir_all(&home)?;
        if ask("npm", &["--version"]).is_none() {
            browser::apt_install(&["npm"])?;
        }
        eprintln!("Fetching axe-core {VERSION} into {} (once)", home.display());
        let package = format!("axe-core@{VERSION}");
        run(Command::new("npm").args(["pack", "--silent", &package]).current_dir(&home)).map_err(|failure| {
            format!("{failure}\nThe page is tested for access with axe-core {VERSION}: it comes by npm")
        })?;
        run(Command::new("tar").args(["-xzf", &format!("axe-core-{VERSION}.tgz")]).current_dir(&home))?;
    }
    if digest::hex(&std::fs::read(&file)?) != HASH {
        return Err(format!("{} is not axe-core {VERSION} as it was: delete its folder", file.display()).into());
    }
    Ok(file)
}
