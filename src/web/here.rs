//! What the browser says about itself and the maker, and what the page says about itself.

use leptos::prelude::*;

use wasm_bindgen::prelude::*;

use crate::say::spelling::Spelling;

/// The spelling of the browser's language.
#[must_use]
pub fn spelling() -> Spelling {
    window()
        .navigator()
        .language()
        .map_or_else(Spelling::default, |l| Spelling::of_language(&l))
}

/// Whether there is room for the recipe beside the fields.
#[must_use]
pub fn is_wide() -> bool {
    let asked = window().match_media("(min-width: 62rem)");
    asked.ok().flatten().is_some_and(|m| m.matches())
}

/// Says which language the page is in.
pub fn set_language(language: &str) {
    if let Some(root) = document().document_element() {
        // A page without an attribute is no reason to stop.
        let _ = root.set_attribute("lang", language);
    }
}

/// Calls `then` whenever the page goes out of sight: the last moment at which something can be kept for certain.
pub fn on_hide(then: impl Fn() + 'static) {
    let hidden = Closure::<dyn FnMut()>::new(move || {
        if document().hidden() {
            then();
        }
    });
    let listener = hidden.as_ref().unchecked_ref();
    let _ = document().add_event_listener_with_callback("visibilitychange", listener);
    hidden.forget();
}
