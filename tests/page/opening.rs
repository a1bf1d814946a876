//! The first sight of the page.

use crate::harness::journey;

#[test]
fn the_page_opens_and_shows_its_name() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        page.see_gone("Laying out the paper").await;
        assert_eq!(page.driver.title().await.ok().as_deref(), Some("Snugfold"));
    });
}

/// Before the program has come there is the worked example to be seen, drawn by the same code; whoever has a design of
/// their own is not shown it, and later there is only what the program draws.
#[test]
fn the_example_is_seen_before_the_program_has_come() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        let seen = "const text = new XMLHttpRequest(); text.open('GET', './', false); text.send();
            const page = new DOMParser().parseFromString(text.responseText, 'text/html');
            const svg = page.querySelector('#loading #sight svg');
            return [svg?.getAttribute('aria-label') ?? '', svg?.querySelectorAll('path.card').length ?? 0,
                document.querySelectorAll('#sight').length]";
        let (title, panels, left): (String, usize, usize) =
            serde_json::from_value(page.js(seen, Vec::new()).await).expect("what is seen");
        assert_eq!((title.as_str(), left), ("Thanks to the neighbours", 0));
        assert!(panels > 20, "{panels} panels are drawn");
    });
}

#[test]
fn the_page_never_scrolls_sideways() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        for (width, height) in [(1180, 820), (820, 1180), (390, 844), (320, 640)] {
            page.size(width, height).await;
            page.wait_js(
                &format!("a page of {width} pixels without sideways scroll"),
                "const page = document.scrollingElement;
                 return page.scrollWidth <= page.clientWidth;",
            )
            .await;
        }
    });
}
