//! Files of many sets: they come in between frames, can be stopped, and what is wrong with a file is said with its mend.

use serde_json::{Value, json};
use snugfold::keep::file::{self, Kept};
use snugfold::project::example::example;

use crate::harness::{Page, journey};

/// Opens a file of so many sets, each under another name, and notes the longest time between two frames from then on.
const OPEN: &str = "const [set, count] = arguments, rows = [];
    for (let n = 0; n < count; n++) rows.push(set.replace('NAME', 'Set ' + n));
    const text = '{\"snugfold\":1,\"sets\":[' + rows.join(',') + ']}';
    let last = performance.now();
    window.longest = 0;
    const frame = () => {
        const now = performance.now();
        window.longest = Math.max(window.longest, now - last);
        last = now;
        requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
    const given = new DataTransfer(), input = document.getElementById('open-file');
    given.items.add(new File([text], 'all.snugfold.json', { type: 'application/json' }));
    input.files = given.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
    return text.length;";

/// The example as it stands in a bundle, its name to be put in, with so many more letters.
fn one_set(longer: usize) -> Value {
    let mut project = example().expect("there is one");
    project.name = format!("NAME {}", "x".repeat(longer.min(150)));
    project.batch.names = "Ada\n".repeat(longer / 8);
    json!(file::write(&Kept::new(project)).trim_end().replacen("\"snugfold\":1,", "", 1))
}

async fn number(page: &Page, script: &str) -> f64 {
    page.js(script, Vec::new()).await.as_f64().unwrap_or(f64::NAN)
}

#[test]
fn two_thousand_sets_come_in_between_frames() {
    journey(async |page| {
        page.open("").await;
        page.press("Saved & shared").await;
        page.js(OPEN, vec![one_set(0), json!(2_000)]).await;
        page.wait_js("a bar", "return !!document.querySelector('.looking progress')").await;
        page.see("2000 sets are here from the file. The first is open.").await;
        let longest = number(page, "return window.longest").await;
        println!("2,000 sets came in, at most {longest:.0} ms between two frames");
        page.wait_js("no bar", "return !document.querySelector('.looking progress')").await;
        page.press("Understood").await;
        // The same file once more: all of them are known.
        page.js(OPEN, vec![one_set(0), json!(2_000)]).await;
        page.see("all of them were here already").await;
        page.fill("Find by name", "Set 1999").await;
        page.wait_js("one of them", "return document.querySelectorAll('.rows .row').length === 1").await;
    });
}

#[test]
fn a_file_that_comes_in_can_be_stopped() {
    journey(async |page| {
        page.open("").await;
        page.press("Saved & shared").await;
        page.js(OPEN, vec![one_set(0), json!(2_000)]).await;
        // Pressed by the page itself, in a frame of the bar: by a driver on a busy machine it may come too late.
        let stopped = page.js_async(
            "const frame = () => new Promise(requestAnimationFrame);
             const bar = () => document.querySelector('.looking progress');
             while (!bar()) await frame();
             while (bar() && bar().value <= 55) await frame();
             const stop = [...document.querySelectorAll('button')].find((b) => b.innerText === 'Stop');
             stop?.click();
             return !!stop;",
        );
        assert_eq!(stopped.await, json!(true));
        page.see("of the 2000 sets of the file are here.").await;
        let some = "const n = parseInt(document.querySelector('.notices').innerText.match(/\\d+/)[0]);
            return n > 100 && n < 2000";
        page.wait_js("some of them", some).await;
        page.reload().await;
        page.press("Saved & shared").await;
        page.fill("Find by name", "Set 100").await;
        page.wait_js("one of them", "return document.querySelectorAll('.rows .row').length === 1").await;
    });
}

#[test]
fn a_backup_of_four_megabytes_opens() {
    journey(async |page| {
        page.open("").await;
        page.press("Saved & shared").await;
        let length = page.js(OPEN, vec![one_set(1_600), json!(2_000)]).await;
        assert!(length.as_f64().is_some_and(|n| n > 3_900_000.0 && n < 4_190_000.0), "{length}");
        page.see("2000 sets are here from the file").await;
    });
}

#[test]
fn what_is_wrong_with_a_file_is_said_with_its_mend() {
    const GIVE: &str = "const given = new DataTransfer(), input = document.getElementById('open-file');
        given.items.add(new File([arguments[0]], 'x.json', { type: 'application/json' }));
        input.files = given.files;
        input.dispatchEvent(new Event('change', { bubbles: true }));";
    journey(async |page| {
        page.open("").await;
        page.press("Saved & shared").await;
        let good = file::write(&Kept::new(example().expect("there is one")));
        let open = good.trim_end().strip_suffix('}').expect("it is an object");
        let far = format!("{open},\"saved_at\":99999999999999999}}");
        for (text, said) in [
            ("{\"snugfold\":1,\"sets\":[]}".to_owned(), "There is no set in this file, so nothing was added"),
            (
                good.replacen("\"id\":1", "\"id\":\"one\"", 1),
                "card 1, “id”: a whole number from 0 to 65,535 belongs here, not “one”",
            ),
            (good.replacen("\"id\":1", "\"id\":\"one\"", 1), "or open another copy of the file"),
            (good.replacen("\"12 in\"", "\"wide\"", 1), "“wide” is no length such as"),
        ] {
            page.js(GIVE, vec![json!(text)]).await;
            page.see(said).await;
            page.press("Understood").await;
        }
        // A day that nobody has seen is that of now.
        page.js(GIVE, vec![json!(far)]).await;
        page.see("1 set is here from the file, and open.").await;
        let shown = page.text().await;
        assert!(!shown.contains("Invalid") && !shown.contains("unknown day"), "{shown}");
    });
}
