//! Names of what the page keeps in the browser's storage.
//!
//! Storage belongs to a host, not to a page: two copies of Snugfold in two folders of one
//! host would overwrite each other. So the page's own folder goes before each name.

use web_sys::Storage;

/// The design on the screen, as file text, written as it changes. `style/start.js` reads
/// it when the program has stopped.
pub const CURRENT: &str = "snugfold:current";

/// What is being opened (see [`super::guard`]).
pub const OPENING: &str = "snugfold:opening";

/// What stopped the page while it was being opened.
pub const STOPPED_BY: &str = "snugfold:stopped-by";

/// The full name of an entry: the page's folder, then `name`.
///
/// At `/paper/index.html` the key for `snugfold:current` is `/paper/snugfold:current`.
#[must_use]
pub fn key(name: &str) -> String {
    let path = leptos::prelude::window().location().pathname().unwrap_or_default();
    let folder = path.rfind('/').map_or("/", |end| &path[..=end]);
    format!("{folder}{name}")
}

/// The browser's storage, where it allows any: asking is refused with an error where a
/// maker has forbidden it.
#[must_use]
pub fn storage() -> Option<Storage> {
    leptos::prelude::window().local_storage().ok().flatten()
}

/// The browser's storage for this window alone, where it allows any. It lasts as long as the window, also when the page
/// is loaded again.
#[must_use]
pub fn window_storage() -> Option<Storage> {
    leptos::prelude::window().session_storage().ok().flatten()
}
