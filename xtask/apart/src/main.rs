//! Stands before wasm-bindgen: parts the program in what a visitor sees first and what comes later.
//!
//! Trunk calls it by the bridge's own name. The program comes with the linker's notes, which say what needs what; the
//! part that only `src/ui/later.rs` leads to goes to a file of its own, with the few lines that fetch it. The bridge is
//! then called for the rest.

use std::error::Error;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode};

use wasm_encoder::reencode::{self, Reencode};
use wasm_split_cli_support::{Options, transform};
use xtask::precache::{GLUE, LATER};
use xtask::sha256;

/// What `src/ui/later.rs` calls it.
const PART: &str = "split_later.wasm";

fn main() -> ExitCode {
    match run() {
        Ok(code) => code,
        Err(failure) => {
            eprintln!("The program could not be parted: {failure}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<ExitCode, Box<dyn Error>> {
    let bridge = std::env::var_os("SNUGFOLD_BINDGEN").ok_or("SNUGFOLD_BINDGEN names no wasm-bindgen")?;
    let mut args: Vec<OsString> = std::env::args_os().skip(1).collect();
    let program = args.iter().position(|arg| Path::new(arg).extension().is_some_and(|end| end == "wasm"));
    if let Some(at) = program {
        let folder = PathBuf::from(std::env::var_os(LATER).ok_or_else(|| format!("{LATER} names no folder"))?);
        args[at] = part(Path::new(&args[at]), &folder)?.into();
        args.extend(["--keep-lld-exports", "--remove-name-section", "--remove-producers-section"].map(Into::into));
    }
    let status = Command::new(bridge).args(args).status()?;
    Ok(if status.success() { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// Parts a program; gives the file of the first part. The second and its lines of script lie in `folder`, from where
/// `xtask precache` takes them into the page.
fn part(program: &Path, folder: &Path) -> Result<PathBuf, Box<dyn Error>> {
    let whole = fs::read(program)?;
    // Both parts must be of one build: the name says which.
    let name = format!("later-{}", &sha256::hex(&whole)[..16]);
    if folder.exists() {
        fs::remove_dir_all(folder)?;
    }
    let first = folder.join("first/program.wasm");
    fs::create_dir_all(folder.join("first"))?;
    let link = format!("./{name}.js");
    let mut options = Options::new(&whole);
    options.output_dir = folder;
    options.main_out_path = &first;
    options.link_name = &link;
    options.main_module = GLUE;
    transform(options).map_err(|failure| failure.to_string())?;

    let second = fs::read(folder.join(PART))?;
    fs::write(folder.join(format!("{name}.wasm")), bare(&second)?)?;
    fs::remove_file(folder.join(PART))?;
    let script = folder.join(format!("{name}.js"));
    let text = fs::read_to_string(&script)?;
    if text.matches(PART).count() != 1 {
        return Err(format!("the script fetches {PART} not just once").into());
    }
    fs::write(&script, text.replace(PART, &format!("{name}.wasm")))?;
    Ok(first)
}

/// The same program, its numbers as short as they go, without names.
fn bare(program: &[u8]) -> Result<Vec<u8>, Box<dyn Error>> {
    struct Bare;
    impl Reencode for Bare {
        type Error = std::convert::Infallible;
        fn parse_custom_section(
            &mut self,
            _: &mut wasm_encoder::Module,
            _: wasmparser::CustomSectionReader<'_>,
        ) -> Result<(), reencode::Error<Self::Error>> {
            Ok(())
        }
    }
    let mut into = wasm_encoder::Module::new();
    Bare.parse_core_module(&mut into, wasmparser::Parser::new(0), program).map_err(|failure| failure.to_string())?;
    Ok(into.finish())
}
