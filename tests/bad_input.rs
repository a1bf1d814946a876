//! Whatever is asked for, a plan comes back: with a finding that says what stops it, and never a panic.

use proptest::prelude::*;

use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::finding::{Place, Weight, What};
use snugfold::project::request::Project;

/// A request of one box, changed by `with` as JSON.
fn asked(with: impl FnOnce(&mut serde_json::Value)) -> Project {
    let mut value: serde_json::Value = serde_json::from_str(
        r#"{ "sets": 1,
        "cards": [ { "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "12 in", "sheet_height": "12 in" } ],
        "boxes": [ { "id": 1, "form": "tuck-box", "count": 2, "card": 1, "inputs": {}, "mats": { "card": 1 } } ],
        "holder": { "form": "row-holder", "card": 1 } }"#,
    )
    .expect("it is JSON");
    with(&mut value);
    serde_json::from_value(value).expect("it is a project")
}

/// Planning `project` stops at `place` with a finding that `is` recognises.
fn check(project: &Project, place: Place, is: fn(&What) -> bool) {
    for system in System::ALL {
        let plan = plan(project, system);
        let mut stops = plan.findings.iter().filter(|f| f.weight == Weight::Stop);
        assert!(stops.any(|f| f.place == place && is(&f.what)), "{system:?}: {:?}", plan.findings);
    }
}

fn box_input(key: &str, typed: &str) -> Project {
    asked(|v| v["boxes"][0]["inputs"][key] = typed.into())
}

#[test]
fn sizes_outside_their_range() {
    for typed in ["-3 in", "0 mm", "0.001 mm", "10000 mm"] {
        check(&box_input("width", typed), Place::Box(1), |w| matches!(w, What::LengthOutside { .. }));
    }
    check(&box_input("width", "wide"), Place::Box(1), |w| matches!(w, What::NotThatKind { .. }));
    check(&box_input("tuck", "59 mm"), Place::Box(1), |w| matches!(w, What::TuckHits { .. }));
    let low = asked(|v| v["boxes"][0]["inputs"] = serde_json::json!({ "height": "20 mm", "tuck": "18 mm" }));
    check(&low, Place::Box(1), |w| matches!(w, What::TuckTooLong { .. }));
    let narrow =
        asked(|v| v["boxes"][0]["inputs"] = serde_json::json!({ "width": "15 mm", "depth": "9 mm", "tab": "20 mm" }));
    check(&narrow, Place::Box(1), |w| matches!(w, What::TabTooWide { .. }));
}

#[test]
fn counts_outside_their_range() {
    let boxes = asked(|v| v["boxes"][0]["count"] = 1_000_000_000.into());
    check(&boxes, Place::Box(1), |w| matches!(w, What::CountOutside { .. }));
    for sets in [0, 1_000_000_000] {
        let sets = asked(|v| v["sets"] = sets.into());
        check(&sets, Place::Set, |w| matches!(w, What::CountOutside { .. }));
    }
    check(&asked(|v| v["boxes"] = serde_json::json!([])), Place::Set, |w| *w == What::NoBoxes);
}

#[test]
fn mats_and_sheets() {
    let wide = asked(|v| v["boxes"][0]["mats"]["reveal"] = "29 mm".into());
    check(&wide, Place::Box(1), |w| matches!(w, What::RevealTooWide { .. }));
    let none = asked(|v| v["cards"][0]["sheet_width"] = "0 mm".into());
    check(&none, Place::Card(1), |w| matches!(w, What::LengthOutside { .. }));
    let large = asked(|v| v["boxes"][0]["inputs"]["height"] = "400 mm".into());
    check(&large, Place::Card(1), |w| matches!(w, What::PieceTooLarge { .. }));
    let thin = asked(|v| v["cards"][0]["grammage"] = 5.into());
    check(&thin, Place::Card(1), |w| *w == What::WeightOutside { least: 60, most: 600 });
    let lost = asked(|v| v["boxes"][0]["card"] = 9.into());
    check(&lost, Place::Box(1), |w| matches!(w, What::UnknownCard { card: 9 }));
}

#[test]
fn forms_that_are_not_there() {
    let odd = asked(|v| v["boxes"][0]["form"] = "teapot".into());
    check(&odd, Place::Box(1), |w| matches!(w, What::UnknownForm { .. }));
    let swapped = asked(|v| v["holder"]["form"] = "tuck-box".into());
    check(&swapped, Place::Holder, |w| matches!(w, What::WrongKind { .. }));
    let twice = asked(|v| {
        let first = v["boxes"][0].clone();
        v["boxes"].as_array_mut().expect("a list").push(first);
    });
    check(&twice, Place::Box(1), |w| matches!(w, What::NumberTwice { number: 1 }));
}

#[test]
fn a_step_that_no_board_has() {
    let fine = asked(|v| v["board"] = serde_json::json!({ "inch_step": "0.001 mm", "metric_step": "0.001 mm" }));
    check(&fine, Place::Board, |w| matches!(w, What::LengthOutside { .. }));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2_000, ..ProptestConfig::default() })]

    /// Any words and numbers at all in any input: a plan comes back, and what is not planned is said.
    #[test]
    fn any_typed_input_is_answered(
        typed in prop::collection::btree_map("[a-z-]{1,12}|width|depth|height|tab|tuck|size|notch|notch-radius", ".{0,12}|-?[0-9]{1,9}(\\.[0-9]{1,3})?( mm| in|)", 0..6),
        count in any::<u32>(), sets in any::<u32>(), card in any::<u16>(), grammage in any::<u32>(), reveal in -100_i32..100,
    ) {
        let project = asked(|v| {
            v["boxes"][0]["inputs"] = serde_json::json!(typed);
            v["boxes"][0]["count"] = count.into();
            v["sets"] = sets.into();
            v["holder"]["card"] = card.into();
            v["cards"][0]["grammage"] = grammage.into();
            v["boxes"][0]["mats"]["reveal"] = format!("{reveal} mm").into();
        });
        for system in System::ALL {
            let plan = plan(&project, system);
            let whole = plan.boxes.len() == 1 && plan.parts().all(|p| p.assembly.is_some());
            prop_assert!(whole || plan.stopped(), "{:?}", plan.findings);
        }
    }
}
