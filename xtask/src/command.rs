//! Running other programs, and counting the tests in what they print.

use crate::{Failure, root};
use std::ffi::OsString;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};

/// How many tests went well, and how many did not.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Count {
    /// Tests that passed.
    pub passed: usize,
    /// Tests that failed, and steps that fell over before any test.
    pub failed: usize,
}

impl Count {
    /// Adds another count to this one.
    pub fn add(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
    }
}

/// Cargo, the one that runs this, at the top of the checkout.
///
/// # Errors
/// When run outside a checkout.
pub fn cargo(args: &[&str]) -> Result<Command, Failure> {
    let program = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let mut command = Command::new(program);
    command.args(args).current_dir(root()?);
    Ok(command)
}

/// Puts a folder first on the path of a command.
///
/// # Errors
/// When the folder's name can't stand on a path.
pub fn with_path(command: &mut Command, folders: &[&Path]) -> Result<(), Failure> {
    let old = std::env::var_os("PATH").unwrap_or_default();
    let all = folders.iter().map(|folder| folder.to_path_buf()).chain(std::env::split_paths(&old));
    let joined: OsString = std::env::join_paths(all)?;
    command.env("PATH", joined);
    Ok(())
}

/// Runs a command with its output shown.
///
/// # Errors
/// When it can't be started or fails.
pub fn run(command: &mut Command) -> Result<(), Failure> {
    eprintln!("    {}", shown(command));
    let status = command.stdin(Stdio::null()).status().map_err(|error| format!("{}: {error}", shown(command)))?;
    if status.success() { Ok(()) } else { Err(format!("{}: {status}", shown(command)).into()) }
}

/// Runs a command that prints test results, shows them, and counts them.
///
/// # Errors
/// When it can't be started.
pub fn run_tests(command: &mut Command) -> Result<Count, Failure> {
    eprintln!("    {}", shown(command));
    let mut child = command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .spawn()
        .map_err(|error| format!("{}: {error}", shown(command)))?;
    let mut count = Count::default();
    if let Some(out) = child.stdout.take() {
        for line in BufReader::new(out).split(b'\n') {
            let line = line?;
            let line = String::from_utf8_lossy(&line);
            println!("{line}");
            if let Some(found) = result_line(&line) {
                count.add(found);
            }
        }
    }
    let status = child.wait()?;
    if !status.success() && count.failed == 0 {
        // It fell over before or after its tests.
        count.failed = 1;
    }
    Ok(count)
}

/// Asks a program something; `None` when it isn't there or says no.
#[must_use]
pub fn ask(program: &str, args: &[&str]) -> Option<String> {
    let output = Command::new(program).args(args).stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

fn shown(command: &Command) -> String {
    let name = Path::new(command.get_program()).file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let args = command.get_args().map(|arg| arg.to_string_lossy());
    std::iter::once(name.into()).chain(args).collect::<Vec<_>>().join(" ")
}

fn result_line(line: &str) -> Option<Count> {
    let rest = line.trim().strip_prefix("test result: ")?;
    let number =
        |what: &str| rest.split([';', '.']).find_map(|part| part.trim().strip_suffix(what)?.trim().parse().ok());
    Some(Count { passed: number("passed")?, failed: number("failed")? })
}

#[cfg(test)]
mod tests {
    use super::{Count, result_line};

    #[test]
    fn results_are_counted() {
        let check = |line, expected| assert_eq!(result_line(line), expected, "{line}");
        check(
            "test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 0 filtered out",
            Some(Count { passed: 12, failed: 0 }),
        );
        check(
            "test result: FAILED. 3 passed; 2 failed; 0 ignored; finished in 0.00s",
            Some(Count { passed: 3, failed: 2 }),
        );
        check("running 12 tests", None);
        check("test result: none", None);
    }
}
