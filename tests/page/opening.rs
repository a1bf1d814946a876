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
