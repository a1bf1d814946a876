//! One page at a time at the saved sets, where the browser has locks (Web Locks API).
//!
//! Every state of a set has a key of its own, so that two pages lose nothing without locks either; with them the later
//! page sees what the earlier one wrote before it writes its own.

use std::cell::RefCell;
use std::rc::Rc;

use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

use super::keys;

/// Runs `then` while no other page of this folder does; at once where the browser has no locks or gives none.
pub fn alone(then: impl FnOnce() + 'static) {
    let kept = Rc::new(RefCell::new(Some(then)));
    let run = move || {
        if let Some(then) = kept.take() {
            then();
        }
    };
    let locked = run.clone();
    let Some(asked) = request(&Closure::once_into_js(locked)) else {
        run();
        return;
    };
    wasm_bindgen_futures::spawn_local(async move {
        // It is granted and over, or refused: then it is done without.
        let _ = JsFuture::from(asked).await;
        run();
    });
}

/// Asks for the lock; nothing where the browser has none, as on a plain http address.
fn request(then: &JsValue) -> Option<js_sys::Promise> {
    let locks = js_sys::Reflect::get(&window().navigator(), &"locks".into()).ok()?;
    let request: js_sys::Function = js_sys::Reflect::get(&locks, &"request".into()).ok()?.dyn_into().ok()?;
    request.call2(&locks, &keys::key("saving").into(), then).ok()?.dyn_into().ok()
}
