//! Keeps the screen awake while the large steps are open, and says whether it could.

use std::cell::{Cell, RefCell};

use super::heard::Heard;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

thread_local! {
    static HELD: RefCell<Option<JsValue>> = const { RefCell::new(None) };
    static WANTED: Cell<bool> = const { Cell::new(false) };
    static LISTENING: Cell<bool> = const { Cell::new(false) };
    static STATE: Heard<Option<bool>> = Heard::new(None);
}

/// Asks the browser to keep the screen on, and asks again whenever the page comes back.
pub fn keep() {
    WANTED.set(true);
    if !LISTENING.replace(true) {
        let back = Closure::<dyn FnMut()>::new(|| {
            if WANTED.get() && !document().hidden() {
                ask();
            }
        });
        let listener = back.as_ref().unchecked_ref();
        let _ = document().add_event_listener_with_callback("visibilitychange", listener);
        back.forget();
    }
    ask();
}

/// Whether the screen stays on, nothing until the browser has answered; followed.
#[must_use]
pub fn awake() -> Option<bool> {
    STATE.with(Heard::get)
}

/// Lets the screen go dark again.
pub fn release() {
    WANTED.set(false);
    if let Some(held) = HELD.take() {
        let_go(&held);
    }
}

/// Calls a method that answers later; none where the object has no such method. (The typed binding is not stable.)
fn call(object: &JsValue, method: &str, argument: &JsValue) -> Option<js_sys::Promise> {
    let method: js_sys::Function = js_sys::Reflect::get(object, &method.into()).ok()?.dyn_into().ok()?;
    method.call1(object, argument).ok()?.dyn_into().ok()
}

fn let_go(held: &JsValue) {
    if let Some(released) = call(held, "release", &JsValue::UNDEFINED) {
        leptos::task::spawn_local(async move {
            let _ = JsFuture::from(released).await;
        });
    }
}

fn ask() {
    // Not every browser has it, and none gives it on a plain http address.
    let lock = js_sys::Reflect::get(&window().navigator(), &"wakeLock".into()).unwrap_or_default();
    let Some(asked) = (if lock.is_object() { call(&lock, "request", &"screen".into()) } else { None }) else {
        tell(false);
        return;
    };
    leptos::task::spawn_local(async move {
        match JsFuture::from(asked).await {
            Ok(held) if WANTED.get() => {
                HELD.set(Some(held));
                tell(true);
            }
            Ok(held) => let_go(&held),
            Err(_) => tell(false),
        }
    });
}

fn tell(awake: bool) {
    STATE.with(|s| s.set(Some(awake)));
}
