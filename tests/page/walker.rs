//! A person with no plan: the whole page is used by seeded dice, quicker than any hand, with loads in between. Nothing
//! stops, nothing odd is to be read, and nothing that was saved is lost.
//!
//! `SNUGFOLD_STEPS=20000` for the long run, `SNUGFOLD_SEED` for other dice. What fails is printed with the seed and the
//! last steps.

use crate::harness::{Page, journey};
use serde_json::{Value, json};
use std::time::Instant;

/// How many steps, in the test command.
const STEPS: u64 = 2_000;
/// So many are made in one go, and after so many goes the page is loaded again.
const GO: u64 = 40;
const GOES: u64 = 5;

fn number(name: &str, usual: u64) -> u64 {
    std::env::var(name).ok().and_then(|text| text.parse().ok()).unwrap_or(usual)
}

/// What is kept, as it is to be read: the link of the design at hand, the names of the other sets, and whether one of
/// the sets is open.
const KEPT: &str = "
    const flat = (words) => words.replace(/\\s+/g, ' ').trim();
    const frame = () => new Promise((then) => requestAnimationFrame(() => setTimeout(then, 0)));
    const press = (words) => [...document.querySelectorAll('button')]
      .find((b) => flat(b.textContent) === words && !b.closest('[inert]'))?.click();
    press('List of steps');
    await frame();
    press('Saved & shared');
    await frame();
    await frame();
    const field = [...document.querySelectorAll('input')].find((i) => i.labels?.[0]?.innerText === 'Link to this design');
    if (!field) return null;
    const rows = [...document.querySelectorAll('li')].filter((li) => li.innerText.includes('Rename'));
    const open = (li) => li.querySelector('p').innerText.includes('open now');
    const names = rows.filter((li) => !open(li)).map((li) => flat(li.querySelector('p').innerText)).sort();
    const others = Object.entries(localStorage).filter(([key]) => key.includes(':set/')).length;
    return [field.value, names, rows.some(open), others];";

/// What is kept, once the page is there.
async fn kept(page: &Page) -> Value {
    page.wait("what is kept", async || {
        let found = page.js_async(KEPT).await;
        found.is_array().then_some(found)
    })
    .await
}

/// What the walker said in the browser's own log since that was looked at last.
async fn said(page: &Page) -> Vec<String> {
    let log = page.driver.browser_log().await.unwrap_or_default();
    log.into_iter().filter(|entry| entry.message.contains("walker: ")).map(|entry| entry.message).collect()
}

/// The last of what was done, with the numbers of the steps.
fn last(log: &[String]) -> String {
    let from = log.len().saturating_sub(40);
    log[from..].iter().enumerate().map(|(n, step)| format!("{:>6}  {step}\n", from + n)).collect()
}

#[test]
fn whatever_is_done_nothing_stops_and_nothing_is_lost() {
    let (seed, steps) = (number("SNUGFOLD_SEED", 22), number("SNUGFOLD_STEPS", STEPS));
    journey(async |page| {
        let begin = Instant::now();
        let (mut log, mut goes) = (Vec::<String>::new(), 0);
        page.open("").await;
        page.see("Cut the blank 9 ×").await;
        while goes * GO < steps {
            let args = vec![json!(seed), json!(goes), json!(GO)];
            let told = page.driver.execute_async(include_str!("walker.js"), args).await;
            let (done, wrong): (Vec<String>, Option<String>) = match told {
                Ok(told) => serde_json::from_value(told.json().clone()).expect("steps, and what is wrong"),
                Err(_) => (said(page).await, Some("no answer: the last step never ended".to_owned())),
            };
            log.extend(done);
            goes += 1;
            let errors = page.errors().await;
            if wrong.is_some() || !errors.is_empty() {
                panic!("seed {seed}, {} steps: {wrong:?}\n{errors:#?}\n{}", log.len(), last(&log));
            }
            if goes % GOES == 0 {
                let before = kept(page).await;
                page.reload().await;
                let after = kept(page).await;
                log.push("load the page again".to_owned());
                // A set that was deleted while it was open is on the screen until then, and of no set.
                let open = before[2] == true;
                let same = before[1] == after[1] && (!open || (&before[0], &before[2]) == (&after[0], &after[2]));
                assert!(same, "seed {seed}, {} steps: kept {before:#}, then {after:#}\n{}", log.len(), last(&log));
            }
        }
        let took = begin.elapsed();
        println!("seed {seed}: {} steps and loads in {:.0} s", log.len(), took.as_secs_f64());
    });
}
