//! The clipboard.

use leptos::prelude::*;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// Whether a text was copied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Copied {
    /// It is on the clipboard.
    Yes,
    /// The browser did not let the page.
    No,
}

/// Copies `text`, and calls `then` with what came of it.
pub fn copy(text: &str, then: impl FnOnce(Copied) + 'static) {
    let navigator = window().navigator();
    // No browser has it on a plain http address.
    let there = js_sys::Reflect::get(&navigator, &JsValue::from_str("clipboard")).is_ok_and(|c| c.is_object());
    if !there {
        then(Copied::No);
        return;
    }
    let copying = navigator.clipboard().write_text(text);
    leptos::task::spawn_local(async move {
        let done = JsFuture::from(copying).await.is_ok();
        then(if done { Copied::Yes } else { Copied::No });
    });
}
