//! What a visitor downloads, compressed as a static host does it.
#![cfg(not(target_arch = "wasm32"))]

use std::fs;
use std::io::Write;
use std::path::PathBuf;

/// All files together; what a slow phone network brings within about a second.
const LIMIT: usize = 400 * 1024;

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
    let total: usize = files.iter().map(|(size, _, _)| size).sum();
    println!("{:>9} {:>9}", "brotli", "raw");
    for (size, raw, name) in &files {
        println!("{size:>9} {raw:>9}  {name}");
    }
    println!("{total:>9} {:>9}  in all, of {LIMIT} allowed", "");
    assert!(total <= LIMIT, "the page weighs {total} bytes, over {LIMIT}");
}

fn compressed(raw: &[u8]) -> usize {
    let mut out = Vec::new();
    let mut writer = brotli::CompressorWriter::new(&mut out, 4096, 11, 22);
    writer.write_all(raw).expect("compressing in memory");
    drop(writer);
    // A host sends a file as it is where compressing would make it longer (pictures).
    out.len().min(raw.len())
}
