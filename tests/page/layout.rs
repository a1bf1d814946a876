//! Nothing runs off the page: long names, narrow screens; and what is chosen shows in the maker's own colours.

use crate::harness::{Page, journey};
use serde_json::json;

const WALK: [&str; 6] = ["The set", "Flat & folded", "Sheets", "Steps", "Teach & sell", "Saved & shared"];

/// A name without any place to break it.
const LONG: &str = "Weihnachtsgeschenkschachtelnundpralinenkartonagen";

/// What reaches beyond the page's right edge and makes it scroll, by its words.
async fn beyond(page: &Page) -> Vec<String> {
    const LOOK: &str = "const root = document.documentElement;
        if (root.scrollWidth <= root.clientWidth) return [];
        const out = (e) => e.getBoundingClientRect().right > root.clientWidth + 0.5;
        const all = [...document.body.querySelectorAll('*')].filter(out);
        return ['scrolls to ' + root.scrollWidth + ' of ' + root.clientWidth].concat(all.slice(0, 8).map(
            (e) => `${e.tagName}.${e.getAttribute('class') ?? ''}: ${(e.textContent ?? '').slice(0, 60)}`));";
    serde_json::from_value(page.js(LOOK, Vec::new()).await).expect("a list")
}

/// Words that show that a part of the walk is there.
fn seen_there(view: &str) -> &'static str {
    match view {
        "The set" => "Card & board",
        "Flat & folded" => "Patterns at true scale",
        "Sheets" => "Pieces",
        "Steps" => "0 of",
        "Teach & sell" => "Handout",
        _ => "Saved sets",
    }
}

async fn name_everything(page: &Page) {
    page.fill("Name of the set", LONG).await;
    page.fill("Name", LONG).await;
    page.press("Kraft card").await;
    page.fill("Name", LONG).await;
}

fn nothing_scrolls_sideways(width: u32, height: u32) {
    journey(async |page| {
        page.size(width, height).await;
        page.open("").await;
        page.see("Saved").await;
        name_everything(page).await;
        for view in WALK {
            page.press(view).await;
            page.see(seen_there(view)).await;
            assert_eq!(beyond(page).await, Vec::<String>::new(), "{view} at {width} × {height}");
        }
        page.press("Steps").await;
        page.press("One step at a time, large").await;
        assert_eq!(beyond(page).await, Vec::<String>::new(), "a large step at {width} × {height}");
    });
}

#[test]
fn long_names_fit_on_a_narrow_phone() {
    nothing_scrolls_sideways(320, 700);
}

#[test]
fn long_names_fit_on_a_tablet() {
    nothing_scrolls_sideways(820, 1180);
}

/// Every toggle that is on looks otherwise than its neighbours that are off, by more than a colour of ours.
#[test]
fn what_is_chosen_shows_in_forced_colours() {
    journey(async |page| {
        page.size(1180, 820).await;
        let forced = json!({ "features": [{ "name": "forced-colors", "value": "active" }] });
        page.cdp("Emulation.setEmulatedMedia", forced).await;
        page.open("").await;
        page.see("Saved").await;
        const LOOK: &str = "const look = (e) => {
                const s = getComputedStyle(e);
                return [s.backgroundColor, s.color, s.outlineStyle].join(' ');
            };
            const chosen = '[aria-pressed=true], nav [aria-current]';
            const all = [...document.querySelectorAll(':is(' + chosen + ')')].filter((e) => e.offsetParent);
            const plain = document.querySelector('button:not([aria-pressed=true], [aria-current], :disabled)');
            const same = all.filter((e) => look(e) === look(plain)).map((e) => e.textContent);
            return { chosen: all.map((e) => e.textContent), same };";
        let mut seen = 0;
        for view in WALK {
            page.press(view).await;
            let found = page.js(LOOK, Vec::new()).await;
            assert_eq!(found["same"], json!([]), "{view}: {found}");
            seen += found["chosen"].as_array().map_or(0, Vec::len);
        }
        assert!(seen >= WALK.len(), "each part of the walk is marked at least: {seen}");
    });
}
