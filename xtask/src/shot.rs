//! Takes a picture of the page, for a look at it.

use crate::build::{self, Speed};
use crate::command::{cargo, run as run_command};
use crate::{Failure, browser, tools};

/// `cargo xtask shot OUT.png …`: hands its wishes to the ignored test `shot` of
/// `tests/page`, which knows the browser.
///
/// # Errors
/// When the page can't be built or shown.
pub fn run(args: &[String]) -> Result<(), Failure> {
    let mut out = None;
    let mut size = "1180x820".to_owned();
    let mut fragment = String::new();
    let mut clicks = Vec::new();
    let mut dark = false;
    let mut paper = false;
    let mut full = false;
    let mut built = false;
    let mut args = args.iter();
    while let Some(arg) = args.next() {
        let mut value = || args.next().cloned().ok_or(format!("{arg} needs a value"));
        match arg.as_str() {
            "--size" => size = value()?,
            "--fragment" => fragment = value()?,
            "--click" => clicks.push(value()?),
            "--dark" => dark = true,
            "--paper" => paper = true,
            "--full" => full = true,
            // Several pictures of one build.
            "--no-build" => built = true,
            other if out.is_none() && !other.starts_with('-') => out = Some(other.to_owned()),
            other => return Err(format!("shot: what is {other}?").into()),
        }
    }
    let out = std::env::current_dir()?.join(out.ok_or("shot: where to? cargo xtask shot OUT.png")?);
    let browser = browser::ensure()?;
    let dist = build::test_dist()?;
    if !built {
        build::page(&tools::ensure()?, Speed::Visitors, &dist)?;
    }
    let mut command = cargo(&["test", "--locked", "--package", "snugfold", "--test", "page"])?;
    command
        .args(["--", "--ignored", "--exact", "shot::shot", "--nocapture"])
        .env("SNUGFOLD_DIST", &dist)
        .env("CHROMIUM", &browser.chromium)
        .env("CHROMEDRIVER", &browser.driver)
        .env("SNUGFOLD_SHOT", &out)
        .env("SNUGFOLD_SHOT_SIZE", size)
        .env("SNUGFOLD_SHOT_FRAGMENT", fragment)
        .env("SNUGFOLD_SHOT_CLICKS", clicks.join("\n"))
        .env("SNUGFOLD_SHOT_DARK", if dark { "1" } else { "" })
        .env("SNUGFOLD_SHOT_PAPER", if paper { "1" } else { "" })
        .env("SNUGFOLD_SHOT_FULL", if full { "1" } else { "" });
    run_command(&mut command)?;
    println!("{}", out.display());
    Ok(())
}
