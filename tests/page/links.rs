//! Designs that come by a link: whose they are, what is kept of them, and what is refused.

use crate::harness::{Page, journey};
use serde_json::json;
use snugfold::keep::link;
use snugfold::measure::given::Given;
use snugfold::project::example::example;
use snugfold::project::request::{Part, Project};

/// A design that a friend sends.
fn friends() -> Project {
    let mut project = example().expect("the example is a project");
    "Seven jars".clone_into(&mut project.name);
    "Ada’s paper shed".clone_into(&mut project.own.credit);
    project.boxes.truncate(2);
    project
}

fn fragment(project: &Project) -> String {
    format!("#{}", link::write(project).expect("it is short"))
}

/// So many kinds of boxes of the example, so many of each and so many sets, on sheets that hold them.
pub(crate) fn many(kinds: u16, each: u32, sets: u32) -> Project {
    let mut project = example().expect("the example is a project");
    let some = project.boxes.clone();
    let one = |(id, b): (u16, &Part)| Part { id, count: each, ..b.clone() };
    project.boxes = (1..=kinds).zip(some.iter().cycle()).map(one).collect();
    project.sets = sets;
    for card in &mut project.cards {
        let large = || Given::read("40 in", project.system).expect("it is a length");
        (card.sheet_width, card.sheet_height) = (large(), large());
    }
    project
}

const CAME: &str = "“Seven jars” (Ada’s paper shed) came by a link.";

async fn named(page: &Page, name: &str) {
    page.wait(&format!("the set {name}"), async || (page.value("Name of the set").await == name).then_some(())).await;
}

/// Saves a set of the maker's own.
async fn own_set(page: &Page) {
    page.open("").await;
    page.fill("Name of the set", "My own").await;
    page.press("Saved & shared").await;
    page.see("open now").await;
}

async fn saved_sets(page: &Page) -> serde_json::Value {
    page.press("Saved & shared").await;
    page.see("Every change is saved").await;
    page.js(
        "return [...document.querySelectorAll('.rows .row .title')].map((t) => t.firstChild.textContent).sort()",
        Vec::new(),
    )
    .await
}

async fn in_address(page: &Page) -> bool {
    page.js("return location.hash.startsWith('#snug1.')", Vec::new()).await == json!(true)
}

/// Before the page's own scripts run, once in this tab.
async fn at_first(page: &Page, script: &str) {
    let once = format!("if (!sessionStorage.getItem('told')) {{ sessionStorage.setItem('told', '1'); {script} }}");
    page.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": once })).await;
}

#[test]
fn a_friends_design_is_kept_only_at_the_makers_word() {
    journey(async |page| {
        own_set(page).await;
        let link = fragment(&friends());
        page.open(&format!("?1{link}")).await;
        page.see(CAME).await;
        named(page, "Seven jars").await;
        assert_eq!(saved_sets(page).await, json!(["My own"]));
        // Undecided, it is there again after the page is loaded again, and the maker's own set without its link.
        page.reload().await;
        page.see(CAME).await;
        named(page, "Seven jars").await;
        page.open("?2").await;
        named(page, "My own").await;
        assert!(!page.shows("came by a link").await);
        // Put away, it leaves nothing behind.
        page.open(&format!("?3{link}")).await;
        page.press("Put it away").await;
        named(page, "My own").await;
        assert!(!in_address(page).await);
        assert_eq!(saved_sets(page).await, json!(["My own"]));
        // Kept, it is the maker's.
        page.open(&format!("?4{link}")).await;
        page.press("Keep it").await;
        page.see("“Seven jars” is saved with your sets now.").await;
        assert!(!in_address(page).await);
        assert_eq!(saved_sets(page).await, json!(["My own", "Seven jars"]));
        page.open("?5").await;
        named(page, "Seven jars").await;
    });
}

#[test]
fn the_first_change_to_a_friends_design_saves_it() {
    journey(async |page| {
        own_set(page).await;
        page.open(&format!("?1{}", fragment(&friends()))).await;
        page.see(CAME).await;
        page.fill("Name of the set", "Seven jars of mine").await;
        page.see("You changed the design of the link, so “Seven jars” is saved with your sets now.").await;
        assert!(!in_address(page).await);
        page.reload().await;
        named(page, "Seven jars of mine").await;
        assert_eq!(saved_sets(page).await, json!(["My own", "Seven jars of mine"]));
    });
}

#[test]
fn a_link_pasted_into_an_open_page_is_opened() {
    journey(async |page| {
        page.open("").await;
        page.fill("Name of the set", "My own").await;
        // At once, before it is saved by itself.
        page.js("location.hash = arguments[0]", vec![json!(fragment(&friends()))]).await;
        page.see(CAME).await;
        named(page, "Seven jars").await;
        page.press("Put it away").await;
        named(page, "My own").await;
        page.js("location.hash = '#snug1.AAAAAAAAAAAAAAAAAAAAAAAAAAAA'", Vec::new()).await;
        page.see("ask for it again").await;
        named(page, "My own").await;
        page.js("location.hash = '#content'", Vec::new()).await;
        named(page, "My own").await;
    });
}

#[test]
fn a_link_opens_while_the_mark_of_something_else_stands() {
    journey(async |page| {
        at_first(page, "localStorage.setItem('/snugfold:opening', '1')").await;
        page.open(&fragment(&friends())).await;
        named(page, "Seven jars").await;
        page.see(CAME).await;
        assert!(in_address(page).await);
    });
}

#[test]
fn the_link_that_stopped_the_page_is_left_closed_and_stays() {
    journey(async |page| {
        let link = fragment(&friends());
        let mark = format!("localStorage.setItem('/snugfold:opening', 'link {}')", &link[1..25]);
        at_first(page, &mark).await;
        page.open(&link).await;
        page.see("The design of this link stopped the page last time").await;
        assert!(in_address(page).await);
        // Until it is opened all the same, it stays closed.
        page.reload().await;
        page.press("Open it all the same").await;
        named(page, "Seven jars").await;
        page.wait_js("no mark", "return localStorage.getItem('/snugfold:stopped-by') === null").await;
        page.reload().await;
        page.see(CAME).await;
    });
}

/// A tab behind others draws no frames: what begins there would stay halfway, and look as if it had stopped the page.
#[test]
fn a_tab_that_nobody_looks_at_leaves_no_mark() {
    journey(async |page| {
        own_set(page).await;
        let behind = "Object.defineProperty(Document.prototype, 'hidden', { configurable: true, get: () => !window.looked });
            Object.defineProperty(Document.prototype, 'visibilityState', { configurable: true, get: () => window.looked ? 'visible' : 'hidden' });
            const frame = window.requestAnimationFrame.bind(window);
            window.requestAnimationFrame = (f) => window.looked ? frame(f) : 0;
            for (const way of ['instantiate', 'instantiateStreaming']) {
              const begin = WebAssembly[way].bind(WebAssembly);
              WebAssembly[way] = async (...all) => {
                const program = await begin(...all); setTimeout(() => { window.came = true; }, 500); return program; };
            }";
        page.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": behind })).await;
        page.open("?behind").await;
        page.wait_js("the program", "return window.came === true").await;
        let mark = page.js("return localStorage.getItem('/snugfold:opening')", Vec::new()).await;
        assert_eq!(mark, json!(null));
        page.js("window.looked = true; document.dispatchEvent(new Event('visibilitychange'))", Vec::new()).await;
        named(page, "My own").await;
    });
}

#[test]
fn a_link_that_asks_for_too_much_is_refused_before_anything_is_planned() {
    journey(async |page| {
        for (design, said) in [
            (many(200, 99, 1_000), "it asks for 200 kinds of boxes, and 60 are the most that are planned together"),
            (many(3, 1, 2_000_000), "it asks for 2000000 sets, and 10000 are the most that are planned together"),
        ] {
            page.open(&format!("?{}{}", design.sets, fragment(&design))).await;
            page.see(said).await;
            // The example is there as ever.
            page.see("Cut the blank 9 ×").await;
            assert!(in_address(page).await);
        }
    });
}

/// The largest design that is planned: keys that come while it is are all taken. (`figures` prints how long they wait.)
#[test]
fn the_largest_design_opens_and_answers_keys() {
    journey(async |page| {
        page.open(&fragment(&many(60, 100, 10_000))).await;
        page.see("came by a link").await;
        keys(page).await;
        assert_eq!(page.value("Width").await, "3 1/2");
    });
}

/// The longest that keys typed into the open page have to wait for the frame that answers them, as the page sees it:
/// at best, in the middle, at worst, in milliseconds.
pub(crate) async fn keys(page: &Page) -> Vec<f64> {
    let field = page.find("field", "Width").await;
    let answer = page
        .driver
        .execute_async(
            "const [field, done] = arguments;
             const frame = () => new Promise((f) => requestAnimationFrame(() => setTimeout(f)));
             const pause = (ms) => new Promise((f) => setTimeout(f, ms));
             (async () => {
               const times = [];
               for (let key = 0; key < 24; key += 1) {
                 // As a hand types: mostly at a run, then with a rest in which later work begins.
                 const due = performance.now() + [90, 110, 260, 700][key % 4];
                 await pause(due - performance.now());
                 field.value = ['3', '3 ', '3 1', '3 1/2'][key % 4];
                 field.dispatchEvent(new InputEvent('input', { bubbles: true }));
                 await frame();
                 // A key that could not even come in time waits too.
                 times.push(performance.now() - due);
               }
               times.sort((a, b) => a - b);
               done([times[0], times[times.length >> 1], times[times.length - 1]]);
             })();",
            vec![field.to_json().expect("a field")],
        )
        .await
        .expect("figures");
    answer.convert().expect("numbers")
}

/// Whoever comes by a link sees the paper being laid out and then the design of the link, and nothing that is there moves.
#[test]
fn a_first_visit_by_a_link_shows_no_other_design_and_nothing_shifts() {
    for (width, height) in [(1180, 820), (390, 844)] {
        journey(async |page| {
            page.size(width, height).await;
            page.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": 4 })).await;
            let watch = "window.moved = []; window.seen = new Set();
                try { new PerformanceObserver((all) => { for (const e of all.getEntries()) {
                    window.moved.push([e.value, e.hadRecentInput, e.sources.map((s) => s.node?.outerHTML?.slice(0, 120) ?? '')]); } })
                  .observe({ type: 'layout-shift', buffered: true }); } catch { window.moved = null; }
                const look = () => {
                  for (const svg of document.querySelectorAll('svg[aria-label]')) {
                    if (svg.checkVisibility() && svg.getBoundingClientRect().width > 0) window.seen.add(svg.getAttribute('aria-label'));
                  }
                  const name = document.querySelector('#set-name')?.value;
                  if (name !== undefined) window.seen.add('name: ' + name);
                  requestAnimationFrame(look);
                };
                requestAnimationFrame(look);";
            page.cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": watch })).await;
            page.open(&fragment(&friends())).await;
            page.see(CAME).await;
            named(page, "Seven jars").await;
            page.see("British").await;
            page.js_async("for (let i = 0; i < 30; i += 1) await new Promise(requestAnimationFrame);").await;
            let seen = page.js("return [...window.seen]", Vec::new()).await;
            let seen: Vec<String> = serde_json::from_value(seen).expect("names");
            assert!(seen.iter().any(|s| s == "name: Seven jars"), "{seen:?}");
            let others: Vec<_> = seen.iter().filter(|s| s.contains("neighbours")).collect();
            assert!(others.is_empty(), "another design was seen: {others:?}");
            let moved = page.js("return window.moved", Vec::new()).await;
            let moved: Vec<(f64, bool, Vec<String>)> = serde_json::from_value(moved).expect("shifts can be observed");
            let sum: f64 = moved.iter().map(|m| m.0).sum();
            assert!(sum < 0.01, "{width} pixels: moved by {sum}: {moved:#?}");
        });
    }
}
