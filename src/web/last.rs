//! Whether what is kept will last: the browser is asked not to clear it, and the maker is reminded of a copy elsewhere.

use js_sys::Date;
use leptos::prelude::*;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

use super::keys;

/// When all sets were saved as files last, in milliseconds since 1970.
const BACKED_UP: &str = "snugfold:backed-up";
/// So many sets are much to lose.
const MANY: usize = 5;
/// After so long a copy is old: thirty days.
const OLD: f64 = 30.0 * 24.0 * 3_600_000.0;

/// Asks the browser not to clear what this page keeps when it runs short of room. Some ask the maker, some decide by
/// themselves; whatever comes of it, sets are kept as before.
pub fn ask_to_last() {
    let navigator = window().navigator();
    let there = js_sys::Reflect::get(&navigator, &JsValue::from_str("storage")).is_ok_and(|s| s.is_object());
    if let Some(asked) = there.then(|| navigator.storage().persist().ok()).flatten() {
        leptos::task::spawn_local(async move {
            let _ = JsFuture::from(asked).await;
        });
    }
}

/// Notes that all sets were saved as files now.
pub fn note_backup() {
    if let Some(storage) = keys::storage() {
        let _ = storage.set_item(&keys::key(BACKED_UP), &(Date::now() as u64).to_string());
    }
}

/// Whether there is much to lose: many sets, and no copy of them for long.
#[must_use]
pub fn wants_backup(sets: usize) -> bool {
    let last = keys::storage().and_then(|s| s.get_item(&keys::key(BACKED_UP)).ok().flatten());
    let last: u64 = last.and_then(|t| t.parse().ok()).unwrap_or(0);
    sets >= MANY && Date::now() - last as f64 > OLD
}

/// Before this moment nothing was saved: the first day of 2020.
const FIRST: f64 = 1_577_836_800_000.0;
/// Clocks of two devices may be a day apart.
const DAY: f64 = 24.0 * 3_600_000.0;

/// A moment as a date in the maker's own way of writing; nothing where nothing can have been saved then.
#[must_use]
pub fn date(since_1970: u64) -> Option<String> {
    let moment = since_1970 as f64;
    let date = Date::new(&JsValue::from_f64(moment));
    let told = (FIRST..=Date::now() + DAY).contains(&moment);
    told.then(|| String::from(date.to_locale_date_string("default", &JsValue::UNDEFINED)))
}
