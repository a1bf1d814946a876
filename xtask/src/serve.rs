//! Builds the page and serves it on this machine.

use crate::build;
use crate::site::Site;
use crate::{Failure, root, tools};

/// The same port each time, for a browser keeps designs by address.
const PORT: u16 = 8417;

/// What `cargo xtask serve` takes.
#[derive(clap::Args, Debug)]
pub struct Args {
    /// Where to listen; 0 takes any free port.
    #[arg(long, default_value_t = PORT)]
    port: u16,
    #[command(flatten)]
    speed: build::SpeedArgs,
}

/// `cargo xtask serve`.
///
/// # Errors
/// When the page can't be built, or the port is taken.
pub fn run(args: &Args) -> Result<(), Failure> {
    let dist = root()?.join("dist");
    build::page(&tools::ensure()?, args.speed.speed(), &dist)?;
    let port = args.port;
    let site = Site::start(&dist, port).map_err(|error| format!("port {port}: {error}; another one: --port N"))?;
    println!("Snugfold is at {}   (Ctrl-C ends it)", site.url());
    site.wait();
    Ok(())
}
