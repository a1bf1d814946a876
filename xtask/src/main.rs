//! `cargo xtask …`: see `cargo xtask help`.

use std::process::ExitCode;
use xtask::{Failure, build, precache, serve, shot, test};

const HELP: &str = "\
cargo xtask serve [--port N] [--dev]   build the page and serve it on this machine
cargo xtask test [STAGE …] [-- ARGS]   run everything, or only some of the stages:
                                       fmt clippy native wasm page
cargo xtask build [--dev] [--dist DIR] build the page into dist/, ready for any static host
cargo xtask weigh                      what a visitor downloads, file by file
cargo xtask shot OUT.png [--size WxH] [--fragment TEXT] [--dark] [--paper] [--full]
                 [--click TEXT] …      build the page and take its picture
cargo xtask precache [DIR]             (called by the build) list the files for offline use

What is missing is installed first: the wasm target, trunk and wasm-bindgen (into a cache
folder of yours, outside the checkout), and the browser where the system can do it.";

fn main() -> ExitCode {
    let mut args = std::env::args().skip(1);
    let verb = args.next().unwrap_or_default();
    let rest: Vec<String> = args.collect();
    let done: Result<bool, Failure> = match verb.as_str() {
        "serve" => serve::run(&rest).map(|()| true),
        "test" => test::run(&rest),
        "build" => build::run(&rest).map(|()| true),
        "weigh" => test::weigh(),
        "shot" => shot::run(&rest).map(|()| true),
        "precache" => precache::run(&rest).map(|()| true),
        "" | "help" | "-h" | "--help" => {
            println!("{HELP}");
            Ok(true)
        }
        other => Err(format!("no such task: {other}\n\n{HELP}").into()),
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
