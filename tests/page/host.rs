//! Hosts that send files wrongly, or not at all; and what the page asks a host for.

use crate::harness::{Page, dist, journey, journey_through};
use crate::offline::{copy_at, ready};
use serde_json::json;
use std::collections::BTreeMap;
use std::fs;
use xtask::site::{Fault, Folder, Site};

const NOT_STARTED: &str = "The page could not start";

/// What is kept for use without a network: each file's name and the kind that it is kept as.
async fn kept(page: &Page) -> BTreeMap<String, String> {
    let script = "const kept = {};
        for (const name of await caches.keys()) {
          const cache = await caches.open(name);
          for (const request of await cache.keys()) {
            const answer = await cache.match(request);
            kept[new URL(request.url).pathname] = answer.headers.get('Content-Type');
          }
        }
        return kept;";
    serde_json::from_value(page.js_async(script).await).expect("names and kinds")
}

fn kinds(kept: &BTreeMap<String, String>, end: &str) -> Vec<String> {
    kept.iter().filter(|(name, _)| name.ends_with(end)).map(|(_, kind)| kind.clone()).collect()
}

#[test]
fn a_program_that_the_host_calls_text_starts_and_is_kept_as_a_program() {
    for kind in [Some("text/plain"), None] {
        journey(async |page| {
            page.expect_errors();
            page.site.go_wrong(".wasm", Fault::Kind(kind));
            page.open("").await;
            page.fill("Name of the set", "Called text").await;
            ready(page).await;
            let programs = kinds(&kept(page).await, ".wasm");
            assert!(!programs.is_empty() && programs.iter().all(|k| k == "application/wasm"), "{kind:?}: {programs:?}");
            page.site.stop();
            page.reload().await;
            for (view, shows) in [
                ("Sheets", "What to buy"),
                ("Steps", "Take all ticks off"),
                ("Teach & sell", "A class"),
                ("Saved & shared", "Called text"),
            ] {
                page.press(view).await;
                page.see(shows).await;
            }
        });
    }
}

/// What an older version took from a host that called it text is kept as what it is by the next.
#[test]
fn what_was_kept_wrongly_heals_with_the_next_version() {
    journey(async |page| {
        // The browser looks for an icon beside the picture.
        page.expect_errors();
        page.open("icon.svg").await;
        let program = fs::read_dir(dist()).expect("the page").flatten().map(|entry| entry.file_name());
        let program = program.map(|name| name.to_string_lossy().into_owned()).find(|name| name.ends_with("_bg.wasm"));
        let program = program.expect("the program");
        let keep = format!(
            "const answer = await fetch('{program}');
             const older = new Response(await answer.arrayBuffer(), {{ headers: {{ 'Content-Type': 'text/plain' }} }});
             await (await caches.open('snugfold /#older')).put('{program}', older);"
        );
        assert_eq!(page.js_async(&keep).await, json!(null));
        page.open("").await;
        ready(page).await;
        page.wait("only the newer files", async || (caches(page).await == 1).then_some(())).await;
        assert_eq!(kinds(&kept(page).await, &program), ["application/wasm"]);
    });
}

async fn caches(page: &Page) -> usize {
    page.js_async("return (await caches.keys()).length")
        .await
        .as_u64()
        .and_then(|n| usize::try_from(n).ok())
        .unwrap_or(0)
}

#[test]
fn without_its_pictures_the_page_is_kept_and_they_come_when_the_host_has_them() {
    journey(async |page| {
        page.expect_errors();
        for end in [".svg", ".png", ".webmanifest"] {
            page.site.go_wrong(end, Fault::Missing);
        }
        page.open("").await;
        page.see("Works without a network now").await;
        assert_eq!(kinds(&kept(page).await, ".svg"), Vec::<String>::new());
        page.site.mend();
        page.reload().await;
        page.find("heading", "Snugfold").await;
        page.wait("the pictures", async || {
            let kept = kept(page).await;
            (kinds(&kept, ".svg") == ["image/svg+xml"] && kinds(&kept, ".png") == ["image/png"]).then_some(())
        })
        .await;
    });
}

#[test]
fn a_page_that_did_not_fit_together_is_kept_at_the_next_visit_once_the_host_is_mended() {
    journey(async |page| {
        page.expect_errors();
        page.site.go_wrong("/", Fault::Changed);
        page.open("").await;
        page.see("Needs a network to open").await;
        page.site.mend();
        page.reload().await;
        page.see("Works without a network now").await;
        page.site.stop();
        page.reload().await;
        page.find("heading", "Snugfold").await;
    });
}

/// A script that doesn't come can't say so: the page says it without.
#[test]
fn a_start_script_that_does_not_come_or_was_changed_is_told() {
    for fault in [Fault::Missing, Fault::Changed, Fault::Kind(Some("text/html"))] {
        journey(async |page| {
            page.expect_errors();
            page.site.go_wrong(".js", fault);
            page.open("").await;
            page.see("Laying out the paper").await;
            assert!(!page.shows("This is taking a while").await, "not at once");
            page.see("This is taking a while").await;
        });
    }
}

#[test]
fn a_first_visitor_is_not_told_to_save_a_design_that_is_not_there() {
    journey(async |page| {
        page.expect_errors();
        page.site.go_wrong(".wasm", Fault::Missing);
        page.open("").await;
        page.see(NOT_STARTED).await;
        page.see_gone("Laying out the paper").await;
        page.see("One of its files did not arrive whole").await;
        for words in ["Save your design", "Save this design", "Works without a network"] {
            assert!(!page.shows(words).await, "{words}");
        }
        page.site.mend();
        page.press("Load the page again").await;
        page.fill("Name of the set", "There now").await;
        page.wait_js("what was typed to be kept", "return localStorage.getItem('/snugfold:current') !== null").await;

        // Not with what is kept by now.
        page.js_async("for (const r of await navigator.serviceWorker.getRegistrations()) await r.unregister();").await;
        page.site.go_wrong(".wasm", Fault::Missing);
        page.cdp("Network.clearBrowserCache", json!({})).await;
        page.reload().await;
        page.see(NOT_STARTED).await;
        page.find("button", "Save this design as a file").await;
    });
}

/// A file of the program that has one byte more than it was built with is not run.
#[test]
fn a_changed_file_of_the_program_is_not_run() {
    let scripts = fs::read_dir(dist()).expect("the page").flatten().map(|entry| entry.file_name());
    let glue = scripts
        .map(|name| name.to_string_lossy().into_owned())
        .find(|n| n.starts_with("snugfold-") && n.ends_with(".js"));
    for changed in [glue.expect("the script that begins the program").as_str(), ".wasm", ".css"] {
        journey(async |page| {
            page.expect_errors();
            page.site.go_wrong(changed, Fault::Changed);
            page.open("").await;
            page.see(NOT_STARTED).await;
            page.js_async("await new Promise((done) => setTimeout(done, 3000))").await;
            assert_eq!(page.js("return document.getElementById('app').childElementCount", Vec::new()).await, json!(0));
        });
    }
}

#[test]
fn no_other_page_can_show_it_in_a_frame() {
    let around = |scratch: &std::path::Path| {
        fs::create_dir_all(scratch.join("around")).expect("a folder");
        vec![Folder { at: "/".to_owned(), files: scratch.join("around") }]
    };
    for (bare, shown) in [(true, true), (false, false)] {
        journey_through(around, async |page| {
            page.expect_errors();
            let site = Site::start(&dist(), 0).expect("a free port");
            if bare {
                // As on a host that sends no such header: or this would prove nothing.
                site.go_wrong("/", Fault::Bare);
            }
            let html = format!("<!doctype html><title>Around</title><iframe src=\"{}\"></iframe>", site.url());
            fs::write(page.scratch.join("around/index.html"), html).expect("a page around it");
            page.open("").await;
            page.driver.enter_frame(0).await.expect("a frame");
            page.wait_js("the frame to be loaded", "return document.readyState === 'complete'").await;
            let found = page.js("return document.getElementById('app') !== null", Vec::new()).await;
            assert_eq!(found, json!(shown));
        });
    }
}

/// The worker that keeps the page takes what the page has fetched: each file is sent once.
#[test]
fn a_first_visit_asks_for_each_file_once() {
    journey(async |page| {
        page.open("").await;
        page.see("Works without a network now").await;
        let mut times: BTreeMap<String, usize> = BTreeMap::new();
        for path in page.site.asked() {
            *times.entry(path).or_default() += 1;
        }
        // The browser itself may look twice at the worker's script, and at the icon for its tab and its manifest.
        for its_own in ["/offline.js", "/icon.svg"] {
            assert!(times.remove(its_own).is_some(), "{times:?}");
        }
        assert!(times.len() >= 7 && times.values().all(|n| *n == 1), "{times:#?}");
    });
}

#[test]
fn where_a_cache_on_the_way_has_an_older_file_the_host_is_asked_again() {
    journey_through(copy_at(&["/"]), async |page| {
        // The browser looks for an icon beside the file of text.
        page.expect_errors();
        let text = "page.txt";
        fs::write(page.scratch.join("copy0").join(text), "as it was").expect("a file");
        page.open(text).await;
        page.js_async(&format!("await (await fetch('{text}')).text()")).await;
        fs::write(page.scratch.join("copy0").join(text), "as it is").expect("another file");
        xtask::precache::write(&page.scratch.join("copy0")).expect("the list");
        page.open("").await;
        ready(page).await;
        let kept = page
            .js_async(&format!("return (await (await caches.match(new URL('{text}', location.href))).text())"))
            .await;
        assert_eq!(kept, json!("as it is"));
    });
}
