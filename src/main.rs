//! Mounts the page in the browser.
fn main() {}
