//! When the program stops, the maker is told, and can save the design.

use crate::harness::journey;
use serde_json::json;

const HEADLINE: &str = "The page has stopped";

#[test]
fn the_design_can_be_saved_when_the_program_stops() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        assert!(!page.shows(HEADLINE).await);
        let design = r#"{"name":"Été ¼ in"}"#;
        page.js("localStorage.setItem('/snugfold:current', arguments[0])", vec![json!(design)]).await;
        page.stop().await;
        page.see(HEADLINE).await;
        page.press("Save this design as a file").await;
        let saved = page.downloaded("design.snugfold.json").await;
        assert_eq!(String::from_utf8_lossy(&saved), design);
    });
}

#[test]
fn where_the_design_is_gone_by_then_the_button_says_so() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        page.js("localStorage.setItem('/snugfold:current', '{}')", Vec::new()).await;
        page.stop().await;
        page.see(HEADLINE).await;
        page.js("localStorage.clear()", Vec::new()).await;
        page.press("Save this design as a file").await;
        page.see("There is no design kept on this device yet").await;
    });
}

/// A first visitor has nothing to save.
#[test]
fn without_a_design_nobody_is_told_to_save_one() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        page.js("localStorage.clear()", Vec::new()).await;
        page.stop().await;
        page.see(HEADLINE).await;
        page.find("button", "Load the page again").await;
        for words in ["Save your design", "Save this design"] {
            assert!(!page.shows(words).await, "{words}");
        }
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
