//! The page without a network, and how a newer version comes in.

use crate::harness::{Page, dist, journey, journey_through};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use std::time::{Duration, SystemTime};
use xtask::site::Folder;

#[test]
fn once_visited_it_opens_without_a_network() {
    journey(async |page| {
        page.open("").await;
        ready(page).await;
        page.site.stop();
        // The network is gone indeed: what was not kept does not come. (The browser may
        // complain about that one.)
        let gone = page.js_async("return (await fetch('other.txt')).status").await;
        assert!(gone.as_str().is_some_and(|said| said.starts_with("failed")), "{gone}");
        page.errors().await;
        page.reload().await;
        page.find("heading", "Snugfold").await;
        // A share link has a tail.
        page.open("?from=a-friend#design").await;
        page.find("heading", "Snugfold").await;
        page.open("index.html").await;
        page.find("heading", "Snugfold").await;
    });
}

#[test]
fn without_a_network_a_saved_set_opens_and_its_steps_are_walked() {
    journey(async |page| {
        page.open("").await;
        ready(page).await;
        page.fill("Name of the set", "For the late bus").await;
        page.site.stop();
        page.reload().await;
        page.wait("the saved set", async || (page.value("Name of the set").await == "For the late bus").then_some(()))
            .await;
        page.press("Steps").await;
        page.press("One step at a time, large").await;
        page.see("Set the fence").await;
        // All sheets are cut first.
        while !page.shows("Score").await {
            page.press("Done, go on").await;
        }
        page.press("List of steps").await;
        // Every view, with what only it shows.
        for (view, shows) in [
            ("Flat & folded", "All parts at one scale"),
            ("Sheets", "What to buy"),
            ("Saved & shared", "Copy a link to this design"),
            ("The set", "Add a box"),
            ("Steps", "Take all ticks off"),
        ] {
            page.press(view).await;
            page.see(shows).await;
        }
        // Papers are set in letters that were kept.
        page.press("Teach & sell").await;
        page.press("Handout").await;
        page.see("Save as PDF").await;
    });
}

#[test]
fn without_having_been_visited_it_does_not_open() {
    journey(async |page| {
        page.expect_errors();
        page.site.stop();
        let opened = page.driver.goto(page.site.url()).await;
        assert!(opened.is_err(), "the test above would prove nothing");
    });
}

#[test]
fn a_newer_version_waits_for_the_makers_tap() {
    journey_through(copy_at(&["/"]), async |page| {
        page.expect_errors();
        page.open("").await;
        ready(page).await;
        assert_eq!(caches(page).await.len(), 1);

        renew(&page.scratch.join("copy0"), "Snugfold, newer");
        page.reload().await;
        waiting(page).await;
        // However often the page is loaded, it is still the older one.
        page.reload().await;
        page.find("heading", "Snugfold").await;
        assert_eq!(page.driver.title().await.ok().as_deref(), Some("Snugfold"));
        assert_eq!(caches(page).await.len(), 2, "the older files stay until then");

        // The trouble block offers the newer version too, for a broken one can't.
        page.stop().await;
        page.press("Use the newer version").await;
        page.wait("the newer version", async || {
            let title = page.driver.title().await.ok()?;
            (title == "Snugfold, newer").then_some(())
        })
        .await;
        page.find("heading", "Snugfold").await;
        assert_eq!(caches(page).await.len(), 1, "the older files are gone");
        page.site.stop();
        page.reload().await;
        page.find("heading", "Snugfold").await;
        assert_eq!(page.driver.title().await.ok().as_deref(), Some("Snugfold, newer"));
    });
}

#[test]
fn a_newer_version_takes_no_half_typed_field_with_it() {
    journey_through(copy_at(&["/"]), async |page| {
        page.expect_errors();
        page.open("").await;
        ready(page).await;
        renew(&page.scratch.join("copy0"), "Snugfold, newer");
        page.reload().await;
        waiting(page).await;
        page.fill("Name of the set", "Typed before the update").await;
        // Not left, and not yet saved by itself.
        let field = page.find("field", "Name of the set").await;
        field.send_keys(" and after").await.expect("typing");
        page.press("Use it now").await;
        page.wait("the newer version", async || {
            let title = page.driver.title().await.ok()?;
            (title == "Snugfold, newer").then_some(())
        })
        .await;
        page.find("heading", "Snugfold").await;
        assert_eq!(page.value("Name of the set").await, "Typed before the update and after");
    });
}

#[test]
fn two_copies_side_by_side_leave_each_other_alone() {
    journey_through(copy_at(&["/one/", "/two/"]), async |page| {
        page.expect_errors();
        for folder in ["one/", "two/"] {
            page.open(folder).await;
            ready(page).await;
        }
        assert_eq!(caches(page).await.len(), 2);
        renew(&page.scratch.join("copy0"), "Snugfold, newer");
        page.open("one/").await;
        waiting(page).await;
        page.stop().await;
        page.press("Use the newer version").await;
        page.wait("the newer version", async || {
            let title = page.driver.title().await.ok()?;
            (title == "Snugfold, newer").then_some(())
        })
        .await;
        page.site.stop();
        for (folder, title) in [("one/", "Snugfold, newer"), ("two/", "Snugfold")] {
            page.open(folder).await;
            page.find("heading", "Snugfold").await;
            assert_eq!(page.driver.title().await.ok().as_deref(), Some(title));
        }
    });
}

#[test]
fn a_page_that_does_not_fit_together_is_not_kept() {
    let half = |scratch: &Path| {
        let folders = copy_at(&["/"])(scratch);
        // As after half an upload: the list is of another page than the files.
        let page = folders[0].files.join("index.html");
        let text = fs::read_to_string(&page).expect("the page");
        fs::write(&page, text.replace("<title>", "<title>Old ")).expect("another page");
        folders
    };
    journey_through(half, async |page| {
        page.expect_errors();
        page.open("").await;
        page.find("heading", "Snugfold").await;
        let state = page
            .js_async(
                "const found = await navigator.serviceWorker.register('offline.js');
                 const worker = found.installing ?? found.waiting ?? found.active;
                 // The page's own attempt may have ended before this one began.
                 if (!worker) return 'redundant';
                 while (worker.state === 'installing') {
                   await new Promise((f) => worker.addEventListener('statechange', f, { once: true }));
                 }
                 return worker.state;",
            )
            .await;
        assert_eq!(state, json!("redundant"));
        // The page's own attempt may only begin now, and is given up as well.
        page.see("Needs a network to open").await;
        page.wait("nothing to be kept", async || caches(page).await.is_empty().then_some(())).await;
    });
}

/// Waits until the page is kept.
pub(crate) async fn ready(page: &Page) {
    page.wait_js(
        "the worker to be in charge",
        "return navigator.serviceWorker.getRegistration()
            .then((found) => found?.active?.state === 'activated');",
    )
    .await;
}

async fn waiting(page: &Page) {
    page.wait_js(
        "a newer version to wait",
        "return navigator.serviceWorker.getRegistration()
            .then((found) => found?.waiting?.state === 'installed');",
    )
    .await;
}

async fn caches(page: &Page) -> Vec<Value> {
    let names = page.js_async("return caches.keys()").await;
    names.as_array().cloned().unwrap_or_default()
}

/// Lays out copies of the page, `copy0` and so on, in the scratch folder.
pub(crate) fn copy_at(folders: &'static [&'static str]) -> impl Fn(&Path) -> Vec<Folder> {
    |scratch| {
        let folder = |(number, at): (usize, &&str)| {
            let files = scratch.join(format!("copy{number}"));
            copy(&dist(), &files);
            let at = (*at).to_owned();
            Folder { at, files }
        };
        folders.iter().enumerate().map(folder).collect()
    }
}

pub(crate) fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).expect("a folder for the copy");
    for entry in fs::read_dir(from).expect("the built page").flatten() {
        fs::copy(entry.path(), to.join(entry.file_name())).expect("a copy");
    }
}

/// Makes another version of a copy, by its title.
fn renew(files: &Path, title: &str) {
    let page = files.join("index.html");
    let text = fs::read_to_string(&page).expect("the page");
    let text = text.replace("<title>Snugfold</title>", &format!("<title>{title}</title>"));
    assert!(text.contains(title), "the page has its title");
    fs::write(&page, text).expect("the newer page");
    // However soon after the last: a browser asks whether the file is newer, by the second.
    let later = SystemTime::now() + Duration::from_secs(60);
    fs::File::options().append(true).open(&page).and_then(|file| file.set_modified(later)).expect("a newer page");
    xtask::precache::write(files).expect("the newer list");
}
