//! The first minutes of somebody who has never seen the page.

use crate::harness::{Page, journey};
use serde_json::json;

/// The label of what has the focus.
async fn focused(page: &Page, label: &str) {
    let script = format!("return document.activeElement?.labels?.[0]?.innerText === {label:?}");
    page.wait_js(&format!("the focus on “{label}”"), &script).await;
}

/// How far the drawing is folded, and how far it can be.
async fn folded(page: &Page) -> (f64, f64) {
    let script = "const s = document.querySelector('#fold-slider'); return [Number(s.value), Number(s.max)]";
    serde_json::from_value(page.js(script, Vec::new()).await).expect("a place on the slider")
}

/// Three prompts lead to their fields; a gift makes its box, which folds, is stopped, and folds to its end.
#[test]
fn from_a_gift_to_a_folded_box() {
    journey(async |page| {
        page.open("").await;
        page.press("Your card").await;
        focused(page, "Weight").await;
        page.press("Your sheets").await;
        focused(page, "Sheet").await;
        page.see("12 × 12 in, all to be bought").await;
        page.choose("Sheet", "A4").await;
        page.fill("Sheets in the drawer", "4").await;
        page.see("A4, 4 in the drawer").await;
        page.press("Your gift").await;
        focused(page, "Add a gift").await;
        page.choose("Add a gift", "AA cell (IEC 60086-2)").await;
        page.press("Put it in").await;
        page.see("1 thing in 1 kind of box").await;
        page.press("Take the sizes from what goes in").await;
        page.see_gone("Cut the blank 9 ×").await;

        page.press("Fold it").await;
        page.wait("a drawing on its way", async || (folded(page).await.0 > 20.0).then_some(())).await;
        page.press("Stop").await;
        page.see("Fold it").await;
        let (stopped, most) = folded(page).await;
        assert!(stopped < most, "it was stopped on its way");
        page.js_async("for (let i = 0; i < 20; i += 1) await new Promise(requestAnimationFrame);").await;
        assert!((folded(page).await.0 - stopped).abs() < 1.0, "it stays where it was stopped");
        page.press("Fold it").await;
        page.wait("a folded box", async || {
            let (at, most) = folded(page).await;
            (at >= most).then_some(())
        })
        .await;
        page.find("img", "Linden tea, folded").await;
    });
}

/// Who wants no motion sees each move done, and nothing between.
#[test]
fn without_motion_it_stands_still() {
    journey(async |page| {
        let calm = json!({ "features": [{ "name": "prefers-reduced-motion", "value": "reduce" }] });
        page.cdp("Emulation.setEmulatedMedia", calm).await;
        page.open("").await;
        for turn in 1..=3_u8 {
            page.press("Fold it").await;
            let to = 100.0 * f64::from(turn);
            page.wait("one whole move", async || ((folded(page).await.0 - to).abs() < 0.5).then_some(())).await;
            page.js_async("for (let i = 0; i < 20; i += 1) await new Promise(requestAnimationFrame);").await;
            assert!((folded(page).await.0 - to).abs() < 0.5, "nothing moves by itself");
        }
    });
}

/// What stands there is explained there, and a touch on the finished set opens what was touched.
#[test]
fn words_are_explained_and_the_set_can_be_touched() {
    journey(async |page| {
        page.open("").await;
        page.press("Words used here").await;
        page.see("a line pressed into card, so that it folds there without cracking").await;
        let gusset = "a side that folds inwards";
        assert!(!page.shows(gusset).await, "only what stands there is explained");
        page.press("Choose another form").await;
        page.press("Gusseted bag").await;
        page.see(gusset).await;
        page.press("Undo").await;
        page.see_gone(gusset).await;
        let touch = "const all = [...document.querySelectorAll('.beside [data-part=\"3\"]')];
            all.at(-1).dispatchEvent(new MouseEvent('click', { bubbles: true })); return all.length > 0";
        assert_eq!(page.js(touch, Vec::new()).await, json!(true), "the holder is drawn");
        page.find("heading", "Open-top holder").await;
        page.wait_js(
            "the holder's fields",
            "return [...document.querySelectorAll('.entry.open .title')].some((t) => t.innerText === 'Open-top holder')",
        )
        .await;
    });
}

/// Boxes of three forms: the holder grows with each and holds them all, nothing stops, and each is cut and slid in.
#[test]
fn a_mixed_set_gets_its_holder_and_its_sheets() {
    journey(async |page| {
        let wide = async || -> f64 {
            let script = "const all = [...document.querySelectorAll('.entry h3 button')];
                const holder = all.find((b) => b.querySelector('.title').innerText === 'Open-top holder');
                return Number(holder?.querySelector('.sum .heard, .sum .length')?.textContent.split(' ')[0] ?? 0)";
            page.js(script, Vec::new()).await.as_f64().unwrap_or_default()
        };
        page.open("").await;
        page.press("Start a new set").await;
        page.fill("Name of the set", "For the night shift").await;
        let mut before = page.wait("a holder", async || Some(wide().await).filter(|w| *w > 0.0)).await;
        for form in ["Pillow box", "Drawer and sleeve"] {
            page.press("Add a box").await;
            page.press("Choose another form").await;
            page.press(form).await;
            page.find("heading", form).await;
            before = page.wait("a wider holder", async || Some(wide().await).filter(|w| *w > before)).await;
        }
        page.find("img", "The finished set: Tuck-top box, Pillow box, Drawer and sleeve, in Open-top holder").await;
        assert!(!page.shows("stopped").await, "nothing stops it");
        page.press("Sheets").await;
        page.see("What to buy").await;
        for blank in ["Tuck-top box: blank", "Pillow box: blank", "Open-top holder: blank"] {
            page.see(blank).await;
        }
        page.see("Set the fence to").await;
        page.press("Steps").await;
        page.see("Slide the boxes in").await;
    });
}

/// A set is saved by itself, duplicated, deleted, and brought back.
#[test]
fn a_set_is_duplicated_deleted_and_brought_back() {
    journey(async |page| {
        page.open("").await;
        page.fill("Name of the set", "Plums").await;
        page.press("Saved & shared").await;
        page.see("open now").await;
        page.press("Duplicate").await;
        page.see("Plums (copy)").await;
        page.press("Delete").await;
        page.press("Bring it back").await;
        page.see("Plums (copy)").await;
        page.reload().await;
        page.press("Saved & shared").await;
        page.see("Plums (copy)").await;
        page.press("The set").await;
        page.fill("How many sets", "12").await;
        page.press("Undo").await;
        page.wait("as it was", async || (page.value("How many sets").await == "3").then_some(())).await;
    });
}

/// Every place to type or choose says in one line what it is; a box to tick is that line, and a slider shows it.
#[test]
fn each_field_says_what_it_is() {
    const SILENT: &str = "const said = (e) => (e.getAttribute('aria-describedby') ?? '').split(/\\s+/)
            .map((id) => document.getElementById(id)?.innerText ?? '').join('').trim();
        return [...document.querySelectorAll('main :is(input, select, textarea)')]
            .filter((e) => e.checkVisibility() && !['checkbox', 'range'].includes(e.type) && !said(e))
            .map((e) => e.labels?.[0]?.innerText ?? e.outerHTML.slice(0, 80));";
    journey(async |page| {
        let silent = async |place: &str| {
            let found: Vec<String> = serde_json::from_value(page.js(SILENT, Vec::new()).await).expect("a list");
            assert_eq!(found, Vec::<String>::new(), "{place}");
        };
        page.open("").await;
        page.find("heading", "Snugfold").await;
        page.press("Put it in").await;
        for shape in ["cylinder or disc", "soft", "block"] {
            page.choose("Shape", shape).await;
            silent(shape).await;
        }
        for extra in ["Second layer on the mats", "Label", "Tag", "Window", "Holes for a ribbon", "Liner on the floor"]
        {
            page.choose("Add", extra).await;
            page.press("Add it").await;
        }
        silent("extras").await;
        for form in ["Gusseted bag", "Box with leaning walls", "Pillow box"] {
            page.press("Choose another form").await;
            page.press(form).await;
            page.find("heading", "Linden tea").await;
            silent(form).await;
        }
        for entry in ["Open-top holder", "Kraft card", "Scoring board & trimmer"] {
            page.press(entry).await;
            page.wait_js("what is open", "return document.querySelector('.entry.open') !== null").await;
            silent(entry).await;
        }
        page.press("Flat & folded").await;
        page.press("Patterns at true scale").await;
        silent("patterns").await;
        page.press("Steps").await;
        page.press("Add a note or a step").await;
        page.see("Your words").await;
        silent("a note").await;
        page.press("Teach & sell").await;
        page.press("Many sets over some evenings").await;
        page.press("Time and price").await;
        page.see("Currency").await;
        silent("teach and sell").await;
        page.press("Saved & shared").await;
        page.see("Link to this design").await;
        silent("saved and shared").await;
    });
}
