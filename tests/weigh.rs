//! What a visitor downloads, compressed as a static host does it.
#![cfg(not(target_arch = "wasm32"))]

use std::fs;
use std::io::Write;
use std::path::PathBuf;

/// Against accidents only: a picture left in, a library twice. The figure itself is in benches/README.md.
const MOST: usize = 1_500_000;

#[test]
fn the_page_is_not_heavy_by_accident() {
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
    let all: usize = files.iter().map(|(size, _, _)| size).sum();
    println!("{all:>9} {:>9}  in all", "");
    assert!(all <= MOST, "the page weighs {all} bytes, over {MOST}");
}

fn compressed(raw: &[u8]) -> usize {
    let mut out = Vec::new();
    let mut writer = brotli::CompressorWriter::new(&mut out, 4096, 11, 22);
    writer.write_all(raw).expect("compressing in memory");
    drop(writer);
    // A host sends a file as it is where compressing would make it longer (pictures).
    out.len().min(raw.len())
}
