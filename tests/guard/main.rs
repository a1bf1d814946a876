//! A guard over rewrites: a thousand requests, three hundred broken files and a dump of storage, against what was
//! recorded of them. Where nothing was meant to change, nothing here does; where something was, the difference of the
//! recorded files shows what.
//!
//! `SNUGFOLD_EXPECTED=write cargo test --test guard` records anew; then look at the difference.
#![cfg(not(target_arch = "wasm32"))]

#[path = "../common/mod.rs"]
mod common;
#[path = "../../examples/plan/finding.rs"]
mod finding;
#[path = "../../examples/plan/frame.rs"]
mod frame;
#[path = "../../examples/plan/part.rs"]
mod part;
#[path = "../../examples/plan/sheet.rs"]
mod sheet;
#[path = "../../examples/plan/step.rs"]
mod step;
#[path = "../../examples/plan/whole.rs"]
mod whole;

mod broken;
mod requests;
mod storage;

use std::fmt::Write;
use std::fs;
use std::path::Path;

/// Fowler, Noll and Vo's hash, 64 bits, variant 1a, folded to 32: the same with every compiler, on every machine.
struct Hash(u64);

impl Hash {
    const fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }

    fn add(&mut self, bytes: &[u8]) {
        // What comes next is not taken for the end of this.
        for byte in bytes.iter().chain(&(bytes.len() as u64).to_le_bytes()) {
            self.0 = (self.0 ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }

    fn of(bytes: &[u8]) -> String {
        let mut hash = Self::new();
        hash.add(bytes);
        hash.hex()
    }

    fn hex(&self) -> String {
        format!("{:08x}", (self.0 >> 32) ^ (self.0 & 0xffff_ffff))
    }
}

/// Holds `text` against the recorded file of this name, or records it.
fn compare(name: &str, text: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/guard").join(name);
    if std::env::var("SNUGFOLD_EXPECTED").is_ok_and(|v| v == "write") {
        fs::create_dir_all(path.parent().expect("it is in a folder")).expect("a folder can be made");
        fs::write(&path, text).expect("a file can be written");
    }
    let recorded = fs::read_to_string(&path).unwrap_or_default();
    let mut told = String::new();
    let (mut old, mut new) = (recorded.lines(), text.lines());
    let mut other = 0;
    loop {
        let (was, is) = (old.next(), new.next());
        if was.is_none() && is.is_none() {
            break;
        }
        if was != is {
            other += 1;
            if other <= 12 {
                let _ = writeln!(told, "was {}\n is {}", was.unwrap_or("(nothing)"), is.unwrap_or("(nothing)"));
            }
        }
    }
    assert!(other == 0, "{other} lines of {name} are others than recorded:\n{told}");
}
