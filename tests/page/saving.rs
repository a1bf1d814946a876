//! What is typed is saved soon, again where it could not be, and beside what another window saved.

use crate::harness::{Page, journey};
use serde_json::{Value, json};

/// Leaves not a character of room in the browser's storage.
const FILL: &str = "let piece = 1 << 22, count = 0;
    while (piece > 0) {
      try { localStorage.setItem(`filler ${count}`, 'x'.repeat(piece)); count += 1; } catch { piece = piece >> 1; }
    }
    return count;";

/// Takes away what [`FILL`] put there. A window is not told of what it does itself.
const MAKE_ROOM: &str =
    "for (const key of Object.keys(localStorage)) if (key.startsWith('filler ')) localStorage.removeItem(key);";

const NOT_SAVED: &str = "There is no room left in this browser’s storage";
const SAVED: &str = "Everything is saved now.";

/// Waits until a saved set says these words.
async fn kept(page: &Page, words: &str) {
    let script = format!(
        "return Object.entries(localStorage).some(([key, text]) => key.includes(':set/') && text.includes({}))",
        json!(words)
    );
    page.wait_js(&format!("“{words}” to be saved"), &script).await;
}

/// Makes a set with this name and waits until it is saved.
async fn start(page: &Page, name: &str) {
    page.press("Saved & shared").await;
    page.press("Start a new set").await;
    page.press("The set").await;
    page.fill("Name of the set", name).await;
    kept(page, name).await;
}

/// How the browser's log is, when a journey expects no complaint but that of a full storage.
async fn without_room(page: &Page) {
    assert!(page.js(FILL, Vec::new()).await.as_u64().is_some_and(|count| count > 0));
}

#[test]
fn what_had_no_room_is_saved_when_the_page_is_left() {
    journey(async |page| {
        page.open("").await;
        page.fill("Name of the set", "Room").await;
        kept(page, "Room").await;
        without_room(page).await;
        page.fill("Name of the set", "No room for this").await;
        page.see(NOT_SAVED).await;
        page.js(MAKE_ROOM, Vec::new()).await;
        page.reload().await;
        assert_eq!(page.value("Name of the set").await, "No room for this");
    });
}

#[test]
fn what_had_no_room_is_saved_once_there_is_some() {
    journey(async |page| {
        page.open("").await;
        page.fill("Name of the set", "Room").await;
        kept(page, "Room").await;
        without_room(page).await;
        page.fill("Name of the set", "No room for this").await;
        page.see(NOT_SAVED).await;
        page.see("Your last changes aren’t saved yet.").await;
        page.js(MAKE_ROOM, Vec::new()).await;
        page.see(SAVED).await;
        page.see_gone(NOT_SAVED).await;
        kept(page, "No room for this").await;
        // Once more, with the next change.
        without_room(page).await;
        page.fill("Name of the set", "No room for that").await;
        page.see(NOT_SAVED).await;
        page.js(MAKE_ROOM, Vec::new()).await;
        page.fill("How many sets", "4").await;
        kept(page, "No room for that").await;
        page.see_gone(NOT_SAVED).await;
    });
}

#[test]
fn deleting_a_set_makes_room_for_what_had_none() {
    journey(async |page| {
        page.open("").await;
        start(page, "Old one").await;
        start(page, "New one").await;
        without_room(page).await;
        page.fill("Name of the set", "New one, with more of a name").await;
        page.see(NOT_SAVED).await;
        page.press("Saved & shared").await;
        page.press("Delete Old one").await;
        page.see_gone(NOT_SAVED).await;
        kept(page, "New one, with more of a name").await;
    });
}

/// Another set is opened while there is no room: what is not saved waits, can be taken up again, and is saved.
#[test]
fn what_had_no_room_waits_while_another_set_is_open() {
    journey(async |page| {
        page.open("").await;
        start(page, "Apple").await;
        start(page, "Medlar").await;
        without_room(page).await;
        page.fill("Name of the set", "Medlar, late").await;
        page.see(NOT_SAVED).await;
        page.press("Saved & shared").await;
        page.press("Open Apple").await;
        page.see("“Medlar, late” isn’t saved yet.").await;
        page.press("The set").await;
        assert_eq!(page.value("Name of the set").await, "Apple");
        page.press("Go back to it").await;
        page.wait("the name", async || (page.value("Name of the set").await == "Medlar, late").then_some(())).await;
        page.press("Saved & shared").await;
        page.press("Open Apple").await;
        page.see("“Medlar, late” isn’t saved yet.").await;
        page.js(MAKE_ROOM, Vec::new()).await;
        page.see(SAVED).await;
        page.see_gone("isn’t saved yet").await;
        kept(page, "Medlar, late").await;
        page.press("Open Medlar, late").await;
        page.press("The set").await;
        page.wait("the name", async || (page.value("Name of the set").await == "Medlar, late").then_some(())).await;
    });
}

/// A step back and another set in the same moment: the step is saved.
#[test]
fn a_step_back_right_before_another_set_is_opened_is_kept() {
    journey(async |page| {
        page.open("").await;
        start(page, "Apple").await;
        start(page, "Medlar").await;
        page.fill("Name of the set", "Medlar the second").await;
        kept(page, "Medlar the second").await;
        page.press("Saved & shared").await;
        page.find("button", "Open Apple").await;
        let at_once = "const by = (words) => [...document.querySelectorAll('button')]
                .find((b) => b.textContent.replace(/\\s+/g, ' ').trim() === words);
            by('Undo').click();
            by('Open Apple').click();";
        page.js(at_once, Vec::new()).await;
        page.press("The set").await;
        page.wait("the other set", async || (page.value("Name of the set").await == "Apple").then_some(())).await;
        page.press("Saved & shared").await;
        page.see_gone("Medlar the second").await;
        page.press("Open Medlar").await;
        page.press("The set").await;
        page.wait("the step back", async || (page.value("Name of the set").await == "Medlar").then_some(())).await;
    });
}

/// Types a letter every 120 ms for so long and says after how many milliseconds the first of them was saved, and how much
/// of that the browser was kept from its work by a busy machine.
const TYPE_ON: &str = "const [field, most, done] = arguments;
    const saved = () => Object.entries(localStorage).some(([key, text]) => key.includes(':set/') && text.includes('typed on'));
    const begin = performance.now();
    let after = null, last = begin, busy = 0, n = 0;
    const type = () => {
      field.value = 'typed on' + 'x'.repeat(n);
      n += 1;
      field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    };
    type();
    const keys = setInterval(type, 120);
    const look = setInterval(() => {
      const now = performance.now();
      if (after === null) busy += Math.max(0, now - last - 20);
      last = now;
      if (after === null && saved()) after = now - begin;
      if (now - begin > most) { clearInterval(keys); clearInterval(look); done([after, busy]); }
    }, 10);";

#[test]
fn typing_without_a_pause_is_saved_within_a_second() {
    journey(async |page| {
        page.open("").await;
        page.see("Cut the blank 9 ×").await;
        page.fill("Name of the set", "Before").await;
        kept(page, "Before").await;
        let field = page.find("field", "Name of the set").await;
        let args = vec![field.to_json().expect("a field"), json!(3_000)];
        let said = page.driver.execute_async(TYPE_ON, args).await.expect("typing");
        let (after, busy): (Option<f64>, f64) = serde_json::from_value(said.json().clone()).expect("two times");
        println!("saved {after:?} ms after the first letter; kept from its work for {busy:.0} ms");
        let after = after.expect("it is saved while typing goes on");
        assert!(after <= 1_000.0 + busy, "{after:.0} ms, of which {busy:.0} ms are the machine's");
    });
}

/// Two windows on one set: each goes on with its own, under its own name, also when it is loaded again.
#[test]
fn two_windows_on_one_set_keep_both_and_open_their_own_again() {
    journey(async |page| {
        page.open("").await;
        page.fill("Name of the set", "Plum").await;
        kept(page, "Plum").await;
        let one = page.driver.window().await.expect("a window");
        let two = page.driver.new_tab().await.expect("another window");
        page.driver.switch_to_window(two.clone()).await.expect("the other window");
        page.open("").await;
        assert_eq!(page.value("Name of the set").await, "Plum");

        page.driver.switch_to_window(one.clone()).await.expect("the first window");
        page.fill("How many sets", "5").await;
        kept(page, "\"sets\":5").await;
        page.driver.switch_to_window(two.clone()).await.expect("the other window");
        page.fill("How many sets", "4").await;
        page.see("This set was changed in another window").await;
        kept(page, "Plum (other copy)").await;
        assert_eq!(page.value("Name of the set").await, "Plum (other copy)");
        page.fill("Spare pieces, %", "10").await;
        kept(page, "\"spares\":10").await;
        page.press("Undo").await;
        page.press("Undo").await;
        page.wait("two steps back", async || (page.value("How many sets").await == "3").then_some(())).await;
        assert_eq!(page.value("Name of the set").await, "Plum (other copy)");
        page.press("Redo").await;

        page.driver.switch_to_window(one).await.expect("the first window");
        page.reload().await;
        page.wait("its own set", async || (page.value("How many sets").await == "5").then_some(())).await;
        assert_eq!(page.value("Name of the set").await, "Plum");
        page.driver.switch_to_window(two).await.expect("the other window");
        page.reload().await;
        page.wait("its own set", async || (page.value("How many sets").await == "4").then_some(())).await;
        assert_eq!(page.value("Name of the set").await, "Plum (other copy)");
        page.press("Saved & shared").await;
        page.see("Plum (other copy)").await;
        let names = "return [...document.querySelectorAll('li')].map((row) => row.querySelector('p')?.innerText ?? '')
            .filter((name) => name.startsWith('Plum')).map((name) => name.replace('open now', '').trim()).sort()";
        assert_eq!(page.js(names, Vec::new()).await, json!(["Plum", "Plum (other copy)"]));
    });
}

const UNREADABLE: &str = "The set that you had open last can’t be read";

#[test]
fn a_set_that_cannot_be_read_is_said_at_once_and_its_bytes_are_saved() {
    journey(async |page| {
        page.open("").await;
        page.fill("Name of the set", "Pear").await;
        kept(page, "Pear").await;
        let spoil = "const key = Object.keys(localStorage).find((key) => key.includes(':set/'));
            const text = localStorage.getItem(key).replace('\"project\"', '\"pröject\"');
            localStorage.setItem(key, text);
            return [key, text];";
        let Value::Array(spoilt) = page.js(spoil, Vec::new()).await else { panic!("a record") };
        let (key, text) = (spoilt[0].as_str().expect("a key"), spoilt[1].as_str().expect("a text"));
        page.reload().await;
        page.see(UNREADABLE).await;
        // The page can be used meanwhile.
        assert!(page.shows("Cut the blank 9 ×").await);
        page.press("Save its bytes as a file").await;
        let saved = page.downloaded("unreadable.snugfold.json").await;
        assert_eq!(String::from_utf8_lossy(&saved), text);
        page.press("Remove it").await;
        page.see_gone(UNREADABLE).await;
        let there = format!("return localStorage.getItem({})", json!(key));
        assert_eq!(page.js(&there, Vec::new()).await, Value::Null);
        page.press("Bring it back").await;
        page.see_gone("What couldn’t be read is removed").await;
        assert_eq!(page.js(&there, Vec::new()).await, json!(text));
        page.press("Saved & shared").await;
        page.see("Kept as it is, for it cannot be read").await;
        page.press("Remove it").await;
        page.see_gone("Kept as it is, for it cannot be read").await;
        page.reload().await;
        page.find("heading", "Snugfold").await;
        assert!(!page.shows(UNREADABLE).await);
    });
}
