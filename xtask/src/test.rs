//! Everything that must hold, stage by stage.
#![allow(clippy::disallowed_types, reason = "the stages are timed")]

use crate::browser::{self, Browser};
use crate::build::{self, Speed};
use crate::command::{Count, cargo, run as run_command, run_tests, with_path};
use crate::{Failure, axe, tools};
use std::path::Path;
use std::process::Command;
use std::time::{Duration, Instant};

/// A part of what must hold.
#[derive(clap::ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// The layout of the code.
    Fmt,
    /// The lints.
    Clippy,
    /// Tests on this machine, and those in the documentation.
    Native,
    /// Tests inside a browser.
    Wasm,
    /// Journeys through the whole page in a browser, and its weight.
    Page,
}

/// What `cargo xtask test` takes.
#[derive(clap::Args, Debug)]
pub struct Args {
    /// The stages to run; all where none is named.
    stages: Vec<Stage>,
    /// Handed on to the tests, such as a part of their names.
    #[arg(last = true)]
    more: Vec<String>,
}

struct Report {
    count: Count,
    lines: Vec<(String, Duration, String)>,
}

impl Report {
    /// Runs a stage whatever happened before, so that one run tells all.
    fn stage(&mut self, name: &str, work: impl FnOnce() -> Result<Count, Failure>) -> bool {
        eprintln!("\n== {name}");
        let start = Instant::now();
        let (count, said) = match work() {
            Ok(count) if count.failed > 0 => (count, format!("{} FAILED", count.failed)),
            Ok(count) if count.passed > 0 => (count, format!("{} passed", count.passed)),
            Ok(count) => (count, "done".to_owned()),
            Err(failure) => {
                eprintln!("{failure}");
                let failed = Count { passed: 0, failed: 1 };
                (failed, "FAILED".to_owned())
            }
        };
        self.count.add(count);
        self.lines.push((name.to_owned(), start.elapsed(), said));
        count.failed == 0
    }
}

/// `cargo xtask test`; true when all is well.
///
/// # Errors
/// When run outside a checkout.
pub fn run(args: &Args) -> Result<bool, Failure> {
    // The tests' own parser is to take them for its own.
    let extra: Vec<String> = args.more.first().map(|_| "--".to_owned()).into_iter().chain(args.more.clone()).collect();
    let extra = extra.as_slice();
    let wanted = |stage| args.stages.is_empty() || args.stages.contains(&stage);
    let start = Instant::now();
    let mut report = Report { count: Count::default(), lines: Vec::new() };

    if wanted(Stage::Fmt) || wanted(Stage::Clippy) {
        report.stage("tools: rustfmt and clippy", || done(tools::components()));
    }
    if wanted(Stage::Fmt) {
        report.stage("fmt", || check(cargo(&["fmt", "--all", "--check"])));
    }
    let mut found = None;
    if wanted(Stage::Clippy) || wanted(Stage::Wasm) || wanted(Stage::Page) {
        report.stage("tools: wasm target, trunk, wasm-bindgen", || {
            found = Some(tools::ensure()?);
            Ok(Count::default())
        });
    }
    if wanted(Stage::Clippy) {
        report.stage("clippy, native", || {
            check(cargo(&["clippy", "--locked", "--workspace", "--all-targets", "--", "-D", "warnings"]))
        });
        report.stage("clippy, wasm", || {
            check(cargo(&[
                "clippy",
                "--locked",
                "--package",
                "snugfold",
                "--target",
                "wasm32-unknown-unknown",
                "--lib",
                "--bins",
                "--test",
                "wasm",
                "--",
                "-D",
                "warnings",
            ]))
        });
    }
    if wanted(Stage::Native) {
        report.stage("native tests and doc tests", || {
            run_tests(cargo(&["test", "--locked", "--workspace", "--no-fail-fast"])?.args(extra))
        });
    }
    let mut browser = None;
    if wanted(Stage::Wasm) || wanted(Stage::Page) {
        report.stage("tools: browser", || {
            browser = Some(browser::ensure()?);
            Ok(Count::default())
        });
    }
    if let (Some(tools), Some(browser)) = (&found, &browser) {
        if wanted(Stage::Wasm) {
            report.stage("tests inside a browser", || in_browser(&tools.bindgen, browser, extra));
        }
        if wanted(Stage::Page) {
            let mut access = None;
            report.stage("tools: axe-core", || {
                access = Some(axe::ensure()?);
                Ok(Count::default())
            });
            let dist = build::test_dist()?;
            let built = report.stage("build the page", || done(build::page(tools, Speed::Visitors, &dist)));
            if built {
                report.stage("weight of the page", || weigh_dist(&dist));
                report.stage("journeys through the page", || {
                    page_test(&dist, "page", |command| {
                        command.env("CHROMIUM", &browser.chromium).env("CHROMEDRIVER", &browser.driver).args(extra);
                        if let Some(access) = &access {
                            command.env("SNUGFOLD_AXE", access);
                        }
                    })
                });
            }
        }
    }

    eprintln!();
    for (name, took, said) in &report.lines {
        println!("{:>6.1} s  {name}: {said}", took.as_secs_f64());
    }
    println!("{:>6.1} s  in all", start.elapsed().as_secs_f64());
    // The one line that a machine reads.
    println!("snugfold: {} passed, {} failed", report.count.passed, report.count.failed);
    Ok(report.count.failed == 0)
}

/// `cargo xtask weigh`: builds the page and says what a visitor downloads.
///
/// # Errors
/// When the page can't be built.
pub fn weigh() -> Result<bool, Failure> {
    let dist = build::test_dist()?;
    build::page(&tools::ensure()?, Speed::Visitors, &dist)?;
    Ok(weigh_dist(&dist)?.failed == 0)
}

fn weigh_dist(dist: &Path) -> Result<Count, Failure> {
    page_test(dist, "weigh", |command| {
        command.args(["--", "--nocapture"]);
    })
}

fn page_test(dist: &Path, name: &str, more: impl FnOnce(&mut Command)) -> Result<Count, Failure> {
    let mut command = cargo(&["test", "--locked", "--package", "snugfold", "--test", name])?;
    command.env("SNUGFOLD_DIST", dist);
    more(&mut command);
    run_tests(&mut command)
}

fn in_browser(bindgen: &Path, browser: &Browser, extra: &[String]) -> Result<Count, Failure> {
    // The driver leaves a profile of the browser behind for each run. A short path: the
    // browser makes sockets in there.
    let scratch = std::env::temp_dir().join(format!("snugfold-{}", std::process::id()));
    std::fs::create_dir_all(&scratch)?;
    let wishes = scratch.join("webdriver.json");
    std::fs::write(&wishes, browser.wishes())?;
    let mut command = cargo(&[
        "test",
        "--locked",
        "--package",
        "snugfold",
        "--target",
        "wasm32-unknown-unknown",
        "--profile",
        "dev",
        "--test",
        "wasm",
    ])?;
    command
        .args(extra)
        .env("CHROMEDRIVER", &browser.driver)
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", &wishes)
        // Seconds; the machine may be busy.
        .env("WASM_BINDGEN_TEST_DRIVER_TIMEOUT", "60")
        .env("WASM_BINDGEN_TEST_TIMEOUT", "120")
        .env("TMPDIR", &scratch);
    with_path(&mut command, &[bindgen])?;
    let count = run_tests(&mut command);
    // Left-overs are no failure.
    let _ = std::fs::remove_dir_all(&scratch);
    count
}

fn check(command: Result<Command, Failure>) -> Result<Count, Failure> {
    done(run_command(&mut command?))
}

fn done(result: Result<(), Failure>) -> Result<Count, Failure> {
    result.map(|()| Count::default())
}
