//! `cargo xtask …`: see `cargo xtask help`.

use clap::{Parser, Subcommand};
use std::process::ExitCode;
use xtask::{Failure, build, precache, serve, shot, test};

/// Serves, tests and packs the page.
///
/// What is missing is installed first: the wasm target, trunk and wasm-bindgen (into a cache folder of yours, outside
/// the checkout), and the browser where the system can do it.
#[derive(Parser)]
#[command(bin_name = "cargo xtask")]
struct Cli {
    #[command(subcommand)]
    task: Task,
}

#[derive(Subcommand)]
enum Task {
    /// Build the page and serve it on this machine.
    Serve(serve::Args),
    /// Run everything that must hold, or some of its stages.
    Test(test::Args),
    /// Build the page, ready for any static host.
    Build(build::Args),
    /// Build the page and say what a visitor downloads, file by file.
    Weigh,
    /// Build the page and take its picture.
    Shot(shot::Args),
    /// List the files for use without a network (called by the build).
    Precache(precache::Args),
}

fn main() -> ExitCode {
    let done: Result<bool, Failure> = match Cli::parse().task {
        Task::Serve(args) => serve::run(&args).map(|()| true),
        Task::Test(args) => test::run(&args),
        Task::Build(args) => build::run(&args).map(|()| true),
        Task::Weigh => test::weigh(),
        Task::Shot(args) => shot::run(args).map(|()| true),
        Task::Precache(args) => precache::run(&args).map(|()| true),
    };
    match done {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(failure) => {
            eprintln!("xtask: {failure}");
            ExitCode::FAILURE
        }
    }
}
