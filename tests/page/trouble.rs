//! When the program stops, the maker is told, and can save the design.

use crate::harness::{dist, journey, journey_through};
use serde_json::json;
use std::fs;
use std::path::Path;
use xtask::site::Shelf;

const HEADLINE: &str = "The page has stopped";

#[test]
fn the_design_can_be_saved_when_the_program_stops() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        assert!(!page.shows(HEADLINE).await);
        let design = r#"{"name":"Été ¼ in"}"#;
        page.stop().await;
        page.js("localStorage.setItem('/snugfold:current', arguments[0])", vec![json!(design)]).await;
        page.see(HEADLINE).await;
        page.press("Save this design as a file").await;
        let saved = page.downloaded("design.snugfold.json").await;
        assert_eq!(String::from_utf8_lossy(&saved), design);
    });
}

#[test]
fn without_a_design_the_button_says_so() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        page.stop().await;
        page.js("localStorage.clear()", Vec::new()).await;
        page.press("Save this design as a file").await;
        page.see("There is no design kept on this device yet").await;
    });
}

#[test]
fn what_a_browser_says_no_to_is_no_trouble() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        page.js(
            "dispatchEvent(new ErrorEvent('error', { message: 'ResizeObserver loop' }));
             const reason = new DOMException('no', 'NotAllowedError');
             const promise = Promise.resolve();
             dispatchEvent(new PromiseRejectionEvent('unhandledrejection', { promise, reason }));",
            Vec::new(),
        )
        .await;
        assert!(!page.shows(HEADLINE).await);
    });
}

#[test]
fn a_program_that_does_not_come_is_trouble() {
    let without = |scratch: &Path| {
        let files = scratch.join("site");
        crate::offline::copy(&dist(), &files);
        for entry in fs::read_dir(&files).expect("the copy").flatten() {
            if entry.path().extension().is_some_and(|end| end == "wasm") {
                fs::remove_file(entry.path()).expect("the program goes");
            }
        }
        let at = "/".to_owned();
        vec![Shelf { at, files }]
    };
    journey_through(without, async |page| {
        page.expect_errors();
        page.open("").await;
        page.see(HEADLINE).await;
        page.see_gone("Laying out the paper").await;
        page.find("button", "Load the page again").await;
    });
}
