//! The mark around opening a design, in the browser's own storage.

use snugfold::web::{guard, keys};
use wasm_bindgen_test::wasm_bindgen_test;

fn marked() -> bool {
    let storage = keys::storage().expect("a browser under test allows storage");
    storage.get_item(&keys::key(keys::OPENING)).expect("storage answers").is_some()
}

#[wasm_bindgen_test]
fn the_mark_stands_only_while_opening() {
    assert!(!guard::broke_last_time());
    guard::begin_open();
    assert!(marked());
    guard::opened_well();
    assert!(!marked());
}

#[wasm_bindgen_test]
fn what_is_opened_later_does_not_change_the_answer_of_the_start() {
    let before = guard::broke_last_time();
    guard::begin_open();
    assert_eq!(guard::broke_last_time(), before);
    guard::opened_well();
}

#[wasm_bindgen_test]
fn names_carry_the_folder_of_the_page() {
    let key = keys::key(keys::CURRENT);
    assert!(key.starts_with('/') && key.ends_with("/snugfold:current"), "{key}");
}
