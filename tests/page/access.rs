//! Nobody is shut out: axe-core, which others wrote, finds nothing on any part of the walk (WCAG 2.2 A and AA, and what
//! it calls best practices), and finds what is planted.

use crate::harness::{Page, journey};

/// What axe-core finds on the page as it is now.
async fn found(page: &Page) -> Vec<String> {
    const RUN: &str = "const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
        const found = await axe.run(document, { runOnly: rules });
        const at = (node) => node.target.join(' ') + ' | ' + node.html.slice(0, 160);
        return found.violations.map((v) => v.id + ': ' + v.help + ' | ' + v.nodes.slice(0, 5).map(at).join(' || '));";
    serde_json::from_value(page.js_async(RUN).await).expect("a list")
}

async fn bring_axe(page: &Page) {
    let Some(file) = std::env::var_os("SNUGFOLD_AXE") else {
        panic!("SNUGFOLD_AXE names no axe-core: `cargo xtask test page` fetches it");
    };
    let script = std::fs::read_to_string(file).expect("axe-core can be read");
    page.js(&script, Vec::new()).await;
}

/// What can be tapped and is smaller than so many pixels either way. The link that skips the head is seen with the focus
/// only.
async fn small(page: &Page, within: &str, least: u32) -> Vec<String> {
    const LOOK: &str = "const [within, least] = arguments;
        const all = document.querySelectorAll(`${within} :is(button, input, select, textarea, summary, a[href], label.tick)`);
        return [...all].filter((e) => !e.matches('.skip, label input[type=checkbox]')).map((e) => [e, e.getBoundingClientRect()])
            .filter(([, b]) => b.width > 0 && b.height > 0 && Math.min(b.width, b.height) < least - 0.5)
            .map(([e, b]) => `${e.tagName} ${(e.innerText || e.id || '').slice(0, 30)}: ${b.width} × ${b.height}`);";
    let found = page.js(LOOK, vec![serde_json::json!(within), serde_json::json!(least)]).await;
    serde_json::from_value(found).expect("a list")
}

/// What has less contrast than WCAG's highest level asks for (7 to 1, large lettering 4.5 to 1).
async fn faint(page: &Page) -> Vec<String> {
    const RUN: &str = "const rules = { 'color-contrast-enhanced': { enabled: true } };
        const found = await axe.run(document, { runOnly: ['color-contrast-enhanced'], rules });
        return found.violations.flatMap((v) => v.nodes.slice(0, 9).map((n) => n.target.join(' ') + ' | ' + n.any[0].message));";
    serde_json::from_value(page.js_async(RUN).await).expect("a list")
}

/// Opens what is closed on a part of the walk.
async fn open_all(page: &Page, view: &str) {
    match view {
        "Flat & folded" => page.press("Patterns at true scale").await,
        "Steps" => page.see("0 of").await,
        "Teach & sell" => {
            page.press("Many sets over some evenings").await;
            page.press("Time and price").await;
            page.fill("Currency", "XQZ").await;
            page.fill("Minutes that you have", "20").await;
            page.press("Handout").await;
            page.see("2 pages").await;
        }
        _ => {}
    }
}

fn walk_at(width: u32, height: u32, scheme: &str) {
    journey(async |page| {
        page.size(width, height).await;
        let scheme = serde_json::json!({ "features": [{ "name": "prefers-color-scheme", "value": scheme }] });
        page.cdp("Emulation.setEmulatedMedia", scheme).await;
        page.open("").await;
        page.find("heading", "Snugfold").await;
        bring_axe(page).await;
        for view in ["The set", "Flat & folded", "Sheets", "Steps", "Teach & sell", "Saved & shared"] {
            page.press(view).await;
            open_all(page, view).await;
            assert_eq!(found(page).await, Vec::<String>::new(), "{view} at {width} × {height}");
            assert_eq!(small(page, "body", 44).await, Vec::<String>::new(), "{view} at {width} × {height}");
            if view == "Steps" {
                assert_eq!(faint(page).await, Vec::<String>::new(), "steps at {width} × {height}");
            }
        }
        page.press("The set").await;
        page.fill("Width", "900 mm").await;
        assert_eq!(found(page).await, Vec::<String>::new(), "what cannot be made at {width} × {height}");
        page.press("Undo").await;
        page.press("Choose another form").await;
        page.press("A form of your own").await;
        let touch =
            "[...document.querySelectorAll('.cells button')].find((b) => b.ariaLabel.startsWith(arguments[0])).click()";
        for (picked, opened) in [("A1", "Corners, strips, notch"), ("between A1 and B1", "In which order it folds")] {
            page.see("It folds: nothing crosses").await;
            page.js(touch, vec![picked.into()]).await;
            page.press(opened).await;
            assert_eq!(found(page).await, Vec::<String>::new(), "{picked} of a drawn form at {width} × {height}");
            assert_eq!(
                small(page, "body", 44).await,
                Vec::<String>::new(),
                "{picked} of a drawn form at {width} × {height}"
            );
        }
        page.press("Undo").await;
        page.press("Steps").await;
        page.press("One step at a time, large").await;
        assert_eq!(found(page).await, Vec::<String>::new(), "a large step at {width} × {height}");
        assert_eq!(small(page, ".glance", 56).await, Vec::<String>::new(), "a large step at {width} × {height}");
        assert_eq!(faint(page).await, Vec::<String>::new(), "a large step at {width} × {height}");
    });
}

#[test]
fn nothing_shuts_anybody_out_on_a_tablet() {
    walk_at(1180, 820, "light");
}

#[test]
fn nothing_shuts_anybody_out_on_a_phone_in_the_dark() {
    walk_at(390, 844, "dark");
}

/// States that the walk does not come through: what is opened, refused, empty, brought in, searched, deleted.
#[test]
fn nothing_shuts_anybody_out_of_what_is_opened_empty_or_refused() {
    journey(async |page| {
        page.size(820, 1180).await;
        let strong = serde_json::json!({ "features": [{ "name": "prefers-contrast", "value": "more" }] });
        page.cdp("Emulation.setEmulatedMedia", strong).await;
        page.open("#snug1.cut-off").await;
        page.see("link").await;
        bring_axe(page).await;
        let clean = async |state: &str| {
            // What stays at the top while the page scrolls hides half a button at times.
            page.js("scrollTo(0, 0)", Vec::new()).await;
            assert_eq!(found(page).await, Vec::<String>::new(), "{state}");
            assert_eq!(small(page, "body", 44).await, Vec::<String>::new(), "{state}");
        };
        clean("a link that was cut short").await;
        for line in ["Score and cut", "Show both recipes", "Panels in words", "What the lines mean", "Words used here"]
        {
            page.press(line).await;
        }
        page.press("Put it in").await;
        page.press("Add it").await;
        page.fill("Reveal, each side", "wide").await;
        clean("lists that are open, a gift, an extra, a field that is refused").await;
        page.press("Fold it").await;
        page.press("Choose another form").await;
        clean("forms to choose from, while it folds").await;
        for entry in ["Open-top holder", "Kraft card", "Scoring board & trimmer"] {
            page.press(entry).await;
            page.wait_js("what is open", "return document.querySelector('.entry.open') !== null").await;
            if entry == "Kraft card" {
                page.press("Add another sheet size").await;
            }
            clean(entry).await;
        }
        page.press("Linden tea").await;
        for _ in 0..3 {
            page.press("Remove").await;
        }
        page.press("Undo").await;
        page.press("Saved & shared").await;
        page.press("Square code of the link").await;
        page.press("Rename").await;
        clean("a set with another name to be, a code").await;
        page.press("Duplicate").await;
        page.see("(copy)").await;
        page.press("Delete").await;
        page.see("Bring it back").await;
        clean("a set that was deleted").await;
        page.press("Steps").await;
        page.press("Add a note or a step").await;
        page.press("Time").await;
        page.press("For the left hand").await;
        clean("a note that is written, a step that is timed").await;
        page.press("One step at a time, large").await;
        page.press("Words used here").await;
        clean("a large step with its words explained").await;
        assert_eq!(small(page, ".glance", 56).await, Vec::<String>::new());
        assert_eq!(faint(page).await, Vec::<String>::new());
    });
}

#[test]
fn what_is_planted_is_found() {
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        bring_axe(page).await;
        page.js(
            "document.querySelector('main').insertAdjacentHTML('beforeend', '<input type=\"text\"><h5>x</h5>')",
            Vec::new(),
        )
        .await;
        let found = found(page).await;
        assert!(found.iter().any(|f| f.starts_with("label:")), "{found:?}");
        assert!(found.iter().any(|f| f.starts_with("heading-order:")), "{found:?}");
    });
}

/// The key Tab until what has the focus says this; every stop on the way can be seen.
async fn tab_to(page: &Page, words: &str) {
    const LOOK: &str =
        "const e = document.activeElement; const b = e.getBoundingClientRect(); const s = getComputedStyle(e);
        const label = e.labels?.[0]?.innerText ?? '';
        const seen = s.outlineStyle !== 'none' || s.boxShadow !== 'none' || e === document.body;
        return [e.getAttribute('aria-label') || e.innerText || label, seen && b.width > 0];";
    for _ in 0..400 {
        page.type_keys(thirtyfour::Key::Tab + "").await;
        let (says, seen): (String, bool) =
            serde_json::from_value(page.js(LOOK, Vec::new()).await).expect("what has the focus");
        assert!(seen, "the focus is not seen on “{says}”");
        if says.trim() == words {
            return;
        }
    }
    panic!("no way by Tab to “{words}”");
}

/// By keys alone: a size is typed, the walk is walked, a step is done, a handout is set, and it is all taken back.
#[test]
fn everything_is_done_by_keys() {
    use thirtyfour::Key;
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        tab_to(page, "How many sets").await;
        page.type_keys(Key::Control + "a").await;
        page.type_keys("4".to_owned()).await;
        page.wait("four sets", async || (page.value("How many sets").await == "4").then_some(())).await;
        page.js("document.activeElement.blur(); scrollTo(0, 0)", Vec::new()).await;
        tab_to(page, "Steps").await;
        page.type_keys(Key::Enter + "").await;
        page.see("0 of").await;
        tab_to(page, "Done").await;
        page.type_keys(Key::Space + "").await;
        page.see("1 of").await;
        page.js("document.activeElement.blur()", Vec::new()).await;
        tab_to(page, "Teach & sell").await;
        page.type_keys(Key::Enter + "").await;
        tab_to(page, "Handout").await;
        page.type_keys(Key::Space + "").await;
        page.see("2 pages").await;
        // First the tick goes, then the number of sets.
        page.type_keys(Key::Control + "z").await;
        page.type_keys(Key::Control + "z").await;
        page.js("document.activeElement.blur()", Vec::new()).await;
        tab_to(page, "The set").await;
        page.type_keys(Key::Enter + "").await;
        page.wait("three sets again", async || (page.value("How many sets").await == "3").then_some(())).await;
    });
}

/// With lettering twice as large, and on a window of 320 pixels: nothing scrolls sideways and no words are cut off.
#[test]
fn large_lettering_and_narrow_windows_lose_nothing() {
    const CUT: &str = "const page = document.scrollingElement;
        const cut = [...document.querySelectorAll('button, label, legend, summary, h1, h2, h3, p, li, td, th')].filter((e) => {
            const s = getComputedStyle(e);
            return e.getClientRects().length && !e.matches('.skip, .spoken') && !e.closest('.spoken, svg') && s.overflowX !== 'visible' && e.scrollWidth > e.clientWidth + 1;
        }).map((e) => e.tagName + ' ' + e.innerText.slice(0, 40));
        return page.scrollWidth > page.clientWidth ? ['the page scrolls sideways', ...cut] : cut;";
    journey(async |page| {
        page.open("").await;
        page.find("heading", "Snugfold").await;
        for (width, height, size) in [(1180, 820, "200%"), (640, 820, "200%"), (320, 640, "100%")] {
            page.size(width, height).await;
            page.js("document.documentElement.style.fontSize = arguments[0]", vec![serde_json::json!(size)]).await;
            for view in ["The set", "Flat & folded", "Sheets", "Steps", "Teach & sell", "Saved & shared"] {
                page.press(view).await;
                page.wait(&format!("{view} at {width} and {size} to lose nothing"), async || {
                    let cut: Vec<String> = serde_json::from_value(page.js(CUT, Vec::new()).await).expect("a list");
                    if cut.is_empty() {
                        Some(())
                    } else {
                        println!("{view} {width} {size}: {cut:?}");
                        None
                    }
                })
                .await;
            }
        }
        // It would be seen.
        page.js(
            "document.querySelector('main').append(Object.assign(document.createElement('p'), { innerText: 'x' }));
            document.querySelector('main > p:last-child').style.width = '9999px'",
            Vec::new(),
        )
        .await;
        assert_ne!(page.js(CUT, Vec::new()).await, serde_json::json!([]));
    });
}
