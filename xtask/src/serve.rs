//! Builds the page and serves it on this machine.

use crate::build::{self, Speed};
use crate::site::Site;
use crate::{Failure, root, tools};

/// The same port each time, for a browser keeps designs by address.
const PORT: u16 = 8417;

/// `cargo xtask serve [--port N] [--dev]`.
///
/// # Errors
/// When the page can't be built, or the port is taken.
pub fn run(args: &[String]) -> Result<(), Failure> {
    let mut port = PORT;
    let mut speed = Speed::Visitors;
    let mut args = args.iter();
    while let Some(arg) = args.next() {
        match arg.as_str() {
            "--port" => {
                port = args
                    .next()
                    .and_then(|given| given.parse().ok())
                    .ok_or("--port needs a number (0 takes any free one)")?;
            }
            "--dev" => speed = Speed::Development,
            other => return Err(format!("serve: what is {other}?").into()),
        }
    }
    let dist = root()?.join("dist");
    build::page(&tools::ensure()?, speed, &dist)?;
    let site = Site::start(&dist, port).map_err(|error| format!("port {port}: {error}; another one: --port N"))?;
    println!("Snugfold is at {}   (Ctrl-C ends it)", site.url());
    site.wait();
    Ok(())
}
