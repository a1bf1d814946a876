//! The mark around opening a design, in the browser's own storage.

use snugfold::keep::record::SetId;
use snugfold::web::{guard, keys};
use wasm_bindgen_test::wasm_bindgen_test;

fn marked() -> Option<String> {
    let storage = keys::storage().expect("a browser under test allows storage");
    storage.get_item(&keys::key(keys::OPENING)).expect("storage answers")
}

#[wasm_bindgen_test]
fn the_mark_names_what_is_opened_and_stands_only_meanwhile() {
    let what = guard::set(SetId(7));
    assert!(!guard::stopped_by(&what));
    guard::begin_open(&what);
    assert_eq!(marked(), Some("set 7".to_owned()));
    // What is opened later does not change the answer of the start.
    assert!(!guard::stopped_by(&what));
    guard::opened_well();
    assert_eq!(marked(), None);
}

#[wasm_bindgen_test]
fn a_link_is_named_by_its_beginning() {
    let name = guard::link("#snug1.abcdefghijklmnopqrstuvwxyz");
    assert_eq!(name, "link snug1.abcdefghijklmnopqr");
    assert_eq!(guard::link("#snug1.abcdefghijklmnopqrstuvw"), name);
}

#[wasm_bindgen_test]
fn names_carry_the_folder_of_the_page() {
    let key = keys::key(keys::CURRENT);
    assert!(key.starts_with('/') && key.ends_with("/snugfold:current"), "{key}");
}
