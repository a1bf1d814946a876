//! One page at a time at the saved sets.

use snugfold::web::locks::alone;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::wasm_bindgen_test;

/// A promise and what keeps it.
fn promise() -> (js_sys::Promise, js_sys::Function) {
    let kept = Rc::new(RefCell::new(None));
    let promise = js_sys::Promise::new(&mut |resolve, _| *kept.borrow_mut() = Some(resolve));
    let resolve = kept.borrow_mut().take().expect("a promise begins at once");
    (promise, resolve)
}

#[wasm_bindgen_test]
async fn who_comes_later_waits() {
    let log = Rc::new(RefCell::new(Vec::new()));
    let (ended, end) = promise();
    for name in ["first", "second"] {
        let (log, end) = (log.clone(), end.clone());
        alone(move || {
            log.borrow_mut().push(name);
            if name == "second" {
                let _ = end.call0(&JsValue::NULL);
            }
        });
    }
    // The browser grants it in a later turn.
    assert!(log.borrow().is_empty());
    JsFuture::from(ended).await.expect("both had their turn");
    assert_eq!(*log.borrow(), ["first", "second"]);
}
