//! Finishes the built page with what follows from its files: the drawing that is seen first, digests, and the list of
//! what the service worker keeps.

use crate::{Failure, digest};
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
const PLACE: &str = "<div id=\"sight\" class=\"picture\" hidden>";

/// Where the page names its program (Trunk.toml).
const PROGRAM: &str = "<template id=\"program\"";

const TEMPLATE: &str = include_str!("../../style/offline.js");
const FILES: &str = "/* files */";
const VERSION: &str = "/* version */";

/// What `cargo xtask precache` takes.
#[derive(clap::Args, Debug)]
pub struct Args {
    /// The built folder. The build names it in a variable.
    #[arg(env = "TRUNK_STAGING_DIR")]
    folder: PathBuf,
}

/// Called by the build, or with a folder.
///
/// # Errors
/// When there is no folder, or it can't be written.
pub fn run(Args { folder }: &Args) -> Result<(), Failure> {
    if let Some(sight) = std::env::var_os(SIGHT) {
        paint(Path::new(&sight), folder)?;
    }
    let page = folder.join("index.html");
    let text = fs::read_to_string(&page)?;
    fs::write(&page, told_by_digest(&allowed(&text)?)?)?;
    write(folder)
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
fn allowed(page: &str) -> Result<String, Failure> {
    let styles: Vec<&str> = page.split("<style>").skip(1).filter_map(|rest| rest.split("</style>").next()).collect();
    let ([style], 1) = (styles.as_slice(), page.matches(STYLES).count()) else {
        return Err("the page has no one style of its own and one policy".into());
    };
    let digest = digest::policy(style.as_bytes());
    Ok(page.replacen(STYLES, &format!("{STYLES} '{digest}'"), 1))
}

/// Trunk has the program preloaded, with its digest. `style/start.js` sends for it instead, and needs the digest:
/// what was preloaded is not taken where one is asked for, by two browsers of three.
fn told_by_digest(page: &str) -> Result<String, Failure> {
    let preloads: Vec<&str> = page
        .split("<link ")
        .skip(1)
        .filter_map(|rest| rest.split('>').next())
        .filter(|link| link.contains("rel=\"preload\"") && link.contains("application/wasm"))
        .collect();
    let ([preload], 1) = (preloads.as_slice(), page.matches(PROGRAM).count()) else {
        return Err("the page has no one program".into());
    };
    let digest = preload.split("integrity=\"").nth(1).and_then(|rest| rest.split('"').next());
    let digest = digest.ok_or("the program has no digest: data-integrity in index.html")?;
    let page = page.replacen(&format!("<link {preload}>"), "", 1);
    Ok(page.replacen(PROGRAM, &format!("{PROGRAM} data-integrity=\"{digest}\""), 1))
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
        let hash = digest::hex(&fs::read(folder.join(&path))?);
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
    let line = |(path, hash): &(String, String)| {
        let kind = mime_guess::from_path(path).first_or_octet_stream();
        format!("\n  [{path:?}, {hash:?}, {:?}],", kind.as_ref())
    };
    let lines: String = list.iter().map(line).collect();
    // The worker's own text counts too: a browser takes any change of it for a new
    // version, and two versions must not share a cache.
    let version = &digest::hex(format!("{template}{lines}").as_bytes())[..16];
    Ok(template.replace(FILES, &format!("{lines}\n")).replace(VERSION, version))
}

#[cfg(test)]
mod tests {
    use super::{TEMPLATE, allowed, bare, fill, told_by_digest};

    fn list(hash: &str) -> Vec<(String, String)> {
        vec![("index.html".to_owned(), hash.to_owned())]
    }

    #[test]
    fn the_list_is_written_into_the_worker() {
        let text = fill(TEMPLATE, &list("12ab")).unwrap();
        assert!(text.contains("[\"index.html\", \"12ab\", \"text/html\"],"), "{text}");
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
    fn the_program_is_told_by_its_digest_and_not_preloaded() {
        let page = "<link rel=\"preload\" href=\"./a.wasm\" integrity=\"sha384-abc\" as=\"fetch\" \
            type=\"application/wasm\"><link rel=\"icon\"><template id=\"program\" data-wasm=\"./a.wasm\"></template>";
        let told = "<link rel=\"icon\"><template id=\"program\" data-integrity=\"sha384-abc\" data-wasm=\"./a.wasm\"></template>";
        assert_eq!(told_by_digest(page).unwrap(), told);
        assert!(told_by_digest(told).is_err());
        assert!(told_by_digest(&page.replace("integrity", "other")).is_err());
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
