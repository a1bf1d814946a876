//! Fields that go while they are typed into: taken back by a key or a button, with a text that was refused or half typed.
//! The page goes on.

use crate::harness::{Page, journey};
use thirtyfour::prelude::*;

/// The step back and the step forward, as keys.
const BACK: &str = "z";
const FORTH: &str = "Z";

/// Puts the focus into a field and types over what is there, and stays.
async fn type_into(page: &Page, label: &str, text: &str) {
    let field = page.find("field", label).await;
    page.js("arguments[0].scrollIntoView({ block: 'center' });", vec![field.to_json().expect("a field")]).await;
    field.click().await.expect("the field can be reached");
    field.send_keys(Key::Control + "a").await.expect("typing");
    field.send_keys(text).await.expect("typing");
}

async fn focus(page: &Page, label: &str) {
    let field = page.find("field", label).await;
    page.js("arguments[0].scrollIntoView({ block: 'center' });", vec![field.to_json().expect("a field")]).await;
    field.click().await.expect("the field can be reached");
}

async fn key(page: &Page, key: &str) {
    page.type_keys(Key::Control + key).await;
}

/// How many boxes are in the list.
async fn boxes(page: &Page) -> u64 {
    let script = "const list = [...document.querySelectorAll('section')].find((s) => s.ariaLabel === 'Boxes');
        return list.querySelectorAll('article').length";
    page.js(script, Vec::new()).await.as_u64().expect("a number")
}

/// Nothing has stopped, not even a while later, and what is typed next is taken and kept.
async fn goes_on(page: &Page) {
    page.js_async("await new Promise((then) => setTimeout(then, 800));").await;
    assert!(!page.shows("The page has stopped").await);
    page.fill("Name of the set", "And on it goes").await;
    page.press("Saved & shared").await;
    page.see("And on it goes").await;
}

/// `begin` makes something new to type into; its first step back takes it away.
async fn taken_back(page: &Page, begin: &str, label: &str, text: &str, by_key: bool) {
    page.open("").await;
    page.see("Cut the blank 9 ×").await;
    let before = page.text().await;
    page.press(begin).await;
    page.wait("something new", async || (page.text().await != before).then_some(())).await;
    type_into(page, label, text).await;
    // What was half typed may have been whole on its way: then the first step takes that back.
    for _ in 0..4 {
        if by_key {
            key(page, BACK).await;
        } else if page
            .js(
                "return ![...document.querySelectorAll('button')].find((b) => b.innerText === 'Undo').disabled",
                Vec::new(),
            )
            .await
            == true
        {
            page.press("Undo").await;
        }
        page.js_async("await new Promise(requestAnimationFrame); await new Promise(requestAnimationFrame);").await;
    }
    goes_on(page).await;
}

#[test]
fn an_added_box_goes_with_a_refused_width() {
    journey(async |page| taken_back(page, "Add a box", "Width", "x", true).await);
}

#[test]
fn an_added_box_goes_with_a_half_typed_width() {
    journey(async |page| taken_back(page, "Add a box", "Width", "4 1/", true).await);
}

#[test]
fn an_added_box_goes_by_the_button() {
    journey(async |page| taken_back(page, "Add a box", "Height", "9999 in", false).await);
}

#[test]
fn a_doubled_box_goes_with_a_refused_depth() {
    journey(async |page| taken_back(page, "Duplicate", "Depth", "-", true).await);
}

#[test]
fn a_doubled_box_goes_by_the_button_with_a_half_typed_width() {
    journey(async |page| taken_back(page, "Duplicate", "Width", "4 1/", false).await);
}

#[test]
fn an_added_card_goes_with_a_refused_thickness() {
    journey(async |page| taken_back(page, "Add a card", "Thickness, measured", "thick", true).await);
}

#[test]
fn an_added_box_goes_while_nothing_was_typed() {
    journey(async |page| {
        page.open("").await;
        page.see("Cut the blank 9 ×").await;
        let before = boxes(page).await;
        page.press("Add a box").await;
        page.wait("a box more", async || (boxes(page).await == before + 1).then_some(())).await;
        focus(page, "Width").await;
        key(page, BACK).await;
        page.wait("a box less", async || (boxes(page).await == before).then_some(())).await;
        goes_on(page).await;
    });
}

#[test]
fn a_removed_box_goes_again_with_the_focus_in_it() {
    journey(async |page| {
        page.open("").await;
        page.see("Cut the blank 9 ×").await;
        let before = boxes(page).await;
        let first = page.text().await;
        assert!(first.contains("Linden tea"), "{first}");
        page.press("Remove").await;
        page.wait("a box less", async || (boxes(page).await == before - 1).then_some(())).await;
        page.press("Undo").await;
        page.wait("all boxes", async || (boxes(page).await == before).then_some(())).await;
        page.press("Linden tea").await;
        focus(page, "Width").await;
        key(page, FORTH).await;
        page.wait("a box less", async || (boxes(page).await == before - 1).then_some(())).await;
        goes_on(page).await;
    });
}

/// A part of the walk that is left while a field of it is being typed into.
#[test]
fn another_part_of_the_walk_is_opened_with_a_half_typed_text() {
    journey(async |page| {
        page.open("").await;
        page.see("Cut the blank 9 ×").await;
        for text in ["x", "4 1/", "4"] {
            type_into(page, "Width", text).await;
            page.press("Sheets").await;
            page.press("The set").await;
            page.find("field", "Width").await;
        }
        goes_on(page).await;
    });
}

/// What had the focus is gone with the box: the next key is heard all the same.
#[test]
fn keys_go_on_when_the_field_with_the_focus_is_gone() {
    journey(async |page| {
        page.open("").await;
        page.see("Cut the blank 9 ×").await;
        let before = boxes(page).await;
        page.press("Add a box").await;
        page.wait("another box", async || (boxes(page).await == before + 1).then_some(())).await;
        focus(page, "Width").await;
        key(page, BACK).await;
        page.wait("the box to go", async || (boxes(page).await == before).then_some(())).await;
        // No element has the focus that a driver could type into.
        let keys = page.driver.action_chain().key_down(Key::Control).send_keys(FORTH).key_up(Key::Control);
        keys.perform().await.expect("typing");
        page.wait("the box to come back", async || (boxes(page).await == before + 1).then_some(())).await;
        goes_on(page).await;
    });
}
