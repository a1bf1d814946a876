//! The plan that `examples/plan.rs` prints: the arithmetic of common practice, and the files beside it.
#![cfg(not(target_arch = "wasm32"))]

use std::io::Write;
use std::process::{Command, Output, Stdio};

use serde_json::Value;
use snugfold::keep::file;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::plan::{Plan, plan};

/// Lengths in sixteenths of an inch.
fn inches(sixteenths: &[i64]) -> Vec<Length> {
    sixteenths.iter().map(|&n| Length::inches(n, 16)).collect()
}

fn planned(text: &str) -> Plan {
    let sets = file::read(text.as_bytes()).expect("it is a design");
    plan(&sets[0].project, sets[0].project.system)
}

/// A tuck-top box of finished size W 3, D 1¼, H 5 in, tab and tuck ½ in, with mats of reveal ⅛ in, comes from a 9 × 8 in
/// blank (arithmetic of common practice, no source).
#[test]
fn a_tuck_top_box_is_what_common_practice_says() {
    let plan = planned(
        r#"{
            "cards": [
                { "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "12 in", "sheet_height": "12 in" },
                { "id": 2, "grammage": 120, "thickness": "0.15 mm", "sheet_width": "12 in", "sheet_height": "12 in" }
            ],
            "boxes": [{
                "id": 1, "form": "tuck-box", "card": 1,
                "inputs": { "width": "3 in", "depth": "1 1/4 in", "height": "5 in", "tab": "1/2 in", "tuck": "1/2 in" },
                "mats": { "card": 2, "reveal": "1/8 in" }
            }]
        }"#,
    );
    assert!(plan.findings.is_empty(), "{:?}", plan.findings);
    let recipe = &plan.boxes[0].recipes[0];
    let blank = (recipe.width, recipe.height);
    assert_eq!(blank, (Length::inches(9, 1), Length::inches(8, 1)));
    // 1¼, 4¼, 5½, 8½ along the one side; ½, 1¾, 6¾ along the other.
    assert_eq!(recipe.scores[0].at, inches(&[20, 68, 88, 136]));
    assert_eq!(recipe.scores[1].at, inches(&[8, 28, 108]));
    // Two of 2¾ × 4¾, two of 1 × 4¾, one of 1 × 2¾.
    let mut mats: Vec<_> = plan
        .pieces
        .iter()
        .filter(|p| p.card == 2)
        .map(|p| (p.width.min(p.height), p.width.max(p.height), p.count))
        .collect();
    mats.sort();
    let mat = |a, b, count| (Length::inches(a, 16), Length::inches(b, 16), count);
    assert_eq!(mats, [mat(16, 44, 1), mat(16, 76, 2), mat(44, 76, 2)]);
}

#[test]
fn the_smallest_request_is_planned() {
    let text = std::fs::read_to_string("examples/minimal.json").expect("it is there");
    for system in System::ALL {
        let sets = file::read(text.as_bytes()).expect("it is a design");
        let plan = plan(&sets[0].project, system);
        assert!(!plan.stopped() && plan.boxes.len() == 1 && plan.sheets[0].layout.sheets() == 1);
    }
}

/// Runs the example, which `cargo test` builds beside this test.
fn run(args: &[&str], input: &[u8]) -> Output {
    let test = std::env::current_exe().expect("this test has a place");
    let target = test.ancestors().nth(2).expect("target/…/deps/test");
    let mut child = Command::new(target.join("examples").join("plan"))
        .args(args)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the example is built");
    let mut stdin = child.stdin.take().expect("it reads");
    // It may have said no before it has read all.
    let _ = stdin.write_all(input);
    drop(stdin);
    child.wait_with_output().expect("it ends")
}

#[test]
fn the_example_prints_the_plan() {
    let out = run(&["examples/minimal.json"], b"");
    assert_eq!(out.status.code(), Some(0));
    let plan: Value = serde_json::from_slice(&out.stdout).expect("it is JSON");
    let blank = &plan["parts"][0]["blanks"][0];
    assert_eq!(blank["size"]["width"]["um"], 228_600);
    assert_eq!(blank["size"]["height"]["text"], "8 in");
    assert_eq!(blank["scores"][0]["at"][1]["text"], "4 1/4 in");
    assert_eq!(plan["sheets"][0]["count"], 1);
    assert_eq!(plan["stopped"], false);
    let text = std::fs::read("src/project/example.json").expect("it is there");
    let metric = run(&["-", "--system", "metric"], &text);
    let plan: Value = serde_json::from_slice(&metric.stdout).expect("it is JSON");
    assert_eq!(plan["system"], "metric");
    assert_eq!(plan["parts"].as_array().map(Vec::len), Some(4));
}

#[test]
fn what_cannot_be_read_is_said_with_a_code() {
    let check = |args: &[&str], input: &[u8], code, word: &str| {
        let out = run(args, input);
        let said = String::from_utf8_lossy(&out.stderr).into_owned();
        assert_eq!((out.status.code(), out.stdout.len()), (Some(code), 0), "{said}");
        assert!(said.contains(word), "{said}");
    };
    check(&["-"], b"", 1, "empty");
    check(&["-"], b"{\"cards\": [", 1, "ends in the middle");
    check(&["-"], b"{\"snugfold\": 9, \"project\": {}}", 1, "newer Snugfold");
    check(&["no such file"], b"", 1, "no such file");
    check(&["-", "--system", "ell"], b"", 2, "“ell” is no system");
    check(&[], b"", 2, "usage");
    check(&["--sistem"], b"", 2, "there is no --sistem");
}
