//! Forms of the maker's own in the browser's storage, each under its number.

use super::keys;

/// What each key begins with, behind the page's own folder.
const FORM: &str = "snugfold:form/";

/// Every form: its number and its text.
#[must_use]
pub fn all() -> Vec<(u32, String)> {
    let Some(storage) = keys::storage() else {
        return Vec::new();
    };
    let begin = keys::key(FORM);
    let count = storage.length().unwrap_or_default();
    let keys = (0..count).filter_map(|i| storage.key(i).ok().flatten());
    let mine: Vec<(u32, String)> = keys
        .filter_map(|key| {
            let number = key.strip_prefix(&begin)?.parse().ok()?;
            Some((number, storage.get_item(&key).ok().flatten()?))
        })
        .collect();
    mine
}

/// The form with this number.
#[must_use]
pub fn one(number: u32) -> Option<String> {
    keys::storage()?.get_item(&keys::key(&format!("{FORM}{number}"))).ok().flatten()
}

/// Keeps a form. Where nothing can be kept it lives in its set alone.
pub fn keep(number: u32, text: &str) {
    if let Some(storage) = keys::storage() {
        let _ = storage.set_item(&keys::key(&format!("{FORM}{number}")), text);
    }
}

/// Takes a form away.
pub fn delete(number: u32) {
    if let Some(storage) = keys::storage() {
        let _ = storage.remove_item(&keys::key(&format!("{FORM}{number}")));
    }
}

/// A number that no form has.
#[must_use]
pub fn fresh() -> u32 {
    (js_sys::Math::random() * f64::from(u32::MAX)) as u32
}
