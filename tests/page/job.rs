//! The main job on the page: a set is changed, folded, laid out, made step by step, kept and shared.

use serde_json::json;

use crate::harness::journey;

#[test]
fn one_change_reaches_the_recipe_and_undo_takes_it_back() {
    journey(async |page| {
        page.open("").await;
        page.see("Cut the blank 9 ×").await;
        page.fill("Width", "4\"").await;
        // 1¼ + 4 + 1¼ + 4 + ½
        page.see("Cut the blank 11 ×").await;
        assert_eq!(page.value("Width").await, "4\"", "what was typed stays as typed");
        page.press("Undo").await;
        page.see("Cut the blank 9 ×").await;
    });
}

#[test]
fn what_cannot_be_read_stays_and_the_last_good_plan_with_it() {
    journey(async |page| {
        page.open("").await;
        for typed in ["wide", "", "-3 in", "0.001 mm"] {
            page.fill("Width", typed).await;
            if !typed.is_empty() {
                assert_eq!(page.value("Width").await, typed);
                page.wait_js(
                    "a field that says it is wrong",
                    "return document.querySelector('[aria-invalid=true]') !== null;",
                )
                .await;
            }
            page.see("Cut the blank 9 ×").await;
        }
        page.fill("Width", "76.2 mm").await;
        page.see("Cut the blank 9 ×").await;
    });
}

#[test]
fn both_systems_are_planned_natively() {
    journey(async |page| {
        page.open("").await;
        page.see("Cut the blank 9 ×").await;
        page.press("milli").await;
        // 3 in is 76.2 mm, 1¼ in is 31.75 mm: up to 77 and 32; the tab is 12: 32 + 77 + 32 + 77 + 12.
        page.see("Cut the blank 230 ×").await;
        assert_eq!(page.value("Width").await, "3 in", "what was typed is never converted");
    });
}

#[test]
fn on_paper_the_two_recipes_stand_side_by_side() {
    journey(async |page| {
        page.open("").await;
        page.press("Show both recipes").await;
        page.see("Recipe in inches").await;
        page.cdp("Emulation.setEmulatedMedia", json!({ "media": "print" })).await;
        // A4 and Letter, upright, less half an inch at each side, at 96 to the inch.
        for width in [698, 720] {
            page.size(width, 1000).await;
            let columns = page
                .js(
                    "return [...document.querySelectorAll('.columns > *')].map((c) => {
                       const { left, right, top } = c.getBoundingClientRect();
                       return [left, right, top, c.querySelector('h3').textContent];
                     });",
                    Vec::new(),
                )
                .await;
            let columns = columns.as_array().expect("columns");
            assert_eq!(columns.len(), 2, "each system has its own");
            let at = |column: usize, what: usize| columns[column][what].as_f64().expect("a place");
            assert!(at(0, 1) <= at(1, 0) && at(1, 1) <= f64::from(width), "side by side on the sheet: {columns:?}");
            assert!((at(0, 2) - at(1, 2)).abs() < 1.0, "from one line on: {columns:?}");
            for (column, unit) in [(0, "inches"), (1, "milli")] {
                let head = columns[column][3].as_str().unwrap_or_default();
                assert!(head.contains(unit), "headed: {head}");
            }
        }
    });
}

#[test]
fn a_set_is_made_from_sheets_to_ticks_and_the_ticks_stay() {
    journey(async |page| {
        page.open("").await;
        page.fill("Name of the set", "For the allotment").await;
        page.press("Flat & folded").await;
        page.see("The finished set").await;
        page.press("Sheets").await;
        page.see("Set the fence to").await;
        page.press("Steps").await;
        page.see("0 of").await;
        page.press("Done").await;
        page.see("1 of").await;
        page.press("Undo").await;
        page.see("0 of").await;
        page.press("Redo").await;
        page.see("1 of").await;
        page.press("One step at a time, large").await;
        // The second step is done and goes by.
        page.press("Done, go on").await;
        page.reload().await;
        page.press("Steps").await;
        page.see("2 of").await;
        page.press("Take all ticks off").await;
        page.see("0 of").await;
        page.press("The set").await;
        assert_eq!(page.value("Name of the set").await, "For the allotment");
    });
}

#[test]
fn a_link_opens_the_same_design_elsewhere() {
    let link = std::sync::Mutex::new(String::new());
    journey(async |page| {
        page.open("").await;
        page.fill("Name of the set", "Seven jars").await;
        page.fill("Height", "4 in").await;
        page.press("Saved & shared").await;
        page.wait("a link of this design", async || {
            let address = page.value("Link to this design").await;
            let fragment = address.split_once('#')?.1.to_owned();
            *link.lock().ok()? = fragment;
            Some(())
        })
        .await;
    });
    let fragment = link.into_inner().expect("the journey ended well");
    assert!(fragment.len() < 350, "{} characters", fragment.len());
    journey(async |page| {
        page.open(&format!("#{fragment}")).await;
        page.wait("the name of the set that was shared", async || {
            (page.value("Name of the set").await == "Seven jars").then_some(())
        })
        .await;
        assert_eq!(page.value("Height").await, "4 in");
        page.press("Keep it").await;
        // Opened once more, there is nothing to add.
        page.open(&format!("?again#{fragment}")).await;
        page.see("is saved here already").await;
        page.press("Saved & shared").await;
        page.see("open now").await;
        let rows = page.js("return document.querySelectorAll('.rows .row').length", Vec::new()).await;
        assert_eq!(rows, json!(1));
    });
}
