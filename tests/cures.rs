//! What mends it where pieces are larger than their sheets, held against every smaller and larger size.
#![cfg(not(target_arch = "wasm32"))]

use serde_json::json;
use snugfold::fit::largest::Grow;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::plan::{Plan, largest, plan};
use snugfold::project::finding::{Place, Weight, What};
use snugfold::project::request::Project;

/// A box of 150 × 60 × 200 mm and its holder, from sheets of `sheet` mm.
fn asked(sheet: [i64; 2], scale: i64, lie: &str) -> Project {
    let mm = |n: i64| format!("{} mm", n * scale / 100);
    serde_json::from_value(json!({
        "system": "metric",
        "cards": [{ "id": 1, "grammage": 270, "thickness": "0.3 mm", "lie": lie,
            "sheet_width": format!("{} mm", sheet[0]), "sheet_height": format!("{} mm", sheet[1]) }],
        "boxes": [{ "id": 1, "form": "tuck-box", "card": 1,
            "inputs": { "width": mm(150), "depth": mm(60), "height": mm(200) } }],
        "holder": { "form": "row-holder", "card": 1 }
    }))
    .expect("it is a project")
}

fn too_large(plan: &Plan) -> bool {
    plan.findings.iter().any(|f| matches!(f.what, What::PieceTooLarge { .. }))
}

#[test]
fn the_largest_box_comes_out_and_the_next_groove_does_not() {
    let project = asked([297, 420], 100, "either");
    let planned = plan(&project, System::Metric);
    assert!(too_large(&planned));
    let said = planned.findings.iter().find_map(|f| match f.what {
        What::LargestThatFits { width, depth, height, percent } => Some((f.place, [width, depth, height], percent)),
        _ => None,
    });
    let (place, sides, percent) = said.expect("a cure is said");
    assert_eq!(place, Place::Box(1));
    assert!((1..100).contains(&percent), "{percent}");
    let (best, part) = largest(&project, System::Metric, 1, Grow::InProportion).expect("there is one");
    assert_eq!([best.finished.width, best.finished.depth, best.finished.height], sides);
    let with = |part| Project { boxes: vec![part], holder: None, ..project.clone() };
    let smaller = plan(&with(part.clone()), System::Metric);
    assert!(!too_large(&smaller) && !smaller.stopped(), "{:?}", smaller.findings);
    // Its longest side on the next groove, the others in proportion.
    let up = best.finished.height + Length::MM;
    let mut larger = part;
    for (key, side) in [("width", 150), ("depth", 60), ("height", 200)] {
        let length = up.scaled(side, 200).nm() / 1_000_000;
        larger.inputs.insert(key.to_owned(), serde_json::from_value(json!(format!("{length} mm"))).expect("a length"));
    }
    assert!(too_large(&plan(&with(larger), System::Metric)));
}

/// A box that follows its gift grows from there, not from what the form would be without.
#[test]
fn a_box_that_follows_its_gift_keeps_its_proportions() {
    let mut project = asked([297, 420], 100, "either");
    let gifts = json!({ "kinds": [{ "turns": "upright",
        "shape": { "block": { "width": "20 mm", "depth": "20 mm", "height": "77 mm" } } }] });
    project.boxes[0].inputs.clear();
    project.boxes[0].gifts = serde_json::from_value(gifts).expect("gifts");
    let (best, _) = largest(&project, System::Metric, 1, Grow::InProportion).expect("there is one");
    let planned = plan(&project, System::Metric);
    let now = planned.boxes[0].assembly.as_ref().expect("it is planned").finished;
    assert!(best.per_mille > 1_000);
    for (side, was) in [(best.finished.width, now.width), (best.finished.depth, now.depth)] {
        // Down to the groove below its share of the height.
        let share = best.finished.height.scaled(was.nm(), now.height.nm());
        assert!(side <= share && side > share - Length::MM, "{side:?} of {share:?}");
    }
}

#[test]
fn at_the_scale_that_is_said_the_whole_set_comes_out() {
    for sheet in [[297, 420], [305, 305], [210, 297]] {
        let planned = plan(&asked(sheet, 100, "either"), System::Metric);
        let said = planned.findings.iter().find_map(|f| match f.what {
            What::SetFitsAt { percent } => Some(percent),
            _ => None,
        });
        let percent = said.expect("a scale is said");
        let small = plan(&asked(sheet, percent, "either"), System::Metric);
        assert!(!too_large(&small), "{sheet:?} at {percent} %");
        // Grooves are 1 mm apart, so that two percent more are at least one groove more.
        assert!(too_large(&plan(&asked(sheet, percent + 2, "either"), System::Metric)), "{sheet:?} above {percent} %");
    }
}

#[test]
fn a_turn_is_said_where_it_helps_and_only_there() {
    let turns = |sheet, lie| {
        let planned = plan(&asked(sheet, 100, lie), System::Metric);
        planned.findings.iter().any(|f| f.what == What::FitsTurned && f.weight == Weight::Note)
    };
    assert!(turns([400, 500], "upright"));
    assert!(!turns([500, 500], "upright"));
    assert!(!turns([297, 420], "either"));
}
