//! Whether the program has stopped, and why.
//!
//! That is seen from outside it, by plain page and script (`index.html`, `style/start.js`): nothing in here can be
//! relied upon any more by then, and memory that runs out or a stack that overflows is told by the browser alone.

/// Whether the page has said that it stopped. Callbacks that the browser was given before may still come in.
#[must_use]
pub fn stopped() -> bool {
    let document = web_sys::window().and_then(|window| window.document());
    let block = document.and_then(|document| document.get_element_by_id("trouble"));
    block.is_some_and(|block| !block.has_attribute("hidden"))
}

/// From now on the browser's console says why, where the program stops by itself.
pub fn tell_why() {
    console_error_panic_hook::set_once();
}
