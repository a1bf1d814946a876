//! What the page is built from, by licence: nothing that asks more than to be named.
//!
//! `SNUGFOLD_EXPECTED=write cargo test --test licences` writes the list anew, to be looked at.
#![cfg(not(target_arch = "wasm32"))]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;

use serde_json::Value;

/// Licences that ask for their text or notice to go along, and nothing else (SPDX identifiers).
const FREE: &[&str] = &[
    "MIT",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Whether one of the ways that an SPDX expression offers is free; `/` is an old way to write OR.
fn free(expression: &str) -> bool {
    let bare = expression.replace(['(', ')'], "").replace('/', " OR ");
    bare.split(" OR ").any(|way| way.split(" AND ").all(|one| FREE.contains(&one.trim())))
}

#[test]
fn a_licence_that_asks_more_is_found() {
    assert!(free("MIT OR GPL-3.0-only") && free("Apache-2.0/MIT") && free("(MIT OR Apache-2.0) AND Unicode-3.0"));
    assert!(!free("GPL-3.0-only") && !free("MIT AND GPL-3.0-only") && !free(""));
}

/// Packages by their number, from `cargo metadata` for the page.
fn metadata() -> Value {
    let said = Command::new(env!("CARGO"))
        .args(["metadata", "--format-version", "1", "--locked", "--filter-platform", "wasm32-unknown-unknown"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("cargo metadata runs");
    assert!(said.status.success(), "{}", String::from_utf8_lossy(&said.stderr));
    serde_json::from_slice(&said.stdout).expect("it says JSON")
}

#[test]
fn everything_in_the_page_may_be_passed_on() {
    let all = metadata();
    let list = |value: &Value| value.as_array().cloned().unwrap_or_default();
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let packages: BTreeMap<String, (String, String)> =
        list(&all["packages"]).iter().map(|p| (text(&p["id"]), (text(&p["name"]), text(&p["license"])))).collect();
    let needs: BTreeMap<String, Vec<String>> = list(&all["resolve"]["nodes"])
        .iter()
        .map(|node| {
            // Neither what tests need nor what only builds.
            let normal = |d: &&Value| list(&d["dep_kinds"]).iter().any(|k| k["kind"].is_null());
            (text(&node["id"]), list(&node["deps"]).iter().filter(normal).map(|d| text(&d["pkg"])).collect())
        })
        .collect();
    let root = packages.iter().find(|(_, p)| p.0 == "snugfold").expect("it is in its own list").0;
    let (mut found, mut open) = (BTreeSet::new(), vec![root.clone()]);
    while let Some(id) = open.pop() {
        if found.insert(id.clone()) {
            open.extend(needs.get(&id).cloned().unwrap_or_default());
        }
    }
    let mine: BTreeSet<_> = found.iter().filter_map(|id| packages.get(id)).filter(|p| p.0 != "snugfold").collect();
    assert!(mine.len() > 20, "the list has been read: {mine:?}");
    let bad: Vec<_> = mine.iter().filter(|p| !free(&p.1)).collect();
    assert!(bad.is_empty(), "these ask for more: {bad:?}");
    let listed: String = mine.iter().map(|(name, licence)| format!("{name}: {licence}\n")).collect();
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/licences.txt");
    if std::env::var_os("SNUGFOLD_EXPECTED").is_some_and(|v| v == "write") {
        std::fs::write(&path, &listed).expect("it can be written");
    }
    let expected = std::fs::read_to_string(&path).unwrap_or_default();
    assert_eq!(listed, expected, "the licences have changed: look at them, then write the list anew");
}

/// The font of papers goes along with the page: with its licence, and without the name that is reserved for the original.
#[test]
fn the_font_may_be_passed_on() {
    let at = |name: &str| Path::new(env!("CARGO_MANIFEST_DIR")).join("style/font").join(name);
    let licence = std::fs::read_to_string(at("OFL.txt")).expect("the licence stands beside it");
    assert!(licence.contains("SIL OPEN FONT LICENSE Version 1.1") && licence.contains("Reserved Font Name \"Lato\""));
    let file = std::fs::read(at("papers.ttf")).expect("the font is there");
    assert!(file.len() < 300_000, "{} bytes", file.len());
    // Its names are written as UTF-16.
    let written = |words: &str| words.encode_utf16().flat_map(u16::to_be_bytes).collect::<Vec<u8>>();
    let says = |words: &str| file.windows(2 * words.len()).any(|part| part == written(words));
    assert!(says("Licensed under the SIL Open Font License, Version 1.1") && says("Snugfold Papers"));
    assert!(!says("Lato Regular") && !says("Lato-Regular"));
    let page = std::fs::read_to_string(at("../../index.html")).expect("the page");
    assert!(["papers.ttf", "OFL.txt"].iter().all(|name| page.contains(&format!("href=\"style/font/{name}\""))));
}
