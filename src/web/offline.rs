//! The page without a network, and its newer versions.
//!
//! The service worker (`style/offline.js`) keeps every file of this version. A newer one
//! is fetched in the background and waits: only the maker's tap ([`apply_update`]) puts it
//! in charge, so that nothing changes in the middle of a class.

use super::heard::Heard;
use leptos::prelude::*;
use std::cell::RefCell;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerState};

/// How far the page has come to need no network.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Offline {
    /// This browser or address can't keep the page (a plain `http:` address, say).
    Never,
    /// Being fetched.
    Preparing,
    /// Opens without a network from now on.
    Ready,
}

thread_local! {
    static STATE: Heard<Offline> = Heard::new(Offline::Preparing);
    static NEWER: Heard<bool> = Heard::new(false);
    static REGISTRATION: RefCell<Option<ServiceWorkerRegistration>> = const { RefCell::new(None) };
}

/// Whether the page opens without a network; followed.
#[must_use]
pub fn state() -> Offline {
    STATE.with(Heard::get)
}

/// Whether a newer version is here and waits for the maker's tap; followed.
#[must_use]
pub fn update_ready() -> bool {
    NEWER.with(Heard::get)
}

/// Begins to keep the page and to look out for newer versions. To be called once, after
/// the page is drawn, so as not to compete with it.
pub fn start() {
    // A page under development must show its last build, not the one before it.
    if cfg!(debug_assertions) {
        set_state(Offline::Never);
        return;
    }
    let Some(container) = container() else {
        set_state(Offline::Never);
        return;
    };
    leptos::task::spawn_local(async move {
        match JsFuture::from(container.register("offline.js")).await {
            Ok(registration) => watch(registration.unchecked_into()),
            Err(_) => set_state(Offline::Never),
        }
    });
}

/// Puts the waiting version in charge and loads the page again with it.
pub fn apply_update() {
    let waiting = REGISTRATION.with_borrow(|kept| kept.as_ref().and_then(ServiceWorkerRegistration::waiting));
    let Some(waiting) = waiting else {
        // Another tab was quicker.
        reload();
        return;
    };
    on_state(&waiting, |worker| {
        if worker.state() == ServiceWorkerState::Activated {
            reload();
        }
    });
    let _ = waiting.post_message(&JsValue::from_str("use this version"));
}

/// The browser's service workers, where it has them.
fn container() -> Option<ServiceWorkerContainer> {
    let navigator = window().navigator();
    js_sys::Reflect::get(&navigator, &JsValue::from_str("serviceWorker"))
        .ok()
        .filter(|found| !found.is_undefined())
        .map(JsCast::unchecked_into)
}

fn watch(registration: ServiceWorkerRegistration) {
    if registration.active().is_some() {
        set_state(Offline::Ready);
        if registration.waiting().is_some() {
            set_newer();
        }
    }
    if let Some(worker) = registration.installing() {
        watch_new(&registration, &worker);
    }
    let found = {
        let registration = registration.clone();
        Closure::<dyn FnMut()>::new(move || {
            if let Some(worker) = registration.installing() {
                watch_new(&registration, &worker);
            }
        })
    };
    registration.set_onupdatefound(Some(found.as_ref().unchecked_ref()));
    found.forget();

    // A tablet that is only ever put to sleep looks for a newer version as it wakes.
    let looked = registration.clone();
    let seen = Closure::<dyn FnMut()>::new(move || {
        if !document().hidden() {
            // Without a network there is nothing to be told.
            if let Ok(looking) = looked.update() {
                leptos::task::spawn_local(async move {
                    let _ = JsFuture::from(looking).await;
                });
            }
        }
    });
    let _ = document().add_event_listener_with_callback("visibilitychange", seen.as_ref().unchecked_ref());
    seen.forget();

    REGISTRATION.set(Some(registration));
}

/// Follows a worker from when it is found until it waits or is in charge.
fn watch_new(registration: &ServiceWorkerRegistration, worker: &ServiceWorker) {
    let registration = registration.clone();
    on_state(worker, move |worker| match worker.state() {
        // The first one of all takes its place at once; a later one waits.
        ServiceWorkerState::Installed if registration.active().is_some() => set_newer(),
        ServiceWorkerState::Activated => set_state(Offline::Ready),
        ServiceWorkerState::Redundant if registration.active().is_none() => {
            set_state(Offline::Never);
        }
        _ => {}
    });
}

fn on_state(worker: &ServiceWorker, then: impl Fn(&ServiceWorker) + 'static) {
    let watched = worker.clone();
    let changed = Closure::<dyn FnMut()>::new(move || then(&watched));
    let _ = worker.add_event_listener_with_callback("statechange", changed.as_ref().unchecked_ref());
    changed.forget();
}

fn reload() {
    let _ = window().location().reload();
}

fn set_state(to: Offline) {
    STATE.with(|state| state.set(to));
}

fn set_newer() {
    NEWER.with(|newer| newer.set(true));
}
