//! What is kept on the page: the way back, many sets, the code of a link.

use crate::harness::journey;

#[test]
fn undo_survives_a_reload() {
    journey(async |page| {
        page.open("").await;
        page.see("Cut the blank 9 ×").await;
        page.fill("Width", "4\"").await;
        page.see("Cut the blank 11 ×").await;
        page.fill("Name of the set", "Two steps on").await;
        // Kept by itself after a moment.
        page.press("Saved & shared").await;
        page.see("Two steps on").await;
        page.reload().await;
        page.wait_js(
            "the steps back",
            "return [...document.querySelectorAll('button')].some((b) => b.innerText === 'Undo' && !b.disabled);",
        )
        .await;
        page.press("Undo").await;
        page.press("Undo").await;
        page.see("Cut the blank 9 ×").await;
        page.press("Redo").await;
        page.see("Cut the blank 11 ×").await;
    });
}

#[test]
fn many_sets_are_found_by_name_and_put_in_order() {
    journey(async |page| {
        page.open("").await;
        for name in ["Walnut", "Apple", "Medlar", "Quince"] {
            page.press("Saved & shared").await;
            page.press("Start a new set").await;
            page.press("The set").await;
            page.fill("Name of the set", name).await;
            page.press("Saved & shared").await;
            page.see(name).await;
        }
        page.press("by name").await;
        let order = "const all = document.body.innerText; return all.indexOf('Apple') < all.indexOf('Medlar')
            && all.indexOf('Quince') < all.indexOf('Walnut');";
        page.wait_js("sets by name", order).await;
        page.fill("Find by name", "quin").await;
        page.see_gone("Medlar").await;
        page.see("Quince").await;
        page.fill("Find by name", "plum").await;
        page.see("No saved set has this in its name.").await;
    });
}

#[test]
fn a_link_is_a_code_that_can_be_pointed_at() {
    journey(async |page| {
        page.open("").await;
        page.press("Saved & shared").await;
        page.press("Square code of the link").await;
        page.find("img", "Square code of the link").await;
    });
}
