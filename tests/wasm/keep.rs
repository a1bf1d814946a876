//! Saved sets and links, in the browser's own storage and address.

use snugfold::keep::link;
use snugfold::keep::notebook::said::{KeepError, Saved};
use snugfold::keep::session::Work;
use snugfold::keep::shelf::{Refused, Shelf};
use snugfold::project::example::example;
use snugfold::project::request::Project;
use snugfold::project::ticks::Ticks;
use snugfold::web::storage::LocalShelf;
use snugfold::web::store::{Keeping, Store};
use snugfold::web::{keys, link as address};
use std::collections::BTreeSet;
use wasm_bindgen_test::wasm_bindgen_test;

fn named(name: &str) -> Project {
    Project { name: name.to_owned(), ..example().expect("the example is a project") }
}

fn work(name: &str) -> Work {
    Work { project: named(name), ..Work::default() }
}

fn save(store: &mut Store, name: &str) -> Result<Saved, KeepError> {
    store.save(&mut work(name))
}

fn names(store: &Store) -> BTreeSet<String> {
    let entries = store.list().expect("storage can be read").entries;
    entries.into_iter().map(|e| e.name).collect()
}

#[wasm_bindgen_test]
fn a_saved_set_is_there_on_the_next_visit() {
    let mut store = Store::begin();
    assert_eq!(store.keeping(), Keeping::Lasting);
    let ticks = ["a step".to_owned()].into_iter().collect::<Ticks>();
    assert_eq!(save(&mut store, "visit"), Ok(Saved::Here));
    let again = Work { ticks, ..work("visit again") };
    assert_eq!(store.save(&mut again.clone()), Ok(Saved::Here));

    let mut next = Store::begin();
    let last = next.last().expect("it was open last");
    assert_eq!(next.open(last, None), Ok(again.clone()));
    assert!(!names(&next).contains("visit"));
    let copy = next.duplicate(last).expect("it is here");
    next.rename(copy, "visit third").expect("it is here");
    let deleted = next.delete(last, &again).expect("it is here");
    assert_eq!(next.current(), None);
    assert!(names(&next).contains("visit third") && !names(&next).contains("visit again"));
    assert_eq!(next.restore(&deleted), Ok(last));
    assert_eq!(next.open(last, None), Ok(again.clone()));
    for id in [last, copy] {
        next.delete(id, &again).expect("it is here");
    }
}

#[wasm_bindgen_test]
fn two_windows_on_one_set_keep_both() {
    let (mut one, mut two) = (Store::begin(), Store::begin());
    save(&mut one, "start").expect("storage keeps it");
    let id = one.current().expect("it is open");
    two.open(id, None).expect("it is here");
    assert_eq!(save(&mut one, "from one"), Ok(Saved::Here));
    assert_eq!(save(&mut two, "from two"), Ok(Saved::AsCopyOf(id)));
    let all = names(&one);
    assert!(all.contains("from one") && all.contains("from two (other copy)"), "{all:?}");
    for store in [&mut one, &mut two] {
        let open = store.current().expect("it is open");
        store.delete(open, &work("")).expect("it is here");
    }
}

/// Both windows of this test share what a window remembers; the other one never wrote to it.
#[wasm_bindgen_test]
fn a_window_opens_its_own_set_again() {
    let mut here = Store::begin();
    save(&mut here, "of this window").expect("storage keeps it");
    let mine = here.current().expect("it is open");
    let mut shelf = LocalShelf::of_page().expect("a browser under test allows storage");
    let other = here.duplicate(mine).expect("it is here");
    shelf.write("last", &other.0.to_string()).expect("there is room");
    assert_eq!(Store::begin().last(), Some(mine));
    let window = keys::window_storage().expect("a browser under test allows storage");
    window.remove_item(&keys::key("snugfold:open")).expect("it can be written to");
    assert_eq!(Store::begin().last(), Some(other), "a new window opens what was opened last");
    for id in [mine, other] {
        here.delete(id, &work("")).expect("it is here");
    }
}

#[wasm_bindgen_test]
fn names_on_the_shelf_carry_the_folder_of_the_page() {
    let mut shelf = LocalShelf::of_page().expect("a browser under test allows storage");
    let storage = keys::storage().expect("a browser under test allows storage");
    storage.set_item("/another/copy/snugfold:set/1/1-00000000", "theirs").expect("there is room");
    shelf.write("set/x", "mine").expect("there is room");
    assert_eq!(storage.get_item(&keys::key("snugfold:set/x")), Ok(Some("mine".to_owned())));
    let keys = shelf.keys().expect("it can be read");
    assert!(keys.contains(&"set/x".to_owned()) && !keys.iter().any(|k| k.contains("another")), "{keys:?}");
    shelf.remove("set/x").expect("it can be written to");
    storage.remove_item("/another/copy/snugfold:set/1/1-00000000").expect("it can be written to");
}

#[wasm_bindgen_test]
fn full_storage_is_said_and_what_was_saved_stays() {
    let storage = keys::storage().expect("a browser under test allows storage");
    let mut store = Store::begin();
    save(&mut store, "before").expect("there is room");
    let id = store.current().expect("it is open");
    // Filled to the last character, halving what is added.
    let mut piece = 1 << 22;
    let mut count = 0;
    while piece > 0 {
        match storage.set_item(&format!("filler {count}"), &"x".repeat(piece)) {
            Ok(()) => count += 1,
            Err(_) => piece /= 2,
        }
    }
    let full = save(&mut store, "after");
    let unsaved = !store.is_saved(&named("after"), &Ticks::default());
    let listed = names(&Store::begin());
    let opened = Store::begin().open(id, None).map(|work| work.project);
    for i in 0..count {
        storage.remove_item(&format!("filler {i}")).expect("it can be written to");
    }
    assert_eq!(full, Err(KeepError::Refused(Refused::Full)));
    assert!(unsaved, "what failed is tried again");
    assert!(listed.contains("before"), "{listed:?}");
    assert_eq!(opened, Ok(named("before")));
    assert_eq!(save(&mut store, "after"), Ok(Saved::Here));
    store.delete(id, &work("")).expect("it is here");
}

#[wasm_bindgen_test]
fn forbidden_storage_is_said_and_work_goes_on() {
    let forbid = js_sys::Function::new_no_args(
        "window.kept = Object.getOwnPropertyDescriptor(window, 'localStorage');
         Object.defineProperty(window, 'localStorage', { configurable: true,
           get() { throw new DOMException('no', 'SecurityError'); } });",
    );
    let allow = js_sys::Function::new_no_args("Object.defineProperty(window, 'localStorage', window.kept);");
    forbid.call0(&wasm_bindgen::JsValue::NULL).expect("the getter can be replaced");
    let mut store = Store::begin();
    let keeping = store.keeping();
    let saved = save(&mut store, "in memory");
    let listed = names(&store);
    allow.call0(&wasm_bindgen::JsValue::NULL).expect("the getter can be put back");
    assert_eq!(keeping, Keeping::UntilClosed(Refused::Forbidden));
    assert_eq!((saved, listed), (Ok(Saved::Here), BTreeSet::from(["in memory".to_owned()])));
    assert_eq!(Store::begin().keeping(), Keeping::Lasting);
}

#[wasm_bindgen_test]
fn the_trouble_message_finds_the_design_on_the_screen() {
    let mut store = Store::begin();
    save(&mut store, "on the screen").expect("there is room");
    let storage = keys::storage().expect("a browser under test allows storage");
    let text = storage.get_item(&keys::key(keys::CURRENT)).expect("it can be read").expect("it is there");
    let sets = snugfold::keep::file::read(text.as_bytes()).expect("it is a file");
    assert_eq!(sets[0].project, named("on the screen"));
    let open = store.current().expect("it is open");
    store.delete(open, &work("")).expect("it is here");
}

/// What a sheet costs, what is asked and for whom it is stays on this device.
#[wasm_bindgen_test]
fn no_price_and_no_name_is_in_the_address() {
    let mut design = named("Private");
    for supply in design.supplies() {
        (supply.price, supply.have) = (Some(123), 4);
    }
    design.trade.fee = 5_000;
    design.batch.names = "Ada".to_owned();
    let whole = address::address(&design).expect("it is short");
    let mut opened = link::read(&whole).expect("it reads");
    assert_eq!(opened, design.for_others());
    assert!(opened.supplies().all(|supply| supply.price.is_none() && supply.have == 4));
}

#[wasm_bindgen_test]
fn a_link_goes_through_the_address_unchanged() {
    let golden = include_str!("../data/link-1/metric.link").trim();
    let design = link::read(golden).expect("golden links open");
    assert_eq!(link::write(&design).as_deref(), Ok(golden));
    let location = leptos::prelude::window().location();
    // The test runner's own page is opened with a fragment.
    address::leave();
    assert_eq!(address::in_address().map(|came| came.design), None);
    let whole = address::address(&design).expect("it is short");
    location.set_hash(whole.split_once('#').expect("it has a fragment").1).expect("it is an address");
    assert_eq!(location.href(), Ok(whole));
    assert_eq!(address::in_address().map(|came| came.design), Some(Ok(design)));
    address::leave();
    assert_eq!(address::in_address().map(|came| came.design), None);
}
