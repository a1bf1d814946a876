//! Prints the plan of a design as JSON, natively.
//!
//! ```text
//! cargo run --release --example plan -- FILE.json [--system inch|metric]
//! ```
//!
//! `-` reads standard input. The file is a design as the page saves it, or the bare request (`examples/minimal.json` is
//! the smallest); a bundle of several sets gives a list of plans. Without `--system` each set is planned in its own.
//! Request and plan are described in `examples/README.md`. Lengths in the plan stand as whole micrometres and as text in
//! the plan's system: `{"um": 76200, "text": "3 in"}`.
//!
//! Ends with 0 where a plan was printed (look at `stopped` in it), with 1 where the design cannot be read, and with 2
//! where the call itself is wrong; what is wrong then stands on standard error.

#[path = "plan/finding.rs"]
mod finding;
#[path = "plan/frame.rs"]
mod frame;
#[path = "plan/part.rs"]
mod part;
#[path = "plan/sheet.rs"]
mod sheet;
#[path = "plan/step.rs"]
mod step;
#[path = "plan/whole.rs"]
mod whole;

use std::io::{Read, Write};
use std::process::ExitCode;

use snugfold::keep::file::{self, MOST_BYTES};
use snugfold::measure::system::System;

/// Why nothing is printed.
enum Failure {
    /// The call is wrong.
    Call(String),
    /// The design cannot be read.
    Design(String),
}

fn main() -> ExitCode {
    match run(std::env::args().skip(1)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure::Design(why)) => {
            eprintln!("plan: {why}");
            ExitCode::FAILURE
        }
        Err(Failure::Call(why)) => {
            eprintln!("plan: {why}\nusage: plan FILE.json|- [--system inch|metric]");
            ExitCode::from(2)
        }
    }
}

fn run(mut args: impl Iterator<Item = String>) -> Result<(), Failure> {
    let mut name = None;
    let mut system = None;
    while let Some(arg) = args.next() {
        match arg.as_str() {
            "--system" => {
                let word = args.next().unwrap_or_default();
                let read = serde_json::from_value::<System>(word.as_str().into());
                system = Some(read.map_err(|_| Failure::Call(format!("“{word}” is no system")))?);
            }
            other if other.starts_with("--") => {
                return Err(Failure::Call(format!("there is no {other}")));
            }
            _ if name.is_some() => return Err(Failure::Call("one file at a time".to_owned())),
            _ => name = Some(arg),
        }
    }
    let name = name.ok_or_else(|| Failure::Call("which file?".to_owned()))?;
    let bytes = bytes(&name).map_err(|e| Failure::Design(format!("{name}: {e}")))?;
    let sets = file::read(&bytes).map_err(|e| Failure::Design(format!("{name}: {e}")))?;
    let plans: Vec<_> =
        sets.iter().map(|kept| whole::Whole::of(&kept.project, system.unwrap_or(kept.project.system))).collect();
    let text = match &plans[..] {
        [one] => serde_json::to_string_pretty(one),
        many => serde_json::to_string_pretty(many),
    };
    let text = text.map_err(|e| Failure::Design(e.to_string()))?;
    // A reader that closes early, such as `head`, is no failure.
    let _ = writeln!(std::io::stdout(), "{text}");
    Ok(())
}

/// The bytes of a file or of standard input; not many more than are read anyway.
fn bytes(name: &str) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    let most = MOST_BYTES as u64 + 1;
    if name == "-" {
        std::io::stdin().take(most).read_to_end(&mut bytes)?;
    } else {
        std::fs::File::open(name)?.take(most).read_to_end(&mut bytes)?;
    }
    Ok(bytes)
}
