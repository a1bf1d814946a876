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

fn walk_at(width: u32, height: u32) {
    journey(async |page| {
        page.size(width, height).await;
        page.open("").await;
        page.find("heading", "Snugfold").await;
        bring_axe(page).await;
        for view in ["The set", "Flat & folded", "Sheets", "Steps", "Teach & sell", "Saved & shared"] {
            page.press(view).await;
            open_all(page, view).await;
            assert_eq!(found(page).await, Vec::<String>::new(), "{view} at {width} × {height}");
        }
        page.press("The set").await;
        page.fill("Width", "900 mm").await;
        assert_eq!(found(page).await, Vec::<String>::new(), "what cannot be made at {width} × {height}");
        page.press("Undo").await;
        page.press("Steps").await;
        page.press("One step at a time, large").await;
        assert_eq!(found(page).await, Vec::<String>::new(), "a large step at {width} × {height}");
    });
}

#[test]
fn nothing_shuts_anybody_out_on_a_tablet() {
    walk_at(1180, 820);
}

#[test]
fn nothing_shuts_anybody_out_on_a_phone() {
    walk_at(390, 844);
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
