//! A box off the grid, and what is added to it.

use crate::harness::journey;

#[test]
fn a_triangular_tube_with_a_window_is_made() {
    journey(async |page| {
        page.open("").await;
        page.press("millimeters").await;
        page.press("Choose another form").await;
        page.press("Triangular tube").await;
        // The example's box is too shallow for tucks on its sides, and the field says how deep it has to be.
        page.see("Type a length from 38.5 mm to 154 mm").await;
        page.fill("Depth", "60 mm").await;
        page.see("Mark these places, each from the left and from the top edge").await;
        page.see("no mark is further than").await;
        page.choose("Add", "Window").await;
        page.press("Add it").await;
        page.see("Pane from").await;
        page.fill("Width", "70 mm").await;
        page.choose("Add", "Label").await;
        page.press("Add it").await;
        page.press("Steps").await;
        page.see("Cut the window").await;
        page.see("Glue the label on").await;
        page.see("Score from mark to mark").await;
        page.press("The set").await;
        page.press("Undo").await;
        page.press("Steps").await;
        page.see_gone("Glue the label on").await;
        page.see("Cut the window").await;
    });
}

/// What cannot be is said in its place, and nothing else stops.
#[test]
fn a_window_too_large_for_its_face_is_said() {
    journey(async |page| {
        page.open("").await;
        page.press("millimeters").await;
        page.choose("Add", "Window").await;
        page.press("Add it").await;
        page.see("Pane from").await;
        page.js(
            "const all = [...document.querySelectorAll('label')].filter((l) => l.textContent === 'Width');
             const field = document.getElementById(all[all.length - 1].htmlFor);
             field.focus(); field.value = '300 mm';
             field.dispatchEvent(new Event('input', { bubbles: true }));
             field.dispatchEvent(new Event('change', { bubbles: true }));",
            Vec::new(),
        )
        .await;
        page.see("There is room for").await;
        page.see("make it smaller, or choose a larger face").await;
        page.press("Undo").await;
        page.see_gone("There is room for").await;
    });
}

/// A box with curved scores: its arcs are said, its bending is explained, its steps are there.
#[test]
fn a_pillow_box_is_made() {
    journey(async |page| {
        page.open("").await;
        page.press("millimeters").await;
        page.press("Choose another form").await;
        page.press("Pillow box").await;
        page.see("Along arcs of radius").await;
        page.see("its centre straight above").await;
        page.see("on the way the card bends").await;
        page.fill("Depth of the curves", "200 mm").await;
        // Of the 4 to 60 mm of the field this box leaves these.
        page.see("Type a length from 6.5 mm to 15 mm").await;
        page.press("Steps").await;
        page.see("Glue it flat, then open it and push the ends in").await;
    });
}
