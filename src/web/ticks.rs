//! Which steps are done, kept on this device.

use std::collections::BTreeSet;

use super::keys;

const TICKS: &str = "snugfold:ticks-1";

/// The ticks of before; none where none were kept.
#[must_use]
pub fn read() -> BTreeSet<String> {
    let text = keys::storage().and_then(|s| s.get_item(&keys::key(TICKS)).ok().flatten());
    text.and_then(|t| serde_json::from_str(&t).ok())
        .unwrap_or_default()
}

/// Keeps the ticks.
pub fn write(ticks: &BTreeSet<String>) {
    if let (Some(storage), Ok(text)) = (keys::storage(), serde_json::to_string(ticks)) {
        // Full storage: the ticks last as long as the page is open.
        let _ = storage.set_item(&keys::key(TICKS), &text);
    }
}
