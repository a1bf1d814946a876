//! When the program stops, the browser's console says why.

use snugfold::web::trouble;
use std::time::Duration;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::wasm_bindgen_test;

/// Writes down what the console is told, and lets the stop pass that this test makes.
const LISTEN: &str = "
    window.told = [];
    const tell = console.error;
    console.error = (...words) => { told.push(words.join(' ')); };
    const passed = (event) => { event.preventDefault(); event.stopImmediatePropagation(); };
    addEventListener('error', passed, true);
    window.listenNoMore = () => { console.error = tell; removeEventListener('error', passed, true); };
    return null;";

fn run(script: &str) -> JsValue {
    js_sys::Function::new_no_args(script).call0(&JsValue::NULL).expect("the script runs")
}

#[wasm_bindgen_test]
async fn the_console_says_why() {
    run(LISTEN);
    trouble::tell_why();
    leptos::prelude::set_timeout(|| panic!("a fold of {} sides", 3), Duration::ZERO);
    let later = run("return new Promise((then) => setTimeout(then, 200))");
    JsFuture::from(js_sys::Promise::from(later)).await.expect("a while");
    let told = run("listenNoMore(); return told.join('; ')").as_string().expect("words");
    assert!(told.contains("a fold of 3 sides") && told.contains("stop.rs"), "the console was told: {told}");
}
