//! The only room that knows the browser.

pub mod guard;
pub mod heard;
pub mod files;
pub mod font;
pub mod forms;
pub mod here;
pub mod keys;
pub mod last;
pub mod picture;
pub mod link;
pub mod locks;
pub mod motion;
pub mod share;
pub mod offline;
pub mod storage;
pub mod store;
pub mod trouble;
pub mod wake;

use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Lets something be put where the page keeps its place for it, instead of the loading note.
pub fn mount(put: impl FnOnce(&web_sys::Node) + 'static) {
    let page = document();
    if let Some(place) = page.get_element_by_id("app") {
        let on = place.clone();
        // It starts what follows signals; what is put there is ours (`ui/placed.rs`).
        leptos::mount::mount_to(place.unchecked_into(), move || put(&on)).forget();
    }
    if let Some(note) = page.get_element_by_id("loading") {
        note.remove();
    }
}

/// Runs once the page has been drawn for the first time: in the frame after the one that
/// shows it, so that whatever a broken design breaks has broken before.
pub fn after_first_render(then: impl FnOnce() + 'static) {
    request_animation_frame(|| request_animation_frame(then));
}
