//! What the browser says about itself and the maker, and what the page says about itself.

use std::rc::Rc;

use leptos::prelude::*;

use wasm_bindgen::prelude::*;

use super::keys;
use crate::make::pace::Pace;
use crate::say::hand::Hand;
use crate::say::spelling::Spelling;

/// Under which the chosen spelling is kept.
const SPELLING: &str = "snugfold:spelling";
/// Under which it is kept for which hand the work is told.
const HAND: &str = "snugfold:hand";

/// Under which it is kept how quick the maker's hands are.
const PACE: &str = "snugfold:pace";

/// What was chosen on this device before.
fn kept(what: &str) -> Option<String> {
    keys::storage().and_then(|s| s.get_item(&keys::key(what)).ok().flatten())
}

/// Keeps what is chosen on this device.
fn keep(what: &str, chosen: &str) {
    if let Some(storage) = keys::storage() {
        // Where nothing can be kept, it lasts as long as the page is open.
        let _ = storage.set_item(&keys::key(what), chosen);
    }
}

/// The hand that the work was told for on this device before.
#[must_use]
pub fn hand() -> Hand {
    if kept(HAND).is_some_and(|h| h == "left") { Hand::Left } else { Hand::Right }
}

/// Keeps for which hand the work is told.
pub fn keep_hand(hand: Hand) {
    keep(HAND, if hand == Hand::Left { "left" } else { "right" });
}

/// How quick the maker's hands were on this device before.
#[must_use]
pub fn pace() -> Pace {
    kept(PACE).map_or_else(Pace::default, |kept| Pace::read(&kept))
}

/// Keeps how quick the maker's hands are.
pub fn keep_pace(pace: &Pace) {
    keep(PACE, &pace.write());
}

/// Opens the browser's own print.
pub fn print() {
    // Where there is no printer to be asked for, the page stays as it is.
    let _ = window().print();
}

/// The spelling that was chosen on this device before, or else that of the browser's language.
#[must_use]
pub fn spelling() -> Spelling {
    let language = kept(SPELLING).or_else(|| window().navigator().language());
    language.map_or_else(Spelling::default, |l| Spelling::of_language(&l))
}

/// Keeps the chosen spelling on this device.
pub fn keep_spelling(spelling: Spelling) {
    keep(SPELLING, spelling.language());
}

/// How wide the window is, in its pixels.
#[must_use]
pub fn width() -> i32 {
    document().document_element().map_or(0, |e| e.client_width())
}

/// Puts the focus on the control with this name once it is on the page.
pub fn focus(id: String) {
    request_animation_frame(move || {
        let found = document().get_element_by_id(&id).and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok());
        if let Some(element) = found {
            let _ = element.focus();
        }
    });
}

/// Puts the focus on the control with this name; false where there is none.
#[must_use]
pub fn focus_now(id: &str) -> bool {
    let found = document().get_element_by_id(id).and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok());
    found.is_some_and(|element| element.focus().is_ok())
}

/// Scrolls no further than needed to show the control with this name, once it is on the page.
pub fn reveal(id: String) {
    request_animation_frame(move || {
        if let Some(element) = document().get_element_by_id(&id) {
            let options = web_sys::ScrollIntoViewOptions::new();
            options.set_block(web_sys::ScrollLogicalPosition::Nearest);
            element.scroll_into_view_with_scroll_into_view_options(&options);
        }
    });
}

/// All words in `within`, but for those in `besides`, places as style sheets name them; what stands in elements of its
/// own is parted by a space.
#[must_use]
pub fn text(within: &str, besides: &str) -> String {
    let mut all = String::new();
    if let Ok(Some(root)) = document().query_selector(within) {
        gather(&root, besides, &mut all);
    }
    all
}

fn gather(node: &web_sys::Node, besides: &str, all: &mut String) {
    if node.node_type() == web_sys::Node::TEXT_NODE {
        all.push_str(&node.text_content().unwrap_or_default());
        all.push(' ');
        return;
    }
    if node.dyn_ref::<web_sys::Element>().is_some_and(|e| e.matches(besides).unwrap_or(false)) {
        return;
    }
    let inside = node.child_nodes();
    for child in (0..inside.length()).filter_map(|nth| inside.get(nth)) {
        gather(&child, besides, all);
    }
}

/// Scrolls to the top of the page.
pub fn to_top() {
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Whether there is room for the recipe beside the fields.
#[must_use]
pub fn is_wide() -> bool {
    let asked = window().match_media("(min-width: 62rem)");
    asked.ok().flatten().is_some_and(|m| m.matches())
}

/// In small letters, by the browser: the tables of all the world's letters are there already.
#[must_use]
pub fn lower(text: &str) -> String {
    String::from(js_sys::JsString::from(text).to_lower_case())
}

/// Says which language the page is in.
pub fn set_language(language: &str) {
    if let Some(root) = document().document_element() {
        // A page without an attribute is no reason to stop.
        let _ = root.set_attribute("lang", language);
    }
}

/// Calls `then` whenever the page goes out of sight or is left: the last moments at which something can be kept.
pub fn on_hide(then: impl Fn() + 'static) {
    let then = Rc::new(then);
    let left = then.clone();
    on(&document(), "visibilitychange", move |_| {
        if document().hidden() {
            then();
        }
    });
    on(&window(), "pagehide", move |_| left());
}

/// Calls `then` whenever the page comes to sight again.
pub fn on_return(then: impl Fn() + 'static) {
    on(&document(), "visibilitychange", move |_| {
        if !document().hidden() {
            then();
        }
    });
}

/// Calls `then` whenever another window has changed what this browser keeps for this host.
pub fn on_kept_elsewhere(then: impl Fn() + 'static) {
    on(&window(), "storage", move |_| then());
}

/// Has the browser ask before the page is left, while `so` holds.
pub fn ask_before_leaving(so: impl Fn() -> bool + 'static) {
    on(&window(), "beforeunload", move |event| {
        if so() {
            event.prevent_default();
        }
    });
}

/// Listens for as long as the page is there.
fn on(to: &web_sys::EventTarget, event: &str, does: impl Fn(web_sys::Event) + 'static) {
    let does = Closure::<dyn Fn(web_sys::Event)>::new(does);
    let _ = to.add_event_listener_with_callback(event, does.as_ref().unchecked_ref());
    does.forget();
}

/// Calls `then` once the page is looked at: at once, or when its tab comes to the front. A page behind other tabs draws no
/// frames, so what begins there stays halfway.
pub fn once_seen(then: impl FnOnce() + 'static) {
    if !document().hidden() {
        then();
        return;
    }
    let waiting = std::cell::Cell::new(Some(then));
    let shown = Closure::<dyn FnMut()>::new(move || {
        if !document().hidden()
            && let Some(then) = waiting.take()
        {
            then();
        }
    });
    let _ = document().add_event_listener_with_callback("visibilitychange", shown.as_ref().unchecked_ref());
    shown.forget();
}

/// Calls `then` whenever another address of this page is opened in it, such as a link that was pasted over the last one.
pub fn on_new_address(then: impl Fn() + 'static) {
    let changed = Closure::<dyn FnMut()>::new(then);
    let _ = window().add_event_listener_with_callback("hashchange", changed.as_ref().unchecked_ref());
    changed.forget();
}
