//! What a visitor downloads, compressed as a static host does it.
#![cfg(not(target_arch = "wasm32"))]

use std::fs;
use std::io::Write;
use std::path::PathBuf;

/// What must come before the page can be used; what a slow phone network brings within about a second.
const FIRST: usize = 400 * 1024;
/// With what comes while the first part is looked at, and is kept for when there is no network.
const ALL: usize = 560 * 1024;

#[test]
fn the_page_is_light() {
    let Some(dist) = std::env::var_os("SNUGFOLD_DIST").map(PathBuf::from) else {
        panic!("SNUGFOLD_DIST names no built page: run `cargo xtask weigh`, which builds it");
    };
    let mut files = Vec::new();
    for entry in fs::read_dir(&dist).expect("the built page") {
        let entry = entry.expect("a file");
        let raw = fs::read(entry.path()).expect("a file can be read");
        let name = entry.file_name().to_string_lossy().into_owned();
        files.push((compressed(&raw), raw.len(), name));
    }
    files.sort();
    files.reverse();
    println!("{:>9} {:>9}", "brotli", "raw");
    for (size, raw, name) in &files {
        println!("{size:>9} {raw:>9}  {name}");
    }
    let sum = |of: &dyn Fn(&str) -> bool| -> usize {
        files.iter().filter(|(_, _, name)| of(name)).map(|(size, _, _)| size).sum()
    };
    let later = |name: &str| name.starts_with("later-") && name.ends_with(".wasm");
    assert_eq!(files.iter().filter(|(_, _, name)| later(name)).count(), 1, "the program comes in two files");
    let (first, all) = (sum(&|name| !later(name)), sum(&|_| true));
    println!("{first:>9} {:>9}  before it can be used, of {FIRST} allowed", "");
    println!("{all:>9} {:>9}  in all, of {ALL} allowed", "");
    assert!(first <= FIRST, "the page weighs {first} bytes before it can be used, over {FIRST}");
    assert!(all <= ALL, "the page weighs {all} bytes in all, over {ALL}");
}

fn compressed(raw: &[u8]) -> usize {
    let mut out = Vec::new();
    let mut writer = brotli::CompressorWriter::new(&mut out, 4096, 11, 22);
    writer.write_all(raw).expect("compressing in memory");
    drop(writer);
    // A host sends a file as it is where compressing would make it longer (pictures).
    out.len().min(raw.len())
}
