//! Takes a picture of the page, for a look at it.

use crate::build::{self, Speed};
use crate::command::{cargo, run as run_command};
use crate::{Failure, browser, tools};
use std::path::PathBuf;

/// What `cargo xtask shot` takes.
#[derive(clap::Args, Debug)]
pub struct Args {
    /// The picture to write.
    out: PathBuf,
    /// Width and height of the window.
    #[arg(long, default_value = "1180x820")]
    size: String,
    /// What stands behind the address, such as a link's design.
    #[arg(long, default_value = "")]
    fragment: String,
    /// Words on what to press first; may be given several times.
    #[arg(long)]
    click: Vec<String>,
    /// In dark colours.
    #[arg(long)]
    dark: bool,
    /// As it is printed.
    #[arg(long)]
    paper: bool,
    /// The whole page, however long.
    #[arg(long)]
    full: bool,
    /// Several pictures of one build.
    #[arg(long)]
    no_build: bool,
}

/// `cargo xtask shot`: hands its wishes to the ignored test `shot` of `tests/page`, which knows the browser.
///
/// # Errors
/// When the page can't be built or shown.
pub fn run(args: Args) -> Result<(), Failure> {
    let out = std::env::current_dir()?.join(args.out);
    let browser = browser::ensure()?;
    let dist = build::test_dist()?;
    if !args.no_build {
        build::page(&tools::ensure()?, Speed::Visitors, &dist)?;
    }
    let flag = |given| if given { "1" } else { "" };
    let mut command = cargo(&["test", "--locked", "--package", "snugfold", "--test", "page"])?;
    command
        .args(["--", "--ignored", "--exact", "shot::shot", "--nocapture"])
        .env("SNUGFOLD_DIST", &dist)
        .env("CHROMIUM", &browser.chromium)
        .env("CHROMEDRIVER", &browser.driver)
        .env("SNUGFOLD_SHOT", &out)
        .env("SNUGFOLD_SHOT_SIZE", args.size)
        .env("SNUGFOLD_SHOT_FRAGMENT", args.fragment)
        .env("SNUGFOLD_SHOT_CLICKS", args.click.join("\n"))
        .env("SNUGFOLD_SHOT_DARK", flag(args.dark))
        .env("SNUGFOLD_SHOT_PAPER", flag(args.paper))
        .env("SNUGFOLD_SHOT_FULL", flag(args.full));
    run_command(&mut command)?;
    println!("{}", out.display());
    Ok(())
}
