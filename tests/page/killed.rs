//! The browser's process ends in the middle of saving: what was saved is there, whole.

use std::cell::RefCell;

use crate::harness::{Page, visits_cut_off};
use serde_json::json;

/// How often, in the test command; `SNUGFOLD_KILLS=50` for the long run.
const KILLS: usize = 2;

/// Types a new name every 400 ms, which is saved 350 ms later, for so long.
const TYPE: &str = "const [field, visit, most, done] = arguments;
    let n = 0;
    const type = () => {
      n += 1;
      field.value = `Visit ${visit}, name ${n}`;
      field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    };
    type();
    const timer = setInterval(type, 400);
    setTimeout(() => { clearInterval(timer); done(n); }, most);";

/// Every record reads as JSON, and each set of the list has a name.
const WHOLE: &str = "return Object.keys(localStorage).filter((key) => key.includes('set/')).every((key) => {
    try { return typeof JSON.parse(localStorage.getItem(key)) === 'object'; } catch { return false; } })";

#[test]
fn killed_while_saving_it_loses_nothing_that_was_whole() {
    let kills = std::env::var("SNUGFOLD_KILLS").ok().and_then(|n| n.parse().ok()).unwrap_or(KILLS);
    let typed: RefCell<Vec<String>> = RefCell::default();
    let kept = RefCell::new(0_usize);
    visits_cut_off(kills, async |page: &Page, visit: usize| {
        page.open("").await;
        let field = page.find("field", "Name of the set").await;
        let name = page.value("Name of the set").await;
        if typed.borrow().is_empty() {
            typed.borrow_mut().push(name);
        } else {
            // What was there before the kill, or anything typed since: the browser writes its storage down late.
            assert!(typed.borrow().contains(&name), "{name} is none of {typed:?}");
            *kept.borrow_mut() += usize::from(name.starts_with(&format!("Visit {}", visit - 1)));
            *typed.borrow_mut() = vec![name];
        }
        assert_eq!(page.js(WHOLE, Vec::new()).await, json!(true));
        assert!(!page.shows("cannot be read").await);
        // Cut off at a time that moves through the pause and the save, or after the browser has begun to write down:
        // it does so some five seconds later.
        let most = if visit % 2 == 0 { 5_000 + visit * 137 % 2_500 } else { 700 + visit * 61 % 900 };
        let args = vec![field.to_json().expect("a field"), json!(visit), json!(most)];
        let names = page.driver.execute_async(TYPE, args).await.expect("typing");
        let names = names.json().as_u64().unwrap_or_default();
        typed.borrow_mut().extend((1..=names).map(|n| format!("Visit {visit}, name {n}")));
    });
    println!("{kills} kills: nothing lost; in {} the last visit's own words were on the disk already", kept.borrow());
}
