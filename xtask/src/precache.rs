//! Fills the service worker with the list of files that it keeps.

use crate::{Failure, sha256};
use std::fs;
use std::path::{Path, PathBuf};

/// The worker's name in the built page. It is never in its own list: a browser asks for
/// it anew to find out about newer versions.
pub const WORKER: &str = "offline.js";

/// The variable that names the drawing that is seen before the program has come.
pub const SIGHT: &str = "SNUGFOLD_SIGHT";

/// What the content policy says of styles.
const STYLES: &str = "style-src 'self'";

/// Where it goes in the page.
const PLACE: &str = "<div id=\"sight\" class=\"picture\">";

const TEMPLATE: &str = include_str!("../../style/offline.js");
const FILES: &str = "/* files */";
const VERSION: &str = "/* version */";

/// Called by the build (it says where), or with a folder.
///
/// # Errors
/// When there is no folder, or it can't be written.
pub fn run(args: &[String]) -> Result<(), Failure> {
    let folder = match args {
        [folder] => PathBuf::from(folder),
        [] => std::env::var_os("TRUNK_STAGING_DIR")
            .map(PathBuf::from)
            .ok_or("precache is called by the build; by hand, name the built folder")?,
        _ => return Err("precache takes one folder".into()),
    };
    if let Some(sight) = std::env::var_os(SIGHT) {
        paint(Path::new(&sight), &folder)?;
    }
    allow_style(&folder)?;
    write(&folder)
}

/// Paints a drawing into the page.
fn paint(sight: &Path, folder: &Path) -> Result<(), Failure> {
    let page = folder.join("index.html");
    let text = fs::read_to_string(&page)?;
    if text.matches(PLACE).count() != 1 {
        return Err("the page has no one place for what is seen first".into());
    }
    let svg = fs::read_to_string(sight)?;
    fs::write(&page, text.replacen(PLACE, &format!("{PLACE}{svg}"), 1))?;
    Ok(())
}

/// Lets the one style that stands in the page itself, for what is seen before any file has come, through the page's
/// content policy: by its digest, as a static host has no nonce to give.
fn allow_style(folder: &Path) -> Result<(), Failure> {
    let page = folder.join("index.html");
    let text = fs::read_to_string(&page)?;
    fs::write(&page, allowed(&text)?)?;
    Ok(())
}

fn allowed(page: &str) -> Result<String, Failure> {
    let styles: Vec<&str> = page.split("<style>").skip(1).filter_map(|rest| rest.split("</style>").next()).collect();
    let ([style], 1) = (styles.as_slice(), page.matches(STYLES).count()) else {
        return Err("the page has no one style of its own and one policy".into());
    };
    let digest = sha256::base64(style.as_bytes());
    Ok(page.replacen(STYLES, &format!("{STYLES} 'sha256-{digest}'"), 1))
}

/// Writes the worker for the page that was built into `folder`.
///
/// # Errors
/// When a file can't be read or written, or the worker's text has lost its blanks.
pub fn write(folder: &Path) -> Result<(), Failure> {
    let mut paths = Vec::new();
    collect(folder, folder, &mut paths)?;
    paths.retain(|path| path != WORKER);
    paths.sort();
    if !paths.iter().any(|path| path == "index.html") {
        return Err(format!("no page was built in {}", folder.display()).into());
    }
    let mut list = Vec::new();
    for path in paths {
        let hash = sha256::hex(&fs::read(folder.join(&path))?);
        list.push((path, hash));
    }
    fs::write(folder.join(WORKER), fill(&bare(TEMPLATE), &list)?)?;
    Ok(())
}

fn collect(top: &Path, folder: &Path, into: &mut Vec<String>) -> Result<(), Failure> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            collect(top, &path, into)?;
        } else {
            let parts: Vec<_> = path
                .strip_prefix(top)?
                .components()
                .map(|part| part.as_os_str().to_string_lossy().into_owned())
                .collect();
            into.push(parts.join("/"));
        }
    }
    Ok(())
}

/// A script without its lines of comment, its empty lines and what it is indented by: nobody reads it where it runs.
fn bare(script: &str) -> String {
    let lines = script.lines().map(str::trim_start).filter(|l| !l.is_empty() && !l.starts_with("//"));
    lines.map(|l| format!("{l}\n")).collect()
}

fn fill(template: &str, list: &[(String, String)]) -> Result<String, Failure> {
    for blank in [FILES, VERSION] {
        if template.matches(blank).count() != 1 {
            return Err(format!("{WORKER} must have {blank} once").into());
        }
    }
    let lines: String = list.iter().map(|(path, hash)| format!("\n  [{path:?}, {hash:?}],")).collect();
    // The worker's own text counts too: a browser takes any change of it for a new
    // version, and two versions must not share a cache.
    let version = &sha256::hex(format!("{template}{lines}").as_bytes())[..16];
    Ok(template.replace(FILES, &format!("{lines}\n")).replace(VERSION, version))
}

#[cfg(test)]
mod tests {
    use super::{TEMPLATE, allowed, bare, fill};

    fn list(hash: &str) -> Vec<(String, String)> {
        vec![("index.html".to_owned(), hash.to_owned())]
    }

    #[test]
    fn the_list_is_written_into_the_worker() {
        let text = fill(TEMPLATE, &list("12ab")).unwrap();
        assert!(text.contains("[\"index.html\", \"12ab\"],"), "{text}");
    }

    #[test]
    fn a_bare_script_does_the_same_without_its_comments() {
        assert_eq!(bare("// Says why.\nconst A = 1; // here\n\n  f(\"//\");\n"), "const A = 1; // here\nf(\"//\");\n");
        assert!(bare(TEMPLATE).lines().all(|l| !l.starts_with("//")));
    }

    /// The digest was worked out with `openssl dgst -sha256 -binary | openssl base64`.
    #[test]
    fn the_one_style_is_allowed_by_its_digest() {
        let page = "style-src 'self'; <style>abc</style>";
        let policy = "style-src 'self' 'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='; ";
        assert_eq!(allowed(page).unwrap(), format!("{policy}<style>abc</style>"));
        assert!(allowed("style-src 'self'; <style></style><style></style>").is_err());
    }

    #[test]
    fn another_file_makes_another_version() {
        let version = |hash| {
            let text = fill(TEMPLATE, &list(hash)).unwrap();
            let from = text.find("const VERSION").unwrap();
            text[from..from + 60].to_owned()
        };
        assert_eq!(version("1"), version("1"));
        assert_ne!(version("1"), version("2"));
    }

    #[test]
    fn a_worker_without_blanks_is_refused() {
        assert!(fill("const FILES = [];", &list("1")).is_err());
    }
}
