//! From what goes in to a box that holds it.

use crate::harness::journey;
use snugfold::fit::odds::Accuracy;
use snugfold::make::slides::odds;
use snugfold::measure::length::Length;
use snugfold::measure::show::Figure;
use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::example::example;

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
        page.choose("Add a gift", "AA cell (IEC 60086-2)").await;
        page.press("Put it in").await;
        page.see("Thing 2").await;
        page.press("Undo").await;
        page.see_gone("Thing 2").await;
        page.press("Undo").await;
        page.see("do not go in").await;
    });
}

/// What is planned to be free along the example's row in millimetres, less the 0.5 mm that are.
fn wider() -> Figure {
    let project = example().expect("the example is a project");
    let plan = plan(&project, System::Metric);
    let holder = plan.holder.as_ref().expect("it has a holder");
    let odds = odds(&plan.boxes, holder, System::Metric, &Accuracy::usual(System::Metric)).expect("it is planned");
    Figure::of(odds.along.gap - Length::um(500), System::Metric)
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
        page.press("Forget what was learned").await;
        page.see_gone("Learned for this card").await;
        page.press("Just right").await;
        page.see("Then it stays as planned").await;
        // Key by key, as a hand types it: the gap that was planned stays the one of the design that was made.
        page.fill("Or measure what is free along the row", "0.5 mm").await;
        page.press("Learn from this gap").await;
        page.see(&format!("clearances are planned {} wider", wider())).await;
        page.press("Forget what was learned").await;
        page.see_gone("Learned for this card").await;
    });
}

/// A box too large for its sheet is made of two pieces, stands sideways, and its card is described as on its packet.
#[test]
fn a_large_box_is_joined_from_two_pieces() {
    journey(async |page| {
        page.open("").await;
        page.fill("Height", "6").await;
        page.fill("Width", "5").await;
        page.see("In two pieces with a joint its blank comes out of the sheets").await;
        page.choose("Blank", "in two pieces, with a joint").await;
        page.see_gone("does not come out of a sheet").await;
        page.see("Piece 2").await;
        page.choose("What looks forward in the holder", "left side").await;
        page.press("Kraft card").await;
        page.fill("Weight", "heavy").await;
        page.see("Type a weight such as 216").await;
        page.fill("Weight", "110 lb").await;
        page.choose("Pieces on the sheet", "scores along the grain, which runs up the sheet").await;
        page.press("Steps").await;
        page.see("Glue the two pieces together, flat").await;
        page.see("left side forward").await;
        // All of it is in the address.
        page.reload().await;
        page.press("The set").await;
        page.press("Kraft card").await;
        assert_eq!(page.value("Weight").await, "110 lb");
    });
}

const INSIDE: &str = "return [...document.querySelectorAll('tr')].some((row) => \
    [...row.cells].map((c) => c.textContent).join(' ') === 'True inside, at least 85.7 mm 85.7 mm 98.4 mm')";
