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
            page.press("Many sets for one day").await;
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
