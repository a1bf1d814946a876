//! Pictures of the page, for a look at it: `cargo xtask shot`.

use crate::harness::journey;
use serde_json::json;
use std::path::PathBuf;

fn wish(name: &str) -> Option<String> {
    std::env::var(format!("SNUGFOLD_SHOT{name}")).ok().filter(|value| !value.is_empty())
}

#[test]
#[ignore = "makes a picture where `cargo xtask shot` tells it to"]
fn shot() {
    let out = PathBuf::from(wish("").expect("SNUGFOLD_SHOT names the picture"));
    let size = wish("_SIZE").unwrap_or_else(|| "1180x820".to_owned());
    let (width, height) = size
        .split_once('x')
        .and_then(|(width, height)| Some((width.parse().ok()?, height.parse().ok()?)))
        .expect("a size such as 1180x820");
    journey(async |page| {
        page.expect_errors();
        page.size(width, height).await;
        if wish("_DARK").is_some() {
            let dark = json!([{ "name": "prefers-color-scheme", "value": "dark" }]);
            page.cdp("Emulation.setEmulatedMedia", json!({ "features": dark })).await;
        }
        let fragment = wish("_FRAGMENT").map(|text| format!("#{}", text.trim_start_matches('#')));
        page.open(&fragment.unwrap_or_default()).await;
        page.wait_js("the page", "return document.getElementById('app').hasChildNodes()").await;
        for words in wish("_CLICKS").unwrap_or_default().lines() {
            page.press(words).await;
        }
        if wish("_PAPER").is_some() {
            page.cdp("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
        }
        // Two frames: what the last click changed has been drawn.
        page.js_async("await new Promise((f) => requestAnimationFrame(() => requestAnimationFrame(f)))").await;
        if wish("_FULL").is_some() {
            let tall = page.js("return document.documentElement.scrollHeight", Vec::new()).await;
            let tall = tall.as_u64().and_then(|tall| u32::try_from(tall).ok());
            page.size(width, tall.unwrap_or(height).max(height)).await;
        }
        page.driver.screenshot(&out).await.expect("the picture is written");
        for error in page.errors().await {
            println!("the browser complains: {error}");
        }
    });
}
