//! Tests that run inside a real browser: what the page asks of it, one thing at a time.
#![cfg(target_arch = "wasm32")]
#![allow(unsafe_code, reason = "the test macro exports its functions")]

mod guard;
mod keep;
mod locks;
mod stop;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
