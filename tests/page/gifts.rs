//! From what goes in to a box that holds it.

use crate::harness::journey;

#[test]
fn a_box_takes_its_size_from_what_goes_in() {
    journey(async |page| {
        page.open("").await;
        page.press("millimeters").await;
        page.press("Put it in").await;
        page.see("Thing 1").await;
        page.choose("Shape", "cylinder or disc").await;
        page.fill("Diameter", "82 mm").await;
        page.fill("Height", "95 mm").await;
        // The box has the example's sizes, and a mug does not go into it.
        page.see("do not go in").await;
        page.press("Take the sizes from what goes in").await;
        page.see_gone("do not go in").await;
        // 82 and 95 mm with 3 mm of room, in card of 0.3 mm, on grooves of 1 mm: 86 − 0.3 and 99 − 2 × 0.3 mm.
        page.wait_js("the inside that follows from the mug", INSIDE).await;
        // One more kind, a standard thing, and away again; undo brings the sizes back.
        page.choose("Next thing", "AA cell (IEC 60086-2)").await;
        page.press("Put it in").await;
        page.see("Thing 2").await;
        page.press("Undo").await;
        page.see_gone("Thing 2").await;
        page.press("Undo").await;
        page.see("do not go in").await;
    });
}

#[test]
fn the_rest_follows_and_says_what_it_was() {
    journey(async |page| {
        page.open("").await;
        page.press("millimeters").await;
        page.press("As large as the sheet, in proportion").await;
        // Box and holder are higher now, and say what they were.
        page.wait_js("two lines that changed", "return document.querySelectorAll('.entry .was').length === 2").await;
        page.press("Undo").await;
        page.wait_js("none of them", "return document.querySelectorAll('.entry .was').length === 0").await;
        page.press("Open-top holder").await;
        page.press("Too tight").await;
        page.see("clearances are planned 0.8 mm wider").await;
        page.fill("Or measure what is free along the row", "0.5 mm").await;
        page.see_gone("clearances are planned 0.8 mm wider").await;
        page.see("Learned for this card").await;
        page.press("Forget what was learned").await;
        page.see_gone("Learned for this card").await;
    });
}

const INSIDE: &str = "return [...document.querySelectorAll('tr')].some((row) => \
    [...row.cells].map((c) => c.textContent).join(' ') === 'True inside, at least 85.7 mm 85.7 mm 98.4 mm')";
